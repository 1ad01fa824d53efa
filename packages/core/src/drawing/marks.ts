/** What a sheet has to say about a part, before anyone decides where it stands. */
import type { Point } from '../part/outline-types.ts';
import type { Mm, Radian } from '../units/quantities.ts';

interface MarkBase {
  /** Id of the dimension or feature it stands for. */
  readonly of: string;
  /** What it is in words, for the table of sizes. */
  readonly title: string;
}

/** A diameter, shown across the view somewhere between two places. */
export interface DiameterMark extends MarkBase {
  readonly mark: 'diameter';
  readonly text: string;
  readonly from: Mm;
  readonly to: Mm;
  readonly radius: Mm;
  readonly side: 'outside' | 'inside left' | 'inside right';
  /** It is the diameter at this one end of a cone or arc, not of the whole stretch. */
  readonly at?: Mm | undefined;
}

/** A length along the part. */
export interface LengthMark extends MarkBase {
  readonly mark: 'length';
  readonly text: string;
  readonly from: Mm;
  readonly to: Mm;
  /** Outside lengths stand below the view, depths of bores above it. */
  readonly where: 'below' | 'above';
  /** Lower ranks stand nearer the view. */
  readonly rank: number;
}

/** A point a leader may touch, and the direction of the edge there, along which no leader should run. */
export interface Touch extends Point {
  readonly run?: Radian | undefined;
}

/** A note with a leader to the first of the points that can be reached. */
export interface LeaderMark extends MarkBase {
  readonly mark: 'leader';
  readonly lines: readonly string[];
  readonly points: readonly Touch[];
  /** The leader touches something in the section, which has no twin below the axis. */
  readonly upperOnly?: boolean | undefined;
}

/** The roughness of a surface. */
export interface FinishMark extends MarkBase {
  readonly mark: 'finish';
  readonly text: string;
  readonly from: Mm;
  readonly to: Mm;
  readonly side: 'outside' | 'inside';
}

export type Mark = DiameterMark | LengthMark | LeaderMark | FinishMark;

/** A line of the table of sizes: what found no place on the views, and what has none. */
export interface TableRow {
  readonly letter: string;
  readonly title: string;
  readonly text: string;
  readonly of: string;
}

/** What a mark says in one line. */
export function markText(mark: Mark): string {
  return mark.mark === 'leader' ? mark.lines.join(' × ').replace('× ×', '×') : mark.text;
}
