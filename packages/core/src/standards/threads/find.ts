/**
 * From readings on an old thread to the designations it may have.
 *
 * Every listed thread is weighed by how far each reading lies from it in its own uncertainty. A crest is expected within
 * its limits; beyond them on the worn side it is let off more lightly than on the other. A thread that many shops would
 * have used counts a little more than a rare one, never so much as to outweigh a clear reading.
 */
import { DomainError } from '../../errors.ts';
import { type Mm, mmPerInch, type Radian } from '../../units/quantities.ts';
import { inchSize } from './basic-sizes.ts';
import { standardThreads } from './catalogue.ts';
import { threadLimits } from './limits.ts';
import type { Band } from './limits-type.ts';
import type { Side, Thread } from './record.ts';
import { specialInch, specialMetric } from './special.ts';
import { knownInchSpecials, knownMetricSpecials, knownUses } from './tables/known-specials.ts';
import { metricSizes } from './tables/metric.ts';
import { nptSizes, pipeSizes } from './tables/pipe.ts';

/** A reading and its standard uncertainty. */
export interface Measured {
  readonly value: number;
  readonly uncertainty: number;
}

export interface ThreadReadings {
  readonly side: Side;
  /** Over the crests of a bolt, or across those of a nut [mm]. */
  readonly crestDiameter: Measured;
  /** Pitch [mm]. */
  readonly pitch: Measured;
  /** Angle between the flanks [rad]. */
  readonly flankAngle?: Measured;
}

export interface ThreadMatch {
  readonly thread: Thread;
  /** Share among all matches, 0 to 1. */
  readonly probability: number;
  /** How many uncertainties each reading lies off; 0 for a crest within its limits. */
  readonly off: { readonly crest: number; readonly pitch: number; readonly angle: number };
  /** Where it is commonly met. */
  readonly use?: string;
}

interface Candidate {
  readonly thread: Thread;
  readonly bolt: Band;
  readonly nut: Band;
  /** Natural logarithm of how common it is, 0 for the commonest. */
  readonly common: number;
}

let candidates: readonly Candidate[] | undefined;

function allCandidates(): readonly Candidate[] {
  candidates ??= [...standardThreads(), ...knownSpecials()].map((thread) => ({
    thread,
    bolt: crest(thread, 'external'),
    nut: crest(thread, 'internal'),
    common: commonness(thread),
  }));
  return candidates;
}

function knownSpecials(): Thread[] {
  const metric = Object.keys(knownMetricSpecials).map((name) => {
    const [d, p] = name.slice(1).split('x');
    return specialMetric(name, Number(d), Number(p));
  });
  const inch = knownInchSpecials.map(([size, tpi]) =>
    specialInch(`${size}-${tpi} UNS`, inchSize(size) ?? 0, tpi, {
      written: 'UNS',
      family: 'unified',
      form: 'Unified',
      sources: ['ASME-B1.1'],
    }),
  );
  return [...metric, ...inch];
}

/** Where the crest of a sound thread is expected. A taper crest may be met anywhere along the taper. */
function crest(thread: Thread, side: Side): Band {
  const { majorDiameter: d, minorDiameter: d1, pitch } = thread;
  const along = taperTravel(thread);
  if (along) {
    const base = side === 'external' ? d : d1;
    return { max: base + along.above / 16, min: base - along.below / 16 };
  }
  try {
    const limits = threadLimits(thread, side);
    return side === 'external' ? { max: d, min: limits.major.min } : { max: limits.minor.max, min: d1 };
  } catch (error) {
    if (!(error instanceof DomainError)) throw error;
    return side === 'external' ? { max: d, min: d - 0.15 * pitch } : { max: d1 + 0.25 * pitch, min: d1 };
  }
}

/** Lengths of taper thread to either side of the plane in which the sizes are given. */
function taperTravel(thread: Thread): { below: Mm; above: Mm } | undefined {
  if (thread.family === 'pipe-taper') {
    const taper = pipeSizes.find(([size]) => size === thread.size)?.[7];
    return taper && { below: taper[0], above: taper[2] - taper[0] };
  }
  const row = thread.family === 'npt' ? nptSizes.find(([size]) => size === thread.size) : undefined;
  return row && { below: row[5] * mmPerInch, above: (row[6] - row[5]) * mmPerInch };
}

