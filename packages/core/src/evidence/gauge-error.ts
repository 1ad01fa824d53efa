/**
 * How far a gauge may be off: from its own certificate where the owner gave one, else from the standard for its kind.
 */
import { DomainError } from '../errors.ts';
import type { SourceKey } from '../sources/register.ts';
import type { Mm } from '../units/quantities.ts';
import type { Gauge } from './schema.ts';

type Kind = Gauge['kind'];

/** Whether the gauge touches the outside of the part, its inside, a depth, or lies along it from shoulder to shoulder. */
export type Touch = 'outside' | 'inside' | 'depth' | 'length';

interface Habit {
  /** Usual smallest step. */
  readonly resolution: Mm;
  /** Repeatability of a careful owner, one standard deviation; `home-workshop`. */
  readonly repeatability: Mm;
  readonly source: SourceKey;
}

const habits: Record<Kind, Habit> = {
  'outside micrometer': { resolution: 0.01, repeatability: 0.002, source: 'DIN862-863' },
  'inside micrometer': { resolution: 0.01, repeatability: 0.005, source: 'TB9' },
  'three-point bore gauge': { resolution: 0.005, repeatability: 0.002, source: 'DIN863-4' },
  calliper: { resolution: 0.01, repeatability: 0.01, source: 'DIN862-863' },
  'depth gauge': { resolution: 0.02, repeatability: 0.01, source: 'DIN862-863' },
  'height gauge': { resolution: 0.02, repeatability: 0.01, source: 'home-workshop' },
  'dial indicator': { resolution: 0.01, repeatability: 0.003, source: 'DIN878' },
  'telescopic gauge and micrometer': { resolution: 0.01, repeatability: 0.01, source: 'home-workshop' },
  'pin gauges': { resolution: 0.01, repeatability: 0.002, source: 'home-workshop' },
  'thread pitch gauge': { resolution: 0.05, repeatability: 0.02, source: 'home-workshop' },
  'wires and micrometer': { resolution: 0.01, repeatability: 0.005, source: 'home-workshop' },
  'radius gauges': { resolution: 0.5, repeatability: 0.1, source: 'home-workshop' },
  rule: { resolution: 0.5, repeatability: 0.15, source: 'home-workshop' },
};

/** Smallest step and repeatability usual for a kind of gauge. */
export function gaugeHabit(kind: Kind): Habit {
  return habits[kind];
}

/**
 * Largest error of an outside micrometer that is as good as its standard asks.
 *
 *     4 µm to 50 mm, then 1 µm more for every further 50 mm of range
 *
 * @param length  what is measured [mm]
 * @returns limit of error, plus or minus [mm]
 * @throws DomainError beyond the 500 mm the table covers
 * @source DIN862-863 table of DIN 863-1
 * @valid 0 to 500 mm
 * @example micrometerError(90) → 0.005
 */
export function micrometerError(length: Mm): Mm {
  if (!(length >= 0 && length <= 500)) throw new DomainError('length', length, '0 to 500 mm');
  const rangeEnd = Math.max(25, Math.ceil(length / 25) * 25);
  return (4 + Math.floor((rangeEnd - 25) / 50)) / 1000;
}

/**
 * Largest error of a calliper that is as good as its standard asks.
 *
 *     reading to 0.02 mm or finer: 20 µm to 100 mm, 30 µm to 600 mm, 40 µm to 1000 mm
 *     reading to 0.05 mm: 50 µm to 300 mm, then 10 µm more for every further 100 mm
 *     inside and depth: 20 µm more
 *
 * @param length  what is measured [mm]
 * @param resolution  smallest step read [mm]
 * @param touch  outside, inside, depth or length
 * @returns limit of error, plus or minus [mm]
 * @throws DomainError beyond the 1000 mm the table covers
 * @source DIN862-863 table of DIN 862, the borders of the 0.02 mm cells are from memory
 * @valid 0 to 1000 mm
 * @example calliperError(16, 0.01, 'outside') → 0.02
 */
export function calliperError(length: Mm, resolution: Mm, touch: Touch): Mm {
  if (!(length >= 0 && length <= 1000)) throw new DomainError('length', length, '0 to 1000 mm');
  const fine = length <= 100 ? 20 : length <= 600 ? 30 : 40;
  const coarse = length <= 300 ? 50 : 50 + 10 * Math.ceil((length - 300) / 100);
  return ((resolution <= 0.02 ? fine : coarse) + (touch === 'outside' || touch === 'length' ? 0 : 20)) / 1000;
}

/** Limits of the kinds that have one figure over their whole range. */
const fixedErrors: Partial<Record<Kind, Mm>> = {
  'inside micrometer': 0.012,
  'three-point bore gauge': 0.005,
  'height gauge': 0.04,
  'dial indicator': 0.017,
  'telescopic gauge and micrometer': 0.01,
  'pin gauges': 0.0125,
  'thread pitch gauge': 0.05,
  'wires and micrometer': 0.008,
  'radius gauges': 0.25,
  rule: 0.25,
};

/**
 * Largest error to expect of a gauge, plus or minus: the owner's figure, else the one for its kind.
 */
export function permissibleError(gauge: Gauge, length: Mm, touch: Touch): Mm {
  if (gauge.permissibleError !== undefined) return gauge.permissibleError;
  const resolution = gauge.resolution ?? habits[gauge.kind].resolution;
  switch (gauge.kind) {
    case 'outside micrometer':
      return micrometerError(Math.min(length, 500));
    case 'calliper':
      return calliperError(Math.min(length, 1000), resolution, touch);
    case 'depth gauge':
      return calliperError(Math.min(length, 1000), resolution, 'depth');
    default:
      return fixedErrors[gauge.kind] ?? resolution;
  }
}

/** Can this gauge touch such a dimension, and is the size within its reach? */
export function serves(gauge: Gauge, touch: Touch, length: Mm): boolean {
  if (gauge.from !== undefined && length < gauge.from) return false;
  if (gauge.to !== undefined && length > gauge.to) return false;
  return touches[gauge.kind].includes(touch);
}

const touches: Record<Kind, readonly Touch[]> = {
  'outside micrometer': ['outside'],
  'inside micrometer': ['inside'],
  'three-point bore gauge': ['inside'],
  calliper: ['outside', 'inside', 'depth', 'length'],
  'depth gauge': ['depth', 'length'],
  'height gauge': ['depth', 'length'],
  'dial indicator': [],
  'telescopic gauge and micrometer': ['inside'],
  'pin gauges': ['inside'],
  'thread pitch gauge': [],
  'wires and micrometer': [],
  'radius gauges': [],
  rule: ['outside', 'depth', 'length'],
};
