/**
 * One size on a number line: what was measured in ink with its uncertainty, what was concluded from it in pencil above it, and the
 * sizes it may have been designed to as upright marks through both.
 */
import type { Item, Scene, TextItem } from '@sparewright/core/drawing/scene';
import { textWidth } from '@sparewright/core/drawing/text-width';
import type { LengthUnit } from '@sparewright/core/units/length';
import { type Mm, mmPerInch } from '@sparewright/core/units/quantities';
import { presentLength } from '../present/length.ts';
import { figureHeight, line, type Placed, place, text } from './axes.ts';
import type { ChartMark, ChartStyle } from './chart.ts';
import { onGround } from './on-ground.ts';
import { markItem, strokes } from './pens.ts';

export interface NumberLineReading {
  /** Corrected size, and its expanded uncertainty to either side. */
  readonly value: Mm;
  readonly half: Mm;
  readonly shape: ChartMark['shape'];
  /** `p1 worn`: what the shape means, in words beside it. */
  readonly says: string;
}

export interface NumberLineMade {
  /** Specimen; empty where there is only one. */
  readonly name: string;
  readonly median: Mm;
  readonly half: { readonly low: Mm; readonly high: Mm };
  readonly wide: { readonly low: Mm; readonly high: Mm };
  readonly density: { readonly from: Mm; readonly step: Mm; readonly values: readonly number[] };
}

export interface NumberLineDesign {
  /** `32 f7, 71 %`. */
  readonly says: string;
  readonly min: Mm;
  readonly max: Mm;
}

export interface NumberLine {
  readonly title: string;
  readonly description: string;
  readonly units: LengthUnit;
  readonly readings: readonly NumberLineReading[];
  /** Said below them of readings that are not drawn. */
  readonly more?: string | undefined;
  readonly made: readonly NumberLineMade[];
  /** Likeliest first; the limits of each are drawn. */
  readonly designs: readonly NumberLineDesign[];
  readonly nominals: readonly { readonly size: Mm; readonly says: string }[];
}

const margin: Mm = 2;
const row: Mm = 3.7;
const humpHeight: Mm = 9;
const defaultWidth: Mm = 88;
/** A nominal size farther off than this share of what is shown is told at the edge, not drawn to scale. */
const farthest = 0.35;

/** @returns the sheet, as high as its readings and designs need */
export function drawNumberLine(shown: NumberLine, style: ChartStyle): Scene {
  const width = style.width ?? defaultWidth;
  const x = axisOf(shown, margin + 1, width - margin - 1);
  const near = shown.nominals.filter((n) => isOn(n.size, x));
  const far = shown.nominals.filter((n) => !isOn(n.size, x));
  const nominalLines = apartSideways(near, x, width);
  const top = margin + row * (Math.max(0, ...nominalLines.map((n) => n.line + 1)) + (far.length > 0 ? 1 : 0));
  const designsTop = top + 1;
  const madeTop = designsTop + row * shown.designs.length;
  const lane = humpHeight + 3.6;
  const readingsTop = madeTop + lane * shown.made.length + 1;
  const rows = shown.readings.length + (shown.more === undefined ? 0 : 1);
  const floor = readingsTop + row * rows + 1;
  return {
    width,
    height: floor + 4 + figureHeight * 2 + 1.5,
    title: shown.title,
    description: shown.description,
    items: [
      ...nominalLines.flatMap((n) => nominalItems(n, x, top, floor)),
      ...far.slice(0, 1).map((n) => farText(n, x, width)),
      ...shown.designs.flatMap((d, i) => designItems(d, x, designsTop + (i + 0.6) * row, width)),
      ...shown.made.flatMap((m, i) => madeItems(m, x, madeTop + (i + 1) * lane - 3, width, shown.made)),
      ...shown.readings.flatMap((r, i) => readingItems(r, x, readingsTop + (i + 0.5) * row, width)),
      ...(shown.more === undefined ? [] : [text(shown.more, width - margin, floor - 2, 'end', 'pencil')]),
      ...axisLine(shown, x, floor, width, style),
    ],
  };
}

