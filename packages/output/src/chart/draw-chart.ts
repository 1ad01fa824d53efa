/** Draws a chart as a sheet, in the lines and letters of the part's own drawing. */
import type { Item, PathPart, Scene } from '@sparewright/core/drawing/scene';
import { textWidth } from '@sparewright/core/drawing/text-width';
import type { Mm } from '@sparewright/core/units/quantities';
import { presentNumber } from '../present/number.ts';
import { type Area, axisItems, figureHeight, line, type Placed, place, text } from './axes.ts';
import type { Chart, ChartBand, ChartLine, ChartMark, ChartStyle, Rule } from './chart.ts';
import { apartDownwards, type Label } from './labels.ts';
import { onGround } from './on-ground.ts';
import { markItem, strokes } from './pens.ts';

const across = { width: 160, height: 82 } as const;

/** @returns the sheet; points that are not finite break a line, and what lies outside the axes is left out */
export function drawChart(chart: Chart, style: ChartStyle): Scene {
  const width = style.width ?? across.width;
  const height = style.height ?? across.height;
  const [xs, ys] = [valuesAlong(chart, 'x'), valuesAlong(chart, 'y')];
  const bottom = height - 10;
  const top = 8;
  const y = place(chart.y, ys, bottom, top, 'y');
  const figures = y.ticks.map((t) => textWidth(presentNumber(t, style.decimalSign), figureHeight));
  const left = 4 + Math.max(6, ...figures);
  const labels = [...(chart.lines ?? []), ...(chart.rules ?? []).filter((r) => r.along === 'x')];
  const right = width - 3 - Math.min(width / 3, Math.max(0, ...labels.map((l) => room(l.label))));
  const x = place(chart.x, xs, left, right, 'x');
  const area = { left, right, top, bottom };
  const lines = (chart.lines ?? []).filter((l) => l.points.some((p) => isInside(p, x, y)));
  return {
    width,
    height,
    title: chart.title,
    description: chart.description,
    items: [
      ...(chart.bands ?? []).flatMap((b) => bandItem(b, x, y)),
      ...axisItems(area, x, y, chart, style.decimalSign),
      ...(chart.rules ?? []).flatMap((r) => ruleItems(r, area, x, y)),
      ...lines.map((l) => lineItem(l, x, y)),
      ...(chart.marks ?? []).flatMap((m) => markItems(m, area, x, y)),
      ...apartDownwards(
        [...lines.flatMap((l) => lineLabel(l, x, y)), ...ruleLabels(chart.rules ?? [], area, y)],
        bottom,
      ).map((l) => text(l.text, l.x, l.y, 'start', l.tone, l.of)),
    ],
  };
}

const room = (label: string | undefined): Mm => (label === undefined ? 0 : textWidth(label, figureHeight) + 3);

function valuesAlong({ lines = [], bands = [], marks = [], rules = [] }: Chart, along: 'x' | 'y'): number[] {
  const ruled = rules.filter((r) => (r.along === 'x') === (along === 'y')).map((r) => r.at);
  const of = (point: readonly number[]): number[] => (along === 'x' ? point.slice(0, 1) : point.slice(1));
  return [
    ...lines.flatMap((l) => l.points.flatMap(of)),
    ...bands.flatMap((b) => b.points.flatMap(of)),
    ...marks.map((m) => m[along]),
    ...ruled,
  ];
}

function isInside([px, py]: readonly [number, number], x: Placed, y: Placed): boolean {
  return within(px, x) && within(py, y);
}

function within(value: number, axis: Placed): boolean {
  const slack = 1e-9 * Math.abs(axis.to - axis.from);
  return Number.isFinite(value) && value >= axis.from - slack && value <= axis.to + slack;
}

function lineItem({ points, meaning, stepped, of }: ChartLine, x: Placed, y: Placed): Item {
  const parts: PathPart[] = [];
  let before: readonly [number, number] | undefined;
  for (const point of points) {
    if (!isInside(point, x, y)) {
      before = undefined;
      continue;
    }
    const at = { x: x.at(point[0]), y: y.at(point[1]) };
    if (before && stepped) parts.push({ to: 'line', x: at.x, y: y.at(before[1]) });
    parts.push({ to: before ? 'line' : 'start', ...at });
    before = point;
  }
  return { item: 'path', stroke: strokes[meaning], parts, of };
}

function lineLabel({ points, label, meaning, of }: ChartLine, x: Placed, y: Placed): Label[] {
  const last = points.findLast((p) => isInside(p, x, y));
  if (label === undefined || !last) return [];
  const tone = meaning === 'inferred' ? 'pencil' : 'ink';
  return [{ text: label, x: x.at(last[0]) + 2, y: y.at(last[1]) + figureHeight / 2, tone, of }];
}

function bandItem({ points }: ChartBand, x: Placed, y: Placed): Item[] {
  const shown = points.filter(([px, low, high]) => within(px, x) && Number.isFinite(low) && Number.isFinite(high));
  const [first, ...rest] = [
    ...shown.map(([px, , high]) => ({ x: x.at(px), y: y.at(inAxis(high, y)) })),
    ...shown.toReversed().map(([px, low]) => ({ x: x.at(px), y: y.at(inAxis(low, y)) })),
  ];
  if (!first) return [];
  const parts: PathPart[] = [{ to: 'start', ...first }, ...rest.map((p) => ({ to: 'line', ...p }) as const)];
  return [{ item: 'path', stroke: undefined, fill: 'tint', parts: [...parts, { to: 'close' }] }];
}

function inAxis(value: number, { from, to }: Placed): number {
  return Math.min(Math.max(value, Math.min(from, to)), Math.max(from, to));
}

function ruleItems({ at, along, meaning, label }: Rule, area: Area, x: Placed, y: Placed): Item[] {
  const axis = along === 'x' ? y : x;
  if (!within(at, axis)) return [];
  const where = axis.at(at);
  if (along === 'x') return [line(strokes[meaning], area.left, where, area.right, where)];
  const named =
    label === undefined ? [] : onGround(text(label, where + 1, area.top + 1 + figureHeight, 'start', 'pencil'));
  return [line(strokes[meaning], where, area.top, where, area.bottom), ...named];
}

function ruleLabels(rules: readonly Rule[], area: Area, y: Placed): Label[] {
  return rules.flatMap(({ along, at, label }): Label[] =>
    along === 'x' && label !== undefined && within(at, y)
      ? [{ text: label, x: area.right + 2, y: y.at(at) + figureHeight / 2, tone: 'pencil', of: undefined }]
      : [],
  );
}

function markItems({ x: mx, y: my, shape, meaning, label, of }: ChartMark, area: Area, x: Placed, y: Placed): Item[] {
  if (!isInside([mx, my], x, y)) return [];
  const [px, py] = [x.at(mx), y.at(my)];
  const mark = markItem(shape, px, py, meaning, of);
  if (label === undefined) return [mark];
  const fits = px + 2 + textWidth(label, figureHeight) <= area.right;
  return [mark, ...onGround(text(label, fits ? px + 2.4 : px - 2.4, py - 1.4, fits ? 'start' : 'end', 'ink', of))];
}
