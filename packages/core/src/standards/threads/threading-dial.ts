/** When to close the half nuts again. */
import { DomainError } from '../../errors.ts';

export interface ThreadDial {
  /** Numbered and plain lines on the dial together. */
  readonly divisions: number;
  /** Carriage travel of one turn of the dial, in inches. */
  readonly travelPerTurn: number;
}

/**
 * Lines of the thread dial at which the half nuts may be closed for a number of threads an inch.
 *
 *     line k + 1 is right when k s n is whole;  s = travel of one division in inches, n = threads an inch
 *
 * @param tpi  threads an inch to be cut [-]
 * @param dial  divisions and travel of a turn; by default 8 divisions and 1 in
 * @returns the lines, counted from 1; all of them when any will do [-]
 * @throws DomainError when the dial or the threads an inch make no sense
 * @source LMS-p28
 * @source geometry
 * @valid inch threads on an inch leadscrew; for metric threads on an inch leadscrew, or the other way about, the half nuts stay closed (common practice)
 * @example dialLines(18) → [1, 5]
 */
export function dialLines(tpi: number, dial: ThreadDial = { divisions: 8, travelPerTurn: 1 }): number[] {
  if (!(tpi > 0)) throw new DomainError('tpi', tpi, 'threads an inch above 0');
  if (!(Number.isInteger(dial.divisions) && dial.divisions > 0 && dial.travelPerTurn > 0))
    throw new DomainError('dial', dial, 'divisions and travel above 0');
  const perDivision = dial.travelPerTurn / dial.divisions;
  return Array.from({ length: dial.divisions }, (_, k) => k)
    .filter((k) => {
      const turns = k * perDivision * tpi;
      return Math.abs(turns - Math.round(turns)) < 1e-6;
    })
    .map((k) => k + 1);
}
