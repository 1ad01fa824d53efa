import type { Item, PathItem, TextItem } from '@sparewright/core/drawing/scene';
import { textWidth } from '@sparewright/core/drawing/text-width';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { place } from './axes.ts';
import type { Chart } from './chart.ts';
import { drawBars } from './draw-bars.ts';
import { drawChart } from './draw-chart.ts';

const style = { decimalSign: 'point' } as const;
const plain: Chart = {
  title: 'Size against pass',
  description: 'Three passes.',
  x: { title: 'pass', unit: '' },
  y: { title: 'diameter', unit: 'mm' },
};

const paths = (items: readonly Item[]): PathItem[] => items.filter((i) => i.item === 'path');
const texts = (items: readonly Item[]): TextItem[] => items.filter((i) => i.item === 'text');
const corners = (item: PathItem) => item.parts.filter((p) => p.to !== 'close');

describe('an axis', () => {
  test('is linear: equal steps of value are equal steps on the sheet', () => {
    const axis = place({ title: '', unit: '' }, [0, 10], 20, 120, 'x');
    expect([0, 2.5, 5, 10].map(axis.at)).toEqual([20, 45, 70, 120]);
  });

  test('is logarithmic: equal ratios are equal steps', () => {
    const axis = place({ title: '', unit: '', scale: 'log', from: 1, to: 100 }, [], 0, 100, 'x');
    expect(axis.at(10)).toBeCloseTo(50, 9);
    expect(axis.at(Math.sqrt(10))).toBeCloseTo(25, 9);
  });

  test('that counts is ticked at whole numbers only', () => {
    expect(place({ title: '', unit: '', whole: true }, [1, 3], 20, 200, 'x').ticks).toEqual([1, 2, 3]);
  });

  test('holds every value, whatever they are, and its ticks stand apart', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { maxLength: 20 }), (values) => {
        const axis = place({ title: '', unit: '' }, values, 20, 150, 'x');
        for (const v of values) expect(axis.at(v)).toBeGreaterThanOrEqual(20 - 1e-6);
        for (const v of values) expect(axis.at(v)).toBeLessThanOrEqual(150 + 1e-6);
        const places = axis.ticks.map(axis.at);
        for (const [i, p] of places.slice(1).entries()) expect(p - (places[i] ?? 0)).toBeGreaterThan(4);
      }),
    );
  });
});

test('an axis told what counts is ticked there, and at round numbers where the figures would run into each other', () => {
  const axis = { title: 'speed', unit: 'rpm', scale: 'log', from: 100, to: 2200 } as const;
  expect(place({ ...axis, ticks: [125, 500, 2000] }, [], 10, 150, 'x').ticks).toEqual([125, 500, 2000]);
  const crowded = place({ ...axis, ticks: [500, 505, 510] }, [], 10, 150, 'x').ticks;
  expect(crowded).not.toContain(505);
  expect(crowded.length).toBeGreaterThan(2);
});

describe('a chart', () => {
  const points = [
    [1, 12],
    [2, 11.5],
    [3, 11],
  ] as const;

  test('joins its points in order, straight or in steps', () => {
    const straight = paths(drawChart({ ...plain, lines: [{ points, meaning: 'computed' }] }, style).items);
    expect(corners(straight.at(-1) as PathItem)).toHaveLength(3);
    const stepped = paths(
      drawChart({ ...plain, lines: [{ points, meaning: 'computed', stepped: true }] }, style).items,
    );
    const found = corners(stepped.at(-1) as PathItem);
    expect(found).toHaveLength(5);
    expect(found.slice(1).every((p, i) => p.x === found[i]?.x || p.y === found[i]?.y)).toBe(true);
  });

  test('breaks a line where a value is missing and leaves out what is off the axes', () => {
    const broken = [
      [1, 12],
      [2, Number.NaN],
      [3, 11],
      [4, 10.5],
      [9, 99],
    ] as const;
    const chart = {
      ...plain,
      y: { ...plain.y, from: 10, to: 13 },
      lines: [{ points: broken, meaning: 'computed' }],
    } as const;
    const drawn = paths(drawChart(chart, style).items).at(-1) as PathItem;
    expect(drawn.parts.map((p) => p.to)).toEqual(['start', 'start', 'line']);
  });

  test('keeps every mark and word on the sheet, whatever is plotted', () => {
    const point = fc.tuple(
      fc.double({ min: -1e5, max: 1e5, noNaN: true }),
      fc.oneof(fc.double({ min: -1e100, max: 1e100 }), fc.constantFrom(Number.NaN, Infinity, -Infinity)),
    );
    fc.assert(
      fc.property(fc.array(point, { maxLength: 12 }), fc.string({ maxLength: 12 }), (some, label) => {
        const marks = some.map(([x, y]) => ({ x, y, shape: 'ring', meaning: 'measured', label }) as const);
        const sheet = drawChart({ ...plain, lines: [{ points: some, meaning: 'inferred', label }], marks }, style);
        for (const item of paths(sheet.items))
          for (const p of corners(item)) {
            expect(p.x).toBeGreaterThanOrEqual(0);
            expect(p.x).toBeLessThanOrEqual(sheet.width);
            expect(p.y).toBeGreaterThanOrEqual(0);
            expect(p.y).toBeLessThanOrEqual(sheet.height);
          }
        for (const t of texts(sheet.items)) expect(Number.isFinite(t.at.x + t.at.y)).toBe(true);
      }),
      { numRuns: 60 },
    );
  });

  test('writes labels of lines that end at one place below each other', () => {
    const two = ['one', 'two'].map((label) => ({ points, meaning: 'computed', label }) as const);
    const [one, other] = texts(drawChart({ ...plain, lines: two }, style).items).filter((t) => /one|two/.test(t.text));
    expect(Math.abs((one?.at.y ?? 0) - (other?.at.y ?? 0))).toBeGreaterThan(1.8);
  });
});

describe('bars', () => {
  const bar = (label: string, value: number) => ({ label, value, written: `${value} %`, meaning: 'computed' }) as const;
  const widthOf = (item: PathItem | undefined): number => {
    const xs = item ? corners(item).map((p) => p.x) : [];
    return Math.max(...xs) - Math.min(...xs);
  };

  test('are as long as their values, and fit the sheet with their words', () => {
    const sheet = drawBars(
      { ...plain, bars: [bar('12 h8', 60), bar('12.5 own size', 30), bar('none', Number.NaN)] },
      style,
    );
    const [long, short, none] = paths(sheet.items);
    expect(widthOf(long) / widthOf(short)).toBeCloseTo(2, 9);
    expect(widthOf(none)).toBe(0);
    for (const t of texts(sheet.items).filter((x) => x.anchor === 'start'))
      expect(t.at.x + textWidth(t.text, t.height)).toBeLessThanOrEqual(sheet.width);
  });
});
