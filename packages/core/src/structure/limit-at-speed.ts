/**
 * The breadth of chip that stays quiet at one spindle speed: where a turn holds the whole waves and the part of a wave that a
 * frequency asks, the frequencies followed in unbroken stretches.
 */
import { DomainError } from '../errors.ts';
import type { Rpm } from '../units/quantities.ts';
import { type LobeGrid, lobeGrid, lookedAt, perFrequency } from './lobe-grid.ts';
import { type OrientedMode, receptanceAt } from './receptance.ts';
import { quiet, type RegenerativeCut, rubbingTimeOf, type StabilityLimit } from './regeneration.ts';

/** What one frequency asks, for one of the two phases that can be. */
interface Look {
  readonly omega: number;
  readonly phase: number;
  readonly load: number;
}

/** The phase π − asin s − lag, and the phase asin s − lag; see regeneration.ts. */
type Branch = 0 | 1;

function look(modes: readonly OrientedMode[], omega: number, rubbingTime: number, branch: Branch): Look | undefined {
  const { re, im } = receptanceAt(modes, omega / (2 * Math.PI));
  if (!(re < 0)) return undefined;
  const size = re * re + im * im;
  const root = Math.sqrt(size);
  return lookOf(omega, re / size, im / root, -re / root, rubbingTime, branch);
}

/** With the entries of the grid at this frequency. */
function lookOf(
  omega: number,
  real: number,
  sine: number,
  cosine: number,
  rubbingTime: number,
  branch: Branch,
): Look | undefined {
  const s = sine - omega * rubbingTime * cosine;
  if (!(s >= -1 && s <= 1)) return undefined;
  const lag = Math.atan2(sine, cosine);
  const c = Math.sqrt(1 - s * s);
  return branch === 0
    ? { omega, phase: Math.PI - Math.asin(s) - lag, load: -real / (1 + c * cosine - s * sine) }
    : { omega, phase: Math.asin(s) - lag, load: -real / (1 - c * cosine - s * sine) };
}

/**
 * The frequencies of a grid that can go on with rubbing, in unbroken stretches. The two phases run together where a stretch
 * ends, and a crossing may lie close to there; so each end is looked for.
 */
function stretches(grid: LobeGrid, rubbingTime: number, branch: Branch): Look[][] {
  const { count, entries, joined } = grid;
  const found: Look[][] = [];
  let open: Look[] | undefined;
  let previous = 0;
  for (let i = 0; i < count; i++) {
    const at = perFrequency * i;
    const w = entries[at] ?? 0;
    const here = lookOf(w, entries[at + 1] ?? 0, entries[at + 2] ?? 0, entries[at + 3] ?? 0, rubbingTime, branch);
    if (joined[i] !== 1) open = undefined;
    if (here && !open) {
      open = joined[i] === 1 ? [edgeBetween(grid.modes, here, previous, rubbingTime, branch), here] : [here];
      found.push(open);
    } else if (here) open?.push(here);
    else {
      const last = open?.at(-1);
      if (last) open?.push(edgeBetween(grid.modes, last, w, rubbingTime, branch));
      open = undefined;
    }
    previous = w;
  }
  return found;
}

/** The last frequency that can go on, between one that can and one that cannot. */
function edgeBetween(
  modes: readonly OrientedMode[],
  can: Look,
  cannot: number,
  rubbingTime: number,
  branch: Branch,
): Look {
  let [good, bad] = [can, cannot];
  for (let i = 0; i < 40; i++) {
    const middle = look(modes, (good.omega + bad) / 2, rubbingTime, branch);
    if (middle) good = middle;
    else bad = (good.omega + bad) / 2;
  }
  return good;
}

/** Two neighbours of a stretch; the phase of the second is followed from the first, so that the two may be joined. */
interface Step {
  readonly branch: Branch;
  readonly a: Look;
  readonly b: Look;
  readonly load: number;
}

