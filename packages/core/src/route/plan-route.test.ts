import { describe, expect, test } from 'vitest';
import { fullWorkshop } from '../../test/arbitrary-workshop.ts';
import { type WorkshopDocument, workshopSchema } from '../lathe/schema.ts';
import { definePart } from '../part/define-part.ts';
import { type PartDocument, partSchema } from '../part/schema.ts';
import { planRoute } from './plan-route.ts';
import type { RouteResult } from './route-result.ts';
import type { RouteWishes } from './schema.ts';

const plain: PartDocument = {
  name: 'pin',
  material: '303',
  generalTolerance: 'm',
  outside: [
    { kind: 'cylinder', id: 'head', diameter: 20, length: 12 },
    { kind: 'cylinder', id: 'shank', diameter: '12 h9', length: 30 },
  ],
};

function plan(part: Partial<PartDocument>, bench: Partial<WorkshopDocument> = {}, wishes?: RouteWishes): RouteResult {
  const route = planRoute(
    definePart(partSchema('mm').parse({ ...plain, ...part })),
    workshopSchema('mm').parse({ ...fullWorkshop, ...bench }),
    wishes,
  );
  if (!route) throw new Error('no route');
  return route;
}

const lathe = (more: Partial<WorkshopDocument['lathe']>): Partial<WorkshopDocument> => ({
  lathe: { ...fullWorkshop.lathe, ...more },
});
const stops = (route: RouteResult) => route.findings.filter((f) => f.level === 'stop').map((f) => f.id);
const kinds = (route: RouteResult) => route.operations.map((o) => o.kind);
const find = (route: RouteResult, kind: string) => route.operations.find((o) => o.kind === kind);

test('a pin that the workshop can make has no stop, and every operation with a cutter that turns has a speed', () => {
  const route = plan({});
  expect(stops(route)).toEqual([]);
  for (const o of route.operations) {
    if (['face', 'rough turn', 'finish turn', 'bore', 'groove', 'part off'].includes(o.kind) && o.id !== 'part-off')
      expect(o.cut?.speed).toBeGreaterThan(0);
  }
});

test('an empty part has no route', () => {
  const part = definePart(partSchema('mm').parse({ name: 'nothing', outside: [] }));
  expect(planRoute(part, workshopSchema('mm').parse(fullWorkshop), undefined)).toBeUndefined();
});

