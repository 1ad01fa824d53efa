import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { countOutside, type Row, referenceRows } from '../../test/reference.ts';
import { degrees, radians } from '../units/quantities.ts';
import { edgeConditions } from './edge.ts';
import { cuttingPower, motorPower, torqueOfPower } from './power.ts';
import { cuttingSpeed } from './speed.ts';
import {
  chipCompression,
  frictionAngle,
  kienzleForce,
  rakeCorrection,
  type TurningCut,
  turningForce,
} from './turning-force.ts';

const examples = referenceRows('cutting', 'force-worked-examples');
const example = (id: string): Row => examples.find((r) => r.id === id) ?? {};
/** `name=value` pairs of a row's inputs, the last of a name winning. */
const inputsOf = (row: Row): Record<string, number> =>
  Object.fromEntries(
    [...(row.inputs ?? '').matchAll(/(\w+)=([\d.]+)/g)].map(([, name, value]) => [name ?? '', Number(value)]),
  );
const published = (id: string) => Number(example(id).published);
/** A constant specific force: exponent 0. */
const flat = (specificForce: number) => ({ specificForce, exponent: 0 });

describe('the specific force of the Kienzle constants agrees with tables printed by others [ROH, WKZ]', () => {
  for (const row of referenceRows('cutting', 'kienzle-check')) {
    test(`${row.id}: ${row.material} at h = ${row.h_mm} mm`, ({ task }) => {
      const thickness = Number(row.h_mm);
      const cutData = { specificForce: Number(row.kc11_MPa), exponent: Number(row.mc) };
      const specific = kienzleForce(1, thickness, cutData) / thickness;
      // The README states 3.2 % as the largest difference between the publishers.
      expect(Math.abs(specific / Number(row.kc_published_MPa) - 1)).toBeLessThan(0.033);
      countOutside(task, 1);
    });
  }
});

describe('published turning examples', () => {
  test('F004: C45 in a power chuck, 6.25 kN [ROH]', ({ task }) => {
    expect(kienzleForce(5, 0.5, flat(2500)) / 1000).toBeCloseTo(published('F004'), 9);
    countOutside(task, 1);
  });

  test('F009 and F027: power is force times speed [TPE, GRO]', ({ task }) => {
    expect(cuttingPower(567, 120) / 1000).toBeCloseTo(published('F009'), 9);
    expect(cuttingPower(1559, 100)).toBeCloseTo(published('F027'), 0);
    countOutside(task, 2);
  });

  test('F019: the motor gives more than the cut takes [MH31]', ({ task }) => {
    expect(motorPower(5, 0.8)).toBeCloseTo(published('F019'), 9);
    countOutside(task, 1);
  });

  test('F030 and F032: stainless and aluminium by specific energy [GRO]', ({ task }) => {
    expect(cuttingPower(kienzleForce(7.5, 0.25, flat(2800)), 200) / 1000).toBeCloseTo(published('F030'), 9);
    // 0.225 hp min/in³: 396000 in·lbf/min a horsepower, and 1 lbf/in² = 0.00689476 MPa.
    const specificEnergy = 0.225 * 396_000 * 0.006_894_76;
    const force = kienzleForce(0.25 * 25.4, 0.02 * 25.4, flat(specificEnergy));
    expect(cuttingPower(force, 900 * 0.3048) / 745.7).toBeCloseTo(published('F032'), 1);
    countOutside(task, 2);
  });

  test('F034: the feed a 25 kW motor allows [GRO]', ({ task }) => {
    const motorAt = (feed: number) => motorPower(cuttingPower(kienzleForce(6, feed, flat(2.8 * 0.9 * 1000)), 200), 0.9);
    expect(motorAt(0.4464) / 25_000).toBeCloseTo(1, 3);
    expect(0.4464).toBeCloseTo(published('F034'), 2);
    countOutside(task, 1);
  });

  test('F035: cutting speed of a half-inch bar at 400 rpm, in feet a minute [KAL]', ({ task }) => {
    expect(Math.abs(cuttingSpeed(12.7, 400) / 0.3048 - published('F035'))).toBeLessThan(0.5);
    countOutside(task, 1);
  });

  test('F022: 2000 MPa of cutting pressure is 400 N on 2 mm by 0.1 mm [GATE14]', ({ task }) => {
    expect(kienzleForce(2, 0.1, flat(published('F022')))).toBeCloseTo(400, 9);
    countOutside(task, 1);
  });

  test('F029 and F039: friction angles of textbook cuts [GRO, KAL]', ({ task }) => {
    expect(degrees(frictionAngle(1559, 1271, radians(10)))).toBeCloseTo(published('F029'), 1);
    expect(Math.abs(degrees(frictionAngle(125, 50, radians(10))) - published('F039'))).toBeLessThan(0.5);
    countOutside(task, 2);
  });

  test('F038: the cutting force on a half-inch 304 bar from its power, within the source’s own rounding of 1.4 % [KAL]', ({
    task,
  }) => {
    const torque = torqueOfPower(0.181 * 745.7, 400);
    expect(Math.abs((2000 * torque) / (0.49 * 25.4) / 4.44822 / published('F038') - 1)).toBeLessThan(0.014);
    countOutside(task, 1);
  });

  test('rows recomputed from printed constants check the code only: F002, F003, F042 to F049', () => {
    expect(kienzleForce(3, 0.2, flat(3100))).toBeCloseTo(Number(example('F003').recomputed), 6);
    expect(cuttingPower(1860, 120) / 1000).toBeCloseTo(Number(example('F002').recomputed), 6);
    for (const id of ['F042', 'F044', 'F046', 'F047', 'F048', 'F049']) {
      const i = inputsOf(example(id));
      const angle = radians(i.k ?? 90);
      const force = kienzleForce((i.ap ?? 0) / Math.sin(angle), (i.f ?? 0) * Math.sin(angle), {
        specificForce: i.kc11 ?? 0,
        exponent: i.mc ?? 0,
      });
      expect((force * (i.W ?? 1)) / Number(example(id).recomputed)).toBeCloseTo(1, 3);
    }
  });
});

