/**
 * What there is beyond the ends of a thread while it is cut: a relief or thinner work to run out into, plain work, a shoulder, the jaws.
 */
import type { PlacedThread } from '../part/part-result.ts';
import type { Mm } from '../units/quantities.ts';
import type { End, Holding } from './hold.ts';
import { jawClearance, shoulderAllowance } from './practice.ts';
import { type Profile, radiusOf } from './profile.ts';
import type { Workpiece } from './workpiece.ts';

export interface ThreadEnd {
  /** `free`: clear of the root; `plain`: the crest goes on; `shoulder`: something stands above the crest at once. */
  readonly beyond: 'free' | 'plain' | 'shoulder';
  /** Way of the cutter from the last full turn to what stands in it; without end where nothing does. */
  readonly room: Mm;
  readonly against: 'a shoulder' | 'a shoulder close to the jaws' | 'the jaws' | 'the bottom' | 'nothing';
}

/** How finely the work is looked at along the axis. */
const step: Mm = 0.05;
/** Further than this nobody's cutter runs on. */
const farthest: Mm = 60;
/** A ridge no wider than this is no shoulder. */
const wall: Mm = shoulderAllowance + 0.05;
/** Two radii nearer to each other than this are one. */
const close: Mm = 0.01;

/** The end of the thread at which the cutter stops: a right-hand one is cut towards the chuck, a left-hand one away from it. */
export function stopsAt({ thread }: PlacedThread, endOut: End): End {
  const chuck = endOut === 'right' ? 'left' : 'right';
  return thread.hand === 'right' ? chuck : endOut;
}

export function otherEnd(end: End): End {
  return end === 'left' ? 'right' : 'left';
}

/**
 * What the cutter meets beyond one end of a thread, in the work as it is then.
 *
 * @param rootDiameter  at the bottom of the groove, as the cutter on hand makes it [mm]
 * @returns undefined when the work is nowhere thick enough there to be threaded
 */
export function beyondThread(
  placed: PlacedThread,
  end: End,
  rootDiameter: Mm,
  work: Workpiece,
  holding: Holding,
): ThreadEnd | undefined {
  const outside = placed.side === 'external';
  const sign = outside ? 1 : -1;
  const ahead = end === 'right' ? 1 : -1;
  const height = heightOver(work, outside, holding, end);
  const root = (sign * rootDiameter) / 2;
  const middle = (placed.from + placed.to) / 2;
  const crest = height(middle).r;
  if (crest <= root + close) return undefined;
  // Back from the end of the thread, over chamfer and relief, to where its crest is whole.
  const edge = end === 'right' ? placed.to : placed.from;
  let last = edge - ahead * (step / 2);
  while (height(last).r < crest - close && (last - middle) * ahead > 0) last -= ahead * step;
  const first = last + ahead * (step / 2);
  const across = placed.thread.pitch;
  let beyond: ThreadEnd['beyond'] | undefined;
  for (let gone = 0; gone < farthest; gone += step) {
    const at = first + ahead * (gone + step / 2);
    const { r, jaws, bottom } = height(at);
    // What roughing left on a shoulder for its finishing cut is a thin wall that breaks away.
    if (r > crest + close && height(at + ahead * wall).r > crest + close) {
      const shoulder = height(at + ahead * jawClearance).jaws ? 'a shoulder close to the jaws' : 'a shoulder';
      return {
        beyond: beyond === undefined && gone > step / 2 ? 'plain' : (beyond ?? 'shoulder'),
        room: gone,
        against: jaws ? 'the jaws' : bottom ? 'the bottom' : shoulder,
      };
    }
    if (beyond === undefined && r <= root + close) beyond = 'free';
    // A chamfer is gone after a pitch or so; what still stands then is plain work.
    if (beyond === undefined && gone > 1.5 * across) beyond = 'plain';
  }
  return { beyond: beyond ?? 'plain', room: Number.POSITIVE_INFINITY, against: 'nothing' };
}

/** How far work stands in the way of a cutter at a place, larger being more; holes are counted negative. */
function heightOver(work: Workpiece, outside: boolean, { jaw, setup }: Holding, towards: End) {
  const profile: Profile = outside ? work.outside : work.inside;
  const [start, end] = [work.outside[0]?.from ?? 0, work.outside.at(-1)?.to ?? 0];
  const chuck = setup.endOut === 'right' ? 'left' : 'right';
  const inJaws = (z: Mm) => towards === chuck && (chuck === 'left' ? z < jaw : z > jaw);
  return (z: Mm): { r: Mm; jaws?: boolean; bottom?: boolean } => {
    if (outside && setup.held === 'in the chuck' && inJaws(z)) return { r: Number.POSITIVE_INFINITY, jaws: true };
    if (z < start || z > end) return { r: Number.NEGATIVE_INFINITY };
    const piece = profile.find((p) => p.from <= z && p.to >= z);
    if (!piece) return outside ? { r: Number.NEGATIVE_INFINITY } : { r: 0, bottom: true };
    return { r: outside ? radiusOf(piece, z) : -radiusOf(piece, z) };
  };
}
