import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { referenceRows } from '../../../test/reference.ts';
import { DomainError } from '../../errors.ts';
import type { Arc, Point, Segment } from '../../part/outline-types.ts';
import { curveSteps, type StepCurve, stepsForCusp, tipRadius } from './curve-steps.ts';
import { dialSteps } from './dialled-steps.ts';

/** Points of an arc from its angle: bulging out when `out`, else hollow. Both widen as the depth grows. */
function arcOf(out: boolean, start: Point, radius: number, from: number, to: number): Arc {
  const at = (t: number) => (out ? { z: -Math.cos(t), r: Math.sin(t) } : { z: Math.sin(t), r: -Math.cos(t) });
  const centre = { z: start.z - radius * at(from).z, r: start.r - radius * at(from).r };
  const end = { z: centre.z + radius * at(to).z, r: centre.r + radius * at(to).r };
  return { kind: 'arc', feature: 'curve', from: start, to: end, centre, radius, sweep: (out ? -1 : 1) * (to - from) };
}

function dome(radius: number, height: number): StepCurve {
  return { pieces: [arcOf(true, { z: 0, r: 0 }, radius, 0, Math.acos(1 - height / radius))], depth: height };
}

const angles = fc
  .tuple(fc.double({ min: 0, max: 1.5, noNaN: true }), fc.double({ min: 0.05, max: 1.5, noNaN: true }))
  .filter(([a, b]) => a + b < 1.56);

const arbitraryPiece = fc.oneof(
  fc.record({
    kind: fc.constantFrom('out' as const, 'hollow' as const),
    radius: fc.double({ min: 0.5, max: 60, noNaN: true }),
    angles,
  }),
  fc.record({
    kind: fc.constant('cone' as const),
    length: fc.double({ min: 0.5, max: 20, noNaN: true }),
    rise: fc.double({ min: 0, max: 15, noNaN: true }),
  }),
);

/** Convex arcs, crowns, cones, hollow arcs, one after another. */
const arbitraryCurve = fc
  .tuple(fc.double({ min: 0, max: 20, noNaN: true }), fc.array(arbitraryPiece, { minLength: 1, maxLength: 4 }))
  .map(([radius, drawn]): StepCurve => {
    const pieces: Segment[] = [];
    let at: Point = { z: 0, r: radius };
    for (const p of drawn) {
      const piece: Segment =
        p.kind === 'cone'
          ? { kind: 'line', feature: 'curve', from: at, to: { z: at.z + p.length, r: at.r + p.rise } }
          : arcOf(p.kind === 'out', at, p.radius, p.angles[0], p.angles[0] + p.angles[1]);
      pieces.push(piece);
      at = piece.to;
    }
    return { pieces, depth: at.z };
  });

/** Points of the curve, close together, worked out apart from the code under test. */
function sampled(curve: StepCurve): Point[] {
  return curve.pieces.flatMap((piece) =>
    Array.from({ length: 1001 }, (_, i): Point => {
      const t = i / 1000;
      if (piece.kind === 'line')
        return { z: piece.from.z + t * (piece.to.z - piece.from.z), r: piece.from.r + t * (piece.to.r - piece.from.r) };
      const angle = (p: Point) => Math.atan2(p.r - piece.centre.r, p.z - piece.centre.z);
      const a = angle(piece.from) + t * (angle(piece.to) - angle(piece.from));
      return { z: piece.centre.z + piece.radius * Math.cos(a), r: piece.centre.r + piece.radius * Math.sin(a) };
    }),
  );
}

/** How far the cutter, fed square to the axis down to its stop, goes below the deepest-cut of the points. */
function cutInto(points: readonly Point[], depth: number, tip: number, nose: number): number {
  const centre = { z: depth - nose, r: tip + nose };
  const under = (z: number) => {
    if (z > depth) return Number.POSITIVE_INFINITY;
    // On the side of the free end the body of the cutter is no narrower than its tip.
    return z <= centre.z ? tip : centre.r - Math.sqrt(Math.max(0, nose ** 2 - (z - centre.z) ** 2));
  };
  return Math.max(...points.map((p) => p.r - under(p.z)));
}

const along = { division: 0.05, perTurn: 2, reads: 'travel' } as const;
const dials = fc.constantFrom(
  { along, across: { division: 0.02, perTurn: 1, reads: 'radius' as const } },
  { along, across: { division: 0.0254, perTurn: 1.27, reads: 'diameter' as const } },
  {
    along: { division: 0.25, perTurn: 18, reads: 'travel' as const },
    across: { division: 0.05, perTurn: 4, reads: 'diameter' as const },
  },
);
const nose = fc.constantFrom(0, 0.1, 0.2, 0.4, 0.8, 1.6, 3);

