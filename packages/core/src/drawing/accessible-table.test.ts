import fc from 'fast-check';
import { expect, test } from 'vitest';
import { crowdedPart } from '../../test/crowded-part.ts';
import { definePart } from '../part/define-part.ts';
import { partSchema } from '../part/schema.ts';
import { drawingTable } from './accessible-table.ts';

const style = { units: 'mm', decimalSign: 'point' } as const;

test('a row says what it is, its size, its class and what that comes to', () => {
  const part = definePart(
    partSchema('mm').parse({
      name: 'pin',
      outside: [{ kind: 'cylinder', id: 'guide', diameter: '12 f7', length: '40', finish: 0.8 }],
    }),
  );
  expect(drawingTable(part, style)).toEqual([
    { of: 'guide.length', dimension: 'length of the guide', value: '40 mm', limits: 'no tolerance stated' },
    {
      of: 'guide.diameter',
      dimension: 'diameter of the guide',
      value: 'Ø12 mm',
      limits: 'f7 (−0.016/−0.034), 11.966 to 11.984 mm',
    },
    { of: 'guide', dimension: 'roughness of the guide', value: 'Ra 0.8 µm', limits: 'upper limit' },
  ]);
});

test('every dimension and thread has a row', () => {
  fc.assert(
    fc.property(crowdedPart(), (document) => {
      const part = definePart(partSchema('mm').parse(document));
      const rows = new Set(drawingTable(part, style).map((row) => row.of));
      for (const { id } of [...part.dimensions, ...part.threads]) expect(rows).toContain(id);
    }),
    { numRuns: 30 },
  );
});
