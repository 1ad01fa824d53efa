/** Gate: the generated pages are those that the code makes now, and every field that a question shows is explained. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { fieldsOf } from '../reference/fields.ts';
import { generatedPages, readRegistry } from '../reference/pages.ts';
import { hasUnit } from './doc-block.ts';
import { filesBelow, type Gate, read, type Violation } from './tree.ts';

export const docs: Gate = {
  name: 'docs',
  proves: 'the generated pages are up to date, and each field of a question has a meaning and each number a unit',
  async check(root) {
    const registry = await readRegistry(root);
    const pages = await generatedPages(root);
    const stale = [...pages]
      .filter(([path, text]) => !existsSync(join(root, path)) || read(root, path) !== text)
      .map(([path]) => ({ at: path, says: 'is not what the code makes: npm run docs' }));
    const orphans = filesBelow(root, 'docs/schema', /\.json$/)
      .filter((path) => !pages.has(path))
      .map((path) => ({ at: path, says: 'is not made from the code any more: remove it' }));
    const unexplained = (registry?.questions ?? []).flatMap((q): Violation[] =>
      [...fieldsOf(q.input, 'input'), ...fieldsOf(q.output, 'output')].flatMap((field) => {
        const at = `question ${q.name}`;
        if (field.meaning === '') return [{ at, says: `${field.path} has no meaning (.describe)` }];
        return field.numeric && !hasUnit(field.meaning)
          ? [{ at, says: `${field.path} is a number without a unit in square brackets` }]
          : [];
      }),
    );
    return [...stale, ...orphans, ...unexplained];
  },
};
