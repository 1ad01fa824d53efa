/**
 * How broad a chip may be before it sings: the edge cuts over the waves it left a turn before, and they grow.
 *
 * Knowledge: the regenerative law with one edge and a delay of one turn, and the rubbing of the flank on the waves, which
 * damps the more the slower the cut. At a limit the motion neither grows nor dies, so
 *
 *     1/G(ω) = −b Kf [(1 − e^(−iωT)) + iω C/(Kf v)]
 *
 * With 1/G = P + iQ, φ = ωT and γ = ωC/(Kf v), for every ω with P < 0 the phases φ that can be are those with
 * sin φ + (Q/P) cos φ = Q/P − γ, and the breadth belonging to them is b = −P / (Kf (1 − cos φ)). Without rubbing that is
 * b = −1/(2 Kf Re G).
 */
import { DomainError } from '../errors.ts';
import type { Hertz, MetrePerMinute, Mm, MPa, Rpm } from '../units/quantities.ts';
import { checkModes, type OrientedMode, receptanceAt } from './receptance.ts';

/** What the cut feeds back. */
export interface RegenerativeCut {
  /** Kf: by how much the force square to the edge grows for each mm of breadth and each mm of chip thickness. */
  readonly chipStiffness: MPa;
  /** C: rubbing force for each mm of breadth when the edge moves as fast as the cut; 0 when left out [N/mm]. */
  readonly processDamping?: number | undefined;
  /** Needed with `processDamping`. */
  readonly cuttingSpeed?: MetrePerMinute | undefined;
}

export interface StabilityLimit {
  /** Broadest chip that stays quiet; infinite when none sings. */
  readonly width: Mm;
  /** At which it would sing; 0 when none does. */
  readonly frequency: Hertz;
}

const quiet: StabilityLimit = { width: Infinity, frequency: 0 };

/** Frequencies with P < 0, and what every speed needs of them. */
export interface LobeGrid {
  readonly modes: readonly OrientedMode[];
  readonly omega: Float64Array;
  readonly real: Float64Array;
  /** Sine and cosine of atan(Q/P). */
  readonly sine: Float64Array;
  readonly cosine: Float64Array;
  /** 1 when the frequency before it on the grid had P < 0 too. */
  readonly joined: Uint8Array;
}

/** Distances from a mode, in half-widths of its resonance, at which the response is looked at. */
const fine = [
  0.05, 0.1, 0.2, 0.3, 0.45, 0.6, 0.7, 0.8, 0.9, 1, 1.1, 1.25, 1.4, 1.7, 2, 2.5, 3.2, 4, 5.5, 8, 12, 20, 35,
];
const coarse = [0.15, 0.4, 0.7, 1, 1.4, 2.2, 4, 9, 22];

/** Frequencies at which the response of modes is looked at, in order: close together about each mode. */
export function lookedAt(
  modes: readonly Pick<OrientedMode, 'frequency' | 'damping'>[],
  detail: 'fine' | 'coarse',
): Float64Array {
  const lowest = Math.min(...modes.map((m) => m.frequency));
  const highest = Math.max(...modes.map((m) => m.frequency));
  const frequencies: Hertz[] = [];
  const background = detail === 'fine' ? 60 : 12;
  for (let i = 0; i <= background; i++) {
    frequencies.push(0.2 * lowest * ((25 * highest) / lowest) ** (i / background));
  }
  for (const { frequency, damping } of modes) {
    frequencies.push(frequency);
    for (const t of detail === 'fine' ? fine : coarse) {
      frequencies.push(frequency * Math.sqrt(1 + 2 * damping * t));
      if (1 - 2 * damping * t > 0.04) frequencies.push(frequency * Math.sqrt(1 - 2 * damping * t));
    }
  }
  return Float64Array.from(frequencies).sort();
}

/**
 * What the speeds need of the modes, gathered once for all of them.
 *
 * @throws DomainError when a mode is out of range
 */
