/** Every gate is shown one violation of each kind it exists for, in a copy of the repository, and must object to it. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { copyOf } from './copy.ts';
import { hygiene } from './hygiene.ts';
import { layers } from './layers.ts';
import { links } from './links.ts';
import { purity } from './purity.ts';
import type { Gate } from './tree.ts';

const copy = copyOf(process.cwd());
afterAll(() => copy.remove());

type Outcome = { readonly code: number; readonly output: string };
type Edits = Parameters<typeof copy.planted>[0];
/** [what is planted, the edits, what the gate says about it] */
type Plant = readonly [string, Edits, RegExp];

const runGates = (...names: string[]) => copy.run('node_modules/tsx/dist/cli.mjs', ['scripts/gates/run.ts', ...names]);
const types = () => copy.run('node_modules/typescript/bin/tsc', ['--pretty', 'false', '-p', 'packages/core']);
const lint = () =>
  copy.run('node_modules/@biomejs/biome/bin/biome', ['ci', '--colors=off', '--max-diagnostics=none', '.']);

/** A gate that only reads files is run here, once for each plant. */
function objects({ check }: Gate, plants: readonly Plant[]): void {
  test.each(plants)('objects to %s', async (_what, edits, says) => {
    const violations = await copy.planted(edits, async () => check(copy.root));
    expect(violations.map((v) => `${v.at}  ${v.says}`).join('\n')).toMatch(says);
  });
}

/** A program that takes long to start is run once over all plants, which lie in files of their own, and names each. */
function objectsToAll(run: () => Promise<Outcome>, plants: readonly Plant[]): void {
  const paths = plants.flatMap(([, edits]) => Object.keys(edits));
  if (new Set(paths).size < paths.length) throw new Error('two plants in one file');
  let outcome: Promise<Outcome> | undefined;
  test.each(plants)('objects to %s', async (_what, _edits, says) => {
    outcome ??= copy.planted(Object.assign({}, ...plants.map(([, edits]) => edits)), run);
    const { code, output } = await outcome;
    expect(output).toMatch(says);
    expect(code).toBe(1);
  });
}

describe('as the repository stands', () => {
  test.each([
    ['the gates', () => runGates()],
    ['the compiler', types],
    ['lint and format', lint],
  ])('%s pass', async (_what, run) => {
    const { code, output } = await run();
    expect(code, output).toBe(0);
  });
});

const core = 'packages/core/src';
const append = (line: string) => (text: string) => `${text}${line}\n`;

describe('the gate of layers', () => {
  objects(layers, [
    [
      'an upward import inside the core',
      {
        [`${core}/sources/planted.ts`]:
          "import { mmPerInch } from '../units/quantities.ts';\nexport const planted = mmPerInch;\n",
      },
      /sources\/planted\.ts:1 {2}imports .*units\/ stands above sources\//,
    ],
    [
      'an upward import of a type only',
      { [`${core}/sources/planted.ts`]: "export type Planted = import('../units/quantities.ts').Mm;\n" },
      /sources\/planted\.ts:1 {2}imports .*units\/ stands above sources\//,
    ],
    [
      'an import from the folder beside',
      {
        [`${core}/bench/planted.ts`]: 'export const planted = 1;\n',
        [`${core}/inspect/planted.ts`]: "export { planted } from '../bench/planted.ts';\n",
      },
      /inspect\/planted\.ts:1 {2}imports .*bench\/ stands beside inspect\//,
    ],
    [
      'two files that import each other',
      {
        [`${core}/units/planted-a.ts`]: "import { b } from './planted-b.ts';\nexport const a = (): number => b();\n",
        [`${core}/units/planted-b.ts`]: "import { a } from './planted-a.ts';\nexport const b = (): number => a();\n",
      },
      /round in a ring: .*planted-a\.ts, .*planted-b\.ts/,
    ],
    [
      'two topics of the standards that import each other by different files',
      {
        [`${core}/standards/planted-a/one.ts`]: "export { four } from '../planted-b/four.ts';\n",
        [`${core}/standards/planted-a/two.ts`]: 'export const two = 2;\n',
        [`${core}/standards/planted-b/three.ts`]: "export { two } from '../planted-a/two.ts';\n",
        [`${core}/standards/planted-b/four.ts`]: 'export const four = 4;\n',
      },
      /topics import each other in a ring: planted-a, planted-b/,
    ],
    [
      'the core importing a shell',
      { [`${core}/units/planted.ts`]: "import '@sparewright/output/planted';\n" },
      /units\/planted\.ts:1 {2}core may not import output/,
    ],
    [
      'the screens importing the server',
      { 'packages/web/src/planted.ts': "export const planted = () => import('@sparewright/server/planted');\n" },
      /web\/src\/planted\.ts:1 {2}web may not import server/,
    ],
    [
      'the screens importing what of output needs a server',
      { 'packages/web/src/planted.ts': "export { x } from '@sparewright/output/packet/packet';\n" },
      /web\/src\/planted\.ts:1 {2}web may not import output/,
    ],
    [
      'another package reached by a path',
      { 'packages/output/src/planted.ts': "export { mmPerInch } from '../../core/src/units/quantities.ts';\n" },
      /output\/src\/planted\.ts:1 {2}another package is reached by its name/,
    ],
    ['a folder without a layer', { [`${core}/planted/a.ts`]: 'export const a = 1;\n' }, /src\/planted {2}has no place/],
  ]);
});

