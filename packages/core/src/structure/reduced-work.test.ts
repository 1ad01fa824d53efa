import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { beamModes } from './beam-modes.ts';
import { reducedModes, reduceWork } from './reduced-work.ts';

const between = (min: number, max: number) =>
  fc.double({ min: Math.log(min), max: Math.log(max), noNaN: true }).map(Math.exp);
const someWork = fc.record({
  diameters: fc.array(between(5, 40), { minLength: 1, maxLength: 4 }),
  length: between(15, 200),
  grip: between(1e4, 1e6),
  tilt: between(2, 300),
  spindle: between(5e3, 1e5),
  spindleTilt: between(30, 900),
  mass: between(1, 10),
  centre: between(5e3, 5e4),
  steady: fc.boolean(),
});

describe('work boiled down to a few shapes', () => {
  test('rings as the whole beam does, within 0.5 % and its stiffness at the end within 2 %', () => {
    fc.assert(
      fc.property(someWork, fc.boolean(), (w, centred) => {
        const each = w.length / w.diameters.length;
        const sections = w.diameters.map((outerDiameter, i) => ({ from: i * each, to: (i + 1) * each, outerDiameter }));
        const work = { sections, youngsModulus: 206_000, poissonRatio: 0.3, density: 7.85e-6 };
        const end = sections.at(-1)?.to ?? 0;
        const supports = [
          ...(centred ? [{ at: end, stiffness: w.centre }] : []),
          ...(w.steady ? [{ at: end / 2, stiffness: 1e4 }] : []),
        ];
        const chuck = { translational: w.grip, rotational: w.tilt };
        const spindle = {
          springs: { translational: w.spindle, rotational: w.spindleTilt },
          mass: w.mass,
          inertia: 1150 * w.mass,
        };
        const whole = beamModes({ ...work, chuck, spindle, supports }, { stations: [end], count: 3, elements: 12 });
        const few = reducedModes(
          reduceWork(work, { supports: supports.map((s) => s.at), stations: [end] }, 12),
          { chuck, spindle, supports: supports.map((s) => s.stiffness) },
          3,
        );
        const stiffest = Math.max(...whole.map((m) => Math.abs(m.shape[0] ?? 0) / m.frequency));
        whole.forEach((mode, i) => {
          expect(Math.abs((few[i]?.frequency ?? 0) / mode.frequency - 1)).toBeLessThan(5e-3);
          const [a, b] = [mode, few[i]].map((m) => (Math.abs(m?.shape[0] ?? 0) / (m?.frequency ?? 1) / stiffest) ** 2);
          expect(Math.abs((a ?? 0) - (b ?? 0))).toBeLessThan(0.02);
        });
      }),
      { numRuns: 300 },
    );
  });

  test('refuses springs that are none', () => {
    const work = {
      sections: [{ from: 0, to: 50, outerDiameter: 10 }],
      youngsModulus: 2e5,
      poissonRatio: 0.3,
      density: 8e-6,
    };
    const springs = { translational: 1e5, rotational: 100 };
    const spindle = { springs, mass: 2, inertia: 2000 };
    const reduced = reduceWork(work, { supports: [50], stations: [50] }, 12);
    expect(() => reducedModes(reduced, { chuck: springs, spindle, supports: [] }, 1)).toThrow('as many as');
    expect(() => reducedModes(reduced, { chuck: springs, spindle, supports: [0] }, 1)).toThrow('support.stiffness');
    expect(() => reduceWork(work, { supports: [], stations: [51] }, 12)).toThrow('on the work');
  });
});
