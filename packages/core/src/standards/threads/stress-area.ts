import type { Mm2 } from '../../units/quantities.ts';
import type { Thread } from './record.ts';

/**
 * Section of a bolt that carries tension.
 *
 *     A_s = π/4 ((d2 + d3)/2)²     Unified: A_s = π/4 (D − 0.9743 P)²
 *
 * @param thread  the thread
 * @returns the stress area [mm²]
 * @source ISO68-1
 * @source ASME-B1.1
 * @valid parallel threads; for Whitworth, BA and Cycle the mean of effective and minor is taken in the same way
 * @example tensileStressArea(parseThread('M10')) → 57.99
 */
export function tensileStressArea(thread: Thread): Mm2 {
  const { majorDiameter: d, pitch: p } = thread;
  if (thread.form === 'Unified') return (Math.PI / 4) * (d - 0.9743 * p) ** 2;
  // On the ISO profile the unrounded diameters are meant: d − 0.649519P and d − 1.226869P.
  const mean =
    thread.form === 'ISO metric' ? d - 0.938194 * p : (thread.pitchDiameter + thread.rootDiameterExternal) / 2;
  return (Math.PI / 4) * mean ** 2;
}
