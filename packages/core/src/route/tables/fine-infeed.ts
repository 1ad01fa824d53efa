/**
 * Infeed finer than the cross slide's dial: the top slide set over a little, so that only a share of its travel goes into the work.
 */
import { DomainError } from '../../errors.ts';
import { degrees, type Mm, type Radian } from '../../units/quantities.ts';
import type { DialTable } from '../dial-table.ts';
import { type Dial, dialNote, dialSetting, slidePerDivision } from './dial.ts';

/**
 * Angle from the axis to which the top slide is set over for one of its divisions to feed a given depth.
 *
 *     β = arcsin(u / s)
 *
 * @param infeed  depth on the radius wanted for one division [mm]
 * @param division  travel of the top slide for one division [mm]
 * @returns the angle, nought when the slide lies along the axis [rad]
 * @throws DomainError when the infeed is not above 0 and at most the travel
 * @source geometry
 * @valid 0 < u ≤ s
 * @example setOverForInfeed(0.002, 0.02) → 0.10017
 */
export function setOverForInfeed(infeed: Mm, division: Mm): Radian {
  if (!(infeed > 0 && infeed <= division)) throw new DomainError('infeed', infeed, `above 0 to ${division} mm`);
  return Math.asin(infeed / division);
}

/**
 * How far the cutter moves along the work while the set-over top slide feeds it in.
 *
 *     z = u / tan β
 *
 * @param depth  fed in, on the radius [mm]
 * @param angle  of the top slide from the axis [rad]
 * @returns movement along the axis [mm]
 * @throws DomainError when the angle is not above 0 and at most π/2
 * @source geometry
 * @valid 0 < β ≤ π/2
 * @example alongForDepth(0.01, 0.10017) → 0.0995
 */
export function alongForDepth(depth: Mm, angle: Radian): Mm {
  if (!(angle > 0 && angle <= Math.PI / 2)) throw new DomainError('angle', angle, 'above 0 to π/2');
  return depth / Math.tan(angle);
}

export interface FineInfeed {
  readonly angle: Radian;
  /** Depth on the radius for one division of the top slide. */
  readonly infeed: Mm;
  /** The share of its travel that goes into the work is one in this many. */
  readonly oneIn: number;
}

/** Shares that are easy to reckon with. */
const shares = [10, 20, 50] as const;
const shareInWords: Readonly<Record<number, string>> = { 10: 'a tenth', 20: 'a twentieth', 50: 'a fiftieth' };
/** A dial is fine enough when one division takes at most this share of the limits off the diameter; `common practice`. */
const dialShare = 0.5;
/** A fine infeed is to take at most this share of the limits off the diameter in one division; `common practice`. */
const fineShare = 0.25;

/** The cross slide stops up to a division short: aimed at the middle, it must not leave the limits for that. */
export function dialServes(dial: Dial, tolerance: Mm): boolean {
  return 2 * slidePerDivision(dial) <= dialShare * tolerance + 1e-9;
}

/** The largest of the easy shares at which a division of the top slide is fine enough for the limits; undefined when none is. */
export function fineInfeed(topSlide: Dial, tolerance: Mm): FineInfeed | undefined {
  const travel = slidePerDivision(topSlide);
  const oneIn = shares.find((share) => (2 * travel) / share <= fineShare * tolerance + 1e-9);
  if (oneIn === undefined) return undefined;
  return { angle: setOverForInfeed(travel / oneIn, travel), infeed: travel / oneIn, oneIn };
}

/** The closest limits that {@link fineInfeed} can serve. */
export function closestLimits(topSlide: Dial): Mm {
  return (2 * slidePerDivision(topSlide)) / shares[2] / fineShare;
}

export interface FineTableInput {
  readonly id: string;
  readonly operation: string;
  readonly title: string;
  /** Diameter that the cross slide is expected to leave for the last pass. */
  readonly expected: Mm;
  readonly target: Mm;
  readonly tolerance: Mm;
  readonly where: 'outside' | 'bore';
  readonly topSlide: Dial;
  readonly fine: FineInfeed;
  /** Less than this depth on the radius rubs. */
  readonly leastDepth: Mm;
}

/** Measured diameters before the last pass lie this far apart in the table. */
const rowStep: Mm = 0.01;
const rowsEachSide = 4;

/** The last pass in divisions of the top slide, for what is measured before it. */
export function fineTable(input: FineTableInput): DialTable {
  const { expected, target, where, topSlide, fine } = input;
  const inwards = where === 'outside' ? 1 : -1;
  const measured = Array.from(
    { length: 2 * rowsEachSide + 1 },
    (_, i) => Math.round(1000 * (expected + inwards * (rowsEachSide - i) * rowStep)) / 1000,
  );
  const rows = measured.flatMap((diameter) => {
    const depth = (inwards * (diameter - target)) / 2;
    if (depth < fine.infeed || depth < input.leastDepth) return [];
    const setting = dialSetting(depth * fine.oneIn, topSlide);
    const fed = setting.travel / fine.oneIn;
    return [
      {
        measured: diameter,
        turns: setting.turns,
        divisions: setting.divisions,
        diameter: diameter - inwards * 2 * fed,
        along: alongForDepth(fed, fine.angle),
      },
    ];
  });
  const perDivision = Number((2 * fine.infeed).toFixed(5));
  return {
    id: input.id,
    kind: where === 'outside' ? 'turning' : 'boring',
    title: input.title,
    operation: input.operation,
    columns: [
      { key: 'measured', title: 'measured before', unit: 'mm', decimals: 3 },
      { key: 'turns', title: 'turns', unit: '', decimals: 0 },
      { key: 'divisions', title: 'divisions', unit: '', decimals: 0 },
      { key: 'diameter', title: 'diameter after', unit: 'mm', decimals: 3 },
      { key: 'along', title: 'moves along', unit: 'mm', decimals: 2 },
      { key: 'done', title: 'measured after', unit: 'mm', blank: true },
    ],
    rows,
    notes: [
      `The limits lie ${Number(input.tolerance.toFixed(4))} mm apart, too close for the dial of the cross slide. Before the first pass set the top slide over ${degrees(fine.angle).toFixed(2)}° from the axis: ${shareInWords[fine.oneIn] ?? `one part in ${fine.oneIn}`} of its travel then goes ${where === 'outside' ? 'into the work' : 'outwards into the bore'}, and one division takes ${perDivision} mm off the diameter${where === 'outside' ? '' : ' that is left'}.`,
      `Prove it with an indicator across the work: ten divisions must move the cutter ${Number((10 * fine.infeed).toFixed(4))} mm. It must go ${where === 'outside' ? 'towards the axis' : 'away from the axis'} as the top slide is wound towards the chuck.`,
      'Do all passes but the last with the cross slide, measure cold, lock the cross slide, and put the last pass on with the top slide by the row of what was measured.',
      'The cutter also moves along the work: wind the top slide back by that much before the first pass, or it runs into a shoulder.',
      `With less than ${Number(input.leastDepth.toFixed(3))} mm on the radius left the edge rubs: leave that to abrasive paper.`,
      dialNote('Top slide', topSlide),
    ],
  };
}
