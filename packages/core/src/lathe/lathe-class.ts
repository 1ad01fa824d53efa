/**
 * Classes of lathe by size.
 */
import { DomainError } from '../errors.ts';
import type { Mm } from '../units/quantities.ts';

export type LatheClass = 'small' | 'bench' | 'centre';

/**
 * Size of lathe by its swing over the bed.
 *
 * @param swing  largest diameter over the bed [mm]
 * @returns `small` to 200 mm, `bench` to 300 mm, else `centre`
 * @throws DomainError when the swing is not above 0
 * @source common-practice classes of light lathes in cutting/machine-typicals.csv
 * @valid hobby and tool-room lathes
 * @example latheClass(180) → 'small'
 */
export function latheClass(swing: Mm): LatheClass {
  if (!(swing > 0)) throw new DomainError('swing', swing, 'more than 0 mm');
  return swing <= 200 ? 'small' : swing <= 300 ? 'bench' : 'centre';
}