describe('what stands in the way is said, with remedies, and the rest is still planned', () => {
  test.each<[string, string, RouteResult]>([
    ['a part longer than the lathe', 'route.too-long', plan({}, lathe({ betweenCentres: 30 }))],
    ['a bar thinner than the part', 'route.bar-too-thin', plan({}, {}, { stockDiameter: 18 })],
    [
      'a part too thick for the chuck',
      'route.chuck-too-small',
      plan(
        {},
        lathe({
          chucks: [{ id: 'c', name: 'small chuck', jaws: 3, kind: 'self-centring', from: 2, to: 15, jawLength: 12 }],
        }),
      ),
    ],
    ['a part that does not swing', 'route.swing', plan({}, lathe({ swing: 15 }))],
    [
      'a part that does not pass over the cross slide',
      'route.swing-over-slide',
      plan({}, lathe({ swingOverSlide: 15 })),
    ],
    [
      'a part thicker than any listed bar',
      'route.no-listed-bar',
      plan({ outside: [{ kind: 'cylinder', id: 'disc', diameter: 240, length: 30 }] }),
    ],
    ['no turning cutter', 'route.no-cutter', plan({}, { cutters: [] })],
    [
      'a groove narrower than any cutter',
      'route.no-cutter',
      plan({ grooves: [{ id: 'g', on: 'shank', along: 10, width: 1.1, floorDiameter: 10, purpose: 'other' }] }),
    ],
    [
      'a groove deeper than the cutter goes',
      'route.no-cutter',
      plan({
        outside: [{ kind: 'cylinder', id: 'shank', diameter: 40, length: 60 }],
        grooves: [{ id: 'g', on: 'shank', along: 20, width: 4, floorDiameter: 12, purpose: 'other' }],
      }),
    ],
    [
      'a thread of an angle that no cutter has',
      'route.no-cutter',
      plan({
        threads: [{ id: 't', on: 'shank', designation: '0 BA' }],
        outside: [
          { kind: 'cylinder', id: 'head', diameter: 10, length: 8 },
          { kind: 'cylinder', id: 'shank', diameter: 6, length: 20 },
        ],
      }),
    ],
    [
      'a thread on a lathe without a leadscrew',
      'route.no-leadscrew',
      plan(
        { threads: [{ id: 't', on: 'shank', designation: 'M12' }] },
        { lathe: (({ leadscrew: _, ...rest }) => rest)(fullWorkshop.lathe) },
      ),
    ],
    [
      'a hole of a size that no drill has',
      'route.no-drill',
      plan({ inside: { left: [{ kind: 'drilled', id: 'hole', diameter: 7.1, depth: 15 }] } }),
    ],
    [
      'a bore and no boring bar',
      'route.no-cutter',
      plan(
        { inside: { left: [{ kind: 'bored', id: 'bore', diameter: '14 H7', depth: 10 }] } },
        { cutters: fullWorkshop.cutters.filter((c) => c.kind !== 'boring') },
      ),
    ],
    [
      'a hole on a lathe without a tailstock',
      'route.no-tailstock',
      plan(
        { inside: { left: [{ kind: 'drilled', id: 'hole', diameter: 6, depth: 15 }] } },
        { lathe: (({ tailstock: _, ...rest }) => rest)(fullWorkshop.lathe) },
      ),
    ],
    [
      'a curve with a waist',
      'route.curve-hidden',
      plan({
        outside: [
          { kind: 'cylinder', id: 'head', diameter: 30, length: 12 },
          { kind: 'arc', id: 'waist', startDiameter: 20, endDiameter: 20, length: 20, radius: 40, bulge: 'inward' },
          { kind: 'cylinder', id: 'end', diameter: 20, length: 10 },
        ],
      }),
    ],
    [
      'a curve behind a thicker collar',
      'route.curve-hidden',
      plan({
        outside: [
          { kind: 'cylinder', id: 'head', diameter: 30, length: 12 },
          { kind: 'arc', id: 'flare', startDiameter: 24, endDiameter: 14, length: 10, radius: 40, bulge: 'outward' },
          { kind: 'cylinder', id: 'collar', diameter: 26, length: 10 },
        ],
      }),
    ],
    [
      'nothing that can be gripped',
      'route.nothing-to-grip',
      plan({ outside: [{ kind: 'cone', id: 'cone', startDiameter: 10, endDiameter: 24, length: 30 }] }),
    ],
    [
      'a cone longer than the top slide travels',
      'route.cone-longer-than-slide',
      plan({
        outside: [
          { kind: 'cylinder', id: 'head', diameter: 30, length: 12 },
          { kind: 'cone', id: 'cone', startDiameter: 28, endDiameter: 20, length: 60 },
        ],
      }),
    ],
  ])('%s: %s', (_, id, route) => {
    const found = route.findings.filter((f) => f.id === id);
    expect(found.map((f) => f.level)).toContain('stop');
    expect(found.every((f) => f.remedies.length > 0)).toBe(true);
    expect(kinds(route)).toContain('face');
    expect(route.setups).toHaveLength(2);
    expect(route.operations.some((o) => o.setup === 'setup-2')).toBe(true);
  });
});

