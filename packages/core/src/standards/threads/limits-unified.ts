/** Limits of Unified threads, ASME B1.1. The formulas are in inches, and so is their rounding. */
import { DomainError } from '../../errors.ts';
import { mmPerInch } from '../../units/quantities.ts';
import { band, type ThreadLimits } from './limits-type.ts';
import type { Side, Thread } from './record.ts';

const factor: Readonly<Record<string, number>> = { '1A': 1.5, '2A': 1, '3A': 0.75, '1B': 1.95, '2B': 1.3, '3B': 0.975 };

/** The table prints 0.0016 in where the formula gives 0.00165. */
const printedAllowance: Readonly<Record<string, number>> = { '5/8-11 UNC': 0.0016 };

const round = (value: number, places: number) => Number((value + 1e-9).toFixed(places));

/**
 * Pitch diameter tolerance of class 2A, from which all other classes follow.
 *
 *     T = 0.0015 D^(1/3) + 0.0015 √LE + 0.015 P^(2/3)   in inches
 *
 * @param diameter  basic major diameter in inches [-]
 * @param pitch  pitch in inches [-]
 * @param engagement  length of engagement in inches: D for UNC, UNF and 4, 6 and 8 UN, else 9P [-]
 * @returns the tolerance in inches, to six places [-]
 * @source ASME-B1.1
 * @valid Unified inch threads; the source gives no further range
 * @example pitchTolerance2A(0.25, 0.05, 0.25) → 0.003731
 */
export function pitchTolerance2A(diameter: number, pitch: number, engagement: number): number {
  return round(0.0015 * Math.cbrt(diameter) + 0.0015 * Math.sqrt(engagement) + 0.015 * pitch ** (2 / 3), 6);
}

/**
 * Tolerance of the nut's minor diameter.
 *
 *     1B 2B:  D < 1/4: 0.05 P^(2/3) + 0.03 P/D − 0.002, within 0.25P − 0.4P² and 0.394P;  else 0.25P − 0.4P², or 0.15P coarser than 4 tpi
 *     3B:     0.05 P^(2/3) + 0.03 P/D − 0.002, at least 0.23P − 1.5P² (0.12P from 12 tpi), at most 0.394P
 *
 * @param diameter  basic major diameter in inches [-]
 * @param pitch  pitch in inches [-]
 * @param toleranceClass  1B, 2B or 3B
 * @returns the tolerance in inches [-]
 * @source ASME-B1.1
 * @source MH31-T6
 * @valid Unified inch threads
 * @example minorTolerance(0.5, 1 / 20, '2B') → 0.0115
 */
export function minorTolerance(diameter: number, pitch: number, toleranceClass: string): number {
  const p = pitch;
  const small = 0.05 * p ** (2 / 3) + (0.03 * p) / diameter - 0.002;
  if (toleranceClass === '3B') {
    const least = p > 1 / 12.5 ? 0.12 * p : 0.23 * p - 1.5 * p * p;
    return Math.min(Math.max(small, least), 0.394 * p);
  }
  if (diameter >= 0.25) return p > 0.25 ? 0.15 * p : 0.25 * p - 0.4 * p * p;
  return Math.min(Math.max(small, 0.25 * p - 0.4 * p * p), 0.394 * p);
}

export function unifiedLimits(thread: Thread, side: Side, asked: string | undefined): ThreadLimits {
  const letter = side === 'external' ? 'A' : 'B';
  const own =
    asked === undefined || (asked === thread.toleranceClass && !asked.endsWith(letter)) ? `2${letter}` : asked;
  const cls = own.toUpperCase();
  if (factor[cls] === undefined || !cls.endsWith(letter)) {
    throw new DomainError('toleranceClass', own, side === 'external' ? '1A, 2A or 3A' : '1B, 2B or 3B');
  }
  const d = thread.majorDiameter / mmPerInch;
  const p = thread.pitch / mmPerInch;
  const byDiameter = thread.series === 'UNC' || thread.series === 'UNF' || isCoarseConstantPitch(thread);
  const t2a = pitchTolerance2A(d, p, byDiameter ? d : 9 * p);
  return side === 'external' ? boltLimits(thread, cls, d, p, t2a) : nutLimits(thread, cls, d, p, t2a);
}

function isCoarseConstantPitch(thread: Thread): boolean {
  return / UN\b/.test(thread.designation) && [4, 6, 8].includes(thread.threadsPerInch ?? 0);
}

const inches = (max: number, min: number) => band(max * mmPerInch, min * mmPerInch);

function boltLimits(thread: Thread, cls: string, d: number, p: number, t2a: number): ThreadLimits {
  const printed = printedAllowance[`${thread.size}-${thread.threadsPerInch} ${thread.series}`];
  const es = cls === '3A' ? 0 : (printed ?? round(0.3 * t2a, 4));
  const d2 = thread.pitchDiameter / mmPerInch;
  const pitchMin = d2 - es - round((factor[cls] ?? 1) * t2a, 4);
  const majorMax = d - es;
  return {
    side: 'external',
    toleranceClass: cls,
    major: inches(majorMax, majorMax - round((cls === '1A' ? 0.09 : 0.06) * p ** (2 / 3), 4)),
    pitch: inches(d2 - es, pitchMin),
    minor: inches(d - es - 1.19078 * p, pitchMin - 0.616025 * p),
    minorFlatMax: Number(((d2 - es - 0.433013 * p) * mmPerInch).toFixed(5)),
    allowance: es * mmPerInch,
    notSet: ['minor.min'],
    sources: ['ASME-B1.1', 'MH27-p1755'],
  };
}

function nutLimits(thread: Thread, cls: string, d: number, p: number, t2a: number): ThreadLimits {
  const d2 = thread.pitchDiameter / mmPerInch;
  const pitchMax = d2 + round((factor[cls] ?? 1) * t2a, 4);
  const d1 = d - 1.25 * (thread.fundamentalHeight / mmPerInch);
  const places = d > 0.138 && cls !== '3B' ? 3 : 4;
  return {
    side: 'internal',
    toleranceClass: cls,
    major: inches(pitchMax + 0.793857 * p, d),
    pitch: inches(pitchMax, d2),
    minor: inches(round(d1 + minorTolerance(d, p, cls), places), round(d1, places)),
    allowance: 0,
    notSet: ['major.max'],
    sources: ['ASME-B1.1', 'MH27-p1755'],
  };
}
