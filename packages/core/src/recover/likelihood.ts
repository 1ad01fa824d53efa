/**
 * What the readings on one specimen say of a size as made: its likelihood on a grid, the unknown wear and the error that
 * all readings with the main gauge share taken care of.
 *
 * Everything here is turned so that wear makes a size smaller: a bore is worked with all sizes negative.
 */
import type { Mm } from '../units/quantities.ts';
import { type Product, products, type Ready, wearScales, wornShares } from './reading-density.ts';

export interface Grid {
  readonly from: Mm;
  readonly step: Mm;
  readonly count: number;
}

export interface SpecimenLikelihood {
  readonly specimen: string;
  readonly grid: Grid;
  /** One array over the grid for each shared gauge error tried, all to one scale. */
  readonly byBias: readonly Float64Array[];
  /** Running areas of `byBias`, one longer. */
  readonly areas: readonly Float64Array[];
  /** Weight of each mean wear, given the readings. */
  readonly scales: readonly number[];
}

export interface FeatureLikelihood {
  readonly specimens: readonly SpecimenLikelihood[];
  /** Prior weight of each shared gauge error. */
  readonly biasWeights: readonly number[];
}

/** Readings with a further gauge are widened so that their mean keeps that gauge's own error. */
function widened(readings: readonly Ready[], main: string): Mm[] {
  const counts = new Map<string, number>();
  for (const r of readings) counts.set(r.gauge, (counts.get(r.gauge) ?? 0) + 1);
  return readings.map((r) =>
    r.gauge === main ? r.own : Math.sqrt(r.own ** 2 + (counts.get(r.gauge) ?? 1) * r.shared ** 2),
  );
}

/** Places are tried round about so many readings, and round the largest and the smallest. */
const looked = 24;
/** Places less likely than the best by more than this, in logarithm, get no grid. */
const worthLog = 9.5;

/** Where the likelihood is worth a grid: tried at places around every reading and on outwards, where wear may have come from. */
function worthwhile(readings: readonly Ready[]): { from: Mm; to: Mm } {
  const u = readings.map((r) => Math.hypot(r.own, r.shared));
  const places: number[] = [];
  const greatest = Math.max(...readings.map((r) => r.value));
  const values = readings.map((r) => r.value);
  const ends = [values.indexOf(greatest), values.indexOf(Math.min(...values))];
  const widest = Math.max(...u);
  const every = Math.max(1, Math.ceil(readings.length / looked));
  readings.forEach((r, i) => {
    if (i % every !== 0 && i !== ends[0] && i !== ends[1]) return;
    for (let k = -6; k <= 6; k++) places.push(r.value + k * (u[i] ?? 0));
    if (r.condition === 'corroded' || r.condition === 'plated')
      for (let d = 8 * (u[i] ?? 0); d < 0.8; d *= 1.6) places.push(r.value - d);
  });
  for (let d = 8 * widest; d < 1.2; d *= 1.5) places.push(greatest + d);
  const sorted = Float64Array.from(places).sort();
  const totals = new Float64Array(sorted.length).fill(-Infinity);
  for (const { values, log } of products(
    readings,
    u,
    sorted,
    wearScales.filter((_, i) => i % 2 === 1),
    [0.5],
  )) {
    for (let k = 0; k < totals.length; k++)
      totals[k] = Math.max(totals[k] ?? -Infinity, Math.log((values[k] ?? 0) + 1e-300) + log);
  }
  const top = totals.reduce((a, b) => Math.max(a, b), -Infinity);
  const good = [...totals.keys()].filter((k) => (totals[k] ?? -Infinity) > top - worthLog);
  const first = good[0] ?? 0;
  const last = good.at(-1) ?? sorted.length - 1;
  return { from: sorted[Math.max(0, first - 1)] ?? 0, to: sorted[Math.min(sorted.length - 1, last + 1)] ?? 0 };
}

/** Most places of a grid. */
const most = 420;
/** Shared gauge errors are tried out to this many standard uncertainties. */
const biasReach = 2.6;

/** Likelihood of the size of each specimen of a feature; undefined when no reading is of use. */
export function featureLikelihood(all: readonly Ready[]): FeatureLikelihood | undefined {
  const usable = notTooSharp(all.filter((r) => r.condition !== 'damaged'));
  const [first] = usable;
  if (!first) return undefined;
  const main = mainGauge(usable);
  const shared = usable.find((r) => r.gauge === main)?.shared ?? 0;
  const bySpecimen = new Map<string, Ready[]>();
  for (const r of usable) bySpecimen.set(r.specimen, [...(bySpecimen.get(r.specimen) ?? []), r]);
  const ranges = [...bySpecimen.values()].map((readings) => worthwhile(readings));
  const sharpest = Math.min(
    ...[...bySpecimen.values()].map((rs) => 1 / Math.sqrt(rs.reduce((sum, r) => sum + 1 / r.own ** 2, 0))),
  );
  const longest = Math.max(...ranges.map((r) => r.to - r.from));
  const step = Math.max(sharpest / 1.5, longest / most);
  const stride = Math.max(1, Math.min(Math.round(sharpest / step), Math.ceil((2 * biasReach * shared) / step / 8)));
  const reachSteps = Math.floor((biasReach * shared) / (stride * step));
  const shifts = Array.from({ length: 2 * reachSteps + 1 }, (_, i) => (i - reachSteps) * stride);
  const raw = shifts.map((s) => (shared > 0 ? Math.exp(-((s * step) ** 2) / (2 * shared ** 2)) : 1));
  const total = raw.reduce((a, b) => a + b, 0);
  const specimens = [...bySpecimen].map(([specimen, readings], i) => {
    const { from, to } = ranges[i] ?? { from: first.value, to: first.value };
    const grid = { from, step, count: Math.max(8, Math.ceil((to - from) / step) + 1) };
    return onGrid(specimen, readings, grid, shifts, main);
  });
  return { specimens, biasWeights: raw.map((w) => w / total) };
}

