import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type ArbitraryPart, arbitraryPartIn } from '../../test/arbitrary-part.ts';
import { arbitraryWorkshop, fullWorkshop } from '../../test/arbitrary-workshop.ts';
import { isOptional, wrongByTables } from '../../test/replay-tables.ts';
import { type WorkshopDocument, workshopSchema } from '../lathe/schema.ts';
import { definePart } from '../part/define-part.ts';
import { partSchema } from '../part/schema.ts';
import type { DialTable } from './dial-table.ts';
import { planRoute } from './plan-route.ts';
import type { RouteResult } from './route-result.ts';

function planned({ unit, document }: ArbitraryPart, bench: WorkshopDocument) {
  const part = definePart(partSchema(unit).parse(document));
  const route = planRoute(part, workshopSchema('mm').parse(bench), undefined);
  if (!route) throw new Error('a part with sections has a route');
  return { part, route };
}

test('any legal part, turned by the numbers on its tables alone: no pass takes more than it says, none goes below the part, every surface is made once', () => {
  fc.assert(
    fc.property(arbitraryPartIn(), arbitraryWorkshop(), (document, bench) => {
      const { part, route } = planned(document, bench);
      expect(wrongByTables(part, route)).toEqual([]);
    }),
    { numRuns: 2000 },
  );
});

type Row = DialTable['rows'][number];
type Fault = (table: DialTable, route: RouteResult) => RouteResult | undefined;

const withTable = (route: RouteResult, table: DialTable): RouteResult => ({
  ...route,
  tables: route.tables.map((t) => (t.id === table.id ? table : t)),
});

const withRow = (table: DialTable, at: number, change: (row: Row) => Row): DialTable => ({
  ...table,
  rows: table.rows.map((row, i) => (i === at ? change(row) : row)),
});

/** Divisions are counted under another name where there are two dials. */
const dialled = ({ kind }: DialTable) => (kind === 'curve' ? 'acrossDivisions' : 'divisions');
const isCut = (table: DialTable) =>
  ['turning', 'boring', 'groove', 'cone', 'curve'].includes(table.kind) && !isOptional(table);
const isFine = (table: DialTable) => table.title.includes('last pass with the top slide');
/** Its last row is put on by another table. */
const isContinued = (table: DialTable, route: RouteResult) =>
  route.tables.some((t) => t !== table && t.operation === table.operation && !isOptional(t));
const inside = (table: DialTable, route: RouteResult) =>
  route.operations.find((o) => o.id === table.operation)?.side === 'inside';
const isSaid = (table: DialTable, route: RouteResult) => route.findings.some((f) => f.at === table.operation);
/** Movement on the diameter for one division of the cross slide. */
function ofDiameter(table: DialTable): number {
  const read = /division is ([\d.]+) mm on the (diameter|radius)/.exec(table.notes.join(' '));
  return Number(read?.[1]) * (read?.[2] === 'radius' ? 2 : 1);
}

/** So many divisions more on the last row (of a curve on all), the size printed beside them with it. */
function further(table: DialTable, route: RouteResult, count: number): RouteResult {
  const off = (inside(table, route) ? 1 : -1) * count * ofDiameter(table);
  const deeper = (row: Row) => ({
    ...row,
    [dialled(table)]: Number(row[dialled(table)]) + count,
    diameter: Number(row.diameter) + off,
  });
  // A step of a curve is only seen to be too deep where it touches; somewhere one of them is.
  if (table.kind === 'curve') return withTable(route, { ...table, rows: table.rows.map(deeper) });
  return withTable(route, withRow(table, table.rows.length - 1, deeper));
}

