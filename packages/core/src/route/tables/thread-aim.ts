/** Sizes that a thread is cut to: crest, pitch diameter, and how deep the cutter on hand goes for it. */
import { DomainError } from '../../errors.ts';
import { type InfeedDepth, infeedDepth, type ToolTip } from '../../standards/threads/cutting-geometry.ts';
import { threadLimits } from '../../standards/threads/limits.ts';
import { preTurnedDiameter } from '../../standards/threads/pre-turned.ts';
import type { Thread } from '../../standards/threads/thread.ts';
import type { Mm } from '../../units/quantities.ts';

type Side = 'external' | 'internal';

interface Aim {
  readonly crest: Mm;
  readonly pitch: Mm;
  /** Limits of the pitch diameter, where the standard gives any. */
  readonly pitchLimits?: { readonly max: Mm; readonly min: Mm } | undefined;
  readonly why: string;
}

/** Crest and pitch diameter to aim at: the middle of their limits where the standard gives limits; the crest is the one that was turned. */
export function threadAim(thread: Thread, side: Side): Aim {
  const crest = crestAim(thread, side)?.aim ?? (side === 'external' ? thread.majorDiameter : thread.minorDiameter);
  try {
    const limits = threadLimits(thread, side);
    return {
      crest,
      pitch: (limits.pitch.max + limits.pitch.min) / 2,
      pitchLimits: limits.pitch,
      why: `Limits for class ${limits.toleranceClass}.`,
    };
  } catch (error) {
    if (!(error instanceof DomainError)) throw error;
    return {
      crest,
      pitch: thread.pitchDiameter,
      why: 'No limits are held for this thread: the basic pitch diameter is aimed at, to be fitted to the mate.',
    };
  }
}

/** The crest's limits and aim, for the operation that turns it; undefined where the standard gives none. */
export function crestAim(thread: Thread, side: Side): { aim: Mm; max: Mm; min: Mm } | undefined {
  try {
    const crest = preTurnedDiameter(thread, side);
    return { aim: crest.diameter, max: crest.limits.max, min: crest.limits.min };
  } catch (error) {
    if (!(error instanceof DomainError)) throw error;
    return undefined;
  }
}

/** How deep a thread is cut, and with which end of the cutter. */
export interface CutTo extends InfeedDepth {
  /** The end of the cutter on hand; false: the form's own, where none is known or it is too blunt to make the thread. */
  readonly own: boolean;
}

/**
 * Depth from the turned crest to the pitch diameter aimed at.
 *
 * @param noseRadius  of the cutter on hand [mm]; the form's own end is taken when left out
 * @throws DomainError when not even the form's own end fits the sizes
 */
export function cutTo(thread: Thread, side: Side, noseRadius: Mm | undefined): CutTo {
  const aim = threadAim(thread, side);
  const choice = { crestDiameter: aim.crest, pitchDiameter: aim.pitch };
  if (noseRadius !== undefined) {
    const tip: ToolTip = noseRadius > 0 ? { kind: 'radius', radius: noseRadius } : { kind: 'sharp' };
    try {
      return { ...infeedDepth(thread, side, { ...choice, tip }), own: true };
    } catch (error) {
      if (!(error instanceof DomainError)) throw error;
    }
  }
  return { ...infeedDepth(thread, side, choice), own: false };
}

/** Diameter at the bottom of the groove as it is cut; the basic one where no cutter fits the sizes. */
export function rootOf(thread: Thread, side: Side, noseRadius: Mm | undefined): Mm {
  try {
    return cutTo(thread, side, noseRadius).rootDiameter;
  } catch (error) {
    if (!(error instanceof DomainError)) throw error;
    return side === 'external' ? thread.minorDiameter : thread.majorDiameter;
  }
}
