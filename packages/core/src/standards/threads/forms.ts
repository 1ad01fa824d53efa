/**
 * The forms of thread: everything that goes with the pitch alone.
 *
 * A form is a sharp V of height H = p / (2 tan α), α half the included angle, cut off at the crest and at the root. All
 * its diameters follow from how much is cut off.
 */
import type { SourceKey } from '../../sources/register.ts';
import { type Degree, radians } from '../../units/quantities.ts';

export type FormName =
  | 'ISO metric'
  | 'Unified'
  | 'Whitworth'
  | 'BA'
  | 'British Standard Cycle'
  | 'American pipe'
  | 'American National'
  | 'Löwenherz'
  | 'sharp V';

/** A form of thread; lengths as multiples of the pitch. */
export interface ThreadForm {
  readonly name: FormName;
  readonly includedAngle: Degree;
  readonly shape: 'flat' | 'rounded';
  /** Height cut off the sharp V at the bolt's crest. */
  readonly crestTruncation: number;
  /** Height left uncut at the bolt's root, as made. */
  readonly rootTruncation: number;
  /** Height left uncut at the basic root, which is the nut's crest. */
  readonly minorTruncation: number;
  /** Radius of the root: what the tool's nose should be, where the form has one. */
  readonly rootRadius?: number;
  readonly sources: readonly SourceKey[];
}

const h60 = Math.sqrt(3) / 2;
const h55 = 1 / (2 * Math.tan(radians(27.5)));

export const forms: Readonly<Record<FormName, ThreadForm>> = {
  'ISO metric': {
    name: 'ISO metric',
    includedAngle: 60,
    shape: 'flat',
    crestTruncation: h60 / 8,
    rootTruncation: h60 / 6,
    minorTruncation: h60 / 4,
    rootRadius: h60 / 6,
    sources: ['ISO68-1'],
  },
  Unified: {
    name: 'Unified',
    includedAngle: 60,
    shape: 'flat',
    crestTruncation: h60 / 8,
    rootTruncation: (3 * h60) / 16,
    minorTruncation: h60 / 4,
    rootRadius: (3 * h60) / 16,
    sources: ['MH27-p1755'],
  },
  Whitworth: {
    name: 'Whitworth',
    includedAngle: 55,
    shape: 'rounded',
    crestTruncation: h55 / 6,
    rootTruncation: h55 / 6,
    minorTruncation: h55 / 6,
    rootRadius: 0.137329,
    sources: ['MTECH-BSW', 'TC-sheet'],
  },
  BA: {
    name: 'BA',
    includedAngle: 47.5,
    shape: 'rounded',
    crestTruncation: 0.268168,
    rootTruncation: 0.268168,
    minorTruncation: 0.268168,
    rootRadius: 0.180835,
    sources: ['EN-ACAD-BA', 'TC-sheet'],
  },
  'British Standard Cycle': {
    name: 'British Standard Cycle',
    includedAngle: 60,
    shape: 'rounded',
    crestTruncation: 1 / 6,
    rootTruncation: 1 / 6,
    minorTruncation: 1 / 6,
    rootRadius: 1 / 6,
    sources: ['TCB-threads', 'BS811'],
  },
  'American pipe': {
    name: 'American pipe',
    includedAngle: 60,
    shape: 'flat',
    crestTruncation: (h60 - 0.8) / 2,
    rootTruncation: (h60 - 0.8) / 2,
    minorTruncation: (h60 - 0.8) / 2,
    sources: ['UA-NPT', 'TC-sheet'],
  },
  'American National': {
    name: 'American National',
    includedAngle: 60,
    shape: 'flat',
    crestTruncation: h60 / 8,
    rootTruncation: h60 / 8,
    minorTruncation: h60 / 4,
    sources: ['JONES1915-p88', 'TC-sheet'],
  },
  Löwenherz: {
    name: 'Löwenherz',
    includedAngle: 53 + 7 / 60 + 48.37 / 3600,
    shape: 'flat',
    crestTruncation: 0.125,
    rootTruncation: 0.125,
    minorTruncation: 0.125,
    sources: ['TC-sheet'],
  },
  'sharp V': {
    name: 'sharp V',
    includedAngle: 60,
    shape: 'flat',
    crestTruncation: 0,
    rootTruncation: 0,
    minorTruncation: 0,
    sources: ['TC-sheet'],
  },
};

/** Heights and drops of a form, as multiples of the pitch. */
export interface FormConstants {
  /** H, height of the sharp V. */
  readonly height: number;
  /** Major diameter less pitch diameter. */
  readonly pitchDrop: number;
  /** Major diameter less basic minor diameter. */
  readonly minorDrop: number;
  /** Major diameter less root diameter of the bolt as cut. */
  readonly rootDrop: number;
  /** Radial depth of the bolt's groove. */
  readonly depth: number;
}

/**
 * Heights and diameter drops of a form, as multiples of the pitch.
 *
 *     H = 1 / (2 tan α),  d − d2 = H − 2 t_c,  d − D1 = 2 (H − t_c − t_m),  d − d3 = 2 (H − t_c − t_r)
 *
 * @param name  the form
 * @returns the constants, multiples of the pitch
 * @source ISO68-1
 * @source geometry
 * @valid symmetrical forms
 * @example formConstants('Whitworth').depth → 0.6403
 */
export function formConstants(name: FormName): FormConstants {
  const form = forms[name];
  const height = 1 / (2 * Math.tan(radians(form.includedAngle / 2)));
  const rootDrop = 2 * (height - form.crestTruncation - form.rootTruncation);
  return {
    height,
    pitchDrop: height - 2 * form.crestTruncation,
    minorDrop: 2 * (height - form.crestTruncation - form.minorTruncation),
    rootDrop,
    depth: rootDrop / 2,
  };
}
