/** The tick of a machined surface with its roughness, standing on the surface. */
import type { Mm } from '../units/quantities.ts';
import { type Board, textBox, textHeight } from './board.ts';
import { around, type Box, within } from './box.ts';
import type { At, PathPart } from './scene.ts';
import { textWidth } from './text-width.ts';

const height = textHeight.dimension;
const shortArm: Mm = 1.4 * height;
const longArm: Mm = 2.6 * height;
const slope = Math.tan(Math.PI / 3);

/** The open tick: its foot on the surface, the bar over the text. */
export function tickParts(foot: At, barLength: Mm, size = 1): PathPart[] {
  const [short, long] = [size * shortArm, size * longArm];
  const end = { x: foot.x + long / slope, y: foot.y - long };
  return [
    { to: 'start', x: foot.x - short / slope, y: foot.y - short },
    { to: 'line', x: foot.x, y: foot.y },
    { to: 'line', ...end },
    ...(barLength > 0 ? [{ to: 'line' as const, x: end.x + barLength, y: end.y }] : []),
  ];
}

export interface FinishPlace {
  readonly of: string;
  readonly text: string;
  /** Points of the surface the tick may stand on, best first. */
  readonly feet: readonly At[];
}

export function placeFinish(board: Board, mark: FinishPlace, inside: Box): boolean {
  const width = textWidth(mark.text, height);
  for (const foot of mark.feet) {
    const at = textAt(foot);
    const text = textBox(at, mark.text);
    const tick = {
      left: foot.x - shortArm / slope,
      right: foot.x + longArm / slope + width,
      top: foot.y - longArm - 0.4,
      bottom: foot.y - 0.7,
    };
    const whole = around([text, tick]);
    if (!whole || !within(whole, inside) || !board.isFree(text) || !board.isFree(tick)) continue;
    drawTick(board, foot, mark.text, mark.of);
    // No leader may run through the tick either.
    board.texts.push(tick);
    return true;
  }
  return false;
}

export function drawTick(board: Board, foot: At, text: string, of?: string): void {
  const width = textWidth(text, height);
  const parts = tickParts(foot, width + 0.6);
  board.path(parts, 'dimension', of);
  const ends = parts.flatMap((p) => (p.to === 'close' ? [] : [{ x: p.x, y: p.y }]));
  for (const [i, b] of ends.entries()) {
    const a = ends[i - 1];
    if (a) board.lines.push({ a, b });
  }
  board.text(textAt(foot), text, { of });
}

function textAt(foot: At): At {
  return { x: foot.x + longArm / slope + 0.2, y: foot.y - longArm + height + 0.8 };
}
