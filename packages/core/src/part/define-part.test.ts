import fc from 'fast-check';
import { expect, test } from 'vitest';
import { arbitraryPart, arbitraryPartIn } from '../../test/arbitrary-part.ts';
import type { LengthUnit } from '../units/length.ts';
import { definePart } from './define-part.ts';
import { meetings } from './meet.ts';
import { closedLoop, innerRadiusAt, radiusAt } from './outline-queries.ts';
import type { Segment } from './outline-types.ts';
import type { PartResult } from './part-result.ts';
import { type PartDocument, partSchema } from './schema.ts';
import { bounds, distance } from './segment.ts';

const read = (document: PartDocument, unit: LengthUnit = 'mm') => definePart(partSchema(unit).parse(document));
const part = (document: Omit<PartDocument, 'name'>) => read({ name: 'test', ...document });
const volume = (p: PartResult) => p.mass?.volume ?? Number.NaN;
const breaks = (chain: readonly Segment[]) => chain.slice(1).map((s, i) => distance(s.from, chain[i]?.to ?? s.from));

test('a part that can be made has no stop finding, a positive volume and unbroken chains that begin and end where they should', () => {
  fc.assert(
    fc.property(arbitraryPartIn(), ({ unit, document }) => {
      const made = read(document, unit);
      expect(made.findings.filter((f) => f.level === 'stop')).toEqual([]);
      expect(volume(made)).toBeGreaterThan(0);
      const { outside, insideLeft, insideRight, through, length } = made.outline;
      for (const chain of [outside, insideLeft, insideRight])
        for (const gap of breaks(chain)) expect(gap).toBeLessThan(1e-9);
      const [start, end] = [outside[0]?.from, outside.at(-1)?.to];
      if (insideLeft.length === 0) expect(start).toEqual({ z: 0, r: 0 });
      else expect(distance(insideLeft[0]?.from ?? { z: -1, r: -1 }, start ?? { z: 0, r: 0 })).toBeLessThan(1e-9);
      if (!through && insideRight.length === 0) expect(end).toEqual({ z: length, r: 0 });
      const right = through ? insideLeft.at(-1)?.to : insideRight[0]?.from;
      if (right) expect(distance(right, end ?? { z: 0, r: 0 })).toBeLessThan(1e-9);
      if (through) expect(insideRight).toEqual([]);
      else for (const chain of [insideLeft, insideRight]) expect(chain.at(-1)?.to.r ?? 0).toBeLessThan(1e-9);
    }),
    { numRuns: 200 },
  );
});

test('the outline of a part that can be made nowhere crosses itself', () => {
  fc.assert(
    fc.property(arbitraryPartIn({ kind: 'rich' }), ({ unit, document }) => {
      const loop = closedLoop(read(document, unit).outline);
      for (const [i, a] of loop.entries()) {
        for (const b of loop.slice(i + 1)) {
          const inner = meetings(a, b).filter((p) =>
            [a.from, a.to, b.from, b.to].every((end) => distance(end, p) > 1e-6),
          );
          expect(inner).toEqual([]);
        }
      }
    }),
    { numRuns: 60 },
  );
});

/** The part turned end for end. */
function turned(document: PartDocument): PartDocument {
  const swap = <T extends PartDocument['outside'][number]>(s: T): T => ({
    ...s,
    startEdge: s.endEdge,
    endEdge: s.startEdge,
  });
  const mm = (v: string | number) => Number.parseFloat(String(v).replace(',', '.'));
  const reach = new Map(document.outside.map((s) => [s.id, s.length === undefined ? 0 : mm(s.length)]));
  const { left, right } = document.inside ?? {};
  const { inside: _, threads: __, grooves, ...rest } = document;
  return {
    ...rest,
    outside: document.outside.toReversed().map((s) => {
      const swapped = swap(s);
      if (swapped.kind === 'cone' || swapped.kind === 'arc') {
        return { ...swapped, startDiameter: swapped.endDiameter, endDiameter: swapped.startDiameter };
      }
      if (swapped.kind !== 'curve') return swapped;
      const last = mm(swapped.points.at(-1)?.along ?? 0);
      return { ...swapped, points: swapped.points.toReversed().map((p) => ({ ...p, along: last - mm(p.along) })) };
    }),
    ...(document.inside ? { inside: { ...(right ? { left: right } : {}), ...(left ? { right: left } : {}) } } : {}),
    ...(grooves
      ? {
          grooves: grooves.map((g) =>
            reach.has(g.on) ? { ...g, along: (reach.get(g.on) ?? 0) - mm(g.along ?? 0) - mm(g.width ?? 0) } : g,
          ),
        }
      : {}),
  };
}

