/** Gate: nothing is left over. knip.json says what counts as used; docs/decisions/0003-dead-code.md says why. */
import { rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Copy, copyOf } from './copy.ts';
import { filesBelow, type Gate, read, type Violation } from './tree.ts';

export const deadCode: Gate = {
  name: 'dead code',
  proves: 'every file, export and dependency is used, and what only tests use is none of the shipped code',
  async check(root) {
    const copy = copyOf(root);
    try {
      hidePackages(copy.root);
      return [
        ...(await knip(copy, 'all code', [])),
        ...(await knip(copy, 'shipped code', ['--production', '--tags=-source', '--exclude', 'dependencies'])),
      ];
    } finally {
      copy.remove();
    }
  },
};

/**
 * The packages open every file of theirs to each other, which knip would take for "used from outside".
 * In a copy the packages' own word about that is taken away, and their names lead straight to their sources.
 */
function hidePackages(root: string): void {
  for (const manifest of filesBelow(root, 'packages', /^packages\/[^/]+\/package\.json$/)) {
    const { exports: _open, ...rest }: Record<string, unknown> = JSON.parse(read(root, manifest));
    writeFileSync(join(root, manifest), JSON.stringify(rest));
    const name = manifest.split('/')[1] ?? '';
    rmSync(join(root, 'node_modules/@sparewright', name));
    symlinkSync(join(root, 'packages', name, 'src'), join(root, 'node_modules/@sparewright', name));
  }
}

async function knip(copy: Copy, part: string, options: readonly string[]): Promise<Violation[]> {
  const { code, output } = await copy.run('node_modules/knip/bin/knip.js', [
    '--no-progress',
    '--reporter',
    'compact',
    ...options,
  ]);
  if (code === 0) return [];
  const lines = output.split('\n').filter((line) => line.trim() !== '');
  return lines.map((says) => ({ at: part, says }));
}
