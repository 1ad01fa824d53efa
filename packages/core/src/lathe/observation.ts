/**
 * What tests say of the elements: for each, what the lathe would have shown with given values, and how likely what it showed.
 */
import type { Cutter } from '../cutting/cutter.ts';
import { cuttingSpeed } from '../cutting/speed.ts';
import { InputError } from '../errors.ts';
import { inverseMills, logNormalCdf } from '../numerics/normal.ts';
import { axialGive, clampedWork, type HeldWork, type Setup, toolSide, workSide } from './chain.ts';
import { type CutMaterial, cutForces } from './cut-forces.ts';
import type { ElementId, Values } from './elements.ts';
import { pushResult } from './push-test.ts';
import { marginOf } from './singing-limit.ts';
import { forceLadder, takenOnLadder } from './size-after.ts';
import type { LatheTests, PushTest, TestBar } from './test-schema.ts';
import { modesOfWork, ringingWork } from './vibration.ts';

/** How a prediction fares: loss, and how it changes with the prediction. */
export interface Loss {
  readonly value: number;
  readonly slope: number;
  /** Expected curvature, not negative. */
  readonly curvature: number;
  /** Standard deviations by which it misses. */
  readonly off: number;
}

export interface Observation {
  readonly id: string;
  readonly what: string;
  readonly state: string | undefined;
  /** Elements it can say something of. */
  readonly depends: readonly ElementId[];
  predict(values: Values): number;
  loss(prediction: number): Loss;
}

/** A number read, with its standard uncertainty, against a prediction. */
export function normalLoss(read: number, uncertainty: number): (prediction: number) => Loss {
  return (prediction) => {
    const off = (prediction - read) / uncertainty;
    return { value: off ** 2 / 2, slope: off / uncertainty, curvature: 1 / uncertainty ** 2, off };
  };
}

/** How far from its limit in ln a cut may be judged wrongly by the model itself. */
const chatterDoubt = 0.35;

/** A cut heard quiet or singing against ln of limit over load. */
export function heardLoss(heard: 'quiet' | 'sang'): (margin: number) => Loss {
  const side = heard === 'quiet' ? 1 : -1;
  return (margin) => {
    const z = (side * margin) / chatterDoubt;
    const mills = inverseMills(z);
    return {
      value: -logNormalCdf(z),
      slope: (-side * mills) / chatterDoubt,
      curvature: Math.max(0, mills * (z + mills)) / chatterDoubt ** 2,
      off: z < 0 ? -z : 0,
    };
  };
}

/** What the bar's material and the workshop's cutters are, handed in by the caller. */
export interface Known {
  readonly shank: number | undefined;
  cutter(id: string): Cutter;
  work(bar: TestBar): { readonly held: HeldWork; readonly material: CutMaterial };
}

/** All tests as observations. */
export function observations(tests: LatheTests, known: Known): Observation[] {
  return [
    ...(tests.pushes ?? []).map((t) => pushed(t, known)),
    ...(tests.taps ?? []).flatMap((t) => tapped(t, known)),
    ...(tests.collars ?? []).map((t) => collared(t, known)),
    ...(tests.passes ?? []).map((t) => passed(t, known)),
    ...(tests.cuts ?? []).map((t) => heard(t, known)),
  ];
}

const slideIds = ['toolPost', 'topSlide', 'crossSlide', 'saddle'] as const satisfies readonly ElementId[];
const workIds = ['spindleRadial', 'spindleTilt', 'grip'] as const satisfies readonly ElementId[];

/** Elements from a place on the tool side down to the bed. */
function fromDown(at: PushTest['at']): readonly (typeof slideIds)[number][] {
  const start: Partial<Record<PushTest['at'], number>> = {
    'tool edge': 0,
    'top slide': 1,
    'cross slide': 2,
    saddle: 3,
  };
  return slideIds.slice(start[at] ?? 0);
}

