/** Whatever the evidence says, the answer is finite, its probabilities are shares and its intervals are in order. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { conditions, gaugeKinds } from '../evidence/reading-kinds.ts';
import type { Gauge } from '../evidence/schema.ts';
import type { RecoverFeature } from './features.ts';
import { recover } from './recover.ts';
import type { RecoverResult } from './recover-result.ts';

const gauges: Gauge[] = gaugeKinds.map((kind) => ({ id: kind.replaceAll(' ', '-'), name: kind, kind }));
const features: RecoverFeature[] = [
  { id: 'a.diameter', title: 'a', kind: 'outside diameter', role: 'sliding' },
  { id: 'b.diameter', title: 'b', kind: 'inside diameter', role: 'pressed' },
  { id: 'c.width', title: 'c', kind: 'width', role: 'free' },
];

const size = fc.oneof(
  fc.double({ min: 0.01, max: 2999, noNaN: true }),
  fc.constantFrom(12, 12.01, 304.8, 0.4724, 25.4, 1, 2999, 0.001),
);
const reading = fc.record({
  of: fc.constantFrom(
    'a.diameter',
    'b.diameter',
    'c.width',
    'mate.size',
    't.pitch',
    't.crest',
    'k.profile',
    'k.depths',
    'nowhere',
  ),
  value: size,
  gauge: fc.option(fc.constantFrom(...gauges.map((g) => g.id), 'lost'), { nil: undefined }),
  condition: fc.option(fc.constantFrom(...conditions), { nil: undefined }),
  specimen: fc.option(fc.constantFrom('x', 'y', 'z'), { nil: undefined }),
  along: fc.option(fc.constantFrom(0, 5, 10), { nil: undefined }),
  temperature: fc.option(fc.double({ min: -20, max: 120, noNaN: true }), { nil: undefined }),
});

function check(result: RecoverResult): void {
  const walk = (value: unknown): void => {
    if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
    else if (typeof value === 'object' && value !== null) for (const inner of Object.values(value)) walk(inner);
  };
  walk(result);
  for (const s of result.sizes) {
    for (const d of s.designs) {
      expect(d.probability).toBeGreaterThanOrEqual(0);
      expect(d.probability).toBeLessThanOrEqual(1 + 1e-9);
    }
    for (const m of s.made) {
      const inOrder = [m.wide.low, m.half.low, m.median, m.half.high, m.wide.high];
      expect(inOrder).toEqual(inOrder.toSorted((x, y) => x - y));
    }
    for (const l of s.limits) expect(l.max).toBeGreaterThanOrEqual(l.min);
    for (const w of s.wear) expect(w.range.high).toBeGreaterThanOrEqual(w.range.low);
  }
}

test('any readings whatever', () => {
  fc.assert(
    fc.property(
      fc.array(reading, { maxLength: 14 }),
      fc.constantFrom('Germany', 'England', undefined),
      (list, country) => {
        const readings = list.map((r, i) => ({ id: `r${i}`, ...r }));
        const mates = [
          { id: 'mate', name: 'mate', kind: 'bore' as const, with: 'a.diameter', wanted: { least: 0.01, most: 0.05 } },
        ];
        check(recover({ evidence: { readings }, gauges, features, mates, machine: { country } }));
      },
    ),
    { numRuns: 60, interruptAfterTimeLimit: 2500 },
  );
});

test('the order of the readings does not matter', () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: 11.9, max: 12.02, noNaN: true }), { minLength: 2, maxLength: 5 }),
      (values) => {
        const ask = (list: readonly number[]) =>
          recover({
            evidence: {
              readings: list.map((value, i) => ({
                id: `r${i}`,
                of: 'a.diameter',
                value,
                condition: 'unsure' as const,
              })),
            },
            gauges,
            features,
          }).sizes[0]?.made[0]?.median ?? 0;
        expect(ask(values.toReversed())).toBeCloseTo(ask(values), 6);
      },
    ),
    { numRuns: 15, interruptAfterTimeLimit: 2000 },
  );
});

test('a bore is a shaft turned inside out: mirrored readings give mirrored wear', () => {
  const made = (kind: RecoverFeature['kind'], value: number) =>
    recover({
      evidence: { readings: [{ id: 'r', of: 'a.diameter', value, condition: 'worn', gauge: 'pin-gauges' }] },
      gauges,
      features: [{ id: 'a.diameter', title: 'a', kind, role: 'free' }],
    }).sizes[0]?.made[0];
  const [shaft, bore] = [made('outside diameter', 20.3), made('inside diameter', 19.7)];
  expect((shaft?.median ?? 0) > 20.29 && (bore?.median ?? 0) < 19.71).toBe(true);
});

test('two thousand readings, of one specimen or of twenty, are answered and stay finite', () => {
  for (const specimens of [1, 20]) {
    const readings = Array.from({ length: 2000 }, (_, i) => ({
      id: `r${i}`,
      of: 'a.diameter',
      value: 11.97 - 0.0007 * (i % 40),
      condition: conditions[i % 3] ?? ('worn' as const),
      specimen: `s${i % specimens}`,
    }));
    const result = recover({ evidence: { readings }, gauges, features });
    check(result);
    expect(result.sizes[0]?.nominals[0]?.written).toBe('12');
  }
});
