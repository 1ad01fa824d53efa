/** Parts that can be made, as documents: plain and rich, metric and inch. For property tests of whatever reads a part. */
import fc from 'fast-check';
import type { PartDocument } from '../src/part/schema.ts';
import type { LengthUnit } from '../src/units/length.ts';

type OutsideDocument = PartDocument['outside'][number];
type InsideDocument = NonNullable<NonNullable<PartDocument['inside']>['left']>[number];
type GrooveDocument = NonNullable<PartDocument['grooves']>[number];
type EdgeDocument = NonNullable<OutsideDocument['startEdge']>;

export interface PartWish {
  /** `simple`: cylinders, cones, perhaps a bore. `rich`: arcs, crowns, curves, edges, grooves, threads, stepped and through bores. */
  readonly kind?: 'simple' | 'rich';
  readonly unit?: LengthUnit;
}

/** A part document in the given unit, and that unit; every one passes the schema and has no stop finding. */
export interface ArbitraryPart {
  readonly unit: LengthUnit;
  readonly document: PartDocument;
}

/** From 0 to under 1. fast-check's doubles are spread by their bits and nearly all next to nothing; these are spread evenly. */
const evenShare = fc.integer({ min: 0, max: 2 ** 30 - 1 }).map((n) => n / 2 ** 30);

/** Part documents to be read in millimetres, or in inches where `unit` asks for it. */
export function arbitraryPart(wish: PartWish = {}): fc.Arbitrary<PartDocument> {
  return arbitraryPartIn({ unit: 'mm', ...wish }).map((p) => p.document);
}

/** Like {@link arbitraryPart}, but tells the unit it is to be read in. Without a wish, all kinds and both units. */
export function arbitraryPartIn(wish: PartWish = {}): fc.Arbitrary<ArbitraryPart> {
  const kind = wish.kind ? fc.constant(wish.kind) : fc.constantFrom('simple' as const, 'rich' as const);
  const unit = wish.unit ? fc.constant(wish.unit) : fc.constantFrom('mm' as const, 'in' as const);
  return fc
    .tuple(kind, unit, fc.infiniteStream(evenShare))
    .map(([k, u, stream]) => ({ unit: u, document: draw(k, u, () => stream.next().value ?? 0) }));
}

/** The smallest step in which sizes are drawn [mm]; in inches half a thou. */
const steps = { mm: 0.01, in: 0.0005 * 25.4 } as const;

