import fc from 'fast-check';
import { expect, test } from 'vitest';
import { grooveTable, plungePlaces } from './groove-table.ts';

const sizes = fc
  .tuple(fc.double({ min: 0.5, max: 4, noNaN: true }), fc.double({ min: 0, max: 12, noNaN: true }))
  .map(([cutter, more]) => ({ cutter, width: cutter + more }));

test('plunges side by side leave no ridge, reach both walls and pass neither', () => {
  fc.assert(
    fc.property(sizes, ({ cutter, width }) => {
      const places = plungePlaces(width, cutter);
      expect(places[0]).toBe(0);
      expect((places.at(-1) ?? 0) + cutter).toBeCloseTo(width, 8);
      places.slice(1).forEach((place, i) => {
        expect(place).toBeLessThanOrEqual((places[i] ?? 0) + cutter + 1e-9);
      });
    }),
  );
});

const across = { division: 0.02, perTurn: 1, reads: 'radius' } as const;
const along = fc.constantFrom(
  { division: 0.02, perTurn: 1, reads: 'travel' as const },
  { division: 0.0254, perTurn: 2.54, reads: 'travel' as const },
);

test('in whole divisions the walls are still not passed, and the floor is reached within a division, outside and inside', () => {
  fc.assert(
    fc.property(sizes, along, fc.boolean(), fc.double({ min: 0.3, max: 5, noNaN: true }), (s, dial, internal, deep) => {
      const outer = 20;
      const floor = internal ? outer + 2 * deep : outer - 2 * deep;
      const table = grooveTable({
        id: 't',
        operation: 'o',
        title: 'groove',
        width: s.width,
        outer,
        floor,
        cutterWidth: s.cutter,
        stretch: { end: 'right', near: 4, far: 4 + s.width },
        across,
        along: dial,
      });
      for (const row of table.rows) {
        const perTurn = Math.round(dial.perTurn / dial.division);
        const place = (Number(row.alongTurns) * perTurn + Number(row.alongDivisions)) * dial.division;
        expect(place + s.cutter).toBeLessThanOrEqual(s.width + 1e-6);
        const left = internal ? floor - Number(row.diameter) : Number(row.diameter) - floor;
        expect(left).toBeGreaterThanOrEqual(-1e-6);
      }
      const end = Number(table.rows.at(-1)?.diameter);
      expect(Math.abs(end - floor)).toBeLessThan(2 * across.division);
    }),
  );
});

test('without a dial along, the places are given and the notes say how to set them', () => {
  const table = grooveTable({
    id: 't',
    operation: 'o',
    title: 'groove',
    width: 3,
    outer: 20,
    floor: 16,
    cutterWidth: 2,
    stretch: { end: 'right', near: 5, far: 8 },
    across,
    along: undefined,
  });
  expect(table.rows.every((row) => row.alongTurns === '')).toBe(true);
  expect(table.notes.join(' ')).toContain('No dial along the work');
  expect(table.notes.join(' ')).toContain('at the left wall, 8 mm from the right end of the part');
});
