/** Grooves, holes, cones, curves and polished sections, cut by the numbers of their tables. */
import type { Segment } from '../src/part/outline-types.ts';
import { pointAt } from '../src/part/segment.ts';
import { dialIn, moved, type Row, titleSize, told } from './read-table.ts';
import { type At, type Bench, inwards, isClear, read, settingOf, take } from './replay-bench.ts';
import { close, isCutInto, type Spot } from './replayed-work.ts';

export function groove(bench: Bench, at: At): void {
  const { table, operation, setup } = at;
  const across = read(bench, at, dialIn(table, /^Cross slide/), 'the dial of the cross slide');
  const zero = read(bench, at, told(table, /cutter touching Ø/), 'its zero');
  const width = read(bench, at, told(table, /^Cutter /), 'the width of the cutter');
  const wall = read(bench, at, told(table, /at the left wall, /), 'its left wall');
  if (!across || zero === undefined || width === undefined || wall === undefined) return;
  const left = setup.endOut === 'right' ? bench.part.outline.length - wall : wall;
  const along = dialIn(table, /^Along/);
  const wide = read(bench, at, told(table, /Groove /), 'its width') ?? 0;
  // Between two divisions the last bit is set by measuring.
  const measured = told(table, /The dial along stops /) || 0;
  const sign = inwards(operation.side);
  const placeOf = (row: Row) => (along ? moved(row, along, 'alongTurns', 'alongDivisions') : Number(row.place));
  for (const [i, row] of table.rows.entries()) {
    const from = row.plunge === 'floor, to' ? placeOf(table.rows[i - 1] ?? row) : placeOf(row);
    const radius = zero / 2 - sign * moved(row, across);
    if (Math.abs(Number(row.diameter) / 2 - radius) > close)
      bench.wrong.push(`${table.id} row ${i + 1}: the dial gives ${2 * radius}, not ${row.diameter}`);
    const off = Number(row.place) - placeOf(row);
    if (off < -close || off >= (along?.step ?? 0) + close)
      bench.wrong.push(`${table.id} row ${i + 1} is set ${off} off its place`);
    const last = placeOf(row) + width > wide - measured - close;
    const [a, b] = [left + from, left + placeOf(row) + width + (last ? measured : 0)];
    if (a < operation.from - close || b > left + wide + close)
      bench.wrong.push(`${table.id} row ${i + 1} cuts from ${a} to ${b}`);
    for (const s of bench.spots) if (s.chain === operation.side && s.z > a - 1e-6 && s.z < b + 1e-6) take(s, radius);
  }
  const short = sign * (zero / 2 - sign * moved(table.rows.at(-1) ?? {}, across) - titleSize(table) / 2);
  if (short < -close || short >= across.step + close) bench.wrong.push(`${table.id} ends ${short} short of its floor`);
}

export function drill(bench: Bench, at: At): void {
  const { table, setup } = at;
  const point = read(bench, at, told(table, /The point is /), 'the length of the point');
  const diameter = Number(/Drill ([\d.]+) mm/.exec(table.title)?.[1]);
  const last = table.rows.at(-1);
  if (point === undefined || !last) return;
  const dial = dialIn(table, /^Tailstock/);
  const tip = Number(last.depth);
  const short = dial ? tip - moved(last, dial) : 0;
  if (short < -close || short >= (dial?.step ?? 0) + close)
    bench.wrong.push(`${table.id} ends ${short} short of its depth`);
  // Printed to a tenth.
  const full = tip - point + 0.06;
  const face = setup.endOut === 'right' ? bench.part.outline.length : 0;
  const away = setup.endOut === 'right' ? -1 : 1;
  bench.points.push({
    from: Math.min(face + away * full, face + away * tip),
    to: Math.max(face + away * full, face + away * tip),
  });
  for (const s of bench.spots) {
    const deep = away * (s.z - face);
    if (s.chain !== 'inside' || deep < 0 || deep > tip) continue;
    take(s, deep <= full ? diameter / 2 : (diameter / 2) * Math.max(0, 1 - (deep - full) / point));
  }
}

