/** What the sources print about cutting a material: force, speeds, feeds, hardening. Ranges stay ranges; nothing is filled in. */
import type { SourceKey } from '../sources/register.ts';
import type { Degree, MetrePerMinute, Mm, MmPerRev, MPa } from '../units/quantities.ts';
import { type CuttingChoice, choices, type IsoGroup } from './cutting-choice.ts';
import { type Fluid, fluidsFor, type Hardening, hardeningOf } from './cutting-practice.ts';
import { type ForceRow, forceRows } from './force-table.ts';
import type { Material } from './material.ts';
import {
  depthTables,
  feedTables,
  type PrintedRow,
  type PrintedTable,
  type SpeedOperation,
  speedTables,
} from './speed-table.ts';
import { type ToolLife, toolLifeOf } from './tool-life.ts';

export type CutterMaterial = 'high-speed steel' | 'carbide';

/** Where a printed value stands. */
interface Printed {
  /** Row of the reference table. */
  readonly row: string;
  /** The material or condition as the source prints it. */
  readonly for: string;
  /** The source names this alloy; false: its machining group only. */
  readonly own: boolean;
  readonly status: string;
  readonly source: SourceKey;
}

export interface PrintedForce extends Printed {
  /** kc1.1, for a chip 1 mm thick and 1 mm wide */
  readonly specificForce: MPa;
  /** mc; absent where the source prints none */
  readonly exponent?: number;
  readonly rakeReference?: Degree;
}

export interface PrintedSpeed extends Printed {
  readonly cutter: CutterMaterial;
  /** As printed: coated, cobalt, brazed … */
  readonly cutterPrinted: string;
  readonly operation: SpeedOperation;
  readonly low: MetrePerMinute;
  readonly high: MetrePerMinute;
}

/** A feed [mm/rev] or depth [mm] range. */
export interface PrintedRange extends Printed {
  readonly cutter: CutterMaterial | 'any';
  readonly operation: SpeedOperation;
  readonly low: number;
  readonly high: number;
}

export interface CuttingData {
  readonly isoGroup: IsoGroup;
  /** kc1.1; absent where no source was found (plastics) */
  readonly specificForce?: MPa;
  /** mc; absent with the force, or where only the force is printed (hardened steel) */
  readonly exponent?: number;
  /** Rake the force holds for; absent where the source does not say */
  readonly rakeReference?: Degree;
  /** The row taken and, after it, the other printed values: their scatter is the uncertainty. */
  readonly forces: readonly PrintedForce[];
  readonly speeds: readonly PrintedSpeed[];
  readonly feeds: readonly PrintedRange[];
  readonly depths: readonly PrintedRange[];
  readonly hardening: Hardening;
  readonly toolLife: readonly ToolLife[];
  readonly fluids: readonly Fluid[];
  /** What was looked for and not found. */
  readonly missing: readonly string[];
  /** Own or group value, read or from memory. */
  readonly status: string;
  readonly sources: readonly SourceKey[];
}

const gathered = new Map<string, CuttingData>();

/** Everything printed about cutting this material. */
export function cuttingData(material: Material): CuttingData {
  const known = gathered.get(material.id) ?? gather(material);
  gathered.set(material.id, known);
  return known;
}

function gather(material: Material): CuttingData {
  const choice = choiceFor(material);
  const forces = forcesOf(choice);
  const taken = forces[0];
  const printed = speedsOf(choice);
  const speeds = [...printed, ...derivedSpeeds(printed)];
  const feeds = rangesFrom([...speedTables, ...feedTables], choice, [...choice.feeds, ...generalFeeds], 'feed');
  const depths = rangesFrom(
    [...speedTables, ...feedTables, ...depthTables],
    choice,
    [...choice.depths, 'SF061', 'SF062'],
    'depth',
  );
  const hardening = hardeningOf(material);
  const toolLife = toolLifeOf(choice.work);
  const fluids = fluidsFor(choice.fluids);
  const missing = [
    ...(taken ? [] : ['specific cutting force: no source found, none guessed']),
    ...(taken && taken.exponent === undefined
      ? ['exponent of the specific cutting force: not printed for hardened steel']
      : []),
    ...(['turn', 'drill'] as const).flatMap((op) =>
      hasSpeed(speeds, op) ? [] : [`cutting speed to ${op}: none found`],
    ),
  ];
  const sources = [...forces, ...speeds, ...feeds, ...depths, ...toolLife, ...fluids].map((v) => v.source);
  return {
    isoGroup: choice.iso,
    ...(taken ? { specificForce: taken.specificForce } : {}),
    ...(taken?.exponent === undefined ? {} : { exponent: taken.exponent }),
    ...(taken?.rakeReference === undefined ? {} : { rakeReference: taken.rakeReference }),
    forces,
    speeds,
    feeds,
    depths,
    hardening,
    toolLife,
    fluids,
    missing,
    status: statusOf(forces, printed),
    sources: [...new Set([...sources, ...hardening.sources])],
  };
}

