/** What is known of a screw thread, whatever its standard. */
import type { SourceKey } from '../../sources/register.ts';
import type { Mm, Radian } from '../../units/quantities.ts';
import type { FormName } from './forms.ts';

export type ThreadFamily =
  | 'metric'
  | 'unified'
  | 'whitworth'
  | 'cycle'
  | 'brass'
  | 'ba'
  | 'pipe-parallel'
  | 'pipe-taper'
  | 'npt';

export type Hand = 'right' | 'left';
export type Side = 'external' | 'internal';

/** A screw thread with its basic sizes: the diameters before any tolerance. */
export interface Thread {
  /** As it is written on a drawing: `M10x1.25-6g`, `1/4-28 UNF-2A`, `3/8 BSF`, `G 1/4 A`. */
  readonly designation: string;
  readonly family: ThreadFamily;
  /** The series within the family: `coarse`, `fine`, `UNC`, `BSW`, `8-UN` … */
  readonly series: string;
  /** The size as it is called, without pitch: `10`, `#10`, `1/4`. */
  readonly size: string;
  readonly form: FormName;
  readonly majorDiameter: Mm;
  readonly pitch: Mm;
  readonly threadsPerInch?: number;
  readonly pitchDiameter: Mm;
  /** Basic minor diameter, that of the nut (D1). */
  readonly minorDiameter: Mm;
  /** Root of the bolt as cut to nominal depth (d3). */
  readonly rootDiameterExternal: Mm;
  /** Angle between the flanks. */
  readonly flankAngle: Radian;
  /** Height of the sharp triangle. */
  readonly fundamentalHeight: Mm;
  /** Radial depth of the bolt's groove, crest to root. */
  readonly depthExternal: Mm;
  /** Taper on diameter, 1/16, of taper pipe threads; absent on parallel ones. */
  readonly taper?: number;
  readonly starts: number;
  readonly hand: Hand;
  readonly toleranceClass?: string;
  /** `special`: a diameter and pitch that no list here pairs; its sizes follow from the form. */
  readonly status: 'standard' | 'special';
  /** What to know of it: where it was used, what was taken for granted in reading it. */
  readonly remark?: string;
  readonly sources: readonly SourceKey[];
}
