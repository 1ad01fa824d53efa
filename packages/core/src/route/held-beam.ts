/** What bends under a cut, as it is held: the work out of the jaws, the work between two centres, or the mandrel that carries it. */
import { type BeamSection, type ChuckSprings, clamped } from '../structure/stepped-beam.ts';
import type { Mm } from '../units/quantities.ts';
import type { Setup } from './route-result.ts';
import { beamOut, type Workpiece } from './workpiece.ts';

/** Steel is assumed where the material is unknown; the shape decides, not the modulus. */
export const steel = { youngsModulus: 200_000, poisson: 0.3, density: 7.85e-6 } as const;

/** As much of a holding as says what bends. */
export interface HeldOn {
  /** Jaw face nearest to the free end, or the point of the driving centre, along the part. */
  readonly jaw: Mm;
  readonly setup: Pick<Setup, 'endOut' | 'held' | 'mandrel'>;
}

export interface HeldBeam {
  /** From the jaw faces or the driving centre outwards. */
  readonly sections: readonly BeamSection[];
  /** What it is made of where it is not the work itself. */
  readonly solid: typeof steel | undefined;
  readonly nearEnd: ChuckSprings;
}

/** A centre holds sideways and lets the work tilt. */
const onCentre: ChuckSprings = { translational: Number.POSITIVE_INFINITY, rotational: 0 };

/**
 * Length of grip that stands for a centre where the lathe's stiffness is reckoned: one millimetre of jaw is about as stiff sideways as
 * a tailstock's centre, and gives next to no hold against tilting; `common practice`, nothing is published.
 */
export const centreAsGrip: Mm = 1;

export function heldBeam(work: Workpiece, { jaw, setup }: HeldOn): HeldBeam {
  // The work on a mandrel stiffens it; how far depends on its fit, and is not counted on.
  const { mandrel } = setup;
  if (mandrel)
    return {
      sections: [{ from: 0, to: mandrel.length, outerDiameter: mandrel.diameter }],
      solid: steel,
      nearEnd: clamped,
    };
  return {
    sections: beamOut(work, jaw, setup.endOut),
    solid: undefined,
    nearEnd: setup.held === 'between centres' ? onCentre : clamped,
  };
}
