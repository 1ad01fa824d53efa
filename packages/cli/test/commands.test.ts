import { Buffer } from 'node:buffer';
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { questions } from '@sparewright/core/questions/registry';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { exampleDocument, examplesFolder, jobNames } from './mutations.ts';
import { runHere } from './terminal.ts';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'sparewright-cli-'));
});
afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

const example = (name: string) => fileURLToPath(new URL(name, examplesFolder));
const pin = example('valve-guide-pin.job.json');
const shop = example('bench-lathe.workshop.json');

function put(name: string, content: string | Uint8Array): string {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
}

/** An example job with one field changed. */
function changed(path: readonly (string | number)[], value: unknown): string {
  const document = exampleDocument('plunger.job.json');
  const holder: unknown = path.slice(0, -1).reduce<unknown>((at, step) => Reflect.get(Object(at), step), document);
  Reflect.set(Object(holder), path.at(-1) ?? '', value);
  return put('changed.job.json', JSON.stringify(document));
}

async function refused(args: readonly string[], code = 2): Promise<string> {
  const before = readdirSync(folder);
  const { code: answered, out, err } = await runHere(args);
  expect(out).toBe('');
  expect(answered, err).toBe(code);
  expect(err).not.toMatch(/\n\s+at /);
  expect(readdirSync(folder), 'nothing is written').toEqual(before);
  return err;
}

describe('a job is assessed', () => {
  test.each(jobNames)('%s: every stage, the findings, the route and the cautions are on the screen', async (name) => {
    const { code, out } = await runHere(['assess', example(`${name}.job.json`)]);
    expect([0, 1]).toContain(code);
    for (const word of [
      'How it stands',
      'Evidence',
      'Part',
      'Duty',
      'Route',
      'Bench',
      'Inspection',
      'Findings',
      'Stock',
      'Setup 1',
      'Time',
      'Cautions',
      'Next',
    ]) {
      expect(out).toContain(word);
    }
    expect(out).toContain('bench-lathe.workshop.json, the only one beside the job');
    expect(out).toContain('Chuck key out');
    for (const line of out.split('\n')) expect([...line].length, line).toBeLessThanOrEqual(100);
  });

  test('an inch job speaks in inches, with a comma where the job asks for one', async () => {
    const document = Object(exampleDocument('gland-spindle.job.json'));
    document.sheet.decimalSign = 'comma';
    const { out } = await runHere(['assess', put('inch.job.json', JSON.stringify(document)), '--workshop', shop]);
    expect(out).toMatch(/Ø0,5512 in × \d,\d+ in/);
    expect(out).toMatch(/in\/rev/);
  });

  test('as JSON it is the answer of the question assess', async () => {
    const { out, err } = await runHere(['assess', pin, '--json']);
    const job = exampleDocument('valve-guide-pin.job.json');
    const workshop = exampleDocument('bench-lathe.workshop.json');
    const asked = await runHere(['ask', 'assess', '--json', JSON.stringify({ job, workshop })]);
    expect(JSON.parse(out)).toEqual(JSON.parse(asked.out).answer);
    expect(err).toContain('Workshop: ');
  });

  test('without a workshop beside it there is no route, and that is said', async () => {
    const alone = put('alone.job.json', readFileSync(pin));
    const { out } = await runHere(['assess', alone]);
    expect(out).toContain('No workshop: there is none beside the job');
    expect(out).toContain('not planned');
  });

  test('with two workshops beside it none is taken by chance', async () => {
    put('a.workshop.json', readFileSync(shop));
    put('b.workshop.json', readFileSync(shop));
    const { out } = await runHere(['check', put('job.job.json', readFileSync(pin))]);
    expect(out).toContain('there are 2 beside the job (a.workshop.json, b.workshop.json)');
  });

  test('a job with nothing in it yet still stands somewhere', async () => {
    const bare = { sparewright: 'job', version: 1, title: 'New', units: 'mm', hazard: 'ordinary' };
    const file = put('bare.job.json', JSON.stringify(bare));
    const { code, out } = await runHere(['assess', file]);
    expect(code).toBe(0);
    expect(out).toContain('no part entered');
    expect((await runHere(['tables', file])).out).toContain('No tables: no part is entered yet');
    expect(await refused(['drawing', file, '-o', join(folder, 'x.svg')])).toContain('nothing to draw yet');
  });

  test('a title cannot steer the terminal', async () => {
    const document = Object(exampleDocument('plunger.job.json'));
    document.title = 'Plunger\u001b[2J\u0007\u202e of a pump';
    const { out } = await runHere(['assess', put('odd.job.json', JSON.stringify(document))]);
    expect(out.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\p{Cf}]/u);
  });

  test('a finding of level stop gives exit code 1, from assess and from check', async () => {
    // A bar thinner than the part.
    const document = Object(exampleDocument('plunger.job.json'));
    document.route = { stockDiameter: 20 };
    const file = put('thin.job.json', JSON.stringify(document));
    const checked = await runHere(['check', file, '--workshop', shop]);
    expect(checked.out).toContain('The bar is thinner than the part.');
    expect(checked.code).toBe(1);
    expect((await runHere(['assess', file, '--workshop', shop])).code).toBe(1);
    const written = await runHere(['drawing', file, '--workshop', shop, '-o', join(folder, 'x.svg')]);
    expect(written.code).toBe(0);
    expect(written.out).toContain('STOP');
  });
});

