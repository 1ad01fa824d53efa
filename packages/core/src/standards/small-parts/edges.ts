/**
 * General chamfers, and the threads grease nipples go into.
 */
import { DomainError } from '../../errors.ts';
import type { SourceKey } from '../../sources/register.ts';
import type { Mm } from '../../units/quantities.ts';
import type { Standing } from './standing.ts';

/** [work up to, chamfer], common practice where the drawing says nothing. */
const chamfers = [
  [3, 0.2],
  [6, 0.4],
  [18, 0.6],
  [30, 1],
  [80, 1.6],
  [120, 2.5],
] as const;

export interface GeneralChamfer {
  /** Leg of a 45 degree chamfer. */
  readonly leg: Mm;
  readonly sources: readonly SourceKey[];
  readonly standing: Standing;
}

/** A 45 degree chamfer in proportion to a diameter, where the original shows none and the drawing says nothing. */
export function generalChamfer(diameter: Mm): GeneralChamfer {
  const row = diameter > 0 ? chamfers.find(([upTo]) => diameter <= upTo) : undefined;
  if (!row) throw new DomainError('diameter', diameter, 'more than 0, at most 120 mm');
  return { leg: row[1], sources: ['common-practice'], standing: 'common practice' };
}

export interface GreaseNipple {
  readonly thread: string;
  /** Tapping drill, or the hole for a driven nipple. */
  readonly hole: string;
  readonly source: SourceKey;
  readonly standing: Standing;
}

/** Usual grease nipples and the hole each wants [parts-MEM]. */
export const greaseNipples: readonly GreaseNipple[] = (
  [
    ['M6x1 (taper short thread)', '5.0 mm'],
    ['M8x1', '7.0 mm'],
    ['M10x1', '9.0 mm'],
    ['G1/8 (R1/8 taper)', '8.8 mm'],
    ['1/4-28 UNF', '5.5 mm'],
    ['6 mm plain, driven in', '6 H11'],
  ] as const
).map(([thread, hole]) => ({ thread, hole, source: 'parts-MEM', standing: 'from memory' }));
