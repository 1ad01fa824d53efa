/** What a line of a chart means, in the strokes of the drawings. */
import type { PathItem, Stroke } from '@sparewright/core/drawing/scene';
import type { Mm } from '@sparewright/core/units/quantities';
import type { ChartMark, Meaning } from './chart.ts';

export const strokes: Readonly<Record<Meaning, Stroke>> = {
  measured: 'outline',
  computed: 'outline',
  inferred: 'assumed',
  limit: 'hidden',
  accent: 'cut',
};

/** Half the breadth of a mark [mm]. */
const reach = 1.1;

/** A mark about a point of the sheet; shapes, not colours, tell them apart. */
export function markItem(shape: ChartMark['shape'], x: Mm, y: Mm, meaning: Meaning, of?: string): PathItem {
  const common = { item: 'path', stroke: meaning === 'accent' ? 'cut' : 'outline', of } as const;
  const at = (dx: number, dy: number) => ({ x: x + dx * reach, y: y + dy * reach });
  switch (shape) {
    case 'cross':
      return {
        ...common,
        parts: [
          { to: 'start', ...at(-1, -1) },
          { to: 'line', ...at(1, 1) },
          { to: 'start', ...at(-1, 1) },
          { to: 'line', ...at(1, -1) },
        ],
      };
    case 'square':
      return {
        ...common,
        fill: 'paper',
        parts: [
          { to: 'start', ...at(-1, -1) },
          { to: 'line', ...at(1, -1) },
          { to: 'line', ...at(1, 1) },
          { to: 'line', ...at(-1, 1) },
          { to: 'close' },
        ],
      };
    default:
      return {
        ...common,
        fill: shape === 'dot' ? 'ink' : 'paper',
        parts: [
          { to: 'start', ...at(-1, 0) },
          { to: 'arc', ...at(1, 0), radius: reach, largeArc: false, clockwise: true },
          { to: 'arc', ...at(-1, 0), radius: reach, largeArc: false, clockwise: true },
          { to: 'close' },
        ],
      };
  }
}