describe('files are written whole', () => {
  test('the drawing is an SVG file with the title of the part', async () => {
    const file = join(folder, 'pin.svg');
    const { code, out } = await runHere(['drawing', pin, '-o', file]);
    expect(code).toBe(0);
    expect(out).toContain(`Wrote ${file}`);
    expect(readFileSync(file, 'utf8')).toMatch(/^<svg [\s\S]*Valve guide pin[\s\S]*<\/svg>\s*$/);
    expect(readdirSync(folder)).toEqual(['pin.svg']);
  });

  test('tables are a CSV file each, in the order of the operations, and the same on the screen', async () => {
    const { code } = await runHere(['tables', pin, '--csv', join(folder, 'tables', 'new')]);
    expect(code).toBe(0);
    const files = readdirSync(join(folder, 'tables', 'new'));
    expect(files.length).toBeGreaterThan(5);
    expect(files).toEqual(files.toSorted());
    const { out } = await runHere(['tables', pin]);
    expect(out.match(/^Operation \d+, setup \d+: /gm)).toHaveLength(files.length);
    for (const line of out.split('\n')) expect([...line].length, line).toBeLessThanOrEqual(100);
  });

  test('what was there before is replaced, also through a link', async () => {
    const old = put('old.svg', 'old');
    const link = join(folder, 'link.svg');
    symlinkSync(old, link);
    await runHere(['drawing', pin, '-o', link]);
    expect(readFileSync(old, 'utf8')).toContain('<svg');
    expect(readdirSync(folder)).toEqual(['link.svg', 'old.svg']);
  });

  test('a folder, a missing folder and a file in the way are refused with exit code 3', async () => {
    mkdirSync(join(folder, 'taken.svg'));
    const file = put('file', 'x');
    expect(await refused(['drawing', pin, '-o', join(folder, 'taken.svg')], 3)).toContain('it is a folder');
    expect(await refused(['drawing', pin, '-o', join(folder, 'no', 'pin.svg')], 3)).toContain(
      'its folder does not exist',
    );
    expect(await refused(['drawing', pin, '-o', join(file, 'pin.svg')], 3)).toContain('cannot write');
    expect(await refused(['tables', pin, '--csv', file], 3)).toContain('cannot write');
    expect(await refused(['drawing', pin, '-o', '/dev/null.svg/x.svg'], 3)).toContain('cannot write');
  });
});

