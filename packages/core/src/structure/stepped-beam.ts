/**
 * The work as it stands out of the chuck: a stepped beam, and how far it gives under a push at any place.
 *
 * Knowledge: Timoshenko beam elements between the steps, exact for forces at their ends, so one element a stretch is
 * enough; chuck as a translational and a rotational spring, tailstock centre as a translational spring. The stiffness
 * matrix is factored once, and every station costs one solution.
 */
import { DomainError } from '../errors.ts';
import {
  type BandedFactor,
  type BandedSymmetric,
  bandedZeros,
  diagonalOfInverse,
  factorBanded,
  solveBanded,
} from '../numerics/banded.ts';
import type { Mm, MPa, Newton } from '../units/quantities.ts';
import { addElement, addKnown, type Ends, stiffnessEntries } from './assemble.ts';
import { type BeamSection, elementStiffness } from './beam-element.ts';

export type { BeamSection } from './beam-element.ts';

/** Compliance: how far for each newton. */
export type MmPerNewton = number;
export type NewtonPerMm = number;
export type NewtonMetrePerRadian = number;

/** How the work is held at the jaw faces. Infinite means unyielding; a rotational stiffness of 0 is a centre. */
export interface ChuckSprings {
  readonly translational: NewtonPerMm;
  readonly rotational: NewtonMetrePerRadian;
}

export interface SteppedBeam {
  /** End to end from the jaw faces at 0. */
  readonly sections: readonly BeamSection[];
  readonly youngsModulus: MPa;
  readonly poissonRatio: number;
  readonly chuck: ChuckSprings;
  /** A centre supporting the work sideways at a place along it. */
  readonly tailstock?: { readonly at: Mm; readonly stiffness: NewtonPerMm } | undefined;
}

/** Held in a chuck that does not give at all. */
export const clamped: ChuckSprings = { translational: Infinity, rotational: Infinity };

/** A beam with its stiffness factored, ready for loads at any of its nodes. */
export interface FactoredBeam {
  readonly nodes: readonly Mm[];
  readonly factor: BandedFactor;
  /** Number of the unknown deflection at each node, -1 where it is held fast. */
  readonly unknown: readonly number[];
}

/** Places nearer together than this share a node [mm]; the deflection between them differs by nothing one can measure. */
const coincident = 1e-3;

/** Refuses sections that do not join, are bored through, or springs that are negative. */
export function checkBeam(beam: SteppedBeam, { heldElsewhere }: { readonly heldElsewhere: boolean }): void {
  if (beam.sections.length === 0) throw new DomainError('sections', 0, 'at least one section');
  let end = 0;
  for (const s of beam.sections) {
    if (Math.abs(s.from - end) > coincident)
      throw new DomainError('from', s.from, `${end} mm, where the section before ends`);
    if (!(s.to > s.from)) throw new DomainError('to', s.to, `more than ${s.from} mm`);
    const bore = s.innerDiameter ?? 0;
    if (!(s.outerDiameter > 0)) throw new DomainError('outerDiameter', s.outerDiameter, 'more than 0 mm');
    if (!(bore >= 0 && bore < s.outerDiameter)) {
      throw new DomainError('innerDiameter', bore, `0 up to less than ${s.outerDiameter} mm`);
    }
    end = s.to;
  }
  if (!(beam.youngsModulus > 0)) throw new DomainError('youngsModulus', beam.youngsModulus, 'more than 0 MPa');
  if (!(beam.poissonRatio >= 0 && beam.poissonRatio < 0.5))
    throw new DomainError('poissonRatio', beam.poissonRatio, '0 to 0.5');
  if (!(beam.chuck.translational > 0))
    throw new DomainError('translational', beam.chuck.translational, 'more than 0 N/mm');
  if (!(beam.chuck.rotational >= 0)) throw new DomainError('rotational', beam.chuck.rotational, '0 N·m/rad or more');
  const centre = beam.tailstock;
  if (centre && !(centre.at > 0 && centre.at <= end))
    throw new DomainError('tailstock.at', centre.at, `above 0 to ${end} mm, on the work`);
  if (centre && !(centre.stiffness > 0))
    throw new DomainError('tailstock.stiffness', centre.stiffness, 'more than 0 N/mm');
  if (beam.chuck.rotational === 0 && !centre && !heldElsewhere)
    throw new DomainError('rotational', 0, 'more than 0 N·m/rad, or a tailstock centre');
}

