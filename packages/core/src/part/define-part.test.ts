import fc from 'fast-check';
import { expect, test } from 'vitest';
import { arbitraryPartIn } from '../../test/arbitrary-part.ts';
import { definePart } from './define-part.ts';
import { partSchema } from './schema.ts';
import { distance } from './segment.ts';

const read = (unit: 'mm' | 'in', document: unknown) => definePart(partSchema(unit).parse(document));

test('a part that can be made has no stop finding and a positive volume', () => {
  fc.assert(
    fc.property(arbitraryPartIn({}), ({ unit, document }) => {
      const part = read(unit, document);
      expect(part.findings.filter((f) => f.level === 'stop')).toEqual([]);
      expect(part.mass?.volume).toBeGreaterThan(0);
      const { outline } = part;
      for (const chain of [outline.outside, outline.insideLeft, outline.insideRight]) {
        for (const [i, s] of chain.entries()) if (i > 0) expect(distance(chain[i - 1]!.to, s.from)).toBeLessThan(1e-9);
      }
    }),
    { numRuns: 300 },
  );
});
