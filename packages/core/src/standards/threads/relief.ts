/** Undercuts behind a thread, and run-outs where there is none. */
import { DomainError } from '../../errors.ts';
import type { SourceKey } from '../../sources/register.ts';
import type { Mm } from '../../units/quantities.ts';
import { formConstants } from './forms.ts';
import type { Side, Thread } from './record.ts';
import { reliefRows } from './tables/relief.ts';

export interface ReliefGroove {
  /** DIN 76-1 form: A and B outside, C and D inside; A and C the normal length. */
  readonly form: 'A' | 'B' | 'C' | 'D';
  readonly diameter: Mm;
  /** `h13` outside (h12 up to 3 mm), `H13` inside. */
  readonly tolerance: string;
  /** Least length of full diameter. */
  readonly leastLength: Mm;
  /** Greatest length, flanks of the groove included. */
  readonly greatestLength: Mm;
  readonly radius: Mm;
  /** Angle of the run-out flank. */
  readonly flankDegrees: 30;
  /** Greatest incomplete thread where no groove is cut. */
  readonly runOut: Mm;
  /** Greatest distance of the last full thread from the shoulder where no groove is cut, outside only. */
  readonly shoulderDistance?: Mm;
  /** What to be wary of. */
  readonly remark?: string;
  readonly sources: readonly SourceKey[];
}

/** Pitches at which another copy of the table prints something else. */
const disputed: Readonly<Record<number, string>> = {
  0.6: 'another copy has radius 0.2',
  2.5: 'another copy has the groove at d − 3.8',
  3.5: 'another copy has radius 2',
  4.5: 'another copy has radius 2.5',
  5.5: 'a later edition is said to correct the radius',
};

/**
 * Undercut and run-out of a thread by DIN 76-1.
 *
 *     outside: d_g = d − (table), x = 2.5P (short 1.25P), a = 3P (short 2P);  inside: d_g = d + (table), x = 4P (short 2.5P)
 *
 * Threads that are not ISO metric take the lengths of the next pitch of the table; the groove clears their own root by as
 * much as the table clears a metric one.
 *
 * @param thread  the thread
 * @param side  `external` or `internal`
 * @param length  `normal` (A, C) or `short` (B, D)
 * @returns the groove and run-out [mm]
 * @throws DomainError when the pitch lies outside the table
 * @source DIN76-1
 * @source GBT3-CADHOME
 * @valid pitches 0.2 to 6 mm
 * @example reliefGroove(parseThread('M10'), 'external').diameter → 7.7
 */
export function reliefGroove(thread: Thread, side: Side, length: 'normal' | 'short' = 'normal'): ReliefGroove {
  const { pitch } = thread;
  const row = reliefRows.find(([p]) => p >= pitch - 1e-9);
  if (!row || pitch < 0.2 - 1e-9) throw new DomainError('pitch', pitch, '0.2 to 6 mm, the pitches of DIN 76-1');
  const [rowPitch, below, above, radius, a, b, c, d] = row;
  const exact = thread.form === 'ISO metric' && Math.abs(rowPitch - pitch) < 1e-9;
  const normal = length === 'normal';
  const [leastLength, greatestLength] = side === 'external' ? (normal ? a : b) : normal ? c : d;
  const clearance = below - formConstants('ISO metric').rootDrop * rowPitch;
  const outside = exact ? thread.majorDiameter - below : floorTo(thread.rootDiameterExternal - clearance, 0.05);
  const inside = exact ? thread.majorDiameter + above : Math.ceil((thread.majorDiameter + above) * 20) / 20;
  const warning = exact
    ? disputed[pitch]
    : 'DIN 76-1 is for ISO metric threads; carried over by pitch, as is common practice';
  return {
    form: side === 'external' ? (normal ? 'A' : 'B') : normal ? 'C' : 'D',
    diameter: Number((side === 'external' ? outside : inside).toFixed(4)),
    tolerance: side === 'internal' ? 'H13' : thread.majorDiameter <= 3 ? 'h12' : 'h13',
    leastLength,
    greatestLength,
    radius,
    flankDegrees: 30,
    runOut: (side === 'external' ? (normal ? 2.5 : 1.25) : normal ? 4 : 2.5) * pitch,
    ...(side === 'external' ? { shoulderDistance: (normal ? 3 : 2) * pitch } : {}),
    ...(warning === undefined ? {} : { remark: warning }),
    sources: exact ? ['DIN76-1', 'GBT3-CADHOME'] : ['DIN76-1', 'common-practice'],
  };
}

function floorTo(value: number, step: number): number {
  return Math.floor(value / step + 1e-9) * step;
}