/**
 * Stiffness matrix of the beam, factored, with a node at every step, support and station.
 *
 *     K = Σ K_element + springs of chuck and centre
 *
 * @param beam  the work and how it is held
 * @param stations  places that will be loaded or read, distances from the jaw faces [mm]
 * @returns the beam ready for loads
 * @throws DomainError when sections do not join, a station lies off the work, or nothing holds the work
 * @source przemieniecki-ch5
 * @valid small deflections, elastic; stations from 0 to the end of the work
 * @example factorBeam({ sections: [{ from: 0, to: 50, outerDiameter: 10 }], youngsModulus: 200000, poissonRatio: 0.3, chuck: clamped }, [25]).nodes.length → 3
 */
export function factorBeam(beam: SteppedBeam, stations: readonly Mm[]): FactoredBeam {
  checkBeam(beam, { heldElsewhere: false });
  const end = beam.sections[beam.sections.length - 1]?.to ?? 0;
  for (const z of stations) {
    if (!(z >= 0 && z <= end)) throw new DomainError('station', z, `0 to ${end} mm, on the work`);
  }
  const nodes = nodesOf(beam, stations);
  const { unknown, turn, count } = numbering(beam, nodes);
  const matrix = bandedZeros(count, 3);
  addElements(matrix, beam, nodes, unknown, turn);
  addSupports(matrix, beam, nodes, unknown, turn);
  return { nodes, factor: factorBanded(matrix), unknown };
}

/** Numbers of the unknowns; what is held fast has none. */
function numbering(beam: SteppedBeam, nodes: readonly Mm[]) {
  const centre = beam.tailstock?.stiffness === Infinity ? nodeAt(nodes, beam.tailstock.at) : -1;
  const unknown: number[] = [];
  const turn: number[] = [];
  let count = 0;
  nodes.forEach((_, i) => {
    const held = (i === 0 && beam.chuck.translational === Infinity) || i === centre;
    unknown.push(held ? -1 : count++);
    turn.push(i === 0 && beam.chuck.rotational === Infinity ? -1 : count++);
  });
  return { unknown, turn, count };
}

/** Rotations are counted times the whole length, so that all entries of the matrix are of like size. */
const scaleOf = (beam: SteppedBeam): Mm => beam.sections.at(-1)?.to ?? 1;

function addElements(
  matrix: BandedSymmetric,
  beam: SteppedBeam,
  nodes: readonly Mm[],
  unknown: readonly number[],
  turn: readonly number[],
): void {
  const scale = scaleOf(beam);
  let [section, number] = [beam.sections[0], 0];
  for (let e = 0; e + 1 < nodes.length; e++) {
    const [from, to] = [nodes[e] ?? 0, nodes[e + 1] ?? 0];
    while (section && (from + to) / 2 >= section.to) section = beam.sections[++number];
    if (!section) throw new DomainError('station', to, `0 to ${scale} mm, on the work`);
    const ends: Ends = {
      deflect: [unknown[e] ?? -1, unknown[e + 1] ?? -1],
      turn: [turn[e] ?? -1, turn[e + 1] ?? -1],
    };
    const k = elementStiffness(section, to - from, beam.youngsModulus, beam.poissonRatio);
    addElement(matrix, ends, stiffnessEntries(k), scale);
  }
}

function addSupports(
  matrix: BandedSymmetric,
  beam: SteppedBeam,
  nodes: readonly Mm[],
  unknown: readonly number[],
  turn: readonly number[],
): void {
  const { chuck, tailstock } = beam;
  const scale = scaleOf(beam);
  const add = (row: number | undefined, stiffness: number) => addKnown(matrix, row ?? -1, row ?? -1, stiffness);
  if (chuck.translational !== Infinity) add(unknown[0], chuck.translational);
  if (chuck.rotational !== Infinity) add(turn[0], (chuck.rotational * 1000) / scale ** 2);
  if (tailstock && tailstock.stiffness !== Infinity) add(unknown[nodeAt(nodes, tailstock.at)], tailstock.stiffness);
}

