/**
 * Turns a part by the numbers printed on the tables of its route, and nothing else where there is a table: dials, zeros and places are
 * read as a turner reads them. What a table cannot say (edges, faces, sawing) is taken as the operation leaves it.
 */
import type { Segment } from '../src/part/outline-types.ts';
import type { PartResult } from '../src/part/part-result.ts';
import { pointAt } from '../src/part/segment.ts';
import type { DialTable } from '../src/route/dial-table.ts';
import type { Operation, RouteResult, Setup, WorkOutline } from '../src/route/route-result.ts';
import { dialIn, moved, type Row, stretchTold, titleSize, told } from './read-table.ts';
import { close, heightAt, isCutInto, isMade, type Spot, spotsOf } from './replayed-work.ts';

interface Bench {
  readonly part: PartResult;
  readonly spots: readonly Spot[];
  readonly wrong: string[];
  /** Stretches that only the point of a drill has reached. */
  readonly points: { from: number; to: number }[];
}

interface At {
  readonly operation: Operation;
  readonly setup: Setup;
  readonly table: DialTable;
  /** The table before it of the same operation, or itself. */
  readonly first: DialTable;
  readonly route: RouteResult;
}

/** Kinds of operations that are worked by a table. */
const tabled: readonly Operation['kind'][] = [
  'rough turn',
  'finish turn',
  'bore',
  'groove',
  'turn cone',
  'turn curve',
  'drill',
];

/** What is wrong with the work that comes of it; nothing when every surface is made once and none is cut into. */
export function wrongByTables(part: PartResult, route: RouteResult): string[] {
  const stock = route.setups[0]?.work;
  if (!stock) return ['there is no stock'];
  const bench: Bench = { part, spots: spotsOf(part, stock), wrong: [], points: [] };
  let before: WorkOutline = stock;
  let division = 0;
  for (const operation of route.operations) {
    const setup = route.setups.find((s) => s.id === operation.setup);
    if (!setup) continue;
    const tables = route.tables.filter((t) => operation.tables.includes(t.id));
    const made = new Set(bench.spots.filter((s) => isMade(s, division)));
    division = Math.max(division, ...tables.map((t) => dialIn(t, /^Cross slide/)?.step ?? 0));
    const cutting = tables.filter((t) => t.kind !== 'thread');
    if (cutting.length > 0) cutByTables(bench, operation, setup, cutting, route);
    else asLeft(bench, operation, before, route, division);
    for (const spot of bench.spots) {
      if (isCutInto(spot))
        bench.wrong.push(`${operation.id} cuts into ${spot.feature} at ${spot.z}: ${spot.at}, not under ${spot.low}`);
      if (isMade(spot, division) && !made.has(spot)) spot.made += 1;
    }
    before = operation.leaves ?? before;
  }
  for (const s of bench.spots) {
    const words = `${s.feature} at ${s.z.toFixed(3)} ${s.chain}`;
    if (!isMade(s, division)) bench.wrong.push(`${words} ends at ${s.at}, wanted ${s.low} to ${s.high}`);
    else if (s.made !== 1) bench.wrong.push(`${words} is made ${s.made} times`);
  }
  return [...new Set(bench.wrong)];
}

/** Without a table the work is as the operation says; but only by hand, or where something stands in the way of a table. */
function asLeft(
  { spots, wrong }: Bench,
  o: Operation,
  before: WorkOutline,
  route: RouteResult,
  division: number,
): void {
  if (!o.leaves) return;
  let most = 0;
  for (const spot of spots) {
    const [was, is] = [heightAt(before[spot.chain], spot.z), heightAt(o.leaves[spot.chain], spot.z)];
    if (Math.abs(was - is) < 1e-9) continue;
    most = Math.max(most, Math.abs(spot.at - is));
    // A surface that is made without a table is made within its limits.
    take(spot, Math.abs(is - spot.is) < 1e-9 ? (spot.low + spot.high) / 2 : is);
  }
  const said = route.findings.some((f) => f.at === o.id);
  if (tabled.includes(o.kind) && !said && most > 2 * division + close)
    wrong.push(`${o.id} takes ${most} off without a table`);
}

function cutByTables(
  bench: Bench,
  operation: Operation,
  setup: Setup,
  tables: readonly DialTable[],
  route: RouteResult,
): void {
  for (const table of tables) {
    const at = { operation, setup, table, first: tables[0] ?? table, route };
    if (/last pass with the top slide/.test(table.title)) lastByTopSlide(bench, at);
    else if (table.kind === 'turning' || table.kind === 'boring') passes(bench, at, tables.length > 1);
    else if (table.kind === 'groove') groove(bench, at);
    else if (table.kind === 'drilling') drill(bench, at);
    else if (table.kind === 'cone') cone(bench, at);
    else if (table.kind === 'curve') curve(bench, at);
    else if (table.kind === 'polish') polish(bench, at);
    else bench.wrong.push(`${table.id}: a ${table.kind} table that nobody reads`);
  }
}

/** +1 where metal is outside of the cut, −1 where it is a bore. */
const inwards = (side: 'outside' | 'inside') => (side === 'outside' ? 1 : -1);

function take(spot: Spot, radius: number): void {
  spot.at = spot.chain === 'outside' ? Math.min(spot.at, radius) : Math.max(spot.at, radius);
}

