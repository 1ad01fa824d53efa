/**
 * The change gears for a thread of the part: the best train of the owner's wheels, or why none will do.
 */
import { DomainError } from '../errors.ts';
import type { Finding } from '../finding.ts';
import type { Lathe } from '../lathe/schema.ts';
import type { PlacedThread } from '../part/part-result.ts';
import { threadLimits } from '../standards/threads/limits.ts';
import { type Mm, mmPerInch } from '../units/quantities.ts';
import { diameterForDrift, driftOver, type GearTrain, gearTrains, trainInWords } from './tables/change-gears.ts';
import { halfNuts, type Leadscrew } from './tables/half-nuts.ts';

export interface ThreadGears {
  /** For the table: which wheels go where, and what to do with the half nuts. */
  readonly notes: readonly string[];
  readonly needed: string;
  readonly why: readonly string[];
  readonly findings: readonly Finding[];
}

/** Trains sought before for a lathe: its set of wheels never changes, and seeking takes milliseconds. */
const sought = new WeakMap<Lathe, Map<Mm, readonly GearTrain[]>>();

function trainsOf(lathe: Lathe, gears: readonly number[], lead: Mm, leadscrew: Mm): readonly GearTrain[] {
  const known = sought.get(lathe) ?? new Map<Mm, readonly GearTrain[]>();
  sought.set(lathe, known);
  const before = known.get(lead);
  if (before) return before;
  const trains = gearTrains(lead, leadscrew, gears);
  known.set(lead, trains);
  return trains;
}

/** Share of the tolerance of the pitch diameter that an error of the pitch may use up; `common practice`. */
const pitchShare = 0.5;
/** Tolerance of the pitch diameter where no standard gives one, that of a medium thread of 1 mm pitch; `common practice`. */
const usualPitchTolerance: Mm = 0.1;

/** `slideFree`: the depth is not put on with the top slide, so that it may lie along the work. */
export function gearsForThread(at: string, lathe: Lathe, placed: PlacedThread, slideFree: boolean): ThreadGears {
  const { thread } = placed;
  const lead = thread.pitch * thread.starts;
  const needed = `change gears for a pitch of ${Number(lead.toFixed(4))} mm`;
  const byGauge = 'Check the first scratch with a pitch gauge.';
  const ways = [
    handNote(thread.hand),
    ...(thread.starts > 1 ? [startsNote(thread.starts, thread.pitch, slideFree)] : []),
  ];
  const screw = leadscrewOf(lathe);
  if (!screw) {
    const notes = ['No leadscrew is entered: the change gears cannot be told.'];
    return { notes, needed, why: [], findings: [noLeadscrew(at)] };
  }
  if (!lathe.changeGears || lathe.changeGears.length === 0) {
    const feed = thread.starts > 1 ? `a feed of ${Number(lead.toFixed(4))} mm a turn` : 'this pitch';
    const notes = [`Set the lathe for ${feed} by its plate. ${byGauge}`, ...ways];
    return { notes, needed, why: [], findings: [noGearsEntered(at)] };
  }
  const [best, second] = trainsOf(lathe, lathe.changeGears, lead, screw.pitch);
  const engaged = Math.abs(placed.to - placed.from);
  if (!best) {
    const notes = ['No two wheels are entered that make a train.'];
    const limit = pitchShare * pitchTolerance(placed);
    return { notes, needed, why: [], findings: [noTrain(at, lead, undefined, { tight: 0, limit })] };
  }
  const findings = trainFindings(at, best, lead, engaged, placed);
  if (findings.some((f) => f.level === 'stop'))
    return { notes: [notGoodEnough(best, engaged)], needed, why: [], findings };
  const other = second && second.error === best.error ? ` As good: ${trainInWords(second)}.` : '';
  return {
    notes: [
      `Change gears ${told(best, engaged)}.${other} ${whereTo(best, lathe.changeGears)}`,
      ...ways,
      `${halfNuts(best, lead, screw, lathe.threadDial).says} ${byGauge}`,
    ],
    needed: `change gears ${trainInWords(best)} for a pitch of ${Number(lead.toFixed(4))} mm`,
    why: [
      `Change gears ${trainInWords(best)}: of your wheels they come nearest to the pitch, with the fewest of them.`,
    ],
    findings,
  };
}

/** A thread that gears are sought for; of a bare pitch neither its standard nor its side is known. */
type Geared = Pick<PlacedThread, 'thread' | 'side'>;

/**
 * What is to be said of the best train: nothing when it is exact, a note when the mate still goes on, a stop when it does not.
 *
 * @param lead  feed wanted for one turn of the spindle [mm]
 * @param engaged  length over which the threads are engaged [mm]
 * @param of  the thread; without one, 60° and the usual tolerance
 */
export function trainFindings(at: string, best: GearTrain, lead: Mm, engaged: Mm, of?: Geared): Finding[] {
  if (best.error === 0) return [];
  const tight = diameterForDrift(driftOver(best.error, engaged), of?.thread.flankAngle ?? Math.PI / 3);
  const limit = pitchShare * (of ? pitchTolerance(of) : usualPitchTolerance);
  return [tight > limit ? noTrain(at, lead, best, { tight, limit }) : notExact(at, best, engaged, { tight, limit })];
}

/** In place of how to set the wheels up, where the best train will not do. */
export function notGoodEnough(nearest: GearTrain, engaged: Mm): string {
  return `No train of your wheels gives this pitch; the nearest, ${told(nearest, engaged)}, will not screw on.`;
}

