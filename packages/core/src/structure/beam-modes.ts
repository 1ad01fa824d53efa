/**
 * How held work rings: natural frequencies and shapes of a stepped beam on springs, with masses hung on it.
 *
 * Knowledge: Timoshenko elements with consistent mass between the steps; the spindle with its chuck as a mass on its own
 * springs, the grip of the jaws as springs between it and the work. Rotations are counted times the whole length, so that
 * all entries of the matrices are of like size.
 */
import { DomainError } from '../errors.ts';
import { type BandedSymmetric, bandedZeros } from '../numerics/banded.ts';
import type { Hertz, Kilogram, Mm } from '../units/quantities.ts';
import { addElement, addKnown, type ElementEntries, type Ends, stiffnessEntries } from './assemble.ts';
import { type BeamSection, elementStiffness } from './beam-element.ts';
import { lowestEigenpairs } from './eigenpairs.ts';
import { elementMass } from './element-mass.ts';
import { type ChuckSprings, checkBeam, type NewtonPerMm, type SteppedBeam } from './stepped-beam.ts';

/** A beam that can vibrate. `chuck` is what holds the work to the spindle, or to the ground when there is no `spindle`. */
export interface VibratingBeam extends SteppedBeam {
  /** Of the work [kg/mm³]. */
  readonly density: number;
  /** Spindle and chuck: their springs to the bed, their mass, and their inertia about the jaw faces [kg·mm²]. */
  readonly spindle?: { readonly springs: ChuckSprings; readonly mass: Kilogram; readonly inertia: number } | undefined;
  /** Further sideways supports: a steady, a second bearing. */
  readonly supports?: readonly { readonly at: Mm; readonly stiffness: NewtonPerMm }[] | undefined;
  /** Masses hung on it, with their inertia about their own middle [kg·mm²]. */
  readonly masses?: readonly { readonly at: Mm; readonly mass: Kilogram; readonly inertia?: number }[] | undefined;
}

/** A mode of vibration, scaled so that its modal mass is one tonne. */
export interface BeamMode {
  readonly frequency: Hertz;
  /** Deflection at each station asked for; its square over ω² is the compliance of this mode there [mm/N]. */
  readonly shape: readonly number[];
}

export interface ModesWanted {
  readonly stations: readonly Mm[];
  readonly count: number;
  /** Elements the whole length is divided into; more where sections ask for it. */
  readonly elements?: number | undefined;
}

/** Places nearer together than this share a node [mm]. */
const coincident = 1e-3;

/**
 * The lowest modes of a held beam.
 *
 *     K v = ω² M v
 *
 * @param beam  the work, how it is held, and its density
 * @param wanted  places where the shapes are read, how many modes, and how finely to divide
 * @returns modes, lowest first
 * @throws DomainError when sections do not join, nothing holds the work, or a place lies off it
 * @source przemieniecki-ch5; przemieniecki-ch11; cowper-1966
 * @valid small vibrations in one plane; undamped
 * @example beamModes({ sections: [{ from: 0, to: 120, outerDiameter: 12 }], youngsModulus: 206000, poissonRatio: 0.3, density: 7.85e-6, chuck: clamped }, { stations: [120], count: 1 })[0].frequency → 593.8
 */
export function beamModes(beam: VibratingBeam, wanted: ModesWanted): BeamMode[] {
  checkVibrating(beam, wanted);
  const nodes = nodesOf(beam, wanted);
  const numbers = numbering(beam, nodes);
  const { stiffness, mass } = beamMatrices(beam, nodes, numbers);
  holders(beam, nodes, numbers, stiffness, mass);
  const rows = wanted.stations.map((z) => numbers.deflect[nodeAt(nodes, z)] ?? -1);
  return lowestEigenpairs(stiffness, mass, wanted.count).map(({ value, vector }) => ({
    frequency: Math.sqrt(value) / (2 * Math.PI),
    shape: rows.map((row) => (row < 0 ? 0 : (vector[row] ?? 0))),
  }));
}

