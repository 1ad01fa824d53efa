import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { integrate } from '../../test/quadrature.ts';
import { countOutside, referenceRows } from '../../test/reference.ts';
import { type BeamSection, secondMoment, shearCoefficient } from './beam-element.ts';
import {
  type ChuckSprings,
  clamped,
  compliance,
  deflections,
  deflectionUnderUnitLoad,
  factorBeam,
  type SteppedBeam,
} from './stepped-beam.ts';

const rows = referenceRows('dynamics', 'beam-worked-examples');
const centred: ChuckSprings = { translational: Infinity, rotational: 0 };

/** A beam as the reference rows describe it. */
function beamOf(support: string, length: number, diameter: number, youngsModulus: number): SteppedBeam {
  const sections = [{ from: 0, to: length, outerDiameter: diameter }];
  const tailstock = { at: length, stiffness: Infinity };
  if (support.startsWith('clamped-free')) return { sections, youngsModulus, poissonRatio: 0.3, chuck: clamped };
  if (support.startsWith('clamped-pinned'))
    return { sections, youngsModulus, poissonRatio: 0.3, chuck: clamped, tailstock };
  return { sections, youngsModulus, poissonRatio: 0.3, chuck: centred, tailstock };
}

/** Roark table 8.1, cases 1a, 1c and 1e, with the shear deflection of the simple cases added. */
function closedForm(support: string, l: number, d: number, e: number, a: number): number {
  const ei = e * secondMoment(d, 0);
  if (support.startsWith('clamped-free')) return a ** 3 / (3 * ei);
  if (support.startsWith('clamped-pinned')) return (a ** 3 * (l - a) ** 2 * (4 * l - a)) / (12 * ei * l ** 3);
  return (a ** 2 * (l - a) ** 2) / (3 * ei * l);
}

describe('plain bars agree with a 40-element run of another program [structure-CALC]', () => {
  for (const row of rows.filter((r) => r.timoshenko_um !== '')) {
    test(`${row.id}: ${row.support}, load at ${row.a_mm} of ${row.L_mm} mm`, () => {
      const beam = beamOf(row.support ?? '', Number(row.L_mm), Number(row.d_mm), Number(row.E_GPa) * 1000);
      const [unit] = deflectionUnderUnitLoad(beam, [Number(row.a_mm)]);
      expect(1000 * Number(row.F_N) * (unit ?? 0)).toBeCloseTo(Number(row.timoshenko_um), 2);
    });
  }
});

test('bars long for their thickness follow the closed forms of Roark table 8.1 [roark-8.1 cases 1a, 1c, 1e]', () => {
  for (const support of ['clamped-free', 'clamped-pinned', 'pinned-pinned']) {
    for (const at of [200, 500, 700]) {
      const [unit] = deflectionUnderUnitLoad(beamOf(support, 1000, 5, 206_000), [at]);
      const bending = closedForm(support, 1000, 5, 206_000, at);
      expect((unit ?? 0) / bending - 1).toBeGreaterThan(0);
      expect((unit ?? 0) / bending - 1).toBeLessThan(6e-4);
    }
  }
});

test('the place that gives most between chuck and centre lies at 0.586 of the length, by F L³/(101.9 E I) [roark-8.1 case 1c]', ({
  task,
}) => {
  const row = rows.find((r) => r.id === 'B39');
  const beam = beamOf('clamped-pinned', 4000, 20, 206_000);
  const stations = Array.from({ length: 401 }, (_, i) => 10 * i);
  const soft = deflectionUnderUnitLoad(beam, stations);
  const softest = Math.max(...soft);
  expect((stations[soft.indexOf(softest)] ?? 0) / 4000).toBeCloseTo(Number(row?.a_mm) / 200, 2);
  expect(4000 ** 3 / (softest * 206_000 * secondMoment(20, 0)) / 101.9).toBeCloseTo(1, 2);
  countOutside(task, 2);
});

describe('stepped bars agree with the unit-load integral, shear apart [structure-CALC]', () => {
  const steps: Record<string, [number, number][]> = {
    B37: [
      [60, 15],
      [60, 25],
    ],
    B38: [
      [40, 30],
      [50, 20],
      [30, 12],
    ],
  };
  for (const [id, parts] of Object.entries(steps)) {
    test(`${id}`, () => {
      const row = rows.find((r) => r.id === id);
      let from = 0;
      let shear = 0;
      const sections = parts.map(([length, diameter]) => {
        const section = { from, to: from + length, outerDiameter: diameter };
        from += length;
        // A force at the end shears every section alike: F L / (κ G A).
        shear += length / ((6 * 1.3) / (7 + 6 * 0.3)) / (206_000 / 2.6) / ((Math.PI * diameter ** 2) / 4);
        return section;
      });
      const [unit] = deflectionUnderUnitLoad({ sections, youngsModulus: 206_000, poissonRatio: 0.3, chuck: clamped }, [
        from,
      ]);
      expect(1000 * Number(row?.F_N) * ((unit ?? 0) - shear)).toBeCloseTo(Number(row?.recomputed_um), 3);
    });
  }
});