describe('as a turner would do it', () => {
  test('a barrel is roughed to its belly, not to its ends', () => {
    const barrel = {
      kind: 'arc',
      id: 'barrel',
      startDiameter: 20,
      endDiameter: 20,
      length: 30,
      radius: 40,
      bulge: 'outward',
    } as const;
    const route = plan({ outside: [barrel, { kind: 'cylinder', id: 'stub', diameter: 14, length: 20 }] });
    // Sagitta 40 − √(40² − 15²) = 2.92: the belly is 25.84 thick.
    const rough = route.tables.find((t) => t.title.startsWith('Rough the barrel'));
    expect(Number(rough?.rows.at(-1)?.diameter)).toBeGreaterThan(25.84);
  });

  test('a wide bore is opened from the hole the drill really leaves, then finished in light cuts', () => {
    const outside: PartDocument['outside'] = [{ kind: 'cylinder', id: 'body', diameter: 40, length: 50 }];
    const route = plan({ outside, inside: { left: [{ kind: 'bored', id: 'bore', diameter: '24 H7', depth: 30 }] } });
    const [open, finish] = route.tables.filter((t) => t.kind === 'boring');
    expect(open?.notes.join(' ')).toContain('touching at Ø13.000 mm');
    // 0.3 mm under the middle of H7, +21/0 µm, less what the last whole division leaves.
    const left = Number(/touching at Ø([\d.]+)/.exec(finish?.notes.join(' ') ?? '')?.[1]);
    expect(left).toBeLessThanOrEqual(23.7105);
    expect(left).toBeGreaterThan(23.71 - 0.041);
  });

  test('the cone that a drill leaves at a flat floor is to be taken off; a bore right through has none', () => {
    const outside: PartDocument['outside'] = [{ kind: 'cylinder', id: 'body', diameter: 30, length: 40 }];
    const notes = (depth: number) =>
      plan({ outside, inside: { left: [{ kind: 'bored', id: 'bore', diameter: '20 H8', depth }] } })
        .tables.filter((t) => t.kind === 'boring')
        .flatMap((t) => t.notes)
        .filter((n) => n.includes('cone'));
    // The largest drill of the demonstration workshop is 13 mm, with a point of 118°: 6.5/tan 59° = 3.91 mm.
    expect(notes(25)).toEqual([expect.stringContaining('a cone 3.9 mm high')]);
    expect(notes(40)).toEqual([]);
  });

  test('the point of the drill does not pierce the floor of a shallow bore', () => {
    const outside: PartDocument['outside'] = [{ kind: 'cylinder', id: 'body', diameter: 40, length: 50 }];
    const route = plan({ outside, inside: { left: [{ kind: 'bored', id: 'recess', diameter: 14, depth: 3 }] } });
    for (const table of route.tables.filter((t) => t.kind === 'drilling')) {
      expect(Number(table.rows.at(-1)?.depth)).toBeLessThanOrEqual(3 + 1e-9);
    }
    expect(find(route, 'bore')).toBeDefined();
  });

  test('a hole right through is drilled until its whole diameter is through', () => {
    const route = plan({ inside: { left: [{ kind: 'drilled', id: 'way', diameter: 6, depth: 'through' }] } });
    const table = route.tables.find((t) => t.kind === 'drilling');
    // 42 mm, and a point of 118° on 6 mm: 1.8 mm.
    expect(Number(table?.rows.at(-1)?.depth)).toBeGreaterThan(42 + 1.8);
    expect(find(route, 'drill')?.title).toContain('right through');
  });

  test('a size that is papered stops above its upper limit', () => {
    const shank = { kind: 'cylinder', id: 'shank', diameter: '12 h7', length: 30, finish: 0.4 } as const;
    const route = plan({ outside: [{ kind: 'cylinder', id: 'head', diameter: 20, length: 12 }, shank] });
    const finish = route.tables.find((t) => t.title.startsWith('Finish the shank'));
    // h7 at 12 mm: +0 −0.018.
    expect(Number(finish?.rows.at(-1)?.diameter)).toBeGreaterThan(12);
    expect(find(route, 'polish')?.title).toContain('Ra 0.4');
  });

  test('a crown behind the thickest place is shaped when it is the free end, and steps reach all of it', () => {
    const outside: PartDocument['outside'] = [
      { kind: 'cylinder', id: 'shank', diameter: 16, length: 40 },
      { kind: 'cylinder', id: 'head', diameter: 24, length: 10 },
      { kind: 'crown', id: 'crown', diameter: 24, length: 4 },
    ];
    const route = plan({ outside }, {}, { firstEndOut: 'left' });
    const crown = find(route, 'turn curve');
    expect(route.setups.find((s) => s.id === crown?.setup)?.endOut).toBe('right');
    expect(route.findings.map((f) => f.id)).not.toContain('route.curve-hidden');
    const steps = route.tables.find((t) => t.kind === 'curve');
    expect(Number(steps?.rows.at(-1)?.depth)).toBeCloseTo(4, 6);
  });

  test('jaws do not close on a neck with thicker work behind it in the chuck', () => {
    const outside: PartDocument['outside'] = [
      { kind: 'cylinder', id: 'collar', diameter: 16, length: 20 },
      { kind: 'cylinder', id: 'neck', diameter: 9, length: 20 },
      { kind: 'cylinder', id: 'flange', diameter: 30, length: 6 },
      { kind: 'cylinder', id: 'spigot', diameter: 12, length: 40 },
    ];
    for (const firstEndOut of ['left', 'right'] as const) {
      const route = plan({ outside }, {}, { firstEndOut });
      for (const setup of route.setups) expect(setup.grip.on).not.toBe('neck');
    }
  });

  test('a part held on its thread when turned round is told so', () => {
    const outside: PartDocument['outside'] = [
      { kind: 'cone', id: 'nose', startDiameter: 10, endDiameter: 24, length: 10 },
      { kind: 'cylinder', id: 'screw', diameter: 24, length: 30 },
    ];
    const route = plan(
      { outside, threads: [{ id: 't', on: 'screw', designation: 'M24x1.5' }] },
      {},
      { firstEndOut: 'right' },
    );
    expect(route.setups[1]?.grip.on).toBe('screw');
    expect(route.findings.map((f) => f.id)).toContain('route.held-on-thread');
  });

  test('the groove for the saw is cut before sawing, and without a parting cutter all of it is sawn', () => {
    const own = (route: RouteResult) => route.operations.filter((o) => o.kind === 'part off').map((o) => o.id);
    expect(own(plan({}))).toEqual(['saw-groove', 'part-off']);
    expect(own(plan({}, { cutters: fullWorkshop.cutters.filter((c) => c.kind !== 'parting') }))).toEqual(['part-off']);
  });

  test('the tailstock is drawn back before cutting off', () => {
    const slender: PartDocument['outside'] = [
      { kind: 'cylinder', id: 'head', diameter: 20, length: 10 },
      { kind: 'cylinder', id: 'shank', diameter: 8, length: 90 },
    ];
    const route = plan({ outside: slender });
    expect(route.setups[0]?.tailstock).toBe(true);
    expect(find(route, 'part off')?.title).toContain('Draw back the tailstock');
  });

  test('an inside thread is bored to its crest, and chamfers and edges carry their sizes', () => {
    const outside: PartDocument['outside'] = [
      { kind: 'cylinder', id: 'body', diameter: 36, length: 40, endEdge: { kind: 'chamfer', size: 1.5, angle: 30 } },
    ];
    const route = plan({
      outside,
      inside: { left: [{ kind: 'bored', id: 'bore', depth: 20, startEdge: { kind: 'chamfer', size: 0.8 } }] },
      threads: [{ id: 't', on: 'bore', designation: 'M20x1.5' }],
    });
    // ISO 965: the minor diameter of M20x1.5-6H lies between 18.376 and 18.676.
    const boring = route.tables.filter((t) => t.kind === 'boring').at(-1);
    expect(Number(boring?.rows.at(-1)?.diameter)).toBeGreaterThan(18.376);
    expect(Number(boring?.rows.at(-1)?.diameter)).toBeLessThan(18.676);
    const titles = route.operations.filter((o) => o.kind === 'chamfer').map((o) => o.title);
    expect(titles.join('; ')).toContain('1.5 mm × 30°');
    expect(titles.join('; ')).toContain('0.8 mm × 45°');
    expect(kinds(route).indexOf('bore')).toBeLessThan(kinds(route).indexOf('thread'));
  });

  test('a knurl is not turned off again', () => {
    const route = plan({ notTurned: [{ id: 'k', kind: 'knurl', on: 'head', pattern: 'diamond' }] });
    const at = (kind: string, feature: string) =>
      route.operations.findIndex((o) => o.kind === kind && o.features.includes(feature));
    expect(at('knurl', 'head')).toBeGreaterThan(at('finish turn', 'head'));
  });
});

