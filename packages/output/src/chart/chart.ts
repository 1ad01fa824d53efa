/** A chart as data: what is plotted over what. `draw-chart.ts` makes a sheet of it, which the painter paints like any drawing. */
import type { Mm } from '@sparewright/core/units/quantities';
import type { DecimalSign } from '../present/settings.ts';

export interface Axis {
  readonly title: string;
  /** As printed behind the title; empty for a plain number. */
  readonly unit: string;
  readonly scale?: 'linear' | 'log' | undefined;
  /** Counts something: only whole numbers are ticked. */
  readonly whole?: boolean | undefined;
  /** Where it is ticked, when these are the values that count and their figures have room; left out, round numbers. */
  readonly ticks?: readonly number[] | undefined;
  /** Ends of the axis; left out, round numbers that hold everything plotted. */
  readonly from?: number | undefined;
  readonly to?: number | undefined;
}

/**
 * How a line or a mark is meant: `measured` and `computed` are drawn solid, `inferred` in pencil, `limit` thin and long-dashed,
 * `accent` in marking blue for what is cut or chosen.
 */
export type Meaning = 'measured' | 'computed' | 'inferred' | 'limit' | 'accent';

export interface ChartLine {
  readonly points: readonly (readonly [x: number, y: number])[];
  readonly meaning: Meaning;
  /** Written at its last point. */
  readonly label?: string | undefined;
  /** Goes level from point to point and then jumps, as a size does from pass to pass. */
  readonly stepped?: boolean | undefined;
  readonly of?: string | undefined;
}

/** A tinted band between two heights. */
export interface ChartBand {
  readonly points: readonly (readonly [x: number, low: number, high: number])[];
}

export interface ChartMark {
  readonly x: number;
  readonly y: number;
  readonly shape: 'dot' | 'ring' | 'cross' | 'square';
  readonly meaning: Meaning;
  readonly label?: string | undefined;
  /** What it stands for, so that it can be chosen on the screen. */
  readonly of?: string | undefined;
}

/** A straight line across the whole chart. */
export interface Rule {
  readonly at: number;
  readonly along: 'x' | 'y';
  readonly meaning: Meaning;
  readonly label?: string | undefined;
}

export interface Chart {
  readonly title: string;
  /** What it shows, in a sentence or two, for people who do not see it. */
  readonly description: string;
  readonly x: Axis;
  readonly y: Axis;
  readonly lines?: readonly ChartLine[] | undefined;
  readonly bands?: readonly ChartBand[] | undefined;
  readonly marks?: readonly ChartMark[] | undefined;
  readonly rules?: readonly Rule[] | undefined;
}

export interface Bar {
  readonly label: string;
  readonly value: number;
  /** The value as written at the bar's end. */
  readonly written: string;
  readonly meaning: Meaning;
  readonly of?: string | undefined;
}

export interface BarChart {
  readonly title: string;
  readonly description: string;
  /** In the order they are to be read, from the top. */
  readonly bars: readonly Bar[];
  /** Value of a bar of full length; left out, the largest. */
  readonly full?: number | undefined;
}

export interface ChartStyle {
  readonly decimalSign: DecimalSign;
  /** Width of the sheet; the default is the width of a column in the packet. */
  readonly width?: Mm | undefined;
  readonly height?: Mm | undefined;
}
