/** Parts drawn at random from stated priors, with readings taken on them: what the recovery of sizes is proved on. */
import { type Habit, habits, limitsOf, type PerHabit } from '../src/recover/hypotheses.ts';
import { nominalsBetween, ownSizeWeight } from '../src/recover/nominals.ts';
import type { Condition, Ready } from '../src/recover/reading-density.ts';
import { classWeights, type Role, thouBands } from '../src/recover/role-classes.ts';

export const allRoles: readonly Role[] = [
  ...(['sliding', 'sealing', 'locating', 'running', 'pressed', 'bonded', 'clearance', 'free'] as const),
];

/** How the metal went: the law of the model, and four that are not. */
export type WearLaw = 'exponential' | 'half-normal' | 'gamma' | 'uniform' | 'all alike';
/** Where within its limits a maker ends: anywhere, about the middle, or just inside on the side where metal is left. */
export type MakerLaw = 'anywhere' | 'middle' | 'just inside';

export interface Law {
  readonly wear: WearLaw;
  readonly maker: MakerLaw;
  /** Mean wear, least and most [mm]; drawn evenly in its logarithm. */
  readonly wearFrom: number;
  readonly wearTo: number;
  readonly gauge: 'micrometer' | 'calliper' | 'either';
  /** Gauge errors as the model has them (normal), or as gauges have them: within their limits and read in steps. */
  readonly steps: boolean;
  readonly from: number;
  readonly to: number;
  readonly habits: PerHabit;
  readonly roles: readonly Role[];
  readonly specimens: number;
  /** Only sizes from the series, none of its own. */
  readonly noOwn?: boolean;
}

export const modelLaw: Law = {
  wear: 'exponential',
  maker: 'anywhere',
  wearFrom: 0.002,
  wearTo: 0.3,
  gauge: 'either',
  steps: false,
  from: 4,
  to: 45,
  habits: [0.375, 0.125, 0.375, 0.125],
  roles: allRoles,
  specimens: 3,
};

export interface Invented {
  readonly habit: Habit;
  readonly nominal: number | undefined;
  readonly toleranceClass: string | undefined;
  readonly role: Role;
  readonly isShaft: boolean;
  readonly gauge: 'micrometer' | 'calliper';
  /** Size as made, by specimen. */
  readonly made: Readonly<Record<string, number>>;
  readonly readings: readonly Ready[];
}

const normal = (random: () => number) => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

function pick<T>(random: () => number, items: readonly T[], weight: (item: T) => number): T {
  const total = items.reduce((sum, item) => sum + weight(item), 0);
  let left = random() * total;
  for (const item of items) {
    left -= weight(item);
    if (left <= 0) return item;
  }
  const last = items.at(-1);
  if (last === undefined) throw new Error('nothing to pick from');
  return last;
}

/** One of the model's shared and own uncertainties [mm] and the limits and steps behind them. */
export const gaugeErrors = {
  micrometer: { limit: 0.004, step: 0.01, hand: 0.002 },
  calliper: { limit: 0.02, step: 0.01, hand: 0.01 },
} as const;

export function inventPart(random: () => number, law: Law): Invented {
  const habit = habits[pick(random, [0, 1, 2, 3], (i) => law.habits[i] ?? 0)];
  if (!habit) throw new Error('no habit');
  const role = pick(random, law.roles, () => 1);
  const isShaft = random() < 0.6;
  const design = drawDesign(random, law, habit, role, isShaft);
  const gauge = law.gauge === 'either' ? pick(random, ['micrometer', 'calliper'] as const, () => 1) : law.gauge;
  const count = 1 + Math.floor(random() * law.specimens);
  const bias = draw(random, law, gaugeErrors[gauge].limit);
  const made: Record<string, number> = {};
  const readings: Ready[] = [];
  for (let k = 0; k < count; k++) {
    const specimen = `s${k}`;
    const size = within(random, law.maker, design.min, design.max, isShaft);
    made[specimen] = size;
    readings.push(...measure(random, law, { specimen, size, isShaft, gauge, bias }));
  }
  return { habit, nominal: design.nominal, toleranceClass: design.name, role, isShaft, gauge, made, readings };
}

