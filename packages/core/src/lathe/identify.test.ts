import { describe, expect, test } from 'vitest';
import {
  exampleWorkshop,
  inside,
  inventedLathe,
  normal,
  prior,
  pushTest,
  seeded,
  testBar,
} from '../../test/invented-lathe.ts';
import { type ElementId, elementIds, type Values } from './elements.ts';
import { identify } from './identify.ts';
import { elementsKnown, type Knowledge, latheKnowledge } from './knowledge.ts';
import { heardLoss, normalLoss, type Observation, observations } from './observation.ts';
import { pushResult } from './push-test.ts';
import type { LatheTests } from './test-schema.ts';
import { heldBar, knownOf } from './workshop-known.ts';

const workshop = exampleWorkshop();
const known = knownOf(workshop);
const held = heldBar(testBar, 300);

/** Seven pushes, a tap and two collars. */
function testsOf(truth: Values, next: () => number): LatheTests {
  const places = ['tool edge', 'top slide', 'cross slide', 'saddle', 'spindle nose', 'tailstock'] as const;
  const collar = {
    id: 'collars',
    bar: { ...testBar, length: 90 },
    cutter: 'finish',
    depth: 0.2,
    feed: 0.05,
    near: 18,
    nearAt: 10,
    far: 18,
    farAt: 85,
  };
  const [exact] = observations({ collars: [collar] }, known);
  const [tone] = observations({ taps: [{ id: 'tap', at: 'tool', frequency: 100 }] }, known);
  const far = 18 + (exact?.predict(truth) ?? 0) + 0.003 * Math.SQRT2 * normal(next);
  const frequency = Math.exp((tone?.predict(truth) ?? 0) + 0.08 * normal(next));
  return {
    pushes: [
      ...places.map((at) => pushTest(at.replace(' ', '-'), truth, at, next)),
      pushTest('bar', truth, 'bar', next, held),
    ],
    taps: [{ id: 'tap', at: 'tool', frequency }],
    collars: [{ ...collar, far }],
  };
}

const after = (tests: LatheTests): Knowledge => latheKnowledge({ ...workshop, lathe: { ...workshop.lathe, tests } });

describe('invented lathes', () => {
  const lathes = 60;
  const touched: readonly ElementId[] = [
    'spindleRadial',
    'spindleTilt',
    'grip',
    'tailstock',
    'toolPost',
    'topSlide',
    'crossSlide',
    'saddle',
    'toolMass',
    'force',
    'alignment',
  ];

  test('the truth lies within the bounds of nine in ten about nine times in ten, with and without tests', () => {
    const next = seeded(11);
    let [untestedHits, hits] = [0, 0];
    for (let i = 0; i < lathes; i++) {
      const truth = inventedLathe(next);
      const now = elementsKnown(after(testsOf(truth, next)));
      const find = (id: ElementId) => now.find((e) => e.id === id) ?? now[0];
      hits += inside(touched, truth, (id) => find(id)?.now ?? { low: 0, high: 0 });
      untestedHits += inside(touched, truth, (id) => find(id)?.before ?? { low: 0, high: 0 });
    }
    const all = lathes * touched.length;
    // Binomial spread of 660 trials at 0.9 is 0.012; elements of one lathe hang together, so twice that is allowed for.
    expect(untestedHits / all).toBeGreaterThan(0.86);
    expect(untestedHits / all).toBeLessThan(0.94);
    expect(hits / all).toBeGreaterThan(0.85);
    expect(hits / all).toBeLessThan(0.95);
  });

  test('no test makes less sure, and pushes make the tool side much surer', () => {
    const next = seeded(5);
    const left: number[] = [];
    for (let i = 0; i < 10; i++) {
      const truth = inventedLathe(next);
      const tests = testsOf(truth, next);
      const spread = (t: LatheTests) => elementsKnown(after(t)).map((e) => e.left);
      const none = spread({});
      const some = spread({ pushes: (tests.pushes ?? []).slice(0, 3) });
      const all = spread({ pushes: tests.pushes });
      none.forEach((share) => {
        expect(share).toBeCloseTo(1, 9);
      });
      some.forEach((share, k) => {
        expect(share).toBeLessThanOrEqual((none[k] ?? 0) + 1e-9);
        expect(all[k]).toBeLessThanOrEqual(share + 0.02);
      });
      left.push(...(['crossSlide', 'tailstock', 'saddle'] as const).map((id) => all[elementIds.indexOf(id)] ?? 1));
    }
    // A joint much stiffer than its neighbours hides behind them, so the mean of ten lathes is looked at: half must be gone.
    expect(left.reduce((a, b) => a + b, 0) / left.length).toBeLessThan(0.5);
  });
});

