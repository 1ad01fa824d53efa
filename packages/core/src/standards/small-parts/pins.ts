/**
 * Dowels, split pins and clevis pins.
 */
import { DomainError } from '../../errors.ts';
import type { SourceKey } from '../../sources/register.ts';
import type { Mm, MPa, Newton } from '../../units/quantities.ts';
import { limitDeviations } from '../fits/limit-deviations.ts';
import { withoutNoise } from '../fits/noise.ts';
import type { Standing } from './standing.ts';

export type DowelKind = 'ISO 2338' | 'DIN 6325' | 'ASME B18.8.5M';

export interface Dowel {
  readonly kind: DowelKind;
  readonly nominal: Mm;
  readonly tolerance: string;
  readonly min: Mm;
  readonly max: Mm;
  /** Length of the chamfer. */
  readonly chamfer?: Mm;
  /** Length of the rounded or tapered lead, hardened dowels. */
  readonly lead?: Mm;
  /** Hole the maker asks for. */
  readonly hole?: { readonly min: Mm; readonly max: Mm };
  /** Load that shears it in one plane, as printed. */
  readonly singleShear?: Newton;
  readonly sources: readonly SourceKey[];
  readonly standing: Standing;
}

/** [diameter, chamfer] from memory [ISO2338-MEM]. */
const parallelPins = [
  [0.6, 0.12],
  [0.8, 0.16],
  [1, 0.2],
  [1.2, 0.25],
  [1.5, 0.3],
  [2, 0.35],
  [2.5, 0.4],
  [3, 0.5],
  [4, 0.63],
  [5, 0.8],
  [6, 1.2],
  [8, 1.6],
  [10, 2],
  [12, 2.5],
  [16, 3],
  [20, 3.5],
  [25, 4],
  [30, 5],
] as const;

/** [diameter, chamfer, lead] [DIN6325-TAB]. */
const hardenedDowels = [
  [1.5, 0.23, 0.5],
  [2, 0.3, 0.6],
  [2.5, 0.4, 0.7],
  [3, 0.45, 0.8],
  [4, 0.6, 1],
  [5, 0.75, 1.2],
  [6, 0.9, 1.5],
  [8, 1.2, 1.8],
  [10, 1.5, 2],
  [12, 1.8, 2.5],
  [14, 2, 2.5],
  [16, 2.5, 3],
  [20, 3, 4],
] as const;

/** [diameter, least over nominal, most over nominal µm, single shear kN] [ASME-B18.8.5M]; holes are 0 to −13 µm. */
const inchBodyDowels = [
  [3, 3, 8, 7.4],
  [4, 3, 8, 13.2],
  [5, 3, 8, 20.6],
  [6, 3, 9, 29.7],
  [8, 3, 9, 52.5],
  [10, 3, 9, 82.5],
  [12, 3, 9, 119],
  [16, 3, 9, 211],
  [20, 3, 9, 330],
  [25, 3, 9, 515],
] as const;

/** Diameters a dowel comes in [mm]. */
function dowelSizes(kind: DowelKind): Mm[] {
  const table = { 'ISO 2338': parallelPins, 'DIN 6325': hardenedDowels, 'ASME B18.8.5M': inchBodyDowels }[kind];
  return table.map(([size]) => size);
}

/**
 * A dowel of a standard size. Parallel pins come to m6, or to h8 for a slip fit.
 *
 * @throws DomainError naming the nearest sizes
 */
export function dowel(kind: DowelKind, diameter: Mm, tolerance: 'm6' | 'h8' = 'm6'): Dowel {
  if (!dowelSizes(kind).includes(diameter))
    throw new DomainError('diameter', diameter, nearestSizes(dowelSizes(kind), diameter));
  if (tolerance === 'h8' && kind !== 'ISO 2338')
    throw new DomainError('tolerance', tolerance, 'm6: only parallel pins ISO 2338 come to h8');
  if (kind === 'ASME B18.8.5M') {
    const [nominal = 0, lower = 0, upper = 0, shear = 0] = inchBodyDowels.find(([size]) => size === diameter) ?? [];
    return {
      kind,
      nominal,
      tolerance: 'its own',
      min: withoutNoise(nominal + lower / 1000),
      max: withoutNoise(nominal + upper / 1000),
      hole: { min: withoutNoise(nominal - 0.013), max: nominal },
      singleShear: 1000 * shear,
      sources: ['ASME-B18.8.5M'],
      standing: 'read',
    };
  }
  const deviation = limitDeviations(diameter, tolerance);
  const shared = {
    kind,
    nominal: diameter,
    tolerance,
    min: withoutNoise(diameter + deviation.lower),
    max: withoutNoise(diameter + deviation.upper),
  };
  if (kind === 'ISO 2338') {
    const chamfer = parallelPins.find(([size]) => size === diameter)?.[1];
    return {
      ...shared,
      ...(chamfer !== undefined && { chamfer }),
      sources: tolerance === 'm6' ? ['NUTBOLT-DIN7', 'ISO2338-MEM'] : ['ISO2338-MEM'],
      standing: tolerance === 'm6' ? 'read in part, rest from memory' : 'from memory',
    };
  }
  const row = hardenedDowels.find(([size]) => size === diameter);
  return { ...shared, ...(row && { chamfer: row[1], lead: row[2] }), sources: ['DIN6325-TAB'], standing: 'read' };
}