function commonness(thread: Thread): number {
  if (thread.status === 'special') return -1.5;
  const choice = metricSizes.find(([d]) => thread.family === 'metric' && d === thread.majorDiameter)?.[1] ?? 1;
  const series: Record<string, number> = {
    coarse: 0,
    fine: -0.5,
    UNC: 0,
    UNF: 0,
    BSW: 0,
    BSF: 0,
    BA: 0,
    G: 0,
    R: -0.3,
    NPT: -0.3,
    BSC: -0.3,
  };
  return (series[thread.series] ?? -1) - (choice - 1) * 0.5;
}

/** Off by more than this many uncertainties, and a thread is not offered. */
const furthest = 4.5;

/**
 * Designations that readings on a thread may stand for, the likeliest first.
 *
 *     weight = exp(−½ Σ z²) × how common;  z = (reading − expected)/uncertainty, the crest expected within its limits
 *
 * @param readings  crest diameter, pitch and, if known, flank angle, each with its standard uncertainty [mm, rad]
 * @param most  greatest number of matches [-]
 * @returns matches with their share, at most `most`
 * @throws DomainError when a reading or uncertainty is not above zero
 * @source ISO261
 * @source ASME-B1.1
 * @source BS84
 * @valid the listed threads and known specials; wear up to a quarter of the pitch on diameter
 * @example findThread({ side: 'external', crestDiameter: { value: 9.9, uncertainty: 0.02 }, pitch: { value: 1, uncertainty: 0.01 } })[0].thread.size → '10'
 */
export function findThread(readings: ThreadReadings, most = 8): ThreadMatch[] {
  for (const [name, reading] of Object.entries({
    crestDiameter: readings.crestDiameter,
    pitch: readings.pitch,
    flankAngle: readings.flankAngle,
  })) {
    if (reading && !(reading.value > 0 && reading.uncertainty > 0))
      throw new DomainError(name, reading.value, 'a reading and an uncertainty above 0');
  }
  const weighed: { candidate: Candidate; off: ThreadMatch['off']; weight: number }[] = [];
  for (const candidate of allCandidates()) {
    const off = {
      crest: crestOff(readings, candidate),
      pitch: (readings.pitch.value - candidate.thread.pitch) / readings.pitch.uncertainty,
      angle: readings.flankAngle
        ? (readings.flankAngle.value - candidate.thread.flankAngle) / readings.flankAngle.uncertainty
        : 0,
    };
    if (Math.max(Math.abs(off.crest), Math.abs(off.pitch), Math.abs(off.angle)) > furthest) continue;
    weighed.push({
      candidate,
      off,
      weight: Math.exp(-(off.crest ** 2 + off.pitch ** 2 + off.angle ** 2) / 2 + candidate.common),
    });
  }
  const total = weighed.reduce((sum, w) => sum + w.weight, 0);
  return weighed
    .toSorted((a, b) => b.weight - a.weight)
    .slice(0, most)
    .map(({ candidate: { thread }, off, weight }) => {
      const use = knownUses[thread.designation]?.says ?? (thread.status === 'special' ? thread.remark : undefined);
      return { thread, probability: weight / total, off, ...(use === undefined ? {} : { use }) };
    });
}

/** Uncertainties by which the crest lies outside its limits: on the worn side a tenth of the pitch is let off. */
function crestOff(readings: ThreadReadings, candidate: Candidate): number {
  const { value, uncertainty } = readings.crestDiameter;
  const { max, min } = readings.side === 'external' ? candidate.bolt : candidate.nut;
  const worn = Math.hypot(uncertainty, candidate.thread.pitch / 20);
  if (value > max) return (value - max) / (readings.side === 'external' ? uncertainty : worn);
  if (value < min) return (value - min) / (readings.side === 'external' ? worn : uncertainty);
  return 0;
}

/** What sets two threads apart, for the person who has to tell them. */
export interface Apart {
  readonly crestDiameter: Mm;
  /** Over ten pitches. */
  readonly tenPitches: Mm;
  readonly flankAngle: Radian;
}

/**
 * Differences between two threads that are easily taken for each other.
 *
 * @param a  one thread
 * @param b  the other
 * @returns second less first: crest, length over ten pitches, flank angle [mm, rad]
 * @source geometry
 * @valid any two threads
 * @example apart(parseThread('M10'), parseThread('3/8-16 UNC')).tenPitches → 0.875
 */
export function apart(a: Thread, b: Thread): Apart {
  return {
    crestDiameter: b.majorDiameter - a.majorDiameter,
    tenPitches: 10 * (b.pitch - a.pitch),
    flankAngle: b.flankAngle - a.flankAngle,
  };
}