test('a shaft with two discs sags under its own weight as a published rotor program says [ROSS]', ({ task }) => {
  const beam: SteppedBeam = {
    sections: [{ from: 0, to: 1500, outerDiameter: 50 }],
    youngsModulus: 211_000,
    poissonRatio: 211 / (2 * 81.2) - 1,
    chuck: centred,
    tailstock: { at: 1500, stiffness: Infinity },
  };
  const g = 9.8065e-9 * 7810; // N/mm³
  const pieces = 600;
  const step = 1500 / pieces;
  const weight = Array.from({ length: pieces }, (_, i) => ({
    at: (i + 0.5) * step,
    force: g * step * (Math.PI / 4) * 50 ** 2,
  }));
  const disc = (at: number, diameter: number) => ({ at, force: g * 70 * (Math.PI / 4) * (diameter ** 2 - 50 ** 2) });
  const loads = [...weight, disc(500, 280), disc(1000, 350)];
  const factored = factorBeam(beam, [...loads.map((l) => l.at), 750, 1250]);
  const sag = deflections(factored, loads);
  let compared = 0;
  for (const row of rows.filter((r) => r.source === 'ROSS')) {
    const node = factored.nodes.findIndex((z) => Math.abs(z - Number(row.a_mm)) < 1e-3);
    expect(1000 * (sag[node] ?? 0)).toBeCloseTo(Number(row.published_um), 1);
    compared++;
  }
  expect(compared).toBe(4);
  countOutside(task, compared);
});

describe('stiff work between yielding ends rides on its springs [KJ]', () => {
  for (const row of rows.filter((r) => r.source === 'KJ')) {
    test(`${row.id}: ${row.case}`, () => {
      const beam: SteppedBeam = {
        sections: [{ from: 0, to: 500, outerDiameter: 400 }],
        youngsModulus: 1e10,
        poissonRatio: 0.3,
        chuck: { translational: 44_500, rotational: 0 },
        tailstock: { at: 500, stiffness: 30_000 },
      };
      const [unit] = deflectionUnderUnitLoad(beam, [500 * Number(row.a_mm)]);
      expect(1 / ((unit ?? 0) + 1 / 13_330) / 1000).toBeCloseTo(Number(row.stiffness_N_per_um), 3);
    });
  }
});

const anyBeam = fc
  .record({
    steps: fc.array(
      fc.tuple(
        fc.integer({ min: 3, max: 60 }),
        fc.integer({ min: 3, max: 40 }),
        fc.double({ min: 0, max: 0.9, noNaN: true }),
      ),
      {
        minLength: 1,
        maxLength: 6,
      },
    ),
    translational: fc.constantFrom(5_000, 50_000, Infinity),
    rotational: fc.constantFrom(500, 20_000, Infinity),
    centre: fc.constantFrom(undefined, 2_000, Infinity),
    places: fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true })),
  })
  .map(({ steps, translational, rotational, centre, places }) => {
    let from = 0;
    const sections = steps.map(([length, outerDiameter, bore]) => {
      const section = { from, to: from + length, outerDiameter, innerDiameter: bore * outerDiameter };
      from += length;
      return section;
    });
    const tailstock = centre === undefined ? undefined : { at: from, stiffness: centre };
    const beam: SteppedBeam = {
      sections,
      youngsModulus: 200_000,
      poissonRatio: 0.29,
      chuck: { translational, rotational },
      tailstock,
    };
    return { beam, a: places[0] * from, b: places[1] * from };
  });

test('a push here gives as much there as a push there gives here [maxwell-reciprocity]', () => {
  fc.assert(
    fc.property(anyBeam, ({ beam, a, b }) => {
      const there = compliance(beam, a, b);
      const here = compliance(beam, b, a);
      expect(Math.abs(there - here)).toBeLessThanOrEqual(1e-9 * Math.abs(there) + 1e-15);
    }),
  );
});

test('no work gives less for a softer chuck, and none gives negatively where it is pushed', () => {
  fc.assert(
    fc.property(anyBeam, ({ beam, a }) => {
      const [held] = deflectionUnderUnitLoad({ ...beam, chuck: clamped }, [a]);
      const [soft] = deflectionUnderUnitLoad(beam, [a]);
      expect(held ?? -1).toBeGreaterThanOrEqual(0);
      expect(soft ?? -1).toBeGreaterThanOrEqual((held ?? 0) * (1 - 1e-9));
    }),
  );
});