test('an exponent of 0.2 is the handbook’s feed factor, 1.7 at 0.02 mm to 0.72 at 1.5 mm a turn [MH31 rows CF003 to CF028]', ({
  task,
}) => {
  const at = (feed: number) => kienzleForce(1, feed, { specificForce: 2000, exponent: 0.2 }) / feed;
  let compared = 0;
  for (const row of referenceRows('cutting', 'correction-factors')) {
    if (row.factor !== 'feed factor C for Kp') continue;
    const feed = Number(/feed ([\d.]+) mm/.exec(row.condition ?? '')?.[1]);
    expect(Math.abs(at(feed) / at(0.3) / Number(row.value) - 1)).toBeLessThan(0.03); // printed to a tenth at fine feeds
    compared++;
  }
  expect(compared).toBe(26);
  countOutside(task, compared);
});

const stainless: TurningCut = {
  depth: 1,
  feed: 0.1,
  noseRadius: 0.4,
  approachAngle: radians(93),
  rake: radians(6),
  edge: 'honed',
  cutData: { specificForce: 2150, exponent: 0.2 },
};

test('a cut well deeper than the nose splits as handbooks say: feed 0.3 to 0.5, radial 0.1 to 0.3 of the cutting force [KOE rows CF047, CF048]', ({
  task,
}) => {
  const force = turningForce({ ...stainless, depth: 2, feed: 0.2, noseRadius: 0.4 });
  expect(force.feed / force.cutting).toBeGreaterThan(0.3);
  expect(force.feed / force.cutting).toBeLessThan(0.5);
  expect(force.radial / force.cutting).toBeGreaterThan(0.05);
  expect(force.radial / force.cutting).toBeLessThan(0.3);
  countOutside(task, 2);
});

test('a finishing cut within the nose pushes away with 0.4 to 1.0 of the cutting force, and more than along the feed [KOE row CF049]', ({
  task,
}) => {
  for (const depth of [0.1, 0.2, 0.3]) {
    const force = turningForce({ ...stainless, depth, noseRadius: 0.8 });
    expect(force.radial / force.cutting).toBeGreaterThan(0.4);
    expect(force.radial / force.cutting).toBeLessThan(1);
    expect(force.radial).toBeGreaterThan(force.feed);
  }
  countOutside(task, 1);
});

