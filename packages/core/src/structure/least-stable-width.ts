/**
 * The breadth of chip that stays quiet at every spindle speed: the foot of the stability lobes.
 */
import { type FacedGrid, lobeGrid, lookedAt, perFrequency } from './lobe-grid.ts';
import { type OrientedMode, receptanceAt } from './receptance.ts';
import { quiet, type RegenerativeCut, rubbingTimeOf, type StabilityLimit } from './regeneration.ts';

/**
 * The limit over all spindle speeds near a cutting speed: the foot of the lobes, as derived in regeneration.ts.
 *
 * A land of length l levels waves that are not much longer than itself: it leaves w = |sin(kl/2)/(kl/2)| of a wave of ω = k v for
 * the next turn to cut, and the metal pressed aside along it damps by w² of what it would under a long wave. With
 * 1/G = −b Kf [(1 − w e^(−iφ)) + iγ], γ = w² ω C/(Kf v), the least b over all φ follows from a quadratic in 1/b. Where the rubbing
 * drives the modes otherwise than the chip does, iγ counts by its receptance over that to the chip, Gᵣ/G.
 *
 * @param grid  from {@link lobeGrid}
 * @param rubbingTime  C/(Kf v) [s]
 * @param landTime  time in which the cut passes the land that rubs, l/v; 0 for a land much shorter than the waves [s]
 * @returns chip breadth times chip stiffness at the limit, infinite when nothing sings [N/mm]
 * @source ALT131; methods-dynamics §2 and §4; wu-1989 metal pressed aside
 * @source sisson-kegg-1969 a rounded edge leaves no waves shorter than itself
 * @valid as {@link leastStableWidth}; as close as the grid is fine
 * @example leastOnGrid(lobeGrid([{ frequency: 150, stiffness: 5000, damping: 0.05, direction: 1 }], new Float64Array([157.32])), 0, 0) → 525.0
 */
export function leastOnGrid({ count, entries, rubs }: FacedGrid, rubbingTime: number, landTime: number): number {
  let least = Infinity;
  for (let at = 0; at < perFrequency * count; at += perFrequency) {
    const w = entries[at] ?? 0;
    const left = leftSquared(w * landTime);
    const limit = leastAtFrequency(
      entries[at + 1] ?? 0,
      entries[at + 2] ?? 0,
      entries[at + 3] ?? 0,
      w * rubbingTime * left,
      left,
      rubs ? rubs[at / 2] : 1,
      rubs ? rubs[at / 2 + 1] : 0,
    );
    if (limit < least) least = limit;
  }
  return least;
}

/** Square of the share of a wave that a land leaves, sin²(kl/2)/(kl/2)²; kl its length in radians of wave. */
function leftSquared(kl: number): number {
  const x = kl * kl;
  // The series is right to 4·10⁻⁹ up to kl = 1, where most cuts lie.
  if (x < 1) return 1 - (x / 12) * (1 - (x / 30) * (1 - (x / 56) * (1 - x / 90)));
  return (2 * (1 - Math.cos(kl))) / x;
}

/**
 * Least load at which one frequency can go on, whatever the phase of the wave before: with Z = 1/|G|, U = 1 + iγ Gᵣ/G and
 * m = Re U cos + Im U sin of atan(Q/P), (Z/B)² − 2 m (Z/B) + |U|² − w² = 0.
 */
function leastAtFrequency(
  real: number,
  sine: number,
  cosine: number,
  rubbing: number,
  leftSquare: number,
  rubReal = 1,
  rubImaginary = 0,
): number {
  const u = 1 - rubbing * rubImaginary;
  const v = rubbing * rubReal;
  const m = u * cosine + v * sine;
  const square = m * m - u * u - v * v + leftSquare;
  if (square < 0) return Infinity;
  const root = m + Math.sqrt(square);
  return root > 0 ? -real / (cosine * root) : Infinity;
}

/**
 * Broadest chip that stays quiet whatever the exact spindle speed: the foot of the stability lobes.
 *
 *     b = min over ω of −1 / (2 Kf Re G(ω)), with rubbing as in regeneration.ts
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
    return leastAtFrequency(re / size, im / Math.sqrt(size), -re / Math.sqrt(size), omega * rubbingTime, 1);
  };
  const omega = Float64Array.from({ length: grid.count }, (_, i) => grid.entries[perFrequency * i] ?? 0);
  const loads = Float64Array.from(omega, at);
  const leastSeen = loads.reduce((least, load) => Math.min(least, load), Infinity);
  let best = { omega: 0, load: Infinity };
  loads.forEach((load, i) => {
    // The foot of another lobe may lie lower between two places looked at than the lowest place itself.
    const foot = load <= (loads[i - 1] ?? Infinity) && load <= (loads[i + 1] ?? Infinity);
    if (!(foot && load < nearlyLeast * leastSeen)) return;
    const here = omega[i] ?? 0;
    const finer = leastBetween(at, omega[i - 1] ?? here * 0.98, omega[i + 1] ?? here * 1.02);
    const found = finer.load < load ? finer : { omega: here, load };
    if (found.load < best.load) best = found;
  });
  if (best.load === Infinity) return quiet;
  return { width: best.load / cut.chipStiffness, frequency: best.omega / (2 * Math.PI) };
}

/** How much higher than the lowest place looked at a foot may begin that is followed down. */
const nearlyLeast = 1.2;

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
