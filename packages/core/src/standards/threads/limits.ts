/** Limits of size of a thread: what may be cut, and what a gauge would pass. */
import { DomainError } from '../../errors.ts';
import type { Mm } from '../../units/quantities.ts';
import { baLimits, whitworthLimits } from './limits-british.ts';
import { metricLimits } from './limits-metric.ts';
import { parallelPipeLimits, taperPipeLimits } from './limits-pipe.ts';
import type { Band, ThreadLimits } from './limits-type.ts';
import { unifiedLimits } from './limits-unified.ts';
import type { Side, Thread } from './record.ts';

export type { Band, ThreadLimits } from './limits-type.ts';

/**
 * Limits of the major, pitch and minor diameter of a thread.
 *
 * @param thread  the thread
 * @param side  `external` for the bolt, `internal` for the nut
 * @param toleranceClass  class; by default the thread's own, else the usual one: 6g and 6H (6h and 5H up to 1.4 mm), 2A and 2B, medium, normal (BA), A
 * @returns the limits [mm]; an end that the standard does not set is named in `notSet`
 * @throws DomainError when no tolerance is held for this thread or class
 * @source ISO965-1-T1
 * @source ASME-B1.1
 * @source BS84
 * @source MH31-p2115
 * @source ISO228-1
 * @valid single-start threads of the families with published tolerances; not Cycle threads, not NPT
 * @example threadLimits(parseThread('M10'), 'external').pitch.min → 8.862
 */
export function threadLimits(thread: Thread, side: Side, toleranceClass?: string): ThreadLimits {
  if (thread.starts > 1)
    throw new DomainError('starts', thread.starts, '1: tolerances of threads of several starts are not held');
  const asked = toleranceClass ?? thread.toleranceClass;
  switch (thread.family) {
    case 'metric':
      return metricLimits(thread, side, asked);
    case 'unified':
      return unifiedLimits(thread, side, asked);
    case 'whitworth':
    case 'brass':
      return whitworthLimits(thread, side, asked);
    case 'ba':
      return baLimits(thread, side, asked);
    case 'pipe-parallel':
      return parallelPipeLimits(thread, side, asked);
    case 'pipe-taper':
      return taperPipeLimits(thread, side);
    case 'cycle':
      throw noTolerances(thread, 'the tolerances of BS 811 are not held here');
    case 'npt':
      throw noTolerances(
        thread,
        'NPT is judged by turns of a gauge, one turn either way; it has no limits of diameter here',
      );
  }
}

function noTolerances(thread: Thread, why: string): DomainError {
  return new DomainError('thread', thread.designation, `a thread with tolerances in the tables: ${why}`);
}

/**
 * Where in a band to aim: its middle.
 *
 * @param band  greatest and least size [mm]
 * @returns the middle [mm]
 * @source common-practice
 * @valid any band
 * @example middle({ max: 9.968, min: 9.732 }) → 9.85
 */
export function middle(band: Band): Mm {
  return (band.max + band.min) / 2;
}
