import fc from 'fast-check';
import { expect, test } from 'vitest';
import { clamped, deflectionUnderUnitLoad } from '../structure/stepped-beam.ts';
import { flat } from './profile.ts';
import { after, bar, beamOut, cutToLength, largestBetween, simplified } from './workpiece.ts';

const cuts = fc.array(
  fc.tuple(
    fc.double({ min: -5, max: 105, noNaN: true }),
    fc.double({ min: 0.1, max: 60, noNaN: true }),
    fc.double({ min: 2, max: 40, noNaN: true }),
  ),
  { maxLength: 8 },
);

test('turning down never adds metal, never leaves a gap, and comes to the smallest diameter asked for at every place', () => {
  fc.assert(
    fc.property(cuts, fc.double({ min: 0.5, max: 99.5, noNaN: true }), (list, z) => {
      const work = list.reduce(
        (w, [from, length, d]) => after(w, { cuts: 'outside', to: flat(from, from + length, d / 2, 'a') }),
        bar(0, 100, 30),
      );
      expect(work.outside[0]?.from).toBeCloseTo(0, 6);
      expect(work.outside.at(-1)?.to).toBeCloseTo(100, 6);
      work.outside.slice(1).forEach((s, i) => {
        expect(s.from).toBeCloseTo(work.outside[i]?.to ?? Number.NaN, 6);
      });
      const covering = list.filter(([from, length]) => from < z && z < from + length).map(([, , d]) => d);
      const onEdge = list.some(([from, length]) => Math.abs(from - z) < 1e-3 || Math.abs(from + length - z) < 1e-3);
      if (!onEdge) expect(largestBetween(work, z - 1e-5, z + 1e-5)).toBeCloseTo(Math.min(30, ...covering), 9);
    }),
  );
});

test('a hole weakens the beam where it is, and what is cut off is gone', () => {
  const drilled = after(bar(0, 50, 20), { cuts: 'inside', to: flat(30, 60, 4, 'hole') });
  const beam = beamOut(drilled, 10, 'right');
  expect(beam.map((s) => [s.from, s.to, s.innerDiameter ?? 0])).toEqual([
    [0, 20, 0],
    [20, 40, 8],
  ]);
  expect(cutToLength(drilled, 0, 25).inside).toEqual([]);
  expect(beamOut(drilled, 40, 'left').map((s) => s.innerDiameter ?? 0)).toEqual([8, 0]);
});

test('a beam in fewer stretches bends as far within a tenth', () => {
  const sections = fc.array(fc.tuple(fc.integer({ min: 2, max: 12 }), fc.integer({ min: 8, max: 20 })), {
    minLength: 21,
    maxLength: 60,
  });
  fc.assert(
    fc.property(sections, (drawn) => {
      let at = 0;
      const beam = drawn.map(([length, outerDiameter]) => {
        at += length;
        return { from: at - length, to: at, outerDiameter };
      });
      const give = (s: typeof beam) =>
        deflectionUnderUnitLoad({ sections: s, youngsModulus: 2e5, poissonRatio: 0.3, chuck: clamped }, [at])[0] ?? 0;
      const few = simplified(beam, 20);
      expect(few.length).toBe(20);
      expect(few.at(-1)?.to).toBe(at);
      expect(Math.abs(give([...few] as typeof beam) / give(beam) - 1)).toBeLessThan(0.1);
    }),
    { numRuns: 60 },
  );
});
