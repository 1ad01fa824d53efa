/**
 * Which test is worth doing next: the one that takes most doubt from how far a cut gives way and whether it sings.
 *
 * Knowledge: with everything near enough linear and normal, a test that depends on the unknowns by J with an uncertainty u
 * takes (gᵀΣJ)²/(u² + JᵀΣJ) from the variance of a figure that depends on them by g. What the test will read need not be known.
 */
import { clampedWork, giveAtCut, type Setup } from './chain.ts';
import { type CutMaterial, cutForces } from './cut-forces.ts';
import { type ElementId, elementIds, type Values } from './elements.ts';
import { sensitivity } from './identify.ts';
import type { Knowledge } from './knowledge.ts';
import { type Known, type Observation, observations, pushDepends, pushGive } from './observation.ts';
import { marginOf } from './singing-limit.ts';
import { type PushTest, pushPlaces, type TestBar } from './test-schema.ts';
import { ringingWork } from './vibration.ts';

export interface NextTest {
  readonly test: string;
  /** What to do, in one sentence. */
  readonly how: string;
  readonly minutes: number;
  /** Doubt left in how far the cut gives way, and in the limit at which it sings, over the doubt now: 1 teaches nothing. */
  readonly give: number;
  readonly limit: number;
}

/** The cut that tests are judged by. */
export interface ReferenceCut {
  readonly setup: Setup;
  readonly material: CutMaterial;
  readonly depth: number;
  readonly feed: number;
  /** [m/min] */
  readonly speed: number;
}

/** Relative uncertainty of one careful push; of a tapped tone with its simple model [methods-dynamics §9]. */
const pushDoubt = 0.06;
const toneDoubt = 0.08;

interface Candidate {
  readonly test: string;
  readonly how: string;
  readonly minutes: number;
  readonly seen: Pick<Observation, 'state' | 'depends' | 'predict'>;
  readonly doubt: number;
}

/** Tests an owner can do, best first. */
export function nextTests(knowledge: Knowledge, reference: ReferenceCut, known: Known, bar: TestBar): NextTest[] {
  const { prior, posterior, state } = knowledge;
  const { numbering, mean, covariance } = posterior;
  const { setup, material, depth, feed, speed } = reference;
  const forces = cutForces(setup, material, depth, feed);
  const bending = clampedWork(setup.work, setup.stations);
  const last = setup.stations.length - 1;
  const figure = (predict: (values: Values) => number) =>
    sensitivity(numbering, prior, { state, depends: elementIds, predict }, mean).slopes;
  const give = figure((v) => Math.log(giveAtCut(v, setup, bending)[last] ?? 1));
  // Rubbing may leave nothing to sing; what stiffness and damping do shows without it.
  const ringing = ringingWork(setup.work, setup.stations[last] ?? 0);
  const limit = figure((v) => marginOf({ ...v, rubbing: 1e-6 }, setup, ringing, forces, speed));
  const product = (a: ReadonlyMap<number, number>, b: ReadonlyMap<number, number>) => {
    let sum = 0;
    for (const [i, x] of a) for (const [j, y] of b) sum += x * (covariance[i]?.[j] ?? 0) * y;
    return sum;
  };
  const left = (g: ReadonlyMap<number, number>, j: ReadonlyMap<number, number>, doubt: number) => {
    const before = product(g, g);
    if (!(before > 0)) return 1;
    return Math.sqrt(Math.max(0, 1 - product(g, j) ** 2 / (doubt ** 2 + product(j, j)) / before));
  };
  return candidates(knowledge, known, bar)
    .map(({ test, how, minutes, seen, doubt }) => {
      const { slopes } = sensitivity(numbering, prior, seen, mean);
      return { test, how, minutes, give: left(give, slopes, doubt), limit: left(limit, slopes, doubt) };
    })
    .toSorted((a, b) => a.give * a.limit - b.give * b.limit);
}

const howPushed: Record<PushTest['at'], string> = {
  'tool edge':
    'pull radially at the cutter with a luggage scale, indicator from the bed on the cutter close to its edge',
  'top slide': 'the same pull, indicator on the top slide below the tool post',
  'cross slide': 'the same pull, indicator on the cross slide',
  saddle: 'the same pull, indicator on the saddle',
  'spindle nose': 'pull at the chuck body, indicator on it',
  bar: 'pull at a stout bar in the chuck, indicator at the place of the pull',
  tailstock: 'pull at the centre in the tailstock, indicator on its point',
};

function candidates({ state }: Knowledge, known: Known, bar: TestBar): Candidate[] {
  const { held } = known.work(bar);
  const pushes = pushPlaces.map((at): Candidate => {
    const test = { at, direction: 'radial' } as const;
    const work = at === 'bar' ? held : undefined;
    return {
      test: `push at the ${at}`,
      how: howPushed[at],
      minutes: 15,
      doubt: pushDoubt,
      seen: { state, depends: pushDepends(test, work), predict: (v) => Math.log(pushGive(v, test, work)) },
    };
  });
  const axial: Candidate = {
    test: 'push along the spindle',
    how: 'push the chuck towards the tailstock and back, indicator on its face; note the play apart',
    minutes: 15,
    doubt: pushDoubt,
    seen: { state, depends: ['spindleAxial'], predict: (v) => -Math.log(v.spindleAxial) },
  };
  const taps = (['tool', 'bar'] as const).flatMap((at): Candidate[] => {
    const [seen] = observations({ taps: [{ id: at, at, frequency: 100, ...(at === 'bar' ? { bar } : {}) }] }, known);
    if (!seen) return [];
    return [
      {
        test: `tap at the ${at}`,
        how: `knock lightly against the ${at === 'tool' ? 'tool post' : 'end of the bar'} beside a recording telephone and read the tone from its spectrum`,
        minutes: 10,
        doubt: toneDoubt,
        seen: { ...seen, state },
      },
    ];
  });
  const dying = (id: ElementId, at: string): Candidate => ({
    test: `dying away of the tap at the ${at}`,
    how: 'count how many swings it takes to fall to half, from the same recording',
    minutes: 10,
    doubt: 0.2,
    seen: { state, depends: [id], predict: (v) => Math.log(v[id]) },
  });
  return [...pushes, axial, ...taps, dying('toolDamping', 'tool'), dying('workDamping', 'bar')];
}
