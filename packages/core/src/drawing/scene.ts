/**
 * A sheet as plain data: primitives in millimetres on paper, origin top left, y downward. `output/` paints it; nothing here knows SVG.
 */
import type { Mm, Radian } from '../units/quantities.ts';

/** What a line means; the painter gives it width, dash and ink or pencil. */
export type Stroke =
  | 'outline'
  | 'thin'
  | 'centre'
  | 'hidden'
  | 'hatch'
  | 'dimension'
  | 'grid'
  | 'frame'
  | 'assumed'
  | 'cut'
  | 'holding';

export interface At {
  readonly x: Mm;
  readonly y: Mm;
}

export type PathPart =
  | { readonly to: 'start' | 'line'; readonly x: Mm; readonly y: Mm }
  | {
      readonly to: 'arc';
      readonly x: Mm;
      readonly y: Mm;
      readonly radius: Mm;
      readonly largeArc: boolean;
      /** Clockwise as seen on the sheet. */
      readonly clockwise: boolean;
    }
  | { readonly to: 'close' };

export interface PathItem {
  readonly item: 'path';
  readonly parts: readonly PathPart[];
  readonly stroke: Stroke | undefined;
  readonly fill?: 'ink' | 'paper' | 'tint' | undefined;
  /** Feature, dimension or operation it stands for: pictures are the way in to the numbers. */
  readonly of?: string | undefined;
}

export interface TextItem {
  readonly item: 'text';
  readonly at: At;
  readonly text: string;
  /** Height of capitals. */
  readonly height: Mm;
  readonly anchor: 'start' | 'middle' | 'end';
  /** Anticlockwise about `at`. */
  readonly turn: Radian;
  readonly weight?: 'normal' | 'bold' | undefined;
  readonly tone?: 'ink' | 'pencil' | undefined;
  readonly of?: string | undefined;
}

export type Item = PathItem | TextItem;

export interface Scene {
  readonly width: Mm;
  readonly height: Mm;
  /** For people who do not see it. */
  readonly title: string;
  readonly description: string;
  readonly items: readonly Item[];
  /** Where the left face of a drawn part meets its axis, and how large it is drawn, so that a place on the sheet is a place on the part. */
  readonly view?: { readonly x: Mm; readonly y: Mm; readonly scale: number } | undefined;
}
