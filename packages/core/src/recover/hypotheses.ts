/** Everything a size may have been meant to be: nominal size and limits, with a prior weight under each design habit. */
import { generalDeviation } from '../standards/fits/general-tolerances.ts';
import { classMicrometres, readToleranceClass } from '../standards/fits/limit-deviations.ts';
import { gradeIndex, largestSize } from '../standards/fits/tolerance-grades.ts';
import type { Mm } from '../units/quantities.ts';
import { type Nominal, nominalsBetween, ownSizeWeight, type System } from './nominals.ts';
import { type Basis, classWeights, type Role, thouBands } from './role-classes.ts';

/** A way of designing that goes through a whole machine. */
export interface Habit {
  readonly system: System;
  readonly basis: Basis;
}

export const habits: readonly Habit[] = [
  { system: 'metric', basis: 'hole' },
  { system: 'metric', basis: 'shaft' },
  { system: 'inch', basis: 'hole' },
  { system: 'inch', basis: 'shaft' },
];

/** Weights under the four {@link habits}, in their order. */
export type PerHabit = readonly [number, number, number, number];

export interface Hypothesis {
  /** `12 f7`, `3/8 in −.0005/−.0015`, `a size of its own`. */
  readonly written: string;
  readonly nominal: Mm | undefined;
  readonly system: System | undefined;
  /** `f7`, `−.0005/−.0015`; undefined for a size of its own. */
  readonly toleranceClass: string | undefined;
  readonly min: Mm;
  readonly max: Mm;
  readonly prior: PerHabit;
  /** Weight among all designs of its nominal size, given habit; for the joint prior with a mate. */
  readonly ofClass: PerHabit;
}

/** Limits out of a manual or off a drawing. */
export interface Stated {
  readonly min: Mm;
  readonly max: Mm;
  readonly written: string;
  readonly nominal: Mm;
  readonly system: System;
}

export interface Asked {
  /** Sizes as made that the readings leave possible. */
  readonly from: Mm;
  readonly to: Mm;
  readonly role: Role;
  /** Shaft-like features wear smaller. */
  readonly isShaft: boolean;
  /** Diameters take tolerance classes; lengths, widths and depths take general tolerances. */
  readonly isDiameter: boolean;
  /** More than one specimen: a size of its own was then made within limits too. */
  readonly specimens: number;
  readonly stated?: Stated | undefined;
}

/** Share of a machine's sizes that follow the other system of units after all: `common practice`. */
const stranger = 0.08;
/** How far a stated limit is believed before the readings are seen: `common practice`. */
const believed = 0.85;
/** Farthest that limits lie from their nominal size. */
const reach: Mm = 0.75;

/** All hypotheses whose limits come within reach of the sizes asked for. */
export function hypothesesFor(asked: Asked): Hypothesis[] {
  const share = asked.stated ? 1 - believed : 1;
  const found: Hypothesis[] = [];
  for (const system of ['metric', 'inch'] as const) {
    for (const nominal of nominalsBetween(system, asked.from - reach, asked.to + reach, asked.isDiameter))
      for (const h of ofNominal(nominal, asked, share)) if (h.max > asked.from && h.min < asked.to) found.push(h);
  }
  found.push(...ownSizes(asked, share));
  return asked.stated ? withStated(found, statedLimits(asked.stated)) : found;
}

/** Limits nearer than this to each other are the same design, whatever they are called. */
const sameLimits: Mm = 5e-4;

/** Stated limits take the place of those that say the same, and what these were believed with. */
function withStated(found: readonly Hypothesis[], stated: Hypothesis): Hypothesis[] {
  const saysTheSame = ({ min, max }: Hypothesis): boolean =>
    Math.abs(min - stated.min) < sameLimits && Math.abs(max - stated.max) < sameLimits;
  const prior = found.filter(saysTheSame).reduce((sum, h) => plus(sum, h.prior), stated.prior);
  return [...found.filter((h) => !saysTheSame(h)), { ...stated, prior }];
}

const plus = (x: PerHabit, y: PerHabit): PerHabit => [x[0] + y[0], x[1] + y[1], x[2] + y[2], x[3] + y[3]];

/** Half of inch limits were tolerance classes of the same kind, half round thou: `common practice`. */
const thouShare = 0.5;

function* ofNominal(nominal: Nominal, asked: Asked, share: number): Generator<Hypothesis> {
  const { size, system } = nominal;
  const inSystem = (habit: Habit) => nominal.weight * (habit.system === system ? 1 - stranger : stranger);
  const role = asked.isDiameter ? asked.role : 'free';
  const [hole, shaft] = [classWeights(role, asked.isShaft, 'hole'), classWeights(role, asked.isShaft, 'shaft')];
  const classes = asked.isDiameter ? new Set([...hole.keys(), ...shaft.keys()]) : lengthClasses.keys();
  const classShare = system === 'inch' ? 1 - thouShare : 1;
  for (const name of classes) {
    const limits = limitsOf(size, name);
    if (!limits) continue;
    const weight = (basis: Basis) =>
      classShare *
      (asked.isDiameter ? ((basis === 'hole' ? hole : shaft).get(name) ?? 0) : (lengthClasses.get(name) ?? 0));
    yield made(
      nominal,
      name,
      limits,
      habits.map((h) => share * weight(h.basis)),
      inSystem,
    );
  }
  if (system !== 'inch') return;
  for (const band of thouBands(role, asked.isShaft))
    yield made(
      nominal,
      band.written,
      { min: size + band.lower, max: size + band.upper },
      habits.map(() => share * thouShare * band.weight),
      inSystem,
    );
}

