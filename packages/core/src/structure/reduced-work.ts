/**
 * Work boiled down to a handful of shapes, so that its modes cost little however it is held: for many lathes that are not known
 * well, and for one that is looked for.
 *
 * Knowledge: moving as a whole, the lowest modes of the work held fast at the jaws, and its bending under a push at each support
 * (component modes after Craig and Bampton). Whatever holds it at the jaws and supports it then is springs between a few numbers.
 */
import { DomainError } from '../errors.ts';
import { type BandedSymmetric, bandedZeros, factorBanded, solveBanded } from '../numerics/banded.ts';
import { symmetricEigenpairs } from '../numerics/symmetric.ts';
import type { Kilogram, Mm } from '../units/quantities.ts';
import { type BeamMode, beamMatrices, dividedBeam, type ModesWanted, type VibratingBeam } from './beam-modes.ts';
import { lowestEigenpairs, timesBanded } from './eigenpairs.ts';
import { type ChuckSprings, checkBeam, clamped, type NewtonPerMm } from './stepped-beam.ts';

/** Free work in a few shapes that are square to each other, each with a modal mass of one tonne. */
export interface ReducedWork {
  readonly count: number;
  /** Stiffness between the shapes, row by row [1/s²]. */
  readonly stiffness: Float64Array;
  /** Deflection of each shape at the jaws, and its turn there times `scale`. */
  readonly jaws: Float64Array;
  readonly turn: Float64Array;
  /** Deflection of each shape at each support, and at each station. */
  readonly supports: readonly Float64Array[];
  readonly stations: readonly Float64Array[];
  /** Length of the work. */
  readonly scale: Mm;
}

/** Shapes of the work held fast at the jaws. */
const ownShapes = 4;

/**
 * Boils work down.
 *
 * @param work  sections, modulus, Poisson's ratio and density; what holds it is not looked at
 * @param places  of its supports, and where its modes will be read, from the jaw faces [mm]
 * @param elements  the whole length is divided into [-]
 * @returns the work in a few shapes
 * @throws DomainError when sections do not join or a place lies off the work
 * @source craig-bampton-1968
 * @valid the lowest three or four modes, within 0.3 % of the whole beam
 * @example reduceWork({ sections: [{ from: 0, to: 120, outerDiameter: 12 }], youngsModulus: 206000, poissonRatio: 0.3, density: 7.85e-6 }, { supports: [], stations: [120] }, 12).count → 6
 */
export function reduceWork(
  work: Pick<VibratingBeam, 'sections' | 'youngsModulus' | 'poissonRatio' | 'density'>,
  places: { readonly supports: readonly Mm[]; readonly stations: readonly Mm[] },
  elements: number,
): ReducedWork {
  const beam: VibratingBeam = { ...work, chuck: clamped };
  checkBeam(beam, { heldElsewhere: true });
  if (!(work.density > 0)) throw new DomainError('density', work.density, 'more than 0 kg/mm³');
  const scale = work.sections.at(-1)?.to ?? 1;
  const all = [...places.supports, ...places.stations];
  for (const z of all) if (!(z >= 0 && z <= scale)) throw new DomainError('place', z, `0 to ${scale} mm, on the work`);
  const wanted: ModesWanted = { stations: all, count: ownShapes, elements };
  const { places: nodes, numberAt } = dividedBeam(beam, wanted);
  // Deflection and turn of every node by turns, none held fast.
  const unknowns = {
    deflect: nodes.map((_, i) => 2 * i),
    turn: nodes.map((_, i) => 2 * i + 1),
    count: 2 * nodes.length,
  };
  const { stiffness, mass } = beamMatrices(beam, nodes, unknowns);
  const row = (z: Mm) => 2 * numberAt(z);
  const shapes = square(rawShapes(stiffness, mass, nodes, scale, places.supports.map(row)), mass);
  const pushed = shapes.map((s) => timesBanded(stiffness, s));
  const count = shapes.length;
  const between = new Float64Array(count * count);
  for (let i = 0; i < count; i++) {
    for (let j = 0; j < count; j++) between[i * count + j] = dot(shapes[i], pushed[j]);
  }
  const read = (z: Mm) => Float64Array.from(shapes, (s) => s[row(z)] ?? 0);
  return {
    count,
    stiffness: between,
    jaws: read(0),
    turn: Float64Array.from(shapes, (s) => s[1] ?? 0),
    supports: places.supports.map(read),
    stations: places.stations.map(read),
    scale,
  };
}