function draw(kind: 'simple' | 'rich', unit: LengthUnit, random: () => number): PartDocument {
  const isRich = kind === 'rich';
  const between = (min: number, max: number) => min + (max - min) * random();
  const chance = (p: number) => random() < p;
  /** As typed: a number, or text with a decimal comma or inches. */
  const typed = (mm: number): number | string => {
    const n = Math.max(1, Math.round(mm / steps[unit]));
    if (unit === 'mm') return chance(0.15) ? `${(n / 100).toFixed(2).replace('.', ',')} mm` : n / 100;
    return chance(0.3) ? `${(n * 0.0005).toFixed(4)}"` : Number((n * 0.0005).toFixed(4));
  };
  const toleranced = (mm: number, classes: readonly string[]): number | string => {
    const size = typed(mm);
    if (typeof size === 'string' || !chance(0.4)) return size;
    if (chance(0.5)) return `${size} ±${unit === 'mm' ? 0.05 : 0.002}`;
    return `${size}${unit === 'in' ? ' in' : ''} ${classes[Math.floor(random() * classes.length)]}`;
  };
  const shaft = (mm: number) => toleranced(mm, ['h9', 'f7', 'g6', 'h11']);
  const hole = (mm: number) => toleranced(mm, ['H7', 'H9', 'H11']);

  const threads: NonNullable<PartDocument['threads']> = [];
  const thread = isRich && chance(0.35) ? threadsDrawn[unit][Math.floor(random() * 3)] : undefined;
  const base = thread?.major ?? between(8, 50);
  const count = 1 + Math.floor(between(0, isRich ? 6 : 4));
  const outside: OutsideDocument[] = [];
  const grooves: GrooveDocument[] = [];
  const cylinders: { id: string; diameter: number; length: number }[] = [];
  let diameter = base;
  let smallest = base;
  let total = 0;
  for (let i = 0; i < count; i++) {
    const id = `section-${i + 1}`;
    const length = between(6, 40);
    const next = Math.max(6, base * between(0.6, 1.4));
    const isEnd = i === count - 1 && i > 0;
    const pick = random();
    if (isRich && isEnd && pick < 0.25) {
      outside.push({ kind: 'crown', id, diameter: typed(diameter), length: typed(diameter * between(0.05, 0.5)) });
      total += diameter * 0.05;
      continue;
    }
    if (isRich && i > 0 && pick < 0.4) {
      const chord = Math.hypot(length, (next - diameter) / 2);
      const least = Math.max(chord / 2, chord ** 2 / (2 * length));
      const bulge = chance(0.5) ? ('outward' as const) : ('inward' as const);
      // An inward arc that sags no more than a fifth of the smaller radius leaves room for bores.
      const sag = 0.2 * (Math.min(diameter, next) / 2);
      const radius = Math.max(1.3 * least, bulge === 'inward' ? chord ** 2 / (8 * sag) : 0) * between(1, 3);
      if (radius < 2900) {
        const ends = { startDiameter: typed(diameter), endDiameter: typed(next) };
        outside.push({ kind: 'arc', id, ...ends, length: typed(length), radius: typed(radius), bulge });
        smallest = Math.min(smallest, 0.78 * Math.min(next, diameter));
        diameter = next;
        total += length;
        continue;
      }
    }
    if (isRich && i > 0 && pick < 0.48) {
      const points = [0, 0.25, 0.5, 0.75, 1].map((t) => ({
        along: t === 0 ? 0 : typed(length * t),
        diameter: typed(diameter + (next - diameter) * t ** 2 * (3 - 2 * t)),
      }));
      outside.push({ kind: 'curve', id, points });
      smallest = Math.min(smallest, 0.95 * Math.min(next, diameter));
      diameter = next;
      total += length;
      continue;
    }
    if (i > 0 && pick < 0.62) {
      outside.push({
        kind: 'cone',
        id,
        startDiameter: typed(diameter),
        endDiameter: typed(next),
        length: typed(length),
      });
      smallest = Math.min(smallest, next, diameter);
      diameter = next;
    } else {
      if (i > 0) diameter = next;
      const isThreaded = i === 0 && thread !== undefined;
      const size = isThreaded ? (chance(0.5) ? { diameter: typed(diameter) } : {}) : { diameter: shaft(diameter) };
      outside.push({ kind: 'cylinder', id, ...size, length: toleranced(length, ['js13']) });
      if (isThreaded) threads.push({ id: 'thread', on: id, designation: thread.designation });
      smallest = Math.min(smallest, diameter);
      if (!isThreaded) cylinders.push({ id, diameter, length });
    }
    total += length;
  }

  if (isRich) {
    for (const { id, diameter: d, length } of cylinders) {
      if (length < 14 || !chance(0.5)) continue;
      const width = between(1.5, 4);
      const depth = between(0.05, 0.09) * d;
      grooves.push({
        id: `groove-${id}`,
        on: id,
        along: typed(between(4, length - width - 4)),
        width: toleranced(width, ['H13']),
        floorDiameter: shaft(d - 2 * depth),
        ...(chance(0.6) ? { floorRadius: typed(Math.min(0.3, depth / 2)) } : {}),
        ...(chance(0.4) ? { edgeRadius: typed(Math.min(0.15, depth / 4)) } : {}),
        purpose: chance(0.5) ? 'o-ring' : 'other',
      });
      smallest = Math.min(smallest, d - 2 * depth);
    }
    withEdges(outside, unit === 'in' ? 25.4 : 1, { between, chance, typed });
  }

  const inside = bores({ isRich, smallest, total, between, chance, typed, hole });
  return {
    name: `invented ${kind} part`,
    ...(chance(0.6) ? { material: chance(0.5) ? '303' : 'C45' } : {}),
    ...(chance(0.5) ? { generalTolerance: 'm' as const } : {}),
    outside,
    ...(inside ? { inside } : {}),
    ...(grooves.length > 0 ? { grooves } : {}),
    ...(threads.length > 0 ? { threads } : {}),
  };
}

/** Threads with the diameter they are turned to first [mm]. */
const threadsDrawn = {
  mm: [
    { designation: 'M10x1.25', major: 10 },
    { designation: 'M12', major: 12 },
    { designation: 'M20x1.5', major: 20 },
  ],
  in: [
    { designation: '3/8-24 UNF', major: 9.525 },
    { designation: '1/2 BSF', major: 12.7 },
    { designation: '3/4-16 UNF', major: 19.05 },
  ],
} as const;