/** Lengths, depths and widths: mostly left to the general tolerance. */
const lengthClasses: ReadonlyMap<string, number> = new Map([
  ['ISO 2768-m', 0.5],
  ['ISO 2768-f', 0.2],
  ['ISO 2768-c', 0.15],
  ['js9', 0.08],
  ['js11', 0.07],
]);

function made(
  nominal: Nominal,
  toleranceClass: string,
  { min, max }: { min: Mm; max: Mm },
  ofClass: readonly number[],
  inSystem: (habit: Habit) => number,
): Hypothesis {
  const [a = 0, b = 0, c = 0, d = 0] = ofClass;
  const [p = 0, q = 0, r = 0, s = 0] = habits.map((h, i) => inSystem(h) * (ofClass[i] ?? 0));
  return {
    written: `${nominal.written} ${toleranceClass}`,
    nominal: nominal.size,
    system: nominal.system,
    toleranceClass,
    min,
    max,
    prior: [p, q, r, s],
    ofClass: [a, b, c, d],
  };
}

/** Limits of a class or general tolerance at a size; undefined where there are none. */
export function limitsOf(size: Mm, name: string): { min: Mm; max: Mm } | undefined {
  const general = /^ISO 2768-([fmc])$/.exec(name)?.[1];
  if (general === 'f' || general === 'm' || general === 'c') {
    if (size < 0.5 || size > 2000) return undefined;
    const either = generalDeviation(size, general);
    return { min: size - either, max: size + either };
  }
  const read = readToleranceClass(name);
  const um =
    read && size <= largestSize ? classMicrometres(size, read.letters, gradeIndex(read.grade) ?? -1) : undefined;
  return um && { min: size + um[1] / 1000, max: size + um[0] / 1000 };
}

const ownWritten = 'a size of its own';

/** One specimen: any size alike. Several: within 0.02 or 0.06 mm of one another, wherever that is. */
function ownSizes({ from, to, specimens }: Asked, share: number): Hypothesis[] {
  const own = (min: Mm, max: Mm, weight: number): Hypothesis => ({
    written: ownWritten,
    nominal: undefined,
    system: undefined,
    toleranceClass: undefined,
    min,
    max,
    prior: [weight, weight, weight, weight],
    ofClass: [0, 0, 0, 0],
  });
  if (specimens < 2) return [own(from, to, share * ownSizeWeight * (to - from))];
  return [0.02, 0.06].flatMap((width) => {
    const step = Math.max(width / 3, (to - from) / 150);
    const count = Math.ceil((to - from + width) / step);
    return Array.from({ length: count }, (_, i) => {
      const min = from - width + i * step;
      return own(min, min + width, (share * ownSizeWeight * step) / 2);
    });
  });
}

/** Limits out of a manual are a hypothesis of their own, whatever the habit. */
function statedLimits(stated: Stated): Hypothesis {
  const half = Math.max((stated.max - stated.min) / 2, 5e-4);
  const middle = (stated.max + stated.min) / 2;
  return {
    written: stated.written,
    nominal: stated.nominal,
    system: stated.system,
    toleranceClass: 'the stated limits',
    min: middle - half,
    max: middle + half,
    prior: [believed, believed, believed, believed],
    ofClass: [believed, believed, believed, believed],
  };
}

/**
 * Whether a machine was drawn in millimetres or inches, before anything is measured, by country and decade. `common practice`
 *
 * @returns probability of inches
 */
export function inchPrior(country: string | undefined, decade: number | undefined): number {
  const where = country?.trim().toLowerCase();
  if (where === undefined || where === '') return 0.5;
  const british = /brit|england|scot|wales|ireland|u\.?k\.?$|united kingdom|australia|new zealand|india|south africa/;
  if (/^u\.?s\.?a?\.?$|america|united states/.test(where)) return decade !== undefined && decade >= 1990 ? 0.7 : 0.95;
  if (/canada/.test(where)) return decade !== undefined && decade >= 1980 ? 0.5 : 0.92;
  if (british.test(where)) return decade === undefined ? 0.8 : decade < 1965 ? 0.95 : decade < 1975 ? 0.6 : 0.15;
  return 0.04;
}

/** Habits before anything is measured: hole basis three times as often as shaft basis. `common practice` */
export function habitPrior(
  machine: { country?: string | undefined; decade?: number | undefined } | undefined,
): PerHabit {
  const inch = inchPrior(machine?.country, machine?.decade);
  return [(1 - inch) * 0.75, (1 - inch) * 0.25, inch * 0.75, inch * 0.25];
}
