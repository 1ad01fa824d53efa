/**
 * When an edge rubs instead of cutting: the chip is thinner than the rounding of the edge can take up.
 */
import { DomainError } from '../errors.ts';
import type { Finding } from '../finding.ts';
import type { Mm } from '../units/quantities.ts';
import { type EdgeCondition, edgeRadius } from './edge.ts';

/** Minimum chip thickness over edge radius: steels and the like, 0.2 to 0.35 [LIT, from memory]. */
const share = { low: 0.2, high: 0.35 } as const;

/**
 * Thinnest chip an edge can cut; thinner, the metal is pressed under the edge and springs back.
 *
 *     h_min = (0.2 … 0.35) ρ
 *
 * @param edge  how the edge was made
 * @returns below `low` it rubs even at its sharpest, above `high` it cuts; `usual` lies midway [mm]
 * @source LIT minimum chip thickness over edge radius, from memory
 * @valid metals; aluminium and copper cut down to 0.1 ρ; fresh edges
 * @example minimumChip('moulded').usual → 0.012375
 */
export function minimumChip(edge: EdgeCondition): { readonly low: Mm; readonly usual: Mm; readonly high: Mm } {
  const radius = edgeRadius(edge);
  const usual = ((share.low + share.high) / 2) * radius.usual;
  return { low: share.low * radius.low, usual, high: share.high * radius.high };
}

/** Does the chip cut, may it rub, does it rub? */
export type Rubbing = 'cuts' | 'may rub' | 'rubs';

/**
 * Whether a chip of a mean thickness cuts or rubs.
 *
 * @param chipThickness  mean over the engaged edge [mm]
 * @param edge  how the edge was made
 * @returns `rubs` below the usual minimum chip, `may rub` up to the greatest, `cuts` above
 * @throws DomainError when the thickness is not above 0
 * @source LIT
 * @valid as {@link minimumChip}
 * @example rubbing(0.011, 'moulded') → 'rubs'
 */
export function rubbing(chipThickness: Mm, edge: EdgeCondition): Rubbing {
  if (!(chipThickness > 0)) throw new DomainError('chipThickness', chipThickness, 'more than 0 mm');
  const least = minimumChip(edge);
  if (chipThickness < least.usual) return 'rubs';
  return chipThickness < least.high ? 'may rub' : 'cuts';
}

/**
 * What to say of a chip too thin for its edge: `stop` where the work hardens under a rubbing edge.
 *
 * @param at  where the finding belongs, an operation or cutter
 * @param chipThickness  mean over the engaged edge [mm]
 * @param edge  how the edge was made
 * @param workHardens  whether the material hardens when rubbed, as austenitic stainless does
 * @returns the finding, or nothing when the edge cuts
 * @source LIT
 * @source common-practice never rub austenitic stainless
 * @valid as {@link minimumChip}
 * @example rubbingFinding('finish', 0.011, 'moulded', true).level → 'stop'
 */
export function rubbingFinding(
  at: string,
  chipThickness: Mm,
  edge: EdgeCondition,
  workHardens: boolean,
): Finding | undefined {
  const state = rubbing(chipThickness, edge);
  if (state === 'cuts') return undefined;
  const rubs = state === 'rubs';
  const level = workHardens ? (rubs ? 'stop' : 'caution') : rubs ? 'caution' : 'note';
  const least = minimumChip(edge);
  return {
    id: 'cutting.rubs',
    level,
    stage: 'route',
    at,
    says: `The chip ${rubs ? 'is' : 'may be'} too thin for a ${edge} edge: it rubs instead of cutting${
      workHardens ? ', and this material hardens where it is rubbed' : ''
    }.`,
    because: [
      {
        what: 'mean chip thickness',
        value: 1000 * chipThickness,
        unit: 'µm',
        limit: 1000 * (rubs ? least.usual : least.high),
        source: 'LIT',
      },
    ],
    remedies: [
      'feed more for each turn',
      'cut deeper and leave nothing for a light last pass',
      ...(edge === 'sharp' ? ['stone the edge keener'] : ['use a ground, sharp edge']),
    ],
  };
}