describe('the gate of purity', () => {
  const file = `${core}/units/planted.ts`;
  objects(purity, [
    ['node:fs in the core', { [file]: "import 'node:fs';\n" }, /planted\.ts:1 {2}the core may not import node:fs/],
    [
      'a foreign package in the core',
      { [file]: "import 'react';\n" },
      /planted\.ts:1 {2}the core may not import react/,
    ],
    ['unseeded chance', { [file]: 'export const planted = Math.random();\n' }, /planted\.ts:1 {2}Math\.random/],
    ['the clock', { [file]: 'export const planted = new Date();\n' }, /planted\.ts:1 {2}the core has no clock/],
  ]);
});

describe('the compiler', () => {
  objectsToAll(types, [
    [
      'a wrong type',
      { [`${core}/units/a.ts`]: "export const a: number = 'one';\n" },
      /units\/a\.ts\(1,14\): error TS2322/,
    ],
    [
      'a document in the core',
      { [`${core}/units/b.ts`]: 'export const b = document.title;\n' },
      /units\/b\.ts.*'document'/,
    ],
    ['node:fs in the core', { [`${core}/units/c.ts`]: "export * from 'node:fs';\n" }, /units\/c\.ts.*'node:fs'/],
    [
      'an entry of a list taken for certain',
      { [`${core}/units/d.ts`]: 'export const d = (list: number[]): number => list[0];\n' },
      /units\/d\.ts.*TS2322/,
    ],
  ]);

  test('is run over every package by `npm run types`', async () => {
    const edits = { 'packages/output/src/planted.ts': "export const planted: number = 'one';\n" };
    const { code, output } = await copy.planted(edits, () => copy.run('scripts/types.mjs', []));
    expect(output).toMatch(/output\/src\/planted\.ts\(1,14\): error TS2322/);
    expect(code).toBe(1);
  });
});

describe('lint and format', () => {
  objectsToAll(lint, [
    ['a badly formatted file', { [`${core}/units/a.ts`]: 'export const planted   = "a"\n' }, /units\/a\.ts format/],
    [
      'a promise that nobody waits for',
      { [`${core}/units/c.ts`]: 'const a = async () => 1;\nexport const b = () => {\n  a();\n};\n' },
      /units\/c\.ts.*noFloatingPromises/,
    ],
    ['any', { [`${core}/units/b.ts`]: 'export const planted: any = 1;\n' }, /units\/b\.ts.*noExplicitAny/],
  ]);
});

describe('the gate of dead code', () => {
  objectsToAll(
    () => runGates('dead code'),
    [
      [
        'an unused export',
        {
          // The files planted in are reached from the command line, as shipped code is.
          'packages/cli/src/main.ts': append(
            "import '@sparewright/core/errors';\nimport '@sparewright/core/units/length';\nimport '@sparewright/core/units/quantities';",
          ),
          [`${core}/units/quantities.ts`]: append('\nexport const leftOver = 1;'),
        },
        /all code.*quantities\.ts: .*leftOver/,
      ],
      [
        'an unused file',
        { [`${core}/units/left-over.ts`]: 'export const leftOver = 1;\n' },
        /all code.*units\/left-over\.ts/,
      ],
      [
        'an unused dependency',
        {
          'packages/core/package.json': (text) => text.replace('"ml-matrix"', '"left-over": "1.0.0",\n    "ml-matrix"'),
        },
        /core\/package\.json: left-over/,
      ],
      [
        'a dependency that is not listed',
        { [`${core}/units/length.ts`]: append("\nimport 'picocolors';") },
        /length\.ts: picocolors/,
      ],
      [
        'an export that only a test uses',
        {
          [`${core}/errors.ts`]: append('\nexport const onlyTested = 1;'),
          [`${core}/planted.test.ts`]: "import { onlyTested } from './errors.ts';\nconsole.log(onlyTested);\n",
        },
        /shipped code {2}.*errors\.ts: .*onlyTested/,
      ],
    ],
  );
});

