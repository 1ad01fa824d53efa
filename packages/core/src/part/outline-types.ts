/**
 * The exact outline of a turned part, in the half-plane z (along the axis, from the left face to the right) and
 * r (radius). Made of straight lines and circular arcs only.
 */
import type { Mm, Radian } from '../units/quantities.ts';

export interface Point {
  /** Along the axis from the left face, positive to the right. */
  readonly z: Mm;
  /** Radius, never negative. */
  readonly r: Mm;
}

/** A point of the plane that may lie below the axis, or a direction. */
export interface Vector {
  readonly z: number;
  readonly r: number;
}

interface SegmentBase {
  readonly from: Point;
  readonly to: Point;
  /** Id of the section, groove or edge (`head.startEdge`) it comes from. */
  readonly feature: string;
  /** Its size was not entered but assumed so that the part can be drawn (pencil). */
  readonly assumed?: boolean | undefined;
  /** A plane end or shoulder face of the feature, not its turned surface. */
  readonly face?: boolean | undefined;
}

export interface Line extends SegmentBase {
  readonly kind: 'line';
}

export interface Arc extends SegmentBase {
  readonly kind: 'arc';
  readonly centre: Vector;
  readonly radius: Mm;
  /** Signed turn from `from` to `to` about the centre, positive from +z towards +r. */
  readonly sweep: Radian;
}

export type Segment = Line | Arc;

/**
 * A chain of segments, each starting where the last one ended. The outside chain starts on the left face (on the axis, or
 * where the bore meets the face) and ends on the right face, so faces are part of it. An inside chain runs from the face it is entered
 * from inward to the axis. A hole through the part is one inside chain from the left face to the right face and the right one is empty.
 */
export interface Outline {
  readonly outside: readonly Segment[];
  readonly insideLeft: readonly Segment[];
  readonly insideRight: readonly Segment[];
  readonly through: boolean;
  readonly length: Mm;
  readonly largestDiameter: Mm;
}
