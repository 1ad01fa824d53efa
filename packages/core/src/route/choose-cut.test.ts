import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fullWorkshop } from '../../test/arbitrary-workshop.ts';
import { cuttingPower, motorPower } from '../cutting/power.ts';
import { minimumChip } from '../cutting/rubbing.ts';
import { cuttingSpeed } from '../cutting/speed.ts';
import { turningForce } from '../cutting/turning-force.ts';
import { drivePower, spindleSpeeds } from '../lathe/drive.ts';
import { workshopSchema } from '../lathe/schema.ts';
import { expectedRa } from '../standards/finish/turned-roughness.ts';
import { radians } from '../units/quantities.ts';
import { choiceInWords } from './choice-in-words.ts';
import { chooseCut } from './choose-cut.ts';
import type { CutWanted } from './cut-candidate.ts';
import { passHandling, usablePower } from './practice.ts';

const workshop = workshopSchema('mm').parse(fullWorkshop);
const lathes = [
  workshop.lathe,
  { ...workshop.lathe, feeds: [], drive: { power: 90, behaviour: 'constant power' as const } },
  {
    ...workshop.lathe,
    speeds: { kind: 'range' as const, from: 60, to: 2500 },
    drive: { power: 250, behaviour: 'constant torque' as const, baseSpeed: 900 },
  },
];
const cutters = workshop.cutters.filter((c) => c.kind === 'turning');

const wanted = fc.record({
  diameter: fc.double({ min: 4, max: 60, noNaN: true }),
  length: fc.double({ min: 2, max: 90, noNaN: true }),
  total: fc.double({ min: 0.01, max: 3, noNaN: true }),
  division: fc.constantFrom(0.01, 0.02, 0.025),
  fewestPasses: fc.constantFrom(1, 3),
  yielding: fc.constantFrom(0, 1e-5, 1e-4, 1e-3),
  bendingLimit: fc.constantFrom(0.005, 0.02, 0.15),
  finish: fc.constantFrom(undefined, 1.6, 3.2),
  speeds: fc.constantFrom({ low: 20, high: 32 }, { low: 53, high: 73 }, { low: 5, high: 400 }),
  cutData: fc.constantFrom(
    { specificForce: 2150, exponent: 0.2 },
    { specificForce: 780, exponent: 0.18 },
    { specificForce: 700, exponent: 0.25 },
  ),
  where: fc.constantFrom('outside' as const, 'bore' as const),
}) satisfies fc.Arbitrary<CutWanted>;

type Cutter = (typeof cutters)[number];
type Lathe = (typeof lathes)[number];

/** The limits a cut breaks and the time it takes, worked out by itself. */
function judged(w: CutWanted, cutter: Cutter, lathe: Lathe, rpm: number, feed: number, passes: number) {
  const divisions = Math.floor(w.total / w.division + 1e-6);
  const depth = divisions < 1 ? w.total : Math.ceil(divisions / passes) * w.division;
  const force = turningForce({
    depth,
    feed,
    noseRadius: cutter.noseRadius,
    approachAngle: radians(cutter.approachAngle),
    rake: radians(cutter.rake),
    edge: cutter.edge,
    cutData: w.cutData,
    where: w.where,
  });
  const power = motorPower(cuttingPower(force.cutting, cuttingSpeed(w.diameter, rpm)), lathe.drive.efficiency ?? 0.75);
  const ra = cutter.noseRadius >= feed && cutter.noseRadius > 0 ? expectedRa(feed, cutter.noseRadius).high : Infinity;
  const broken = [
    2 * force.radial * w.yielding > w.bendingLimit ? 'bending' : '',
    power > usablePower * drivePower(lathe, rpm) ? 'power' : '',
    depth > cutter.maxDepth + 1e-9 ? 'cutter' : '',
    force.chipThickness < minimumChip(cutter.edge).usual ? 'chip' : '',
    w.finish !== undefined && ra > w.finish ? 'finish' : '',
  ].filter((b) => b !== '');
  return { broken, time: passes * ((60 * w.length) / (feed * rpm) + passHandling) };
}

