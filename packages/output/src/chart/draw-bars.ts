/** Draws values as lying bars, one under the other, each with its words before it and its figure behind it. */
import type { Item, Scene } from '@sparewright/core/drawing/scene';
import { textWidth } from '@sparewright/core/drawing/text-width';
import type { Mm } from '@sparewright/core/units/quantities';
import { figureHeight, text } from './axes.ts';
import type { Bar, BarChart, ChartStyle } from './chart.ts';

const rowHeight = 6;
const thickness = 3;

/** @returns the sheet, as high as its bars need; values below nought or not finite are drawn as nought */
export function drawBars({ title, description, bars, full }: BarChart, style: ChartStyle): Scene {
  const width = style.width ?? 160;
  const before = 2 + Math.min(width / 2, Math.max(0, ...bars.map((b) => textWidth(b.label, figureHeight))));
  const after = 4 + Math.max(0, ...bars.map((b) => textWidth(b.written, figureHeight)));
  const longest = width - before - after - 4;
  const of = full ?? Math.max(0, ...bars.map((b) => length(b)));
  return {
    width,
    height: bars.length * rowHeight + 2,
    title,
    description,
    items: bars.flatMap((bar, i) =>
      barItems(bar, before + 2, of > 0 ? (longest * Math.min(length(bar), of)) / of : 0, 1 + i * rowHeight),
    ),
  };
}

const length = ({ value }: Bar): number => (Number.isFinite(value) ? Math.max(0, value) : 0);

function barItems(bar: Bar, left: Mm, long: Mm, top: Mm): Item[] {
  const [upper, lower] = [top + (rowHeight - thickness) / 2, top + (rowHeight + thickness) / 2];
  const baseline = top + (rowHeight + figureHeight) / 2;
  return [
    text(bar.label, left - 2, baseline, 'end', 'ink', bar.of),
    {
      item: 'path',
      stroke: bar.meaning === 'inferred' ? 'assumed' : bar.meaning === 'accent' ? 'cut' : 'thin',
      fill: bar.meaning === 'measured' || bar.meaning === 'computed' ? 'ink' : 'tint',
      of: bar.of,
      parts: [
        { to: 'start', x: left, y: upper },
        { to: 'line', x: left + long, y: upper },
        { to: 'line', x: left + long, y: lower },
        { to: 'line', x: left, y: lower },
        { to: 'close' },
      ],
    },
    text(bar.written, left + long + 2, baseline, 'start', 'ink', bar.of),
  ];
}
