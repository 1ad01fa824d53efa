/** Holes for a thread: the one to tap, and the one a bolt goes through. */
import { DomainError } from '../../errors.ts';
import type { SourceKey } from '../../sources/register.ts';
import { type Mm, mmPerInch } from '../../units/quantities.ts';
import { inchSize } from './basic-sizes.ts';
import { threadLimits } from './limits.ts';
import type { Band } from './limits-type.ts';
import type { Thread } from './record.ts';
import { whitworthDrills } from './tables/british.ts';
import { clearanceHoles, namedDrills } from './tables/drills.ts';
import { metricDrillExceptions, metricSizes } from './tables/metric.ts';
import { unifiedDrills } from './tables/unified.ts';

export interface TappingDrill {
  readonly diameter: Mm;
  /** `No.7`, `27/64 in`, where the drill is not called by millimetres. */
  readonly name?: string;
  /** Depth of thread that this hole leaves, as a part of the full depth of engagement. */
  readonly engagement: number;
  /** Limits of the nut's minor diameter, where they are held. */
  readonly minor?: Band;
  /** Whether the drill's own size lies in those limits. A drill cuts a little large. */
  readonly withinLimits?: boolean;
  readonly sources: readonly SourceKey[];
}

/**
 * The drill to tap a thread.
 *
 *     metric: d − P, to the drill sold; Unified: the drill of the table; else 80 % of the full depth, or three quarters up the minor's limits for G
 *
 * @param thread  the thread
 * @returns the drill, the depth of thread it leaves and the nut's limits [mm]
 * @throws DomainError for taper threads
 * @source MEDH-p299
 * @source ISO2306
 * @source ASME-B1.1
 * @source OLDENGINE-W
 * @source EE-BS1157
 * @source common-practice
 * @valid parallel threads
 * @example tappingDrill(parseThread('M8')).diameter → 6.8
 */
export function tappingDrill(thread: Thread): TappingDrill {
  const { diameter, name, sources } = chosenDrill(thread);
  const minor = nutMinor(thread);
  return {
    diameter: Number(diameter.toFixed(4)),
    ...(name === undefined ? {} : { name }),
    engagement: (thread.majorDiameter - diameter) / (thread.majorDiameter - thread.minorDiameter),
    ...(minor === undefined
      ? {}
      : { minor, withinLimits: diameter >= minor.min - 0.0005 && diameter <= minor.max + 0.0005 }),
    sources,
  };
}

interface Chosen {
  readonly diameter: Mm;
  readonly name?: string;
  readonly sources: readonly SourceKey[];
}

function chosenDrill(thread: Thread): Chosen {
  switch (thread.family) {
    case 'metric':
      return metricDrill(thread);
    case 'unified': {
      const name = unifiedDrills[`${thread.size}-${thread.threadsPerInch} ${thread.series}`];
      if (name === undefined) return byEngagement(thread);
      const size = namedDrills[name] ?? inchSize(name.replace(' in', ''));
      if (size === undefined) return byEngagement(thread);
      return { diameter: size * mmPerInch, name, sources: ['ASME-B1.1', 'number-drills'] };
    }
    case 'whitworth': {
      const published = whitworthDrills[`${thread.size} ${thread.series}`];
      return published === undefined
        ? byEngagement(thread)
        : { diameter: published, sources: ['OLDENGINE-W', 'TCB-threads'] };
    }
    case 'pipe-parallel': {
      const { minor } = threadLimits({ ...thread, series: 'G' }, 'internal');
      return {
        diameter: soldDrill(minor.min + 0.75 * (minor.max - minor.min)),
        sources: ['common-practice', 'ISO228-1'],
      };
    }
    case 'ba':
    case 'brass':
    case 'cycle':
      return byEngagement(thread);
    case 'pipe-taper':
    case 'npt':
      throw new DomainError(
        'thread',
        thread.designation,
        'a parallel thread: the hole of a taper thread is reamed to its taper',
      );
  }
}

