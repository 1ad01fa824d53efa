/**
 * The next reading worth taking: the one whose outcome, on the average over what it may turn out to be, tells most about
 * the design.
 *
 *     gain = Σ_h P(h) Σ_y p(y|h) log₂ (p(y|h) / p(y))
 */
import { touchOf } from '../evidence/gather.ts';
import { gaugeHabit, permissibleError, serves } from '../evidence/gauge-error.ts';
import type { Gauge } from '../evidence/schema.ts';
import { rectangular, resolutionUncertainty } from '../evidence/uncertainty.ts';
import type { Mm } from '../units/quantities.ts';
import { designsOf } from './describe-size.ts';
import { isDiameter } from './features.ts';
import type { PerHabit } from './hypotheses.ts';
import type { Grid, SpecimenLikelihood } from './likelihood.ts';
import { wearScales } from './reading-density.ts';
import type { Measured, RecoverInput } from './recover-input.ts';
import type { NextReading, RecoveredSize } from './recover-result.ts';
import { quickWornReading } from './worn-reading.ts';

/** Designs, cells of size and outcomes that are reckoned with. */
const designsKept = 20;
const cells = 40;
const outcomes = 40;
/** A reading that tells less than this is not proposed [bit]. */
const worth = 0.05;
/** A reading after which one is hardly surer is not worth the way to the bench. */
const surer = 0.02;

/** Usual gauges, proposed when the workshop has none that serves. */
const usual: readonly Gauge[] = [
  { id: 'micrometer', name: 'an outside micrometer', kind: 'outside micrometer' },
  {
    id: 'bore-gauge',
    name: 'a bore gauge or telescopic gauges with a micrometer',
    kind: 'telescopic gauge and micrometer',
  },
  { id: 'depth-gauge', name: 'a depth gauge', kind: 'depth gauge' },
  { id: 'calliper', name: 'a calliper', kind: 'calliper' },
];

export function nextReadings(
  measured: readonly Measured[],
  sizes: readonly RecoveredSize[],
  habits: PerHabit,
  input: RecoverInput,
): NextReading[] {
  return measured
    .flatMap((m) => {
      const size = sizes.find((s) => s.of === m.feature.id);
      return size ? ofSize(m, size, habits, input) : [];
    })
    .toSorted((a, b) => b.gain - a.gain);
}

interface Outlook {
  readonly chances: readonly number[];
  /** Probability of each cell of size, one array a design. */
  readonly sizes: readonly Float64Array[];
  readonly from: Mm;
  readonly step: Mm;
}

function ofSize(m: Measured, size: RecoveredSize, habits: PerHabit, input: RecoverInput): NextReading[] {
  const { chances } = designsOf(m, habits);
  const [top] = size.designs;
  if (!top || top.probability > 0.995) return [];
  const gauges = gaugesFor(m, top.min, input.gauges).slice(0, 2);
  const hasWorn = m.kept.some((w) => w.reading.condition !== 'protected');
  const found = m.evidence.likelihood.specimens.slice(0, 4).flatMap((likelihood) => {
    const view = outlook(m, likelihood, chances);
    const scale = wearScales.reduce((sum, s, i) => sum + s * (likelihood.scales[i] ?? 0), 0);
    const each = gauges.flatMap((gauge) => {
      const u = uncertaintyOf(gauge, m, top.min);
      const fresh = expected(view, (_, bell) => bell, { below: 0, u });
      const again = expected(view, (z, bell) => quickWornReading(z, bell, u / scale, scale), { below: 5 * scale, u });
      return [
        proposal(m, size, { likelihood, gauge, place: 'protected' }, fresh, input),
        ...(hasWorn ? [proposal(m, size, { likelihood, gauge, place: 'worn' }, again, input)] : []),
      ];
    });
    return each.toSorted((a, b) => b.gain - a.gain).slice(0, 1);
  });
  return found
    .filter((f) => f.gain > worth && f.surenessThen - f.surenessNow >= surer)
    .toSorted((a, b) => b.gain - a.gain);
}

function gaugesFor(m: Measured, length: Mm, owned: readonly Gauge[]): Gauge[] {
  const touch = touchOf(m.feature.kind);
  const serving = (list: readonly Gauge[]) => list.filter((g) => serves(g, touch, length));
  const own = serving(owned);
  return (own.length > 0 ? own : serving(usual)).toSorted(
    (a, b) => uncertaintyOf(a, m, length) - uncertaintyOf(b, m, length),
  );
}

function uncertaintyOf(gauge: Gauge, m: Measured, length: Mm): Mm {
  const habit = gaugeHabit(gauge.kind);
  return Math.hypot(
    rectangular(permissibleError(gauge, Math.max(0.1, length), touchOf(m.feature.kind))),
    resolutionUncertainty(gauge.resolution ?? habit.resolution),
    habit.repeatability,
  );
}

