/** What a material asks of the lathe, gathered from its cutting data; absent where nothing is published. */

import type { Cutter } from '../cutting/cutter.ts';
import type { CutData } from '../cutting/turning-force.ts';
import { type CuttingData, cuttingData } from '../materials/cutting-data.ts';
import type { Material } from '../materials/material.ts';
import { type MetrePerMinute, type MmPerRev, radians } from '../units/quantities.ts';

export interface Machining {
  readonly cutData: CutData | undefined;
  readonly data: CuttingData;
  readonly hardens: boolean;
}

export function machiningOf(material: Material): Machining {
  const data = cuttingData(material);
  const cutData =
    data.specificForce === undefined || data.exponent === undefined
      ? undefined
      : {
          specificForce: data.specificForce,
          exponent: data.exponent,
          rakeReference: data.rakeReference === undefined ? undefined : radians(data.rakeReference),
        };
  return { cutData, data, hardens: /high/.test(material.workHardening) };
}

type Work = 'rough' | 'finish' | 'drill' | 'thread' | 'part';

/**
 * Published range of cutting speed. A range for the work itself comes first, then plain turning, then roughing; of several the
 * most careful is taken, since a light lathe is less stiff than those the tables were made on.
 */
export function speedRange(
  data: CuttingData,
  cutter: 'high-speed steel' | 'carbide',
  work: Work,
): { low: MetrePerMinute; high: MetrePerMinute } | undefined {
  const rows = data.speeds.filter((s) => s.cutter === cutter);
  const order: readonly string[] = work === 'drill' ? ['drill', 'turn', 'rough'] : [work, 'turn', 'rough', 'finish'];
  for (const operation of order) {
    const found = rows.filter((r) => r.operation === operation);
    if (found.length > 0)
      return { low: Math.min(...found.map((r) => r.low)), high: Math.min(...found.map((r) => r.high)) };
  }
  return undefined;
}

/** A nose is two to three times the feed [MIT20 in the chapter on cutting]: more, and the cut is a thread. */
const noseShare = 0.5;

/**
 * Largest feed for a cut: the most careful of those published for the work and for turning at large, and half the nose radius; facing
 * has no published range of its own.
 */
export function largestFeed(data: CuttingData, { material, noseRadius }: Cutter, work: Work | 'face'): MmPerRev {
  const printed = data.feeds.filter(
    (f) => (f.cutter === material || f.cutter === 'any') && (f.operation === work || f.operation === 'turn'),
  );
  return Math.min(noseShare * noseRadius, ...printed.map((f) => f.high));
}
