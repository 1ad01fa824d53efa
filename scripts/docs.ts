/** `npm run docs`: writes the pages that are made from the code. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { generatedPages } from './reference/pages.ts';

const root = process.cwd();
const pages = await generatedPages(root);
for (const [path, text] of pages) {
  mkdirSync(dirname(join(root, path)), { recursive: true });
  writeFileSync(join(root, path), text);
  console.log(path);
}
if (pages.size === 0) console.log('no registry of questions yet: nothing written');
