/** Limits of Whitworth, Fine and Brass threads (from memory, and the sources say so) and of BA threads (read). */
import { DomainError } from '../../errors.ts';
import { type Mm, mmPerInch } from '../../units/quantities.ts';
import { band, type ThreadLimits } from './limits-type.ts';
import type { Side, Thread } from './record.ts';

/**
 * Effective diameter tolerance of the medium class of BS 84.
 *
 *     T = 0.002 D^(1/3) + 0.003 √L + 0.005 √p   in inches
 *
 * @param diameter  major diameter [mm]
 * @param pitch  pitch [mm]
 * @param engagement  length of engagement; the tables take the diameter [mm]
 * @returns the tolerance [mm]
 * @source BS84
 * @valid Whitworth form; the source gives no further range
 * @example whitworthTolerance(6.35, 1.27, 6.35) → 0.0985
 */
export function whitworthTolerance(diameter: Mm, pitch: Mm, engagement: Mm): Mm {
  const [d, p, l] = [diameter / mmPerInch, pitch / mmPerInch, engagement / mmPerInch];
  return (0.002 * Math.cbrt(d) + 0.003 * Math.sqrt(l) + 0.005 * Math.sqrt(p)) * mmPerInch;
}

const boltFactor: Readonly<Record<string, number>> = { close: 2 / 3, medium: 1, free: 3 / 2 };
const nutFactor: Readonly<Record<string, number>> = { medium: 1, normal: 3 / 2 };

/** Bolts of the medium and free class have an allowance for plating up to this size; its figures are not held. */
const largestPlated: Mm = 19.05;

function whitworthRemark(thread: Thread, side: Side, own: string): string {
  const plated = side === 'external' && own !== 'close' && thread.majorDiameter <= largestPlated + 1e-9;
  return plated
    ? 'Tolerances of BS 84 from memory. The standard allows for plating on bolts of this class up to 3/4 in; that allowance is not held, so the greatest sizes here are the basic ones'
    : 'Tolerances of BS 84 from memory';
}

/** BS 84: bolts close, medium and free; nuts medium and normal. */
export function whitworthLimits(thread: Thread, side: Side, asked: string | undefined): ThreadLimits {
  const factors = side === 'external' ? boltFactor : nutFactor;
  const own =
    asked !== undefined && (factors[asked] !== undefined || asked !== thread.toleranceClass) ? asked : 'medium';
  const factor = factors[own];
  if (factor === undefined) throw new DomainError('toleranceClass', own, Object.keys(factors).join(', '));
  const tolerance = factor * whitworthTolerance(thread.majorDiameter, thread.pitch, thread.majorDiameter);
  const { majorDiameter: major, pitchDiameter: pitch, minorDiameter: minor } = thread;
  const rootPitch = Math.sqrt(thread.pitch / mmPerInch) * mmPerInch;
  const common = {
    side,
    toleranceClass: own,
    allowance: 0,
    remark: whitworthRemark(thread, side, own),
    sources: ['BS84', 'MH27-p1857', 'THEGAUGE-BS84'],
  } as const;
  if (side === 'external') {
    return {
      ...common,
      major: band(major, major - tolerance - 0.01 * rootPitch),
      pitch: band(pitch, pitch - tolerance),
      minor: band(minor, minor - tolerance - 0.013 * rootPitch),
      notSet: [],
    };
  }
  return {
    ...common,
    major: band(pitch + tolerance + (5 / 6) * thread.fundamentalHeight, major),
    pitch: band(pitch + tolerance, pitch),
    minor: band(minor + nutMinorTolerance(thread), minor),
    notSet: ['major.max'],
  };
}

/** 0.2p plus 0.004, 0.005 or 0.007 in as the thread gets coarser. */
function nutMinorTolerance(thread: Thread): Mm {
  const tpi = thread.threadsPerInch ?? mmPerInch / thread.pitch;
  return 0.2 * thread.pitch + (tpi >= 26 ? 0.004 : tpi >= 22 ? 0.005 : 0.007) * mmPerInch;
}

/** BS 93: bolts close (0 to 10 BA) and normal, one class of nut. */
export function baLimits(thread: Thread, side: Side, asked: string | undefined): ThreadLimits {
  const own = side === 'internal' ? 'normal' : (asked ?? 'normal');
  const number = Number(thread.size);
  if (own !== 'normal' && own !== 'close') throw new DomainError('toleranceClass', own, 'close or normal');
  if (own === 'close' && number > 10)
    throw new DomainError('toleranceClass', own, `normal: the close class ends at 10 BA`);
  const { majorDiameter: major, pitchDiameter: pitch, minorDiameter: minor, pitch: p } = thread;
  const common = { side, toleranceClass: own, sources: ['MH31-p2115', 'BS93-B'] } as const;
  if (side === 'internal') {
    const pitchMax = pitch + 0.12 * p + 0.03;
    return {
      ...common,
      major: band(pitchMax + thread.fundamentalHeight - 0.268168 * p, major),
      pitch: band(pitchMax, pitch),
      minor: band(minor + 0.375 * p, minor),
      allowance: 0,
      notSet: ['major.max'],
    };
  }
  const close = own === 'close';
  const allowance = !close && number <= 10 ? 0.025 : 0;
  const majorTolerance = (close ? 0.15 : number <= 10 ? 0.2 : 0.25) * p;
  return {
    ...common,
    major: band(major - allowance, major - allowance - majorTolerance),
    pitch: band(pitch - allowance, pitch - allowance - (close ? 0.08 * p + 0.02 : 0.1 * p + 0.025)),
    minor: band(minor - allowance, minor - allowance - (close ? 0.16 * p + 0.04 : 0.2 * p + 0.05)),
    allowance,
    notSet: [],
  };
}
