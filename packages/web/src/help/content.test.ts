import { expect, test } from 'vitest';
import { topics } from './content.ts';
import { meaning, measuring } from './titles.ts';
import { helpOfStage, measuringOf } from './where.ts';

const words = (id: string): string => {
  const topic = [...topics.measure, ...topics.meaning].find((t) => t.id === id);
  if (!topic) throw new Error(`no help ${id}`);
  return [topic.lead, ...topic.steps, ...topic.beware, topic.formula ?? ''].join(' ');
};

test('every title has its text and every text its title', () => {
  expect(topics.measure.map((t) => t.id)).toEqual(Object.keys(measuring));
  expect(topics.meaning.map((t) => t.id)).toEqual(Object.keys(meaning));
});

test('every drawing says what it shows, and nothing on it lies outside of it', () => {
  const pictures = topics.measure.flatMap(({ picture }) => picture ?? []);
  expect(pictures.length).toBeGreaterThan(10);
  for (const { width, height, title, description, items } of pictures) {
    expect(title.length * description.length).toBeGreaterThan(200);
    const places = items.flatMap((item) =>
      item.item === 'text' ? [item.at] : item.parts.filter((p) => p.to !== 'close'),
    );
    for (const { x, y } of places) {
      expect(x, title).toBeGreaterThanOrEqual(0);
      expect(x, title).toBeLessThanOrEqual(width);
      expect(y, title).toBeGreaterThanOrEqual(0);
      expect(y, title).toBeLessThanOrEqual(height);
    }
  }
});

test('the numbers said in words are what the geometry gives', () => {
  // Two chords of length b in a circle of diameter D, b on either side.
  const short = (b: number, D: number): string => (D - Math.sqrt(D * D - b * b)).toFixed(3);
  expect(words('bores')).toContain(`flats of 0.5 mm read ${short(0.5, 10)} mm small, flats of 1 mm ${short(1, 10)} mm`);
  const radius = (c: number, h: number): number => (c * c) / (8 * h) + h / 2;
  expect(words('crown')).toContain(`0.05 mm in the cap are ${(radius(20, 1) - radius(20, 1.05)).toFixed(1)} mm`);
  // A 303 stainless grows by 17.3 µm/(m·K) (ASM, from memory).
  expect(words('before')).toContain(`30 mm of stainless grows by ${(17.3e-3 * 30 * 10).toFixed(0)} µm`);
  expect(words('threads')).toContain(
    `by ${(25.4 / 20 - 1.25).toFixed(2)} mm over one pitch and by ${(8 * (25.4 / 20 - 1.25)).toFixed(2)} mm over eight`,
  );
  expect(words('hexagon')).toContain((2 / Math.sqrt(3)).toFixed(3));
  expect(words('hexagon')).toContain(((5 / 16) * 25.4).toFixed(3));
  // One-sided 95 % of the normal distribution (any table: 1.645).
  expect(words('accept')).toContain('1.64 u');
});

test('each size is led to the help that tells how it is measured', () => {
  const at = (...path: string[]) => path;
  expect(measuringOf({ id: 'body.diameter', path: at('part', 'outside') }, 'cylinder')).toBe('outside');
  expect(measuringOf({ id: 'hole.diameter', path: at('part', 'inside', 'left') }, 'drilled')).toBe('bores');
  expect(measuringOf({ id: 'hole.depth', path: at('part', 'inside', 'left') }, 'drilled')).toBe('lengths');
  expect(measuringOf({ id: 'cavity.startDiameter', path: at('part', 'inside', 'left') }, 'cone')).toBe('tapers');
  expect(measuringOf({ id: 'dome.length', path: at('part', 'outside') }, 'crown')).toBe('crown');
  expect(measuringOf({ id: 'groove.width', path: at('part', 'grooves') }, '')).toBe('grooves');
  expect(measuringOf({ id: 'drive.acrossFlats', path: at('part', 'notTurned') }, 'hexagon socket')).toBe('hexagon');
  expect(Object.keys(helpOfStage)).toHaveLength(7);
});
