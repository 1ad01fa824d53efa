/**
 * Parallel keys and their keyways, DIN 6885.
 */
import { DomainError } from '../../errors.ts';
import type { SourceKey } from '../../sources/register.ts';
import type { Mm } from '../../units/quantities.ts';
import { limitDeviations } from '../fits/limit-deviations.ts';
import { withoutNoise } from '../fits/noise.ts';
import type { Standing } from './standing.ts';

export type KeySeries = 'DIN 6885-1' | 'DIN 6885-2';
export type KeySeat = 'tight' | 'light';

export interface Key {
  readonly series: KeySeries;
  /** Shaft range: over, up to. */
  readonly shaft: { readonly over: Mm; readonly upTo: Mm };
  readonly width: Mm;
  readonly height: Mm;
  readonly shaftKeyway: Keyway;
  readonly hubKeyway: Keyway;
  /** Room over the key between the nominal depths. */
  readonly topClearance: Mm;
  readonly sources: readonly SourceKey[];
  readonly standing: Standing;
  readonly notes: readonly string[];
}

export interface Keyway {
  readonly toleranceClass: string;
  readonly width: { readonly min: Mm; readonly max: Mm };
  readonly depth: { readonly min: Mm; readonly max: Mm };
}

/** [shaft up to, width, height, shaft depth, hub depth]; the range starts above the one before. */
type KeyRow = readonly [upTo: Mm, width: Mm, height: Mm, shaftDepth: Mm, hubDepth: Mm];

/** Read up to 44 mm [GANTER-6885-1], then from memory. */
const high: readonly KeyRow[] = [
  [8, 2, 2, 1.2, 1],
  [10, 3, 3, 1.8, 1.4],
  [12, 4, 4, 2.5, 1.8],
  [17, 5, 5, 3, 2.3],
  [22, 6, 6, 3.5, 2.8],
  [30, 8, 7, 4, 3.3],
  [38, 10, 8, 5, 3.3],
  [44, 12, 8, 5, 3.3],
  [50, 14, 9, 5.5, 3.8],
  [58, 16, 10, 6, 4.3],
  [65, 18, 11, 7, 4.4],
  [75, 20, 12, 7.5, 4.9],
  [85, 22, 14, 9, 5.4],
  [95, 25, 14, 9, 5.4],
];

/** [GANTER-6885-2] */
const deep: readonly KeyRow[] = [
  [12, 4, 4, 3, 1.1],
  [17, 5, 5, 3.8, 1.3],
  [22, 6, 6, 4.4, 1.7],
  [30, 8, 7, 5.4, 1.7],
  [38, 10, 8, 6, 2.1],
  [44, 12, 8, 6, 2.1],
  [50, 14, 9, 6.5, 2.6],
];

const tables = {
  'DIN 6885-1': { rows: high, over: 6 },
  'DIN 6885-2': { rows: deep, over: 10 },
} as const;

/** The key for a shaft, and its keyways. `tight` for a key that must not shift, `light` for an ordinary one. */
export function key(shaft: Mm, series: KeySeries = 'DIN 6885-1', seat: KeySeat = 'light'): Key {
  const { rows, over } = tables[series];
  const at = rows.findIndex(([upTo]) => shaft <= upTo);
  const row = rows[at];
  const smallest = series === 'DIN 6885-1' && shaft === over;
  if (!row || !(shaft > over || smallest))
    throw new DomainError('shaft', shaft, `over ${over} to ${rows.at(-1)?.[0]} mm`);
  const [upTo, width, height, shaftDepth, hubDepth] = row;
  const depthTolerance = width <= 6 ? 0.1 : 0.2;
  const keyway = (toleranceClass: string, depth: Mm): Keyway => {
    const { lower, upper } = limitDeviations(width, toleranceClass);
    return {
      toleranceClass,
      width: { min: withoutNoise(width + lower), max: withoutNoise(width + upper) },
      depth: { min: depth, max: withoutNoise(depth + depthTolerance) },
    };
  };
  const remembered = series === 'DIN 6885-1' && upTo > 44;
  return {
    series,
    shaft: { over: rows[at - 1]?.[0] ?? over, upTo },
    width,
    height,
    shaftKeyway: keyway(seat === 'tight' ? 'P9' : 'N9', shaftDepth),
    hubKeyway: keyway(seat === 'tight' ? 'P9' : 'JS9', hubDepth),
    topClearance: withoutNoise(shaftDepth + hubDepth - height),
    sources: [remembered ? 'parts-MEM' : series === 'DIN 6885-1' ? 'GANTER-6885-1' : 'GANTER-6885-2'],
    standing: remembered ? 'from memory' : 'read',
    notes: [
      ...(smallest ? ['the read table gives a 6 mm shaft the 2 × 2 key; the ranges begin over 6'] : []),
      ...(series === 'DIN 6885-2' ? ['withdrawn 2008-10: for repairs of what was made to it'] : []),
    ],
  };
}
