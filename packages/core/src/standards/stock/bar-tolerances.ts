/**
 * How true to size bar comes: by a class of ISO 286 (EN 10278), or by the table of the standard it is sold to.
 */
import type { SourceKey } from '../../sources/register.ts';
import { type Mm, mmPerInch } from '../../units/quantities.ts';
import { classMicrometres } from '../fits/limit-deviations.ts';
import { gradeIndex } from '../fits/tolerance-grades.ts';

export interface BarTolerance {
  readonly upper: Mm;
  readonly lower: Mm;
  /** Class of ISO 286, or empty when a table of its own holds. */
  readonly toleranceClass: string;
  readonly sources: readonly SourceKey[];
}

interface BySizes {
  readonly kind: 'table';
  readonly over: Mm;
  readonly upperEnds: readonly Mm[];
  readonly lower: readonly Mm[];
  /** Plus as much as minus. */
  readonly symmetrical: boolean;
}

interface ByClass {
  readonly kind: 'class';
  readonly toleranceClass: string;
  readonly over: Mm;
  readonly upTo: Mm;
}

const inchSteps = [1.5, 2.5, 4, 6].map((inch) => inch * mmPerInch);
const thousandths = (...values: number[]) => values.map((v) => (-v * mmPerInch) / 1000);

/** Ways bar is supplied: what to call it, and the tolerance that goes with it. */
export const supplies = {
  drawn: { name: 'bright drawn', rule: byClass('h10'), sources: ['TC-10278', 'EV-10278'] },
  'drawn to h9': { name: 'bright drawn, agreed to h9', rule: byClass('h9'), sources: ['TC-10278', 'EV-10278'] },
  'drawn to h11': {
    name: 'drawn after hardening and tempering, or to the older h11',
    rule: byClass('h11'),
    sources: ['TC-10278', 'SS-norm'],
  },
  turned: { name: 'turned smooth', rule: byClass('h10'), sources: ['TC-10278', 'EV-10278'] },
  ground: { name: 'ground', rule: byClass('h9'), sources: ['TC-10278', 'EV-10278'] },
  'ground to h8': { name: 'ground, to the older h8', rule: byClass('h8'), sources: ['SS-norm'] },
  'ground to h7': { name: 'ground, to the older h7', rule: byClass('h7'), sources: ['SS-norm'] },
  'ground to h6': { name: 'ground, to the older h6', rule: byClass('h6'), sources: ['SS-norm'] },
  'BS 970 drawn': {
    name: 'cold drawn to BS 970-3',
    rule: table(6, [18, 30, 50, 80, 100], [-0.07, -0.085, -0.1, -0.12, -0.14]),
    sources: ['AB-970'],
  },
  'A108 low carbon': {
    name: 'cold finished to ASTM A108, carbon to 0.28 %',
    rule: table(0, inchSteps, thousandths(2, 3, 4, 5)),
    sources: ['A108'],
  },
  'A108 medium carbon': {
    name: 'cold finished to ASTM A108, carbon over 0.28 to 0.55 %',
    rule: table(0, inchSteps, thousandths(3, 4, 5, 6)),
    sources: ['A108'],
  },
  'tool steel rod': {
    name: 'ground tool steel rod, one maker’s practice; between 3 and 4 mm and 12 and 13 mm the wider value is taken',
    rule: { ...table(0, [3, 12, 200], [-0.008, -0.013, -0.025]), symmetrical: true },
    sources: ['DS-rod'],
  },
} as const satisfies Record<string, { name: string; rule: BySizes | ByClass; sources: readonly SourceKey[] }>;

export type Supply = keyof typeof supplies;

function byClass(toleranceClass: string): ByClass {
  return { kind: 'class', toleranceClass, over: 0, upTo: 200 };
}

function table(over: Mm, upperEnds: readonly Mm[], lower: readonly Mm[]): BySizes {
  return { kind: 'table', over, upperEnds, lower, symmetrical: false };
}

/** Tolerance of a bar of this diameter, undefined where the supply is not made or its table does not reach. */
export function barTolerance(diameter: Mm, supply: Supply): BarTolerance | undefined {
  const { rule, sources }: { rule: BySizes | ByClass; sources: readonly SourceKey[] } = supplies[supply];
  if (!(diameter > rule.over)) return undefined;
  if (rule.kind === 'class') {
    if (diameter > rule.upTo) return undefined;
    const um = classMicrometres(diameter, 'h', gradeIndex(rule.toleranceClass.slice(1)) ?? -1);
    return um && { upper: um[0] / 1000, lower: um[1] / 1000, toleranceClass: rule.toleranceClass, sources };
  }
  const lower = rule.lower[rule.upperEnds.findIndex((end) => diameter <= end + 1e-9)];
  if (lower === undefined) return undefined;
  return { upper: rule.symmetrical ? -lower : 0, lower, toleranceClass: '', sources };
}