/** Moving as a whole, held fast at the jaws and ringing, held fast and pushed at each support. */
function rawShapes(
  stiffness: BandedSymmetric,
  mass: BandedSymmetric,
  nodes: readonly Mm[],
  scale: Mm,
  pushedAt: readonly number[],
): Float64Array[] {
  const { size } = stiffness;
  const across = new Float64Array(size);
  const turning = new Float64Array(size);
  nodes.forEach((z, i) => {
    across[2 * i] = 1;
    turning[2 * i] = z / scale;
    turning[2 * i + 1] = 1;
  });
  const [heldStiffness, heldMass] = [heldAtJaws(stiffness), heldAtJaws(mass)];
  const factor = factorBanded(heldStiffness);
  const freed = (held: Float64Array) => {
    const whole = new Float64Array(size);
    whole.set(held, 2);
    return whole;
  };
  const ringing = lowestEigenpairs(heldStiffness, heldMass, ownShapes).map(({ vector }) => freed(vector));
  const pushed = pushedAt
    .filter((at) => at > 0)
    .map((at) => {
      const load = new Float64Array(size - 2);
      load[at - 2] = 1;
      return freed(solveBanded(factor, load));
    });
  return [across, turning, ...ringing, ...pushed];
}

/** A matrix without the deflection and turn of its first node. */
function heldAtJaws(matrix: BandedSymmetric): BandedSymmetric {
  const held = bandedZeros(matrix.size - 2, matrix.halfBandwidth);
  held.entries.set(matrix.entries.subarray(2 * (matrix.halfBandwidth + 1)));
  return held;
}

/** A shape that is this near to being made of the others is left out. */
const nothingNew = 1e-6;

/** The same shapes made square to each other in the mass, of one tonne each; what adds nothing is left out. */
function square(shapes: readonly Float64Array[], mass: BandedSymmetric): Float64Array[] {
  const made: { readonly shape: Float64Array; readonly moved: Float64Array }[] = [];
  for (const raw of shapes) {
    const shape = raw.slice();
    const before = dot(shape, timesBanded(mass, shape));
    for (let twice = 0; twice < 2; twice++) {
      for (const { shape: other, moved } of made) {
        const share = dot(shape, moved);
        for (let i = 0; i < shape.length; i++) shape[i] = (shape[i] ?? 0) - share * (other[i] ?? 0);
      }
    }
    const moved = timesBanded(mass, shape);
    const left = dot(shape, moved);
    if (!(left > nothingNew ** 2 * before)) continue;
    const unit = 1 / Math.sqrt(left);
    made.push({ shape: shape.map((x) => x * unit), moved: moved.map((x) => x * unit) });
  }
  return made.map(({ shape }) => shape);
}

function dot(a: Float64Array | undefined, b: Float64Array | undefined): number {
  let sum = 0;
  if (a && b) for (let i = 0; i < a.length; i++) sum += (a[i] ?? 0) * (b[i] ?? 0);
  return sum;
}

/** What holds reduced work: the jaws between it and the spindle, the spindle itself, and a spring at each support. */
export interface Holding {
  readonly chuck: ChuckSprings;
  /** Springs to the bed, mass, and inertia about the jaw faces [kg·mm²]. */
  readonly spindle: { readonly springs: ChuckSprings; readonly mass: Kilogram; readonly inertia: number };
  readonly supports: readonly NewtonPerMm[];
}

