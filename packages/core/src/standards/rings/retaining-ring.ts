/**
 * Grooves for retaining rings on shafts (DIN 471) and in bores (DIN 472), ordinary rings.
 *
 * Knowledge: the ring and groove of each size are tabled; groove width is the ring plus its play, the margin to the end of
 * the part three times the groove depth, and the load follows from the bearing area of the groove.
 */
import { DomainError } from '../../errors.ts';
import type { SourceKey } from '../../sources/register.ts';
import type { Mm, MPa, Newton } from '../../units/quantities.ts';
import { limitDeviations } from '../fits/limit-deviations.ts';
import { withoutNoise } from '../fits/noise.ts';
import type { Standing } from '../small-parts/standing.ts';
import { boreRings, shaftFromMemory, shaftRings } from './retaining-ring-table.ts';

export type RingPlace = 'shaft' | 'bore';

export interface RetainingRing {
  readonly place: RingPlace;
  /** Shaft or bore the ring is for. */
  readonly nominal: Mm;
  readonly ringThickness: Mm;
  readonly groove: {
    readonly nominal: Mm;
    readonly toleranceClass: string;
    readonly min: Mm;
    readonly max: Mm;
  };
  readonly grooveWidth: { readonly min: Mm; readonly max: Mm };
  readonly grooveDepth: Mm;
  /** From groove to the end of the part, at least. */
  readonly edgeMargin: Mm;
  readonly sources: readonly SourceKey[];
  readonly standing: Standing;
  readonly notes: readonly string[];
}

const tables = { shaft: shaftRings, bore: boreRings } as const;

/** Every size with a ring, smallest first [mm]. */
function retainingRingSizes(place: RingPlace): Mm[] {
  return tables[place].filter((_, i) => i % 3 === 0);
}

/** The ring and its groove for a shaft or bore; refuses a size without a ring, naming the nearest. */
export function retainingRing(place: RingPlace, diameter: Mm): RetainingRing {
  const sizes = retainingRingSizes(place);
  const at = sizes.indexOf(diameter);
  if (at < 0) {
    const nearest = sizes.toSorted((a, b) => Math.abs(a - diameter) - Math.abs(b - diameter)).slice(0, 2);
    throw new DomainError('diameter', diameter, `a size with a ring, the nearest ${nearest.join(' or ')} mm`);
  }
  const [nominal = 0, ringThickness = 0, groove = 0] = tables[place].slice(3 * at, 3 * at + 3);
  const toleranceClass = place === 'shaft' ? shaftGrooveClass(nominal) : boreGrooveClass(nominal);
  const deviation = limitDeviations(groove, toleranceClass);
  const width = grooveWidthFor(ringThickness);
  const grooveDepth = withoutNoise(Math.abs(groove - nominal) / 2);
  return {
    place,
    nominal,
    ringThickness,
    groove: {
      nominal: groove,
      toleranceClass,
      min: withoutNoise(groove + deviation.lower),
      max: withoutNoise(groove + deviation.upper),
    },
    grooveWidth: { min: width, max: withoutNoise(width + limitDeviations(width, 'H13').upper) },
    grooveDepth,
    edgeMargin: ringEdgeMargin(grooveDepth),
    ...provenance(place, nominal),
  };
}

const shaftGrooveClass = (nominal: Mm): string => (nominal <= 10 ? 'h10' : nominal <= 22 ? 'h11' : 'h12');
const boreGrooveClass = (nominal: Mm): string => (nominal <= 22 ? 'H11' : 'H12');

/** Play of the ring in its groove: 0.1 mm up to rings of 1.75 mm, then 0.15. */
const grooveWidthFor = (thickness: Mm): Mm => withoutNoise(thickness + (thickness < 2 ? 0.1 : 0.15));

function provenance(place: RingPlace, nominal: Mm): Pick<RetainingRing, 'sources' | 'standing' | 'notes'> {
  if (place === 'bore') {
    const partly = nominal >= 10 && nominal <= 13;
    return {
      sources: partly ? ['KS1336', 'DIN472-MEM'] : ['DIN472-MEM'],
      standing: partly ? 'read in part, rest from memory' : 'from memory',
      notes: ["from memory: check a ring maker's table before relying on it"],
    };
  }
  if (nominal > 42 || shaftFromMemory.includes(nominal))
    return { sources: ['DIN471-MEM'], standing: 'from memory', notes: [] };
  return { sources: ['DIN471-A', 'DIN471-B'], standing: 'read', notes: shaftNotes[nominal] ?? [] };
}

const disputedTolerance = 'copies disagree on the groove tolerance: h10, or 0 to −0.11 mm';
const shaftNotes: Readonly<Record<number, readonly string[]>> = {
  9: [disputedTolerance],
  10: [disputedTolerance],
  12: ['one copy prints an edge margin of 0.9 mm, the other 0.8'],
  25: ['one copy prints a groove of 24.9 mm: a misprint for 23.9'],
  34: ['one copy prints a groove of 31.3 mm: a misprint for 32.3'],
};

/**
 * Least distance from a retaining-ring groove to the end of the part.
 *
 *     n = 3 t, up to the next 0.1 mm
 *
 * @param grooveDepth  groove depth t [mm]
 * @returns margin n [mm]
 * @throws DomainError when the depth is not above zero
 * @source DIN472-MEM
 * @valid ordinary rings; every margin printed for DIN 471 from 3 to 42 mm follows from it
 * @example ringEdgeMargin(0.55) → 1.7
 */
export function ringEdgeMargin(grooveDepth: Mm): Mm {
  if (!(grooveDepth > 0)) throw new DomainError('grooveDepth', grooveDepth, 'more than 0 mm');
  // The tiny allowance keeps 3 × 0.1 from being taken for more than 0.3.
  return Math.ceil(30 * grooveDepth - 1e-9) / 10;
}

/**
 * Steady load that the groove of a retaining ring carries, the ring lying square on a sharp-edged part.
 *
 *     F = Re A / 1.2,  A = π/4 |d₁² − d₂²|
 *
 * @param nominal  shaft or bore d₁ [mm]
 * @param groove  groove diameter d₂ [mm]
 * @param yieldStrength  yield strength of the grooved part Re [MPa]
 * @returns load on the groove [N]
 * @throws DomainError when a value is not above zero or there is no groove
 * @source DIN471-A
 * @source DIN471-MEM
 * @valid edge margin at least three times the groove depth; the form is from memory, the 17 loads printed for 3 to 19 mm at 200 MPa follow from it within 2 %
 * @example ringGrooveLoad(19, 18, 200) → 4843
 */
export function ringGrooveLoad(nominal: Mm, groove: Mm, yieldStrength: MPa): Newton {
  if (!(nominal > 0)) throw new DomainError('nominal', nominal, 'more than 0 mm');
  if (!(groove > 0) || groove === nominal)
    throw new DomainError('groove', groove, `more than 0 mm, and not ${nominal} mm`);
  if (!(yieldStrength > 0)) throw new DomainError('yieldStrength', yieldStrength, 'more than 0 MPa');
  const area = (Math.PI / 4) * Math.abs(nominal ** 2 - groove ** 2);
  return (yieldStrength * area) / 1.2;
}
