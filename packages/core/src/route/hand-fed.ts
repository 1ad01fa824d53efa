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

/** Of the speeds that the drive turns, the fastest that keeps quiet; where none does, the quietest. */
export function handFedCut({ lathe, top, at, judge, depth, sides }: HandFed): CutNumbers {
  const judged = (speed: Rpm): CutNumbers => {
    const cut = at(speed);
    const fares = judge?.({ depth, feed: cut.feed, speed });
    return fares
      ? { ...cut, bending: sides * fares.size.most.middle, sings: judge?.chance({ depth, feed: cut.feed, speed }) }
      : cut;
  };
  const speeds = spindleSpeeds(lathe).filter((rpm) => rpm <= top);
  const cuts = (speeds.length > 0 ? speeds : [top]).map(judged);
  const strong = cuts.filter((c) => c.powerShare <= usablePower);
  const quiet = strong.findLast((c) => (c.sings ?? 0) <= singingBorne);
  return quiet ?? strong.toSorted((a, b) => (a.sings ?? 0) - (b.sings ?? 0))[0] ?? cuts[0] ?? at(top);
}