/**
 * The lowest modes of reduced work.
 *
 *     K v = ω² v, in the shapes of the work and the two motions of the spindle
 *
 * @param work  from {@link reduceWork}
 * @param holding  what holds it, every spring finite
 * @param count  modes wanted [-]
 * @returns modes, lowest first, read at the stations of the reduction
 * @throws DomainError when a spring or a mass is not above 0 and finite
 * @source craig-bampton-1968
 * @valid as {@link reduceWork}
 * @example reducedModes(reduceWork({ sections: [{ from: 0, to: 120, outerDiameter: 12 }], youngsModulus: 206000, poissonRatio: 0.3, density: 7.85e-6 }, { supports: [], stations: [120] }, 12), { chuck: { translational: 1e9, rotational: 1e8 }, spindle: { springs: { translational: 1e9, rotational: 1e9 }, mass: 5, inertia: 5000 }, supports: [] }, 1)[0].frequency → 594
 */
export function reducedModes(work: ReducedWork, holding: Holding, count: number): BeamMode[] {
  checkHolding(work, holding);
  const { chuck, spindle, supports } = holding;
  const own = work.count;
  const size = own + 2;
  const matrix = new Float64Array(size * size);
  for (let i = 0; i < own; i++) {
    matrix.set(work.stiffness.subarray(i * own, (i + 1) * own), i * size);
  }
  const ends = new Float64Array(size);
  // A turn is counted times the length of the work, in shapes and spindle alike.
  const turning = 1000 / work.scale ** 2;
  const across = 1 / Math.sqrt(spindle.mass / 1000);
  const round = 1 / Math.sqrt(spindle.inertia / 1000 / work.scale ** 2);
  const spring = (stiffness: number) => {
    for (let i = 0; i < size; i++) {
      const pull = stiffness * (ends[i] ?? 0);
      if (pull === 0) continue;
      for (let k = 0; k <= i; k++) matrix[i * size + k] = (matrix[i * size + k] ?? 0) + pull * (ends[k] ?? 0);
    }
  };
  ends.set(work.jaws);
  ends[own] = -across;
  spring(chuck.translational);
  ends.set(work.turn);
  ends[own] = 0;
  ends[own + 1] = -round;
  spring(chuck.rotational * turning);
  ends[own + 1] = 0;
  supports.forEach((stiffness, i) => {
    ends.set(work.supports[i] ?? []);
    spring(stiffness);
  });
  const toBed = (at: number, stiffness: number) => {
    matrix[at * size + at] = (matrix[at * size + at] ?? 0) + stiffness;
  };
  toBed(own, spindle.springs.translational * across ** 2);
  toBed(own + 1, spindle.springs.rotational * turning * round ** 2);
  const { values, vectors } = symmetricEigenpairs(matrix, size);
  return [...values.keys()]
    .sort((a, b) => (values[a] ?? 0) - (values[b] ?? 0))
    .slice(0, count)
    .map((i) => ({
      frequency: Math.sqrt(Math.max(0, values[i] ?? 0)) / (2 * Math.PI),
      shape: work.stations.map((station) => {
        let sum = 0;
        for (let k = 0; k < own; k++) sum += (station[k] ?? 0) * (vectors[i * size + k] ?? 0);
        return sum;
      }),
    }));
}

function checkHolding(work: ReducedWork, { chuck, spindle, supports }: Holding): void {
  const must = (name: string, value: number) => {
    if (!(value > 0 && value < Infinity)) throw new DomainError(name, value, 'more than 0, and finite');
  };
  must('chuck.translational', chuck.translational);
  must('chuck.rotational', chuck.rotational);
  must('spindle.springs.translational', spindle.springs.translational);
  must('spindle.springs.rotational', spindle.springs.rotational);
  must('spindle.mass', spindle.mass);
  must('spindle.inertia', spindle.inertia);
  if (supports.length !== work.supports.length)
    throw new DomainError('supports', supports.length, `${work.supports.length}, as many as the work was reduced for`);
  for (const stiffness of supports) must('support.stiffness', stiffness);
}
