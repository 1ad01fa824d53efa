/** Which way a threading cutter is fed in: straight with the cross slide, or along one flank with the top slide set over. */
import { DomainError } from '../../errors.ts';
import type { Thread } from '../../standards/threads/thread.ts';
import { degrees, type Mm, type Radian, radians } from '../../units/quantities.ts';

export const infeedWays = ['straight', 'along the flank'] as const;

type Way = (typeof infeedWays)[number];

export interface InfeedWay {
  readonly way: Way;
  /** Of the top slide from the line of the cross slide; nought straight in. */
  readonly angle: Radian;
  readonly why: string;
}

/** Pitches up to this are cut straight in; `common practice`. */
const straightUpTo: Mm = 1;

/**
 * Angle to which the top slide is set over for a thread, from the line of the cross slide: a little less than half the included angle,
 * so that the trailing flank is shaved too and comes out clean.
 *
 *     θ = ⌊2 (α/2 − ½°)⌋ / 2, in degrees
 *
 * @param flankAngle  included angle of the thread α [rad]
 * @returns the angle, in half degrees [rad]
 * @throws DomainError when the included angle is not from 10° to 120°
 * @source NEETS-14345
 * @source common-practice half the included angle less half a degree to one degree
 * @valid symmetrical threads
 * @example flankInfeedAngle(Math.PI / 3) → 0.51487
 */
export function flankInfeedAngle(flankAngle: Radian): Radian {
  const included = degrees(flankAngle);
  if (!(included >= 10 && included <= 120))
    throw new DomainError('flankAngle', flankAngle, '10° to 120° of included angle');
  return radians(Math.floor(2 * (included / 2 - 0.5) + 1e-6) / 2);
}

/** The way for a thread; a wish counts where the lathe can follow it. */
export function infeedWay(thread: Thread, slideHasDial: boolean, wish: Way | undefined): InfeedWay {
  const straight = (why: string): InfeedWay => ({ way: 'straight', angle: 0, why });
  if (wish === 'straight') return straight('Fed straight in, as wished.');
  if (!slideHasDial)
    return straight('Fed straight in: no dial of the top slide is entered to feed along the flank by.');
  const angle = flankInfeedAngle(thread.flankAngle);
  if (wish === 'along the flank') return { way: 'along the flank', angle, why: 'Fed along the flank, as wished.' };
  if (thread.family === 'npt' || thread.family === 'pipe-taper')
    return straight('Fed straight in, as is usual for a taper thread.');
  if (thread.starts > 1)
    return straight('Fed straight in: the top slide lies along the work, to set on from one start to the next.');
  if (thread.pitch <= straightUpTo + 1e-9)
    return straight(
      `Fed straight in: up to ${straightUpTo} mm of pitch the chip is thin enough to leave on both flanks.`,
    );
  return {
    way: 'along the flank',
    angle,
    why: 'Fed along the flank: one edge cuts, the chip comes off freely and the cutter pushes the work less.',
  };
}