test('the radial force grows up to the nose radius and then levels off [VKD row CF051]', ({ task }) => {
  const radial = (depth: number) =>
    turningForce({ ...stainless, depth, noseRadius: 0.8, approachAngle: radians(90) }).radial;
  const early = (radial(0.4) - radial(0.1)) / 0.3;
  const late = (radial(2) - radial(1.2)) / 0.8;
  expect(early).toBeGreaterThan(0);
  expect(Math.abs(late)).toBeLessThan(0.15 * early);
  countOutside(task, 1);
});

test('a larger nose, a blunter edge and less rake each push the work away harder', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.03, max: 1, noNaN: true }),
      fc.double({ min: 0.03, max: 0.15, noNaN: true }),
      (depth, feed) => {
        const radial = (change: Partial<TurningCut>) => turningForce({ ...stainless, depth, feed, ...change }).radial;
        expect(radial({ noseRadius: 0.8 })).toBeGreaterThan(radial({ noseRadius: 0.4 }));
        const [sharp, honed, moulded] = edgeConditions.map((edge) => radial({ edge }));
        expect(honed).toBeGreaterThan(sharp ?? 0);
        expect(moulded).toBeGreaterThan(honed ?? 0);
        expect(radial({ rake: 0 })).toBeGreaterThan(radial({ rake: radians(12) }));
      },
    ),
  );
});

test('force grows with depth, down to grazing, and does not vanish there', () => {
  let last = 0;
  for (const depth of [1e-6, 1e-4, 0.001, 0.01, 0.02, 0.05, 0.1, 0.3, 0.39, 0.41, 0.5]) {
    const { radial } = turningForce({ ...stainless, depth });
    expect(radial).toBeGreaterThan(last);
    last = radial;
  }
});

/** The chip measured along each normal between this turn's nose, the last turn's, and the surface; Kienzle added up over it. */
function addedUp(depth: number, feed: number, r: number, cutData: TurningCut['cutData']): number {
  const bottom = -Math.min(Math.asin(feed / (2 * r)), Math.acos(Math.max(-1, 1 - depth / r)));
  const top = depth < r ? Math.acos(1 - depth / r) : Math.PI / 2;
  const steps = 20_000;
  let sum = 0;
  for (let i = 0; i < steps; i++) {
    const angle = bottom + ((top - bottom) * (i + 0.5)) / steps;
    const toLastTurn = r + feed * Math.sin(angle) - Math.sqrt(r * r - (feed * Math.cos(angle)) ** 2);
    const toSurface = (depth - r * (1 - Math.cos(angle))) / Math.cos(angle);
    const thickness = Math.min(toLastTurn, depth < r ? toSurface : Infinity);
    if (thickness > 0) sum += kienzleForce((r * (top - bottom)) / steps, thickness, cutData);
  }
  return depth > r ? sum + kienzleForce(depth - r, feed, cutData) : sum;
}

test('the equivalent chip gives the cutting force of the true chip added up along the edge within 6 %', () => {
  for (const depth of [0.05, 0.1, 0.2, 0.39, 0.5, 1.5]) {
    for (const feed of [0.05, 0.1]) {
      const { chipWidth, chipThickness } = turningForce({
        ...stainless,
        depth,
        feed,
        approachAngle: radians(90),
        noseRadius: 0.4,
      });
      const equivalent = kienzleForce(chipWidth, chipThickness, stainless.cutData);
      expect(Math.abs(equivalent / addedUp(depth, feed, 0.4, stainless.cutData) - 1)).toBeLessThan(0.06);
    }
  }
});

test('rake takes 1 % a degree, and a chip in a bore a fifth more [SVF, KOE]', () => {
  expect(rakeCorrection(radians(16), radians(6))).toBeCloseTo(0.9, 12);
  const [outside, bore] = [turningForce(stainless), turningForce({ ...stainless, where: 'bore' })];
  const edgeDrag = 0.5 * 2150 * 0.0225 * outside.chipWidth;
  expect((bore.cutting - edgeDrag) / (outside.cutting - edgeDrag)).toBeCloseTo(chipCompression.bore, 9);
});

test('refuses constants that belong to no metal and rakes no tool has', () => {
  expect(() => turningForce({ ...stainless, cutData: { specificForce: 2.15, exponent: 0.2 } })).toThrow(
    '100 to 6000 MPa',
  );
  expect(() => turningForce({ ...stainless, rake: radians(40) })).toThrow('-15 to');
  expect(() => turningForce({ ...stainless, wearFactor: 0.5 })).toThrow('1 (fresh)');
});
