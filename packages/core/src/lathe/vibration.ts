/**
 * The modes with which work, spindle and tool side answer a cut, and how each lies to it.
 */
import { modalStiffness } from '../structure/beam-modes.ts';
import type { OrientedMode } from '../structure/receptance.ts';
import { type ReducedWork, reducedModes, reduceWork } from '../structure/reduced-work.ts';
import type { Mm, Radian } from '../units/quantities.ts';
import { axialGive, barMode, type HeldWork, type Setup, slides, toolSide } from './chain.ts';
import type { Values } from './elements.ts';
import { bladeMode, hasBlade } from './plunging-blade.ts';

/** A mode of the lathe before it is oriented to a cut. */
export interface LatheMode extends Omit<OrientedMode, 'direction'> {
  readonly of: 'work' | 'spindle' | 'tool side' | 'boring bar' | 'blade';
  /** Way it moves: away from the axis, or along it. */
  readonly axis: 'radial' | 'axial';
  /** Dip of the motion towards the way of the cutting force, for the tool side; beyond a right angle it goes towards the work. */
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
const tone = (stiffness: number, mass: number) => Math.sqrt((stiffness * 1000) / mass) / (2 * Math.PI);

/** Work boiled down once for a setup, read at one station. */
export interface RingingWork {
  readonly work: HeldWork;
  readonly reduced: ReducedWork;
}

/**
 * Boils the work of a setup down.
 *
 * @throws DomainError when the station lies off the work
 */
export function ringingWork(work: HeldWork, station: Mm): RingingWork {
  const { centreAt, steady } = work;
  const supports = [...(centreAt === undefined ? [] : [centreAt]), ...(steady ? [steady.at] : [])];
  return { work, reduced: reduceWork(work, { supports, stations: [station] }, elements) };
}

/** All modes felt at the station the work was boiled down for. */
export function latheModes(values: Values, setup: Setup, ringing: RingingWork): LatheMode[] {
  const tool = toolSide(values, setup.cutter);
  const down = 1 / slides(values);
  const dip = (values.toolTilt * Math.PI) / 180;
  const axialStiffness =
    1 / axialGive(values, setup.work.gripLength, setup.operation === 'facing' ? setup.diameter / 2 : 0);
  const found: LatheMode[] = [
    ...modesOfWork(values, ringing),
    {
      of: 'spindle',
      axis: 'axial',
      frequency: tone(axialStiffness, values.axialMass),
      stiffness: axialStiffness,
      damping: values.axialDamping,
      dip: 0,
    },
    {
      of: 'tool side',
      axis: 'radial',
      frequency: tone(down, values.toolMass),
      stiffness: down,
      damping: values.toolDamping,
      dip,
    },
    {
      of: 'tool side',
      axis: 'axial',
      frequency: tone(1 / tool.axial, values.toolMass),
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
  if (hasBlade(setup.cutter)) {
    const blade = bladeMode(setup.cutter);
    if (blade.stiffness < stiffest) found.push({ of: 'blade', axis: 'radial', ...blade, damping: values.workDamping });
  }
  return found;
}

/** Work on its grip, spindle and chuck behind it. */
export function modesOfWork(values: Values, { work, reduced }: RingingWork, count = workModes): LatheMode[] {
  const { gripLength, centreAt, steady } = work;
  const grip = 1000 * values.grip;
  const modes = reducedModes(
    reduced,
    {
      chuck: { translational: grip * gripLength, rotational: (grip * gripLength ** 3) / 12 / 1000 },
      spindle: {
        springs: { translational: 1000 * values.spindleRadial, rotational: 1000 * values.spindleTilt },
        mass: values.chuckMass,
        inertia: inertiaPerMass * values.chuckMass,
      },
      supports: [
        ...(centreAt === undefined ? [] : [1000 * values.tailstock]),
        ...(steady ? [1000 * steady.stiffness] : []),
      ],
    },
    count,
  );
  return modes.flatMap((mode): LatheMode[] => {
    const stiffness = modalStiffness(mode, 0);
    if (!(stiffness < stiffest)) return [];
    return [{ of: 'work', axis: 'radial', frequency: mode.frequency, stiffness, damping: values.workDamping, dip: 0 }];
  });
}

/**
 * Direction factor of a mode as it goes with the angle of its axis to the chip: μ = p cos² + q cos. Along the chip it counts by the
 * square, and one that dips is pushed by the cutting force too.
 */
export function directionParts({ dip }: LatheMode, inPlaneRatio: number): { readonly p: number; readonly q: number } {
  const c = Math.cos(dip);
  return { p: c * c, q: (Math.sin(dip) * c) / inPlaneRatio };
}