/** Lowest and highest specific cutting force that the sources give at one chip thickness; none where nothing is printed. */
export function specificForceSpread(data: CuttingData, chipThickness: Mm): { low: MPa; high: MPa } | undefined {
  return spreadOf(data.forces, chipThickness);
}

function spreadOf(forces: readonly PrintedForce[], chipThickness: Mm): { low: MPa; high: MPa } | undefined {
  const at = forces.flatMap((f) => (f.exponent === undefined ? [] : [f.specificForce * chipThickness ** -f.exponent]));
  return at.length === 0 ? undefined : { low: Math.min(...at), high: Math.max(...at) };
}

/** Feed printed for a twist drill of that diameter. */
export function drillFeed(diameter: Mm): PrintedRange & { readonly low: MmPerRev } {
  const row = [3.2, 6.4, 12.7, 25].findIndex((upTo) => diameter <= upTo);
  const id = `SF${115 + (row === -1 ? 4 : row)}`;
  const found = ranges(feedTables, [id], 'feed', false)[0];
  if (!found) throw new Error(`no feed row ${id}`);
  return found;
}

const generalFeeds = ['SF061', 'SF062', 'SF063', 'SF064', 'SF218', 'SF219'];

function choiceFor(material: Material): CuttingChoice {
  const fits = Object.keys(choices).filter((key) => material.id === key || material.id.startsWith(`${key}-`));
  const key = fits.toSorted((a, b) => b.length - a.length)[0] ?? material.grade;
  const choice = choices[key];
  if (!choice) throw new Error(`no cutting rows are chosen for ${material.grade}`);
  return choice;
}

function forcesOf({ force }: CuttingChoice): PrintedForce[] {
  if (!force) return [];
  return [force.row, ...force.others].map((id) => {
    const found = forceRows.find(([row]) => row === id);
    if (!found) throw new Error(`no force row ${id}`);
    return printedForce(found, id === force.row ? force.own : false);
  });
}

function printedForce([row, printed, kc, exponent, rake, status, source]: ForceRow, own: boolean): PrintedForce {
  return {
    row,
    for: printed,
    own,
    specificForce: kc,
    ...(exponent === undefined ? {} : { exponent }),
    ...(rake === undefined ? {} : { rakeReference: rake }),
    status,
    source,
  };
}

function speedsOf(choice: CuttingChoice): PrintedSpeed[] {
  return rowsOf(speedTables, choice).flatMap(({ printed, status, source, own }) => {
    const [row, operation, cutterPrinted, material, low, high] = printed;
    const cutter = cutterOf(cutterPrinted);
    if (cutter === 'any' || low === undefined || high === undefined) return [];
    return [{ row, for: material, own, cutter, cutterPrinted, operation, low, high, status, source }];
  });
}

