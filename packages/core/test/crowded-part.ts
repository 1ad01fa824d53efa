/** Parts with much to say, for tests of the sheet: every kind of section, edge, groove, thread and what is not turned, some of it unfinished. */
import fc from 'fast-check';
import type { PartDocument } from '../src/part/schema.ts';

type Outside = PartDocument['outside'][number];
type Inside = NonNullable<NonNullable<PartDocument['inside']>['left']>[number];
type Cut = NonNullable<PartDocument['notTurned']>[number];

/** Whole documents shrink badly; a seed and a number of sections shrink to the smallest part that still fails. */
export function crowdedPart(): fc.Arbitrary<PartDocument> {
  return fc.tuple(fc.integer({ min: 1, max: 2 ** 31 - 1 }), fc.integer({ min: 1, max: 9 })).map(crowded);
}

export function crowded([seed, count]: readonly [number, number]): PartDocument {
  const random = generator(seed);
  const between = (low: number, high: number) => Math.round((low + (high - low) * random()) * 100) / 100;
  const chance = (p: number) => random() < p;
  const pick = <T>(list: readonly [T, ...T[]]): T => list[Math.floor(random() * list.length)] ?? list[0];
  const size = (mm: number, classes: readonly [string, ...string[]]) =>
    pick([String(mm), `${mm} ${pick(classes)}`, `${mm} ±0.05`, `${mm} +0.1/-0.02`]);
  const scale = pick([0.3, 1, 1, 1, 4]);
  const base = between(8, 40) * scale;
  const outside: Outside[] = [];
  const grooves: NonNullable<PartDocument['grooves']> = [];
  const threads: NonNullable<PartDocument['threads']> = [];
  const notTurned: Cut[] = [];
  let least = base;
  for (let i = 0; i < count; i++) {
    const id = `section-${i + 1}`;
    const diameter = round(base * between(0.6, 1.5));
    const length = round(between(2, 30) * scale);
    least = Math.min(least, diameter);
    const common = {
      id,
      length: size(length, ['js13', 'h12']),
      ...(chance(0.3) ? { finish: pick([0.4, 0.8, 1.6]) } : {}),
    };
    const kind = pick(['cylinder', 'cylinder', 'cylinder', 'cone', 'crown', 'arc', 'curve'] as const);
    const end = round(diameter * between(0.7, 1.2));
    if (kind === 'cone') {
      outside.push({ kind, ...common, startDiameter: String(diameter), endDiameter: size(end, ['h11']) });
      continue;
    }
    if (kind === 'crown' && i === count - 1 && i > 0) {
      outside.push({
        kind,
        ...common,
        diameter: String(diameter),
        length: String(round(diameter * between(0.1, 0.4))),
      });
      continue;
    }
    if (kind === 'arc' && i > 0) {
      const radius = round(3 * (length + diameter));
      const bulge = pick(['inward', 'outward'] as const);
      outside.push({ kind, ...common, startDiameter: diameter, endDiameter: end, radius, bulge });
      continue;
    }
    if (kind === 'curve' && i > 0) {
      const points = [0, 0.3, 0.7, 1].map((t) => ({
        along: round(t * length),
        diameter: round(diameter + t * (end - diameter)),
      }));
      outside.push({ kind, id, points });
      continue;
    }
    const edges = {
      ...(chance(0.4) ? { startEdge: edge() } : {}),
      ...(chance(0.4) ? { endEdge: edge() } : {}),
    };
    outside.push({
      kind: 'cylinder',
      ...common,
      ...edges,
      ...(chance(0.95) ? { diameter: size(diameter, ['h7', 'f7', 'k6']) } : {}),
    });
    if (length > 6 && chance(0.4)) {
      const width = round(Math.min(length / 3, between(0.8, 4)));
      grooves.push({
        id: `groove-${i + 1}`,
        on: id,
        along: size(round(length / 3), ['js12']),
        width: size(width, ['H13']),
        floorDiameter: size(round(diameter * between(0.8, 0.95)), ['h9']),
        ...(chance(0.5) ? { floorRadius: 0.2 } : {}),
        ...(chance(0.3) ? { edgeRadius: 0.1 } : {}),
        purpose: 'o-ring',
      });
    } else if (chance(0.3)) notTurned.push(cut(i, id, diameter, length));
  }
  const first = outside[0];
  if (first?.kind === 'cylinder' && chance(0.3)) {
    outside[0] = { ...first, diameter: '10' };
    least = Math.min(least, 8);
    threads.push({ id: 'thread', on: first.id, designation: 'M10x1.25-6g', ...(chance(0.5) ? { length: '2' } : {}) });
  }
  if (chance(0.3)) {
    const face = pick(['left', 'right'] as const);
    const acrossFlats = size(round(least * 0.4), ['D12']);
    notTurned.push(
      chance(0.5)
        ? { kind: 'hexagon socket', id: 'drive', face, acrossFlats, depth: '2', made: 'bonded insert' }
        : { kind: 'slot', id: 'slot', face, width: size(round(least * 0.15), ['H12']), depth: '1.5' },
    );
  }
  const inside = chance(0.5) ? { [pick(['left', 'right'] as const)]: bores() } : undefined;
  return {
    name: pick([
      'Part',
      'A part with a long name that the title block must somehow hold: left-hand valve guide',
      'Œuvre <&>',
    ]),
    material: pick(['303', 'C45', 'unobtainium']),
    ...(chance(0.7) ? { generalTolerance: 'm' as const } : {}),
    finish: 3.2,
    edgeBreak: 0.2,
    outside,
    grooves,
    threads,
    notTurned,
    ...(inside ? { inside } : {}),
  };

  function edge(): NonNullable<Outside['startEdge']> {
    const small = round(between(0.2, 1) * Math.min(1, scale));
    return pick<NonNullable<Outside['startEdge']>>([
      { kind: 'chamfer', size: small },
      { kind: 'chamfer', size: small, angle: pick([30, 20]) },
      { kind: 'fillet', radius: small },
      { kind: 'relief', width: 2 * small, depth: 0.5 * small },
    ]);
  }

  function cut(i: number, on: string, diameter: number, length: number): Cut {
    const id = `cut-${i + 1}`;
    return pick<Cut>([
      {
        kind: 'flats',
        id,
        on,
        count: pick([1, 2, 4] as const),
        acrossFlats: round(diameter * 0.8),
        along: '0.5',
        length: round(length * 0.6),
      },
      { kind: 'hexagon', id, on, acrossFlats: round(diameter * 0.86) },
      {
        kind: 'cross hole',
        id,
        on,
        diameter: round(Math.min(diameter, length) * 0.3),
        along: round(length / 2),
        through: chance(0.5),
      },
      { kind: 'knurl', id, on, pattern: pick(['straight', 'diamond'] as const), pitch: 1 },
    ]);
  }

  function bores(): Inside[] {
    const wide = round(least * 0.6);
    const list: Inside[] = [
      { kind: 'bored', id: 'mouth', diameter: size(wide, ['H8']), depth: size(round(3 * scale), ['H13']), finish: 1.6 },
      {
        kind: 'drilled',
        id: 'pilot',
        diameter: round(wide * 0.6),
        depth: chance(0.4) ? 'through' : round(6 * scale),
        ...(chance(0.5) ? { pointAngle: 118 } : {}),
      },
    ];
    if (chance(0.4))
      list.splice(1, 0, {
        kind: 'cone',
        id: 'taper',
        startDiameter: round(wide * 0.9),
        endDiameter: round(wide * 0.7),
        depth: round(5 * scale),
      });
    return list;
  }
}

function round(value: number): number {
  return Math.max(0.01, Math.round(value * 100) / 100);
}

/** A small generator of uniform numbers from a seed (mulberry32). */
function generator(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}
