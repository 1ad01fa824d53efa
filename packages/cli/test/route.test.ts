import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { examplesFolder } from './mutations.ts';
import { runHere } from './terminal.ts';

const example = (name: string) => fileURLToPath(new URL(name, examplesFolder));
const shop = example('bench-lathe.workshop.json');

describe('route', () => {
  test('of the plunger names stock, both setups, cutters, times and what to lay out', async () => {
    const { code, out } = await runHere(['route', example('plunger.job.json')]);
    expect(code).toBe(0);
    for (const said of ['Stock', 'Setup 1', 'Setup 2', 'Rough the body', 'grooving cutter', 'Lay out before starting'])
      expect(out).toContain(said);
    expect(out).not.toContain('Why so');
  });

  test('with reasons says why each operation stands where it does, and which other ways there were to hold the work', async () => {
    const { out } = await runHere(['route', example('plunger.job.json'), '--why']);
    expect(out).toContain('The finishing cut takes the burr of the groove with it.');
    expect(out).toContain('left end out of the bar');
  });

  test('with remedies tells what was tried on the lathe for a cut that sings, with the chance before and after', async () => {
    const { out } = await runHere(['route', example('valve-guide-pin.job.json'), '--remedies']);
    const tried = [...out.replaceAll(/\s+/g, ' ').matchAll(/sings with (\d+) % instead of (\d+) %/g)];
    expect(tried.length).toBeGreaterThan(0);
    for (const [, after, before] of tried) expect(Number(after)).toBeLessThan(Number(before));
  });

  test('as JSON is one object of finite numbers', async () => {
    const { out } = await runHere(['route', example('gland-spindle.job.json'), '--json']);
    const route = JSON.parse(out);
    expect(route.operations.length).toBeGreaterThan(10);
    expect(out).not.toMatch(/NaN|Infinity/);
  });
});

describe('steps', () => {
  test('a sphere of 60 mm over 32 mm in 13 cuts ends at 2.173 mm (60 − √(60² − 16²)) and no step passes it', async () => {
    const asked = ['--sphere', '60', '--chord', '32', '--cuts', '13', '--nose', '0.4', '--dial', '0.02'];
    const { code, out } = await runHere(['steps', ...asked, '--json']);
    expect(code).toBe(0);
    const { answer } = JSON.parse(out);
    expect(answer.depth).toBeCloseTo(2.1727, 3);
    expect(answer.steps).toHaveLength(13);
    // The centre of the nose stays its radius away from the sphere.
    for (const { depth, radius } of answer.steps)
      expect(Math.hypot(60 - (depth - 0.4), radius + 0.4)).toBeGreaterThanOrEqual(60.4 - 1e-6);
    const shown = await runHere(['steps', ...asked, '--chamfers']);
    expect(shown.out).toContain('13 facing cuts');
    expect(shown.out).toContain('after the chamfer cuts');
  });

  test('with the dials of a workshop tells turns and divisions; what is missing is asked for by its option', async () => {
    const { out } = await runHere(['steps', '--cone', '6x20x15', '--cuts', '5', '--workshop', shop, '--turning']);
    expect(out).toContain('cuts along');
    expect(out).toMatch(/turns\s+divisions/);
    const { code, err } = await runHere(['steps', '--sphere', '60', '--cuts', '5']);
    expect(code).toBe(2);
    expect(err).toContain('--height');
    expect((await runHere(['steps', '--cone', '6x20', '--cuts', '5'])).err).toContain('--cone');
  });
});

describe('threads and gears', () => {
  test('M14x1.5 on the example lathe: size before it, passes, wires, and gears that are exact', async () => {
    const { code, out } = await runHere(['threadplan', 'M14x1.5', '--workshop', shop]);
    expect(code).toBe(0);
    // ISO 965, 6g: the major diameter lies between 13.732 and 13.968.
    expect(out).toContain('limits 13.732 to 13.968');
    expect(out).toContain('Over three wires');
    expect(out).toContain('exact');
    expect((await runHere(['threadplan', 'M14x1.5', '--workshop', shop, '--internal'])).out).toContain('inside');
    expect((await runHere(['threadplan', 'screw', '--workshop', shop])).code).toBe(2);
  });

  test('a pitch of 1.25 on a leadscrew of 1.5 wants five sixths: 50 to 60', async () => {
    const { code, out } = await runHere(['gears', '--pitch', '1.25', '--workshop', shop]);
    expect(code).toBe(0);
    expect(out).toContain('50 : 60');
    expect((await runHere(['gears', '--pitch', 'x', '--workshop', shop])).err).toContain('--pitch');
  });

  // On 1.5 mm, 20 : 65 gives 1.5 · 20/65 = 0.46154 mm for 1.25 mm: 63 % too fine; 65 : 20 is farther off still.
  test.each([
    ['gears', '--pitch', '1.25'],
    ['gears', '--thread', 'M12x1.25'],
    ['threadplan', 'M12x1.25'],
    ['threadplan', 'M12x1.25', '--internal'],
  ])('wheels that do not give the pitch stop: %s %s', async (...asked) => {
    const document = Object(JSON.parse(readFileSync(shop, 'utf8')));
    document.lathe.changeGears = [20, 65];
    const folder = mkdtempSync(join(tmpdir(), 'gears-'));
    const two = join(folder, 'two.workshop.json');
    writeFileSync(two, JSON.stringify(document));
    try {
      const { code, out } = await runHere([...asked, '--workshop', two]);
      expect(code).toBe(1);
      expect(out).toContain('STOP');
      expect(out).toContain('No train of your wheels gives this pitch');
      expect(out).toContain('not good enough');
      expect(out).not.toContain('65 : 20');
      expect(out).not.toContain('half nuts');
      const json = await runHere([...asked, '--workshop', two, '--json']);
      expect(json.code).toBe(1);
      const read = JSON.parse(json.out);
      const { findings, others } = (read.gears ?? read).answer;
      expect(findings).toMatchObject([{ level: 'stop', id: 'route.no-gear-train' }]);
      expect(others).toEqual([]);
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});