function checkVibrating(beam: VibratingBeam, wanted: ModesWanted): void {
  checkBeam(beam, { heldElsewhere: (beam.supports?.length ?? 0) > 0 });
  const end = beam.sections.at(-1)?.to ?? 0;
  const onWork = (name: string, z: Mm) => {
    if (!(z >= 0 && z <= end)) throw new DomainError(name, z, `0 to ${end} mm, on the work`);
  };
  if (!(beam.density > 0)) throw new DomainError('density', beam.density, 'more than 0 kg/mm³');
  if (!(Number.isInteger(wanted.count) && wanted.count > 0))
    throw new DomainError('count', wanted.count, 'a whole number of modes, from 1');
  for (const z of wanted.stations) onWork('station', z);
  for (const { at, stiffness } of beam.supports ?? []) {
    onWork('support.at', at);
    if (!(stiffness > 0)) throw new DomainError('support.stiffness', stiffness, 'more than 0 N/mm');
  }
  for (const { at, mass, inertia = 0 } of beam.masses ?? []) {
    onWork('mass.at', at);
    if (!(mass >= 0 && inertia >= 0)) throw new DomainError('mass', mass, '0 kg or more');
  }
  const { spindle } = beam;
  if (!spindle) return;
  if (!(spindle.mass > 0 && spindle.inertia > 0))
    throw new DomainError('spindle.mass', spindle.mass, 'more than 0 kg, and an inertia more than 0 kg·mm²');
  if (!(spindle.springs.translational > 0 && spindle.springs.rotational > 0))
    throw new DomainError('spindle.springs', spindle.springs.translational, 'more than 0');
}

interface Numbers {
  readonly deflect: readonly number[];
  readonly turn: readonly number[];
  /** Unknowns of the spindle, -1 where there are none. */
  readonly spindle: readonly [number, number];
  readonly count: number;
}

/** Numbers of the unknowns, spindle first; what is held fast has none, what is tied together shares one. */
function numbering(beam: VibratingBeam, nodes: readonly Mm[]): Numbers {
  const fast = new Set<number>();
  const { tailstock, supports = [], spindle, chuck } = beam;
  for (const { at, stiffness } of tailstock ? [...supports, tailstock] : supports) {
    if (stiffness === Infinity) fast.add(nodeAt(nodes, at));
  }
  let count = 0;
  const own: [number, number] = spindle
    ? [
        spindle.springs.translational === Infinity ? -1 : count++,
        spindle.springs.rotational === Infinity ? -1 : count++,
      ]
    : [-1, -1];
  const deflect: number[] = [];
  const turn: number[] = [];
  nodes.forEach((_, i) => {
    const tied = i === 0 && chuck.translational === Infinity;
    const tiedTurn = i === 0 && chuck.rotational === Infinity;
    deflect.push(fast.has(i) ? -1 : tied ? own[0] : count++);
    turn.push(tiedTurn ? own[1] : count++);
  });
  return { deflect, turn, spindle: own, count };
}

/** Stiffness and mass of the work alone; rotations are counted times its length. */
export function beamMatrices(
  beam: Pick<VibratingBeam, 'sections' | 'youngsModulus' | 'poissonRatio' | 'density'>,
  nodes: readonly Mm[],
  numbers: Omit<Numbers, 'spindle'>,
): { readonly stiffness: BandedSymmetric; readonly mass: BandedSymmetric } {
  const scale = beam.sections.at(-1)?.to ?? 1;
  const { deflect, turn } = numbers;
  const stiffness = bandedZeros(numbers.count, Math.min(3, numbers.count - 1));
  const mass = bandedZeros(numbers.count, Math.min(3, numbers.count - 1));
  let [section, number] = [beam.sections[0], 0];
  let last:
    | { readonly length: Mm; readonly section: BeamSection; readonly k: ElementEntries; readonly m: ElementEntries }
    | undefined;
  for (let e = 0; e + 1 < nodes.length; e++) {
    const [from, to] = [nodes[e] ?? 0, nodes[e + 1] ?? 0];
    while (section && (from + to) / 2 >= section.to) section = beam.sections[++number];
    if (!section) throw new DomainError('station', to, `0 to ${scale} mm, on the work`);
    const ends: Ends = {
      deflect: [deflect[e] ?? -1, deflect[e + 1] ?? -1],
      turn: [turn[e] ?? -1, turn[e + 1] ?? -1],
    };
    const length = to - from;
    // A stretch is divided evenly, so that its elements are alike but for the last digits.
    if (!last || section !== last.section || Math.abs(length - last.length) > 1e-9 * length) {
      const k = stiffnessEntries(elementStiffness(section, length, beam.youngsModulus, beam.poissonRatio));
      last = { length, section, k, m: elementMass(section, length, beam) };
    }
    addElement(stiffness, ends, last.k, scale);
    addElement(mass, ends, last.m, scale);
  }
  return { stiffness, mass };
}

