import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { cutOnLathe } from '@sparewright/core/lathe/cut-on-lathe';
import { ask } from '@sparewright/core/questions/ask';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { exampleDocument, examplesFolder } from './mutations.ts';
import { runHere } from './terminal.ts';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'sparewright-lathe-'));
});
afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

const shop = fileURLToPath(new URL('bench-lathe.workshop.json', examplesFolder));
const workshop: unknown = JSON.parse(readFileSync(shop, 'utf8'));

/** The example workshop with a push at the spindle nose: 100 N move it 20 µm. */
function pushedShop(): string {
  const document = Object(exampleDocument('bench-lathe.workshop.json'));
  const readings = [0, 100, 200].map((force) => ({ force, up: force / 5 }));
  document.lathe.tests = { pushes: [{ id: 'nose', at: 'spindle nose', readings }] };
  const path = join(folder, 'pushed.workshop.json');
  writeFileSync(path, JSON.stringify(document));
  return path;
}

const lengthNames = /^(swing|betweenCentres|spindleBore|from|to|jawLength|travel|noseRadius|overhang|maxDepth|feeds)$/;

/** The same workshop with its lengths written in inches; its dials are left out of the question. */
function inInches(document: unknown): unknown {
  const written = JSON.stringify(document, (name, value: unknown) => {
    if (!lengthNames.test(name)) return value;
    return Array.isArray(value) ? value.map((v) => Number(v) / 25.4) : Number(value) / 25.4;
  });
  return { ...Object(JSON.parse(written)), units: 'in' };
}

const cut = (more: readonly string[] = [], changed: Readonly<Record<string, string>> = {}) => {
  const options = { material: '303', diameter: '10', out: '40', depth: '0.1', feed: '0.05', speed: '400', ...changed };
  const given = Object.entries(options).flatMap(([name, value]) => [`--${name}`, value]);
  return runHere(['cut', '--workshop', shop, ...given, ...more]);
};

async function judged(more: readonly string[] = [], changed: Readonly<Record<string, string>> = {}) {
  const { code, out, err } = await cut([...more, '--json'], changed);
  expect(code, err).toBe(0);
  return Object(JSON.parse(out)).answer;
}

describe('lathe', () => {
  test('shows every element with its bounds, that nothing was tested, and what to test first', async () => {
    const { code, out } = await runHere(['lathe', shop]);
    expect(code).toBe(0);
    expect(out).toContain('0 tests entered');
    expect(out).toMatch(/tailstock with its centre, .* to .*N\/µm +100 %/);
    expect(out).toContain('Nothing was tested on this lathe yet');
    expect(out).toMatch(/Worth testing next[\s\S]*push at the bar/);
    expect(out).toContain('(from memory)');
    expect(out).not.toContain('NaN');
    for (const line of out.split('\n')) expect([...line].length, line).toBeLessThanOrEqual(100);
  });

  test('a push of 100 N that moves the nose by 20 µm teaches 5 N/µm, and is no longer worth doing', async () => {
    const { out } = await runHere(['lathe', pushedShop()]);
    expect(out).toContain('1 test entered');
    expect(out).toMatch(/What the tests taught\n {2}· nose \(.*\): spindle and headstock/);
    const { out: json } = await runHere(['lathe', pushedShop(), '--json']);
    const { answer, sources } = Object(JSON.parse(json));
    const nose = answer.elements.find((e: { id: string }) => e.id === 'spindleRadial');
    expect(Math.abs(nose.now.middle / 5 - 1)).toBeLessThan(0.02);
    expect(nose.left).toBeLessThan(0.1);
    expect(sources.length).toBeGreaterThan(0);
  });

  test('tells what would help a job on it, its cuts worst first', async () => {
    const job = fileURLToPath(new URL('plunger.job.json', examplesFolder));
    const { code, out, err } = await runHere(['lathe', shop, '--for', job]);
    expect(code, err).toBe(0);
    expect(out).toMatch(/Its cuts, worst first[\s\S]*not as it stands[\s\S]*goes/);
    expect(out).toMatch(/What would help, best first[\s\S]*(rake|gibs|block)/);
    expect(out).not.toContain('NaN');
    for (const line of out.split('\n')) expect([...line].length, line).toBeLessThanOrEqual(100);
    const { code: refused, err: said } = await runHere(['lathe', shop, '--for', job, '--json']);
    expect([refused, said.trim().split('\n').length]).toEqual([2, 1]);
  });

  test('a job file, and a state that is not named, are refused in one line', async () => {
    const job = await runHere(['lathe', fileURLToPath(new URL('plunger.job.json', examplesFolder))]);
    expect(job).toMatchObject({ code: 2, out: '' });
    expect(job.err).toContain('this must be a workshop document');
    const state = await runHere(['lathe', shop, '--state', 'new gibs']);
    expect(state).toMatchObject({ code: 2, out: '' });
    expect(state.err).toContain('new gibs');
  });
});

