import { describe, expect, test } from 'vitest';
import { exampleJob } from '../../test/examples.ts';
import { readJob } from '../job/read-document.ts';
import { definePart } from '../part/define-part.ts';
import { assessDuty } from './assess-duty.ts';

const job = exampleJob('valve-guide-pin');
if (!job.part) throw new Error('the example has a part');
const part = definePart(job.part);

describe('duty', () => {
  test('6 f7 in 6 H8 has 10 to 40 µm of clearance [ISO 286: f7 −10/−22, H8 +18/0, by hand]', () => {
    const fit = assessDuty(part, job.mates ?? [], job.duty).fits.find((f) => f.mate === 'guide-hole');
    expect(fit?.kind).toBe('clearance');
    expect(fit?.least).toBeCloseTo(0.01, 9);
    expect(fit?.most).toBeCloseTo(0.04, 9);
  });

  test('a fit that can come out looser than wanted is called out', () => {
    const mates = (job.mates ?? []).map((m) => ({ ...m, wanted: { least: 0, most: 0.03 } }));
    const found = assessDuty(part, mates, undefined).findings.filter((f) => f.id === 'duty.fit-not-as-wanted');
    expect(found.map((f) => f.at)).toContain('guide.diameter');
  });

  test('every seal and bond is answered in figures from low to high', () => {
    const { checks } = assessDuty(part, job.mates ?? [], job.duty);
    expect(checks.map((c) => c.id)).toEqual(['upper-seal', 'lower-seal', 'insert-bond']);
    for (const figure of checks.flatMap((c) => c.figures)) {
      expect(figure.low).toBeLessThanOrEqual(figure.typical);
      expect(figure.typical).toBeLessThanOrEqual(figure.high);
    }
  });

  test('the squeeze of the upper ring is (1.78 − 1.35)/1.78 less half the running tolerances [by hand]', () => {
    const seal = assessDuty(part, job.mates ?? [], job.duty).checks[0];
    // Bore 14.0135, floor 11.2785 in the middle of their limits: depth 1.3675 of a cord of 1.78.
    expect(seal?.figures.find((f) => f.what === 'squeeze')?.typical).toBeCloseTo(100 * (1 - 1.3675 / 1.78), 1);
  });

  test('the numbers shown as put in give the figure by the formula shown', () => {
    const answer = assessDuty(part, job.mates ?? [], job.duty);
    const figures = answer.checks.flatMap((c) => c.figures).filter((f) => f.worked);
    const put = (figure: (typeof figures)[number], sign: string): number =>
      figure.worked?.put.find((p) => p.what.startsWith(`${sign},`))?.value ?? Number.NaN;
    // Each formula as it stands on the screen, written once more by hand.
    const byHand: Record<string, (of: (sign: string) => number) => number> = {
      squeeze: (of) => (100 * (of('W') - Math.abs(of('D') - of('d')) / 2)) / of('W'),
      stretch: (of) => (100 * (of('d') - of('i'))) / of('i'),
      'fill of the groove': (of) => (25 * Math.PI * of('W') ** 2) / (of('b') * of('h')),
      'gap on the diameter': (of) => of('D') - of('c'),
    };
    expect(figures.filter((f) => byHand[f.what])).toHaveLength(8);
    for (const figure of figures) {
      const formula = byHand[figure.what];
      if (formula)
        expect(figure.typical, figure.what).toBeCloseTo(
          formula((sign) => put(figure, sign)),
          6,
        );
    }
    const bond = figures.find((f) => f.what === 'torque it carries');
    const shear = bond?.worked?.put.filter((p) => p.what.startsWith('τ')).reduce((t, p) => t * p.value, 1) ?? 0;
    if (!bond) throw new Error('the example has a bond');
    expect(bond.typical).toBeCloseTo((Math.PI * put(bond, 'd') ** 2 * put(bond, 'L') * shear) / 2000, 6);
    for (const { least, most, worked } of answer.fits) {
      const of = (start: string): number => worked.put.find((p) => p.what.startsWith(start))?.value ?? Number.NaN;
      expect(least).toBeCloseTo(of('D least') - of('d most'), 9);
      expect(most).toBeCloseTo(of('D most') - of('d least'), 9);
    }
  });

  test('a seal in a groove that is not there, or a ring nobody knows, is said and not thrown', () => {
    const [seal] = job.duty?.seals ?? [];
    if (!seal) throw new Error('the example has seals');
    const ids = (over: Partial<typeof seal>) =>
      assessDuty(part, job.mates ?? [], { ...job.duty, bonds: [], seals: [{ ...seal, ...over }] }).findings.map(
        (f) => f.id,
      );
    expect(ids({ groove: 'nowhere' })).toContain('duty.missing');
    expect(ids({ ring: 'AS568-999' })).toContain('duty.cannot-check');
  });

  test('a mate that meets a size the part does not have is called out', () => {
    const mates = (job.mates ?? []).map((m) => ({ ...m, with: 'tail.diameter' }));
    expect(assessDuty(part, mates, undefined).findings.map((f) => f.id)).toContain('duty.mate-without-dimension');
  });
});

test('a part with no duty has nothing to answer for', () => {
  const bare = readJob({
    sparewright: 'job',
    version: 1,
    title: 't',
    units: 'mm',
    hazard: 'ordinary',
    part: { name: 'p', outside: [] },
  });
  if (!bare.part) throw new Error('it has a part');
  expect(assessDuty(definePart(bare.part), [], undefined)).toEqual({ fits: [], checks: [], findings: [] });
});