describe('no step cuts below the curve', () => {
  test('where the swept nose is held against points of the curve, exact and in whole divisions', () => {
    fc.assert(
      fc.property(arbitraryCurve, nose, fc.integer({ min: 1, max: 20 }), dials, (curve, rho, count, lathe) => {
        const points = sampled(curve);
        const steps = curveSteps(curve, count, rho);
        const touch = Math.max(...points.map((p) => p.r)) + 0.3;
        const dialled = dialSteps(curve, steps, rho, touch, lathe);
        for (const s of [...steps, ...dialled]) expect(cutInto(points, s.depth, s.radius, rho)).toBeLessThan(1e-6);
      }),
      { numRuns: 300 },
    );
  });

  test('nor where the curve ends a hair before a division of the dial', () => {
    const curve: StepCurve = {
      pieces: [{ kind: 'line', feature: 'curve', from: { z: 0, r: 0.025 }, to: { z: 3.24999975, r: 0.025 } }],
      depth: 3.24999975,
    };
    const lathe = {
      along: { division: 0.25, perTurn: 18, reads: 'travel' },
      across: { division: 0.05, perTurn: 4, reads: 'diameter' },
    } as const;
    const [step] = dialSteps(curve, curveSteps(curve, 1, 0), 0, 0.325, lathe);
    expect(step?.radius).toBeCloseTo(0.025, 9);
  });

  test('and the check would notice a cutter that goes two hundredths too deep', () => {
    const curve = dome(32, 6);
    const points = sampled(curve);
    const step = curveSteps(curve, 12, 0.4)[5];
    expect(cutInto(points, step?.depth ?? 0, (step?.radius ?? 0) - 0.02, 0.4)).toBeGreaterThan(0.015);
  });
});

describe('the steps of a dome agree with the constructed rows of the metrology reference', () => {
  const rows = referenceRows('metrology', 'step-and-scallop-examples').filter(
    (r) => r.example === 'dome by minimax steps',
  );

  test('which are there', () => {
    expect(rows.length).toBeGreaterThanOrEqual(14);
  });

  test.each(rows.map((r) => [r.id ?? '', r] as const))('%s', (_, row) => {
    const given = (name: string) =>
      Number(new RegExp(`\\b${name}=([\\d.]+)`).exec(row.inputs ?? '')?.[1] ?? Number.NaN);
    const expected = Number(row.recomputed);
    const curve = dome(given('R'), given('h'));
    if (row.output === 'steps needed') {
      expect(stepsForCusp(curve, given('d'), 0)).toBe(expected);
      return;
    }
    const steps = curveSteps(curve, given('n'), 0);
    if (row.output === 'every cusp') for (const s of steps) expect(s.cusp).toBeCloseTo(expected, 5);
    else if (row.output?.startsWith('depth')) expect(steps[given('k') - 1]?.depth).toBeCloseTo(expected, 5);
    else expect(steps[given('k') - 1]?.radius).toBeCloseTo(expected, 5);
  });
});

test('on a cone a pointed cutter takes equal steps, and their corners stand l sin β / n above it', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1, max: 40, noNaN: true }),
      fc.double({ min: 0.05, max: 1.4, noNaN: true }),
      fc.integer({ min: 1, max: 15 }),
      (length, angle, count) => {
        const to = { z: length, r: 3 + length * Math.tan(angle) };
        const curve: StepCurve = {
          pieces: [{ kind: 'line', feature: 'cone', from: { z: 0, r: 3 }, to }],
          depth: length,
        };
        for (const s of curveSteps(curve, count, 0)) expect(s.cusp).toBeCloseTo((length * Math.sin(angle)) / count, 5);
      },
    ),
  );
});

test('the nose of the cutter rests on a dome with its centre the two radii from that of the dome', () => {
  // Tangent circles: (R + ρ)² = (R − x + ρ)² + (r + ρ)², solved for r.
  const [R, rho, x] = [32, 0.8, 3];
  const r = Math.sqrt((R + rho) ** 2 - (R - x + rho) ** 2) - rho;
  expect(tipRadius(dome(R, 6), x, rho)).toBeCloseTo(r, 9);
});

test('on an arc that bulges, more steps never leave higher corners', () => {
  const bulging = fc
    .tuple(fc.double({ min: 0, max: 20, noNaN: true }), fc.double({ min: 0.5, max: 60, noNaN: true }), angles)
    .map(([start, radius, [from, more]]): StepCurve => {
      const arc = arcOf(true, { z: 0, r: start }, radius, from, from + more);
      return { pieces: [arc], depth: arc.to.z };
    });
  fc.assert(
    fc.property(bulging, fc.integer({ min: 1, max: 12 }), (curve, count) => {
      const highest = (n: number) => Math.max(...curveSteps(curve, n, 0).map((s) => s.cusp));
      expect(highest(count + 1)).toBeLessThanOrEqual(highest(count) + 1e-6);
    }),
  );
});

test('a curve that narrows away from the free end is refused', () => {
  const curve: StepCurve = {
    pieces: [{ kind: 'line', feature: 'cone', from: { z: 0, r: 5 }, to: { z: 4, r: 3 } }],
    depth: 4,
  };
  expect(() => curveSteps(curve, 4, 0)).toThrow(DomainError);
  expect(() => curveSteps(dome(32, 6), 0, 0)).toThrow(DomainError);
  expect(() => stepsForCusp(dome(32, 6), 0, 0)).toThrow(DomainError);
});