/** Threading and parting speeds are printed only as a part of the turning speed. */
function derivedSpeeds(printed: readonly PrintedSpeed[]): PrintedSpeed[] {
  const turning = printed.filter((s) => s.operation === 'turn');
  const shares = [
    {
      row: 'SF216',
      operation: 'thread',
      cutter: 'high-speed steel',
      share: [1 / 3, 1 / 2],
      words: '1/3 to 1/2 of turning',
    },
    { row: 'SF217', operation: 'thread', cutter: 'carbide', share: [0.7, 0.7], words: 'about 0.7 of turning' },
    { row: 'SF218', operation: 'part', cutter: 'high-speed steel', share: [0.5, 0.5], words: 'about 1/2 of turning' },
    { row: 'SF219', operation: 'part', cutter: 'carbide', share: [0.8, 0.8], words: 'about 0.8 of turning' },
  ] as const;
  return shares.flatMap(({ row, operation, cutter, share, words }) => {
    const from = turning.find((s) => s.cutter === cutter && s.own) ?? turning.find((s) => s.cutter === cutter);
    if (!from) return [];
    return [
      {
        row: `${row} of ${from.row}`,
        for: `${words}, ${from.for}`,
        own: from.own,
        cutter,
        cutterPrinted: from.cutterPrinted,
        operation,
        low: from.low * share[0],
        high: from.high * share[1],
        status: `common practice: ${words} (${from.status})`,
        source: 'common-practice' as const,
      },
    ];
  });
}

function rangesFrom(
  tables: readonly PrintedTable[],
  choice: CuttingChoice,
  general: readonly string[],
  what: 'feed' | 'depth',
): PrintedRange[] {
  return [...ranges(tables, choice.own, what, true), ...ranges(tables, [...choice.group, ...general], what, false)];
}

function ranges(
  tables: readonly PrintedTable[],
  ids: readonly string[],
  what: 'feed' | 'depth',
  own: boolean,
): PrintedRange[] {
  return tables.flatMap((table) =>
    table.rows.flatMap((printed) => {
      const [row, operation, cutterPrinted, material, ...pairs] = printed;
      if (!ids.includes(row)) return [];
      const first = speedTables.includes(table) ? 2 : 0;
      const start = what === 'feed' ? first : depthTables.includes(table) ? 0 : first + 2;
      const [low, high] = [pairs[start], pairs[start + 1]];
      if (low === undefined || high === undefined) return [];
      const cutter = cutterOf(cutterPrinted);
      return [{ row, for: material, own, cutter, operation, low, high, status: table.status, source: table.source }];
    }),
  );
}

interface FoundRow {
  readonly printed: PrintedRow;
  readonly own: boolean;
  readonly status: string;
  readonly source: SourceKey;
}

/** The chosen rows: own before group, read before remembered. */
function rowsOf(tables: readonly PrintedTable[], { own, group }: CuttingChoice): FoundRow[] {
  const found = tables.flatMap(({ rows, status, source }) =>
    rows.flatMap((printed) =>
      own.includes(printed[0]) || group.includes(printed[0])
        ? [{ printed, own: own.includes(printed[0]), status, source }]
        : [],
    ),
  );
  const rank = (r: FoundRow) => (r.own ? 0 : 2) + (r.status === 'read' ? 0 : 1);
  return found.toSorted((a, b) => rank(a) - rank(b));
}

function cutterOf(printed: string): CutterMaterial | 'any' {
  return printed.startsWith('HSS') ? 'high-speed steel' : printed === 'any' ? 'any' : 'carbide';
}

function hasSpeed(speeds: readonly PrintedSpeed[], operation: 'turn' | 'drill'): boolean {
  const turning: readonly SpeedOperation[] = ['turn', 'rough', 'finish'];
  return speeds.some((s) => (operation === 'drill' ? s.operation === 'drill' : turning.includes(s.operation)));
}

function statusOf(forces: readonly PrintedForce[], speeds: readonly PrintedSpeed[]): string {
  const taken = forces[0];
  const force = !taken
    ? 'no force printed'
    : `force ${taken.own ? 'printed for the alloy' : `from group “${taken.for}”`} (${taken.status})`;
  const spread = spreadOf(forces, 0.1);
  const disputed =
    spread && spread.high / spread.low > 1.25
      ? `; sources differ: ${Math.round(spread.low)} to ${Math.round(spread.high)} MPa at a chip of 0.1 mm`
      : '';
  const own = speeds.filter((s) => s.own).length;
  return `${force}${disputed}; speeds: ${own} printed for the alloy, ${speeds.length - own} for its group`;
}
