import { describe, expect, test } from 'vitest';
import { fullWorkshop } from '../../test/arbitrary-workshop.ts';
import { clampedWork, workSide } from '../lathe/chain.ts';
import { knownLathe } from '../lathe/judge.ts';
import { type WorkshopDocument, workshopSchema } from '../lathe/schema.ts';
import { definePart } from '../part/define-part.ts';
import { type PartDocument, partSchema } from '../part/schema.ts';
import { centreAsGrip } from './held-beam.ts';
import { giveOver } from './hold.ts';
import { planRoute } from './plan-route.ts';
import type { RouteResult } from './route-result.ts';
import type { RouteWishes } from './schema.ts';
import { finishedWork } from './workpiece.ts';

function plan(
  outside: PartDocument['outside'],
  more: Partial<PartDocument> = {},
  wishes?: RouteWishes,
  lathe: Partial<WorkshopDocument['lathe']> = {},
) {
  const part = definePart(partSchema('mm').parse({ name: 'part', material: 'C45', outside, ...more }));
  const bench = { ...fullWorkshop, lathe: { ...fullWorkshop.lathe, ...lathe } };
  const route = planRoute(part, workshopSchema('mm').parse(bench), wishes);
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

const shaft = (side: string | number, ends: readonly [number, number], collar = 20): PartDocument['outside'] => [
  { kind: 'cylinder', id: 'left', diameter: side, length: ends[0] },
  { kind: 'cylinder', id: 'collar', diameter: collar, length: 10 },
  { kind: 'cylinder', id: 'right', diameter: side, length: ends[1] },
];
const middleValues = () => knownLathe(workshopSchema('mm').parse(fullWorkshop)).middle;
const kinds = (route: RouteResult, setup: string) =>
  route.operations.filter((o) => o.setup === setup).map((o) => o.kind);

describe('between centres, common practice', () => {
  test('a slender shaft with close seats on both sides is turned end for end between its centres', () => {
    const route = plan(shaft('16 h7', [50, 110]));
    expect(route.setups.map((s) => s.held)).toEqual([
      'in the chuck',
      'in the chuck',
      'between centres',
      'between centres',
    ]);
    // Both ends faced and centred first, in the chuck; roughed before anything is finished, where the dog would slip or mark.
    expect(kinds(route, 'setup-1')).toEqual(['face', 'centre']);
    expect(kinds(route, 'setup-2')).toEqual(['face', 'centre', 'rough turn']);
    expect(kinds(route, 'setup-3')).toEqual(['rough turn', 'rough turn', 'finish turn', 'finish turn']);
    expect(kinds(route, 'setup-4')).toEqual(['finish turn']);
    const [first, second] = route.setups.slice(2);
    expect(first?.endOut).not.toBe(second?.endOut);
    expect(second?.grip).toMatchObject({ on: 'right', protected: true, with: 'thin sheet' });
    const laidOut = route.needed.join('; ');
    for (const needed of ['driving plate', 'dog for Ø16.6', 'centre for the spindle nose', 'live centre'])
      expect(laidOut).toContain(needed);
    expect(route.setups.flatMap((s) => s.cautions).join(' ')).toContain('by hand');
  });

  test.each<[string, PartDocument['outside']]>([
    ['short and stiff, even with close seats on both sides', shaft('16 h7', [12, 30], 24)],
    ['slender, with nothing close on it', shaft(16, [50, 110])],
    ['slender on one side only', pin],
  ])('the chuck is better where the work is %s', (_, outside) => {
    const route = plan(outside);
    expect(new Set(route.setups.map((s) => s.held))).toEqual(new Set(['in the chuck']));
    expect(route.holdings.some((h) => h.how.includes('between centres'))).toBe(true);
  });

  test.each<[string, PartDocument['outside'], Partial<PartDocument>, Partial<WorkshopDocument['lathe']>]>([
    [
      'with a hole in an end',
      shaft('16 h7', [50, 110]),
      { inside: { right: [{ kind: 'drilled', id: 'hole', diameter: 5, depth: 12 }] } },
      {},
    ],
    [
      'pointed at an end',
      [...(shaft('16 h7', [50, 110]) ?? []), { kind: 'cone', id: 'tip', startDiameter: 16, endDiameter: 4, length: 8 }],
      {},
      {},
    ],
    [
      'too thin at an end for a centre',
      [...(shaft('16 h7', [50, 110]) ?? []), { kind: 'cylinder', id: 'tip', diameter: 3, length: 9 }],
      {},
      {},
    ],
    ['whose ends are too short for the dog', shaft('16 h7', [7, 6]), {}, {}],
    [
      'of one thickness, with no place for the dog',
      [{ kind: 'cylinder', id: 'rod', diameter: '12 h7', length: 120 }],
      {},
      {},
    ],
    ['on a lathe without a centre', shaft('16 h7', [50, 110]), {}, { tailstock: { centre: 'none', travel: 50 } }],
    ['longer than the lathe', shaft('16 h7', [200, 210]), {}, {}],
  ])('it is not offered for a part %s', (_, outside, more, lathe) => {
    const route = plan(outside, more, { hold: 'between centres' }, lathe);
    expect(route.holdings.some((h) => h.how.includes('between centres'))).toBe(false);
    const said = route.findings.find((f) => f.id === 'route.not-held-as-wished');
    expect(said?.says).toContain('between centres');
  });

  test('work on centres gives more in its middle than in the jaws with a centre, and as a beam on two points', () => {
    // Roark table 8.1: a force in the middle of a beam on two points bends it by L³/48EI, built in at one end 7L³/768EI.
    const part = definePart(
      partSchema('mm').parse({
        name: 'rod',
        material: 'C45',
        outside: [{ kind: 'cylinder', id: 'rod', diameter: 10, length: 200 }],
      }),
    );
    const work = finishedWork(part.outline);
    const own = (held: 'in the chuck' | 'between centres') =>
      giveOver(part, work, { jaw: 0, setup: { endOut: 'right', held, tailstock: true } }, 99.999, 100.001);
    const modulus = part.material?.youngsModulus ?? 0;
    const bends = 200 ** 3 / (modulus * (Math.PI / 64) * 10 ** 4);
    expect(own('between centres') / (bends / 48)).toBeCloseTo(1, 1);
    expect(own('in the chuck') / ((7 * bends) / 768)).toBeCloseTo(1, 1);
  });

  test('on the lathe it gives as a beam on two springs, the centres', () => {
    // Push in the middle: L³/48EI, and a quarter of what each end gives; the spindle's end has the spindle behind its centre.
    const values = middleValues();
    const work = {
      sections: [{ from: 0, to: 200, outerDiameter: 16 }],
      youngsModulus: 206_000,
      poissonRatio: 0.3,
      density: 7.85e-6,
      gripLength: centreAsGrip,
      centreAt: 200,
    };
    const [gives] = workSide(values, work, clampedWork(work, [100]));
    const spindleEnd = 1 / (1000 * values.spindleRadial) + 1 / (1000 * values.grip * centreAsGrip);
    const own = 200 ** 3 / (48 * work.youngsModulus * (Math.PI / 64) * 16 ** 4);
    const simple = own + (spindleEnd + 1 / (1000 * values.tailstock)) / 4;
    expect((gives ?? 0) / simple).toBeGreaterThan(0.98);
    expect((gives ?? 0) / simple).toBeLessThan(1.02);
  });
});

describe('on a mandrel, common practice', () => {
  const bored = {
    inside: { left: [{ kind: 'bored' as const, id: 'bore', diameter: '16 H7', depth: 'through' as const }] },
  };
  const sleeve: Parameters<typeof plan> = [[{ kind: 'cylinder', id: 'body', diameter: '24 h7', length: 80 }], bored];

  test('a long sleeve is roughed and bored first, then all of its outside is finished on the mandrel, which the tailstock carries', () => {
    const route = plan(...sleeve);
    expect(kinds(route, 'setup-1')).not.toContain('finish turn');
    for (const kind of ['rough turn', 'bore']) expect(kinds(route, 'setup-1')).toContain(kind);
    expect(kinds(route, 'setup-2')).toEqual(['face', 'finish turn']);
    const [, second] = route.setups;
    expect(second).toMatchObject({ held: 'on a mandrel', tailstock: true, gripNeeded: undefined });
    expect(second?.drive?.asked).toBeLessThan(second?.drive?.holds ?? 0);
    expect(route.needed.join('; ')).toContain('bar to turn a mandrel of Ø16 mm');
  });

  test('a bush with a flange between two close sides may go on a mandrel, and truth with the bore counts for it', () => {
    const flanged: PartDocument['outside'] = [
      { kind: 'cylinder', id: 'a', diameter: '30 h7', length: 24 },
      { kind: 'cylinder', id: 'flange', diameter: 40, length: 6 },
      { kind: 'cylinder', id: 'b', diameter: '30 h7', length: 20 },
    ];
    const said = (how: RegExp, route: RouteResult) => route.holdings.find((h) => how.test(h.how))?.why.join(' ') ?? '';
    const route = plan(flanged, bored);
    expect(said(/^on a mandrel/, route)).not.toContain('different setups');
    expect(said(/^on the a/, route)).toContain('different setups: b');
    const wished = plan(flanged, bored, { hold: 'on a mandrel' });
    expect(wished.setups[1]?.held).toBe('on a mandrel');
    expect(kinds(wished, 'setup-2')).toEqual(['face', 'rough turn', 'finish turn']);
    expect(wished.findings.map((f) => f.id)).not.toContain('route.not-held-as-wished');
  });

  test('what bends is the mandrel, whatever sits on it', () => {
    // Roark table 8.1: built in at one end, pushed at the other: L³/3EI; steel, 200 GPa.
    const outside: PartDocument['outside'] = [{ kind: 'cylinder', id: 'body', diameter: 30, length: 60 }];
    const part = definePart(partSchema('mm').parse({ name: 'bush', material: 'CuSn8', outside, ...bored }));
    const setup = {
      endOut: 'left',
      held: 'on a mandrel',
      tailstock: false,
      mandrel: { diameter: 8, length: 65 },
    } as const;
    const give = giveOver(part, finishedWork(part.outline), { jaw: 66, setup }, 0, 10);
    expect(give / (65 ** 3 / (3 * 200_000 * (Math.PI / 64) * 8 ** 4))).toBeCloseTo(1, 1);
  });

  test('where the fit may slip under the hardest cut, that is said', () => {
    const inside = { left: [{ kind: 'bored' as const, id: 'bore', diameter: 6, depth: 'through' as const }] };
    const route = plan(
      [{ kind: 'cylinder', id: 'wheel', diameter: 60, length: 7 }],
      { inside },
      { hold: 'on a mandrel', firstEndOut: 'left' },
    );
    const [, second] = route.setups;
    const slips = (second?.drive?.asked ?? 0) > (second?.drive?.holds ?? 0);
    expect(slips).toBe(true);
    expect(route.findings.filter((f) => f.id === 'route.drive-slips').map((f) => f.at)).toEqual(['setup-2']);
  });
});

describe('a wish for a way to hold the work', () => {
  test('every way that was weighed can be wished for, and then it is the one taken', () => {
    const bush = plan([{ kind: 'cylinder', id: 'body', diameter: '30 h7', length: 24 }], {
      inside: { left: [{ kind: 'bored', id: 'bore', diameter: '20 H7', depth: 'through' }] },
    });
    expect(bush.holdings.length).toBeGreaterThan(4);
    for (const { how, wish, setup } of bush.holdings) {
      const route = plan(
        [{ kind: 'cylinder', id: 'body', diameter: '30 h7', length: 24 }],
        { inside: { left: [{ kind: 'bored', id: 'bore', diameter: '20 H7', depth: 'through' }] } },
        wish,
      );
      expect(route.holdings.find((h) => h.setup === setup && h.taken)?.how).toBe(how);
      expect(route.findings.map((f) => f.id)).not.toContain('route.not-held-as-wished');
    }
    const turnedOnCentres = plan(shaft('16 h7', [50, 110]));
    for (const { how, wish } of turnedOnCentres.holdings.filter((h) => h.setup === 'setup-1'))
      expect(plan(shaft('16 h7', [50, 110]), {}, wish).holdings.find((h) => h.taken)?.how).toBe(how);
  });

  test('the section to grip can be wished for; one that cannot be gripped is said', () => {
    expect(plan(pin, {}, { holdOn: 'head' }).setups[1]?.grip.on).toBe('head');
    const route = plan(pin, {}, { holdOn: 'nowhere' });
    expect(route.findings.find((f) => f.id === 'route.not-held-as-wished')?.says).toContain('on nowhere');
  });
});
