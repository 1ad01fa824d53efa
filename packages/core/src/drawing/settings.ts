/** What a sheet needs to know besides the part itself. */
import type { GeneralClass } from '../standards/fits/general-tolerances.ts';
import type { LengthUnit } from '../units/length.ts';
import type { Micrometre, Mm } from '../units/quantities.ts';

export interface DrawingSettings {
  readonly paper: 'A4' | 'Letter';
  readonly projection: 'first angle' | 'third angle';
  readonly decimalSign: 'point' | 'comma';
  readonly units: LengthUnit;
  readonly title: string;
  readonly partNumber?: string | undefined;
  readonly material?: string | undefined;
  readonly machine?: string | undefined;
  readonly drawnBy?: string | undefined;
  readonly date?: string | undefined;
  /** Scale wished for; the largest preferred one that fits when left out. */
  readonly scale?: number | undefined;
  /** Hazard class of the job, when it is above ordinary. */
  readonly hazard?: string | undefined;
  /** All figures are made up for demonstration. */
  readonly invented?: boolean | undefined;
  readonly generalTolerance?: GeneralClass | undefined;
  /** Roughness Ra of every surface without a mark of its own. */
  readonly finish?: Micrometre | undefined;
  /** Sharp edges are broken by this much. */
  readonly edgeBreak?: Mm | undefined;
}

/** A sheet as small as it can be said. */
export const plainSettings = {
  paper: 'A4',
  projection: 'first angle',
  decimalSign: 'point',
  units: 'mm',
} as const satisfies Partial<DrawingSettings>;
