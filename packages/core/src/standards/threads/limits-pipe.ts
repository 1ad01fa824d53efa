/** Limits of pipe threads of Whitworth form: G by ISO 228-1, R by the travel of the gauge plane of ISO 7-1. */
import { DomainError } from '../../errors.ts';
import { band, type ThreadLimits } from './limits-type.ts';
import type { Side, Thread } from './record.ts';
import { pipeSizes } from './tables/pipe.ts';

function rowOf(thread: Thread): (typeof pipeSizes)[number] {
  const row = pipeSizes.find(([size]) => size === thread.size);
  if (!row) throw new DomainError('thread', thread.designation, 'a listed pipe size');
  return row;
}

/** G threads: bolts in class A or B, one class of nut. */
export function parallelPipeLimits(thread: Thread, side: Side, asked: string | undefined): ThreadLimits {
  if (thread.series === 'Rp')
    throw new DomainError('thread', thread.designation, 'a G thread: the tolerances of Rp are not held here');
  const [, , major, pitch, minor, classA, minorTolerance] = rowOf(thread);
  if (side === 'internal') {
    const pitchMax = pitch + classA;
    return {
      side,
      toleranceClass: '',
      major: band(pitchMax + (5 / 6) * thread.fundamentalHeight, major),
      pitch: band(pitchMax, pitch),
      minor: band(minor + minorTolerance, minor),
      allowance: 0,
      notSet: ['major.max'],
      sources: ['ISO228-1', 'EH-G', 'MEDH-p301'],
    };
  }
  const own = asked ?? 'A';
  if (own !== 'A' && own !== 'B') throw new DomainError('toleranceClass', own, 'A or B');
  const pitchMin = pitch - (own === 'A' ? classA : 2 * classA);
  return {
    side,
    toleranceClass: own,
    major: band(major, major - 2 * classA),
    pitch: band(pitch, pitchMin),
    minor: band(minor, pitchMin - (5 / 6) * thread.fundamentalHeight),
    allowance: 0,
    notSet: ['minor.min'],
    sources: ['ISO228-1', 'EH-G', 'MEDH-p301'],
  };
}

/** R threads: the gauge plane may lie a tolerance to either side, which is 1/16 of it on diameter. */
export function taperPipeLimits(thread: Thread, side: Side): ThreadLimits {
  const taper = rowOf(thread)[7];
  if (!taper) throw new DomainError('thread', thread.designation, 'a listed taper pipe size');
  if (side === 'internal') {
    throw new DomainError('side', side, 'external: the tolerance of taper nuts (Rc) is not held here');
  }
  const half = taper[1] / 16;
  const { majorDiameter: major, pitchDiameter: pitch, minorDiameter: minor } = thread;
  return {
    side,
    toleranceClass: '',
    major: band(major + half, major - half),
    pitch: band(pitch + half, pitch - half),
    minor: band(minor + half, minor - half),
    allowance: 0,
    notSet: [],
    remark: `In the plane ${taper[0]} mm from the small end (gauge length, ± ${taper[1]} mm); taper 1 in 16 on diameter; ${taper[2]} mm of useful thread`,
    sources: ['ISO7-1', 'EH-G', 'MEDH-p301'],
  };
}