/** Give that a push would find [µm/N]. */
export function pushGive(values: Values, test: Pick<PushTest, 'at' | 'direction'>, bar: HeldWork | undefined): number {
  switch (test.at) {
    case 'spindle nose':
      return test.direction === 'axial' ? 1 / values.spindleAxial : 1 / values.spindleRadial;
    case 'tailstock':
      return 1 / values.tailstock;
    case 'bar': {
      if (!bar) throw new InputError([{ path: 'bar', value: bar, expected: 'the bar that was pushed' }]);
      const end = bar.sections.at(-1)?.to ?? 0;
      if (test.direction === 'axial') return 1000 * axialGive(values, bar.gripLength, 0);
      return 1000 * (workSide(values, bar, clampedWork(bar, [end]))[0] ?? 0);
    }
    default: {
      const sum = fromDown(test.at).reduce((c, id) => c + 1 / values[id], 0);
      if (test.direction === 'axial') return sum / values.toolAxialRatio;
      return test.direction === 'tangential' ? sum / values.toolTangentialRatio : sum;
    }
  }
}

/** Elements a push can say something of. */
export function pushDepends(test: Pick<PushTest, 'at' | 'direction'>, bar: HeldWork | undefined): readonly ElementId[] {
  switch (test.at) {
    case 'spindle nose':
      return [test.direction === 'axial' ? 'spindleAxial' : 'spindleRadial'];
    case 'tailstock':
      return ['tailstock'];
    case 'bar':
      return test.direction === 'axial'
        ? ['spindleAxial']
        : [...workIds, ...(bar?.centreAt === undefined ? [] : (['tailstock'] as const))];
    default: {
      const ratio = { radial: [], axial: ['toolAxialRatio'], tangential: ['toolTangentialRatio'] } as const;
      return [...fromDown(test.at), ...ratio[test.direction]];
    }
  }
}

function pushed(test: PushTest, known: Known): Observation {
  const bar = test.bar && known.work(test.bar).held;
  if (test.at === 'bar' && !bar) {
    throw new InputError([
      {
        path: `tests.pushes.${test.id}.bar`,
        value: undefined,
        expected: 'the bar that was pushed: diameter, length, grip, material',
      },
    ]);
  }
  const { compliance, uncertainty } = pushResult(test.readings);
  return {
    id: test.id,
    what: `push ${test.direction} at the ${test.at}`,
    state: test.state,
    depends: pushDepends(test, bar),
    predict: (values) => Math.log(pushGive(values, test, bar)),
    loss: normalLoss(Math.log(compliance), uncertainty / compliance),
  };
}

/** A tapped frequency is judged by a model of one mass on one spring: right within this share. */
const modelShare = 0.08;

function tapped(test: NonNullable<LatheTests['taps']>[number], known: Known): Observation[] {
  const bar = test.bar && known.work(test.bar).held;
  if (test.at === 'bar' && !bar) {
    throw new InputError([
      {
        path: `tests.taps.${test.id}.bar`,
        value: undefined,
        expected: 'the bar that was tapped: diameter, length, grip, material',
      },
    ]);
  }
  const end = bar?.sections.at(-1)?.to ?? 0;
  const ringing = test.at === 'bar' && bar ? ringingWork(bar, end) : undefined;
  const rings = (values: Values): number => {
    if (test.at === 'tool') {
      const down = slideIds.reduce((c, id) => c + 1 / values[id], 0);
      return Math.sqrt(1e6 / down / values.toolMass) / (2 * Math.PI);
    }
    if (ringing) {
      // The tone heard is that of the mode that moves the end most easily.
      const modes = modesOfWork(values, ringing, 4);
      return modes.reduce((a, b) => (b.stiffness < a.stiffness ? b : a)).frequency;
    }
    return Math.sqrt((values.spindleAxial * 1e6) / values.axialMass) / (2 * Math.PI);
  };
  const masses = { tool: 'toolMass', bar: 'chuckMass', 'spindle along its axis': 'axialMass' } as const;
  const springs = { tool: slideIds, bar: workIds, 'spindle along its axis': ['spindleAxial'] } as const;
  const dampings = { tool: 'toolDamping', bar: 'workDamping', 'spindle along its axis': 'axialDamping' } as const;
  const base = { state: test.state, what: `tap at the ${test.at}` };
  const share = Math.hypot((test.uncertainty ?? 2) / test.frequency, modelShare);
  const found: Observation[] = [
    {
      ...base,
      id: test.id,
      depends: [...springs[test.at], masses[test.at]],
      predict: (values) => Math.log(rings(values)),
      loss: normalLoss(Math.log(test.frequency), share),
    },
  ];
  if (test.damping !== undefined) {
    const id = dampings[test.at];
    found.push({
      ...base,
      id: `${test.id} (dying away)`,
      depends: [id],
      predict: (values) => Math.log(values[id]),
      loss: normalLoss(Math.log(test.damping), 0.2),
    });
  }
  return found;
}

