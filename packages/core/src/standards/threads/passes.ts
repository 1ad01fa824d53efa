/** How many passes makers of threading tools advise, and how deep the first may be. */
import { DomainError } from '../../errors.ts';
import { type Mm, mmPerInch } from '../../units/quantities.ts';
import { firstInfeedThou, type PassMaterial, type PassRange, passesGeneral, passesRegular } from './tables/passes.ts';

function between(rows: readonly PassRange[], pitch: Mm): { least: number; most: number } | undefined {
  const above = rows.findIndex(([p]) => p >= pitch - 1e-9);
  if (above < 0) return undefined;
  const [, , upperMost] = rows[above] ?? [0, 0, 0];
  const exact = Math.abs((rows[above]?.[0] ?? 0) - pitch) < 1e-9;
  const lower = rows[exact ? above : Math.max(above - 1, 0)];
  return { least: lower?.[1] ?? 0, most: upperMost };
}

/**
 * Number of passes that makers of threading tools advise for a pitch; between listed pitches, the range of both neighbours.
 *
 * @param pitch  pitch [mm]
 * @param maker  whose table: `TUNGALOY-p1636` (general) or `INGERSOLL-p1262` (regular inserts)
 * @returns least and greatest number of passes [-]
 * @throws DomainError when the pitch lies beyond the table
 * @source TUNGALOY-p1636
 * @source INGERSOLL-p1262
 * @valid indexable tools on rigid lathes, pitches to 4.5 or 6 mm; a light lathe takes the upper end or more
 * @example usualPasses(1.5).most → 10
 */
export function usualPasses(
  pitch: Mm,
  maker: 'TUNGALOY-p1636' | 'INGERSOLL-p1262' = 'TUNGALOY-p1636',
): { least: number; most: number } {
  const range = pitch > 0 ? between(maker === 'TUNGALOY-p1636' ? passesGeneral : passesRegular, pitch) : undefined;
  if (!range) throw new DomainError('pitch', pitch, `over 0 to ${maker === 'TUNGALOY-p1636' ? 4.5 : 6} mm`);
  return range;
}

/**
 * Greatest infeed of the first pass, passes of equal depth.
 *
 *     read at the pitch, or at the next finer one listed; not over 0.5 mm
 *
 * @param pitch  pitch [mm]
 * @param material  what is cut
 * @returns radial infeed [mm]
 * @throws DomainError when the pitch is finer than 1 mm or coarser than 3 mm
 * @source INGERSOLL-p1262
 * @source TUNGALOY-p1636
 * @valid pitches 1 to 3 mm, indexable tools on rigid lathes
 * @example firstInfeedLimit(1.5, 'stainless steel') → 0.305
 */
export function firstInfeedLimit(pitch: Mm, material: PassMaterial): Mm {
  const row = firstInfeedThou[material].findLast(([p]) => p <= pitch + 1e-9);
  if (!row || pitch > 3) throw new DomainError('pitch', pitch, '1 to 3 mm');
  return Math.min((row[1] * mmPerInch) / 1000, 0.5);
}