describe('altered lathes', () => {
  test('a block in place of the top slide leaves the saddle as it was and is found stiffer', () => {
    const next = seeded(3);
    const truth = inventedLathe(next);
    const block: Values = { ...truth, topSlide: truth.topSlide * 6 };
    const tests: LatheTests = {
      states: [{ id: 'block', name: 'solid block', changes: ['topSlide'] }],
      pushes: [
        pushTest('cross', truth, 'cross slide', next),
        pushTest('slide', truth, 'top slide', next),
        { ...pushTest('with-block', block, 'top slide', next), state: 'block' },
      ],
    };
    const before = elementsKnown(after(tests));
    const now = elementsKnown(after({ ...tests, state: 'block' }));
    const of = (list: typeof now, id: ElementId) => list.find((e) => e.id === id)?.now.middle ?? 0;
    expect(of(now, 'topSlide') / of(before, 'topSlide')).toBeGreaterThan(2.5);
    expect(of(now, 'saddle')).toBe(of(before, 'saddle'));
  });

  test('a state that is not named is refused with those that are', () => {
    const tests: LatheTests = { state: 'blok', states: [{ id: 'block', name: 'solid block', changes: ['topSlide'] }] };
    expect(() => after(tests)).toThrow('block');
    const wrong = { ...pushTest('p', inventedLathe(seeded(1)), 'saddle', seeded(2)), state: 'nothing' };
    expect(() => after({ pushes: [wrong] })).toThrow('state');
  });
});

test('two pushes that cannot both be true are said to disagree', () => {
  const next = seeded(9);
  const truth = inventedLathe(next);
  const soft: Values = { ...truth, saddle: truth.saddle / 5, crossSlide: truth.crossSlide / 5 };
  const found = after({
    pushes: [pushTest('monday', truth, 'cross slide', next), pushTest('friday', soft, 'cross slide', next)],
  }).findings;
  expect(found.map((f) => f.id)).toContain('lathe.tests-disagree');
  expect(found.map((f) => f.at).join()).toMatch(/monday|friday/);
});

test('a linear belief with linear tests: exactly the weighted mean of textbooks [laplace-approximation]', () => {
  const o = (id: string, read: number, u: number): Observation => ({
    id,
    what: 'reading',
    state: undefined,
    depends: ['alignment'],
    predict: (v) => v.alignment,
    loss: normalLoss(read, u),
  });
  const { mean, covariance } = identify(prior, [], [o('a', 0.01, 0.01), o('b', 0.02, 0.005)]);
  const i = elementIds.indexOf('alignment');
  const weights = [1 / 0.01 ** 2, 1 / 0.01 ** 2, 1 / 0.005 ** 2];
  const total = weights.reduce((a, b) => a + b, 0);
  expect(mean[i]).toBeCloseTo((0.01 * 1e4 + 0.02 * 4e4) / total, 9);
  expect(covariance[i]?.[i]).toBeCloseTo(1 / total, 12);
});

test('slopes of the losses are the differences of their values', () => {
  for (const loss of [normalLoss(1.2, 0.3), heardLoss('quiet'), heardLoss('sang')]) {
    for (const x of [-3, -0.4, 0, 0.2, 2]) {
      const slope = (loss(x + 1e-5).value - loss(x - 1e-5).value) / 2e-5;
      expect(loss(x).slope).toBeCloseTo(slope, 5);
      expect(loss(x).curvature).toBeGreaterThanOrEqual(0);
    }
  }
});

describe('hearing a cut', () => {
  const cut = {
    id: 'one',
    bar: { diameter: 12, length: 40, grip: 18, material: '303' },
    cutter: 'finish',
    depth: 0.3,
    feed: 0.05,
    operation: 'turning',
    speed: 800,
  } as const;
  const margin = (tests: LatheTests) => {
    const { joint, prior: beliefs } = after(tests);
    const [o] = observations({ cuts: [{ ...cut, heard: 'quiet' }] }, known);
    const values: Partial<Record<ElementId, number>> = {};
    beliefs.forEach((b, i) => {
      values[b.id] = b.scale === 'log' ? Math.exp(joint.mean[i] ?? 0) : (joint.mean[i] ?? 0);
    });
    return o?.predict({ ...inventedLathe(seeded(1)), ...values }) ?? 0;
  };

  test('that sang lowers the limit, that was quiet does not', () => {
    const none = margin({});
    expect(margin({ cuts: [{ ...cut, heard: 'sang' }] })).toBeLessThan(none - 0.1);
    expect(margin({ cuts: [{ ...cut, heard: 'quiet' }] })).toBeGreaterThan(none - 1e-6);
  });
});

describe('push readings', () => {
  test('a loop of two parallel lines: slope and lost motion apart', () => {
    const result = pushResult([0, 50, 100].map((force) => ({ force, up: 0.2 * force, down: 0.2 * force + 8 })));
    expect(result.compliance).toBeCloseTo(0.2, 12);
    expect(result.lostMotion).toBeCloseTo(8, 9);
  });

  test.each([
    [
      'one force only',
      [
        { force: 50, up: 3 },
        { force: 50, up: 4 },
      ],
    ],
    [
      'giving way against the force',
      [
        { force: 0, up: 9 },
        { force: 50, up: 4 },
      ],
    ],
    ['nothing read', [{ force: 0 }, { force: 50 }]],
  ])('%s is refused', (_, readings) => {
    expect(() => pushResult(readings)).toThrow('readings');
  });

  test('a bar longer than the bed is refused', () => {
    expect(() => heldBar({ ...testBar, length: 400 }, 300)).toThrow('300 mm');
  });
});
