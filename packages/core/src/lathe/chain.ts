/**
 * How far edge and work give way from each other at every place cut: lathe and work in one chain of springs.
 *
 * Knowledge: compliances in series add. The work's own bending comes from its beam held fast at the jaws; grip, tilt and
 * side-give of spindle and chuck move it as a whole; a centre or steady is a spring that takes part of the push.
 */
import { DomainError } from '../errors.ts';
import { secondMoment } from '../structure/beam-element.ts';
import {
  type BeamSection,
  clamped,
  deflections,
  type FactoredBeam,
  factorBeam,
  type MmPerNewton,
} from '../structure/stepped-beam.ts';
import type { Mm, MPa } from '../units/quantities.ts';
import type { CuttingTool } from './cutting-tool.ts';
import type { Values } from './elements.ts';
import { edgeAway, edgeGive, hasBlade } from './plunging-blade.ts';

/** What is cut in, and where. */
export type Operation = 'turning' | 'facing' | 'boring' | 'grooving' | 'parting';

export interface HeldWork {
  /** From the jaw faces outwards. */
  readonly sections: readonly BeamSection[];
  readonly youngsModulus: MPa;
  readonly poissonRatio: number;
  /** [kg/mm³] */
  readonly density: number;
  /** Length held in the jaws. */
  readonly gripLength: Mm;
  /** Place of a tailstock centre. */
  readonly centreAt?: Mm | undefined;
  /** A steady: its place, and its stiffness [N/µm]. */
  readonly steady?: { readonly at: Mm; readonly stiffness: number } | undefined;
}

export interface Setup {
  readonly operation: Operation;
  readonly work: HeldWork;
  readonly cutter: CuttingTool;
  /** Places cut, from the jaw faces. */
  readonly stations: readonly Mm[];
  /** Greatest diameter cut at, for the tilting of work that is faced. */
  readonly diameter: Mm;
  /**
   * Free movement of the spindle along its axis, which a facing cut takes up: lost motion, no stiffness. None when left out.
   */
  readonly axialFloat?: Mm | undefined;
}

const steel = { modulus: 206_000, density: 7.85e-6 } as const;
const usualShank: Mm = 10;

/**
 * Refuses a setup that cannot stand.
 *
 * @throws DomainError naming the first thing wrong
 */
export function checkSetup(setup: Setup): void {
  const { work, cutter, stations, diameter, operation } = setup;
  const end = work.sections.at(-1)?.to ?? 0;
  if (!(work.gripLength > 0)) throw new DomainError('gripLength', work.gripLength, 'more than 0 mm');
  if (!(work.density > 0)) throw new DomainError('density', work.density, 'more than 0 kg/mm³');
  if (!(cutter.overhang > 0))
    throw new DomainError('overhang', cutter.overhang, 'more than 0 mm from the tool post to the edge');
  if (!(diameter > 0)) throw new DomainError('diameter', diameter, 'more than 0 mm');
  if (stations.length === 0) throw new DomainError('stations', 0, 'at least one place that is cut');
  for (const z of stations) {
    if (!(z >= 0 && z <= end)) throw new DomainError('station', z, `0 to ${end} mm, on the work`);
  }
  const centre = work.centreAt;
  if (centre !== undefined && !(centre > 0 && centre <= end))
    throw new DomainError('centreAt', centre, `above 0 to ${end} mm, on the work`);
  const { steady } = work;
  if (steady && !(steady.at > 0 && steady.at <= end))
    throw new DomainError('steady.at', steady.at, `above 0 to ${end} mm, on the work`);
  if (steady && !(steady.stiffness > 0))
    throw new DomainError('steady.stiffness', steady.stiffness, 'more than 0 N/µm');
  const { axialFloat = 0 } = setup;
  if (!(axialFloat >= 0)) throw new DomainError('axialFloat', axialFloat, '0 mm or more');
  if (operation === 'boring' && !cutter.barDiameter)
    throw new DomainError('barDiameter', cutter.barDiameter, 'the diameter of the boring bar, for example 8 mm');
  if ((operation === 'grooving' || operation === 'parting') && !cutter.width)
    throw new DomainError('width', cutter.width, 'the width of the edge, for example 2 mm');
}

/** Compliance of the tool side in each direction. */
export interface ToolSide {
  readonly radial: MmPerNewton;
  readonly axial: MmPerNewton;
  readonly tangential: MmPerNewton;
  /** Share of `radial` that is the bar's own bending. */
  readonly bar: MmPerNewton;
}

/** Of the slides alone, from the tool post down to the bed. */
export function slides(values: Values): MmPerNewton {
  return (1 / values.toolPost + 1 / values.topSlide + 1 / values.crossSlide + 1 / values.saddle) / 1000;
}

/** Of edge, shank or bar, post and slides together. */
export function toolSide(values: Values, cutter: CuttingTool): ToolSide {
  const down = slides(values);
  const { overhang } = cutter;
  if (cutter.barDiameter) {
    const bar = overhang ** 3 / (3 * (cutter.barModulus ?? steel.modulus) * secondMoment(cutter.barDiameter, 0));
    return {
      radial: down + bar,
      axial: down / values.toolAxialRatio,
      tangential: down / values.toolTangentialRatio + bar,
      bar,
    };
  }
  if (hasBlade(cutter)) {
    const edge = edgeGive(cutter);
    return {
      radial: down + edge.back,
      axial: down / values.toolAxialRatio,
      tangential: down / values.toolTangentialRatio + edge.down,
      bar: 0,
    };
  }
  const shank = overhang ** 3 / (3 * steel.modulus * ((cutter.shank ?? usualShank) ** 4 / 12));
  return {
    radial: down,
    axial: down / values.toolAxialRatio + shank,
    tangential: down / values.toolTangentialRatio + shank,
    bar: 0,
  };
}