describe('limits closer than the cross slide serves', () => {
  test('are met by the top slide: 12 h9, 0.043 mm, on divisions of 0.02 mm on the radius', () => {
    const route = plan({});
    const finish = route.operations.find((o) => o.kind === 'finish turn' && o.features.includes('shank'));
    const last = route.tables.find((t) => t.id === `${finish?.id}-fine-table`);
    expect(finish?.tables).toContain(last?.id);
    expect(finish?.why.join(' ')).toContain('top slide set over 5° 44′');
    for (const row of last?.rows ?? []) expect(Math.abs(Number(row.diameter) - 11.9785)).toBeLessThan(0.005);
  });

  test('want no top slide on a dial of 0.01 mm', () => {
    const { dials } = fullWorkshop.lathe;
    const fine = { ...dials, crossSlide: { division: 0.01, perTurn: 1, reads: 'radius' as const } };
    expect(plan({}, lathe({ dials: fine })).tables.filter((t) => t.id.endsWith('fine-table'))).toEqual([]);
  });

  test('are said to be out of reach where there is no top slide', () => {
    const { topSlide: _, ...dials } = fullWorkshop.lathe.dials;
    expect(plan({}, lathe({ dials })).findings.map((f) => f.id)).toContain('route.dial-too-coarse');
  });
});