export function lobeGrid(modes: readonly OrientedMode[], frequencies: Float64Array): LobeGrid {
  checkModes(modes);
  const omega: number[] = [];
  const real: number[] = [];
  const sine: number[] = [];
  const cosine: number[] = [];
  const joined: number[] = [];
  let before = false;
  for (const f of frequencies) {
    const { re, im } = receptanceAt(modes, f);
    if (re < 0) {
      const size = re * re + im * im;
      const root = Math.sqrt(size);
      omega.push(2 * Math.PI * f);
      real.push(re / size);
      // P = Re G/|G|², Q = −Im G/|G|²; the angle lies where the cosine is positive, and P is negative.
      cosine.push(-re / root);
      sine.push(im / root);
      joined.push(before ? 1 : 0);
    }
    before = re < 0;
  }
  return {
    modes,
    omega: Float64Array.from(omega),
    real: Float64Array.from(real),
    sine: Float64Array.from(sine),
    cosine: Float64Array.from(cosine),
    joined: Uint8Array.from(joined),
  };
}

/**
 * The limit over all spindle speeds near a cutting speed: the foot of the lobes, as the head of this file derives it.
 *
 * A land as long as a wave is pressed up as much as down, so that short waves are damped less: by 2(1 − cos kl)/(kl)², from the
 * metal pressed aside along the land l by a wave of ω = k v.
 *
 * @param grid  from {@link lobeGrid}
 * @param rubbingTime  C/(Kf v) [s]
 * @param landTime  time in which the cut passes the land that rubs, l/v; 0 for a land much shorter than the waves [s]
 * @returns chip breadth times chip stiffness at the limit, infinite when nothing sings [N/mm]
 * @source ALT131; methods-dynamics §2 and §4; wu-1989 metal pressed aside
 * @valid as {@link leastStableWidth}; as close as the grid is fine
 * @example leastOnGrid(lobeGrid([{ frequency: 150, stiffness: 5000, damping: 0.05, direction: 1 }], new Float64Array([157.32])), 0, 0) → 525.0
 */
export function leastOnGrid(grid: LobeGrid, rubbingTime: number, landTime: number): number {
  const { omega, real, sine, cosine } = grid;
  let least = Infinity;
  for (let i = 0; i < omega.length; i++) {
    const w = omega[i] ?? 0;
    const rubbing = w * rubbingTime * shareOfLand(w * landTime);
    const limit = leastAtFrequency(real[i] ?? 0, sine[i] ?? 0, cosine[i] ?? 0, rubbing);
    if (limit < least) least = limit;
  }
  return least;
}

/** Rubbing of a land over that of one much shorter than the wave; kl its length in radians of wave. */
function shareOfLand(kl: number): number {
  return kl < 1e-3 ? 1 : (2 * (1 - Math.cos(kl))) / (kl * kl);
}

/**
 * Least load at which one frequency can go on, over both phases that can be: with sin β = s, 1 − cos φ is
 * 1 + cos(β + lag) or 1 − cos(β − lag).
 */
function leastAtFrequency(real: number, sine: number, cosine: number, rubbing: number): number {
  const s = sine - rubbing * cosine;
  if (s < -1 || s > 1) return Infinity;
  const c = Math.sqrt(1 - s * s);
  return -real / (1 + Math.abs(c * cosine) - s * sine);
}

/** What one frequency asks: both phases that can be, and the load belonging to each. */
interface Look {
  readonly omega: number;
  readonly phases: readonly [number, number];
  readonly loads: readonly [number, number];
}

function look(modes: readonly OrientedMode[], omega: number, rubbingTime: number): Look | undefined {
  const { re, im } = receptanceAt(modes, omega / (2 * Math.PI));
  if (!(re < 0)) return undefined;
  const lag = Math.atan(-im / re);
  const s = Math.sin(lag) - omega * rubbingTime * Math.cos(lag);
  if (!(s >= -1 && s <= 1)) return undefined;
  const real = re / (re * re + im * im);
  const phases = [Math.PI - Math.asin(s) - lag, Math.asin(s) - lag] as const;
  return { omega, phases, loads: [-real / (1 - Math.cos(phases[0])), -real / (1 - Math.cos(phases[1]))] };
}