describe('the gate of formula blocks', () => {
  const good = `import type { Mm } from '../units/quantities.ts';

/**
 * Twice a length.
 *
 * @param length  any length [mm]
 * @returns twice that [mm]
 * @source geometry
 * @valid always
 * @example twice(1.25) → 2.5
 */
export function twice(length: Mm): Mm {
  return 2 * length;
}
`;
  const plants: readonly (readonly [string, string | RegExp, string, RegExp])[] = [
    ['a parameter without a unit', 'any length [mm]', 'any length', /@param length has no unit/],
    ['a result without a unit', 'twice that [mm]', 'twice that', /@returns has no unit/],
    ['a parameter by another name', '@param length', '@param size', /@param names size, the function takes length/],
    ['a parameter that is not documented', / \* @param.*\n/, '', /@param names nothing, the function takes length/],
    ['an unknown source', '@source geometry', '@source hearsay', /@source hearsay is not in the register/],
    ['a second source that is unknown', '@source geometry', '@source geometry; rumour', /@source rumour is not/],
    ['an example with a wrong result', '→ 2.5', '→ 2.6', /@example twice\(1\.25\): the result is 2\.5, not 2\.6/],
    ['an example that throws', 'twice(1.25)', 'thrice(1.25)', /thrice\(1\.25\) throws ReferenceError/],
    ['an example without a result', ' → 2.5', '', /has no → result/],
    ['no example', / \* @example.*\n/, '', /has no @example/],
    ['no range of validity', / \* @valid.*\n/, '', /has no @valid/],
    ['a number from nowhere', / \* @source.*\n/, '', /returns a number but names no @source/],
    [
      'a function that hides its result',
      / \* @source[\s\S]*\): Mm \{/,
      ' */\nexport function twice(length: Mm) {',
      /does not state/,
    ],
    ['a module that cannot be loaded', 'import type', "import './nowhere.ts';\nimport type", /cannot be loaded/],
  ];
  const fileOf = (i: number) => `${core}/structure/planted-${i}.ts`;

  objectsToAll(
    () => runGates('formula blocks'),
    plants.map(([what, from, to, says], i) => [
      what,
      { [fileOf(i)]: good.replace(from, to) },
      new RegExp(`planted-${i}\\.ts.*${says.source}`),
    ]),
  );

  test('accepts the block when nothing is wrong with it', async () => {
    const { output } = await copy.planted({ [fileOf(0)]: good }, () => runGates('formula blocks'));
    expect(output).not.toContain('planted-0.ts');
  });
});

describe('the gate of generated pages', () => {
  const registry = (describe: string) => `import { z } from 'zod';
import { defineQuestion, type Question } from '../question.ts';

const twice = defineQuestion({
  name: 'planted-twice',
  asks: 'How long is twice a length?',
  input: z.strictObject({ length: z.number()${describe} }),
  output: z.strictObject({ twice: z.number().describe('twice the length [mm]') }),
  sources: ['geometry'],
  example: { input: { length: 2 }, gives: { twice: 4 }, from: 'geometry' },
  answer: ({ length }) => ({ twice: 2 * length }),
});

export const questions: readonly Question[] = [twice];
`;
  const file = `${core}/questions/registry.ts`;
  const page = 'docs/reference/questions.md';
  const made = (text: string): Edits => ({ [file]: text, [page]: '', 'docs/schema/questions.json': '' });
  const make = () => copy.run('node_modules/tsx/dist/cli.mjs', ['scripts/docs.ts']);
  const explained = ".describe('a length [mm]')";

  const plants: readonly Plant[] = [
    [
      'a page that is older than the code',
      made(registry(explained)),
      /docs\/reference\/questions\.md {2}is not what the code makes/,
    ],
    [
      'a number without a unit',
      made(registry(".describe('a length')")),
      /planted-twice {2}length is a number without a unit/,
    ],
    ['a field without a meaning', made(registry('')), /planted-twice {2}length has no meaning/],
    ['a schema of nothing', { 'docs/schema/planted.json': '{}\n' }, /planted\.json {2}is not made from the code/],
  ];
  test.each(plants)('objects to %s', async (_what, edits, says) => {
    const { code, output } = await copy.planted(edits, () => runGates('docs'));
    expect(output).toMatch(says);
    expect(code).toBe(1);
  });

  test('`npm run docs` writes what the gate asks for', async () => {
    await copy.planted(made(registry(explained)), async () => {
      expect((await make()).code).toBe(0);
      expect(readFileSync(join(copy.root, page), 'utf8')).toContain(
        'sparewright ask planted-twice --json \'{"length":2}\'',
      );
      expect((await runGates('docs')).output).not.toMatch(/questions\.(md|json) {2}is not what/);
    });
  });
});

