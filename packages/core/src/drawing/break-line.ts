/** The freehand line at which a cut-open view ends: the same wave every time. */
import type { Mm } from '../units/quantities.ts';
import type { PathPart } from './scene.ts';
import { place, type View } from './view.ts';

/** Height and length of the wave on paper [mm]. */
const swing = 0.5;
const wave = 5;

/**
 * Where the freehand line runs at a radius.
 *
 * @param z  place along the part about which it waves [mm]
 * @param r  radius [mm]
 * @param scale  of the view, paper over part
 * @returns place along the part [mm]
 */
export function breakEdge(z: Mm, r: Mm, scale: number): Mm {
  const phase = (2 * Math.PI * r * scale) / wave;
  return z + (swing / scale) * (0.7 * Math.sin(phase) + 0.3 * Math.sin(2.3 * phase));
}

export function breakLine(z: Mm, radius: Mm, view: View): PathPart[] {
  const pieces = Math.max(2, Math.ceil(radius * view.scale * 3));
  return Array.from({ length: pieces + 1 }, (_, i): PathPart => {
    const r = (radius * i) / pieces;
    return { to: i === 0 ? 'start' : 'line', ...place(view, { z: breakEdge(z, r, view.scale), r }) };
  });
}