describe('what will not do is refused in one line, with exit code 2', () => {
  const cases: readonly [string, (string | number)[], unknown, RegExp][] = [
    [
      'nought',
      ['part', 'outside', 0, 'length'],
      0,
      /changed\.job\.json: part\.outside\[0\]\.length: got 0, expected .*, for example/,
    ],
    ['a negative size', ['part', 'outside', 0, 'diameter'], -32, /part\.outside\[0\]\.diameter: got -32, expected/],
    [
      'a size beyond all lathes',
      ['part', 'outside', 0, 'diameter'],
      1e9,
      /part\.outside\[0\]\.diameter: got 1000000000, expected/,
    ],
    ['NaN in words', ['part', 'outside', 0, 'diameter'], 'NaN', /part\.outside\[0\]\.diameter: got "NaN", expected/],
    ['a wrong kind', ['part', 'outside'], 'none', /part\.outside: got "none", expected a list in brackets/],
    ['an unknown field', ['part', 'colour'], 'red', /part: .*expected no field named colour/],
    ['a wrong choice', ['hazard'], 'mild', /hazard: got "mild", expected one of "ordinary"/],
    ['a newer version', ['version'], 99, /version: got 99, expected at most 1/],
    ['another document', ['sparewright'], 'workshop', /sparewright: got "workshop", expected "job"/],
  ];

  test.each(cases)('%s', async (_, path, value, expected) => {
    const err = await refused(['assess', changed(path, value)]);
    expect(err).toMatch(expected);
    expect(err.trimEnd().split('\n')).toHaveLength(1);
  });

  test.each([
    ['{"sparewright": "job",', /broken\.job\.json: got .*expected JSON text/],
    ['', /expected JSON text/],
    ['[1, 2]', /got \[1,2\], expected a job document/],
    ['null', /expected a job document/],
    [`${'['.repeat(50_000)}${']'.repeat(50_000)}`, /expected a job document/],
  ])('a file that holds %.20s', async (text, expected) => {
    const err = await refused(['check', put('broken.job.json', text)]);
    expect(err).toMatch(expected);
    expect(err.trimEnd().split('\n')).toHaveLength(1);
  });

  test('bytes that are no UTF-8', async () => {
    const file = put('latin.job.json', Buffer.from([0x7b, 0x22, 0xe9, 0x22, 0x3a, 0x31, 0x7d]));
    expect(await refused(['check', file])).toContain('saved as UTF-8');
  });

  test('a file too large to be a job, before it is read', async () => {
    const file = put('large.job.json', Buffer.alloc(50 * 1024 * 1024));
    const began = performance.now();
    expect(await refused(['check', file])).toContain('got "a file of 50 MB", expected a job file of at most 8 MB');
    expect(performance.now() - began).toBeLessThan(500);
  });

  test('a folder, a missing file, a missing workshop, a workshop in place of the job', async () => {
    expect(await refused(['check', folder])).toContain('got "a folder", expected a job file');
    expect(await refused(['check', join(folder, 'no.job.json')])).toContain('there is no file of that name');
    expect(await refused(['check', pin, '--workshop', join(folder, 'no.json')])).toContain('a workshop file');
    expect(await refused(['check', shop])).toContain('sparewright: got "workshop", expected "job"');
    expect(await refused(['check', pin, '--workshop', pin])).toContain('sparewright: got "job", expected "workshop"');
  });

  test('what is no plain file, without waiting for it', async () => {
    expect(await refused(['check', '/dev/null'])).toContain('something that is no file');
    execFileSync('mkfifo', [join(folder, 'pipe')]);
    expect(await refused(['check', join(folder, 'pipe')])).toContain('something that is no file');
    expect(await refused(['drawing', pin, '-o', join(folder, '.svg', 'x.svg')], 3)).toContain('cannot write');
  });

  test('a wrong command line, with what was perhaps meant', async () => {
    expect(await refused(['asess', pin])).toMatch(/unknown command 'asess'.*assess/);
    expect(await refused(['assess'])).toMatch(/missing required argument 'job'/);
    expect(await refused(['assess', pin, '--no-such'])).toMatch(/unknown option/);
    expect(await refused(['drawing', pin])).toMatch(/required option/);
    expect(await refused(['drawing', pin, '-o', 'x.png'])).toContain('a name that ends in .svg');
    expect(await refused(['packet', pin, '-o', join(folder, 'x.pdf'), '--paper', 'A0'])).toContain('A4 or Letter');
    expect(await refused(['serve', '--port', '99999'])).toContain('a whole number from 0 to 65535');
    expect(await refused(['serve', '--data', pin])).toContain('a data folder that can be used');
  });
});