/**
 * The frequencies of a grid that can go on with rubbing, in unbroken stretches. The two phases run together where a stretch
 * ends, and a crossing may lie close to there; so each end is looked for.
 */
function stretches(grid: LobeGrid, rubbingTime: number): Look[][] {
  const found: Look[][] = [];
  let open: Look[] | undefined;
  let previous = 0;
  grid.omega.forEach((omega, i) => {
    const here = look(grid.modes, omega, rubbingTime);
    const joined = grid.joined[i] === 1;
    if (!joined) open = undefined;
    if (here && !open) {
      open = joined ? [edgeBetween(grid.modes, here, previous, rubbingTime), here] : [here];
      found.push(open);
    } else if (here) open?.push(here);
    else {
      const last = open?.at(-1);
      if (last) open?.push(edgeBetween(grid.modes, last, omega, rubbingTime));
      open = undefined;
    }
    previous = omega;
  });
  return found;
}

/** The last frequency that can go on, between one that can and one that cannot. */
function edgeBetween(modes: readonly OrientedMode[], can: Look, cannot: number, rubbingTime: number): Look {
  let [good, bad] = [can, cannot];
  for (let i = 0; i < 40; i++) {
    const middle = look(modes, (good.omega + bad) / 2, rubbingTime);
    if (middle) good = middle;
    else bad = (good.omega + bad) / 2;
  }
  return good;
}

/** The limit at one length of turn. Breadth times chip stiffness [N/mm], and the frequency [rad/s]. */
function limitOfTurn(
  modes: readonly OrientedMode[],
  paths: readonly (readonly Look[])[],
  turn: number,
  rubbingTime: number,
): { load: number; omega: number } {
  let best = { load: Infinity, omega: 0 };
  // Without rubbing the second phase is that of a turn of whole waves, where nothing can go on.
  for (const branch of rubbingTime > 0 ? ([0, 1] as const) : ([0] as const)) {
    for (const stretch of paths) {
      let phase = stretch[0]?.phases[branch] ?? 0;
      for (let i = 1; i < stretch.length; i++) {
        const [a, b] = [stretch[i - 1], stretch[i]];
        if (!a || !b) continue;
        // The phase is known but for whole turns; it goes the short way from its neighbour.
        const next = nearTurn(b.phases[branch], phase);
        const waves = [(a.omega * turn - phase) / (2 * Math.PI), (b.omega * turn - next) / (2 * Math.PI)] as const;
        for (const whole of Math.min(a.loads[branch], b.loads[branch]) < best.load ? wholeBetween(...waves) : []) {
          const found = crossing(modes, { a, b, turn, rubbingTime, branch, whole, phase: next });
          if (found.load < best.load) best = found;
        }
        phase = next;
      }
    }
  }
  return best;
}

/** The first and last whole number between two values, ends counted once. */
function wholeBetween(a: number, b: number): readonly number[] {
  const low = Math.ceil(Math.min(a, b));
  const high = Math.floor(Math.max(a, b));
  return low > high ? [] : low === high ? [low] : [low, high];
}

function nearTurn(phase: number, neighbour: number): number {
  return phase + 2 * Math.PI * Math.round((neighbour - phase) / (2 * Math.PI));
}

interface Crossing {
  readonly a: Look;
  readonly b: Look;
  readonly turn: number;
  readonly rubbingTime: number;
  readonly branch: 0 | 1;
  readonly whole: number;
  /** At b. */
  readonly phase: number;
}

/** Where a turn holds a whole number of waves and the phase, by bisection between two frequencies. */
function crossing(modes: readonly OrientedMode[], c: Crossing): { load: number; omega: number } {
  const beyond = (at: Look) => (at.omega * c.turn - nearTurn(at.phases[c.branch], c.phase)) / (2 * Math.PI) >= c.whole;
  const side = beyond(c.b);
  let [low, high] = [c.a, c.b];
  for (let i = 0; i < 48; i++) {
    const middle = look(modes, (low.omega + high.omega) / 2, c.rubbingTime);
    if (!middle) break;
    if (beyond(middle) === side) high = middle;
    else low = middle;
  }
  return { load: high.loads[c.branch], omega: high.omega };
}