/** Everything measured and concluded, and what of the designs lies near enough. */
function axisOf({ readings, made, designs, nominals }: NumberLine, from: Mm, to: Mm): Placed {
  const core = [
    ...made.flatMap((m) => [m.wide.low, m.wide.high]),
    ...readings.flatMap((r) => [r.value - r.half, r.value + r.half]),
    ...designs.slice(0, 1).flatMap((d) => [d.min, d.max]),
  ].filter(Number.isFinite);
  const low = core.reduce((a, b) => Math.min(a, b), Infinity);
  const high = core.reduce((a, b) => Math.max(a, b), -Infinity);
  if (!(low <= high)) return place(plain, [0, 1], from, to, 'x');
  const reach = farthest * Math.max(high - low, 1e-3);
  const others = [...nominals.map((n) => n.size), ...designs.flatMap((d) => [d.min, d.max])];
  const ends = [low, high, ...others.filter((v) => v > low - reach && v < high + reach)];
  const [first, last] = [Math.min(...ends), Math.max(...ends)];
  const room = 0.04 * Math.max(last - first, 1e-3);
  return place({ ...plain, from: first - room, to: last + room }, [], from, to, 'x');
}

const plain = { title: '', unit: '' } as const;

const isOn = (value: Mm, x: Placed): boolean => value >= x.from && value <= x.to;
const inside = (value: Mm, x: Placed): Mm => x.at(Math.min(Math.max(value, x.from), x.to));

interface NominalLine {
  readonly size: Mm;
  readonly says: string;
  /** Row of its words, from the marks upwards. */
  readonly line: number;
  readonly left: Mm;
}

/** Words of neighbouring nominal sizes stand one over the other where they would touch. */
function apartSideways(nominals: NumberLine['nominals'], x: Placed, width: Mm): NominalLine[] {
  const ends: Mm[] = [];
  return [...nominals]
    .sort((a, b) => a.size - b.size)
    .map((n) => {
      const long = textWidth(n.says, figureHeight);
      const left = Math.min(Math.max(margin, x.at(n.size) - long / 2), width - margin - long);
      const free = ends.findIndex((end) => end + 2 < left);
      const at = free < 0 ? ends.length : free;
      ends[at] = left + long;
      return { ...n, left, line: at };
    });
}

function nominalItems({ size, says, line: at, left }: NominalLine, x: Placed, top: Mm, floor: Mm): Item[] {
  const baseline = top - at * row - 0.6;
  return [line('centre', x.at(size), baseline + 0.6, x.at(size), floor), text(says, left, baseline, 'start')];
}

/** In the topmost row, pointing to where it lies. */
function farText({ size, says }: { size: Mm; says: string }, x: Placed, width: Mm): TextItem {
  const isRight = size > x.to;
  const baseline = margin + row - 0.6;
  return isRight
    ? text(`${says} →`, width - margin, baseline, 'end', 'pencil')
    : text(`← ${says}`, margin, baseline, 'start', 'pencil');
}

/** Limits as a line with an upright at either end; the words stand where there is room. */
function designItems({ says, min, max }: NumberLineDesign, x: Placed, y: Mm, width: Mm): Item[] {
  const [left, right] = [inside(min, x), inside(max, x)];
  const stop = 1.1;
  return [
    line('thin', left, y, right, y),
    ...(isOn(min, x) ? [line('thin', left, y - stop, left, y + stop)] : []),
    ...(isOn(max, x) ? [line('thin', right, y - stop, right, y + stop)] : []),
    ...onGround(beside(says, left, right, y, width, 'pencil')),
  ];
}

/** Words right of something, or left of it where the sheet ends, or in the midst of it where neither side has room. */
function beside(says: string, left: Mm, right: Mm, y: Mm, width: Mm, tone: TextItem['tone']): TextItem {
  const long = textWidth(says, figureHeight);
  const baseline = y + figureHeight / 2;
  if (right + 1.6 + long <= width - margin) return text(says, right + 1.6, baseline, 'start', tone);
  if (left - 1.6 - long >= margin) return text(says, left - 1.6, baseline, 'end', tone);
  return text(says, (Math.max(left, margin) + Math.min(right, width - margin)) / 2, baseline, 'middle', tone);
}

function madeItems(
  { name, median, half, wide, density }: NumberLineMade,
  x: Placed,
  base: Mm,
  width: Mm,
  all: readonly NumberLineMade[],
): Item[] {
  const tallest = Math.max(...all.flatMap((m) => m.density.values).filter(Number.isFinite), 0);
  const y = base + 1.9;
  const bar = 0.7;
  const [a, b] = [inside(half.low, x), inside(half.high, x)];
  // The name keeps out of the way of the hump.
  const isRight = x.at(median) > width / 2;
  const baseline = base - humpHeight + figureHeight + 0.6;
  return [
    ...hump(density, tallest, x, base),
    line(strokes.inferred, inside(wide.low, x), y, inside(wide.high, x), y),
    {
      item: 'path',
      stroke: 'grid',
      fill: 'tint',
      parts: [
        { to: 'start', x: a, y: y - bar },
        { to: 'line', x: b, y: y - bar },
        { to: 'line', x: b, y: y + bar },
        { to: 'line', x: a, y: y + bar },
        { to: 'close' },
      ],
    },
    line('assumed', inside(median, x), y - bar, inside(median, x), y + bar),
    ...(name === ''
      ? []
      : onGround(text(name, isRight ? margin : width - margin, baseline, isRight ? 'start' : 'end', 'pencil'))),
  ];
}

