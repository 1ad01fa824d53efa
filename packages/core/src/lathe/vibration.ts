/**
 * The modes with which work, spindle and tool side answer a cut, and how each lies to it.
 */
import { beamModes, modalStiffness } from '../structure/beam-modes.ts';
import type { OrientedMode } from '../structure/receptance.ts';
import type { Mm, Radian } from '../units/quantities.ts';
import { axialGive, barMode, type Setup, slides, toolSide } from './chain.ts';
import type { Values } from './elements.ts';

/** A mode of the lathe before it is oriented to a cut. */
export interface LatheMode extends Omit<OrientedMode, 'direction'> {
  readonly of: 'work' | 'spindle' | 'tool side' | 'boring bar';
  /** Way it moves: away from the axis, or along it. */
  readonly axis: 'radial' | 'axial';
  /** Dip of the motion towards the way of the cutting force, for the tool side. */
  readonly dip: Radian;
}

/** Elements a chucked piece is divided into for its few lowest modes: they are right within 1 % with these. */
const elements = 12;
/** Modes of work taken along. */
const workModes = 3;
/** Chuck and spindle nose turning about the jaw faces, for each kilogram: a 100 mm chuck 40 mm long [mm²]. */
const inertiaPerMass = 1150;
/** A mode as stiff as this at the cut cannot be felt [N/mm]. */
const stiffest = 5e6;

/** Natural frequency of a mass on a spring [N/mm, kg]. */
const ringing = (stiffness: number, mass: number) => Math.sqrt((stiffness * 1000) / mass) / (2 * Math.PI);

/** All modes felt at a station. */
export function latheModes(values: Values, setup: Setup, station: Mm): LatheMode[] {
  const tool = toolSide(values, setup.cutter);
  const down = 1 / slides(values);
  const dip = (values.toolTilt * Math.PI) / 180;
  const axialStiffness =
    1 / axialGive(values, setup.work.gripLength, setup.operation === 'facing' ? setup.diameter / 2 : 0);
  const found: LatheMode[] = [
    ...modesOfWork(values, setup, station),
    {
      of: 'spindle',
      axis: 'axial',
      frequency: ringing(axialStiffness, values.axialMass),
      stiffness: axialStiffness,
      damping: values.axialDamping,
      dip: 0,
    },
    {
      of: 'tool side',
      axis: 'radial',
      frequency: ringing(down, values.toolMass),
      stiffness: down,
      damping: values.toolDamping,
      dip,
    },
    {
      of: 'tool side',
      axis: 'axial',
      frequency: ringing(1 / tool.axial, values.toolMass),
      stiffness: 1 / tool.axial,
      damping: values.toolDamping,
      dip: 0,
    },
  ];
  if (setup.cutter.barDiameter) {
    const bar = barMode(setup.cutter);
    // So short a stub cannot be felt.
    if (bar.stiffness < stiffest)
      found.push({ of: 'boring bar', axis: 'radial', ...bar, damping: values.workDamping, dip: 0 });
  }
  return found;
}

/** Work on its grip, spindle and chuck behind it. */
export function modesOfWork(
  values: Values,
  { work }: Pick<Setup, 'work'>,
  station: Mm,
  count = workModes,
): LatheMode[] {
  const { sections, youngsModulus, poissonRatio, density, gripLength, centreAt, steady } = work;
  const grip = 1000 * values.grip;
  const modes = beamModes(
    {
      sections,
      youngsModulus,
      poissonRatio,
      density,
      chuck: { translational: grip * gripLength, rotational: (grip * gripLength ** 3) / 12 / 1000 },
      spindle: {
        springs: { translational: 1000 * values.spindleRadial, rotational: 1000 * values.spindleTilt },
        mass: values.chuckMass,
        inertia: inertiaPerMass * values.chuckMass,
      },
      supports: [
        ...(centreAt === undefined ? [] : [{ at: centreAt, stiffness: 1000 * values.tailstock }]),
        ...(steady ? [{ at: steady.at, stiffness: 1000 * steady.stiffness }] : []),
      ],
    },
    { stations: [station], count, elements },
  );
  return modes.flatMap((mode): LatheMode[] => {
    const stiffness = modalStiffness(mode, 0);
    if (!(stiffness < stiffest)) return [];
    return [{ of: 'work', axis: 'radial', frequency: mode.frequency, stiffness, damping: values.workDamping, dip: 0 }];
  });
}

/** How a cut faces: angle of the engaged edge, what lies square to the surface, and in-plane over cutting force. */
export interface Facing {
  readonly effectiveApproach: Radian;
  /** Square to the surface cut: radial, or axial when facing. */
  readonly square: 'radial' | 'axial';
  readonly inPlaneRatio: number;
}

/**
 * Modes oriented to a cut; those that it does not feel are left out.
 *
 * A mode along the chip counts by cos² of its angle to the chip; one that dips is pushed by the cutting force too.
 */
export function oriented(
  modes: readonly LatheMode[],
  { effectiveApproach, square, inPlaneRatio }: Facing,
): OrientedMode[] {
  return modes.flatMap(({ frequency, stiffness, damping, axis, dip }) => {
    const along = axis === square ? Math.cos(effectiveApproach) : Math.sin(effectiveApproach);
    const c = Math.cos(dip);
    const direction = c * c * along * along + (Math.sin(dip) * c * along) / inPlaneRatio;
    return Math.abs(direction) < 1e-6 ? [] : [{ frequency, stiffness, damping, direction }];
  });
}
