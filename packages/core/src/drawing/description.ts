/** The sheet in words, for people who do not see it. */
import type { PartResult } from '../part/part-result.ts';
import { openings } from './cut-open.ts';
import { sizeText } from './numbers.ts';
import type { DrawingSettings } from './settings.ts';

export function describePart(part: PartResult, settings: DrawingSettings): string {
  const size = (value: number) => `${sizeText(value, settings)} ${settings.units}`;
  const { length, largestDiameter } = part.outline;
  const counts = [
    count(part.outside.length, 'outside section'),
    count(part.inside.length, 'inside section'),
    count(part.grooves.length, 'groove'),
    count(part.threads.length, 'thread'),
    count(part.notTurned.length, 'feature that is not turned', 'features that are not turned'),
  ].filter((text) => text !== undefined);
  const opened = openings(part);
  const inPart = opened.some((o) => o.breaks.length > 0);
  const view = opened.length === 0 ? 'from outside' : inPart ? 'from outside, its holes cut open' : 'half in section';
  const state = part.complete ? '' : ' Some sizes are not known yet; what was assumed is drawn dashed.';
  return `Turned part ${size(length)} long, largest diameter ${size(largestDiameter)}, seen ${view}: ${counts.join(', ')}.${state}`;
}

function count(number: number, one: string, many = `${one}s`): string | undefined {
  return number === 0 ? undefined : `${number} ${number === 1 ? one : many}`;
}
