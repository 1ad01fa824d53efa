/** The same truths as of every route, for parts that are turned between centres or on a mandrel because it is wished. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { arbitraryPartIn } from '../../test/arbitrary-part.ts';
import { arbitraryWorkshop, fullWorkshop } from '../../test/arbitrary-workshop.ts';
import { dangling, nonFinite, notMadeOnce, outOfOrder, wrongShapes } from '../../test/route-facts.ts';
import { workshopSchema } from '../lathe/schema.ts';
import { definePart } from '../part/define-part.ts';
import { type PartDocument, partSchema } from '../part/schema.ts';
import { planRoute } from './plan-route.ts';
import type { RouteWishes } from './schema.ts';
import { waysHeld } from './ways-held.ts';

const steps = fc.array(
  fc.record({
    diameter: fc.integer({ min: 8, max: 30 }),
    length: fc.integer({ min: 4, max: 40 }),
    close: fc.boolean(),
    grooved: fc.boolean(),
  }),
  { minLength: 1, maxLength: 6 },
);

/** Poorly stocked, or with everything. */
const benches = fc.oneof(arbitraryWorkshop(), fc.constant(fullWorkshop));

/** Solid shafts stepped anyhow, and bushes with one bore. */
const turned = fc.record({ steps, bored: fc.boolean() }).map(({ steps: all, bored }): PartDocument => {
  const bore = Math.min(...all.map((s) => s.diameter)) - 3;
  return {
    name: 'part',
    material: 'C45',
    outside: all.map((s, i) => ({
      kind: 'cylinder',
      id: `s${i}`,
      diameter: s.close ? `${s.diameter} h7` : s.diameter,
      length: s.length,
    })),
    grooves: all.flatMap((s, i) =>
      s.grooved && s.length > 12
        ? [{ id: `g${i}`, on: `s${i}`, along: 5, width: 2, floorDiameter: s.diameter - 1, purpose: 'other' as const }]
        : [],
    ),
    ...(bored && bore >= 6
      ? {
          inside: {
            left: [{ kind: 'bored' as const, id: 'bore', diameter: `${bore} H7`, depth: 'through' as const }],
          },
        }
      : {}),
  };
});

const wishes = fc.record(
  {
    hold: fc.constantFrom(...waysHeld),
    firstEndOut: fc.constantFrom<('left' | 'right')[]>('left', 'right'),
    holdOn: fc.option(fc.constantFrom('s0', 's1', 'bore', 'no-such'), { nil: undefined, freq: 1 }),
  },
  { requiredKeys: [] },
);

function checked(document: PartDocument, unit: 'mm' | 'in', bench: unknown, wished: RouteWishes) {
  const part = definePart(partSchema(unit).parse(document));
  const route = planRoute(part, workshopSchema('mm').parse(bench), wished);
  if (!route) throw new Error('a part with sections has a route');
  expect(nonFinite(route)).toEqual([]);
  expect(notMadeOnce(part, route)).toEqual([]);
  expect(outOfOrder(route)).toEqual([]);
  expect(dangling(route)).toEqual([]);
  expect(wrongShapes(part, route)).toEqual([]);
  // Between centres one way settles all setups.
  const weighed = route.setups.some((s) => s.held === 'between centres') ? ['setup-1'] : route.setups.map((s) => s.id);
  for (const id of weighed) expect(route.holdings.filter((h) => h.setup === id && h.taken)).toHaveLength(1);
  return route;
}

test('shafts and bushes held in any way that is wished come out right; what cannot be had is said', () => {
  const seen = new Map<string, number>();
  fc.assert(
    fc.property(turned, benches, wishes, (document, bench, wished) => {
      const route = checked(document, 'mm', bench, wished);
      const held = new Set(route.setups.map((s) => s.held));
      for (const way of held) seen.set(way, (seen.get(way) ?? 0) + 1);
      const missed = route.findings.some((f) => f.id === 'route.not-held-as-wished');
      if (wished.hold === 'between centres' || wished.hold === 'on a mandrel')
        expect(held.has(wished.hold) || missed).toBe(true);
      for (const s of route.setups.filter((setup) => setup.held === 'between centres')) {
        const kinds = route.operations.filter((o) => o.setup === s.id).map((o) => o.kind);
        for (const forbidden of ['face', 'drill', 'bore', 'part off', 'centre']) expect(kinds).not.toContain(forbidden);
        const [from, to] = [Math.min(s.gripFrom, s.gripTo), Math.max(s.gripFrom, s.gripTo)];
        for (const o of route.operations.filter((own) => own.setup === s.id && own.kind !== 'off the lathe'))
          expect(Math.min(o.to, to) - Math.max(o.from, from)).toBeLessThanOrEqual(1e-9);
      }
    }),
    { numRuns: 250 },
  );
  for (const way of waysHeld) expect(seen.get(way) ?? 0).toBeGreaterThan(5);
});

test('so does any legal part', () => {
  fc.assert(
    fc.property(arbitraryPartIn(), arbitraryWorkshop(), wishes, ({ unit, document }, bench, wished) => {
      checked(document, unit, bench, wished);
    }),
    { numRuns: 150 },
  );
});
