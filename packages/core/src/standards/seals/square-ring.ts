/**
 * Square-cut rings in the bore of a caliper or slave cylinder: as far as anything is published. No groove of a real caliper
 * could be read in numbers: measure the old groove.
 */
import type { SourceKey } from '../../sources/register.ts';
import type { Standing } from '../small-parts/standing.ts';

export interface SquareRingFact {
  readonly about: 'groove' | 'ring' | 'retraction' | 'bore and piston' | 'care' | 'duty';
  readonly says: string;
  readonly min?: number;
  readonly max?: number;
  readonly unit?: string;
  readonly source: SourceKey;
  readonly standing: Standing;
}

const read = { standing: 'read' } as const;

export const squareRingFacts: readonly SquareRingFact[] = [
  {
    about: 'groove',
    says: 'angle of the pressure-side wall to a line square to the bore axis: a range claimed, not a design value',
    ...{ min: 5, max: 60, unit: '°' },
    source: 'US8794396B2',
    ...read,
  },
  {
    about: 'groove',
    says: 'the front wall stays near square; the floor is raised in the middle with a recess at each end, so that the ring can twist',
    source: 'US8794396B2',
    ...read,
  },
  {
    about: 'groove',
    says: 'front wall in two parts, the inner one sloped as the ring face is, so that the ring is not nibbled',
    source: 'US4387901A',
    ...read,
  },
  {
    about: 'groove',
    says: 'the groove is not square: it tapers, so that the ring rolls and draws the piston back',
    source: 'hd-maverick',
    ...read,
  },
  {
    about: 'groove',
    says: 'low drag: the outer side of the groove slopes toward the disc, the ring gives more and draws back further',
    source: 'bestscantool',
    ...read,
  },
  {
    about: 'groove',
    says: 'a convex, then concave recess from groove wall to bore makes the retraction nearly independent of pressure',
    source: 'WO9819075A1',
    ...read,
  },
  {
    about: 'ring',
    says: 'outside larger than the groove, inside about the piston: the ring is squeezed between groove floor and piston',
    source: 'US8794396B2',
    ...read,
  },
  {
    about: 'ring',
    says: 'retraction, sliding force and drag hang on the groove, the friction on both faces and the rubber; rules are empirical',
    source: 'SAE2002-01-0927',
    ...read,
  },
  {
    about: 'retraction',
    says: 'running clearance kept by the ring, about',
    min: 0.1,
    unit: 'mm',
    source: 'psealing',
    ...read,
  },
  {
    about: 'retraction',
    says: 'range quoted by a secondary source',
    ...{ min: 0.08, max: 0.2, unit: 'mm' },
    source: 'verybestblogs',
    standing: 'doubtful',
  },
  {
    about: 'retraction',
    says: 'usual for each piston, order of magnitude',
    ...{ min: 0.1, max: 0.2, unit: 'mm' },
    source: 'mem-limpert',
    standing: 'from memory',
  },
  {
    about: 'retraction',
    says: 'drag aimed at for each brake of an electric vehicle',
    ...{ min: 0, max: 2, unit: 'N·m' },
    source: 'WO2026132772A1',
    ...read,
  },
  {
    about: 'bore and piston',
    says: 'new bore of a motorcycle clutch slave cylinder, nominal 27 mm',
    ...{ min: 27, max: 27.021, unit: 'mm' },
    source: 'montesa-cota4',
    ...read,
  },
  {
    about: 'bore and piston',
    says: 'new piston of the same cylinder',
    ...{ min: 26.94, max: 26.96, unit: 'mm' },
    source: 'montesa-cota4',
    ...read,
  },
  {
    about: 'care',
    says: 'deep scratches may be honed while the bore grows by no more than 0.051 mm, else the housing is renewed (1992 car manual)',
    ...{ max: 0.051, unit: 'mm' },
    source: 'mercury-1992',
    ...read,
  },
  {
    about: 'care',
    says: 'light scratches and corrosion in the bore: crocus cloth; black stains are harmless',
    source: 'mercury-1992',
    ...read,
  },
  {
    about: 'care',
    says: 'the sliding face of the piston is plated: never emery it; renew it when scored or rusted',
    source: 'nissan-2000',
    ...read,
  },
  { about: 'care', says: 'minor rust in the bore: fine emery, else renew', source: 'nissan-2000', ...read },
  {
    about: 'care',
    says: 'assemble with clean brake fluid of the system, never mineral oil',
    source: 'nissan-2000',
    ...read,
  },
  { about: 'care', says: 'all rubber parts are renewed each time it is opened', source: 'hyundai-shop', ...read },
  {
    about: 'duty',
    says: 'pressure of an ordinary hard stop in a car; peaks reach 14 to 18',
    ...{ min: 7, max: 10, unit: 'MPa' },
    source: 'seals-mem-common',
    standing: 'from memory',
  },
];

/** Said with every answer about parts that brakes hang on. */
export const brakeCaution =
  'A brake is a safety part: follow the maker’s manual and local rules, and have the work checked and the brake tested by someone licensed to do so.';