test('turned end for end it is the same body', () => {
  fc.assert(
    fc.property(arbitraryPart({ kind: 'rich' }), (document) => {
      const { threads: _, ...plain } = document;
      fc.pre(plain.outside.every((s) => s.kind !== 'cylinder' || s.diameter !== undefined));
      const one = read(plain);
      const other = read(turned(plain));
      expect(volume(other) / volume(one)).toBeCloseTo(1, 9);
      expect((other.mass?.area ?? 0) / (one.mass?.area ?? 1)).toBeCloseTo(1, 9);
      expect((one.mass?.centroid ?? 0) + (other.mass?.centroid ?? 0)).toBeCloseTo(one.outline.length, 6);
    }),
    { numRuns: 100 },
  );
});

test('a groove takes metal away, outside and in', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.5, max: 3, noNaN: true }),
      fc.double({ min: 1, max: 6, noNaN: true }),
      (depth, width) => {
        const bar = {
          outside: [{ kind: 'cylinder' as const, id: 'a', diameter: 40, length: 30 }],
          inside: { left: [{ kind: 'bored' as const, id: 'b', diameter: 20, depth: 20 }] },
        };
        const plain = volume(part(bar));
        const groove = (on: string, floorDiameter: number) =>
          volume(part({ ...bar, grooves: [{ id: 'g', on, along: 5, width, floorDiameter, purpose: 'other' }] }));
        expect(plain - groove('a', 40 - 2 * depth)).toBeCloseTo(Math.PI * width * (20 ** 2 - (20 - depth) ** 2), 5);
        expect(plain - groove('b', 20 + 2 * depth)).toBeCloseTo(Math.PI * width * ((10 + depth) ** 2 - 10 ** 2), 5);
      },
    ),
  );
});

test('a gland spindle entered in inches and the same in millimetres are the same part', () => {
  const inches: PartDocument = {
    name: 'spindle',
    outside: [
      { kind: 'cylinder', id: 'thread', length: '3/4"', startEdge: { kind: 'chamfer', size: '.04' } },
      {
        kind: 'cylinder',
        id: 'guide',
        diameter: '5/8 in f7',
        length: '1 1/4',
        endEdge: { kind: 'fillet', radius: '1/32' },
      },
      { kind: 'cone', id: 'seat', startDiameter: '7/8', endDiameter: '1/2', length: '.5' },
    ],
    threads: [{ id: 't', on: 'thread', designation: '3/8 BSF' }],
  };
  const metric: PartDocument = {
    name: 'spindle',
    outside: [
      { kind: 'cylinder', id: 'thread', length: 19.05, startEdge: { kind: 'chamfer', size: 1.016 } },
      {
        kind: 'cylinder',
        id: 'guide',
        diameter: '15,875 f7',
        length: 31.75,
        endEdge: { kind: 'fillet', radius: 0.79375 },
      },
      { kind: 'cone', id: 'seat', startDiameter: 22.225, endDiameter: 12.7, length: 12.7 },
    ],
    threads: [{ id: 't', on: 'thread', designation: '3/8 BSF' }],
  };
  const [a, b] = [read(inches, 'in'), read(metric, 'mm')];
  expect(a.findings.filter((f) => f.level === 'stop')).toEqual([]);
  expect(a.complete).toBe(true);
  expect(volume(a)).toBeCloseTo(volume(b), 6);
  expect(a.outline.outside.length).toBe(b.outline.outside.length);
  const limits = (p: PartResult) => p.dimensions.find((d) => d.id === 'guide.diameter');
  expect(limits(a)?.max).toBeCloseTo(15.859, 9);
  expect(limits(b)?.max).toBeCloseTo(15.859, 9);
});

test('every size comes with its limits: 16 f7 is -16/-34 µm [ISO 286], a bare length ±0.3 under class m [ISO 2768-1]', () => {
  const { dimensions } = part({
    generalTolerance: 'm',
    outside: [
      {
        kind: 'cylinder',
        id: 'guide',
        name: 'guide',
        diameter: '16 f7',
        length: 40,
        endEdge: { kind: 'fillet', radius: 1 },
      },
    ],
    inside: { left: [{ kind: 'bored', id: 'bore', diameter: '8 H7', depth: 12 }] },
    grooves: [
      {
        id: 'seal',
        on: 'guide',
        along: 10,
        width: '2.4 ±0.1',
        floorDiameter: 12.8,
        floorRadius: 0.3,
        purpose: 'o-ring',
      },
    ],
  });
  const of = (id: string) => dimensions.find((d) => d.id === id);
  expect(of('guide.diameter')).toMatchObject({
    max: 15.984,
    min: 15.966,
    basis: 'f7',
    kind: 'outside diameter',
    title: 'diameter of the guide',
  });
  expect(of('guide.length')).toMatchObject({ upper: 0.3, lower: -0.3, basis: 'ISO 2768-m', kind: 'length' });
  expect(of('bore.diameter')).toMatchObject({ max: 8.015, min: 8, kind: 'inside diameter' });
  expect(of('bore.depth')?.kind).toBe('depth');
  expect(of('seal.width')).toMatchObject({ max: 2.5, min: 2.3, basis: 'stated', kind: 'width' });
  expect(of('seal.floorDiameter')?.kind).toBe('outside diameter');
  expect(of('seal.floorRadius')?.kind).toBe('radius');
  expect(of('guide.endEdge')).toMatchObject({
    nominal: 1,
    upper: 0.2,
    kind: 'radius',
    title: 'radius at the end of the guide',
  });
});

