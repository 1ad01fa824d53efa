/**
 * The speed of a cut whose feed a hand gives and whose depth the tool or the table sets: only the speed is left to choose.
 */

import { spindleSpeeds } from '../lathe/drive.ts';
import type { Judge } from '../lathe/judge.ts';
import type { Lathe } from '../lathe/schema.ts';
import type { Mm, Rpm } from '../units/quantities.ts';
import { singingBorne, usablePower } from './practice.ts';
import type { CutNumbers } from './route-result.ts';

export interface HandFed {
  readonly lathe: Lathe;
  /** Fastest speed that is published for it. */
  readonly top: Rpm;
  /** The numbers of the cut at a speed, with the give of the work alone. */
  readonly at: (speed: Rpm) => CutNumbers;
  /** How it fares on the lathe; left out where that is not known. */
  readonly judge: Judge | undefined;
  /** Depth as the lathe model takes it: the width of the edge for a plunge. */
  readonly depth: Mm;
  /** The lathe model tells a plunge's error on the radius, here 2; any other on the diameter, here 1. */
  readonly sides: 1 | 2;
}

/** The slowest speed of a lathe. */
export function slowestOf(lathe: Lathe): Rpm {
  return Math.min(...spindleSpeeds(lathe));
}

/** By so much the chance from all draws may lie below that from few; a speed farther above what is borne is not asked about again. */
const fewMayBeOff = 0.2;

/** Of the speeds that the drive turns, the fastest that keeps quiet; where none does, the quietest. */
export function handFedCut({ lathe, top, at, judge, depth, sides }: HandFed): CutNumbers {
  const speeds = spindleSpeeds(lathe).filter((rpm) => rpm <= top);
  const cuts = (speeds.length > 0 ? speeds : [top]).map(at);
  const strong = cuts.filter((c) => c.powerShare <= usablePower);
  const possible = strong.length > 0 ? strong : cuts.slice(0, 1);
  if (!judge) return possible.at(-1) ?? at(top);
  const few = possible.map((cut): CutNumbers => {
    const { size, chatter } = judge({ depth, feed: cut.feed, speed: cut.speed });
    return { ...cut, bending: sides * size.most.middle, sings: chatter };
  });
  const inFull = (cut: CutNumbers): CutNumbers => ({
    ...cut,
    sings: judge.chance({ depth, feed: cut.feed, speed: cut.speed }),
  });
  for (const cut of few.toReversed()) {
    if ((cut.sings ?? 0) > singingBorne + fewMayBeOff) continue;
    const asked = inFull(cut);
    if ((asked.sings ?? 0) <= singingBorne) return asked;
  }
  const quietest = few.map(inFull).toSorted((a, b) => (a.sings ?? 0) - (b.sings ?? 0));
  return quietest[0] ?? at(top);
}