describe('help teaches', () => {
  test('the first page names every command in its group, the exit codes and where to begin', async () => {
    const { code, out } = await runHere([]);
    expect(code).toBe(0);
    for (const word of [
      'A job',
      'The lathe',
      'A question',
      'The workbench',
      'assess',
      'check',
      'tables',
      'drawing',
      'packet',
      'ask',
      'serve',
      'Exit codes',
      'Begin here',
    ]) {
      expect(out).toContain(word);
    }
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(100);
  });

  test.each(['assess', 'check', 'tables', 'drawing', 'packet', 'lathe', 'cut', 'ask', 'serve'])(
    '%s --help has an example',
    async (name) => {
      const { code, out } = await runHere([name, '--help']);
      expect(code).toBe(0);
      expect(out).toMatch(new RegExp(`Example\\n {2}sparewright ${name} `));
      for (const line of out.split('\n')) expect(line.length, line).toBeLessThanOrEqual(100);
    },
  );

  test('the version is that of the package', async () => {
    const manifest: unknown = JSON.parse(readFileSync(new URL('../package.json', import.meta.url), 'utf8'));
    expect((await runHere(['--version'])).out.trim()).toBe(Object(manifest).version);
  });
});

describe('ask', () => {
  test('answers with its sources (f7 at 40 mm: ISO 286, −0.050 to −0.025 mm)', async () => {
    const { code, out } = await runHere(['ask', 'limits', '--json', '{"size":"40 f7"}']);
    expect(code).toBe(0);
    const { answer, sources } = JSON.parse(out);
    expect(answer).toMatchObject({ max: 39.975, min: 39.95 });
    expect(sources[0]).toEqual({ key: expect.any(String), title: expect.any(String), kind: 'read' });
  });

  test('refuses an unknown name with the nearest, broken JSON, and what the question does not take', async () => {
    expect(await refused(['ask', 'limit', '--json', '{}'])).toContain('for example limits');
    expect(await refused(['ask', 'limits', '--json', '{size:1}'])).toContain(
      '--json: got "{size:1}", expected JSON text',
    );
    expect(await refused(['ask', 'limits', '--json', '{"size":"40 f7","more":1}'])).toContain('no field named more');
    expect(await refused(['ask'])).toContain('ask --list');
  });

  test('lists all questions', async () => {
    const { out } = await runHere(['ask', '--list']);
    for (const { name } of questions) expect(out).toMatch(new RegExp(`^${name} `, 'm'));
  });

  test.each(questions.map((q) => q.name))('%s shows what it takes, with an example that runs', async (name) => {
    const { code, out } = await runHere(['ask', name]);
    expect(code).toBe(0);
    const example = /--json '(.*)'$/m.exec(out)?.[1]?.replaceAll("'\\''", "'");
    expect((await runHere(['ask', name, '--json', example ?? ''])).code).toBe(0);
  });
});

