import { describe, expect, test } from 'vitest';
import { fullWorkshop } from '../../test/arbitrary-workshop.ts';
import { workshopSchema } from '../lathe/schema.ts';
import { definePart } from '../part/define-part.ts';
import { type PartDocument, partSchema } from '../part/schema.ts';
import { planRoute } from './plan-route.ts';
import type { RouteWishes } from './schema.ts';

function plan(outside: PartDocument['outside'], more: Partial<PartDocument> = {}, wishes?: RouteWishes) {
  const part = definePart(partSchema('mm').parse({ name: 'part', material: 'C45', outside, ...more }));
  const route = planRoute(part, workshopSchema('mm').parse(fullWorkshop), wishes);
  if (!route) throw new Error('no route');
  return route;
}

const pin: PartDocument['outside'] = [
  { kind: 'cylinder', id: 'head', diameter: 20, length: 14 },
  { kind: 'cylinder', id: 'shank', diameter: 8, length: 90 },
];
const bush = (bore: number): Parameters<typeof plan> => [
  [{ kind: 'cylinder', id: 'body', diameter: '30 h7', length: 24 }],
  { inside: { left: [{ kind: 'bored', id: 'bore', diameter: `${bore} H7`, depth: 'through' }] } },
];

describe('ways to hold the work are weighed against each other', () => {
  test('of each setup one is taken, none other is cheaper, and every one says what it costs', () => {
    for (const route of [plan(pin), plan(...bush(26)), plan(...bush(8))]) {
      for (const { id } of route.setups) {
        const own = route.holdings.filter((h) => h.setup === id);
        expect(own.filter((h) => h.taken)).toHaveLength(1);
        const taken = own.find((h) => h.taken)?.cost ?? Number.NaN;
        for (const h of own) {
          expect(h.cost).toBeGreaterThanOrEqual(taken);
          expect(h.why.length).toBeGreaterThan(0);
        }
      }
    }
  });

  test('slender work is held with the tailstock, since without it bends and sings; a wish decides otherwise', () => {
    const route = plan(pin);
    expect(route.setups[0]?.tailstock).toBe(true);
    const alone = route.holdings.find((h) => h.how === 'right end out of the bar');
    expect(alone?.why.join(' ')).toContain('slender');
    expect(plan(pin, {}, { tailstock: false }).setups[0]?.tailstock).toBe(false);
  });

  test('a thin bush is not left to bare jaws, and a mandrel is among the ways', () => {
    const route = plan(...bush(27));
    expect(route.setups[1]?.grip.with).not.toBe('thin sheet');
    expect(route.holdings.some((h) => h.how === 'on a mandrel in the bore')).toBe(true);
    expect(route.findings.map((f) => f.id)).not.toContain('route.wall-squeezed');
  });

  test('a thick bush is held in sheet, and the grip its cuts need is told', () => {
    const route = plan(...bush(8));
    expect(route.setups[1]?.grip.with).toBe('thin sheet');
    // Grip = force × 2.4 / 0.1 × cut over grip: no less than twenty-four times the force where cut and grip are one diameter.
    const forces = route.operations.filter((o) => o.setup === 'setup-1').flatMap((o) => o.cut?.cuttingForce ?? []);
    expect(route.setups[0]?.gripNeeded).toBeGreaterThan(0);
    expect(route.setups[0]?.gripNeeded).toBeLessThan(24 * Math.max(...forces) * 1.01);
  });

  test('close surfaces that come apart in two setups count against a holding', () => {
    const shaft: PartDocument['outside'] = [
      { kind: 'cylinder', id: 'left', diameter: '16 h7', length: 12 },
      { kind: 'cylinder', id: 'collar', diameter: 24, length: 6 },
      { kind: 'cylinder', id: 'right', diameter: '16 h7', length: 30 },
    ];
    const said = plan(shaft).holdings.flatMap((h) => h.why);
    expect(said.join(' ')).toContain('close surfaces are finished in different setups: left');
  });
});
