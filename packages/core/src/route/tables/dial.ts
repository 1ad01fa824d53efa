/**
 * Dial numbers: how far to turn which dial, in whole divisions, never further than asked.
 */
import { DomainError } from '../../errors.ts';
import type { Mm } from '../../units/quantities.ts';

/** A dial as the workshop describes it. */
export interface Dial {
  readonly division: Mm;
  readonly perTurn: Mm;
  /** What a division stands for: `radius` and `travel` are what the slide moves, `diameter` is twice that. */
  readonly reads: 'radius' | 'diameter' | 'travel';
}

export interface DialSetting {
  /** Whole turns from the zero that was set. */
  readonly turns: number;
  /** Divisions beyond the whole turns. */
  readonly divisions: number;
  /** Movement of the slide that this makes. */
  readonly travel: Mm;
}

/** Counts a division as reached when it is missed by less than this share; the noise of binary fractions, not of the lathe. */
const noise = 1e-6;

/**
 * Movement of the slide for one division.
 *
 *     s = division, or half of it when the dial reads the diameter
 *
 * @param dial  the dial
 * @returns movement of the slide [mm]
 * @source geometry
 * @valid any dial
 * @example slidePerDivision({ division: 0.02, perTurn: 1, reads: 'diameter' }) → 0.01
 */
export function slidePerDivision(dial: Dial): Mm {
  return dial.reads === 'diameter' ? dial.division / 2 : dial.division;
}

/**
 * Whole divisions in a movement of the slide, rounded down.
 *
 *     n = ⌊travel / s⌋
 *
 * @param travel  movement wanted [mm]
 * @param dial  the dial
 * @returns number of divisions [-]
 * @source geometry
 * @valid travel ≥ 0
 * @example wholeDivisions(0.53, { division: 0.02, perTurn: 1, reads: 'radius' }) → 26
 */
export function wholeDivisions(travel: Mm, dial: Dial): number {
  return Math.floor(travel / slidePerDivision(dial) + noise);
}

/**
 * Turns and divisions that move a slide by at most a distance: rounded down, so that a cut never goes deeper than asked.
 *
 *     n = ⌊travel / s⌋, turns = ⌊n / N⌋, divisions = n − N·turns
 *
 * @param travel  movement wanted, from the zero set [mm]
 * @param dial  the dial
 * @returns the setting and the movement it makes
 * @throws DomainError when the travel is negative: come back beyond the zero and approach it anew
 * @source geometry
 * @valid travel ≥ 0, backlash taken up in the direction of the cut
 * @example dialSetting(1.239, { division: 0.02, perTurn: 1, reads: 'radius' }) → { turns: 1, divisions: 11, travel: 1.22 }
 */
export function dialSetting(travel: Mm, dial: Dial): DialSetting {
  if (!(travel >= 0)) throw new DomainError('travel', travel, '0 mm or more');
  const total = wholeDivisions(travel, dial);
  const perTurn = Math.max(1, Math.round(dial.perTurn / dial.division));
  const turns = Math.floor(total / perTurn);
  return { turns, divisions: total - turns * perTurn, travel: total * slidePerDivision(dial) };
}

/** How a dial is described at the head of a table. */
export function dialNote(name: string, dial: Dial): string {
  const what = dial.reads === 'diameter' ? 'on the diameter' : dial.reads === 'radius' ? 'on the radius' : 'of travel';
  return `${name}: one division is ${dial.division} mm ${what}, ${Math.round(dial.perTurn / dial.division)} divisions a turn. Approach every setting from the same side, to take up the backlash.`;
}