/** Every speed in the range (or the nearest slower), every feed, every number of passes. */
function* everyCut(w: CutWanted, lathe: Lathe, slowerToo = false) {
  const all = spindleSpeeds(lathe);
  const inside = all.filter((n) => {
    const v = cuttingSpeed(w.diameter, n);
    return v >= w.speeds.low && v <= w.speeds.high;
  });
  const slower = all.filter((n) => cuttingSpeed(w.diameter, n) < w.speeds.low);
  const allowed = inside.length > 0 ? inside : slower.length > 0 ? slower.slice(-1) : all.slice(0, 1);
  const speeds = slowerToo ? new Set([...slower, ...allowed]) : allowed;
  const most = Math.max(1, Math.floor(w.total / w.division + 1e-6));
  for (const rpm of speeds)
    for (const feed of lathe.feeds.length > 0 ? lathe.feeds : [0.05, 0.08, 0.12])
      for (let passes = Math.min(w.fewestPasses, most); passes <= most; passes++) yield { rpm, feed, passes };
}

describe('of all the speeds, feeds and numbers of passes there are', () => {
  test('the cut chosen keeps the limits it says it keeps, and breaks those it says it breaks', () => {
    fc.assert(
      fc.property(wanted, fc.constantFrom(...cutters), fc.constantFrom(...lathes), (w, cutter, lathe) => {
        const { numbers, broken, time } = chooseCut(w, cutter, lathe);
        const again = judged(w, cutter, lathe, numbers.speed, numbers.feed, numbers.passes);
        expect(again.broken).toEqual(broken);
        expect(again.time).toBeCloseTo(time, 6);
      }),
      { numRuns: 300 },
    );
  });

  test('none that keeps every limit is quicker, and if the one chosen breaks a limit there is none that keeps all', () => {
    fc.assert(
      fc.property(wanted, fc.constantFrom(...cutters), fc.constantFrom(...lathes), (w, cutter, lathe) => {
        const chosen = chooseCut(w, cutter, lathe);
        let best = Number.POSITIVE_INFINITY;
        for (const cut of everyCut(w, lathe)) {
          const { broken, time } = judged(w, cutter, lathe, cut.rpm, cut.feed, cut.passes);
          if (broken.length === 0) best = Math.min(best, time);
        }
        if (Number.isFinite(best)) {
          expect(chosen.broken).toEqual([]);
          expect(chosen.time).toBeCloseTo(best, 6);
        } else if (chosen.broken.length === 0) {
          // Only a speed below the published range can have saved the drive.
          expect(chosen.numbers.cuttingSpeed).toBeLessThan(w.speeds.low);
        }
      }),
      { numRuns: 150 },
    );
  });

  test('where singing and size are judged, that grow with depth, the quickest that keeps both is found', () => {
    const grows = fc.record({
      error: fc.double({ min: 0.001, max: 0.5, noNaN: true }),
      sings: fc.integer({ min: 20, max: 4000 }),
    });
    fc.assert(
      fc.property(wanted, fc.constantFrom(...cutters), fc.constantFrom(...lathes), grows, (w, cutter, lathe, g) => {
        const fares: CutWanted['fares'] = ({ depth, feed, rpm }) => {
          const error = g.error * depth * feed;
          return { error, most: error, taper: error, sings: Math.min(1, (depth * rpm) / g.sings) };
        };
        const chosen = chooseCut({ ...w, yielding: 0, fares }, cutter, lathe);
        let best = Number.POSITIVE_INFINITY;
        for (const cut of everyCut(w, lathe, true)) {
          const { broken, time } = judged({ ...w, yielding: 0 }, cutter, lathe, cut.rpm, cut.feed, cut.passes);
          const divisions = Math.floor(w.total / w.division + 1e-6);
          const depth = divisions < 1 ? w.total : Math.ceil(divisions / cut.passes) * w.division;
          const { error, sings } = fares({ depth, feed: cut.feed, rpm: cut.rpm });
          if (broken.length === 0 && error <= w.bendingLimit && sings <= 0.25) best = Math.min(best, time);
        }
        expect(chosen.broken.length === 0).toBe(Number.isFinite(best));
        if (Number.isFinite(best)) expect(chosen.time).toBeCloseTo(best, 6);
      }),
      { numRuns: 60 },
    );
  });
});

