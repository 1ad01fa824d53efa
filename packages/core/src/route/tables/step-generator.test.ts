import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { countOutside, referenceRows } from '../../../test/reference.ts';
import { DomainError } from '../../errors.ts';
import { chamferCuts } from './curve-chamfers.ts';
import { curveSteps, distanceToCurve, equalSteps, tipRadius } from './curve-steps.ts';
import { dialTurning } from './dialled-steps.ts';
import { capHeight, curveOf, type Generator, hollowed } from './step-generator.ts';

const dome = (radius: number, height: number) => curveOf({ shape: 'sphere', radius, height });

describe('equal steps of a dome agree with the constructed rows of the metrology reference', () => {
  const rows = referenceRows('metrology', 'step-and-scallop-examples').filter(
    (r) => r.example === 'dome by equal depth steps',
  );

  test.for(rows.map((r) => [r.id ?? '', r] as const))('%s', ([, row], { task }) => {
    const given = (name: string) =>
      Number(new RegExp(`\\b${name}=([\\d.]+)`).exec(row.inputs ?? '')?.[1] ?? Number.NaN);
    const corners = equalSteps(dome(given('R'), given('h')), given('n'), 0, 'facing').map((s) => s.cusp);
    const wanted = /^largest/.test(row.output ?? '') ? Math.max(...corners) : corners.at(-1);
    expect(wanted).toBeCloseTo(Number(row.recomputed), 6);
    countOutside(task, 1);
  });
});

test('equal steps leave higher corners than steps spaced for the least', () => {
  const highest = (steps: readonly { cusp: number }[]) => Math.max(...steps.map((s) => s.cusp));
  for (const direction of ['facing', 'turning'] as const)
    expect(highest(equalSteps(dome(25.4, 20), 20, 0.4, direction))).toBeGreaterThan(
      highest(curveSteps(dome(25.4, 20), 20, 0.4)),
    );
});

test('an ellipse of equal half axes is a sphere, and its tangents stand outside it', () => {
  const round = curveOf({ shape: 'ellipse', along: 20, across: 20, height: 8 });
  for (const depth of [0.5, 2, 5, 8]) {
    const exact = Math.sqrt(2 * 20 * depth - depth ** 2);
    const r = tipRadius(round, depth, 0);
    expect(r).toBeGreaterThanOrEqual(exact - 1e-9);
    expect(r - exact).toBeLessThan(0.001);
  }
});

const generators: readonly Generator[] = [
  { shape: 'sphere', radius: 60, height: capHeight(60, 32) },
  { shape: 'ellipse', along: 12, across: 20, height: 9 },
  { shape: 'cone', startDiameter: 6, endDiameter: 20, length: 15 },
  {
    shape: 'points',
    points: [
      { along: 0, diameter: 4 },
      { along: 3, diameter: 9 },
      { along: 8, diameter: 11 },
      { along: 10, diameter: 18 },
    ],
  },
];

test('the height of a cap of 60 mm over 32 mm is 60 − √(60² − 16²), and no cap is wider than its sphere', () => {
  expect(capHeight(60, 32)).toBeCloseTo(2.1727, 3);
  expect(() => capHeight(10, 21)).toThrow(DomainError);
});

test('a hollow is the dome with metal and air exchanged: the steps of a hemisphere are its steps from the other end', () => {
  const { curve, rim } = hollowed(dome(20, 20));
  expect(rim).toBeCloseTo(20, 9);
  for (const step of curveSteps(curve, 8, 0)) {
    const radius = rim - step.radius;
    // Never beyond the sphere around the middle of the mouth.
    expect(Math.hypot(step.depth, radius)).toBeLessThanOrEqual(20 + 1e-6);
  }
  expect(curveSteps(curve, 8, 0).at(-1)?.depth).toBeCloseTo(20, 9);
});

describe.each(generators.map((g) => [g.shape, g] as const))('%s', (_, generator) => {
  const curves = [curveOf(generator), hollowed(curveOf(generator)).curve];

  test('turned along in whole divisions no step goes below the curve', () => {
    const dials = {
      along: { division: 0.05, perTurn: 2, reads: 'travel' },
      across: { division: 0.02, perTurn: 1, reads: 'radius' },
    } as const;
    fc.assert(
      fc.property(
        fc.constantFrom(...curves),
        fc.integer({ min: 1, max: 20 }),
        fc.constantFrom(0, 0.2, 0.4, 0.8),
        (curve, count, nose) => {
          const touch = (curve.pieces.at(-1)?.to.r ?? 0) + 0.2;
          const steps = dialTurning(curve, equalSteps(curve, count, nose, 'turning'), nose, touch, dials);
          for (const s of steps) {
            expect(s.radius).toBeGreaterThanOrEqual(tipRadius(curve, s.depth, nose) - 1e-7);
            expect((s.along.turns * 2 + s.along.divisions * 0.05).toFixed(6)).toBe(s.depth.toFixed(6));
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  test('chamfer cuts stay above the curve and leave at most half the corner they find', () => {
    for (const curve of curves) {
      const steps = curveSteps(curve, 13, 0);
      const cuts = chamferCuts(curve, steps, 0);
      for (const [k, cut] of cuts.entries()) {
        const step = steps[k];
        const corner = { z: steps[k - 1]?.depth ?? 0, r: step?.radius ?? 0 };
        const [c, s] = [Math.cos(cut.angle), Math.sin(cut.angle)];
        const kept = corner.r * c - corner.z * s - cut.infeed * Math.max(c, s);
        for (let i = 0; i <= 200; i++) {
          const z = corner.z + (((step?.depth ?? 0) - corner.z) * i) / 200;
          const r = tipRadius(curve, z, 0);
          expect(r * c - z * s).toBeLessThanOrEqual(kept + 2e-4);
        }
        expect(cut.left).toBeLessThanOrEqual((step?.cusp ?? 0) + 1e-9);
      }
      const before = Math.max(...steps.map((s) => s.cusp));
      const left = cuts.map((c) => c.left).toSorted((a, b) => b - a);
      // The first corner of a dome lies on its pole, where a chamfer takes least.
      expect(left[1]).toBeLessThanOrEqual(0.5 * before);
    }
  });
});

test('what cannot be cut by steps is refused in words', () => {
  expect(() => curveOf({ shape: 'sphere', radius: 5, height: 6 })).toThrow(DomainError);
  expect(() => curveOf({ shape: 'ellipse', along: 5, across: 9, height: 6 })).toThrow(DomainError);
  expect(() => curveOf({ shape: 'cone', startDiameter: 9, endDiameter: 6, length: 6 })).toThrow(DomainError);
  const narrows = [
    { along: 0, diameter: 6 },
    { along: 4, diameter: 5 },
  ];
  expect(() => curveOf({ shape: 'points', points: narrows })).toThrow(/wider place/);
  expect(distanceToCurve(curveOf(generators[2] as Generator), { z: 0, r: 3 })).toBeCloseTo(0, 9);
});