test('a bare diameter under a thread has the limits of the thread: M12-6g is 11.966/11.701 at the crest [ISO 965]', () => {
  const { dimensions } = part({
    generalTolerance: 'm',
    outside: [{ kind: 'cylinder', id: 'shank', diameter: 12, length: 20 }],
    inside: { right: [{ kind: 'bored', id: 'hole', diameter: 6.9, depth: 12 }] },
    threads: [
      { id: 't', on: 'shank', designation: 'M12-6g' },
      { id: 'u', on: 'hole', designation: 'M8-6H' },
    ],
  });
  expect(dimensions.find((d) => d.id === 'shank.diameter')).toMatchObject({ max: 11.966, min: 11.701 });
  expect(dimensions.find((d) => d.id === 'hole.diameter')).toMatchObject({ max: 6.912, min: 6.647 });
});

test('nothing entered: an empty outline and a note', () => {
  const empty = part({
    outside: [],
    inside: { left: [{ kind: 'bored', id: 'b' }] },
    grooves: [{ id: 'g', on: 'b', purpose: 'other' }],
  });
  expect(empty.outline.outside).toEqual([]);
  expect(empty.mass).toBeUndefined();
  expect(empty.complete).toBe(false);
  expect(empty.findings.map((f) => f.id)).toContain('part.no-sections');
});

test('a half-entered part is drawn in pencil where a size is missing, and each missing size is named', () => {
  const half = part({
    outside: [
      { kind: 'cylinder', id: 'a', diameter: 20, length: 10 },
      { kind: 'cylinder', id: 'b' },
      { kind: 'cone', id: 'c', endDiameter: 8, length: 6 },
    ],
    grooves: [{ id: 'g', on: 'a', purpose: 'o-ring' }],
  });
  const missing = half.findings.filter((f) => f.id === 'part.size-missing').map((f) => f.at);
  expect(missing.toSorted()).toEqual([
    'b.diameter',
    'b.length',
    'c.startDiameter',
    'g.along',
    'g.floorDiameter',
    'g.width',
  ]);
  expect(half.complete).toBe(false);
  expect(radiusAt(half.outline, 12)).toBe(10);
  const pencil = (id: string) => half.outline.outside.filter((s) => s.feature === id).map((s) => s.assumed === true);
  expect(pencil('a').every((p) => !p)).toBe(true);
  for (const id of ['b', 'c', 'g']) expect(pencil(id).length > 0 && pencil(id).every((p) => p)).toBe(true);
});

test('a threaded section without a diameter takes the major diameter of its thread and is complete', () => {
  const bolt = part({
    outside: [{ kind: 'cylinder', id: 'shank', length: 20 }],
    threads: [{ id: 't', on: 'shank', designation: 'M10x1.25', length: 15 }],
  });
  expect(bolt.outline.largestDiameter).toBe(10);
  expect(bolt.complete).toBe(true);
  expect(bolt.threads[0]).toMatchObject({ side: 'external', from: 0, to: 15, entersAt: 'left' });
});