function metricDrill(thread: Thread): Chosen {
  const base = `M${thread.size}`;
  const coarse = metricSizes.find(([d]) => d === thread.majorDiameter)?.[2] === thread.pitch;
  const exception = metricDrillExceptions[coarse ? base : `${base}x${thread.pitch}`];
  const first = metricSizes.find(([d]) => d === thread.majorDiameter)?.[1] === 1 && thread.majorDiameter >= 1.6;
  const key: SourceKey =
    thread.status === 'special' || (!coarse && thread.majorDiameter >= 18)
      ? 'common-practice'
      : coarse && first
        ? 'MEDH-p299'
        : 'ISO2306';
  return { diameter: exception ?? thread.majorDiameter - thread.pitch, sources: [key] };
}

function byEngagement(thread: Thread): Chosen {
  const wanted = holeForEngagement(thread, 0.8);
  const nearest = soldDrill(wanted);
  const greatest = nutMinor(thread)?.max ?? Number.POSITIVE_INFINITY;
  const step = drillStep(wanted);
  const diameter = nearest > greatest ? Number((Math.floor(greatest / step) * step).toFixed(3)) : nearest;
  return { diameter, sources: thread.form === 'Whitworth' ? ['EE-BS1157', 'common-practice'] : ['common-practice'] };
}

function drillStep(diameter: Mm): Mm {
  return diameter < 3 ? 0.05 : diameter < 14 ? 0.1 : 0.25;
}

/** To the 0.05 mm of a drill set, to 0.1 mm from 3 mm on, to 0.25 mm from 14 mm on. */
function soldDrill(diameter: Mm): Mm {
  const step = drillStep(diameter);
  return Number((Math.round(diameter / step) * step).toFixed(3));
}

/**
 * The hole that leaves a given part of the full depth of thread. In stubborn material less is taken: 65 to 70 % strips no
 * sooner in a nut as long as the diameter and spares the tap.
 *
 *     D_h = d − e (d − D1)
 *
 * @param thread  the thread
 * @param engagement  part of the full depth, 0.5 to 1 [-]
 * @returns the diameter of the hole [mm]
 * @throws DomainError when the part is not from 0.5 to 1
 * @source common-practice
 * @valid parallel threads
 * @example holeForEngagement(parseThread('M10'), 0.7) → 8.863
 */
export function holeForEngagement(thread: Thread, engagement: number): Mm {
  if (!(engagement >= 0.5 && engagement <= 1))
    throw new DomainError('engagement', engagement, '0.5 to 1 of the full depth');
  return thread.majorDiameter - engagement * (thread.majorDiameter - thread.minorDiameter);
}

function nutMinor(thread: Thread): Band | undefined {
  try {
    return threadLimits(thread, 'internal').minor;
  } catch (error) {
    if (error instanceof DomainError) return undefined;
    throw error;
  }
}

export type ClearanceFit = 'fine' | 'medium' | 'coarse';

/**
 * The hole that a bolt goes through, ISO 273.
 *
 * @param thread  the thread
 * @param fit  `fine`, `medium` or `coarse`
 * @returns diameter of the hole [mm]
 * @throws DomainError when ISO 273 has no such diameter
 * @source threads-ISO273
 * @valid metric threads of the first and second choice, M1 to M64
 * @example clearanceHole(parseThread('M8')) → 9
 */
export function clearanceHole(thread: Thread, fit: ClearanceFit = 'medium'): Mm {
  const row = clearanceHoles.find(([d]) => thread.family === 'metric' && d === thread.majorDiameter);
  if (!row)
    throw new DomainError(
      'thread',
      thread.designation,
      `a metric diameter of ISO 273 (${clearanceHoles.map(([d]) => d).join(', ')})`,
    );
  return row[fit === 'fine' ? 1 : fit === 'medium' ? 2 : 3];
}
