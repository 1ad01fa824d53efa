/** Finish that seal makers ask of the faces a seal works against. */
import { DomainError } from '../../errors.ts';
import type { SourceKey } from '../../sources/register.ts';
import type { Micrometre } from '../../units/quantities.ts';

export interface SealSurfaceFinish {
  readonly surface: string;
  readonly service: string;
  /** Not smoother than this, so that oil is held; absent where none is asked. */
  readonly raMin?: Micrometre;
  readonly raMax?: Micrometre;
  readonly rzMax?: Micrometre;
  readonly note?: string;
  readonly source: SourceKey;
}

export const sealSurfaceFinishes: readonly SealSurfaceFinish[] = [
  {
    surface: 'sealing face',
    service: 'static liquid',
    raMax: 0.81,
    note: '32 µin rms as printed',
    source: 'parker-finish',
  },
  {
    surface: 'sealing face',
    service: 'static gas or vacuum',
    raMax: 0.41,
    note: '16 µin rms',
    source: 'parker-finish',
  },
  { surface: 'sealing face', service: 'dynamic', raMax: 0.41, note: '16 µin rms', source: 'parker-finish' },
  {
    surface: 'sealing face',
    service: 'static',
    raMax: 0.81,
    note: '32 µin preferred; 64 to 128 µin (1.6 to 3.3 µm) tolerated',
    source: 'apple-finish',
  },
  {
    surface: 'moving face',
    service: 'reciprocating',
    raMin: 0.25,
    raMax: 0.51,
    note: '10 to 20 µin; honed, burnished or hard chrome; aluminium and brass generally not for moving seals',
    source: 'apple-finish',
  },
  {
    surface: 'shaft',
    service: 'rotary',
    raMax: 0.41,
    note: '16 µin; groove 32 µin so that the ring does not turn',
    source: 'apple-finish',
  },
  {
    surface: 'moving face',
    service: 'dynamic',
    raMin: 0.13,
    raMax: 0.41,
    note: '5 to 16 µin rms; static up to 64 µin',
    source: 'apg-67',
  },
  { surface: 'sealing face', service: 'static liquid', raMax: 0.81, note: '32 rms', source: 'marco' },
  { surface: 'sealing face', service: 'static gas', raMax: 0.41, note: '16 rms', source: 'marco' },
  { surface: 'moving face', service: 'dynamic', raMin: 0.2, raMax: 0.41, note: '8 to 16 rms', source: 'marco' },
  {
    surface: 'sealing face',
    service: 'static liquid',
    raMin: 0.4,
    raMax: 1.6,
    rzMax: 6.3,
    source: 'oringsupply-finish',
  },
  {
    surface: 'sealing face',
    service: 'static gas or vacuum',
    raMin: 0.2,
    raMax: 0.8,
    rzMax: 4,
    source: 'oringsupply-finish',
  },
  {
    surface: 'moving face',
    service: 'reciprocating hydraulic',
    raMin: 0.1,
    raMax: 0.25,
    rzMax: 2.5,
    note: 'lay round the part, not along it',
    source: 'oringsupply-finish',
  },
  { surface: 'shaft', service: 'rotary', raMin: 0.05, raMax: 0.15, rzMax: 1.25, source: 'oringsupply-finish' },
  { surface: 'groove wall', service: 'any', raMin: 0.8, raMax: 1.6, source: 'oringsupply-finish' },
  {
    surface: 'groove bottom',
    service: 'any',
    raMin: 1.6,
    raMax: 3.2,
    note: 'others ask for finer',
    source: 'oringsupply-finish',
  },
  { surface: 'groove edge', service: 'any', note: 'round 0.10 to 0.15 mm', source: 'oringsupply-finish' },
  { surface: 'sealing face', service: 'static steady pressure', raMax: 1.6, rzMax: 6.3, source: 'mem-iso3601-2' },
  { surface: 'sealing face', service: 'static pulsating', raMax: 0.8, rzMax: 3.2, source: 'mem-iso3601-2' },
  { surface: 'moving face', service: 'dynamic', raMax: 0.4, rzMax: 1.6, source: 'mem-iso3601-2' },
  {
    surface: 'groove bottom and sides',
    service: 'static steady pressure',
    raMax: 3.2,
    rzMax: 12.5,
    source: 'mem-iso3601-2',
  },
  { surface: 'groove bottom and sides', service: 'static pulsating', raMax: 1.6, rzMax: 6.3, source: 'mem-iso3601-2' },
  { surface: 'groove bottom and sides', service: 'dynamic', raMax: 1.6, rzMax: 6.3, source: 'mem-iso3601-2' },
  { surface: 'lead-in chamfer', service: 'any', raMax: 3.2, rzMax: 12.5, source: 'mem-iso3601-2' },
];

/** What a face of a sealed joint is, as people ask. */
export const sealFaces = {
  'static face': [['sealing face'], ['static liquid', 'static', 'static steady pressure']],
  'static face, gas or vacuum': [['sealing face'], ['static gas or vacuum', 'static gas']],
  'static face, pulsating': [['sealing face'], ['static pulsating']],
  'sliding face': [
    ['moving face', 'sealing face'],
    ['dynamic', 'reciprocating', 'reciprocating hydraulic'],
  ],
  'rotating shaft': [['shaft'], ['rotary']],
  groove: [
    ['groove wall', 'groove bottom', 'groove edge', 'groove bottom and sides'],
    ['any', 'static steady pressure', 'static pulsating', 'dynamic'],
  ],
  'lead-in chamfer': [['lead-in chamfer'], ['any']],
} as const satisfies Record<string, readonly [readonly string[], readonly string[]]>;

export type SealFace = keyof typeof sealFaces;

export interface SealFinishAsked {
  readonly rows: readonly SealSurfaceFinish[];
  /** The strictest upper limit of Ra any of them prints. */
  readonly strictest?: Micrometre;
  /** The most lenient. */
  readonly mostLenient?: Micrometre;
  /** The highest lower limit: smoother than this, one maker says the oil is not held. */
  readonly notSmootherThan?: Micrometre;
}

/** What the makers ask of such a face, all of them, and between which limits they lie. */
export function sealFinishAsked(face: SealFace): SealFinishAsked {
  const [surfaces, services]: readonly [readonly string[], readonly string[]] = sealFaces[face];
  const rows = sealSurfaceFinishes.filter((r) => surfaces.includes(r.surface) && services.includes(r.service));
  if (rows.length === 0) throw new DomainError('face', face, `one of ${Object.keys(sealFaces).join('; ')}`);
  const upper = rows.flatMap((r) => (r.raMax === undefined ? [] : [r.raMax]));
  const lower = rows.flatMap((r) => (r.raMin === undefined ? [] : [r.raMin]));
  return {
    rows,
    ...(upper.length > 0 ? { strictest: Math.min(...upper), mostLenient: Math.max(...upper) } : {}),
    ...(lower.length > 0 ? { notSmootherThan: Math.max(...lower) } : {}),
  };
}