/** A micrometer reading on a turned collar, on the diameter [mm]. */
const micrometer = 0.003;

/** Setup of a test cut. */
export function testSetup(
  test: { readonly bar: TestBar; readonly cutter: string; readonly operation?: Setup['operation'] },
  stations: readonly number[],
  known: Known,
): { setup: Setup; material: CutMaterial } {
  const { held, material } = known.work(test.bar);
  const cutter = { ...known.cutter(test.cutter), shank: known.shank };
  return {
    setup: { operation: test.operation ?? 'turning', work: held, cutter, stations, diameter: test.bar.diameter },
    material,
  };
}

const cutIds = [...slideIds, ...workIds, 'force'] as const satisfies readonly ElementId[];

function collared(test: NonNullable<LatheTests['collars']>[number], known: Known): Observation {
  const places = [test.nearAt, test.farAt];
  const { setup, material } = testSetup(test, places, known);
  const bending = clampedWork(setup.work, places);
  const ladder = forceLadder(setup, material, test.feed, test.depth);
  return {
    id: test.id,
    what: 'two collars on a test bar',
    state: test.state,
    depends: [...cutIds, 'alignment', ...(test.bar.tailstock ? (['tailstock'] as const) : [])],
    predict: (values) => {
      const side = toolSide(values, setup.cutter).radial;
      const [near = 0, far = 0] = workSide(values, setup.work, bending).map(
        (c) => 2 * (test.depth - takenOnLadder(ladder, test.depth, (c + side) * values.force)),
      );
      return far - near + (values.alignment * (test.farAt - test.nearAt)) / 100;
    },
    loss: normalLoss(test.far - test.near, micrometer * Math.SQRT2),
  };
}

function passed(test: NonNullable<LatheTests['passes']>[number], known: Known): Observation {
  const at = test.at ?? test.bar.length;
  const { setup, material } = testSetup(test, [at], known);
  const bending = clampedWork(setup.work, [at]);
  const ladder = forceLadder(setup, material, test.feed, test.depth);
  return {
    id: test.id,
    what: 'pass asked for and got',
    state: test.state,
    depends: [...cutIds, ...(test.bar.tailstock ? (['tailstock'] as const) : [])],
    predict: (values) => {
      const give = (workSide(values, setup.work, bending)[0] ?? 0) + toolSide(values, setup.cutter).radial;
      return takenOnLadder(ladder, test.depth, give * values.force);
    },
    // Setting by the dial and reading before and after, on the radius.
    loss: normalLoss(test.got, 0.006),
  };
}

function heard(test: NonNullable<LatheTests['cuts']>[number], known: Known): Observation {
  const at = test.at ?? test.bar.length;
  const { setup, material } = testSetup(test, [at], known);
  const forces = cutForces(setup, material, test.depth, test.feed);
  const speed = cuttingSpeed(test.bar.diameter, test.speed);
  const ringing = ringingWork(setup.work, at);
  return {
    id: test.id,
    what: `cut that ${test.heard === 'sang' ? 'sang' : 'was quiet'}`,
    state: test.state,
    depends: [
      ...cutIds,
      'spindleAxial',
      'toolAxialRatio',
      'chuckMass',
      'axialMass',
      'toolMass',
      'toolDamping',
      'workDamping',
      'axialDamping',
      'toolTilt',
      'rubbing',
      ...(test.bar.tailstock ? (['tailstock'] as const) : []),
    ],
    predict: (values) => marginOf(values, setup, ringing, forces, speed),
    loss: heardLoss(test.heard),
  };
}