/** Steps, support and stations in order, each place once. */
function nodesOf(beam: SteppedBeam, stations: readonly Mm[]): Mm[] {
  const places = [0, ...beam.sections.map((s) => s.to), ...stations, ...(beam.tailstock ? [beam.tailstock.at] : [])];
  const kept: Mm[] = [];
  for (const z of places.toSorted((a, b) => a - b)) {
    if (kept.length === 0 || z - (kept[kept.length - 1] ?? 0) > coincident) kept.push(z);
  }
  return kept;
}

function nodeAt(nodes: readonly Mm[], z: Mm): number {
  const found = nodes.findIndex((node) => Math.abs(node - z) <= coincident);
  if (found < 0) throw new DomainError('station', z, 'one of the stations the beam was factored for');
  return found;
}

/**
 * Deflection at every node of a factored beam under a set of sideways forces.
 *
 * @param beam  from {@link factorBeam}
 * @param loads  forces and where they act
 * @returns deflection at each of `beam.nodes` [mm]
 * @throws DomainError when a load acts where there is no node
 * @source przemieniecki-ch5
 * @valid small deflections, elastic
 * @example deflections(factorBeam({ sections: [{ from: 0, to: 50, outerDiameter: 10 }], youngsModulus: 200000, poissonRatio: 0, chuck: clamped }, []), [{ at: 50, force: 20 }])[1] → 0.00864
 */
export function deflections(beam: FactoredBeam, loads: readonly { readonly at: Mm; readonly force: Newton }[]): Mm[] {
  const load = new Float64Array(beam.factor.size);
  for (const { at, force } of loads) {
    const row = beam.unknown[nodeAt(beam.nodes, at)] ?? -1;
    if (row >= 0) load[row] = (load[row] ?? 0) + force;
  }
  const solved = solveBanded(beam.factor, load);
  return beam.unknown.map((row) => (row < 0 ? 0 : (solved[row] ?? 0)));
}

/**
 * How far each station gives under a newton pushing right there.
 *
 * @param beam  the work and how it is held
 * @param stations  distances from the jaw faces [mm]
 * @returns self-compliance at each station, in the order asked [mm/N]
 * @throws DomainError when a station lies off the work
 * @source przemieniecki-ch5
 * @valid small deflections, elastic
 * @example deflectionUnderUnitLoad({ sections: [{ from: 0, to: 100, outerDiameter: 20 }], youngsModulus: 206000, poissonRatio: 0.3, chuck: clamped }, [100])[0] → 0.000210558
 */
export function deflectionUnderUnitLoad(beam: SteppedBeam, stations: readonly Mm[]): MmPerNewton[] {
  const { nodes, factor, unknown } = factorBeam(beam, stations);
  const compliances = diagonalOfInverse(factor);
  return stations.map((z) => {
    const row = unknown[nodeAt(nodes, z)] ?? -1;
    return row < 0 ? 0 : (compliances[row] ?? 0);
  });
}

/**
 * How far the work gives at one place under a newton at another.
 *
 * @param beam  the work and how it is held
 * @param loadAt  where the newton pushes, from the jaw faces [mm]
 * @param readAt  where the deflection is read, from the jaw faces [mm]
 * @returns compliance [mm/N]; the same with the two places exchanged
 * @throws DomainError when a place lies off the work
 * @source przemieniecki-ch5
 * @valid small deflections, elastic
 * @example compliance({ sections: [{ from: 0, to: 50, outerDiameter: 10 }], youngsModulus: 200000, poissonRatio: 0, chuck: clamped }, 50, 25) → 0.0001363
 */
export function compliance(beam: SteppedBeam, loadAt: Mm, readAt: Mm): MmPerNewton {
  const factored = factorBeam(beam, [loadAt, readAt]);
  return deflections(factored, [{ at: loadAt, force: 1 }])[nodeAt(factored.nodes, readAt)] ?? 0;
}
