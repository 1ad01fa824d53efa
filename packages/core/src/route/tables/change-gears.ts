/**
 * Change gears: every simple and compound train that the owner's set makes, and how far its pitch is off.
 */
import { DomainError } from '../../errors.ts';
import type { Mm } from '../../units/quantities.ts';

/** Two wheels in mesh: the first drives the second. */
export interface Mesh {
  readonly driver: number;
  readonly driven: number;
}

/** From the spindle to the leadscrew: one mesh is a simple train, two on a common stud are a compound one. */
export interface GearTrain {
  readonly meshes: readonly Mesh[];
  /** Feed of the saddle for one turn of the spindle. */
  readonly lead: Mm;
  /** How far the lead is off, as a share of it: positive is too coarse [-]. */
  readonly error: number;
}

/** Teeth by which two wheels in mesh must outnumber a wheel beside them, to clear the stud; `common practice`. */
const clearance = 15;
/** Below this share a train is exact: noise of binary fractions, not of wheels. */
const exact = 1e-9;

/**
 * Feed of the saddle for one turn of the spindle through a train of change gears.
 *
 *     l = p · ∏ drivers / ∏ driven
 *
 * @param leadscrew  pitch of the leadscrew [mm]
 * @param meshes  pairs of wheels from the spindle to the leadscrew; idlers count for nothing
 * @returns lead of the thread that is cut [mm]
 * @source JONES1915-p93
 * @source ROSE-p632
 * @source geometry
 * @valid the train begins at a wheel that turns with the spindle
 * @example leadOf(3.175, [{ driver: 120, driven: 127 }]) → 3
 */
export function leadOf(leadscrew: Mm, meshes: readonly Mesh[]): Mm {
  return meshes.reduce((lead, { driver, driven }) => (lead * driver) / driven, leadscrew);
}

/**
 * How far a thread is out of step with its mate at the end of their engagement.
 *
 *     ΔL = e L
 *
 * @param error  error of the lead, as a share of it [-]
 * @param engaged  length over which the threads are engaged [mm]
 * @returns the difference, positive when the thread cut is too long [mm]
 * @source geometry
 * @valid any lead
 * @example driftOver(125e-6, 20) → 0.0025
 */
export function driftOver(error: number, engaged: Mm): Mm {
  return error * engaged;
}

/**
 * Diameter that a bolt seems thicker, or a nut tighter, to its mate because the pitch is off.
 *
 *     Δd = |ΔL| / tan(α / 2)
 *
 * @param drift  error of the pitch added up over the engagement [mm]
 * @param flankAngle  between the flanks [rad]
 * @returns what it takes off the clearance, on the pitch diameter [mm]
 * @throws DomainError when the angle is not between 0 and π
 * @source geometry
 * @valid symmetric threads; for 60° it is 1.732 times the drift
 * @example diameterForDrift(0.01, Math.PI / 3) → 0.01732
 */
export function diameterForDrift(drift: Mm, flankAngle: number): Mm {
  if (!(flankAngle > 0 && flankAngle < Math.PI)) throw new DomainError('flankAngle', flankAngle, 'above 0 to below π');
  return Math.abs(drift) / Math.tan(flankAngle / 2);
}

/**
 * The trains of a set of wheels that come nearest to a lead: the least error first, then the fewest wheels, the gentlest meshes, the
 * largest wheels. Every wheel is used once; a compound train is left out where one of its wheels would foul the stud of the next.
 *
 * @param lead  feed of the saddle wanted for one turn of the spindle [mm]
 * @param leadscrew  pitch of the leadscrew [mm]
 * @param gears  teeth of the wheels on hand, one entry for each wheel [-]
 * @param keep  how many trains to return [-]
 * @returns the trains, best first; none from fewer than two wheels
 * @throws DomainError when lead or leadscrew are not above 0
 * @source geometry
 * @source common-practice the 15 teeth that keep two wheels clear of the next stud
 * @valid spindle and first wheel turn at the same speed; two meshes at most
 * @example gearTrains(3, 3.175, [120, 127, 60])[0].meshes → [{ driver: 120, driven: 127 }]
 */
export function gearTrains(lead: Mm, leadscrew: Mm, gears: readonly number[], keep = 8): GearTrain[] {
  if (!(lead > 0)) throw new DomainError('lead', lead, 'above 0 mm');
  if (!(leadscrew > 0)) throw new DomainError('leadscrew', leadscrew, 'above 0 mm');
  const best = new Best(lead, leadscrew, keep);
  for (const [i, driver] of gears.entries())
    for (const [j, driven] of gears.entries()) if (i !== j) best.offer([{ driver, driven }]);
  const pairs = pairsOf(gears);
  const wanted = lead / leadscrew;
  for (const drivers of pairs) {
    const target = drivers.product / wanted;
    const from = firstAtLeast(pairs, target);
    // Outwards from the product that would be exact, on either side, for as long as the error can still be among the best.
    for (const step of [1, -1]) {
      for (let k = step === 1 ? from : from - 1; ; k += step) {
        const driven = pairs[k];
        if (!driven || !best.wants(Math.abs(target / driven.product - 1))) break;
        if (shareWheel(drivers, driven)) continue;
        const meshes = arranged(drivers.teeth, driven.teeth);
        if (meshes) best.offer(meshes);
      }
    }
  }
  return best.trains();
}

