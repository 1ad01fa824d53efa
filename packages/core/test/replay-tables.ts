/**
 * Turns a part by the numbers printed on the tables of its route, and nothing else where there is a table: dials, zeros and places are
 * read as a turner reads them. What a table cannot say (edges, faces, sawing) is taken as the operation leaves it.
 */
import type { PartResult } from '../src/part/part-result.ts';
import type { DialTable } from '../src/route/dial-table.ts';
import type { Operation, RouteResult, Setup, WorkOutline } from '../src/route/route-result.ts';
import { dialIn, moved, stretchTold, titleSize, told } from './read-table.ts';
import { type At, type Bench, inwards, isClear, read, settingOf, take } from './replay-bench.ts';
import { cone, curve, drill, groove, polish } from './replay-shapes.ts';
import { close, heightAt, isCutInto, isMade, spotsOf } from './replayed-work.ts';

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

/** Corners of a curve may be taken off before filing, or not; the steps alone must do. */
export function isOptional({ title }: DialTable): boolean {
  return title.endsWith('if wanted');
}

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
    const cutting = tables.filter((t) => t.kind !== 'thread' && !isOptional(t));
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