/** However many readings there are, together they are taken for no sharper than this part of the error they share: it hides the rest. */
const sharpestPart = 1 / 8;

/** Hundreds of readings at one place would ask for a grid finer than the shared error makes worth while: they are widened a little. */
function notTooSharp(readings: readonly Ready[]): readonly Ready[] {
  const counts = new Map<string, number>();
  for (const r of readings) counts.set(r.specimen, (counts.get(r.specimen) ?? 0) + 1);
  return readings.map((r) => {
    const least = sharpestPart * r.shared * Math.sqrt(counts.get(r.specimen) ?? 1);
    return r.own >= least ? r : { ...r, own: least };
  });
}

function mainGauge(readings: readonly Ready[]): string {
  const counts = new Map<string, number>();
  for (const r of readings) counts.set(r.gauge, (counts.get(r.gauge) ?? 0) + 1);
  return [...counts].toSorted((a, b) => b[1] - a[1])[0]?.[0] ?? '';
}

function onGrid(
  specimen: string,
  readings: readonly Ready[],
  grid: Grid,
  shifts: readonly number[],
  main: string,
): SpecimenLikelihood {
  const farthest = shifts.at(-1) ?? 0;
  const place = (from: Mm, count: number) => Float64Array.from({ length: count }, (_, k) => from + k * grid.step);
  const long = place(grid.from - farthest * grid.step, grid.count + 2 * farthest);
  const short = place(grid.from, grid.count);
  const mine = readings.filter((r) => r.gauge === main);
  const others = readings.filter((r) => r.gauge !== main);
  const otherUs = widened(others, main);
  const mineUs = mine.map((r) => r.own);
  const hasUnsure = readings.some((r) => r.condition === 'unsure');
  const hasWear = hasUnsure || readings.some((r) => r.condition === 'worn' || r.condition === 'protected');
  const scales = hasWear ? wearScales : wearScales.slice(0, 1);
  const shares = hasUnsure ? wornShares : [0.5];
  const mineProducts = products(mine, mineUs, long, scales, shares);
  const otherProducts = others.length > 0 ? products(others, otherUs, short, scales, shares) : undefined;
  const parts = mineProducts.map((p, i) => ({ scale: p.scale, mine: p, others: otherProducts?.[i] }));
  const logs = parts.map((p) => p.mine.log + (p.others?.log ?? 0));
  const top = Math.max(...logs);
  const factors = logs.map((l) => Math.exp(l - top));
  const byBias = shifts.map((shift) => {
    const sum = new Float64Array(grid.count);
    parts.forEach((p, i) => {
      const factor = factors[i] ?? 0;
      const other = p.others?.values;
      for (let k = 0; k < grid.count; k++)
        sum[k] = (sum[k] ?? 0) + factor * (p.mine.values[k + farthest + shift] ?? 0) * (other ? (other[k] ?? 0) : 1);
    });
    return sum;
  });
  const greatest = byBias.reduce((m, a) => a.reduce((x, y) => Math.max(x, y), m), 0) || 1;
  for (const a of byBias) for (let k = 0; k < a.length; k++) a[k] = (a[k] ?? 0) / greatest;
  return {
    specimen,
    grid,
    byBias,
    areas: byBias.map((a) => running(a, grid.step)),
    scales: scaleWeights(parts, factors),
  };
}

function scaleWeights(
  parts: readonly { readonly scale: Mm; readonly mine: Product }[],
  factors: readonly number[],
): number[] {
  const sums = wearScales.map((scale) =>
    parts.reduce(
      (sum, p, i) => (p.scale === scale ? sum + (factors[i] ?? 0) * p.mine.values.reduce((a, b) => a + b, 0) : sum),
      0,
    ),
  );
  const total = sums.reduce((a, b) => a + b, 0) || 1;
  return sums.map((s) => s / total);
}

/** Area up to each cell's left edge; cell k reaches half a step to either side of place k. */
function running(values: Float64Array, step: Mm): Float64Array {
  const areas = new Float64Array(values.length + 1);
  for (let k = 0; k < values.length; k++) areas[k + 1] = (areas[k] ?? 0) + (values[k] ?? 0) * step;
  return areas;
}

/** Area of a running sum between two sizes. */
export function areaBetween(areas: Float64Array, grid: Grid, from: Mm, to: Mm): number {
  return areaUpTo(areas, grid, to) - areaUpTo(areas, grid, from);
}

function areaUpTo(areas: Float64Array, grid: Grid, to: Mm): number {
  const at = (to - grid.from) / grid.step + 0.5;
  if (at <= 0) return 0;
  if (at >= grid.count) return areas[grid.count] ?? 0;
  const i = Math.floor(at);
  const low = areas[i] ?? 0;
  return low + (at - i) * ((areas[i + 1] ?? low) - low);
}
