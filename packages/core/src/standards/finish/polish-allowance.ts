/** What to leave on the diameter for the finishing that comes after the cutter. */
import { DomainError } from '../../errors.ts';
import type { SourceKey } from '../../sources/register.ts';
import type { Micrometre, Mm } from '../../units/quantities.ts';

export interface FinishingAllowance {
  readonly operation: string;
  /** Left on the diameter. */
  readonly low: Mm;
  readonly high: Mm;
  readonly note?: string;
  readonly source: SourceKey;
}

export const finishingAllowances: readonly FinishingAllowance[] = [
  { operation: 'lapping', low: 0.01, high: 0.02, note: '0.005 to 0.01 mm a surface', source: 'curioustab-lapping' },
  { operation: 'lapping (shaft or gauge)', low: 0.005, high: 0.013, source: 'mem-toolengineers' },
  { operation: 'honing a bore', low: 0.025, high: 0.1, note: 'depends on diameter', source: 'mem-toolengineers' },
  {
    operation: 'cylindrical grinding after turning',
    low: 0.2,
    high: 0.4,
    note: 'small unhardened work',
    source: 'mem-toolengineers',
  },
  {
    operation: 'paper polish after fine turning (Rt 3 to 6 µm)',
    low: 0.006,
    high: 0.015,
    note: 'twice Rt plus scratch depth of the first paper; derived from Rt, not published',
    source: 'surface-derived',
  },
  {
    operation: 'paper polish after ordinary turning (Rt 10 to 15 µm)',
    low: 0.02,
    high: 0.035,
    note: 'twice Rt plus scratch depth of the first paper; derived from Rt, not published',
    source: 'surface-derived',
  },
];

export interface PaperAllowance {
  /** Below this the turning marks cannot all go. */
  readonly least: Mm;
  readonly low: Mm;
  readonly high: Mm;
}

/**
 * What to leave on the diameter so that abrasive paper clears the turning marks: the floor of the valleys sets the final size.
 *
 *     ΔD ≥ 2 Rt;  with the scratches of the paper 1.2 … 1.5 · 2 Rt
 *
 * @param rt  peak-to-valley height of the turned surface [µm]
 * @returns least, and the range to leave [mm]
 * @throws DomainError when Rt is not positive
 * @source surface-derived
 * @valid derived from geometry, no published trial was found; measure the first part
 * @example paperAllowance(5).least → 0.01
 */
export function paperAllowance(rt: Micrometre): PaperAllowance {
  if (!(rt > 0 && Number.isFinite(rt))) throw new DomainError('rt', rt, 'more than 0 µm');
  const least = (2 * rt) / 1000;
  return { least, low: 1.2 * least, high: 1.5 * least };
}
