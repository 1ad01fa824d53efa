/** Gate: nothing that belongs to one machine, and no left-over notes, is committed. */
import { parseJson } from './json.ts';
import { committedFiles, type Gate, read, type Violation } from './tree.ts';

// Written in pieces, so that this file does not hold what it looks for.
const folders = ['home', 'root', 'tmp', 'work'].join('|');
const forbidden: readonly { readonly pattern: RegExp; readonly says: string }[] = [
  { pattern: new RegExp(String.raw`(?<![\w.~\-/)\]}])/(?:${folders})/`), says: 'a path of one machine' },
  { pattern: /\b[A-Z]:\\(?:Users|home)\b/, says: 'a path of one machine' },
  {
    pattern: /(?:^|[^\w])(?:https?:)?\/\/[\w.-]*(?:registry|artifactory|nexus)[\w.-]*[/:]/,
    says: 'an address of a registry',
  },
  { pattern: new RegExp(['registry', String.raw`\.(?:npmjs|yarnpkg)`].join('')), says: 'an address of a registry' },
  { pattern: /^\s*(?:@[\w-]+:)?registry\s*=/, says: 'a setting of a registry' },
  {
    pattern: new RegExp(
      String.raw`\b(?:${['TO', 'FIX'].map((half) => `${half}${half === 'TO' ? 'DO' : 'ME'}`).join('|')})\b`,
    ),
    says: 'a note left over',
  },
];

/** Words that switch a check off, in code; documents may speak of them. */
const switchedOff = new RegExp(
  ['biome', 'eslint', '@ts', 'v8', 'c8']
    .map((tool) => `${tool}${tool === '@ts' ? '-' : '[- ]'}(?:ignore|disable|expect-error|nocheck)`)
    .join('|'),
);

const code = /\.(?:[cm]?[jt]sx?|css|html)$/;
const binary = /\.(?:png|jpe?g|gif|webp|ico|pdf|woff2?|ttf|otf|wasm|wav|zip|sqlite)$/;

export const hygiene: Gate = {
  name: 'hygiene',
  proves:
    'no committed file holds a path of one machine, an address of a registry, a note left over or a check switched off',
  check(root) {
    const files = committedFiles(root).filter((path) => !binary.test(path));
    if (!files.includes('package.json')) return [{ at: root, says: 'git lists no files: the gate is reading nothing' }];
    return [...files.flatMap((path) => inFile(path, read(root, path))), ...inLock(read(root, 'package-lock.json'))];
  },
};

function inFile(path: string, text: string): Violation[] {
  return text
    .split('\n')
    .flatMap((line, i) =>
      [...forbidden, ...(code.test(path) ? [{ pattern: switchedOff, says: 'a check switched off' }] : [])]
        .filter(({ pattern }) => pattern.test(line))
        .map(({ says }) => ({ at: `${path}:${i + 1}`, says })),
    );
}

/** The lock file holds no addresses at all; npm fills them in from the registry in use. */
function inLock(text: string): Violation[] {
  return Object.entries(parseJson(text).packages ?? {})
    .filter(([, { resolved }]) => resolved !== undefined && /^\w+:/.test(resolved) && !resolved.startsWith('file:'))
    .map(([name]) => ({ at: `package-lock.json ${name}`, says: 'an address of a registry' }));
}