interface Tools {
  readonly between: (min: number, max: number) => number;
  readonly chance: (p: number) => boolean;
  readonly typed: (mm: number) => number | string;
}

/** Edges at the two ends of the part and at the shoulders that are high enough for them. */
function withEdges(outside: OutsideDocument[], factor: number, { between, chance, typed }: Tools): void {
  const plain = (s: OutsideDocument | undefined) =>
    s?.kind === 'cylinder' && s.diameter !== undefined
      ? factor * Number.parseFloat(String(s.diameter).replace(',', '.'))
      : undefined;
  for (const [i, section] of outside.entries()) {
    if (section.kind !== 'cylinder') continue;
    const own = plain(section);
    if (own === undefined) continue;
    const edge = (room: number): EdgeDocument | undefined => {
      if (room <= 0 || !chance(0.6)) return undefined;
      // Two edges may meet on one step: neither takes more than 0.4 of it, along or across.
      const angle = chance(0.2) ? between(20, 60) : 45;
      const size = Math.min((0.4 * room) / Math.max(1, Math.tan((angle * Math.PI) / 180)), between(0.3, 1.5));
      if (size < 0.05) return undefined;
      return chance(0.5)
        ? { kind: 'fillet', radius: typed(size) }
        : { kind: 'chamfer', size: typed(size), ...(angle === 45 ? {} : { angle }) };
    };
    // At a face, the wall of a bore may begin half-way to the axis.
    const face = 0.15 * own;
    const room = (neighbour: OutsideDocument | undefined) => {
      const other = plain(neighbour);
      return other === undefined ? 0 : 0.5 * Math.abs(own - other);
    };
    const start = edge(i === 0 ? face : room(outside[i - 1]));
    const end = edge(i === outside.length - 1 ? face : room(outside[i + 1]));
    if (start) section.startEdge = start;
    if (end) section.endEdge = end;
  }
}

function bores(
  t: Tools & { isRich: boolean; smallest: number; total: number; hole: (mm: number) => number | string },
): PartDocument['inside'] {
  const { isRich, smallest, total, between, chance, typed, hole } = t;
  const widest = 0.5 * smallest;
  if (widest < 2.5 || !chance(0.6)) return undefined;
  // A hole no wider than a quarter of the length leaves room for the points of two drills.
  const bore = Math.min(between(0.5, 1) * widest, total / 4);
  if (isRich && chance(0.3)) {
    const wide: InsideDocument = { kind: 'bored', id: 'seat', diameter: hole(bore), depth: typed(0.2 * total) };
    const long: InsideDocument = { kind: 'drilled', id: 'way', diameter: typed(0.6 * bore), depth: 'through' };
    return chance(0.5) ? { left: [wide, long] } : { left: [long], right: [wide] };
  }
  const blind = (end: string, share: number): InsideDocument[] => {
    const first: InsideDocument = {
      kind: 'bored',
      id: `bore-${end}`,
      diameter: hole(bore),
      depth: typed(0.4 * share * total),
    };
    if (isRich && chance(0.4))
      first.startEdge = { kind: 'chamfer', size: typed(Math.min(0.06 * bore, 0.1 * share * total)) };
    const drilled: InsideDocument = {
      kind: 'drilled',
      id: `drill-${end}`,
      diameter: typed(0.5 * bore),
      depth: typed(0.7 * share * total),
    };
    const cone: InsideDocument = {
      kind: 'cone',
      id: `cone-${end}`,
      startDiameter: typed(bore),
      endDiameter: typed(0.6 * bore),
      depth: typed(0.6 * share * total),
    };
    const undercut: InsideDocument = {
      kind: 'undercut',
      id: `undercut-${end}`,
      diameter: typed(1.1 * bore),
      width: typed(0.1 * share * total),
      depth: typed(0.4 * share * total),
    };
    return [
      first,
      ...(chance(0.4) ? [drilled] : isRich && chance(0.3) ? [cone] : isRich && chance(0.4) ? [undercut] : []),
    ];
  };
  const share = Math.min(0.5, Math.max(0.2, (total / 2 - bore) / total));
  return chance(0.5) ? { left: blind('left', share) } : { left: blind('left', share), right: blind('right', share) };
}