test('a clamped bar gives by the unit-load integral ∫ (a−z)²/EI dz + ∫ 1/(κGA) dz, whatever its steps and bore', () => {
  fc.assert(
    fc.property(anyBeam, ({ beam, a }) => {
      const [e, nu] = [beam.youngsModulus, beam.poissonRatio];
      const over = (s: BeamSection) => {
        const [outer, bore] = [s.outerDiameter, s.innerDiameter ?? 0];
        const shear =
          (shearCoefficient(bore / outer, nu) * e * Math.PI * (outer ** 2 - bore ** 2)) / 4 / (2 * (1 + nu));
        return integrate(
          (z) => (a - z) ** 2 / (e * secondMoment(outer, bore)) + 1 / shear,
          Math.min(s.from, a),
          Math.min(s.to, a),
        );
      };
      const byIntegral = beam.sections.reduce((sum, s) => sum + over(s), 0);
      const [unit] = deflectionUnderUnitLoad({ ...beam, chuck: clamped, tailstock: undefined }, [a]);
      // Stations within a micron of the jaws or a step share its node.
      expect(Math.abs((unit ?? 0) - byIntegral)).toBeLessThan(1e-4 * byIntegral + 1e-8);
    }),
  );
});

test('a chuck that yields adds 1/k + a²/k_rot to the compliance of the bar [dynamics/methods.md §6]', () => {
  const bar = beamOf('clamped-free', 60, 12, 206_000);
  const [held] = deflectionUnderUnitLoad(bar, [45]);
  const [soft] = deflectionUnderUnitLoad({ ...bar, chuck: { translational: 20_000, rotational: 4_000 } }, [45]);
  expect((soft ?? 0) - (held ?? 0)).toBeCloseTo(1 / 20_000 + 45 ** 2 / 4_000_000, 9);
});

test('where elements are cut does not matter: a station a thousandth beside a step changes nothing', () => {
  const beam: SteppedBeam = {
    sections: [
      { from: 0, to: 20, outerDiameter: 16 },
      { from: 20, to: 60, outerDiameter: 8 },
    ],
    youngsModulus: 193_000,
    poissonRatio: 0.29,
    chuck: clamped,
  };
  const [alone] = deflectionUnderUnitLoad(beam, [60]);
  const crowd = deflectionUnderUnitLoad(beam, [60, 20.002, 20.0045, ...Array.from({ length: 300 }, (_, i) => i / 5)]);
  expect((crowd[0] ?? 0) / (alone ?? 1)).toBeCloseTo(1, 7);
});

test('refuses gaps between sections, stations off the work and work that nothing holds', () => {
  const beam = beamOf('clamped-free', 60, 12, 206_000);
  expect(() => deflectionUnderUnitLoad(beam, [61])).toThrow('0 to 60 mm');
  expect(() => factorBeam({ ...beam, sections: [{ from: 5, to: 60, outerDiameter: 12 }] }, [])).toThrow(
    'where the section before ends',
  );
  expect(() => factorBeam({ ...beam, chuck: { translational: Infinity, rotational: 0 } }, [])).toThrow(
    'tailstock centre',
  );
  expect(() =>
    factorBeam({ ...beam, sections: [{ from: 0, to: 60, outerDiameter: 12, innerDiameter: 12 }] }, []),
  ).toThrow('less than 12');
});

test('stepped shafts bend as solid bricks of CalculiX do: within 2 % plain, 6 % stepped, 10 % at a narrow groove [CCX]', ({
  task,
}) => {
  // Solid bricks give more at the corner of a step, where little is carried: a groove works as if it were wider than it is.
  const bricks = referenceRows('dynamics', 'ccx-shafts-bending');
  const ids = [...new Set(bricks.map((r) => r.id ?? ''))];
  expect(ids.length).toBeGreaterThanOrEqual(6);
  for (const id of ids) {
    const own = bricks.filter((r) => r.id === id);
    let from = 0;
    const sections = (own[0]?.sections_length_outer_bore_mm ?? '').split('; ').map((step): BeamSection => {
      const [length = 0, outerDiameter = 0, innerDiameter = 0] = step.split(' x ').map(Number);
      const section = { from, to: from + length, outerDiameter, innerDiameter };
      from = section.to;
      return section;
    });
    const ends = sections.map((section) => section.to);
    const beam = factorBeam({ sections, youngsModulus: 206_000, poissonRatio: 0.3, chuck: clamped }, ends);
    const moved = deflections(beam, [{ at: from, force: 1000 }]);
    own.forEach((row, i) => {
      const ours = moved[beam.nodes.findIndex((z) => Math.abs(z - (ends[i] ?? 0)) < 1e-9)] ?? Number.NaN;
      const theirs = Number(row.moved_mm_by_1000_N);
      expect(Math.abs(ours / theirs - 1), `${id}, section ${i + 1}: ${ours} against ${theirs}`).toBeLessThan(
        id === 'groove' ? 0.1 : sections.length === 1 ? 0.02 : 0.06,
      );
    });
  }
  countOutside(task, bricks.length);
});
