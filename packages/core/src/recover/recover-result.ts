/** What the recovery of the design answers. Plain data: it may be stored, sent and drawn. */
import type { Finding } from '../finding.ts';
import type { Mm, Radian } from '../units/quantities.ts';
import type { System } from './nominals.ts';
import type { Interval } from './posterior.ts';
import type { Role } from './role-classes.ts';

/** One way the size may have been designed. */
export interface Design {
  /** `12 f7`, `3/8 in −.0005/−.0015`, `a size of its own`. */
  readonly written: string;
  readonly nominal: Mm | undefined;
  readonly toleranceClass: string | undefined;
  readonly system: System | undefined;
  readonly min: Mm;
  readonly max: Mm;
  readonly probability: number;
}

/** The size as made of one specimen. */
export interface MadeSize {
  readonly specimen: string;
  readonly median: Mm;
  /** Holds the size with probability one half. */
  readonly half: Interval;
  /** Holds it with probability 95 %. */
  readonly wide: Interval;
  /** Probability density for drawing: sizes from `from` in steps of `step`. */
  readonly density: { readonly from: Mm; readonly step: Mm; readonly values: readonly number[] };
}

/** Metal lost at the place of a reading (negative: gained), on diameter for diameters. */
export interface PlaceWear {
  readonly reading: string;
  readonly specimen: string;
  readonly along: Mm | undefined;
  readonly angle: number | undefined;
  readonly condition: string;
  readonly likely: Mm;
  readonly range: Interval;
}

/** Limits to make the new part to. */
export interface NewLimits {
  readonly kind: 'as made' | 'matched to the mate' | 'own size';
  readonly min: Mm;
  readonly max: Mm;
  readonly written: string;
  readonly why: string;
}

export interface NextReading {
  readonly of: string;
  /** What to do, in plain words. */
  readonly says: string;
  readonly gauge: string | undefined;
  readonly specimen: string | undefined;
  /** Expected gain of information about the design [bit]. */
  readonly gain: number;
  /** Probability of the first-ranked design now, and expected after the reading. */
  readonly surenessNow: number;
  readonly surenessThen: number;
}

export interface RecoveredSize {
  /** Dimension id: `guide.diameter`, or `mate.size`. */
  readonly of: string;
  readonly title: string;
  readonly role: Role;
  readonly isShaft: boolean;
  /** Likeliest first. */
  readonly designs: readonly Design[];
  /** The same by nominal size alone: often sure where the limits are not. */
  readonly nominals: readonly { readonly written: string; readonly size: Mm; readonly probability: number }[];
  readonly made: readonly MadeSize[];
  readonly wear: readonly PlaceWear[];
  /** Recommended first. */
  readonly limits: readonly NewLimits[];
  readonly next: readonly NextReading[];
}

export interface ThreadDesign {
  readonly designation: string;
  readonly probability: number;
  readonly system: System | 'either';
  readonly use: string | undefined;
}

export interface RecoveredThread {
  readonly of: string;
  readonly side: 'external' | 'internal';
  readonly crestDiameter: Mm;
  readonly pitch: Mm | undefined;
  readonly designs: readonly ThreadDesign[];
  /** How the first two are told apart. */
  readonly lookAlike: string | undefined;
}

export interface TaperMatch {
  readonly name: string;
  /** Diameter taken off per millimetre of length. */
  readonly ratio: number;
  readonly halfAngle: Radian;
  readonly probability: number;
  readonly standing: 'read' | 'from memory';
}

export interface RecoveredTaper {
  readonly of: string;
  readonly halfAngle: Radian;
  readonly uncertainty: Radian;
  /** Diameter taken off per millimetre of length. */
  readonly ratio: number;
  readonly matches: readonly TaperMatch[];
}

export interface RecoveredRing {
  readonly of: string;
  readonly ring: string;
  readonly why: string;
  readonly probability: number;
}

/** A point of a curved section: its diameter at a place from the left end; of a dome its depth at a distance from the axis. */
export interface CurvePoint {
  readonly along: Mm;
  readonly size: Mm;
}

export interface CurveShape {
  readonly shape: 'cone' | 'arc' | 'sphere' | 'ellipse' | 'free';
  readonly probability: number;
  /** Of an arc or sphere, of an ellipse on the axis. */
  readonly radius: Mm | undefined;
  /** Standard uncertainty of the radius. */
  readonly uncertainty: Mm | undefined;
  /** Side to which an arc bulges. */
  readonly bulge: 'outward' | 'inward' | undefined;
  /** Root mean square of what is left over. */
  readonly deviation: Mm;
  /** Where the readings begin and end, as the shape has it. */
  readonly ends: readonly [CurvePoint, CurvePoint] | undefined;
}

export interface RecoveredCurve {
  readonly of: string;
  readonly measured: 'diameters' | 'depths';
  /** Likeliest first. */
  readonly shapes: readonly CurveShape[];
  readonly points: readonly CurvePoint[];
  /** The likeliest shape, to be drawn; none for depths. */
  readonly fitted: readonly CurvePoint[];
}

export interface RecoverResult {
  readonly sizes: readonly RecoveredSize[];
  readonly threads: readonly RecoveredThread[];
  readonly tapers: readonly RecoveredTaper[];
  readonly crowns: readonly { readonly of: string; readonly radius: Mm; readonly uncertainty: Mm }[];
  readonly curves: readonly RecoveredCurve[];
  readonly rings: readonly RecoveredRing[];
  readonly drives: readonly { readonly of: string; readonly written: string; readonly probability: number }[];
  /** Probability that the machine was drawn in inches, and that it is on shaft basis. */
  readonly inches: number;
  readonly shaftBasis: number;
  /** Over all features, most telling first. */
  readonly next: readonly NextReading[];
  readonly findings: readonly Finding[];
}
