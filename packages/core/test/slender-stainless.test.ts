/**
 * What an experienced turner would expect of a slender stainless pin, held against the force and bending models together.
 * The bounds are common practice, not measurements.
 */
import { describe, expect, test } from 'vitest';
import type { EdgeCondition } from '../src/cutting/edge.ts';
import { turningForce } from '../src/cutting/turning-force.ts';
import { cuttingData } from '../src/materials/cutting-data.ts';
import { findMaterial } from '../src/materials/find.ts';
import { passes } from '../src/structure/size-error.ts';
import { type ChuckSprings, clamped, deflectionUnderUnitLoad } from '../src/structure/stepped-beam.ts';
import { radians } from '../src/units/quantities.ts';

const stainless = findMaterial('303');
const { specificForce = Number.NaN, exponent = Number.NaN } = cuttingData(stainless);

/** Ø10 standing 40 mm out, turned with a 0.4 mm nose at 0.05 mm a turn. */
const radial = (depth: number, edge: EdgeCondition) =>
  turningForce({
    depth,
    edge,
    feed: 0.05,
    noseRadius: 0.4,
    approachAngle: radians(93),
    rake: radians(edge === 'moulded' ? 0 : 6),
    cutData: { specificForce, exponent },
  });

const yielding = (chuck: ChuckSprings, at: number[]) =>
  deflectionUnderUnitLoad(
    {
      sections: [{ from: 0, to: 40, outerDiameter: 10 }],
      youngsModulus: stainless.youngsModulus,
      poissonRatio: stainless.poisson,
      chuck,
    },
    at,
  );

/** A light lathe's three-jaw, invented: 20 N/µm sideways, 5 kN·m/rad tilting. */
const threeJaw: ChuckSprings = { translational: 20_000, rotational: 5_000 };

describe('303, Ø10 × 40 out of the chuck, 0.05 mm a turn, nose 0.4 mm [common practice]', () => {
  const depths = [0.05, 0.1, 0.2, 0.3, 0.5];

  test('a sharp edge pushes the pin away with some 5 to 60 N, growing with depth', () => {
    const forces = depths.map((a) => radial(a, 'sharp').radial);
    expect(forces.toSorted((a, b) => a - b)).toEqual(forces);
    expect(forces[0]).toBeGreaterThan(5);
    expect(forces.at(-1)).toBeLessThan(60);
  });

  test('half a millimetre takes well under 100 W at 20 m/min: a light lathe does it', () => {
    expect((radial(0.5, 'honed').cutting * 20) / 60).toBeLessThan(100);
  });

  test('the end gives microns in a chuck that holds fast, hundredths in a light lathe’s', () => {
    for (const depth of depths) {
      const force = radial(depth, 'sharp').radial;
      const [held = 0] = yielding(clamped, [40]);
      const [soft = 0] = yielding(threeJaw, [40]);
      expect(1000 * force * held).toBeGreaterThan(1);
      expect(1000 * force * held).toBeLessThan(15);
      expect(1000 * force * soft).toBeGreaterThan(3);
      expect(1000 * force * soft).toBeLessThan(40);
    }
  });

  test('one pass of 0.2 mm leaves the end one to five hundredths larger than the root, a spring pass most of it gone', () => {
    const at = [5, 15, 25, 35];
    const done = passes([5.2, 5.2, 5.2, 5.2], [5, 5], (a) => radial(a, 'sharp').radial, yielding(threeJaw, at));
    const [first = 0, spring = 0] = done.map((p) => (p.diameterError.at(-1) ?? 0) - (p.diameterError[0] ?? 0));
    expect(first).toBeGreaterThan(0.01);
    expect(first).toBeLessThan(0.05);
    expect(spring).toBeLessThan(0.6 * first);
  });

  test('a moulded edge pushes at least half as hard again as a sharp one in a light finishing cut', () => {
    expect(radial(0.05, 'moulded').radial / radial(0.05, 'sharp').radial).toBeGreaterThan(1.5);
  });
});
