/** Density of readings at a size as made, for every mean wear and every share of worn places that is tried. */
import type { Mm } from '../units/quantities.ts';
import { quickWornReading } from './worn-reading.ts';

export type Condition = 'protected' | 'worn' | 'unsure' | 'damaged' | 'corroded' | 'plated';

/** A reading, made ready. */
export interface Ready {
  readonly id: string;
  readonly specimen: string;
  readonly condition: Condition;
  readonly gauge: string;
  /** Turned so that wear makes it smaller. */
  readonly value: Mm;
  /** Standard uncertainty that is this reading's own. */
  readonly own: Mm;
  /** Standard uncertainty that all readings with this gauge share. */
  readonly shared: Mm;
}

/** Mean wear tried, evenly in its logarithm: 2 µm to 0.3 mm. */
export const wearScales: readonly Mm[] = Array.from({ length: 8 }, (_, i) => 0.002 * 150 ** (i / 7));
/** Share of unsure places that are worn, each tried. */
export const wornShares = [0.2, 0.5, 0.8];
/** A place called protected may be worn after all; any reading may be a slip, spread over a millimetre. */
const doubtful = 0.03;
const slip = 0.001;
/** Corroded and plated places have added material this often. */
const swollen = 0.7;

export interface Product {
  readonly scale: Mm;
  readonly values: Float64Array;
  /** Logarithm of what was divided out so that the values stay numbers. */
  readonly log: number;
}

/** Product of the readings' densities at each place, for every wear scale and every share of worn places. */
export function products(
  readings: readonly Ready[],
  us: readonly Mm[],
  places: Float64Array,
  scales: readonly Mm[],
  shares: readonly number[],
): Product[] {
  const found = scales.flatMap((scale) =>
    shares.map((share) => ({ scale, share, values: new Float64Array(places.length).fill(1), log: 0 })),
  );
  readings.forEach((r, i) => {
    if (r.condition === 'damaged') return;
    const u = us[i] ?? r.own;
    const z = places.map((at) => (r.value - at) / u);
    const bells = z.map((v) => Math.exp((-v * v) / 2));
    const plain = bells.map((v) => v * (0.3989422804014327 / u));
    const gained = r.condition === 'corroded' || r.condition === 'plated' ? swelling(z, bells, u) : undefined;
    for (const scale of scales) {
      const worn = gained ?? z.map((v, k) => quickWornReading(v, bells[k] ?? 0, u / scale, scale));
      for (const p of found)
        if (p.scale === scale) p.log += multiply(p.values, plain, worn, wornShare(r.condition, p.share));
    }
  });
  return found;
}

/** How likely the place is one that changed. */
function wornShare(condition: Condition, share: number): number {
  switch (condition) {
    case 'protected':
      return doubtful;
    case 'worn':
      return 1;
    case 'corroded':
    case 'plated':
      return swollen;
    default:
      return share;
  }
}

/** Corrosion and plating add, by an amount of unknown scale. */
function swelling(z: Float64Array, bells: Float64Array, u: Mm): Float64Array {
  return z.map(
    (v, k) => wearScales.reduce((sum, s) => sum + quickWornReading(-v, bells[k] ?? 0, u / s, s), 0) / wearScales.length,
  );
}

/** Multiplies the density of a reading in; answers the logarithm of what it divided out. */
function multiply(values: Float64Array, plain: Float64Array, worn: Float64Array, share: number): number {
  let most = 0;
  for (let k = 0; k < values.length; k++) {
    const v = (values[k] ?? 0) * ((1 - share) * (plain[k] ?? 0) + share * (worn[k] ?? 0) + slip);
    values[k] = v;
    if (v > most) most = v;
  }
  if (most > 1e-80 && most < 1e80) return 0;
  for (let k = 0; k < values.length; k++) values[k] = (values[k] ?? 0) / most;
  return Math.log(most);
}
