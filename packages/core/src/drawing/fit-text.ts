/** A text made to fit a width: smaller, and cut with an ellipsis when even that is not enough. */
import type { Mm } from '../units/quantities.ts';
import { textWidth, type Weight } from './text-width.ts';

export interface Fitted {
  readonly text: string;
  readonly height: Mm;
}

export const smallest: Mm = 1.8;

export function fitText(text: string, room: Mm, height: Mm, weight: Weight = 'normal'): Fitted {
  const width = textWidth(text, height, weight);
  if (width <= room) return { text, height };
  const shrunk = (height * room) / width;
  if (shrunk >= smallest) return { text, height: Math.floor(shrunk * 100) / 100 };
  const least = Math.min(height, smallest);
  const characters = [...text];
  while (characters.length > 0 && textWidth(`${characters.join('')}…`, least, weight) > room) characters.pop();
  return { text: `${characters.join('').trimEnd()}…`, height: least };
}