/** The leadscrew as the workshop describes it. */
export function leadscrewOf({ leadscrew }: Pick<Lathe, 'leadscrew'>): Leadscrew | undefined {
  if (!leadscrew) return undefined;
  return leadscrew.kind === 'metric'
    ? { kind: 'metric', pitch: leadscrew.pitch }
    : { kind: 'inch', pitch: mmPerInch / leadscrew.threadsPerInch };
}

/** Where each wheel goes: the first turns with the spindle, the last sits on the leadscrew. */
export function whereTo({ meshes }: GearTrain, gears: readonly number[]): string {
  const [first, last] = [meshes[0], meshes.at(-1)];
  if (!first || !last) return '';
  if (meshes.length === 1) {
    const idler = gears.length > 2 ? ', any wheel between them that reaches, as an idler' : '';
    return `${first.driver} turns with the spindle, ${last.driven} sits on the leadscrew${idler}. The first wheel must turn as fast as the spindle.`;
  }
  return `${first.driver} turns with the spindle and drives ${first.driven}; on the same stud ${last.driver} drives ${last.driven} on the leadscrew. The first wheel must turn as fast as the spindle.`;
}

function told(train: GearTrain, engaged: Mm): string {
  if (train.error === 0) return `${trainInWords(train)}, exact`;
  return `${trainInWords(train)}, pitch ${train.lead.toFixed(5)} mm: ${errorInWords(train, engaged)}`;
}

/** `0.0025 mm too long over 20.0 mm (+125 in a million)`. */
export function errorInWords({ error }: GearTrain, engaged: Mm): string {
  const ppm = Math.round(1e6 * error);
  return `${Math.abs(driftOver(error, engaged)).toFixed(4)} mm too ${error > 0 ? 'long' : 'short'} over ${engaged.toFixed(1)} mm (${ppm > 0 ? '+' : '−'}${Math.abs(ppm)} in a million)`;
}

function handNote(hand: 'left' | 'right'): string {
  return hand === 'right'
    ? 'Right-hand: the saddle must run towards the chuck as the work turns towards you. If it runs away, put in one idler more or one fewer, or set the tumbler over.'
    : 'Left-hand: the saddle must run away from the chuck as the work turns towards you: one idler more or fewer than for a right-hand thread, or the tumbler set over. Start in a groove at the shoulder.';
}

function startsNote(starts: number, pitch: Mm, slideFree: boolean): string {
  const wheel = `turn the spindle on by 1/${starts} turn with the first wheel out of mesh, if its teeth can be divided by ${starts}`;
  const slide = `set the top slide, parallel to the work, on by ${Number(pitch.toFixed(4))} mm; or `;
  return `${starts} starts, one after the other, each to full depth: between them ${slideFree ? slide : ''}${wheel}.`;
}

function pitchTolerance({ thread, side }: Geared): Mm {
  try {
    const { pitch } = threadLimits(thread, side);
    return pitch.max - pitch.min;
  } catch (error) {
    if (!(error instanceof DomainError)) throw error;
    return usualPitchTolerance;
  }
}

function noLeadscrew(at: string): Finding {
  return {
    id: 'route.no-leadscrew',
    level: 'stop',
    stage: 'route',
    at,
    says: 'No leadscrew is entered for this lathe: it cannot cut a thread.',
    because: [],
    remedies: ['Enter the leadscrew if the lathe has one', 'Cut the thread with a die or tap held in the tailstock'],
  };
}

function noGearsEntered(at: string): Finding {
  return {
    id: 'route.no-change-gears',
    level: 'note',
    stage: 'route',
    at,
    says: 'No change gears are entered: whether the lathe cuts this pitch is not checked.',
    because: [],
    remedies: ['Enter the teeth of every change gear, those on the lathe as well', 'Read the plate of the gearbox'],
  };
}

interface Tightness {
  /** What the error of the pitch takes off the clearance, on the pitch diameter. */
  readonly tight: Mm;
  readonly limit: Mm;
}

function onDiameter({ tight, limit }: Tightness): Finding['because'][number] {
  return { what: 'taken off the pitch diameter by it', value: tight, unit: 'mm', limit, source: 'geometry' };
}

function noTrain(at: string, lead: Mm, nearest: GearTrain | undefined, tightness: Tightness): Finding {
  const says = 'No train of the change gears that are entered gives this pitch closely enough.';
  return {
    id: 'route.no-gear-train',
    level: 'stop',
    stage: 'route',
    at,
    says: nearest ? `${says} The nearest is ${trainInWords(nearest)}.` : says,
    because: nearest
      ? [{ what: 'its pitch', value: nearest.lead, unit: 'mm', limit: lead }, onDiameter(tightness)]
      : [{ what: 'pitch', value: lead, unit: 'mm' }],
    remedies: [
      'Enter every wheel you have, those on the lathe as well',
      'Buy or borrow a wheel that brings the pitch nearer: 127 teeth turns inch into metric exactly',
      'Cut the thread with a die or tap held in the tailstock',
    ],
  };
}

function notExact(at: string, train: GearTrain, engaged: Mm, tightness: Tightness): Finding {
  return {
    id: 'route.gear-train-not-exact',
    level: 'note',
    stage: 'route',
    at,
    says: `The change gears ${trainInWords(train)} do not give the pitch exactly: ${errorInWords(train, engaged)}. The mate may fit tighter towards the end.`,
    because: [onDiameter(tightness)],
    remedies: [],
  };
}