function read<T>({ wrong }: Bench, { table }: At, value: T | undefined, what: string): T | undefined {
  const isThere = value !== undefined && !(typeof value === 'number' && Number.isNaN(value));
  if (!isThere) wrong.push(`${table.id} does not tell ${what}`);
  return isThere ? value : undefined;
}

/** Cross slide, zero and stretch of a table of passes. */
function settingOf(bench: Bench, at: At, words: RegExp) {
  const dial = read(bench, at, dialIn(at.table, /^Cross slide/), 'the dial of the cross slide');
  const zero = read(bench, at, told(at.table, words), 'its zero');
  const stretch = read(bench, at, stretchTold(at.table, bench.part.outline.length), 'where it cuts');
  if (!dial || zero === undefined || !stretch) return undefined;
  const { side } = at.operation;
  const spots = bench.spots.filter((s) => s.chain === side && s.z >= stretch.from - 1e-3 && s.z <= stretch.to + 1e-3);
  return { dial, zero: zero / 2, stretch, spots };
}

/** What a shoulder or a fillet keeps of roughing, along the work; its end is faced, not turned. */
const shoulder = 0.25;

/** Is this place clear of shoulders, edges and the point of the drill, so that a pass meets only what the pass before left? */
function isClear({ part, points }: Bench, { from, to }: { from: number; to: number }, { z, chain }: Spot): boolean {
  if (z < from + shoulder || z > to - shoulder) return false;
  if (chain === 'inside') return !points.some((p) => z > p.from - shoulder && z < p.to + shoulder);
  return !part.outline.outside.some(
    (s) =>
      s.feature.includes('.') && z > Math.min(s.from.z, s.to.z) - shoulder && z < Math.max(s.from.z, s.to.z) + shoulder,
  );
}

function passes(bench: Bench, at: At, fine: boolean): void {
  const set = settingOf(bench, at, /touching at Ø/);
  if (!set) return;
  const { table, operation } = at;
  const sign = inwards(operation.side);
  const rows = fine ? table.rows.slice(0, -1) : table.rows;
  const clear = set.spots.filter((s) => isClear(bench, set.stretch, s));
  for (const [i, row] of rows.entries()) {
    const radius = set.zero - sign * moved(row, set.dial);
    if (Math.abs(Number(row.diameter) / 2 - radius) > close)
      bench.wrong.push(`${table.id} row ${i + 1}: the dial gives ${2 * radius}, not ${row.diameter}`);
    const bite = Math.max(0, ...clear.map((s) => sign * (s.at - radius)));
    if (bite > Number(row.depth) + close) bench.wrong.push(`${table.id} row ${i + 1} bites ${bite}, not ${row.depth}`);
    for (const spot of set.spots) take(spot, radius);
  }
  const left = sign * (set.zero - sign * moved(table.rows.at(-1) ?? {}, set.dial) - titleSize(table) / 2);
  if (left < -close) bench.wrong.push(`${table.id} passes its target by ${-left}`);
  if (left >= set.dial.step + close) bench.wrong.push(`${table.id} ends ${left} short of its target`);
}

/** The row of what is measured, or the next on the safe side; below what a row is given for, nothing is taken. */
function lastByTopSlide(bench: Bench, at: At): void {
  const { table, operation, first } = at;
  const dial = read(bench, at, dialIn(table, /^Top slide/), 'the dial of the top slide');
  const angle = read(bench, at, told(table, /set the top slide over /), 'the angle');
  const stretch = read(bench, at, stretchTold(first, bench.part.outline.length), 'where it cuts');
  if (!dial || angle === undefined || !stretch) return;
  const sign = inwards(operation.side);
  const spots = bench.spots.filter(
    (s) => s.chain === operation.side && s.z >= stretch.from - 1e-3 && s.z <= stretch.to + 1e-3,
  );
  const stands = spots.find((s) => isClear(bench, stretch, s))?.at;
  if (stands === undefined) return;
  const row = table.rows.find((r) => sign * (2 * stands - Number(r.measured)) >= -close);
  const feeds = Math.sin((angle * Math.PI) / 180);
  const radius = stands - sign * (row ? moved(row, dial) * feeds : 0);
  const left = sign * (radius - titleSize(table) / 2);
  if (left < -close) bench.wrong.push(`${table.id} passes its target by ${-left}`);
  // Rows are a hundredth of the diameter apart.
  if (row && left > 0.005 + dial.step * feeds + close) bench.wrong.push(`${table.id} ends ${left} short of its target`);
  for (const spot of spots) take(spot, radius);
}

function groove(bench: Bench, at: At): void {
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

function drill(bench: Bench, at: At): void {
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

function cone(bench: Bench, at: At): void {
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
function curve(bench: Bench, at: At): void {
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

function polish(bench: Bench, { table, operation }: At): void {
  let before = Number.POSITIVE_INFINITY;
  for (const row of table.rows) {
    const until = Number(row.until);
    if (until > before + close) bench.wrong.push(`${table.id} grows to ${until}`);
    before = until;
    for (const s of bench.spots)
      if (s.chain === 'outside' && s.z >= operation.from && s.z <= operation.to) take(s, until / 2);
  }
}