interface Pair {
  readonly teeth: readonly [number, number];
  readonly product: number;
}

/** Every two wheels of the set once, by their product; two wheels alike are one choice. */
function pairsOf(gears: readonly number[]): Pair[] {
  const found = new Map<string, Pair>();
  const sorted = gears.toSorted((a, b) => a - b);
  for (const [i, a] of sorted.entries())
    for (const b of sorted.slice(i + 1)) found.set(`${a} ${b}`, { teeth: [a, b], product: a * b });
  return [...found.values()].toSorted((a, b) => a.product - b.product);
}

function firstAtLeast(pairs: readonly Pair[], product: number): number {
  let [low, high] = [0, pairs.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((pairs[middle]?.product ?? product) < product) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The same number of teeth driving and driven is a simple train in disguise, or asks for a wheel twice. */
function shareWheel(drivers: Pair, driven: Pair): boolean {
  return drivers.teeth.some((t) => driven.teeth.includes(t));
}

/** The gentlest order of four wheels in which none fouls a stud, of two alike the roomier; undefined when there is none. */
function arranged([a, c]: readonly [number, number], [b, d]: readonly [number, number]): readonly Mesh[] | undefined {
  const orders = [
    [a, b, c, d],
    [a, d, c, b],
    [c, b, a, d],
    [c, d, a, b],
  ] as const;
  return orders
    .map(([w, x, y, z]) => ({
      meshes: [
        { driver: w, driven: x },
        { driver: y, driven: z },
      ],
      // How far each wheel stays off the stud or spindle beside it, in teeth.
      room: Math.min(w + x - y, y + z - x),
    }))
    .filter(({ room }) => room >= clearance)
    .toSorted((p, q) => steepest(p.meshes) - steepest(q.meshes) || q.room - p.room)[0]?.meshes;
}

function steepest(meshes: readonly Mesh[]): number {
  return Math.max(...meshes.map(({ driver, driven }) => Math.max(driver / driven, driven / driver)));
}

/** The best trains so far, in order. */
class Best {
  readonly #lead: Mm;
  readonly #leadscrew: Mm;
  readonly #keep: number;
  #kept: GearTrain[] = [];

  constructor(lead: Mm, leadscrew: Mm, keep: number) {
    this.#lead = lead;
    this.#leadscrew = leadscrew;
    this.#keep = keep;
  }

  /** Whether a train with this error could still be kept. */
  wants(error: number): boolean {
    const last = this.#kept[this.#keep - 1];
    return !last || error <= Math.abs(last.error) + exact;
  }

  offer(meshes: readonly Mesh[]): void {
    const lead = leadOf(this.#leadscrew, meshes);
    const off = lead / this.#lead - 1;
    const train = { meshes, lead, error: Math.abs(off) < exact ? 0 : off };
    if (!this.wants(Math.abs(train.error))) return;
    if (this.#kept.some((t) => sameTrain(t, train))) return;
    const at = this.#kept.findIndex((t) => better(train, t) < 0);
    this.#kept.splice(at < 0 ? this.#kept.length : at, 0, train);
    this.#kept.length = Math.min(this.#kept.length, this.#keep);
  }

  trains(): GearTrain[] {
    return [...this.#kept];
  }
}

function better(a: GearTrain, b: GearTrain): number {
  const error = Math.abs(a.error) - Math.abs(b.error);
  if (Math.abs(error) > exact) return error;
  const steeper = steepest(a.meshes) - steepest(b.meshes);
  return a.meshes.length - b.meshes.length || (Math.abs(steeper) > exact ? steeper : smallest(b) - smallest(a));
}

function smallest(train: GearTrain): number {
  return Math.min(...train.meshes.flatMap((m) => [m.driver, m.driven]));
}

function sameTrain(a: GearTrain, b: GearTrain): boolean {
  return (
    a.meshes.length === b.meshes.length &&
    a.meshes.every(({ driver, driven }, i) => driver === b.meshes[i]?.driver && driven === b.meshes[i]?.driven)
  );
}

/** `60 : 40`, or `60 : 40 × 20 : 45`: drivers before driven. */
export function trainInWords(train: GearTrain): string {
  return train.meshes.map(({ driver, driven }) => `${driver} : ${driven}`).join(' × ');
}
