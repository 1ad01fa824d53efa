import fc from 'fast-check';
import { expect, test } from 'vitest';
import { canSet, textWidth } from './text-width.ts';

test('a text is as wide as its characters together', () => {
  fc.assert(
    fc.property(fc.string({ maxLength: 20 }), fc.string({ maxLength: 20 }), (a, b) => {
      expect(textWidth(a + b, 2.5)).toBeCloseTo(textWidth(a, 2.5) + textWidth(b, 2.5), 9);
    }),
  );
});

test('twice the height is twice the width', () => {
  expect(textWidth('Ø12 f7', 5)).toBeCloseTo(2 * textWidth('Ø12 f7', 2.5), 9);
});

test('bold is wider than normal', () => {
  expect(textWidth('Title', 5, 'bold')).toBeGreaterThan(textWidth('Title', 5));
});

test('the face sets every sign that a drawing writes, and the diameter sign it lacks is never asked of it', () => {
  expect(canSet('Ø12 f7 (−0.016/−0.034) ±0.1 0,5×45° µm √ ½ ≤ ≥ – · …')).toBe(true);
  expect(canSet('⌀')).toBe(false);
});
