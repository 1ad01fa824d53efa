/** The kinds of test and which files belong to each: the one list that vitest.config.ts and `npm test` read. */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { root } from '../lib/run.mjs';

const places = ['packages/*/{src,test}', 'examples', 'benchmarks'];
const skipped = ['**/node_modules/**', '**/dist/**'];
const tests = (ending) => places.map((place) => `${place}/**/*.${ending}.{ts,tsx}`);

export const categories = {
  gates: { include: ['scripts/**/*.test.ts'], exclude: skipped },
  unit: { include: tests('test'), exclude: [...skipped, '**/*.{slow,browser}.test.{ts,tsx}'] },
  slow: { include: tests('slow.test'), exclude: skipped },
  browser: { include: tests('browser.test'), exclude: skipped },
};

/** Which category a file belongs to by its name and place; undefined when it is no test. */
export function categoryOf(path) {
  if (!/\.test\.tsx?$/.test(path)) return undefined;
  if (path.startsWith('scripts/')) return 'gates';
  if (/\.slow\.test\.tsx?$/.test(path)) return 'slow';
  return /\.browser\.test\.tsx?$/.test(path) ? 'browser' : 'unit';
}

/** The test files on disk by category. Found without vitest, so that a file its patterns miss is noticed. */
export function testFiles() {
  const found = { gates: [], unit: [], slow: [], browser: [] };
  const walk = (folder) => {
    for (const entry of readdirSync(join(root, folder), { withFileTypes: true })) {
      const path = folder === '' ? entry.name : `${folder}/${entry.name}`;
      if (entry.isDirectory()) {
        if (!['node_modules', 'dist', '.git', 'coverage', '.cache'].includes(entry.name)) walk(path);
      } else {
        const category = categoryOf(path);
        if (category) found[category].push(path);
      }
    }
  };
  walk('');
  return found;
}
