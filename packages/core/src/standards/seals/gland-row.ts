/**
 * The published glands in one shape, each row with its source and standing.
 */
import type { SourceKey } from '../../sources/register.ts';
import type { Mm } from '../../units/quantities.ts';
import type { Standing } from '../small-parts/standing.ts';
import * as tables from './gland-tables.ts';
import * as metric from './gland-tables-metric.ts';

export interface Span {
  readonly min: Mm;
  readonly max: Mm;
}

export type GlandService =
  | 'static'
  | 'face'
  | 'face, liquid'
  | 'face, gas or vacuum'
  | 'moving'
  | 'moving, liquid'
  | 'moving, gas';

/** One row of a published gland table. What the source does not give is absent. */
export interface GlandRow {
  readonly service: GlandService;
  readonly section: Mm;
  /** Groove bottom to mating face, clearance included. */
  readonly depth: Span;
  readonly width: Span;
  readonly widthOneBackUp?: Span;
  readonly widthTwoBackUps?: Span;
  /** Radius in the groove bottom. */
  readonly radius?: Span;
  /** Rounding of the groove edge. */
  readonly edgeBreakMax?: Mm;
  readonly clearance?: { readonly min?: Mm; readonly max: Mm };
  /** Groove to land, total run-out. */
  readonly runOutMax?: Mm;
  /** Length of the lead-in along the axis. */
  readonly leadInMin?: Mm;
  readonly source: SourceKey;
  readonly standing: Standing;
  readonly note?: string;
}

/** Tables give sizes to the thousandth; sums must not show more. */
const thousandth = (mm: number): Mm => Math.round(mm * 1000) / 1000;
const from = (min: Mm, spread: Mm): Span => ({ min, max: thousandth(min + spread) });

let all: readonly GlandRow[] | undefined;

/** Every published gland row, built on first use. */
export function glandRows(): readonly GlandRow[] {
  all ??= [
    ...tables.appleStatic.map((row) => apple('static', row)),
    ...tables.appleFace.map((row) => apple('face', row)),
    ...tables.appleMoving.map((row) => apple('moving', row)),
    ...tables.parkerStatic.map((row) => parker('static', 'engineersedge-static', 'read', row)),
    ...tables.parkerMoving.map((row) => parker('moving', 'mem-parker-5-2', 'from memory', row)),
    ...tables.parkerFace.flatMap(parkerFace),
    ...metric.sealsupplyStatic.map(sealsupply),
    ...metric.ukStatic.map((row) => uk('static', row, 0, 0.25)),
    ...metric.ukFace.map((row) => uk('face', row, 0.1, 0.2)),
    ...metric.ukMoving.map((row) => uk('moving', row, 0, 0.25)),
    ...metric.gbt.flatMap(gbt),
  ];
  return all;
}

function apple(service: GlandService, row: (typeof tables.appleStatic)[number]): GlandRow {
  const [section, depthMin, depthMax, clearanceMax, width, one, two, radiusMin, radiusMax, runOut] = row;
  return {
    service,
    section,
    depth: { min: depthMin, max: depthMax },
    width: from(width, 0.254),
    ...(one > 0 && { widthOneBackUp: from(one, 0.254), widthTwoBackUps: from(two, 0.254) }),
    ...(radiusMax > 0 && { radius: { min: radiusMin, max: radiusMax } }),
    ...(clearanceMax > 0 && { clearance: { max: clearanceMax } }),
    ...(runOut > 0 && { runOutMax: runOut }),
    source: 'apple-gland',
    standing: 'read',
  };
}

function parker(
  service: GlandService,
  source: SourceKey,
  standing: Standing,
  row: (typeof tables.parkerStatic)[number],
): GlandRow {
  const [section, depthMin, depthMax, clearanceMin, clearanceMax, width, one, two, radiusMin, radiusMax, runOut] = row;
  return {
    service,
    section,
    depth: { min: depthMin, max: depthMax },
    width: from(width, 0.127),
    widthOneBackUp: from(one, 0.127),
    widthTwoBackUps: from(two, 0.127),
    radius: { min: radiusMin, max: radiusMax },
    ...(clearanceMax > 0 && { clearance: { min: clearanceMin, max: clearanceMax } }),
    runOutMax: runOut,
    source,
    standing,
    ...(source === 'engineersedge-static' && { note: 'widths for back-up rings are from memory [mem-parker-4-2]' }),
  };
}

function parkerFace(row: (typeof tables.parkerFace)[number]): GlandRow[] {
  const [section = 0, depthMin = 0, depthMax = 0, liquidMin = 0, liquidMax = 0, gasMin = 0, gasMax = 0, ...radii] =
    row.map((thou) => thousandth(thou * 0.0254));
  const [radiusMin = 0, radiusMax = 0] = radii;
  const shared = {
    section,
    depth: { min: depthMin, max: depthMax },
    radius: { min: radiusMin, max: radiusMax },
    source: 'mem-parker-4-3',
    standing: 'from memory',
  } as const;
  return [
    { ...shared, service: 'face, liquid', width: { min: liquidMin, max: liquidMax } },
    { ...shared, service: 'face, gas or vacuum', width: { min: gasMin, max: gasMax } },
  ];
}

function uk(service: GlandService, row: (typeof metric.ukStatic)[number], depthSpread: Mm, widthSpread: Mm): GlandRow {
  const [section, depth, width, radiusMax] = row;
  return {
    service,
    section,
    depth: from(depth, depthSpread),
    width: from(width, widthSpread),
    radius: { min: 0, max: radiusMax },
    source: 'orings-uk',
    standing: 'read',
    ...(depthSpread === 0 && { note: 'the source gives no tolerance of the depth' }),
  };
}

function sealsupply(row: (typeof metric.sealsupplyStatic)[number]): GlandRow {
  const [section, depth, width, radiusMax, edgeBreakMax, leadInMin] = row;
  return {
    service: 'static',
    section,
    depth: from(depth, 0.05),
    width: from(width, 0.25),
    radius: { min: 0, max: radiusMax },
    edgeBreakMax,
    leadInMin,
    source: 'sealsupply',
    standing: 'read',
  };
}

function gbt(row: (typeof metric.gbt)[number]): GlandRow[] {
  const [section, staticDepth, staticWidth, faceDepth, faceWidth, liquidDepth, liquidWidth, gasDepth, gasWidth] = row;
  const [one, two, radiusMin, radiusMax, edgeBreakMax, leadInMin] = row.slice(9);
  const gland = (service: GlandService, depth: Mm, width: Mm): GlandRow => ({
    service,
    section,
    depth: { min: depth, max: depth },
    width: from(width, 0.25),
    ...(service !== 'face' && one !== undefined && { widthOneBackUp: from(one, 0.25) }),
    ...(service !== 'face' && two !== undefined && { widthTwoBackUps: from(two, 0.25) }),
    radius: { min: radiusMin ?? 0, max: radiusMax ?? 0 },
    ...(edgeBreakMax !== undefined && { edgeBreakMax }),
    ...(service !== 'face' && leadInMin !== undefined && { leadInMin }),
    source: 'mem-gbt3452.3',
    ...(service === 'static' && depth > liquidDepth
      ? {
          standing: 'doubtful',
          note: 'remembered deeper at rest than moving on liquid, against all other sizes and sources',
        }
      : { standing: 'from memory', note: 'nominal depth; the standard gives its tolerance apart' }),
  });
  return [
    gland('static', staticDepth, staticWidth),
    gland('face', faceDepth, faceWidth),
    gland('moving, liquid', liquidDepth, liquidWidth),
    gland('moving, gas', gasDepth, gasWidth),
  ];
}