describe('ask --lines', () => {
  const lines = async (chunks: readonly (string | Uint8Array)[]): Promise<Record<string, unknown>[]> => {
    const { code, out } = await runHere(
      ['ask', '--lines'],
      chunks.map((c) => (typeof c === 'string' ? Buffer.from(c) : c)),
    );
    expect(code).toBe(0);
    return out
      .split('\n')
      .filter((l) => l !== '')
      .map((l) => Object(JSON.parse(l)));
  };

  test('answers each line with one line, in order, whatever is wrong with the others', async () => {
    const answers = await lines([
      '{"ask":"limits","size":"40 f7"}\nnonsense\n{"ask":"limit"}\n\n[]\n7\n{"size":"40 f7"}\n{"ask":"limits"}\n',
      Buffer.from([0xff, 0xfe, 0x0a]),
      '{"ask":"bar","diameter":-3}\r\n{"ask":"limits","size":"10 h7"}',
    ]);
    expect(answers.map((a) => [a.ask, a.ok])).toEqual([
      ['limits', true],
      [null, false],
      ['limit', false],
      [null, false],
      [null, false],
      [null, false],
      ['limits', false],
      [null, false],
      ['bar', false],
      ['limits', true],
    ]);
    expect(answers[0]).toMatchObject({ answer: { max: 39.975 }, sources: expect.any(Array) });
    expect(answers[6]).toMatchObject({ error: { issues: [{ path: 'size' }] } });
  });

  test('a request may come in pieces, also through the middle of a letter', async () => {
    const bytes = Buffer.from('{"ask":"limits","size":"40 ±0.1"}\n');
    const answers = await lines([...bytes].map((byte) => Uint8Array.of(byte)));
    expect(answers).toMatchObject([{ ok: true, answer: { max: 40.1, min: 39.9 } }]);
  });

  test('a line too long is refused and the next one answered', async () => {
    const megabyte = 'x'.repeat(1024 * 1024);
    const answers = await lines([...Array.from({ length: 10 }, () => megabyte), '\n{"ask":"limits","size":"40 f7"}\n']);
    expect(answers).toMatchObject([{ ok: false }, { ok: true }]);
    expect(JSON.stringify(answers[0])).toContain('at most 8 MB');
  });

  test('every question answers its example the same way as alone', async () => {
    const requests = questions.map(({ name, example }) => JSON.stringify({ ask: name, ...Object(example.input) }));
    const answers = await lines([`${requests.join('\n')}\n`]);
    expect(answers.map((a) => a.ask)).toEqual(questions.map((q) => q.name));
    expect(answers.filter((a) => a.ok !== true)).toEqual([]);
  });

  test('ten thousand requests take seconds', async () => {
    const request = '{"ask":"limits","size":"40 f7"}\n{"ask":"thread","designation":"M12x1.25-6g"}\n';
    const began = performance.now();
    const answers = await lines([request.repeat(5000)]);
    expect(answers.filter((a) => a.ok === true)).toHaveLength(10_000);
    expect(performance.now() - began).toBeLessThan(10_000);
  });
});

describe('recover', () => {
  test('ranks the designs of each size, in the unit of the job, and says what to measure next', async () => {
    const { code, out } = await runHere(['recover', example('plunger.job.json')]);
    expect(code).toBe(0);
    expect(out).toMatch(/diameter of the body\n {2}· designed as: 32 f7 \d+ %/);
    expect(out).toContain('Worth measuring next');
    expect(out).not.toContain('NaN');
    const inch = await runHere(['recover', example('gland-spindle.job.json')]);
    expect(inch.out).toMatch(/drawn in inches with (9\d|over 99) %/);
    expect(inch.out).toMatch(/designed as: 3\/8 in/);
    expect(inch.out).toMatch(/only: 0?\.37\d\d as made/);
  });

  test('gives the figures as JSON', async () => {
    const { out } = await runHere(['recover', pin, '--json']);
    expect(JSON.parse(out)).toMatchObject({ sizes: expect.any(Array), threads: expect.any(Array) });
  });
});