/**
 * Time that stands for the rubbing.
 *
 *     τ = C / (Kf v)
 *
 * @param cut  chip stiffness, rubbing and cutting speed
 * @returns time, 0 without rubbing [s]
 * @throws DomainError when a value is out of range, or the speed is missing
 * @source KUR for the form; methods-dynamics §4
 * @valid small vibrations
 * @example rubbingTimeOf({ chipStiffness: 2000, processDamping: 300, cuttingSpeed: 30 }) → 0.00030
 */
export function rubbingTimeOf(cut: RegenerativeCut): number {
  const { chipStiffness, processDamping = 0, cuttingSpeed } = cut;
  if (!(chipStiffness > 0)) throw new DomainError('chipStiffness', chipStiffness, 'more than 0 MPa');
  if (!(processDamping >= 0)) throw new DomainError('processDamping', processDamping, '0 N/mm or more');
  if (processDamping === 0) return 0;
  if (cuttingSpeed === undefined || !(cuttingSpeed > 0))
    throw new DomainError('cuttingSpeed', cuttingSpeed, 'more than 0 m/min, since rubbing depends on it');
  return processDamping / (chipStiffness * ((cuttingSpeed * 1000) / 60));
}

/**
 * Broadest chip that stays quiet whatever the exact spindle speed: the foot of the stability lobes.
 *
 *     b = min over ω of −1 / (2 Kf Re G(ω)), with rubbing as in the head of this file
 *
 * @param modes  of edge and work together, oriented to this cut
 * @param cut  chip stiffness, and rubbing with its cutting speed
 * @returns limit of chip breadth [mm] and the frequency at which it sings [Hz]
 * @throws DomainError when a mode or the cut is out of range
 * @source ALT131; TURNMD; methods-dynamics §2 and §4
 * @valid one edge, continuous cut, small vibrations
 * @example leastStableWidth([{ frequency: 150, stiffness: 5000, damping: 0.05, direction: 1 }], { chipStiffness: 2000 }) → { width: 0.2625, frequency: 157.3 }
 */
export function leastStableWidth(modes: readonly OrientedMode[], cut: RegenerativeCut): StabilityLimit {
  const rubbingTime = rubbingTimeOf(cut);
  const grid = lobeGrid(modes, lookedAt(modes, 'fine'));
  const at = (omega: number) => {
    const { re, im } = receptanceAt(modes, omega / (2 * Math.PI));
    if (re >= 0) return Infinity;
    const size = re * re + im * im;
    return leastAtFrequency(re / size, im / Math.sqrt(size), -re / Math.sqrt(size), omega * rubbingTime);
  };
  let best = { omega: 0, load: Infinity };
  grid.omega.forEach((omega, i) => {
    const load = at(omega);
    if (load < best.load) {
      const [low, high] = [grid.omega[i - 1] ?? omega * 0.98, grid.omega[i + 1] ?? omega * 1.02];
      const finer = leastBetween(at, low, high);
      best = finer.load < load ? finer : { omega, load };
    }
  });
  if (best.load === Infinity) return quiet;
  return { width: best.load / cut.chipStiffness, frequency: best.omega / (2 * Math.PI) };
}

/** Golden section on a short stretch with one minimum. */
function leastBetween(f: (x: number) => number, low: number, high: number) {
  const golden = (Math.sqrt(5) - 1) / 2;
  let [a, b] = [low, high];
  for (let i = 0; i < 60; i++) {
    const [c, d] = [b - golden * (b - a), a + golden * (b - a)];
    if (f(c) < f(d)) b = d;
    else a = c;
  }
  return { omega: (a + b) / 2, load: f((a + b) / 2) };
}

