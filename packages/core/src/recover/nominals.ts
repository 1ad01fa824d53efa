/**
 * Sizes that a maker is likely to have started from, each with how much it is to be expected before anything is measured.
 *
 * A series with weight w and a local spacing of s millimetres gives each of its sizes the weight w·s, so that weights of
 * coarse and fine series, and of "a size of its own" (per millimetre), stand against each other without favour.
 */
import { listedORings } from '../standards/seals/o-ring.ts';
import { series as preferredSeries } from '../standards/stock/preferred-numbers.ts';
import { standardThreads } from '../standards/threads/catalogue.ts';
import { type Mm, mmPerInch } from '../units/quantities.ts';

export type System = 'metric' | 'inch';

export interface Nominal {
  readonly size: Mm;
  readonly system: System;
  /** As a person would write it: `12`, `12.5`, `3/8 in`. */
  readonly written: string;
  /** Prior weight within its system, per the rule above. */
  readonly weight: number;
}

interface Series {
  /** Of no use for lengths, widths and depths. */
  readonly ofDiameters?: true;
  readonly weight: number;
  readonly values: (from: Mm, to: Mm) => readonly { readonly size: Mm; readonly spacing: Mm }[];
}

/** Share of parts that have a size of their own, per millimetre of size: `common practice`. */
export const ownSizeWeight = 0.1;

function steps(step: Mm): Series['values'] {
  return (from, to) => {
    const found: { size: Mm; spacing: Mm }[] = [];
    for (let i = Math.max(1, Math.ceil(from / step - 1e-9)); i * step <= to + 1e-9; i++)
      found.push({ size: Number((i * step).toFixed(6)), spacing: step });
    return found;
  };
}

/** Spacing of an irregular list: half the way to either neighbour, never more than 1 mm. */
function listed(make: () => readonly number[]): Series['values'] {
  let sorted: readonly number[] | undefined;
  return (from, to) => {
    sorted ??= [...new Set(make().map((v) => Number(v.toFixed(4))))].toSorted((a, b) => a - b);
    const values = sorted;
    let i = values.findIndex((v) => v >= from - 1e-9);
    const found: { size: Mm; spacing: Mm }[] = [];
    for (; i >= 0 && i < values.length; i++) {
      const size = values[i] ?? 0;
      if (size > to + 1e-9) break;
      found.push({ size, spacing: Math.min(1, ((values[i + 1] ?? size + 1) - (values[i - 1] ?? size - 1)) / 2) });
    }
    return found;
  };
}

const decades = [0.1, 1, 10, 100];
const renard = () => decades.flatMap((d) => preferredSeries["R'40"].values.map((v) => v * d));
const threads = (families: readonly string[]) =>
  standardThreads().flatMap((t) => (families.includes(t.family) ? [t.majorDiameter] : []));
const rings = (isInch: boolean) =>
  listedORings().flatMap((r) => ((r.series === 'AS568') === isInch ? [r.insideDiameter] : []));

/** BA 0 is 6 mm and some rings are whole millimetres too: such sizes speak for millimetres, not for inches. */
const isNotMetric = (size: Mm) => Math.abs(2 * size - Math.round(2 * size)) > 0.006;

/** Weights add up to 1 less {@link ownSizeWeight}; they are workshop judgement: `common practice`. */
const catalogue: Readonly<Record<System, readonly Series[]>> = {
  metric: [
    { weight: 0.5, values: steps(1) },
    { weight: 0.14, values: steps(0.5) },
    { weight: 0.1, values: listed(renard) },
    { weight: 0.09, values: steps(0.1) },
    { weight: 0.04, ofDiameters: true, values: listed(() => threads(['metric', 'pipe-parallel'])) },
    { weight: 0.03, ofDiameters: true, values: listed(() => rings(false)) },
  ],
  inch: [
    { weight: 0.3, values: steps(mmPerInch / 8) },
    { weight: 0.22, values: steps(mmPerInch / 16) },
    { weight: 0.14, values: steps(mmPerInch / 32) },
    { weight: 0.09, values: steps(mmPerInch / 64) },
    { weight: 0.06, values: steps(mmPerInch / 100) },
    {
      weight: 0.06,
      ofDiameters: true,
      values: listed(() =>
        threads(['unified', 'whitworth', 'ba', 'brass', 'cycle', 'pipe-parallel']).filter(isNotMetric),
      ),
    },
    { weight: 0.03, ofDiameters: true, values: listed(() => rings(true).filter(isNotMetric)) },
  ],
};

/**
 * All likely nominal sizes of a system between two sizes, smallest first; a size in several series has their weights together.
 *
 * @param isDiameter  threads and rings give diameters only: no length was drawn after them
 */
export function nominalsBetween(system: System, from: Mm, to: Mm, isDiameter: boolean): Nominal[] {
  const series = catalogue[system].filter((s) => isDiameter || !s.ofDiameters);
  const share = sum(catalogue[system]) / sum(series);
  const weights = new Map<number, number>();
  for (const { weight, values } of series)
    for (const { size, spacing } of values(Math.max(from, 0.3), to))
      weights.set(key(size), (weights.get(key(size)) ?? 0) + share * weight * spacing);
  return [...weights]
    .map(([k, weight]) => ({ size: k / 1e4, system, written: written(k / 1e4, system), weight }))
    .toSorted((a, b) => a.size - b.size);
}

const sum = (series: readonly Series[]) => series.reduce((total, s) => total + s.weight, 0);

const key = (size: Mm) => Math.round(size * 1e4);

/** `12.5` or `1 3/8 in`; an inch size that is no fraction is written in decimals. */
export function written(size: Mm, system: System): string {
  if (system === 'metric') return `${Number(size.toFixed(4))}`;
  const inches = size / mmPerInch;
  for (const under of [1, 2, 4, 8, 16, 32, 64]) {
    const over = inches * under;
    if (Math.abs(over - Math.round(over)) > 1e-4 * under) continue;
    const whole = Math.floor(Math.round(over) / under);
    const rest = Math.round(over) - whole * under;
    return `${[whole === 0 && rest > 0 ? '' : whole, rest > 0 ? `${rest}/${under}` : ''].filter((s) => s !== '').join(' ')} in`;
  }
  return `${Number(inches.toFixed(4))} in`;
}
