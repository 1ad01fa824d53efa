import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type ArbitraryPart, arbitraryPartIn } from '../../test/arbitrary-part.ts';
import { arbitraryWorkshop } from '../../test/arbitrary-workshop.ts';
import { dangling, nonFinite, notMadeOnce, offTarget, outOfOrder, wrongShapes } from '../../test/route-facts.ts';
import type { WorkshopDocument } from '../lathe/schema.ts';
import { workshopSchema } from '../lathe/schema.ts';
import { definePart } from '../part/define-part.ts';
import { partSchema } from '../part/schema.ts';
import { planRoute } from './plan-route.ts';
import type { RouteWishes } from './schema.ts';
import { slidePerDivision } from './tables/dial.ts';

const wishes = fc.constantFrom<(RouteWishes | undefined)[]>(
  undefined,
  undefined,
  { firstEndOut: 'left' },
  { firstEndOut: 'right', tailstock: true },
  { stockDiameter: 20, chuck: 'none-such' },
);

function planned({ unit, document }: ArbitraryPart, bench: WorkshopDocument, wished: RouteWishes | undefined) {
  const part = definePart(partSchema(unit).parse(document));
  const workshop = workshopSchema('mm').parse(bench);
  const route = planRoute(part, workshop, wished);
  if (!route) throw new Error('a part with sections has a route');
  return { part, workshop, route };
}

const parts = arbitraryPartIn();

test('any legal part in any workshop: every number is finite, every feature is made once, in order, in a setup that is there, and tables end on the safe side', () => {
  fc.assert(
    fc.property(parts, arbitraryWorkshop(), wishes, (document, bench, wished) => {
      const { part, workshop, route } = planned(document, bench, wished);
      expect(nonFinite(route)).toEqual([]);
      expect(notMadeOnce(part, route)).toEqual([]);
      expect(outOfOrder(route)).toEqual([]);
      expect(dangling(route)).toEqual([]);
      expect(offTarget(route, slidePerDivision(workshop.lathe.dials.crossSlide))).toEqual([]);
    }),
    { numRuns: 600 },
  );
});

test('any legal part: each surface gets its shape exactly once, none is cut into, and the last operation leaves the part', () => {
  fc.assert(
    fc.property(parts, arbitraryWorkshop(), wishes, (document, bench, wished) => {
      // A bar thinner than the part is wished for now and then; a stop says so.
      const { stockDiameter: _bar, ...rest } = wished ?? {};
      const { part, route } = planned(document, bench, rest);
      expect(wrongShapes(part, route)).toEqual([]);
    }),
    { numRuns: 1200 },
  );
});

/** Any order of any of its operations, any of them left out, done in another way, with any cutter, in any time. */
const otherwise = fc.record({
  order: fc.array(fc.nat(), { maxLength: 8 }),
  changes: fc.array(
    fc.record({
      operation: fc.nat(),
      skip: fc.option(fc.constant(true as const), { nil: undefined }),
      instead: fc.option(fc.constant('done elsewhere'), { nil: undefined }),
      minutes: fc.option(fc.constantFrom(0.1, 12, 9000), { nil: undefined }),
      cutter: fc.option(fc.constantFrom('rough', 'finish', 'bar-6', 'groove-2', 'no-such'), { nil: undefined }),
    }),
    { maxLength: 5 },
  ),
});

test('whatever a person wants otherwise, every operation stands there once, as wished, and its time is compared', () => {
  fc.assert(
    fc.property(parts, arbitraryWorkshop(), otherwise, (document, bench, wanted) => {
      const { part, workshop, route } = planned(document, bench, undefined);
      const ids = route.operations.map((o) => o.id);
      const id = (pick: number) => ids[pick % (ids.length + 1)] ?? 'no-such-operation';
      const wished: RouteWishes = {
        order: [...new Set(wanted.order.map(id))],
        changes: wanted.changes.map((c) => ({ ...c, operation: id(c.operation) })),
      };
      const other = planRoute(part, workshop, wished);
      if (!other) throw new Error('a part with sections has a route');
      expect(other.operations.map((o) => o.id).toSorted()).toEqual(ids.toSorted());
      expect(nonFinite(other)).toEqual([]);
      expect(dangling(other)).toEqual([]);
      for (const setup of other.setups) {
        const own = other.operations.filter((o) => o.setup === setup.id).map((o) => o.id);
        const named = (wished.order ?? []).filter((o) => own.includes(o));
        expect(own.filter((o) => named.includes(o))).toEqual(named);
      }
      for (const o of other.operations) {
        const change = wished.changes?.findLast((c) => c.operation === o.id);
        if (change?.skip) expect(o.time.high).toBe(0);
        else if (change?.minutes !== undefined) expect(o.time.likely).toBe(60 * change.minutes);
      }
      if ((wished.order?.length ?? 0) + (wished.changes?.length ?? 0) > 0)
        expect(other.compared?.planner.likely).toBeCloseTo(route.time.likely, 6);
    }),
    { numRuns: 120 },
  );
});

test('every time is above nought, low under likely under high, and the whole is no less than its operations', () => {
  fc.assert(
    fc.property(parts, arbitraryWorkshop(), (document, bench) => {
      const { route } = planned(document, bench, undefined);
      for (const { time } of [...route.operations, route]) {
        expect(time.low).toBeGreaterThan(0);
        expect(time.low).toBeLessThan(time.likely);
        expect(time.likely).toBeLessThan(time.high);
      }
      expect(route.time.likely).toBeGreaterThan(route.operations.reduce((sum, o) => sum + o.time.likely, 0));
    }),
    { numRuns: 100 },
  );
});

test('parts of which any size is still missing are planned as far as they go', () => {
  fc.assert(
    fc.property(parts, fc.nat(), ({ unit, document }, pick) => {
      const sections = document.outside.map((s, i) => {
        if (i !== pick % document.outside.length || s.kind !== 'cylinder') return s;
        const { diameter: _diameter, ...rest } = s;
        return rest;
      });
      const part = definePart(partSchema(unit).parse({ ...document, outside: sections }));
      const workshop = workshopSchema('mm').parse(fc.sample(arbitraryWorkshop(), { numRuns: 1, seed: pick })[0]);
      expect(nonFinite(planRoute(part, workshop, undefined))).toEqual([]);
    }),
    { numRuns: 150 },
  );
});
