/** The pages of the documentation that are made from the code: the reference of questions, and the schemas. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { z } from 'zod';
import type { Scene } from '../../packages/core/src/drawing/scene.ts';
import type { Question } from '../../packages/core/src/question.ts';
import type { Source } from '../../packages/core/src/sources/source.ts';
import { helpPage, type Piece } from './help-page.ts';
import { jsonSchema } from './json-schema.ts';
import { questionsPage } from './questions-page.ts';

const registry = 'packages/core/src/questions/registry.ts';
const register = 'packages/core/src/sources/register.ts';
const help = 'packages/web/src/help';
const painter = 'packages/output/src/svg/paint.ts';

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
  if (existsSync(join(root, help))) for (const [path, text] of await helpPages(root, source)) pages.set(path, text);
  return pages;
}

/** What the screens say in place, as pages for whoever reads on paper; each drawing as a file of its own. */
async function helpPages(root: string, source: (key: string) => Source): Promise<[string, string][]> {
  const load = (path: string) => import(pathToFileURL(join(root, path)).href);
  const { topics }: { topics: Readonly<Record<'measure' | 'meaning', readonly Piece[]>> } = await load(
    `${help}/content.ts`,
  );
  const { titleOf }: { titleOf(id: string): string } = await load(`${help}/titles.ts`);
  const { paintSvg }: { paintSvg(scene: Scene): string } = await load(painter);
  const part = (which: 'measure' | 'meaning') => ({
    pieces: topics[which],
    titleOf,
    source,
    numbered: which === 'measure',
  });
  return [
    ['docs/users/how-to-measure.md', helpPage('How to measure a worn part', measuringIntro, part('measure'))],
    ['docs/users/what-it-means.md', helpPage('What the numbers mean', meaningIntro, part('meaning'))],
    ...topics.measure.flatMap(({ id, picture }): [string, string][] =>
      picture ? [[`docs/pictures/help/${id}.svg`, paintSvg(picture)]] : [],
    ),
  ];
}

const measuringIntro = [
  'The drawing is gone; the worn part and the parts it works against are what is left of it. The screens say the same in place, under *How to measure this*.',
  'What thread it is can be asked without a job: `npx sparewright ask find-thread --json \'{"crestDiameter":"11.85","pitch":"1.25"}\'`. How sure a reading is: [What the numbers mean](what-it-means.md#u-and-u-how-sure-a-reading-is).',
];
const meaningIntro = [
  'What stands on the screens and in the packet, piece by piece. The screens say the same in place, under *What this means*. How each thing is measured: [How to measure a worn part](how-to-measure.md).',
];

const json = (value: unknown): string => `${JSON.stringify(value, undefined, 2)}\n`;
