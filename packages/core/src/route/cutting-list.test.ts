import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fullWorkshop } from '../../test/arbitrary-workshop.ts';
import { countOutside, referenceRows } from '../../test/reference.ts';
import { DomainError } from '../errors.ts';
import { type WorkshopDocument, workshopSchema } from '../lathe/schema.ts';
import { definePart } from '../part/define-part.ts';
import { partSchema } from '../part/schema.ts';
import { barMass, piecesFromRack, piecesToBuy, sawingTime } from './cutting-list.ts';
import { planRoute } from './plan-route.ts';
import { sawKerf } from './practice.ts';

const sawing = referenceRows('cutting', 'sawing');

test('a metre of 20 mm steel bar weighs 2.466 kg [2.47 kg/m in any steel stockholder’s list, by hand π/4 · 7.85]', () => {
  expect(barMass(20, 1000, 7.85e-6)).toBeCloseTo(2.466, 3);
  expect(() => barMass(-1, 10, 1)).toThrow(DomainError);
});

test('a 20 mm bar of mild steel takes 2 to 4 minutes with a hacksaw [sawing, common practice]', ({ task }) => {
  const row = sawing.find((r) => r.item === 'hand hacksaw time');
  const time = sawingTime(20);
  expect(time.low / 60).toBeCloseTo(Number(row?.low), 2);
  expect(time.high / 60).toBeCloseTo(Number(row?.high), 2);
  countOutside(task, 2);
});

test('a hand saws slower than the slowest machine at home: a tenth of the production rates [SBC]', ({ task }) => {
  const rows = sawing.filter(
    (r) => r.item === 'cutting rate, production band saw' && r.condition?.startsWith('1008-1013'),
  );
  for (const row of rows) {
    const area = (Math.PI / 4) * 2.5 ** 2;
    expect(area / (sawingTime(25).low / 60)).toBeLessThan(Number(row.low) / 10);
    countOutside(task, 1);
  }
  expect(rows).toHaveLength(2);
});

test('sawing goes with the area, and inversely with how the material machines', () => {
  expect(sawingTime(40).low / sawingTime(20).low).toBeCloseTo(4, 9);
  expect(sawingTime(20, 39).high / sawingTime(20, 78).high).toBeCloseTo(2, 9);
  expect(() => sawingTime(0)).toThrow(DomainError);
});

describe('pieces', () => {
  const wanted = { count: 5, each: 40, stub: 22, mostInPiece: Number.POSITIVE_INFINITY };

  test('come off the shortest bar that is enough', () => {
    const pieces = piecesFromRack(
      [
        { id: 'long', length: 900 },
        { id: 'enough', length: 222 },
        { id: 'short', length: 221 },
      ],
      wanted,
    );
    expect(pieces).toEqual([{ bar: 'enough', parts: 5, length: 222 }]);
  });

  test('come off several when none alone is, and each has its own grip', () => {
    const pieces = piecesFromRack(
      [
        { id: 'a', length: 150 },
        { id: 'b', length: 110 },
      ],
      wanted,
    );
    expect(pieces).toEqual([
      { bar: 'a', parts: 3, length: 142 },
      { bar: 'b', parts: 2, length: 102 },
    ]);
    expect(piecesFromRack([{ id: 'a', length: 150 }], wanted)).toBeUndefined();
  });

  test('never add up to more than the bars, every part is there, and no piece is longer than the lathe takes', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 20, max: 600, noNaN: true }), { maxLength: 6 }),
        fc.record({
          count: fc.integer({ min: 1, max: 30 }),
          each: fc.double({ min: 5, max: 120, noNaN: true }),
          stub: fc.constantFrom(0, 22, 44),
          mostInPiece: fc.constantFrom(1, 2, 4, Number.POSITIVE_INFINITY),
        }),
        (lengths, parts) => {
          const bars = lengths.map((length, i) => ({ id: `bar-${i}`, length }));
          const pieces = piecesFromRack(bars, parts) ?? piecesToBuy(parts);
          expect(pieces.reduce((sum, p) => sum + p.parts, 0)).toBe(parts.count);
          for (const p of pieces) {
            expect(p.parts).toBeLessThanOrEqual(parts.mostInPiece);
            expect(p.length).toBeCloseTo(p.parts * parts.each + parts.stub, 6);
          }
          for (const { id, length } of bars) {
            const cut = pieces.filter((p) => p.bar === id);
            const kerfs = parts.stub > 0 ? Math.max(0, cut.length - 1) * sawKerf : 0;
            expect(cut.reduce((sum, p) => sum + p.length, kerfs)).toBeLessThan(length + 1e-6);
          }
        },
      ),
    );
  });
});

describe('several parts of one job', () => {
  const pin = definePart(
    partSchema('mm').parse({
      name: 'pin',
      material: '303',
      generalTolerance: 'm',
      outside: [
        { kind: 'cylinder', id: 'head', diameter: 18, length: 12 },
        { kind: 'cylinder', id: 'shank', diameter: '12 h9', length: 30 },
      ],
    }),
  );
  const plan = (count: number | undefined, bars: WorkshopDocument['bars'] = []) =>
    planRoute(pin, workshopSchema('mm').parse({ ...fullWorkshop, bars }), count === undefined ? undefined : { count });

  test('take one grip for all of them, and the lengths told add up', () => {
    const [one, three] = [plan(undefined)?.stock, plan(3)?.stock];
    const each = 42 + 2 + 2;
    expect(three?.length).toBe(Math.ceil((one?.length ?? 0) + 2 * each));
    expect(three?.made.reduce((sum, m) => sum + m.length, 0)).toBeCloseTo(three?.cutting?.length ?? 0, 9);
  });

  test('weigh as bar what they weigh as parts, chips and stubs', () => {
    const list = plan(3)?.stock?.cutting;
    expect(list?.mass).toBeCloseTo((list?.chips ?? 0) + (list?.stubs ?? 0) + 3 * (pin.mass?.mass ?? 0), 9);
    expect(list?.chips).toBeGreaterThan(0);
  });

  test('are told from the rack when its bars are enough together, else bought', () => {
    const bar = (id: string, length: number) => ({ id, material: '303', diameter: 20, length });
    const both = plan(4, [bar('first', 130), bar('second', 130)]);
    expect(both?.stock?.from).toBe('rack');
    expect(both?.stock?.bar).toBe('first, second');
    expect(both?.needed.join(' ')).toContain('sawn off first');
    expect(both?.findings.map((f) => f.id)).toContain('route.several-parts');
    expect(plan(9, [bar('first', 130)])?.stock?.from).toBe('to buy');
  });
});