/** The bar's own lowest mode seen at its edge; clamped-free, k = 1.030 · 3EI/L³, f = 1.8751² √(EI/ρA) / 2πL² [FEM1]. */
export function barMode(cutter: CuttingTool): { readonly frequency: number; readonly stiffness: number } {
  const d = cutter.barDiameter ?? 0;
  const bending = (cutter.barModulus ?? steel.modulus) * secondMoment(d, 0);
  const mass = ((cutter.barDensity ?? steel.density) / 1000) * ((Math.PI * d ** 2) / 4);
  return {
    frequency: (1.875104 ** 2 / (2 * Math.PI * cutter.overhang ** 2)) * Math.sqrt(bending / mass),
    stiffness: (1.0302 * 3 * bending) / cutter.overhang ** 3,
  };
}

/** Bending of the work held fast at the jaws: everything that does not depend on the lathe, worked out once. */
export interface ClampedWork {
  readonly stations: readonly Mm[];
  /** At each station under a newton there. */
  readonly own: readonly MmPerNewton[];
  /** Places of centre and steady. */
  readonly supports: readonly Mm[];
  /** At each support, for each station, under a newton at the support. */
  readonly toSupport: readonly (readonly MmPerNewton[])[];
  /** At support i under a newton at support j. */
  readonly betweenSupports: readonly (readonly MmPerNewton[])[];
}

/** Works out the bending of a setup's work. */
export function clampedWork(work: HeldWork, stations: readonly Mm[]): ClampedWork {
  const supports = [...(work.centreAt === undefined ? [] : [work.centreAt]), ...(work.steady ? [work.steady.at] : [])];
  const { sections, youngsModulus, poissonRatio } = work;
  const beam = factorBeam({ sections, youngsModulus, poissonRatio, chuck: clamped }, [...stations, ...supports]);
  const under = (at: Mm): ((z: Mm) => MmPerNewton) => {
    const all = deflections(beam, [{ at, force: 1 }]);
    return (z) => all[nodeOf(beam, z)] ?? 0;
  };
  const fromSupport = supports.map(under);
  return {
    stations,
    own: stations.map((z) => under(z)(z)),
    supports,
    toSupport: fromSupport.map((read) => stations.map(read)),
    betweenSupports: fromSupport.map((read) => supports.map(read)),
  };
}

function nodeOf(beam: FactoredBeam, z: Mm): number {
  return beam.nodes.findIndex((node) => Math.abs(node - z) <= 1e-3);
}

/** Sideways give of spindle, chuck and grip at one place of the work under a push at another. */
function rigidGive(values: Values, gripLength: Mm, a: Mm, b: Mm): MmPerNewton {
  const side = 1 / (1000 * values.spindleRadial) + 1 / (1000 * values.grip * gripLength);
  return side + a * b * tiltGive(values, gripLength);
}

/** How far the work tilts in the jaws and with the spindle, for a moment [rad/(N·mm)]. */
export function tiltGive(values: Values, gripLength: Mm): number {
  return 1 / (1e6 * values.spindleTilt) + 12 / (1000 * values.grip * gripLength ** 3);
}

/** Sideways give of the work at each station, lathe behind it included. */
export function workSide(values: Values, work: HeldWork, bending: ClampedWork): MmPerNewton[] {
  const give = (a: Mm, b: Mm) => rigidGive(values, work.gripLength, a, b);
  const stiffnesses = [
    ...(work.centreAt === undefined ? [] : [1000 * values.tailstock]),
    ...(work.steady ? [1000 * work.steady.stiffness] : []),
  ];
  const { stations, own, supports, toSupport, betweenSupports } = bending;
  const free = stations.map((z, i) => (own[i] ?? 0) + give(z, z));
  const toward = supports.map((s, k) => stations.map((z, i) => (toSupport[k]?.[i] ?? 0) + give(s, z)));
  const among = (i: number, j: number) =>
    (betweenSupports[i]?.[j] ?? 0) +
    give(supports[i] ?? 0, supports[j] ?? 0) +
    (i === j ? 1 / (stiffnesses[i] ?? 1) : 0);
  if (supports.length === 0) return free;
  const [aa, ab, bb] = supports.length === 1 ? [among(0, 0), 0, 1] : [among(0, 0), among(0, 1), among(1, 1)];
  const determinant = aa * bb - ab * ab;
  return free.map((c, i) => {
    const [p, q] = [toward[0]?.[i] ?? 0, toward[1]?.[i] ?? 0];
    return c - (p * p * bb - 2 * p * q * ab + q * q * aa) / determinant;
  });
}

/** Give along the axis at a radius: the spindle itself, and the work tilting under a push off its axis. */
export function axialGive(values: Values, gripLength: Mm, radius: Mm): MmPerNewton {
  return 1 / (1000 * values.spindleAxial) + radius ** 2 * tiltGive(values, gripLength);
}

/** Give of edge and work together, square to the surface cut, at each station. */
export function giveAtCut(values: Values, setup: Setup, bending: ClampedWork): MmPerNewton[] {
  const tool = toolSide(values, setup.cutter);
  if (setup.operation === 'facing') {
    const axial = tool.axial + axialGive(values, setup.work.gripLength, setup.diameter / 2);
    return setup.stations.map(() => axial);
  }
  // A blade that bends under the cutting force brings its edge towards the work.
  const plunges = (setup.operation === 'grooving' || setup.operation === 'parting') && hasBlade(setup.cutter);
  const radial = plunges ? slides(values) + edgeAway(setup.cutter) : tool.radial;
  return workSide(values, setup.work, bending).map((c) => c + radial);
}
