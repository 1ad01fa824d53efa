/**
 * What is known of the owner's lathe: every element with its bounds, what each test changed, where tests disagree, and which
 * test would teach most.
 */
import { DomainError, InputError } from '../errors.ts';
import type { Finding } from '../finding.ts';
import type { Belief, ElementId } from './elements.ts';
import { identify, interval, jointOf, type Posterior, type State } from './identify.ts';
import { latheClass } from './lathe-class.ts';
import { type Known, type Observation, observations } from './observation.ts';
import { priorBeliefs } from './prior-beliefs.ts';
import { pushResult } from './push-test.ts';
import type { Joint } from './sampling.ts';
import type { Workshop } from './schema.ts';
import type { LatheTests, PushTest } from './test-schema.ts';
import { knownOf } from './workshop-known.ts';

export interface Range {
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

export interface ElementKnowledge {
  readonly id: ElementId;
  readonly what: string;
  readonly unit: string;
  /** Nine in ten lathes of the class, before any test. */
  readonly before: Range;
  /** Nine in ten, now. */
  readonly now: Range;
  /** Spread now over spread before: 1 when nothing was learnt. */
  readonly left: number;
  readonly basis: Belief['basis'];
  readonly source: Belief['source'];
  readonly note: string;
}

export interface Learnt {
  readonly test: string;
  readonly what: string;
  /** Elements whose middle or bounds it moved most, largest first. */
  readonly changed: readonly {
    readonly id: ElementId;
    readonly what: string;
    readonly from: Range;
    readonly to: Range;
    readonly unit: string;
  }[];
}

export interface Knowledge {
  readonly prior: readonly Belief[];
  readonly posterior: Posterior;
  readonly state: string | undefined;
  /** Of the lathe as it is now. */
  readonly joint: Joint;
  readonly seen: readonly Observation[];
  readonly findings: readonly Finding[];
}

/** A test that misses by more than this many standard deviations contradicts the others. */
const contradiction = 3;

/**
 * What is known of the lathe of a workshop in a state; in its present one when left out.
 *
 * A test that says nothing yet, or cannot be, is passed over with a finding.
 *
 * @throws InputError when a state is named that is not there
 */
export function latheKnowledge(workshop: Pick<Workshop, 'lathe' | 'cutters'>, state?: string): Knowledge {
  const { lathe } = workshop;
  const tests = lathe.tests ?? {};
  const prior = priorBeliefs(lathe.swing, tests.bearings ?? 'unknown');
  const states: readonly State[] = tests.states ?? [];
  const present = state ?? tests.state;
  checkStates(states, tests.state);
  const { seen, unusable } = looked(tests, knownOf(workshop));
  const posterior = identify(prior, states, seen);
  return {
    prior,
    posterior,
    state: present,
    joint: jointOf(prior, posterior, present),
    seen,
    findings: [...unusable, ...disagreements(posterior), ...lostMotions(workshop), ...nothingTested(seen)],
  };
}

/** Every test by itself, so that one half written down does not take the others with it. */
function looked(tests: LatheTests, known: Known): { readonly seen: Observation[]; readonly unusable: Finding[] } {
  const seen: Observation[] = [];
  const unusable: Finding[] = [];
  const look = (id: string, one: LatheTests): void => {
    try {
      seen.push(...observations(one, known));
    } catch (error) {
      if (!(error instanceof DomainError || error instanceof InputError)) throw error;
      const expected = error instanceof DomainError ? error.allowed : (error.issues[0]?.expected ?? error.message);
      unusable.push(passedOver(id, expected));
    }
  };
  for (const t of tests.pushes ?? []) look(t.id, { pushes: [t] });
  for (const t of tests.taps ?? []) look(t.id, { taps: [t] });
  for (const t of tests.collars ?? []) look(t.id, { collars: [t] });
  for (const t of tests.passes ?? []) look(t.id, { passes: [t] });
  for (const t of tests.cuts ?? []) look(t.id, { cuts: [t] });
  return { seen, unusable };
}

function passedOver(id: string, expected: string): Finding {
  return {
    id: 'lathe.test-passed-over',
    level: 'caution',
    stage: 'bench',
    at: id,
    says: `This test is passed over; it takes ${expected}.`,
    because: [],
    remedies: ['write down what is missing', 'take the test out'],
  };
}

function checkStates(states: readonly State[], present: string | undefined): void {
  const ids = states.map((s) => s.id);
  const twice = ids.find((id, i) => ids.indexOf(id) !== i);
  if (twice !== undefined)
    throw new InputError([{ path: 'lathe.tests.states', value: twice, expected: 'every state named once' }]);
  if (present !== undefined && !ids.includes(present)) {
    throw new InputError([
      {
        path: 'lathe.tests.state',
        value: present,
        expected: `one of the states: ${ids.join(', ') || 'none is named'}`,
      },
    ]);
  }
}

function disagreements({ misses }: Posterior): Finding[] {
  return misses
    .filter(({ off }) => off > contradiction)
    .map(({ id, what, off }) => ({
      id: 'lathe.tests-disagree',
      level: 'caution',
      stage: 'bench',
      at: id,
      says: `This ${what} does not go with the other tests: no lathe of this kind would show all of them.`,
      because: [{ what: 'standard deviations off', value: Number(off.toFixed(1)), unit: '', limit: contradiction }],
      remedies: [
        'repeat the test',
        'look whether the indicator stood on a part that moved',
        'if the lathe was altered in between, name a state',
      ],
    }));
}

/** Lost motion worth a word [µm]. */
const muchPlay = 20;

function lostMotions({ lathe }: Pick<Workshop, 'lathe'>): Finding[] {
  return (lathe.tests?.pushes ?? []).flatMap((test): Finding[] => {
    const lostMotion = lostMotionOf(test);
    if (lostMotion === undefined || Math.abs(lostMotion) < muchPlay) return [];
    return [
      {
        id: 'lathe.lost-motion',
        level: 'note',
        stage: 'bench',
        at: test.id,
        says: `Pushed ${test.direction} at the ${test.at}, it does not come back the way it went: play or friction, kept apart from its stiffness.`,
        because: [
          { what: 'further while the force falls', value: Number(lostMotion.toFixed(0)), unit: 'µm', limit: muchPlay },
        ],
        remedies: ['adjust the gibs', 'lock the slides that need not move', 'take up axial float of the spindle'],
      },
    ];
  });
}

/** Undefined for a push that says nothing. */
function lostMotionOf({ readings }: PushTest): number | undefined {
  try {
    return pushResult(readings).lostMotion;
  } catch (error) {
    if (error instanceof DomainError) return undefined;
    throw error;
  }
}

function nothingTested(seen: readonly Observation[]): Finding[] {
  if (seen.length > 0) return [];
  return [
    {
      id: 'lathe.untested',
      level: 'note',
      stage: 'bench',
      at: 'lathe',
      says: 'Nothing was tested on this lathe yet: stiffness and damping are guessed from its size, within a factor of two to four.',
      because: [{ what: 'tests', value: 0, unit: '', limit: 1 }],
      remedies: ['push at the tool edge and at a stout bar in the chuck, and write down how far each gives'],
    },
  ];
}

/** Every element of the lathe as it is now. */
export function elementsKnown({ prior, posterior, state }: Knowledge): ElementKnowledge[] {
  const places = posterior.numbering.of(state);
  return prior.map((belief, i) => {
    const place = places[i] ?? i;
    const deviation = Math.sqrt(posterior.covariance[place]?.[place] ?? 0);
    const { id, what, unit, basis, source, note } = belief;
    return {
      id,
      what,
      unit,
      before: interval(belief, belief.scale === 'log' ? Math.log(belief.middle) : belief.middle, belief.spread),
      now: interval(belief, posterior.mean[place] ?? 0, deviation),
      left: deviation / belief.spread,
      basis,
      source,
      note,
    };
  });
}

/** Latest tests looked at one by one; each costs an identification. */
const latest = 12;

/** What each of the latest tests changed, given all before it. */
export function learnt(knowledge: Knowledge, states: readonly State[]): Learnt[] {
  const { prior, seen } = knowledge;
  const from = Math.max(0, seen.length - latest);
  let before = identify(prior, states, seen.slice(0, from));
  return seen.slice(from).map((o, k) => {
    const after = identify(prior, states, seen.slice(0, from + k + 1));
    const places = after.numbering.of(o.state);
    const range = (p: Posterior, belief: Belief, i: number) =>
      interval(belief, p.mean[i] ?? 0, Math.sqrt(p.covariance[i]?.[i] ?? 0));
    const changed = prior
      .map((belief, i) => {
        const place = places[i] ?? i;
        const moved = Math.abs((after.mean[place] ?? 0) - (before.mean[place] ?? 0)) / belief.spread;
        const narrowed =
          1 - Math.sqrt((after.covariance[place]?.[place] ?? 0) / (before.covariance[place]?.[place] ?? 1));
        return { belief, place, much: moved + Math.max(0, narrowed) };
      })
      .filter(({ much }) => much > 0.05)
      .toSorted((a, b) => b.much - a.much)
      .slice(0, 4)
      .map(({ belief, place }) => ({
        id: belief.id,
        what: belief.what,
        unit: belief.unit,
        from: range(before, belief, place),
        to: range(after, belief, place),
      }));
    before = after;
    return { test: o.id, what: o.what, changed };
  });
}

/** Class of a lathe in words. */
export function classWords(swing: number): string {
  return { small: 'small bench lathe', bench: 'bench lathe', centre: 'centre lathe' }[latheClass(swing)];
}