test('a thread names its change gears, and one that no wheels give is stopped', () => {
  const threads = [{ id: 't', on: 'shank', designation: 'M12' }];
  const geared = plan({ threads }, lathe({ changeGears: [20, 35, 40, 60, 70] }));
  expect(geared.needed.join(' ')).toContain('change gears 70 : 60 for a pitch of 1.75 mm');
  expect(geared.tables.find((t) => t.kind === 'thread')?.notes.join(' ')).toContain('70 turns with the spindle');
  expect(stops(plan({ threads }, lathe({ changeGears: [20, 80] })))).toContain('route.no-gear-train');
});

test('every operation with a cut says what keeps it from being quicker, or what it asks of drive and work', () => {
  const grooves = [{ id: 'g', on: 'shank', along: 10, width: 3, floorDiameter: 10, purpose: 'other' as const }];
  const cut = plan({ grooves }).operations.filter((o) => o.cut);
  expect(new Set(cut.map((o) => o.kind)).size).toBeGreaterThanOrEqual(5);
  for (const o of cut) expect(o.why.join(' ')).toMatch(/the quickest of|no cut keeps every limit|% of the drive/);
});

describe('a person may want it otherwise', () => {
  const ids = (route: RouteResult) => route.operations.map((o) => o.id);
  const findings = (route: RouteResult, id: string) => route.findings.filter((f) => f.id === id);

  test('operations keep their names when the bar, the lathe or another feature changes', () => {
    const other = plan({}, lathe({ betweenCentres: 30 }), { stockDiameter: 30 });
    expect(ids(other)).toEqual(ids(plan({})));
    const longer = plan({
      outside: [...(plain.outside ?? []), { kind: 'cylinder', id: 'tip', diameter: 6, length: 5 }],
    });
    for (const id of ['face-right', 'rough-turn-shank', 'finish-turn-shank', 'part-off'])
      expect(ids(longer)).toContain(id);
  });

  test('an order against the rules is followed, and the rule it breaks is said with its reason', () => {
    const route = plan({}, {}, { order: ['finish-turn-head', 'rough-turn-shank'] });
    expect(ids(route).indexOf('finish-turn-head')).toBeLessThan(ids(route).indexOf('rough-turn-shank'));
    const [said] = findings(route, 'route.out-of-order');
    expect(said?.at).toBe('finish-turn-head');
    expect(said?.says).toContain('All heavy cuts come before any finishing cut');
    const wish = route.operations.find((o) => o.id === 'finish-turn-head')?.wish;
    expect(wish?.breaks.map((b) => b.other)).toContain('rough-turn-shank');
    expect(route.compared?.planner.likely).toBeGreaterThan(0);
  });

  test('a rough cut left out takes no time, and the finishing cut meets the bar', () => {
    const route = plan({}, {}, { changes: [{ operation: 'rough-turn-shank', skip: true }] });
    expect(route.operations.find((o) => o.id === 'rough-turn-shank')?.time.high).toBe(0);
    expect(findings(route, 'route.left-out')[0]?.says).toContain('it stays Ø');
    const passes = (r: RouteResult) => r.operations.find((o) => o.id === 'finish-turn-shank')?.cut?.passes ?? 0;
    expect(passes(route)).toBeGreaterThan(passes(plan({})));
  });

  test('time and way are taken as said, another cutter is compared, an unknown operation is a note', () => {
    const boring = fullWorkshop.cutters.find((c) => c.kind === 'boring')?.id ?? '';
    const route = plan(
      {},
      {},
      {
        changes: [
          { operation: 'rough-turn-head', minutes: 7 },
          { operation: 'face-left', instead: 'faced on another lathe' },
          { operation: 'finish-turn-shank', cutter: boring },
          { operation: 'finish-turn-tail', skip: true },
        ],
      },
    );
    expect(route.operations.find((o) => o.id === 'rough-turn-head')?.time.likely).toBe(420);
    expect(route.operations.find((o) => o.id === 'face-left')?.cut).toBeUndefined();
    expect(findings(route, 'route.cutter-does-not-serve').map((f) => f.at)).toEqual(['finish-turn-shank']);
    expect(findings(route, 'route.unknown-operation').map((f) => f.level)).toEqual(['note']);
    expect(stops(route)).toEqual([]);
  });
});