const faults: readonly (readonly [string, Fault])[] = [
  [
    'a dial off by one division, of the tailstock by two',
    (table, route) => {
      if ((!isCut(table) && table.kind !== 'drilling') || isFine(table)) return undefined;
      if (isContinued(table, route) || table.rows.at(-1)?.[dialled(table)] === '') return undefined;
      const at = table.rows.length - 1;
      return withTable(
        route,
        withRow(table, at, (row) => ({
          ...row,
          [dialled(table)]: Number(row[dialled(table)]) + (table.kind === 'drilling' ? 2 : 1),
        })),
      );
    },
  ],
  [
    'a last row two divisions too deep, with the size to match',
    (table, route) =>
      isCut(table) && !isFine(table) && !isContinued(table, route)
        ? further(table, route, table.kind === 'curve' ? 6 : 2)
        : undefined,
  ],
  [
    'a last row two divisions short, with the size to match',
    (table, route) =>
      isCut(table) && table.kind !== 'curve' && !isFine(table) && !isContinued(table, route)
        ? further(table, route, -2)
        : undefined,
  ],
  [
    'a pass left out',
    (table, route) => {
      // The strokes of a cone have no depth of their own beside them; two light ones may be taken as one.
      const passes = table.kind === 'turning' || table.kind === 'boring';
      if (!passes || isFine(table) || table.rows.length < 3) return undefined;
      return withTable(route, { ...table, rows: table.rows.toSpliced(1, 1) });
    },
  ],
  [
    'a whole turn forgotten',
    (table, route) => {
      const at = table.rows.findIndex((r) => Number(r.turns) > 0);
      if (!isCut(table) || table.kind === 'curve' || isFine(table) || at < 0) return undefined;
      if (isContinued(table, route) && at === table.rows.length - 1) return undefined;
      return withTable(
        route,
        withRow(table, at, (row) => ({ ...row, turns: Number(row.turns) - 1 })),
      );
    },
  ],
  [
    'a zero a millimetre too small',
    (table, route) => {
      if (!isCut(table) || isFine(table)) return undefined;
      const notes = table.notes.map((n) => n.replace(/(touching [^Ø]*Ø)([\d.]+)/, (_, w, d) => `${w}${Number(d) - 1}`));
      return withTable(route, { ...table, notes });
    },
  ],
  [
    'a dial that reads the diameter taken for one that reads the radius, and the other way round',
    (table, route) => {
      if (!isCut(table) || isFine(table) || !table.rows.some((r) => Number(r[dialled(table)]) > 1)) return undefined;
      const swapped = (n: string) =>
        /on the radius/.test(n)
          ? n.replace('on the radius', 'on the diameter')
          : n.replace('on the diameter', 'on the radius');
      return withTable(route, {
        ...table,
        notes: table.notes.map((n) => (n.startsWith('Cross slide') ? swapped(n) : n)),
      });
    },
  ],
  [
    'an operation without its table',
    (table, route) => {
      if (!isCut(table) || isFine(table) || isSaid(table, route)) return undefined;
      return {
        ...route,
        operations: route.operations.map((o) => (o.id === table.operation ? { ...o, tables: [] } : o)),
      };
    },
  ],
  [
    'finishing before roughing',
    (table, route) => {
      const finish = route.operations.find((o) => o.id === table.operation && o.kind === 'finish turn');
      const rough = route.operations.find((o) => o.kind === 'rough turn' && o.features[0] === finish?.features[0]);
      const first = route.tables.find((t) => t.operation === rough?.id);
      // Only where roughing this one takes more than the finishing passes have to.
      if (
        !finish ||
        !rough ||
        !first ||
        isFine(table) ||
        route.operations.some((o) => o.kind === 'rough turn' && o !== rough)
      )
        return undefined;
      const others = route.operations.filter((o) => o !== finish);
      return { ...route, operations: others.toSpliced(others.indexOf(rough), 0, finish) };
    },
  ],
];

describe('faults planted in the tables are found, each and every one', () => {
  const routes = fc
    .sample(fc.tuple(arbitraryPartIn(), arbitraryWorkshop()), { numRuns: 120, seed: 4 })
    .concat(fc.sample(fc.tuple(arbitraryPartIn(), fc.constant(fullWorkshop)), { numRuns: 60, seed: 5 }))
    .map(([document, bench]) => planned(document, bench));

  test.each(faults)('%s', (_, plant) => {
    const kinds = new Set<string>();
    for (const { part, route } of routes)
      for (const table of route.tables) {
        const faulty = plant(table, route);
        if (!faulty) continue;
        kinds.add(table.kind);
        expect(wrongByTables(part, faulty).length, `${table.title} of ${part.name}`).toBeGreaterThan(0);
      }
    expect(kinds.size).toBeGreaterThan(0);
  });
});