export function cone(bench: Bench, at: At): void {
  const set = settingOf(bench, at, /touching (?:at the thin end|in the mouth) at Ø/);
  const angle = read(bench, at, told(at.table, /° \d+′ \(|Set the top slide [^(]*\(/), 'the angle');
  if (!set || angle === undefined) return;
  const { table, operation, setup } = at;
  const sign = inwards(operation.side);
  const isThinFree = table.notes.some((n) => n.includes('The thin end is the one away from the chuck'));
  const thin = isThinFree === (setup.endOut === 'right') ? set.stretch.to : set.stretch.from;
  // Outside the dial shows the thin end, in a bore the mouth, which is the wide one.
  const zeroAt = sign > 0 ? thin : set.stretch.from + set.stretch.to - thin;
  const slope = Math.tan((angle * Math.PI) / 180);
  let before = 0;
  for (const [i, row] of table.rows.entries()) {
    const depth = moved(row, set.dial);
    const radius = set.zero - sign * depth;
    if (Math.abs(Number(row.diameter) / 2 - radius) > close)
      bench.wrong.push(`${table.id} row ${i + 1}: the dial gives ${2 * radius}, not ${row.diameter}`);
    const lineAt = (z: number) => radius + sign * slope * Math.abs(z - zeroAt);
    const bite = Math.max(
      0,
      ...set.spots.filter((s) => isClear(bench, set.stretch, s)).map((s) => sign * (s.at - lineAt(s.z))),
    );
    const most = Math.min(depth - before, (operation.cut?.depth ?? Number.POSITIVE_INFINITY) + set.dial.step);
    if (bite > most + close) bench.wrong.push(`${table.id} row ${i + 1} bites ${bite}, not ${most}`);
    for (const s of set.spots) take(s, lineAt(s.z));
    before = depth;
  }
}

/** Each step is fed in along the face at its depth; the round nose leaves a fillet in the corner. Then it is filed to the steps. */
export function curve(bench: Bench, at: At): void {
  const { table, operation, setup } = at;
  const across = read(bench, at, dialIn(table, /^Cross slide/), 'the dial of the cross slide');
  const along = read(bench, at, dialIn(table, /^(Top slide|Saddle)/), 'the dial along');
  const zero = read(bench, at, told(table, /across with it touching Ø/), 'its zero');
  const nose = read(bench, at, told(table, /Nose radius of the cutter: /), 'the nose');
  if (!across || !along || zero === undefined || nose === undefined) return;
  const behind = told(table, /at the beginning of the curve, /);
  const near = Number.isNaN(behind) ? 0 : behind;
  const deepOf = (z: number) => (setup.endOut === 'right' ? bench.part.outline.length - z : z) - near;
  const [length, own] = [operation.to - operation.from, bench.spots.filter((s) => s.feature === operation.features[0])];
  let most = 0;
  for (const row of table.rows) {
    const depth = moved(row, along, 'alongTurns', 'alongDivisions');
    const radius = zero / 2 - moved(row, across, 'acrossTurns', 'acrossDivisions');
    most = Math.max(most, Number(row.cusp));
    if (Math.abs(Number(row.diameter) / 2 - radius) > close)
      bench.wrong.push(`${table.id}: the dial gives ${2 * radius}, not ${row.diameter}`);
    if (Math.abs(Number(row.depth) - depth) > close)
      bench.wrong.push(`${table.id}: the dial gives ${depth} along, not ${row.depth}`);
    for (const s of bench.spots) {
      const into = depth - deepOf(s.z);
      if (s.chain !== 'outside' || into < -1e-9) continue;
      take(s, radius + nose - Math.sqrt(Math.max(0, nose ** 2 - Math.max(0, nose - into) ** 2)));
    }
  }
  const reached = moved(table.rows.at(-1) ?? {}, along, 'alongTurns', 'alongDivisions');
  const drawn = bench.part.outline.outside.filter((s) => s.feature === operation.features[0]).flatMap(chordsOf);
  const hidden = at.route.findings.some((f) => f.id === 'route.curve-hidden' && f.at === operation.id);
  if (!hidden && reached < length - 2 * along.step) bench.wrong.push(`${table.id} ends at ${reached} of ${length}`);
  for (const s of own) {
    // At the end of the last step the nose leaves its own round.
    if (deepOf(s.z) > reached - nose) continue;
    const off = Math.min(...drawn.map((piece) => distance(piece, s)), s.at - s.is);
    if (off > most + close) bench.wrong.push(`${table.id} leaves ${off} at ${s.z}, not ${most}`);
  }
  for (const s of own) if (!isCutInto(s)) s.at = s.is;
}

type Chord = readonly [{ z: number; r: number }, { z: number; r: number }];

/** A piece of the outline in chords, near enough for distances. */
function chordsOf(segment: Segment): Chord[] {
  return Array.from({ length: 120 }, (_, i) => [pointAt(segment, i / 120), pointAt(segment, (i + 1) / 120)] as const);
}

function distance([a, b]: Chord, { z, at }: Spot): number {
  const [dz, dr] = [b.z - a.z, b.r - a.r];
  const t = Math.min(1, Math.max(0, ((z - a.z) * dz + (at - a.r) * dr) / (dz ** 2 + dr ** 2 || 1)));
  return Math.hypot(a.z + t * dz - z, a.r + t * dr - at);
}

export function polish(bench: Bench, { table, operation }: At): void {
  let before = Number.POSITIVE_INFINITY;
  for (const row of table.rows) {
    const until = Number(row.until);
    if (until > before + close) bench.wrong.push(`${table.id} grows to ${until}`);
    before = until;
    for (const s of bench.spots)
      if (s.chain === 'outside' && s.z >= operation.from && s.z <= operation.to) take(s, until / 2);
  }
}
