/** How lines are drawn: breadth, dashes and colour by what they mean. */
import type { Stroke } from '@sparewright/core/drawing/scene';

export type Theme = 'paper' | 'screen';

/** The palette's words. */
export type Colour = 'ink' | 'pencil' | 'paper' | 'blue' | 'tint';

interface Pen {
  /** [mm] */
  readonly breadth: number;
  readonly dashes?: string;
  readonly colour: Colour;
}

/** Thick lines are twice as broad as thin ones. */
export const pens: Readonly<Record<Stroke, Pen>> = {
  outline: { breadth: 0.5, colour: 'ink' },
  thin: { breadth: 0.25, colour: 'ink' },
  centre: { breadth: 0.25, dashes: '6 1.2 0.6 1.2', colour: 'ink' },
  hidden: { breadth: 0.25, dashes: '2.4 1', colour: 'ink' },
  hatch: { breadth: 0.18, colour: 'ink' },
  dimension: { breadth: 0.25, colour: 'ink' },
  grid: { breadth: 0.13, colour: 'pencil' },
  frame: { breadth: 0.7, colour: 'ink' },
  assumed: { breadth: 0.35, dashes: '1.6 0.9', colour: 'pencil' },
  cut: { breadth: 0.9, colour: 'blue' },
  holding: { breadth: 0.35, colour: 'ink' },
};

/** On paper everything is black on white; what is inferred is told by its dashes and a grey that survives a copier. */
const onPaper: Readonly<Record<Colour, string>> = {
  ink: '#000',
  pencil: '#555',
  paper: '#fff',
  blue: '#000',
  tint: '#eee',
};

const onScreen: Readonly<Record<Colour, string>> = {
  ink: 'var(--ink, #1d2226)',
  pencil: 'var(--pencil, #6c7278)',
  paper: 'var(--paper, #fbf9f4)',
  blue: 'var(--marking-blue, #1f4e9e)',
  tint: 'var(--paper-shade, #efeae0)',
};

export function colour(theme: Theme, name: Colour): string {
  return theme === 'paper' ? onPaper[name] : onScreen[name];
}