/** All steps of all stretches, least load first. */
function stepsOf(grid: LobeGrid, rubbingTime: number): Step[] {
  const steps: Step[] = [];
  // Without rubbing the second phase is that of a turn of whole waves, where nothing can go on.
  for (const branch of rubbingTime > 0 ? ([0, 1] as const) : ([0] as const)) {
    for (const stretch of stretches(grid, rubbingTime, branch)) {
      let a = stretch[0];
      for (let i = 1; i < stretch.length; i++) {
        const next = stretch[i];
        if (!a || !next) continue;
        // The phase is known but for whole turns; it goes the short way from its neighbour.
        const b: Look = { omega: next.omega, phase: nearTurn(next.phase, a.phase), load: next.load };
        steps.push({ branch, a, b, load: Math.min(a.load, b.load) });
        a = b;
      }
    }
  }
  return steps.sort((p, q) => p.load - q.load);
}

/** The limit at one length of turn. Breadth times chip stiffness [N/mm], and the frequency [rad/s]. */
function limitOfTurn(
  modes: readonly OrientedMode[],
  steps: readonly Step[],
  turn: number,
  rubbingTime: number,
): { load: number; omega: number } {
  let best = { load: Infinity, omega: 0 };
  for (const step of steps) {
    if (step.load >= best.load) break;
    const { a, b } = step;
    const wavesA = (a.omega * turn - a.phase) / (2 * Math.PI);
    const wavesB = (b.omega * turn - b.phase) / (2 * Math.PI);
    const low = Math.ceil(Math.min(wavesA, wavesB));
    const high = Math.floor(Math.max(wavesA, wavesB));
    if (low > high) continue;
    const first = crossing(modes, step, turn, rubbingTime, low);
    if (first.load < best.load) best = first;
    if (high === low) continue;
    const last = crossing(modes, step, turn, rubbingTime, high);
    if (last.load < best.load) best = last;
  }
  return best;
}

function nearTurn(phase: number, neighbour: number): number {
  return phase + 2 * Math.PI * Math.round((neighbour - phase) / (2 * Math.PI));
}

/** Waves beyond a whole number that count as none. */
const whole = 1e-11;

/** Where a turn holds a whole number of waves and the phase: false position, the end that stays halved in weight (Illinois). */
function crossing(
  modes: readonly OrientedMode[],
  { a, b, branch }: Step,
  turn: number,
  rubbingTime: number,
  waves: number,
): { load: number; omega: number } {
  const beyond = (at: Look) => (at.omega * turn - nearTurn(at.phase, b.phase)) / (2 * Math.PI) - waves;
  let [x0, f0] = [a.omega, beyond(a)];
  let [x1, f1] = [b.omega, beyond(b)];
  let best: Look = Math.abs(f0) < Math.abs(f1) ? a : b;
  let stayed = 0;
  for (let i = 0; i < 60 && f0 !== f1; i++) {
    const middle = look(modes, x1 - (f1 * (x1 - x0)) / (f1 - f0), rubbingTime, branch);
    if (!middle) break;
    best = middle;
    const f = beyond(middle);
    if (Math.abs(f) < whole) break;
    if (f > 0 === f1 > 0) {
      [x1, f1] = [middle.omega, f];
      if (stayed === 1) f0 /= 2;
      stayed = 1;
    } else {
      [x0, f0] = [middle.omega, f];
      if (stayed === -1) f1 /= 2;
      stayed = -1;
    }
  }
  return best;
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
  const steps = stepsOf(lobeGrid(modes, lookedAt(modes, 'fine')), rubbingTime);
  return speeds.map((speed) => {
    if (!(speed > 0 && speed < Infinity)) throw new DomainError('speed', speed, 'more than 0 rpm');
    const { load, omega } = limitOfTurn(modes, steps, 60 / speed, rubbingTime);
    return load === Infinity ? quiet : { width: load / cut.chipStiffness, frequency: omega / (2 * Math.PI) };
  });
}
