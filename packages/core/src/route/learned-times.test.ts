import { expect, test } from 'vitest';
import { paceFrom, spanAt, type TimeTaken } from './learned-times.ts';

const entries = (kind: TimeTaken['kind'], ratio: number, count: number): TimeTaken[] =>
  Array.from({ length: count }, () => ({ kind, planned: 600, taken: 600 * ratio }));

test('without a log times are as planned, from seven tenths to nine fifths', () => {
  expect(spanAt(100, paceFrom([])('drill'))).toEqual({ low: 70, likely: 100, high: 180 });
});

test('many entries decide a kind, a few move it a little, and other kinds follow half-way at first', () => {
  const many = paceFrom(entries('thread', 2, 60));
  expect(many('thread').factor).toBeGreaterThan(1.9);
  expect(many('thread').factor).toBeLessThan(2);
  const few = paceFrom(entries('thread', 2, 1));
  expect(few('thread').factor).toBeGreaterThan(1.05);
  expect(few('thread').factor).toBeLessThan(1.5);
  expect(few('drill').factor).toBeGreaterThan(1);
  expect(few('drill').factor).toBeLessThan(few('thread').factor);
});

test('an even pace narrows the range, an uneven one widens it', () => {
  const even = paceFrom(entries('face', 1, 30))('face');
  const uneven = paceFrom([...entries('face', 0.2, 15), ...entries('face', 5, 15)])('face');
  expect(even.spread).toBeLessThan(0.5);
  expect(uneven.spread).toBeGreaterThan(2);
  expect(uneven.factor).toBeCloseTo(1, 6);
  const wide = spanAt(100, uneven);
  expect(wide.high / wide.low).toBeGreaterThan(180 / 70);
});

test('entries without time are passed over', () => {
  expect(paceFrom([{ kind: 'face', planned: 0, taken: 60 }])('face')).toEqual({
    factor: 1,
    spread: 1,
    entries: 0,
    all: 0,
  });
});