describe('cut', () => {
  test('says the verdict with the number that decides, force, power, what is left on, and the cautions', async () => {
    const { code, out, err } = await cut();
    expect(code, err).toBe(0);
    const answer = await judged();
    expect(out.startsWith(answer.says)).toBe(true);
    for (const word of [
      'along the cut',
      'W, ',
      'Left on after one pass',
      'chance that it sings',
      'What was weighed',
      'Chuck key out',
    ]) {
      expect(out).toContain(word);
    }
    expect(out).not.toContain('NaN');
    for (const line of out.split('\n')) expect([...line].length, line).toBeLessThanOrEqual(100);
  });

  test('the force is that of 0.5 mm × 0.1 mm worked by hand, 170.4 + 3.5 N', async () => {
    const document = Object(exampleDocument('bench-lathe.workshop.json'));
    // Nose, rake and approach as in the example of the question cut-on-lathe, worked by hand there.
    const { input, gives } = Object(cutOnLathe.example);
    document.cutters = input.workshop.cutters;
    document.lathe = input.workshop.lathe;
    const path = join(folder, 'hand.workshop.json');
    writeFileSync(path, JSON.stringify(document));
    const { out } = await runHere([
      ...['cut', '--workshop', path, '--material', '303', '--diameter', '10', '--out', '30', '--depth', '0.5'],
      ...['--feed', '0.1', '--speed', '800', '--grip', '18', '--json'],
    ]);
    expect(Object(JSON.parse(out)).answer).toMatchObject(gives);
  });

  test('gives the answer of the question, with the cutter and the jaws of the workshop', async () => {
    const { out } = await cut(['--json']);
    const same = ask('cut-on-lathe', {
      workshop,
      cutter: 'rough',
      material: '303',
      sections: [{ length: 40, outerDiameter: 10 }],
      grip: 18,
      depth: 0.1,
      feed: 0.05,
      speed: 400,
    });
    expect(JSON.parse(out)).toEqual(JSON.parse(JSON.stringify(same)));
  });

  test('the tailstock takes away most of what a long bar gives way', async () => {
    const free = await judged([], { out: '100' });
    const held = await judged(['--tailstock'], { out: '100' });
    expect(held.taper.middle).toBeLessThan(0.5 * free.taper.middle);
  });

  test('lengths are read in inches where typed so, and shown in the unit of the workshop', async () => {
    const inches = await judged([], { diameter: '10 mm', out: '1.5748 in' });
    const metric = await judged();
    expect(Math.abs(inches.taper.middle / metric.taper.middle - 1)).toBeLessThan(0.001);
    const { out } = await cut([], { out: '1.5748 in' });
    expect(out).toMatch(/40 mm {2}0\.\d{4} mm/);
  });

  test('with --remedies tells what would help: a long pin wants the tailstock [common practice]', async () => {
    const { code, out, err } = await cut(['--remedies', '--limit', '0.02'], { out: '90', speed: '800' });
    expect(code, err).toBe(0);
    expect(out).toMatch(/What would help, best first[\s\S]*as it stands[\s\S]*support the end with the tailstock/);
    for (const line of out.split('\n')) expect([...line].length, line).toBeLessThanOrEqual(100);
    expect((await cut(['--remedies', '--json'])).code).toBe(2);
  });

  test('a workshop in inches takes bare numbers as inches, the feed too, and shows inches', async () => {
    const { input } = Object(cutOnLathe.example);
    const inches = inInches(input.workshop);
    const path = (name: string, document: unknown) => {
      writeFileSync(join(folder, name), JSON.stringify(document));
      return join(folder, name);
    };
    const judge = (file: string, sizes: readonly string[]) => {
      const [diameter = '', out = '', depth = '', feed = ''] = sizes;
      const lengths = ['--diameter', diameter, '--out', out, '--depth', depth, '--feed', feed];
      return runHere(['cut', '--workshop', file, '--material', '303', ...lengths, '--speed', '800']);
    };
    const metric = await judge(path('mm.workshop.json', input.workshop), ['12.7', '25.4', '0.508', '0.0508']);
    const imperial = await judge(path('in.workshop.json', inches), ['1/2', '1', '.02', '.002']);
    expect(imperial.err).toBe('');
    const force = /along the cut (\S+) N/;
    expect(force.exec(imperial.out)?.[1]).toBe(force.exec(metric.out)?.[1]);
    expect(imperial.out).toMatch(/1\.00 in {2}0\.\d{5} in/);
    expect(imperial.out).toContain('Ø1/2 in');
  });

  test.each([
    ['--diameter', { diameter: '-10' }],
    ['--diameter', { diameter: 'thick' }],
    ['--diameter', { diameter: '97' }],
    ['--out', { out: '4000' }],
    ['--out', { out: '301' }],
    ['--depth', { depth: '0' }],
    ['--feed', { feed: 'quick' }],
    ['--speed', { speed: '0' }],
    ['--speed', { speed: '2001' }],
    ['--depth', { depth: '5' }],
    ['--material', { material: 'cheese' }],
    ['--cutter', { cutter: 'groove-2' }],
    ['--cutter', { cutter: 'no-such' }],
  ])('%s is named when it will not do: %o', async (option, changed) => {
    const { code, out, err } = await cut([], changed);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(`sparewright: ${option}`);
    expect(err).not.toMatch(/\n\s+at /);
  });
});