const easy: CutWanted = {
  diameter: 20,
  length: 30,
  total: 1,
  division: 0.02,
  fewestPasses: 1,
  yielding: 1e-5,
  bendingLimit: 0.15,
  finish: undefined,
  speeds: { low: 20, high: 60 },
  cutData: { specificForce: 2150, exponent: 0.2 },
  where: 'outside',
};
const [cutter] = cutters;
if (!cutter) throw new Error('no turning cutter');
const name = (w: Partial<CutWanted>, lathe: Lathe = workshop.lathe) =>
  chooseCut({ ...easy, ...w }, cutter, lathe).broken;

describe('when one limit cannot be kept it is named', () => {
  test('an easy cut breaks none', () => {
    expect(name({})).toEqual([]);
  });

  test('work that gives way at a breath', () => {
    expect(name({ yielding: 1, bendingLimit: 0.001 })).toContain('bending');
  });

  test('a drive of one watt', () => {
    const weak = { ...workshop.lathe, drive: { power: 1, behaviour: 'constant power' as const } };
    expect(name({}, weak)).toContain('power');
  });

  test('a roughness that no feed of the lathe leaves', () => {
    expect(name({ finish: 0.05 })).toEqual(['finish']);
  });

  test('less than a division to come off, thinner than the edge is sharp', () => {
    expect(name({ total: 0.0005 })).toContain('chip');
  });

  test('and a slowest speed that is still too fast is told apart', () => {
    expect(chooseCut({ ...easy, diameter: 60, speeds: { low: 2, high: 5 } }, cutter, workshop.lathe).tooFast).toBe(
      true,
    );
  });
});

test('where nothing keeps the bending, the cut that bends least is taken, not the quickest', () => {
  const chosen = chooseCut({ ...easy, yielding: 0.05, bendingLimit: 0.001 }, cutter, workshop.lathe);
  expect(chosen.broken).toContain('bending');
  expect(chosen.numbers.feed).toBe(Math.min(...workshop.lathe.feeds));
});

describe('why the chosen cut is no quicker', () => {
  test('the next larger feed, speed or depth breaks the limit that is named', () => {
    let named = 0;
    fc.assert(
      fc.property(wanted, fc.constantFrom(...cutters), fc.constantFrom(...lathes), (w, cutter, lathe) => {
        const chosen = chooseCut(w, cutter, lathe);
        if (chosen.broken.length > 0) expect(chosen.binding).toEqual([]);
        for (const { raise, next, breaks } of chosen.binding) {
          if (next === undefined) continue;
          const { speed, feed, passes } = chosen.numbers;
          const again =
            raise === 'speed'
              ? judged(w, cutter, lathe, next, feed, passes)
              : raise === 'feed'
                ? judged(w, cutter, lathe, speed, next, passes)
                : judged(w, cutter, lathe, speed, feed, fewerPasses(w, passes, next));
          expect(again.broken).toContain(breaks?.limit);
          named++;
        }
      }),
      { numRuns: 300 },
    );
    expect(named).toBeGreaterThan(100);
  });

  test('is told in words and numbers', () => {
    const [first] = cutters;
    if (!first) throw new Error('no cutter');
    const cutter = { ...first, maxDepth: 2 };
    const soft: CutWanted = {
      diameter: 12,
      length: 30,
      total: 1,
      division: 0.02,
      fewestPasses: 1,
      yielding: 4e-4,
      bendingLimit: 0.02,
      finish: undefined,
      speeds: { low: 20, high: 32 },
      cutData: { specificForce: 2150, exponent: 0.2 },
      where: 'outside',
    };
    const chosen = chooseCut(soft, cutter, workshop.lathe);
    const words = choiceInWords(chosen);
    expect(words).toMatch(/Passes of [\d.]+ mm would give way 0\.0\d+ mm on the diameter, allowed 0\.02 mm\./);
    expect(words).toContain('The next faster speed is more than published for this material and cutter.');
    const hopeless = chooseCut({ ...soft, yielding: 0.1 }, cutter, workshop.lathe);
    expect(choiceInWords(hopeless)).toMatch(
      /no cut keeps every limit.*give way [\d.]+ mm on the diameter, allowed 0\.02 mm/,
    );
  });
});

/** The number of passes, fewer than now, whose deepest takes `depth`. */
function fewerPasses(w: CutWanted, passes: number, depth: number): number {
  const divisions = Math.floor(w.total / w.division + 1e-6);
  for (let n = passes - 1; n >= 1; n--) if (Math.abs(Math.ceil(divisions / n) * w.division - depth) < 1e-9) return n;
  throw new Error(`no passes of ${depth}`);
}