/** What each of the likeliest designs makes of the size as made, the readings so far heard; sizes turned so that wear takes off. */
function outlook(m: Measured, likelihood: SpecimenLikelihood, chances: readonly number[]): Outlook {
  const { grid, byBias } = likelihood;
  const mean = new Float64Array(grid.count);
  m.evidence.likelihood.biasWeights.forEach((w, b) => {
    const values = byBias[b];
    for (let k = 0; k < grid.count; k++) mean[k] = (mean[k] ?? 0) + w * (values?.[k] ?? 0);
  });
  const order = [...chances.keys()].toSorted((a, b) => (chances[b] ?? 0) - (chances[a] ?? 0)).slice(0, designsKept);
  const total = order.reduce((sum, i) => sum + (chances[i] ?? 0), 0) || 1;
  const limits = order.map((i) => {
    const h = m.evidence.weighed[i]?.hypothesis;
    const [min, max] = [h?.min ?? 0, h?.max ?? 0];
    return m.turn === 1 ? ([min, max] as const) : ([-max, -min] as const);
  });
  const [lowest, highest] = stretch(
    limits,
    order.map((i) => chances[i] ?? 0),
    mean,
    grid,
  );
  const step = Math.max((highest - lowest) / cells, 1e-6);
  const sizes = limits.map(([low, high]) => {
    const cellsOf = new Float64Array(cells + 1);
    let sum = 0;
    for (let k = 0; k < grid.count; k++) {
      const at = grid.from + k * grid.step;
      if (at < low - grid.step / 2 || at > high + grid.step / 2) continue;
      const c = Math.min(cells, Math.max(0, Math.round((at - lowest) / step)));
      cellsOf[c] = (cellsOf[c] ?? 0) + (mean[k] ?? 0);
      sum += mean[k] ?? 0;
    }
    return sum > 0 ? cellsOf.map((v) => v / sum) : cellsOf;
  });
  return { chances: order.map((i) => (chances[i] ?? 0) / total), sizes, from: lowest, step };
}

/** The sizes between which nearly all of the probability lies. */
function stretch(
  limits: readonly (readonly [Mm, Mm])[],
  chances: readonly number[],
  mean: Float64Array,
  grid: Grid,
): [Mm, Mm] {
  const total = new Float64Array(grid.count);
  limits.forEach(([low, high], i) => {
    const first = Math.max(0, Math.ceil((low - grid.from) / grid.step));
    const last = Math.min(grid.count - 1, Math.floor((high - grid.from) / grid.step));
    let sum = 0;
    for (let k = first; k <= last; k++) sum += mean[k] ?? 0;
    if (sum === 0) return;
    for (let k = first; k <= last; k++) total[k] = (total[k] ?? 0) + ((chances[i] ?? 0) * (mean[k] ?? 0)) / sum;
  });
  const all = total.reduce((a, b) => a + b, 0) || 1;
  let [run, first, last] = [0, 0, grid.count - 1];
  for (let k = 0; k < grid.count; k++) {
    const before = run;
    run += (total[k] ?? 0) / all;
    if (before < 0.001 && run >= 0.001) first = k;
    if (before < 0.999 && run >= 0.999) last = k;
  }
  return [grid.from + first * grid.step, grid.from + last * grid.step];
}

/** Expected gain [bit] and expected probability of the then likeliest design. */
function expected(
  view: Outlook,
  density: (z: number, bell: number) => number,
  { below, u }: { below: Mm; u: Mm },
): { gain: number; sureness: number } {
  const from = view.from - 4 * u - below;
  const width = (cells * view.step + 8 * u + below) / outcomes;
  const kernel = Array.from({ length: outcomes }, () => new Float64Array(cells + 1));
  for (let c = 0; c <= cells; c++) {
    let sum = 0;
    kernel.forEach((row, y) => {
      const z = (from + (y + 0.5) * width - (view.from + c * view.step)) / Math.max(u, width / 2);
      const p = density(z, Math.exp((-z * z) / 2));
      row[c] = p;
      sum += p;
    });
    if (sum > 0) for (const row of kernel) row[c] = (row[c] ?? 0) / sum;
  }
  let [gain, sureness] = [0, 0];
  for (const row of kernel) {
    let [all, most, inside] = [0, 0, 0];
    view.sizes.forEach((cellsOf, i) => {
      let p = 0;
      for (let c = 0; c <= cells; c++) p += (row[c] ?? 0) * (cellsOf[c] ?? 0);
      const joint = p * (view.chances[i] ?? 0);
      all += joint;
      if (joint > most) most = joint;
      if (joint > 0) inside += joint * Math.log2(p);
    });
    if (all > 0) gain += inside - all * Math.log2(all);
    sureness += most;
  }
  return { gain: Math.max(0, gain), sureness: Math.min(1, sureness) };
}

/** Less sure than this one design is not told from another. */
const surelyTold = 0.6;

interface Proposed {
  readonly likelihood: SpecimenLikelihood;
  readonly gauge: Gauge;
  readonly place: 'protected' | 'worn';
}

function proposal(
  m: Measured,
  size: RecoveredSize,
  { likelihood: { specimen }, gauge, place }: Proposed,
  { gain, sureness }: { gain: number; sureness: number },
  input: RecoverInput,
): NextReading {
  const name = input.evidence?.specimens?.find((s) => s.id === specimen)?.name;
  const where =
    place === 'worn'
      ? 'once more where it worked, at the place that lost least'
      : isDiameter(m.feature.kind)
        ? m.feature.kind === 'outside diameter'
          ? 'at a place that never wore: under a ring, beyond the stroke, by the shoulder'
          : 'at a place that never wore'
        : 'between faces that never rubbed';
  const between = size.designs.slice(0, 2).map((d) => d.written);
  const now = size.designs[0]?.probability ?? 0;
  return {
    of: m.feature.id,
    says: `Measure the ${m.feature.title}${name ? ` of "${name}"` : ''} ${where}, with ${gauge.name}. ${sureness >= surelyTold ? 'It should tell' : 'It helps a little to tell'} ${between.join(' from ')}: sure to ${percent(Math.max(now, sureness))} then, ${percent(now)} now.`,
    gauge: gauge.id,
    specimen: specimen === '' ? undefined : specimen,
    gain,
    surenessNow: now,
    surenessThen: Math.max(now, sureness),
  };
}

const percent = (p: number) => `${Math.min(99, Math.round(100 * p))} %`;