function drawDesign(random: () => number, law: Law, habit: Habit, role: Role, isShaft: boolean) {
  const own = law.noOwn === true ? 0 : ownSizeWeight * (law.to - law.from);
  const other = habit.system === 'metric' ? 'inch' : 'metric';
  const both = [
    ...nominalsBetween(habit.system, law.from, law.to, true).map((n) => ({ n, w: 0.92 * n.weight })),
    ...nominalsBetween(other, law.from, law.to, true).map((n) => ({ n, w: 0.08 * n.weight })),
  ];
  const total = both.reduce((sum, b) => sum + b.w, 0);
  if (random() < own / (own + total)) {
    const middle = law.from + random() * (law.to - law.from);
    const half = random() < 0.5 ? 0.01 : 0.03;
    return { nominal: undefined, name: undefined, min: middle - half, max: middle + half };
  }
  const { n } = pick(random, both, (b) => b.w);
  if (n.system === 'inch' && random() < 0.5) {
    const band = pick(random, thouBands(role, isShaft), (b) => b.weight);
    return { nominal: n.size, name: band.written, min: n.size + band.lower, max: n.size + band.upper };
  }
  const [name] = pick(random, [...classWeights(role, isShaft, habit.basis)], ([, w]) => w);
  const limits = limitsOf(n.size, name);
  if (!limits) throw new Error(`no ${name} at ${n.size}`);
  return { nominal: n.size, name, ...limits };
}

function within(random: () => number, law: MakerLaw, min: number, max: number, isShaft: boolean): number {
  const t =
    law === 'anywhere'
      ? random()
      : law === 'middle'
        ? Math.min(1, Math.max(0, 0.5 + normal(random) / 6))
        : 1 - Math.min(0.999, -Math.log(1 - random()) / 4);
  const outward = isShaft || law !== 'just inside' ? t : 1 - t;
  return min + outward * (max - min);
}

function draw(random: () => number, law: Law, limit: number): number {
  return law.steps ? (2 * random() - 1) * limit : (normal(random) * limit) / Math.sqrt(3);
}

interface Measured {
  readonly specimen: string;
  readonly size: number;
  readonly isShaft: boolean;
  readonly gauge: 'micrometer' | 'calliper';
  readonly bias: number;
}

function measure(random: () => number, law: Law, m: Measured): Ready[] {
  const { limit, step, hand } = gaugeErrors[m.gauge];
  const own = Math.hypot(step / Math.sqrt(12), hand);
  const scale = law.wearFrom * (law.wearTo / law.wearFrom) ** random();
  const alike = -Math.log(1 - random()) * scale;
  const wornShare = [0.2, 0.5, 0.8][Math.floor(random() * 3)] ?? 0.5;
  const count = 2 + Math.floor(random() * 5);
  return Array.from({ length: count }, (_, i) => {
    const condition = pick(random, ['protected', 'worn', 'unsure'] as const, (c) => (c === 'protected' ? 0.25 : 0.375));
    const isWorn = random() < (condition === 'worn' ? 1 : condition === 'protected' ? 0.03 : wornShare);
    const wear = isWorn ? worn(random, law.wear, scale, alike) : 0;
    const exact = m.size + m.bias + (m.isShaft ? -wear : wear);
    const seen = law.steps ? Math.round((exact + normal(random) * hand) / step) * step : exact + normal(random) * own;
    const turned = (m.isShaft ? 1 : -1) * seen;
    const conditionOf: Condition = condition;
    return {
      id: `${m.specimen}-${i}`,
      specimen: m.specimen,
      condition: conditionOf,
      gauge: m.gauge,
      value: turned,
      own,
      shared: limit / Math.sqrt(3),
    };
  });
}

function worn(random: () => number, law: WearLaw, scale: number, alike: number): number {
  switch (law) {
    case 'exponential':
      return -Math.log(1 - random()) * scale;
    case 'half-normal':
      return Math.abs(normal(random)) * scale * Math.sqrt(Math.PI / 2);
    case 'gamma':
      return (-Math.log(1 - random()) - Math.log(1 - random())) * (scale / 2);
    case 'uniform':
      return random() * 2 * scale;
    case 'all alike':
      return alike;
  }
}
