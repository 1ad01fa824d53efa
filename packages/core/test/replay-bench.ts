/** What the replay of dial tables has before it: the work as points, a table with its operation, and what is read off it for a cut. */
import type { PartResult } from '../src/part/part-result.ts';
import type { DialTable } from '../src/route/dial-table.ts';
import type { Operation, RouteResult, Setup } from '../src/route/route-result.ts';
import { dialIn, stretchTold, told } from './read-table.ts';
import type { Spot } from './replayed-work.ts';

export interface Bench {
  readonly part: PartResult;
  readonly spots: readonly Spot[];
  readonly wrong: string[];
  /** Stretches that only the point of a drill has reached. */
  readonly points: { from: number; to: number }[];
}

export interface At {
  readonly operation: Operation;
  readonly setup: Setup;
  readonly table: DialTable;
  /** The table before it of the same operation, or itself. */
  readonly first: DialTable;
  readonly route: RouteResult;
}

/** +1 where metal is outside of the cut, −1 where it is a bore. */
export const inwards = (side: 'outside' | 'inside') => (side === 'outside' ? 1 : -1);

export function take(spot: Spot, radius: number): void {
  spot.at = spot.chain === 'outside' ? Math.min(spot.at, radius) : Math.max(spot.at, radius);
}

export function read<T>({ wrong }: Bench, { table }: At, value: T | undefined, what: string): T | undefined {
  const isThere = value !== undefined && !(typeof value === 'number' && Number.isNaN(value));
  if (!isThere) wrong.push(`${table.id} does not tell ${what}`);
  return isThere ? value : undefined;
}

/** Cross slide, zero and stretch of a table of passes. */
export function settingOf(bench: Bench, at: At, words: RegExp) {
  const dial = read(bench, at, dialIn(at.table, /^Cross slide/), 'the dial of the cross slide');
  const zero = read(bench, at, told(at.table, words), 'its zero');
  const stretch = read(bench, at, stretchTold(at.table, bench.part.outline.length), 'where it cuts');
  if (!dial || zero === undefined || !stretch) return undefined;
  const { side } = at.operation;
  const spots = bench.spots.filter((s) => s.chain === side && s.z >= stretch.from - 1e-3 && s.z <= stretch.to + 1e-3);
  return { dial, zero: zero / 2, stretch, spots };
}

/** What a shoulder or a fillet keeps of roughing, along the work; its end is faced, not turned. */
const shoulder = 0.25;

/** Is this place clear of shoulders, edges and the point of the drill, so that a pass meets only what the pass before left? */
export function isClear(
  { part, points }: Bench,
  { from, to }: { from: number; to: number },
  { z, chain }: Spot,
): boolean {
  if (z < from + shoulder || z > to - shoulder) return false;
  if (chain === 'inside') return !points.some((p) => z > p.from - shoulder && z < p.to + shoulder);
  return !part.outline.outside.some(
    (s) =>
      s.feature.includes('.') && z > Math.min(s.from.z, s.to.z) - shoulder && z < Math.max(s.from.z, s.to.z) + shoulder,
  );
}
