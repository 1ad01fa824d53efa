/**
 * Whether the half nuts may be opened between the passes of a thread, and where they may be closed again.
 */
import { dialLines, type ThreadDial } from '../../standards/threads/threading-dial.ts';
import { type Mm, mmPerInch } from '../../units/quantities.ts';
import type { GearTrain } from './change-gears.ts';

export interface Leadscrew {
  readonly pitch: Mm;
  readonly kind: 'metric' | 'inch';
}

export interface HalfNuts {
  readonly keep: 'closed' | 'anywhere' | 'at steps' | 'by dial';
  /** Travel of the saddle after which thread and leadscrew are in step again. */
  readonly every?: Mm | undefined;
  /** Lines of the thread dial at which to close them. */
  readonly lines?: readonly number[] | undefined;
  readonly says: string;
}

/** More threads of the leadscrew than this between two places is no help. */
const mostThreads = 48;

/**
 * Travel of the saddle after which a thread and the leadscrew are in step again: with the spindle stopped the half nuts may be closed
 * at any whole multiple of it.
 *
 *     T = n p,  n the least whole number for which n p / l is whole
 *
 * @param lead  lead of the thread that is cut [mm]
 * @param leadscrew  pitch of the leadscrew [mm]
 * @returns the travel [mm], undefined when there is none within 48 threads of the leadscrew
 * @source geometry
 * @valid leads above 0
 * @example inStepAfter(1, 1.5) → 3
 */
export function inStepAfter(lead: Mm, leadscrew: Mm): Mm | undefined {
  for (let n = 1; n <= mostThreads; n++) {
    const threads = (n * leadscrew) / lead;
    if (threads > 0.5 && Math.abs(threads - Math.round(threads)) < 1e-6) return n * leadscrew;
  }
  return undefined;
}

/** The rule for a thread cut with a train; `dial` is the lathe's own thread dial where it is known. */
export function halfNuts(train: GearTrain, lead: Mm, screw: Leadscrew, dial?: ThreadDial): HalfNuts {
  const closed = (why: string): HalfNuts => ({
    keep: 'closed',
    says: `Leave the half nuts closed from the first pass to the last: ${why}. Stop the spindle, draw out, and run it backwards to return.`,
  });
  if (train.error !== 0) return closed('a thread dial and round distances do not hold for a train that is not exact');
  const every = inStepAfter(lead, screw.pitch);
  if (every !== undefined && Math.abs(every - screw.pitch) < 1e-9)
    return { keep: 'anywhere', every, says: 'The half nuts may be opened and closed anywhere.' };
  if (screw.kind === 'inch' && isInch(lead)) {
    const lines = dialLines(mmPerInch / lead, dial);
    const which = dial
      ? `a thread dial of ${dial.divisions} lines that turns once in ${dial.travelPerTurn} in of travel`
      : 'a thread dial of 8 lines that turns once in an inch of travel';
    const at = lines.length === (dial?.divisions ?? 8) ? 'any line' : `line ${lines.join(', ')}`;
    return {
      keep: 'by dial',
      every,
      lines,
      says: `On ${which}, close the half nuts at ${at}${dial ? '' : '; another dial has other lines'}. Without one leave them closed.`,
    };
  }
  if (every === undefined || screw.kind === 'inch')
    return closed('thread and leadscrew come into step again only after a long way');
  return {
    keep: 'at steps',
    every,
    says: `Leave the half nuts closed. Or stop the spindle, open them, move the saddle by a whole multiple of ${Number(every.toFixed(4))} mm and close them before the spindle turns again.`,
  };
}

/** Turns to the inch in whole quarters: what a thread dial of an inch lathe can find again. */
function isInch(lead: Mm): boolean {
  const quarters = (4 * mmPerInch) / lead;
  return Math.abs(quarters - Math.round(quarters)) < 1e-6;
}
