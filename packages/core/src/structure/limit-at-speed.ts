/**
 * The breadth of chip that stays quiet at one spindle speed: where a turn holds the whole waves and the part of a wave that a
 * frequency asks, the frequencies followed in unbroken stretches.
 */
import { DomainError } from '../errors.ts';
import type { Rpm } from '../units/quantities.ts';
import { type LobeGrid, lobeGrid, lookedAt } from './lobe-grid.ts';
import { type OrientedMode, receptanceAt } from './receptance.ts';
import { quiet, type RegenerativeCut, rubbingTimeOf, type StabilityLimit } from './regeneration.ts';

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
