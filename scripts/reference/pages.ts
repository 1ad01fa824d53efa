/** The pages of the documentation that are made from the code: the reference of questions, and the schemas. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { z } from 'zod';
import type { Question } from '../../packages/core/src/question.ts';
import type { Source } from '../../packages/core/src/sources/source.ts';
import { jsonSchema } from './json-schema.ts';
import { questionsPage } from './questions-page.ts';

const registry = 'packages/core/src/questions/registry.ts';
const register = 'packages/core/src/sources/register.ts';

/** What the registry of questions exports. */
interface Registry {
  readonly questions: readonly Question[];
  /** Documents that have a schema of their own, by the name of the file: `job`, `workshop`. */
  readonly documents?: Readonly<Record<string, z.ZodType>>;
}

/** What the pages are made from; undefined while there is no registry of questions. */
export async function readRegistry(root: string): Promise<Registry | undefined> {
  if (!existsSync(join(root, registry))) return undefined;
  return import(pathToFileURL(join(root, registry)).href);
}

/** Path and text of every generated page. */
export async function generatedPages(root: string): Promise<Map<string, string>> {
  const found = await readRegistry(root);
  const pages = new Map<string, string>();
  if (!found) return pages;
  const { source }: { source(key: string): Source } = await import(pathToFileURL(join(root, register)).href);
  pages.set('docs/reference/questions.md', questionsPage(found.questions, source));
  for (const [name, schema] of Object.entries(found.documents ?? {})) {
    pages.set(`docs/schema/${name}.json`, json(jsonSchema(schema, 'input')));
  }
  const shapes = found.questions.map((q) => [
    q.name,
    { asks: q.asks, input: jsonSchema(q.input, 'input'), output: jsonSchema(q.output, 'output') },
  ]);
  pages.set('docs/schema/questions.json', json(Object.fromEntries(shapes)));
  return pages;
}

const json = (value: unknown): string => `${JSON.stringify(value, undefined, 2)}\n`;
