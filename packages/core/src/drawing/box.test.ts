import fc from 'fast-check';
import { expect, test } from 'vitest';
import { boxAt, cross, overlap, passesThrough, runsAlong } from './box.ts';
import { Stretches } from './stretches.ts';

const coordinate = fc.integer({ min: -40, max: 40 }).map((n) => n / 2 + 0.25);
const point = fc.record({ x: coordinate, y: coordinate });
const line = fc.record({ a: point, b: point });
const box = fc
  .tuple(coordinate, coordinate, fc.integer({ min: 1, max: 30 }), fc.integer({ min: 1, max: 30 }))
  .map(([x, y, w, h]) => boxAt(x, y, w, h));

test('a line passes through a box exactly when one of many points on it lies inside', () => {
  fc.assert(
    fc.property(line, box, (l, b) => {
      const inside = Array.from({ length: 2001 }, (_, i) => i / 2000).some((t) => {
        const x = l.a.x + t * (l.b.x - l.a.x);
        const y = l.a.y + t * (l.b.y - l.a.y);
        return x > b.left && x < b.right && y > b.top && y < b.bottom;
      });
      // Between two samples a corner can be clipped unseen, so only this direction is exact.
      if (inside) expect(passesThrough(l, b)).toBe(true);
      else if (passesThrough(l, b)) expect(passesThrough(l, { ...b, left: b.left - 0.1, top: b.top - 0.1 })).toBe(true);
    }),
  );
});

test('a line along a side does not pass through', () => {
  expect(passesThrough({ a: { x: 0, y: 0 }, b: { x: 10, y: 0 } }, boxAt(2, 0, 3, 3))).toBe(false);
  expect(passesThrough({ a: { x: 0, y: 1 }, b: { x: 10, y: 1 } }, boxAt(2, 0, 3, 3))).toBe(true);
});

test('crossing and overlapping are mutual', () => {
  fc.assert(
    fc.property(line, line, box, box, (l, m, b, c) => {
      expect(cross(l, m)).toBe(cross(m, l));
      expect(overlap(b, c)).toBe(overlap(c, b));
    }),
  );
});

test('the two diagonals of a square cross; lines that only touch do not', () => {
  expect(cross({ a: { x: 0, y: 0 }, b: { x: 1, y: 1 } }, { a: { x: 0, y: 1 }, b: { x: 1, y: 0 } })).toBe(true);
  expect(cross({ a: { x: 0, y: 0 }, b: { x: 1, y: 1 } }, { a: { x: 1, y: 1 }, b: { x: 2, y: 0 } })).toBe(false);
});

test('a line half a millimetre beside another for its length is lost in it; one square to it is not', () => {
  const other = { a: { x: 0, y: 0 }, b: { x: 0, y: 20 } };
  expect(runsAlong({ a: { x: 0.5, y: 2 }, b: { x: 0.5, y: 12 } }, other)).toBe(true);
  expect(runsAlong({ a: { x: -5, y: 5 }, b: { x: 5, y: 5 } }, other)).toBe(false);
  expect(runsAlong({ a: { x: 0, y: 21 }, b: { x: 0, y: 30 } }, other)).toBe(false);
});

test('looking up lines by place finds every one that passes through the place', () => {
  fc.assert(
    fc.property(fc.array(line, { maxLength: 30 }), box, (lines, where) => {
      const stretches = new Stretches();
      stretches.push(...lines);
      const near = stretches.near(where);
      expect(new Set(near).size).toBe(near.length);
      for (const l of lines) if (passesThrough(l, where)) expect(near).toContain(l);
    }),
  );
});
