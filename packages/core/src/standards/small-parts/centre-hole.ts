/**
 * Centre holes and the drills that make them; all from memory.
 */
import { DomainError } from '../../errors.ts';
import type { SourceKey } from '../../sources/register.ts';
import type { Mm } from '../../units/quantities.ts';
import type { Standing } from './standing.ts';

export type CentreForm = 'A' | 'B' | 'R';

export interface CentreHole {
  readonly form: CentreForm;
  readonly pilot: Mm;
  /** Body of the drill. */
  readonly body: Mm;
  /** Mouth of the 60 degree cone at most; form R has a curved flank. */
  readonly mouthMax?: Mm;
  /** Length of the pilot on the drill. */
  readonly pilotLength?: Mm;
  readonly drillLength?: Mm;
  readonly angle: string;
  readonly sources: readonly SourceKey[];
  readonly standing: Standing;
}

/** [pilot, body, pilot length, drill length, mouth] [ISO866] */
const formA = [
  [1, 3.15, 1.3, 31.5, 2.12],
  [1.25, 3.15, 1.6, 31.5, 2.65],
  [1.6, 4, 2, 35.5, 3.35],
  [2, 5, 2.5, 40, 4.25],
  [2.5, 6.3, 3.1, 45, 5.3],
  [3.15, 8, 3.9, 50, 6.7],
  [4, 10, 5, 56, 8.5],
  [5, 12.5, 6.3, 63, 10.6],
  [6.3, 16, 8, 71, 13.2],
  [8, 20, 10.1, 80, 17],
  [10, 25, 12.8, 100, 21.2],
] as const;

/** [pilot, body] [ISO2540]; pilot length and mouth as form A. */
const formB = [
  [1, 4],
  [1.6, 6.3],
  [2, 8],
  [2.5, 10],
  [3.15, 11.2],
  [4, 14],
  [5, 18],
  [6.3, 20],
] as const;

/** [pilot, body] [ISO2541] */
const formR = [
  [1, 3.15],
  [1.25, 3.15],
  [1.6, 4],
  [2, 5],
  [2.5, 6.3],
  [3.15, 8],
  [4, 10],
  [5, 12.5],
  [6.3, 16],
] as const;

/** [number, pilot, body] of inch drills, plain type [ANSI-centre]. */
const inchNumbers = [
  [1, 1.191, 3.175],
  [2, 1.984, 4.762],
  [3, 2.778, 6.35],
  [4, 3.175, 7.938],
  [5, 4.762, 11.112],
  [6, 5.556, 12.7],
] as const;

/** [work up to, pilot]; heavier cuts take the next size. From memory and common practice. */
const choice = [
  [5, 1],
  [10, 1.6],
  [16, 2],
  [25, 2.5],
  [40, 3.15],
  [63, 4],
  [100, 5],
] as const;

/** Pilots a form comes in [mm]. */
function centrePilots(form: CentreForm): Mm[] {
  return { A: formA, B: formB, R: formR }[form].map(([pilot]) => pilot);
}

/** A centre hole by form and pilot: A plain 60 degree, B with a protecting 120 degree chamfer, R with a curved flank. */
export function centreHole(form: CentreForm, pilot: Mm): CentreHole {
  const pilots = centrePilots(form);
  if (!pilots.includes(pilot)) throw new DomainError('pilot', pilot, `one of ${pilots.join(', ')} mm`);
  const [, bodyA = 0, pilotLength, drillLength, mouthMax] = formA.find(([size]) => size === pilot) ?? [];
  const plain = {
    form,
    pilot,
    ...(pilotLength !== undefined && { pilotLength }),
    ...(mouthMax !== undefined && { mouthMax }),
    standing: 'from memory',
  } as const;
  if (form === 'A') {
    return {
      ...plain,
      body: bodyA,
      ...(drillLength !== undefined && { drillLength }),
      angle: '60°',
      sources: ['ISO866'],
    };
  }
  if (form === 'B') {
    const body = formB.find(([size]) => size === pilot)?.[1] ?? 0;
    return { ...plain, body, angle: '60°, protected by 120°', sources: ['ISO2540', 'ISO866'] };
  }
  const body = formR.find(([size]) => size === pilot)?.[1] ?? 0;
  return { form, pilot, body, angle: 'curved flank for a 60° centre', sources: ['ISO2541'], standing: 'from memory' };
}

export interface InchCentreDrill {
  readonly number: number;
  readonly pilot: Mm;
  readonly body: Mm;
  readonly source: SourceKey;
  readonly standing: Standing;
}

/** Inch centre drills, plain type, by number. */
export const inchCentreDrills: readonly InchCentreDrill[] = inchNumbers.map(([number, pilot, body]) => ({
  number,
  pilot,
  body,
  source: 'ANSI-centre',
  standing: 'from memory',
}));

export interface CentreChoice {
  readonly pilot: Mm;
  /** For heavy cuts or heavy work. */
  readonly heavier: Mm;
  readonly source: SourceKey;
  readonly standing: Standing;
}

/** Which centre hole for work of a diameter, from memory and common practice. */
export function centreForWork(diameter: Mm): CentreChoice {
  const at = diameter > 3 ? choice.findIndex(([upTo]) => diameter <= upTo) : -1;
  const row = choice[at];
  if (!row) throw new DomainError('diameter', diameter, 'over 3 to 100 mm');
  const pilot = row[1];
  return { pilot, heavier: choice[at + 1]?.[1] ?? 6.3, source: 'common-practice', standing: 'common practice' };
}
