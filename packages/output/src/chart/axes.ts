/** The frame of a chart: where a value falls on the sheet, and the ticks with their figures. */
import type { Item, PathItem, Stroke, TextItem } from '@sparewright/core/drawing/scene';
import type { Mm } from '@sparewright/core/units/quantities';
import { scaleLinear, scaleLog } from 'd3-scale';
import { presentNumber } from '../present/number.ts';
import type { DecimalSign } from '../present/settings.ts';
import type { Axis } from './chart.ts';

/** Capitals of the figures at the ticks and of the titles [mm]. */
export const figureHeight = 1.8;

export interface Area {
  readonly left: Mm;
  readonly right: Mm;
  readonly top: Mm;
  readonly bottom: Mm;
}

export interface Placed {
  /** Place of a value on the sheet [mm]. */
  readonly at: (value: number) => Mm;
  readonly ticks: readonly number[];
  readonly from: number;
  readonly to: number;
}

/** Distance between ticks that leaves their figures room [mm]. */
const apart = { x: 17, y: 10 } as const;

/**
 * Lays an axis over a stretch of the sheet.
 *
 * @param axis  what is plotted
 * @param values  everything plotted along it; those that are not finite, or not positive on a logarithmic axis, are passed over
 * @param from  where the axis begins on the sheet [mm]
 * @param to  where it ends [mm]
 * @param along  which axis it is
 * @returns the axis with round ticks; without values it runs from 0 to 1
 */
export function place(axis: Axis, values: readonly number[], from: Mm, to: Mm, along: 'x' | 'y'): Placed {
  const log = axis.scale === 'log';
  const usable = values.filter((v) => Number.isFinite(v) && (!log || v > 0));
  const low = axis.from ?? usable.reduce((a, b) => Math.min(a, b), Infinity);
  const high = axis.to ?? usable.reduce((a, b) => Math.max(a, b), -Infinity);
  const free = axis.from === undefined && axis.to === undefined;
  const domain = opened(low, high, log);
  const count = Math.max(2, Math.floor(Math.abs(to - from) / apart[along]));
  const scale = log ? scaleLog(free ? rounded(domain) : domain, [from, to]) : scaleLinear(domain, [from, to]);
  if (free && !log) scale.nice(count);
  const [first = 0, last = 1] = scale.domain();
  const own = axis.ticks?.filter((t) => t >= Math.min(first, last) && t <= Math.max(first, last)) ?? [];
  if (own.length > 0 && haveRoom(own.map((t) => scale(t)))) return { at: scale, ticks: own, from: first, to: last };
  const ticks = scale.ticks(count).filter((t) => !axis.whole || Number.isInteger(t));
  return { at: scale, ticks: log ? thinned(ticks, count) : ticks, from: first, to: last };
}

/** Room for a figure of four digits beside the next [mm]. */
const figureRoom = 8;

function haveRoom(places: readonly Mm[]): boolean {
  const inOrder = [...places].sort((a, b) => a - b);
  return inOrder.every((at, i) => i === 0 || at - (inOrder[i - 1] ?? 0) >= figureRoom);
}

/** Closer to nought than any quantity here is nought. */
const least = 1e-12;

function opened(low: number, high: number, log: boolean): [number, number] {
  if (!(low <= high)) return log ? [1, 10] : [0, 1];
  // Values that differ by less than figures can tell are one value.
  if (high - low > Math.max(least, 1e-9 * Math.max(Math.abs(low), Math.abs(high)))) return [low, high];
  if (log) return [low / 2, low * 2];
  const room = Math.abs(low) > least ? Math.abs(low) * 0.1 : 1;
  return [low - room, low + room];
}

/** To the next of 1, 2, 5, 10 … outwards: a whole decade would leave half a chart empty. */
function rounded([low, high]: readonly [number, number]): [number, number] {
  const decade = (v: number): number => 10 ** Math.floor(Math.log10(v));
  const down = [5, 2].find((d) => d * decade(low) <= low * (1 + 1e-9)) ?? 1;
  const up = [1, 2, 5].find((d) => d * decade(high) >= high * (1 - 1e-9)) ?? 10;
  return [down * decade(low), up * decade(high)];
}

/** A logarithmic axis of several decades has a tick at every digit; where they crowd, only 1, 2 and 5 are kept, then 1. */
function thinned(ticks: readonly number[], count: number): readonly number[] {
  if (ticks.length <= count) return ticks;
  const digit = (t: number): number => Math.round(t / 10 ** Math.floor(Math.log10(t) + 1e-9));
  const some = ticks.filter((t) => [1, 2, 5].includes(digit(t)));
  return some.length <= 1.5 * count ? some : some.filter((t) => digit(t) === 1);
}

/** The grid, the figures at it, and the titles of both axes. */
export function axisItems(area: Area, x: Placed, y: Placed, axes: { x: Axis; y: Axis }, sign: DecimalSign): Item[] {
  const figure = (value: number): string => presentNumber(value, sign);
  return [
    ...y.ticks.map((t) => line('grid', area.left, y.at(t), area.right, y.at(t))),
    ...x.ticks.map((t) => line('grid', x.at(t), area.top, x.at(t), area.bottom)),
    ...y.ticks.map((t) => text(figure(t), area.left - 1.5, y.at(t) + figureHeight / 2, 'end')),
    ...x.ticks.map((t) => text(figure(t), x.at(t), area.bottom + 1.5 + figureHeight, 'middle')),
    line('thin', area.left, area.bottom, area.right, area.bottom),
    line('thin', area.left, area.top, area.left, area.bottom),
    text(titled(axes.y), area.left, area.top - 2.4, 'start', 'pencil'),
    text(titled(axes.x), area.right, area.bottom + 4 + 2 * figureHeight, 'end', 'pencil'),
  ];
}

const titled = ({ title, unit }: Axis): string => (unit === '' ? title : `${title}, ${unit}`);

export function line(stroke: Stroke, x1: Mm, y1: Mm, x2: Mm, y2: Mm): PathItem {
  return {
    item: 'path',
    stroke,
    parts: [
      { to: 'start', x: x1, y: y1 },
      { to: 'line', x: x2, y: y2 },
    ],
  };
}

export function text(
  words: string,
  x: Mm,
  y: Mm,
  anchor: TextItem['anchor'],
  tone: TextItem['tone'] = 'ink',
  of?: string,
): TextItem {
  return { item: 'text', at: { x, y }, text: words, height: figureHeight, anchor, turn: 0, tone, of };
}