/** Tails lower than this share of the top would lie on the line. */
const lowest = 0.012;

/** A hump of probability in pencil; equal areas are equal probabilities. */
function hump({ from, step, values }: NumberLineMade['density'], tallest: number, x: Placed, base: Mm): Item[] {
  const own = Math.max(...values.filter(Number.isFinite), 0);
  if (!(tallest > 0 && own > 0)) return [];
  const points = values.flatMap((v, i) => {
    const size = from + i * step;
    if (!isOn(size, x) || !(v > lowest * own)) return [];
    return [{ to: 'line' as const, x: x.at(size), y: base - (humpHeight * v) / tallest }];
  });
  const [first] = points;
  const last = points.at(-1);
  if (!first || !last) return [];
  return [
    {
      item: 'path',
      stroke: undefined,
      fill: 'tint',
      parts: [{ to: 'start', x: first.x, y: base }, ...points, { to: 'line', x: last.x, y: base }, { to: 'close' }],
    },
    {
      item: 'path',
      stroke: 'assumed',
      parts: [{ to: 'start', x: first.x, y: base }, ...points, { to: 'line', x: last.x, y: base }],
    },
    line('grid', first.x, base, last.x, base),
  ];
}

function readingItems({ value, half, shape, says }: NumberLineReading, x: Placed, y: Mm, width: Mm): Item[] {
  if (!isOn(value, x)) return [text(says, width - margin, y + figureHeight / 2, 'end', 'pencil')];
  const at = x.at(value);
  const [left, right] = [inside(value - half, x), inside(value + half, x)];
  const stop = 0.7;
  return [
    line('thin', left, y, right, y),
    line('thin', left, y - stop, left, y + stop),
    line('thin', right, y - stop, right, y + stop),
    markItem(shape, at, y, 'measured'),
    ...onGround(besideMark(says, at, Math.min(left, at - 1.2), Math.max(right, at + 1.2), y, width)),
  ];
}

/** As {@link beside}, but where neither side has room the words stand on the bar, clear of the mark. */
function besideMark(says: string, at: Mm, left: Mm, right: Mm, y: Mm, width: Mm): TextItem {
  const long = textWidth(says, figureHeight);
  if (right + 1.6 + long <= width - margin || left - 1.6 - long >= margin)
    return beside(says, left, right, y, width, 'ink');
  const baseline = y + figureHeight / 2;
  const isRight = at + 2.4 + long <= width - margin;
  if (isRight || at - 2.4 - long >= margin)
    return text(says, isRight ? at + 2.4 : at - 2.4, baseline, isRight ? 'start' : 'end');
  return text(says, width - margin, baseline, 'end');
}

/** Figures at the ticks with as many decimals as the ticks need. */
function axisLine({ units }: NumberLine, x: Placed, floor: Mm, width: Mm, { decimalSign }: ChartStyle): Item[] {
  const factor = units === 'in' ? mmPerInch : 1;
  const own = place({ ...plain, from: x.from / factor, to: x.to / factor }, [], x.at(x.from), x.at(x.to), 'x');
  const apart = Math.abs((own.ticks[1] ?? 1) - (own.ticks[0] ?? 0));
  const decimals = Math.min(6, Math.max(0, Math.ceil(-Math.log10(apart || 1) - 1e-9)));
  return [
    line('thin', margin, floor, width - margin, floor),
    ...own.ticks.flatMap((t) => {
      const figure = presentLength(t * factor, units, decimalSign, decimals);
      const half = textWidth(figure, figureHeight) / 2;
      const middle = Math.min(Math.max(own.at(t), half + 0.5), width - half - 0.5);
      return [
        line('thin', own.at(t), floor, own.at(t), floor + 1.2),
        text(figure, middle, floor + 2 + figureHeight, 'middle'),
      ];
    }),
    text(units, width - margin, floor + 4 + 2 * figureHeight, 'end', 'pencil'),
  ];
}
