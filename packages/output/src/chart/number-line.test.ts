import type { Item, PathItem, TextItem } from '@sparewright/core/drawing/scene';
import { textWidth } from '@sparewright/core/drawing/text-width';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawNumberLine, type NumberLine } from './number-line.ts';

const style = { decimalSign: 'point' } as const;
/** An invented pin of 12 f7, limits 11.966 and 11.984 [ISO 286-1]. */
const pin: NumberLine = {
  title: 'diameter of the pin',
  description: 'Two readings.',
  units: 'mm',
  readings: [
    { value: 11.975, half: 0.004, shape: 'dot', says: 'r1 protected' },
    { value: 11.94, half: 0.004, shape: 'ring', says: 'r2 worn' },
  ],
  made: [
    {
      name: '',
      median: 11.975,
      half: { low: 11.973, high: 11.977 },
      wide: { low: 11.97, high: 11.98 },
      density: { from: 11.965, step: 0.005, values: [0, 50, 100, 50, 0] },
    },
  ],
  designs: [{ says: '12 f7, 80 %', min: 11.966, max: 11.984 }],
  nominals: [{ size: 12, says: '12' }],
};

const texts = (items: readonly Item[]): TextItem[] => items.filter((i) => i.item === 'text');
const paths = (items: readonly Item[]): PathItem[] => items.filter((i) => i.item === 'path');
const said = (line: NumberLine) => texts(drawNumberLine(line, style).items).map((t) => t.text);

describe('a number line', () => {
  test('measured is drawn solid, concluded in pencil', () => {
    const strokes = new Set(paths(drawNumberLine(pin, style).items).map((p) => p.stroke));
    expect(strokes).toContain('outline');
    expect(strokes).toContain('assumed');
    expect(said(pin)).toEqual(expect.arrayContaining(['12', '12 f7, 80 %', 'r1 protected', 'r2 worn', 'mm']));
  });

  test('a mark stands where its reading is: halfway between two others', () => {
    const readings = [11.9, 11.95, 12].map((value) => ({ value, half: 0.001, shape: 'dot' as const, says: '' }));
    const marks = paths(drawNumberLine({ ...pin, readings }, style).items).filter((p) => p.fill === 'ink');
    const middles = marks.map(({ parts }) => {
      const xs = parts.flatMap((p) => (p.to === 'close' ? [] : [p.x]));
      return (Math.min(...xs) + Math.max(...xs)) / 2;
    });
    expect(middles).toHaveLength(3);
    expect((middles[0] ?? 0) + (middles[2] ?? 0)).toBeCloseTo(2 * (middles[1] ?? 0), 6);
  });

  test('a nominal size far off is told at the edge it lies beyond', () => {
    expect(said({ ...pin, nominals: [{ size: 13, says: '13' }] })).toContain('13 →');
    expect(said({ ...pin, nominals: [{ size: 11, says: '11' }] })).toContain('← 11');
  });

  test('inches are written in inches', () => {
    const figures = said({ ...pin, units: 'in' });
    expect(figures).toContain('in');
    expect(figures.some((f) => /^0\.47\d+$/.test(f))).toBe(true);
  });

  test('whatever is measured, every item is finite and on the sheet', () => {
    const size = fc.double({ min: 0.1, max: 500, noNaN: true });
    const reading = fc.record({
      value: size,
      half: fc.double({ min: 0, max: 1, noNaN: true }),
      shape: fc.constantFrom('dot' as const, 'ring' as const, 'cross' as const, 'square' as const),
      says: fc.constantFrom('r1 worn', 'a reading with a long name, protected'),
    });
    fc.assert(
      fc.property(fc.array(reading, { maxLength: 6 }), fc.array(size, { maxLength: 3 }), (readings, sizes) => {
        const nominals = sizes.map((s) => ({ size: s, says: String(Math.round(s)) }));
        const scene = drawNumberLine({ ...pin, readings, nominals, made: [], designs: [] }, style);
        for (const item of scene.items) {
          const places = item.item === 'text' ? [item.at] : item.parts.flatMap((p) => (p.to === 'close' ? [] : [p]));
          for (const p of places) {
            expect(Number.isFinite(p.x) && Number.isFinite(p.y)).toBe(true);
            expect(p.x).toBeGreaterThan(-2);
            expect(p.x).toBeLessThan(scene.width + 2);
          }
          if (item.item !== 'text') continue;
          const long = textWidth(item.text, item.height);
          const left = item.at.x - (item.anchor === 'end' ? long : item.anchor === 'middle' ? long / 2 : 0);
          expect(left + long).toBeLessThan(scene.width + 1);
        }
      }),
      { numRuns: 60 },
    );
  });
});
