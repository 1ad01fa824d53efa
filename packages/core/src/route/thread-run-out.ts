/** Where a threading cutter stops, how it is held from running on, and whether there is room for it. */
import { DomainError } from '../errors.ts';
import type { Finding } from '../finding.ts';
import type { PlacedThread } from '../part/part-result.ts';
import { type ReliefGroove, reliefGroove } from '../standards/threads/relief.ts';
import type { Mm, Rpm, Second } from '../units/quantities.ts';
import type { Draft } from './draft.ts';
import type { Holding } from './hold.ts';
import { beyondThread, otherEnd, stopsAt, type ThreadEnd } from './thread-ends.ts';
import type { Workpiece } from './workpiece.ts';

export interface RunOut {
  readonly notes: readonly string[];
  readonly findings: readonly Finding[];
}

/** Less time than this between the last full turn and what stands in the way is too short to draw out by hand; `common practice`. */
const quick: Second = 1;

export function runOutOf(
  draft: Draft,
  placed: PlacedThread,
  rootDiameter: Mm,
  slowest: Rpm,
  holding: Holding,
  work: Workpiece,
): RunOut {
  const stop = stopsAt(placed, holding.setup.endOut);
  const end = beyondThread(placed, stop, rootDiameter, work, holding);
  const start = beyondThread(placed, otherEnd(stop), rootDiameter, work, holding);
  const groove = reliefOf(placed);
  if (!end) return { notes: [], findings: [] };
  const advance = (placed.thread.pitch * placed.thread.starts * slowest) / 60;
  const time = end.room / advance;
  const needed = roomNeeded(placed, end, groove);
  const short = needed !== undefined && end.room < needed - 1e-6;
  return {
    notes: [stopNote(placed, end, groove, slowest, time)],
    findings: [
      ...(short ? [noRoom(draft, placed, end, needed, groove)] : []),
      ...(!short && time < quick ? [tooQuick(draft, end, time, slowest)] : []),
      ...(start?.beyond === 'shoulder' ? [noStart(draft, start)] : []),
    ],
  };
}

/** The undercut of the standard; undefined for pitches it does not cover. */
function reliefOf({ thread, side }: PlacedThread): { normal: ReliefGroove; short: ReliefGroove } | undefined {
  try {
    return { normal: reliefGroove(thread, side, 'normal'), short: reliefGroove(thread, side, 'short') };
  } catch (error) {
    if (!(error instanceof DomainError)) throw error;
    return undefined;
  }
}

/** The short run-out or the short undercut of the standard: with less the last turns cannot be cut whole. */
function roomNeeded(
  { side }: PlacedThread,
  { beyond }: ThreadEnd,
  groove: ReturnType<typeof reliefOf>,
): Mm | undefined {
  if (!groove) return undefined;
  const { short } = groove;
  if (beyond === 'free') return short.leastLength;
  return side === 'external' ? (short.shoulderDistance ?? short.runOut) : short.runOut;
}

function stopNote(
  { side }: PlacedThread,
  { beyond, room, against }: ThreadEnd,
  groove: ReturnType<typeof reliefOf>,
  slowest: Rpm,
  time: Second,
): string {
  const far = room === Number.POSITIVE_INFINITY;
  const until = far
    ? ''
    : ` The cutter is through the ${room.toFixed(1)} mm before ${against} in ${time.toFixed(1)} s at ${slowest} rpm: know which hand stops what before the first pass.`;
  if (beyond === 'free')
    return `Stop once the cutter is clear of the last turn${far ? '; nothing stands behind it' : ''}, then draw out.${until}`;
  if (beyond === 'shoulder') return `The thread ends against ${against}, with nothing to run out into.`;
  const drawn = side === 'external' ? 'Draw the cutter out' : 'Draw the cutter off the wall';
  const length = groove
    ? ` over at most ${groove.normal.runOut.toFixed(1)} mm, ${groove.short.runOut.toFixed(1)} mm where it must be short (run-out of DIN 76-1)`
    : '';
  return `There is no relief. ${drawn} by hand as the last full turn ends${length}, at the same mark on every pass, spindle at its slowest or turned by hand.${until}`;
}

function noRoom(
  { id }: Draft,
  { side, thread }: PlacedThread,
  { beyond, room, against }: ThreadEnd,
  needed: Mm,
  groove: ReturnType<typeof reliefOf>,
): Finding {
  const relief = groove
    ? [
        `Cut a relief first: Ø${groove.short.diameter} mm, ${groove.short.leastLength} mm wide at its floor or more; ${groove.normal.leastLength} mm is the normal width`,
      ]
    : ['Cut a relief first, below the root of the thread and a pitch and a half wide or more'];
  return {
    id: 'route.thread-no-room',
    level: 'caution',
    stage: 'route',
    at: id,
    says:
      beyond === 'free'
        ? `The relief behind the thread ${thread.designation} is narrow: the cutter has little room before it meets ${against}.`
        : `The thread ${thread.designation} ends too near ${against}: its last turns cannot be cut whole.`,
    because: [
      {
        what: beyond === 'free' ? 'width to run out into' : 'from the last full turn to what stands in the way',
        value: room,
        unit: 'mm',
        limit: needed,
        source: 'DIN76-1',
      },
    ],
    remedies: [
      ...(beyond === 'free' ? [] : relief),
      'Shorten the thread',
      side === 'external'
        ? 'Turn the spindle by hand for the last turns, and draw out at a mark'
        : 'Mark the bar, and turn the spindle by hand for the last turns',
    ],
  };
}

function tooQuick({ id }: Draft, { room, against }: ThreadEnd, time: Second, slowest: Rpm): Finding {
  return {
    id: 'route.thread-quick',
    level: 'caution',
    stage: 'route',
    at: id,
    says: `At the slowest speed the cutter runs from the last turn into ${against} faster than most hands draw out.`,
    because: [
      {
        what: `time for ${room.toFixed(1)} mm at ${slowest} rpm`,
        value: time,
        unit: 's',
        limit: quick,
        source: 'common-practice',
      },
    ],
    remedies: [
      'Turn the spindle by hand, with a crank in its bore and the motor unplugged',
      'Cut away from it: cutter upside down, spindle in reverse, beginning in the relief; not with a chuck that screws on',
      'Widen the relief, or let the work stand out further',
    ],
  };
}

function noStart({ id }: Draft, { against }: ThreadEnd): Finding {
  return {
    id: 'route.thread-no-start',
    level: 'caution',
    stage: 'route',
    at: id,
    says: `The thread begins against ${against}: the cutter has no place to be set to depth in.`,
    because: [],
    remedies: ['Cut a relief there first', 'Turn the work round, so that it begins at the open end'],
  };
}