/**
 * Load that shears a pin in one plane.
 *
 *     F = τ π d² / 4
 *
 * @param diameter  pin diameter d [mm]
 * @param shearStrength  shear strength τ; about 1050 for hardened dowels of ASME B18.8.5M [MPa]
 * @returns load [N]
 * @throws DomainError when a value is not above zero
 * @source ASME-B18.8.5M
 * @valid the printed loads of 3 to 25 mm follow from 1050 MPa within 1 %
 * @example pinShearLoad(6, 1050) → 29688
 */
export function pinShearLoad(diameter: Mm, shearStrength: MPa): Newton {
  if (!(diameter > 0)) throw new DomainError('diameter', diameter, 'more than 0 mm');
  if (!(shearStrength > 0)) throw new DomainError('shearStrength', shearStrength, 'more than 0 MPa');
  return (shearStrength * Math.PI * diameter ** 2) / 4;
}

export interface SplitPin {
  /** Hole, which names the pin. */
  readonly nominal: Mm;
  readonly hole: { readonly min: Mm; readonly max: Mm };
  readonly pin: { readonly min: Mm; readonly max: Mm };
  readonly sources: readonly SourceKey[];
  readonly standing: Standing;
  /** From the hole to the end of a clevis pin, at least. */
  readonly holeToEnd?: Mm;
}

/** [hole, pin least, pin most, for bolts up to, for clevis pins up to] from memory [ISO1234]; a range starts above the one before. */
const splitPins = [
  [0.6, 0.4, 0.5, 2.5, 2],
  [0.8, 0.6, 0.7, 3.5, 3],
  [1, 0.8, 0.9, 4.5, 4],
  [1.2, 0.9, 1, 5.5, 5],
  [1.6, 1.3, 1.4, 7, 6],
  [2, 1.7, 1.8, 9, 8],
  [2.5, 2.1, 2.3, 11, 9],
  [3.2, 2.7, 2.9, 14, 12],
  [4, 3.5, 3.7, 20, 17],
  [5, 4.4, 4.6, 27, 23],
  [6.3, 5.7, 5.9, 39, 29],
  [8, 7.3, 7.5, 56, 44],
  [10, 9.3, 9.5, 80, 69],
] as const;

/** [pin, split-pin hole, hole to end] sizes from memory, tolerances read [AMES-CLEVIS]. */
const clevisPins = [
  [3, 0.8, 1.6],
  [4, 1, 2.2],
  [5, 1.2, 2.9],
  [6, 1.6, 3.2],
  [8, 2, 3.5],
  [10, 3.2, 4.5],
  [12, 3.2, 5.5],
  [14, 4, 6],
  [16, 4, 6],
  [18, 5, 7],
  [20, 5, 8],
  [24, 6.3, 9],
] as const;

/** The split pin for a bolt or clevis pin of a diameter, ISO 1234. */
export function splitPin(diameter: Mm, use: 'bolt' | 'clevis pin'): SplitPin {
  const upTo = use === 'bolt' ? 3 : 4;
  const row = diameter > 0 ? splitPins.find((pin) => diameter <= pin[upTo]) : undefined;
  if (!row) throw new DomainError('diameter', diameter, `more than 0, at most ${use === 'bolt' ? 80 : 69} mm`);
  const [nominal, min, max] = row;
  const holeToEnd = use === 'clevis pin' ? clevisPins.find(([size]) => size === diameter)?.[2] : undefined;
  const upper = limitDeviations(nominal, use === 'bolt' ? 'H14' : 'H13').upper;
  return {
    nominal,
    hole: { min: nominal, max: withoutNoise(nominal + upper) },
    pin: { min, max },
    ...(holeToEnd !== undefined && { holeToEnd }),
    sources: use === 'bolt' ? ['ISO1234'] : ['ISO1234', 'AMES-CLEVIS'],
    standing: 'from memory',
  };
}

export interface ClevisPin {
  readonly nominal: Mm;
  readonly min: Mm;
  readonly max: Mm;
  readonly splitPinHole: Mm;
  readonly holeToEnd: Mm;
  readonly sources: readonly SourceKey[];
  readonly standing: Standing;
}

/** A clevis pin of a standard diameter: h11, split-pin hole H13. */
export function clevisPin(diameter: Mm): ClevisPin {
  const row = clevisPins.find(([size]) => size === diameter);
  if (!row)
    throw new DomainError(
      'diameter',
      diameter,
      nearestSizes(
        clevisPins.map(([size]) => size),
        diameter,
      ),
    );
  const [nominal, splitPinHole, holeToEnd] = row;
  const min = withoutNoise(nominal + limitDeviations(nominal, 'h11').lower);
  return {
    nominal,
    min,
    max: nominal,
    splitPinHole,
    holeToEnd,
    sources: ['AMES-CLEVIS', 'parts-MEM'],
    standing: 'read in part, rest from memory',
  };
}

function nearestSizes(sizes: readonly Mm[], wanted: Mm): string {
  const nearest = sizes.toSorted((a, b) => Math.abs(a - wanted) - Math.abs(b - wanted)).slice(0, 2);
  return `a standard size, the nearest ${nearest.join(' or ')} mm`;
}