describe('lobes', () => {
  const lobes = (more: readonly string[] = [], changed: Readonly<Record<string, string>> = {}) => {
    const options = { material: '303', diameter: '8', out: '80', feed: '0.05', ...changed };
    const given = Object.entries(options).flatMap(([name, value]) => [`--${name}`, value]);
    return runHere(['lobes', '--workshop', shop, ...given, '-o', join(folder, 'limit.svg'), ...more]);
  };

  test('draws the chart with the cut marked, and tells the depths at every speed of the lathe', async () => {
    const { code, out, err } = await lobes(['--depth', '0.2', '--speed', '800']);
    expect(code, err).toBe(0);
    const svg = readFileSync(join(folder, 'limit.svg'), 'utf8');
    expect(svg).toContain('this cut');
    expect(svg).toContain('spindle speed, rpm');
    expect(svg).not.toContain('NaN');
    const { rpm } = Object(workshop).lathe.speeds;
    for (const speed of rpm) expect(out).toMatch(new RegExp(`^ +${speed} `, 'm'));
    for (const line of out.split('\n')) expect([...line].length, line).toBeLessThanOrEqual(100);
  });

  test('of a job marks every cut that the route turns, likeliest to sing first', async () => {
    const job = fileURLToPath(new URL('plunger.job.json', examplesFolder));
    const { code, out, err } = await runHere(['lobes', job, '-o', join(folder, 'cuts.svg')]);
    expect(code, err).toBe(0);
    const chances = [...out.matchAll(/ {2}\d+ +([\d.]+) % +\d+ +[\d.]+ %$/gm)].map((m) => Number(m[1]));
    expect(chances.length).toBeGreaterThan(4);
    expect(chances).toEqual(chances.toSorted((a, b) => b - a));
    const svg = readFileSync(join(folder, 'cuts.svg'), 'utf8');
    expect(svg).toContain('chance that it sings, %');
    expect(svg.match(/data-of="finish-turn-body"/g)?.length).toBeGreaterThan(0);
  });

  test('a slow speed is never worse than the fastest: rubbing quietens slow cuts [common practice]', async () => {
    const asked = { workshop, cutter: 'finish', material: '303', grip: 18, feed: 0.05 };
    const found = Object(ask('depth-at-speeds', { ...asked, sections: [{ length: 80, outerDiameter: 8 }] }));
    const limits: { sings: { even: number } }[] = found.answer.speeds;
    expect(limits[0]?.sings.even).toBeGreaterThanOrEqual(limits.at(-1)?.sings.even ?? 0);
  });

  test.each([
    ['a file that is no drawing', ['-o', 'limit.png'], {}, /--output.*\.svg/],
    ['a job and a bar together', ['valve.job.json'], {}, /only --workshop and --output with a job/],
    ['half a cut', ['--depth', '0.2'], {}, /--speed.*both/],
    ['a speed that is none', ['--depth', '0.2', '--speed', 'fast'], {}, /--speed.*rpm/],
    ['an overhang of nothing', [], { out: '0' }, /--out/],
  ] as const)('refuses %s in one line', async (_what, more, changed, said) => {
    const { code, err } = await lobes(more, changed);
    expect(code).toBe(2);
    expect(err).toMatch(said);
    expect(err.trim().split('\n')).toHaveLength(1);
  });
});