test('a hole wider than the end it opens in is not planned, and the rest of the route still is', () => {
  const inside = { right: [{ kind: 'bored' as const, id: 'bore', diameter: 16, depth: 8 }] };
  const route = plan({ inside });
  expect(route.operations.filter((o) => o.features.includes('bore'))).toEqual([]);
  expect(kinds(route)).toContain('finish turn');
});

test('a time learned tells the time planned before anything was learned, and from how many', () => {
  const taken = [
    ...Array.from({ length: 4 }, () => ({ kind: 'face' as const, planned: 10, taken: 20 })),
    { kind: 'drill' as const, planned: 10, taken: 15, of: 'drill-hole' },
  ];
  const [before, after] = [plan({}), plan({}, {}, { taken })];
  expect([before.learnedFrom, after.learnedFrom]).toEqual([0, 5]);
  for (const [i, o] of after.operations.entries()) {
    expect(o.planned).toBeCloseTo(before.operations[i]?.time.likely ?? Number.NaN, 9);
    expect(before.operations[i]?.planned).toBe(o.planned);
    expect(o.learnedFrom).toBe(o.kind === 'face' ? 4 : 0);
    if (o.kind !== 'face') expect(o.why.join(' ')).toContain('None of this kind is timed yet; by the 5 of other kinds');
  }
  // What was learned is not learned again: the plan is what times are held against.
  const again = plan(
    {},
    {},
    { taken: after.operations.map((o) => ({ kind: o.kind, planned: o.planned / 60, taken: o.planned / 60 })) },
  );
  for (const o of again.operations) expect(o.time.likely).toBeCloseTo(o.planned, 9);
});

test('times follow those that were taken before', () => {
  const taken = Array.from({ length: 20 }, () => ({ kind: 'face' as const, planned: 10, taken: 20 }));
  const [before, after] = [plan({}), plan({}, {}, { taken })].map((r) => find(r, 'face'));
  expect((after?.time.likely ?? 0) / (before?.time.likely ?? 1)).toBeGreaterThan(1.6);
  expect(after?.why.join(' ')).toContain('Timed 20 times before');
});

test('polishing names its papers, and the last one ends at the size wanted', () => {
  const shank = { kind: 'cylinder', id: 'shank', diameter: '12 h7', length: 30, finish: 0.4 } as const;
  const route = plan({ outside: [{ kind: 'cylinder', id: 'head', diameter: 20, length: 12 }, shank] });
  const table = route.tables.find((t) => t.kind === 'polish');
  // h7 at 12 mm: +0 −0.018, its middle 11.991.
  expect(Number(table?.rows.at(-1)?.until)).toBeCloseTo(11.991, 3);
  const grains = table?.rows.map((r) => Number(r.grain)) ?? [];
  expect(grains).toEqual(grains.toSorted((a, b) => b - a));
  expect(grains.length).toBeGreaterThan(1);
});

test('an inside cutter that is entered as one is taken for inside work without a caution, and not for outside work', () => {
  const outside: PartDocument['outside'] = [{ kind: 'cylinder', id: 'body', diameter: 40, length: 50 }];
  const inside = { left: [{ kind: 'bored' as const, id: 'bore', diameter: 24, depth: 30 }] };
  const grooves = [{ id: 'g', on: 'bore', along: 10, width: 3, floorDiameter: 27, purpose: 'other' as const }];
  const inner = { ...fullWorkshop.cutters.find((c) => c.kind === 'grooving'), id: 'inner', inside: true };
  const cutters = [...fullWorkshop.cutters, inner] as WorkshopDocument['cutters'];
  const route = plan({ outside, inside, grooves }, { cutters });
  expect(find(route, 'groove')?.cutterId).toBe('inner');
  expect(route.findings.map((f) => f.id)).not.toContain('route.inside-cutter');
  expect(plan({ outside, inside, grooves }).findings.map((f) => f.id)).toContain('route.inside-cutter');
});
