import fc from 'fast-check';
import { expect, test } from 'vitest';
import { bar, beamOut, cutToLength, largestBetween, turnedDown } from './workpiece.ts';

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
      const work = list.reduce((w, [from, length, d]) => turnedDown(w, from, from + length, d), bar(0, 100, 30));
      expect(work[0]?.from).toBeCloseTo(0, 9);
      expect(work.at(-1)?.to).toBeCloseTo(100, 9);
      work.slice(1).forEach((s, i) => {
        expect(s.from).toBeCloseTo(work[i]?.to ?? Number.NaN, 9);
      });
      const covering = list.filter(([from, length]) => from < z && z < from + length).map(([, , d]) => d);
      const expected = Math.min(30, ...covering);
      const at = work.find((s) => s.from <= z && z <= s.to);
      const onEdge = list.some(([from, length]) => Math.abs(from - z) < 1e-6 || Math.abs(from + length - z) < 1e-6);
      if (!onEdge) expect(at?.diameter).toBe(expected);
    }),
  );
});

test('the largest between two places is that of the stretches there', () => {
  const work = turnedDown(turnedDown(bar(0, 100, 30), 40, 100, 20), 80, 100, 10);
  expect(largestBetween(work, 30, 90)).toBe(30);
  expect(largestBetween(work, 40, 90)).toBe(20);
  expect(largestBetween(work, 200, 300)).toBe(0);
});

test('cut to length, what stands out of the jaws is a beam that begins at the jaws, whichever end is out', () => {
  const work = cutToLength(turnedDown(bar(-20, 90, 30), 50, 90, 10), -1, 81);
  expect(beamOut(work, 5, 'right')).toEqual([
    { from: 0, to: 45, outerDiameter: 30 },
    { from: 45, to: 76, outerDiameter: 10 },
  ]);
  expect(beamOut(work, 70, 'left')).toEqual([
    { from: 0, to: 20, outerDiameter: 10 },
    { from: 20, to: 71, outerDiameter: 30 },
  ]);
});
