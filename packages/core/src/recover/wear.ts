/** How much metal went, place by place. */
import type { Weighed } from '../evidence/evidence-result.ts';
import { quantile, type SizeDensity, type Turn } from './posterior.ts';
import type { PlaceWear } from './recover-result.ts';

/** Wear at each reading: the size as made less what is left there, both with their uncertainty; never below nought where wear takes off. */
export function wearOf(kept: readonly Weighed[], densities: readonly SizeDensity[], turn: Turn): PlaceWear[] {
  return kept.flatMap((w) => {
    const { reading } = w;
    const density = densities.find((d) => d.specimen === (reading.specimen ?? ''));
    if (!density || reading.condition === 'damaged') return [];
    const gains = reading.condition === 'corroded' || reading.condition === 'plated';
    const least = gains ? -Infinity : 0;
    const lost = (p: number) => turn * (quantile(density, turn === 1 ? p : 1 - p) - w.value);
    const own = 2 * w.uncertainty;
    const middle = lost(0.5);
    const spreadLow = Math.hypot(middle - lost(0.025), own);
    const spreadHigh = Math.hypot(lost(0.975) - middle, own);
    const likely = Math.max(least, middle);
    const range = { low: Math.max(least, middle - spreadLow), high: Math.max(likely, middle + spreadHigh) };
    return [
      {
        reading: reading.id,
        specimen: reading.specimen ?? '',
        along: reading.along,
        angle: reading.angle,
        condition: reading.condition ?? 'unsure',
        likely,
        range,
      },
    ];
  });
}