function holders(
  beam: VibratingBeam,
  nodes: readonly Mm[],
  { deflect, turn, spindle: own }: Numbers,
  stiffness: BandedSymmetric,
  mass: BandedSymmetric,
): void {
  const scale = beam.sections.at(-1)?.to ?? 1;
  const spring = (i: number, j: number, k: number) => {
    if (k === Infinity) return;
    addKnown(stiffness, i, i, k);
    addKnown(stiffness, j, j, k);
    addKnown(stiffness, i, j, -k);
  };
  const turning = (rotational: number) => (rotational * 1000) / scale ** 2;
  const { chuck, spindle, tailstock, supports = [], masses = [] } = beam;
  if (chuck.translational !== Infinity) spring(deflect[0] ?? -1, own[0], chuck.translational);
  if (chuck.rotational !== Infinity) spring(turn[0] ?? -1, own[1], turning(chuck.rotational));
  if (spindle) {
    spring(own[0], -1, spindle.springs.translational);
    spring(own[1], -1, turning(spindle.springs.rotational));
    addKnown(mass, own[0], own[0], spindle.mass / 1000);
    addKnown(mass, own[1], own[1], spindle.inertia / 1000 / scale ** 2);
  }
  for (const { at, stiffness: k } of tailstock ? [...supports, tailstock] : supports) {
    spring(deflect[nodeAt(nodes, at)] ?? -1, -1, k);
  }
  for (const { at, mass: kg, inertia = 0 } of masses) {
    const node = nodeAt(nodes, at);
    addKnown(mass, deflect[node] ?? -1, deflect[node] ?? -1, kg / 1000);
    addKnown(mass, turn[node] ?? -1, turn[node] ?? -1, inertia / 1000 / scale ** 2);
  }
}

/** The places a beam is divided at, and the number of the one at a place. */
export interface BeamNodes {
  readonly places: readonly Mm[];
  readonly numberAt: (z: Mm) => number;
}

/** Divides a beam as {@link beamModes} does. */
export function dividedBeam(beam: VibratingBeam, wanted: ModesWanted): BeamNodes {
  const places = nodesOf(beam, wanted);
  return { places, numberAt: (z) => nodeAt(places, z) };
}

/** Steps, supports, masses and stations, and between them as many nodes as the division asks for. */
function nodesOf(beam: VibratingBeam, wanted: ModesWanted): Mm[] {
  const end = beam.sections.at(-1)?.to ?? 0;
  const fixed = [
    0,
    ...beam.sections.map((s) => s.to),
    ...wanted.stations,
    ...(beam.tailstock ? [beam.tailstock.at] : []),
    ...(beam.supports ?? []).map(({ at }) => at),
    ...(beam.masses ?? []).map(({ at }) => at),
  ].toSorted((a, b) => a - b);
  const longestElement = end / (wanted.elements ?? 30);
  const nodes: Mm[] = [];
  for (const z of fixed) {
    const last = nodes.at(-1);
    if (last === undefined) nodes.push(z);
    else if (z - last > coincident) {
      const parts = Math.ceil((z - last) / longestElement - 1e-9);
      for (let i = 1; i <= parts; i++) nodes.push(i === parts ? z : last + ((z - last) * i) / parts);
    }
  }
  return nodes;
}

function nodeAt(nodes: readonly Mm[], z: Mm): number {
  const found = nodes.findIndex((node) => Math.abs(node - z) <= coincident);
  if (found < 0) throw new DomainError('station', z, 'a place on the work');
  return found;
}

/**
 * Stiffness with which one mode answers a push at a place.
 *
 *     k = ω² / φ²
 *
 * @param mode  from {@link beamModes}
 * @param station  number of the place among those asked for [-]
 * @returns modal stiffness, infinite at a node of the mode [N/mm]
 * @source przemieniecki-ch11
 * @valid any mode
 * @example modalStiffness({ frequency: 100, shape: [2000] }, 0) → 0.0987
 */
export function modalStiffness(mode: BeamMode, station: number): NewtonPerMm {
  return (2 * Math.PI * mode.frequency) ** 2 / (mode.shape[station] ?? 0) ** 2;
}