/**
 * Broadest chip that stays quiet at one spindle speed.
 *
 * @param modes  of edge and work together, oriented to this cut
 * @param cut  chip stiffness, and rubbing with its cutting speed
 * @param speed  spindle speed [rpm]
 * @returns limit of chip breadth [mm] and the frequency at which it sings [Hz]
 * @throws DomainError when a mode, the cut or the speed is out of range
 * @source ALT131; TURNMD; methods-dynamics §2 and §4
 * @valid as {@link leastStableWidth}; the lowest limit, above which a lathe seldom falls quiet again
 * @example stabilityLimit([{ frequency: 150, stiffness: 5000, damping: 0.05, direction: 1 }], { chipStiffness: 2000 }, 5388.19).width → 0.2626
 */
export function stabilityLimit(modes: readonly OrientedMode[], cut: RegenerativeCut, speed: Rpm): StabilityLimit {
  return stabilityLimits(modes, cut, [speed])[0] ?? quiet;
}

/**
 * The limit at each of many spindle speeds with one cutting speed, as {@link stabilityLimit}; what they share is done once.
 *
 * @param modes  of edge and work together, oriented to this cut
 * @param cut  chip stiffness, and rubbing with its cutting speed
 * @param speeds  spindle speeds [rpm]
 * @returns the limits, in the order of the speeds
 * @throws DomainError when a mode, the cut or a speed is out of range
 * @source ALT131; TURNMD; methods-dynamics §2 and §4
 * @valid as {@link stabilityLimit}
 * @example stabilityLimits([{ frequency: 150, stiffness: 5000, damping: 0.05, direction: 1 }], { chipStiffness: 2000 }, [5388.19])[0].width → 0.2626
 */
export function stabilityLimits(
  modes: readonly OrientedMode[],
  cut: RegenerativeCut,
  speeds: readonly Rpm[],
): StabilityLimit[] {
  const rubbingTime = rubbingTimeOf(cut);
  const paths = stretches(lobeGrid(modes, lookedAt(modes, 'fine')), rubbingTime);
  return speeds.map((speed) => {
    if (!(speed > 0 && speed < Infinity)) throw new DomainError('speed', speed, 'more than 0 rpm');
    const { load, omega } = limitOfTurn(modes, paths, 60 / speed, rubbingTime);
    return load === Infinity ? quiet : { width: load / cut.chipStiffness, frequency: omega / (2 * Math.PI) };
  });
}

/** A point of one branch of the lobes. */
export interface LobePoint extends StabilityLimit {
  /** Part of a wave by which a turn ends later than a whole number of waves [rad]. */
  readonly shift: number;
  /** Spindle speeds at which the point lies, for 0, 1, 2 … whole waves in a turn. */
  readonly speeds: readonly Rpm[];
}

/**
 * The point of every lobe that belongs to a chatter frequency.
 *
 *     ε = 3π + 2 atan2(Im G, Re G),   n = 60 f / (j + ε/2π)
 *
 * @param modes  of edge and work together, oriented to this cut
 * @param chipStiffness  Kf [MPa]
 * @param frequency  of chatter [Hz]
 * @param lobes  how many [-]
 * @returns limit of breadth, phase shift and speeds; undefined where nothing sings at that frequency
 * @throws DomainError when a mode or the frequency is out of range
 * @source TURNMD; methods-dynamics §2
 * @valid without rubbing
 * @example lobePoint([{ frequency: 150, stiffness: 5000, damping: 0.05, direction: 1 }], 2000, 157.5, 1).speeds[0] → 12535.9
 */
export function lobePoint(
  modes: readonly OrientedMode[],
  chipStiffness: MPa,
  frequency: Hertz,
  lobes: number,
): LobePoint | undefined {
  checkModes(modes);
  const { re, im } = receptanceAt(modes, frequency);
  if (!(re < 0)) return undefined;
  const whole = 2 * Math.PI;
  const shift = (((3 * Math.PI + 2 * Math.atan2(im, re)) % whole) + whole) % whole;
  return {
    width: -1 / (2 * chipStiffness * re),
    frequency,
    shift,
    speeds: Array.from({ length: lobes }, (_, j) => (60 * frequency) / (j + shift / whole)),
  };
}
