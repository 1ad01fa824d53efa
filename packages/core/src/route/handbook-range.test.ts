/** What the route chooses against the printed ranges of speed and feed: ten materials, two cutter materials, a strong lathe and a light one. */
import { describe, expect, test } from 'vitest';
import { fullWorkshop } from '../../test/arbitrary-workshop.ts';
import { countOutside, referenceRows } from '../../test/reference.ts';
import { type WorkshopDocument, workshopSchema } from '../lathe/schema.ts';
import { definePart } from '../part/define-part.ts';
import { partSchema } from '../part/schema.ts';
import { planRoute } from './plan-route.ts';
import type { Operation } from './route-result.ts';

/** Materials by the names of the workshop, and the rows of the handbook tables that are theirs. */
const materials: readonly (readonly [name: string, printed: RegExp])[] = [
  ['303', /\b303\b|stainless/],
  ['304', /\b304\b|stainless/],
  ['316', /\b316\b|stainless/],
  ['C45', /\bC45\b|medium carbon|1045|mild, alloy/],
  ['42CrMo4', /4140|42CrMo4|^alloy steel$|mild, alloy/],
  ['CuZn39Pb3', /brass|CuZn39Pb3/],
  ['CuSn8', /bronze|CuSn8/],
  ['GJL-250', /cast iron|GJL/],
  ['EN AW-6082', /aluminium|6082/],
  ['416', /\b416\b|stainless/],
];

const cutters = ['high-speed steel', 'carbide'] as const;
type CutterMaterial = (typeof cutters)[number];

/** An invented engine lathe: strong, stepless, feeds by the third of a decade, pushed and found stiff everywhere. */
const strong: WorkshopDocument['lathe'] = {
  ...fullWorkshop.lathe,
  name: 'invented strong lathe',
  swing: 500,
  betweenCentres: 1000,
  speeds: { kind: 'range', from: 30, to: 3000 },
  drive: { power: 11_000, efficiency: 0.8, behaviour: 'constant power' },
  feeds: [0.05, 0.063, 0.08, 0.1, 0.125, 0.16, 0.2, 0.25, 0.315, 0.4, 0.5],
  tests: {
    bearings: 'taper roller',
    shank: 25,
    pushes: (['tool edge', 'top slide', 'cross slide', 'saddle', 'spindle nose'] as const).map((at) => ({
      id: at.replace(' ', '-'),
      at,
      readings: [200, 600, 1000, 2000].map((force) => ({ force, up: force / 400, down: force / 400 })),
    })),
  },
};

function turned(material: string, cutter: CutterMaterial, lathe: WorkshopDocument['lathe'], diameter: number) {
  const part = definePart(
    partSchema('mm').parse({
      name: 'bar',
      material,
      outside: [{ kind: 'cylinder', id: 'bar', diameter: `${diameter} h9`, length: diameter }],
    }),
  );
  const own = fullWorkshop.cutters.map((c) => ({ ...c, material: cutter }));
  const route = planRoute(part, workshopSchema('mm').parse({ ...fullWorkshop, lathe, cutters: own }), undefined);
  return route?.operations.filter((o) => o.kind === 'rough turn' || o.kind === 'finish turn') ?? [];
}

const printed = referenceRows('cutting', 'speeds-feeds').filter((r) => r.operation?.startsWith('turning'));

/** Lowest and highest of a printed column for a kind of turning, a material and a cutter. */
function range(column: 'vc' | 'f', o: Operation, material: RegExp, cutter: CutterMaterial) {
  const unit = column === 'vc' ? 'm_per_min' : 'mm_per_rev';
  const work = o.kind === 'rough turn' ? /^turning( rough.*)?$/ : /^turning( finish.*)?$/;
  const tool = cutter === 'carbide' ? /carbide|coated|^any$/ : /HSS|high-speed|^any$/;
  const rows = printed.filter(
    (r) =>
      Number(r[`${column}_high_${unit}`]) > 0 &&
      work.test(r.operation ?? '') &&
      tool.test(r.tool ?? '') &&
      (r.material === 'any' || material.test(r.material ?? '')),
  );
  expect(rows.length).toBeGreaterThan(0);
  return {
    low: Math.min(...rows.map((r) => Number(r[`${column}_low_${unit}`]))),
    high: Math.max(...rows.map((r) => Number(r[`${column}_high_${unit}`]))),
  };
}

const lathes = [
  ['strong', strong, 40],
  ['light', fullWorkshop.lathe, 20],
] as const;

describe.each(lathes)('on a %s lathe', (_, lathe, diameter) => {
  describe.each(cutters)('with %s', (cutter) => {
    test.for(materials)('%s', ([name, rows], { task }) => {
      const operations = turned(name, cutter, lathe, diameter);
      expect(operations.map((o) => o.kind)).toEqual(['rough turn', 'finish turn']);
      for (const o of operations) {
        const why = o.why.join(' ');
        if (!o.cut) throw new Error(`${o.title} has no cut`);
        const surface = (Math.PI * diameter * o.cut.speed) / 1000;
        const speed = range('vc', o, rows, cutter);
        expect(surface).toBeLessThanOrEqual(speed.high);
        // Slower only where the lathe asks for it, and says so: it would sing, be too weak, or has no step between.
        if (surface < speed.low)
          expect(why).toMatch(/rpm would (sing|take)|faster speed is more than published|no cut keeps/);
        const feed = range('f', o, rows, cutter);
        expect(o.cut.feed).toBeLessThanOrEqual(feed.high);
        if (o.cut.feed < feed.low)
          expect(why).toMatch(
            /A feed of [\d.]+ mm a turn would (give way|sing|take|be [\d.]+ times)|no larger feed|no cut keeps/,
          );
        countOutside(task, 2);
      }
    });
  });
});

test('a finishing feed with no roughness asked for stays within what the nose bears', () => {
  for (const cutter of cutters)
    for (const o of turned('EN AW-6082', cutter, strong, 40)) expect(o.cut?.feed).toBeLessThanOrEqual(0.2);
});
