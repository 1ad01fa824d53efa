import fc from 'fast-check';
import { expect, test } from 'vitest';
import { drillingTable } from './drilling-table.ts';

const hole = fc.record({
  diameter: fc.double({ min: 1, max: 13, noNaN: true }),
  depth: fc.double({ min: 0.5, max: 90, noNaN: true }),
  pointAngle: fc.constantFrom(90, 118, 135),
});

function tableOf(diameter: number, depth: number, pointLength: number, dialled: boolean) {
  return drillingTable({
    id: 't',
    operation: 'o',
    title: 'drill',
    diameter,
    depth,
    pointLength,
    dial: dialled ? { division: 0.05, perTurn: 2, reads: 'travel' } : undefined,
    speed: 800,
    feed: 0.1,
    hardens: true,
  });
}

test('the last peck is as deep as the hole and its point together, and every peck is deeper than the one before', () => {
  fc.assert(
    fc.property(hole, ({ diameter, depth, pointAngle }) => {
      const pointLength = diameter / 2 / Math.tan((pointAngle * Math.PI) / 360);
      const depths = tableOf(diameter, depth, pointLength, true).rows.map((r) => Number(r.depth));
      expect(depths.at(-1)).toBeCloseTo(depth + pointLength, 9);
      expect(depths).toEqual(depths.toSorted((a, b) => a - b));
      expect(new Set(depths).size).toBe(depths.length);
      // After the first, no more than a diameter at a time is drilled without clearing.
      depths.slice(1).forEach((d, i) => {
        expect(d - (depths[i] ?? 0)).toBeLessThanOrEqual(diameter + 1e-9);
      });
    }),
  );
});

test('turns of the tailstock wheel never go past the depth', () => {
  const table = tableOf(5, 22, 1.5, true);
  for (const row of table.rows) {
    const wound = (Number(row.turns) * 40 + Number(row.divisions)) * 0.05;
    expect(wound).toBeLessThanOrEqual(Number(row.depth) + 1e-9);
    expect(Number(row.depth) - wound).toBeLessThan(0.05);
  }
});

test('without a dial the notes say how to keep the depth', () => {
  expect(tableOf(5, 22, 1.5, false).notes.join(' ')).toContain('No dial on the tailstock');
});

test('a point of 118° is 0.3 of the diameter long [common practice]', () => {
  expect(tableOf(10, 20, 5 / Math.tan((59 * Math.PI) / 180), true).notes[0]).toContain('The point is 3.0 mm long');
});