describe('the gate of links', () => {
  const file = 'docs/planted.md';
  objects(links, [
    [
      'a link that leads nowhere',
      { [file]: '# A\n\nSee [there](nowhere.md).\n' },
      /docs\/planted\.md:3 {2}leads nowhere: nowhere\.md/,
    ],
    [
      'a picture that is missing',
      { [file]: '![lathe](lathe.png)\n' },
      /docs\/planted\.md:1 {2}leads nowhere: lathe\.png/,
    ],
    ['a place that is no heading', { [file]: '# A\n\n[b](#b)\n' }, /docs\/planted\.md:3 {2}there is no heading #b/],
  ]);
});

describe('the gate of hygiene', () => {
  const file = 'docs/planted.md';
  // Written in pieces, so that this file passes the gate itself.
  const registry = ['https://registry', 'npmjs.org'].join('.');
  objects(hygiene, [
    ['an address of a registry', { [file]: `${registry}/zod\n` }, /planted\.md:1 {2}an address of a registry/],
    [
      'an address in the lock file',
      {
        'package-lock.json': (text) =>
          text.replace('"node_modules/zod": {', '"node_modules/zod": {\n      "resolved": "http://127.0.0.1/zod.tgz",'),
      },
      /package-lock\.json node_modules\/zod {2}an address of a registry/,
    ],
    ...['home', 'root', 'tmp', 'work'].map(
      (folder): Plant => [
        `a path below the folder ${folder} of one machine`,
        { [file]: `cd ${['', folder, 'someone'].join('/')}\n` },
        /planted\.md:1 {2}a path of one machine/,
      ],
    ),
    ['a note left over', { [file]: `${'TO'}${'DO'}: finish\n` }, /planted\.md:1 {2}a note left over/],
    [
      'a check switched off',
      { [`${core}/units/planted.ts`]: `// ${'@ts'}-expect-error\nexport const a: string = 1;\n` },
      /planted\.ts:1 {2}a check switched off/,
    ],
  ]);
});

describe('the totals of a test run', () => {
  test('count what passed, failed and was skipped, files that do not load, and outside values of tests that passed', async () => {
    const file = 'packages/core/test/planted.test.ts';
    const broken = 'packages/core/test/planted-broken.test.ts';
    const edits = {
      [file]: `import { expect, test } from 'vitest';
test('good', ({ task }) => { Object.assign(task.meta, { outsideValues: 3 }); });
test('bad', ({ task }) => { Object.assign(task.meta, { outsideValues: 5 }); expect(1).toBe(2); });
test.skip('later', () => {});
`,
      [broken]: "import './not-there.ts';\n",
    };
    const totals = join(copy.root, 'totals.json');
    const { code } = await copy.planted(edits, () =>
      copy.run('node_modules/vitest/vitest.mjs', ['run', '--project', 'unit', 'test/planted'], {
        SPAREWRIGHT_TOTALS: totals,
      }),
    );
    expect(code).toBe(1);
    expect(JSON.parse(readFileSync(totals, 'utf8'))).toEqual({
      passed: 1,
      failed: 2,
      skipped: 1,
      files: 2,
      outside: 3,
    });
  });
});

describe('`npm test`', () => {
  const run = () => copy.run('scripts/test.mjs', ['--fast']);
  const lastLine = (output: string) => output.trimEnd().split('\n').at(-1);

  test('stops at the first step that fails, and its last line counts it', async () => {
    const plant = { [`${core}/units/a.ts`]: 'export const a   = "a"\n' };
    const { code, output, stdout } = await copy.planted(plant, run);
    expect(output).toContain('=== Lint and format: FAILED');
    expect(output).not.toContain('=== Types');
    expect(lastLine(stdout)).toBe('0 passed, 1 failed');
    expect(code).toBe(1);
  });
});

describe('the command line', () => {
  test('says in one line that it is not built', async () => {
    const { code, output } = await copy.run('packages/cli/bin/sparewright.js', ['--help']);
    expect(output.trim()).toBe('sparewright is not built yet: run `npm run build` in its folder, then try again.');
    expect(code).toBe(1);
  });
});
