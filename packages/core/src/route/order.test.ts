import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cheapestOrder, inOrder, precedenceOf } from './order.ts';
import { costOfBefore, costOfChange, totalCost } from './order-cost.ts';
import { applies, type Ordered, rules } from './precedence.ts';

const kinds: readonly Ordered['kind'][] = [
  'face',
  'centre',
  'drill',
  'bore',
  'rough turn',
  'finish turn',
  'groove',
  'chamfer',
  'thread',
  'polish',
];

function operation(kind: Ordered['kind'], more: Partial<Ordered> = {}): Ordered {
  const features = more.features ?? ['a'];
  return {
    id: `${kind} ${features}`,
    kind,
    setup: 's',
    diameter: 10,
    atFreeEnd: false,
    working: false,
    ...more,
    features,
  };
}

const few = fc
  .uniqueArray(
    fc.record({
      kind: fc.constantFrom(...kinds),
      feature: fc.constantFrom('a', 'b', 'c'),
      diameter: fc.integer({ min: 6, max: 12 }),
      tool: fc.constantFrom('one', 'two', undefined),
      close: fc.boolean(),
    }),
    { minLength: 1, maxLength: 7, selector: (o) => `${o.kind} ${o.feature}` },
  )
  .map((all) => {
    const size = new Map(all.toReversed().map((o) => [o.feature, o.diameter]));
    return all.map(({ kind, feature, ...rest }) =>
      operation(kind, { ...rest, diameter: size.get(feature) ?? 10, features: [feature] }),
    );
  });

/** Sum over neighbours and pairs, written down once more by the definition. */
function costOf(order: readonly Ordered[]): number {
  let sum = 0;
  for (const [i, b] of order.entries()) {
    if (i > 0) sum += totalCost(costOfChange(order[i - 1], b));
    for (const a of order.slice(0, i)) sum += totalCost(costOfBefore(a, b));
  }
  return sum;
}

function permutations<T>(of: readonly T[]): T[][] {
  if (of.length <= 1) return [[...of]];
  return of.flatMap((first, i) => permutations(of.filter((_, j) => j !== i)).map((rest) => [first, ...rest]));
}

const legal = (order: readonly Ordered[]) =>
  order.every((b, i) => order.slice(i + 1).every((a) => !rules.some((r) => applies(r, a, b))));

test('of few operations the order is as cheap as the cheapest of all legal orders, tried one by one', () => {
  fc.assert(
    fc.property(few, (operations) => {
      const least = Math.min(...permutations(operations).filter(legal).map(costOf));
      const found = inOrder(operations, ['s']).map((d) => d.operation);
      expect(legal(found)).toBe(true);
      expect(costOf(found)).toBeCloseTo(least, 6);
      const { best, cost } = cheapestOrder(operations, precedenceOf(operations, []));
      expect(best).toBe(true);
      expect(cost).toBeCloseTo(least, 6);
    }),
    { numRuns: 60 },
  );
});

test('an order kept narrow says that a better one may be, and is still legal', () => {
  const many = ['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h'].flatMap((f, i) => [
    operation('groove', { features: [f], diameter: 20 - i, tool: `g${i % 3}` }),
    operation('chamfer', { features: [f], diameter: 20 - i, tool: `c${i % 2}` }),
  ]);
  const { order, best } = cheapestOrder(many, precedenceOf(many, []), 20);
  expect(best).toBe(false);
  expect(legal(order.flatMap((i) => many[i] ?? []))).toBe(true);
});

test('cutting two grooves with one cutter saves a change of cutter, and says so', () => {
  const wide = operation('groove', { features: ['a'], tool: 'blade', diameter: 20 });
  const other = operation('groove', { features: ['b'], tool: 'narrow', diameter: 18 });
  const third = operation('groove', { features: ['c'], tool: 'blade', diameter: 16 });
  const done = inOrder([wide, other, third], ['s']);
  const tools = done.map((d) => d.operation.tool);
  expect(tools).not.toEqual(['blade', 'narrow', 'blade']);
  expect(done.flatMap((d) => d.reasons).join(' ')).toContain('saves a change of cutter');
});

test('a wish for an order is followed, the rules it breaks are named, and all others hold', () => {
  const [rough, groove, finish, chamfer, thread] = [
    operation('rough turn'),
    operation('groove'),
    operation('finish turn'),
    operation('chamfer'),
    operation('thread'),
  ] as const;
  const done = inOrder([rough, groove, finish, chamfer, thread], ['s'], [thread.id, finish.id]);
  const ids = done.map((d) => d.operation.id);
  expect(ids.indexOf(thread.id)).toBeLessThan(ids.indexOf(finish.id));
  expect(ids.indexOf(groove.id)).toBeLessThan(ids.indexOf(thread.id));
  const broken = done.flatMap((d) => d.breaks.map((b) => [b.rule, d.operation.id, b.other]));
  expect(broken).toContainEqual(['size-before-thread', thread.id, finish.id]);
  expect(done.find((d) => d.operation === thread)?.reasons).toContain('It stands here as wished.');
});

test('any wish gives every operation once, in the order wished', () => {
  fc.assert(
    fc.property(few, fc.array(fc.nat(20), { maxLength: 5 }), (operations, picks) => {
      const wished = [...new Set(picks.map((p) => operations[p % operations.length]?.id ?? ''))];
      const done = inOrder(operations, ['s'], wished).map((d) => d.operation.id);
      expect(done.toSorted()).toEqual(operations.map((o) => o.id).toSorted());
      expect(done.filter((id) => wished.includes(id))).toEqual(wished);
    }),
    { numRuns: 100 },
  );
});