/** Whatever the schema lets through, sensible or not, with gaps everywhere. */
const anything: fc.Arbitrary<PartDocument> = (() => {
  const n = fc
    .oneof(fc.double({ min: 0.01, max: 60, noNaN: true }), fc.constantFrom(1e-4, 3000, 5, 10, 20))
    .map((v) => Number(v.toFixed(4)));
  const size = fc.option(n, { nil: undefined });
  const edge = fc.option(
    fc.oneof(
      fc.record({ kind: fc.constant('chamfer' as const), size: n }),
      fc.record({ kind: fc.constant('fillet' as const), radius: n }),
      fc.record({ kind: fc.constant('relief' as const), width: n, depth: n }),
    ),
    { nil: undefined },
  );
  const id = fc.constantFrom('a', 'b', 'c', 'd', 'e');
  const common = { id, length: size, startEdge: edge, endEdge: edge };
  const ends = { startDiameter: size, endDiameter: size };
  const outside = fc.oneof(
    fc.record({ kind: fc.constant('cylinder' as const), ...common, diameter: size }),
    fc.record({ kind: fc.constant('cone' as const), ...common, ...ends }),
    fc.record({
      kind: fc.constant('arc' as const),
      ...common,
      ...ends,
      radius: size,
      bulge: fc.constantFrom('outward' as const, 'inward' as const),
    }),
    fc.record({ kind: fc.constant('crown' as const), ...common, diameter: size }),
    fc.record({
      kind: fc.constant('curve' as const),
      ...common,
      points: fc.array(fc.record({ along: fc.oneof(n, fc.constant(0)), diameter: fc.oneof(n, fc.constant(0)) }), {
        minLength: 2,
        maxLength: 6,
      }),
    }),
  );
  const depth = fc.oneof(size, fc.constant('through' as const));
  const inside = fc.oneof(
    fc.record({
      kind: fc.constantFrom('drilled' as const, 'bored' as const),
      id,
      depth,
      diameter: size,
      startEdge: edge,
      endEdge: edge,
    }),
    fc.record({ kind: fc.constant('cone' as const), id, depth, ...ends, startEdge: edge, endEdge: edge }),
    fc.record({ kind: fc.constant('undercut' as const), id, depth, diameter: size, width: size }),
  );
  const groove = fc.record({
    id: fc.constantFrom('g', 'h'),
    on: id,
    along: fc.oneof(size, fc.constant(0)),
    width: size,
    floorDiameter: size,
    floorRadius: size,
    edgeRadius: size,
    purpose: fc.constant('other' as const),
  });
  const thread = fc.record({
    id: fc.constantFrom('t', 'u'),
    on: id,
    length: size,
    designation: fc.constantFrom(undefined, 'M10', 'M20x1.5', '3/8 BSF', 'G1/4', 'nothing known'),
  });
  const notTurned = fc.oneof(
    fc.record({
      kind: fc.constant('hexagon socket' as const),
      id: fc.constant('n'),
      face: fc.constantFrom('left' as const, 'right' as const),
      acrossFlats: size,
      depth: size,
    }),
    fc.record({ kind: fc.constant('hexagon' as const), id: fc.constant('n'), on: id, acrossFlats: size }),
    fc.record({
      kind: fc.constant('flats' as const),
      id: fc.constant('n'),
      on: id,
      count: fc.constantFrom(1 as const, 2 as const, 4 as const),
      acrossFlats: size,
      along: size,
      length: size,
    }),
    fc.record({
      kind: fc.constant('cross hole' as const),
      id: fc.constant('n'),
      on: id,
      diameter: size,
      along: size,
      through: fc.boolean(),
    }),
    fc.record({
      kind: fc.constant('slot' as const),
      id: fc.constant('n'),
      face: fc.constantFrom('left' as const, 'right' as const),
      width: size,
      depth: size,
    }),
  );
  return fc.record({
    name: fc.constant('anything'),
    material: fc.constantFrom(undefined, '303', 'cheese'),
    minimumWall: size,
    outside: fc.array(outside, { maxLength: 5 }),
    inside: fc.record({ left: fc.array(inside, { maxLength: 3 }), right: fc.array(inside, { maxLength: 3 }) }),
    grooves: fc.array(groove, { maxLength: 3 }),
    threads: fc.array(thread, { maxLength: 2 }),
    notTurned: fc.array(notTurned, { maxLength: 2 }),
  });
})();

/** Drops the fields that are undefined, as JSON would. */
const bare = (document: PartDocument): unknown => JSON.parse(JSON.stringify(document));

function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersIn) : [];
}

test('nothing the schema lets through makes it fail, give up or answer with what is no number', () => {
  fc.assert(
    fc.property(anything, (document) => {
      const made = definePart(partSchema('mm').parse(bare(document)));
      expect(numbersIn(made).every(Number.isFinite)).toBe(true);
      const hasStop = made.findings.some((f) => f.level === 'stop');
      if (document.outside.length > 0 && !hasStop) expect(volume(made)).toBeGreaterThan(0);
      for (const s of made.outline.outside) expect(bounds(s).min.r).toBeGreaterThan(-1e-6);
      for (const chain of [made.outline.outside, made.outline.insideLeft, made.outline.insideRight]) {
        for (const gap of breaks(chain)) expect(gap).toBeLessThan(1e-6);
      }
      expect(innerRadiusAt(made.outline, 1)).toBeGreaterThanOrEqual(0);
    }),
    { numRuns: 600 },
  );
});

test('the extents of a curved section count its belly and its waist', () => {
  const arc = (bulge: 'outward' | 'inward') =>
    definePart(
      partSchema('mm').parse({
        name: 'p',
        outside: [{ kind: 'arc', id: 'arc', startDiameter: 20, endDiameter: 20, length: 12, radius: 10, bulge }],
      }),
    ).outside[0];
  // Chord 12 in a circle of radius 10: the arc stands 10 − 8 = 2 off it.
  expect(arc('outward')?.largest).toBeCloseTo(24, 9);
  expect(arc('inward')?.smallest).toBeCloseTo(16, 9);
});
