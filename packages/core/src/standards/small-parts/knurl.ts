/**
 * Knurls, DIN 82: the blank must be smaller than the size over the knurl.
 */
import { DomainError } from '../../errors.ts';
import type { SourceKey } from '../../sources/register.ts';
import type { Mm } from '../../units/quantities.ts';
import type { Standing } from './standing.ts';

export const knurls = {
  RAA: { name: 'straight', factor: 0.5 },
  RBL: { name: 'left-hand helical', factor: 0.5 },
  RBR: { name: 'right-hand helical', factor: 0.5 },
  RGE: { name: 'diamond, points raised', factor: 0.67 },
  RGV: { name: 'diamond, points indented', factor: 0.33 },
  RKE: { name: 'cross, points raised', factor: 0.67 },
  RKV: { name: 'cross, points indented', factor: 0.33 },
} as const;

export type KnurlForm = keyof typeof knurls;

export const knurlPitches: readonly Mm[] = [0.5, 0.6, 0.8, 1, 1.2, 1.6];

export interface Knurl {
  readonly form: KnurlForm;
  readonly name: string;
  readonly pitch: Mm;
  /** What to turn before knurling. */
  readonly blank: Mm;
  /** Pitches round the blank; a straight knurl tracks best when it is whole. */
  readonly pitchesRound: number;
  /** Profile angle [°]. */
  readonly profileAngle: number;
  readonly sources: readonly SourceKey[];
  readonly standing: Standing;
}

/**
 * Diameter to turn before a knurl is rolled.
 *
 *     d = D − k p
 *
 * @param overKnurl  diameter over the knurl D [mm]
 * @param pitch  pitch p [mm]
 * @param factor  k: 0.5 straight and helical, 0.67 points raised, 0.33 points indented [-]
 * @returns diameter of the blank [mm]
 * @throws DomainError when a value is not above zero or nothing is left
 * @source DIN82
 * @valid rolled knurls; the factor 0.33 was read, the others are from memory
 * @example knurlBlank(20, 1, 0.33) → 19.67
 */
export function knurlBlank(overKnurl: Mm, pitch: Mm, factor: number): Mm {
  if (!(pitch > 0)) throw new DomainError('pitch', pitch, 'more than 0 mm');
  if (!(factor > 0)) throw new DomainError('factor', factor, 'more than 0');
  if (!(overKnurl > factor * pitch)) throw new DomainError('overKnurl', overKnurl, `more than ${factor * pitch} mm`);
  return overKnurl - factor * pitch;
}

/** The blank for a knurl of DIN 82. */
export function knurl(form: KnurlForm, overKnurl: Mm, pitch: Mm): Knurl {
  if (!knurlPitches.includes(pitch)) throw new DomainError('pitch', pitch, `one of ${knurlPitches.join(', ')} mm`);
  const { name, factor } = knurls[form];
  const blank = knurlBlank(overKnurl, pitch, factor);
  return {
    form,
    name,
    pitch,
    blank,
    pitchesRound: (Math.PI * blank) / pitch,
    profileAngle: 90,
    sources: ['DIN82'],
    standing: form === 'RKV' ? 'read' : 'from memory',
  };
}
