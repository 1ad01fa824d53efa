/** The diameter to turn or bore before the thread is cut. */
import { DomainError } from '../../errors.ts';
import type { SourceKey } from '../../sources/register.ts';
import type { Mm } from '../../units/quantities.ts';
import { forms } from './forms.ts';
import { middle, threadLimits } from './limits.ts';
import type { Band } from './limits-type.ts';
import type { Side, Thread } from './record.ts';

export interface PreTurned {
  /** What to aim at. */
  readonly diameter: Mm;
  readonly limits: Band;
  readonly why: string;
  readonly sources: readonly SourceKey[];
}

/**
 * Where the blank should lie before threading: in the middle of the crest's own limits.
 *
 *     bolt: (d_max + d_min)/2     nut: (D1_max + D1_min)/2     no limits held: d − 0.1 P, ± 0.05 P
 *
 * @param thread  the thread
 * @param side  `external` or `internal`
 * @param toleranceClass  class; by default the thread's own or the usual one
 * @returns the diameter, its limits and the reason [mm]
 * @source SHOP-blank
 * @source common-practice
 * @valid parallel threads; taper threads are turned to their taper
 * @example preTurnedDiameter(parseThread('M10')).diameter → 9.85
 */
export function preTurnedDiameter(thread: Thread, side: Side = 'external', toleranceClass?: string): PreTurned {
  if (thread.family === 'npt' || thread.family === 'pipe-taper') {
    throw new DomainError(
      'thread',
      thread.designation,
      'a parallel thread: a taper thread is turned to its taper of 1 in 16 first',
    );
  }
  const limits = crestLimits(thread, side, toleranceClass);
  const flat =
    forms[thread.form].shape === 'rounded' && side === 'external'
      ? '. A single point leaves the crest flat: round it with a chaser or a fine file'
      : '';
  const blank =
    side === 'external'
      ? 'The tool and the die raise the crest a little'
      : 'The tool and the tap raise the crest a little';
  return {
    diameter: middle(limits.band),
    limits: limits.band,
    why: `${blank}, so the blank is ${side === 'external' ? 'turned' : 'bored'} to the middle of the crest's limits, not to their end${limits.note}${flat}`,
    sources: limits.sources,
  };
}

function crestLimits(
  thread: Thread,
  side: Side,
  toleranceClass: string | undefined,
): { band: Band; note: string; sources: readonly SourceKey[] } {
  try {
    const limits = threadLimits(thread, side, toleranceClass);
    return {
      band: side === 'external' ? limits.major : limits.minor,
      note: '',
      sources: side === 'external' ? ['SHOP-blank', ...limits.sources] : ['common-practice', ...limits.sources],
    };
  } catch (error) {
    if (!(error instanceof DomainError) || toleranceClass !== undefined) throw error;
    const outward = side === 'external' ? -1 : 1;
    const crest = side === 'external' ? thread.majorDiameter : thread.minorDiameter;
    const ends = [crest + outward * 0.05 * thread.pitch, crest + outward * 0.15 * thread.pitch];
    return {
      band: { max: Math.max(...ends), min: Math.min(...ends) },
      note: '; no limits are held for this thread, so a tenth of the pitch off the basic crest is taken',
      sources: ['common-practice'],
    };
  }
}
