/** Circles that touch a measured section: the smallest round it, the largest within it, and the pair of one centre closest together. */
import { DomainError } from '../errors.ts';
import type { Mm } from '../units/quantities.ts';
import { type Circle, geometricCircle, type Point } from './circle.ts';

export type Touching = 'minimum circumscribed' | 'maximum inscribed' | 'minimum zone';

/**
 * A reference circle of a section, by what it touches.
 *
 *     circumscribed: max dᵢ least;  inscribed: min dᵢ greatest;  minimum zone: max dᵢ − min dᵢ least;  dᵢ = √((xᵢ−a)² + (yᵢ−b)²)
 *
 * @param points  coordinates, all round the section [mm]
 * @param touching  which
 * @returns centre and radius, of the zone the radius midway; and the roundness, max dᵢ − min dᵢ about that centre [mm]
 * @throws DomainError when there are fewer than three points, or they leave half of the circle bare
 * @source metrology-methods §5
 * @valid sections nearly round: what they are out of round is small beside the radius
 * @example touchingCircle([{ x: 5, y: 0 }, { x: 0, y: 5 }, { x: -5, y: 0 }, { x: 0, y: -5 }], 'minimum zone').radius → 5
 */
export function touchingCircle(points: readonly Point[], touching: Touching): Circle & { readonly roundness: Mm } {
  const start = geometricCircle(points);
  goRound(points, start);
  const off = points.map((p) => Math.hypot(p.x - start.x, p.y - start.y) - start.radius);
  const reach = 2 * (Math.max(...off) - Math.min(...off)) + 1e-12 * start.radius;
  const cost = (x: Mm, y: Mm): Mm => {
    const { least, most } = distances(points, x, y);
    if (touching === 'minimum circumscribed') return most;
    return touching === 'maximum inscribed' ? -least : most - least;
  };
  // Each distance is as good as linear in the centre over so short a way: the cost has one lowest place.
  const across = (x: Mm) => lowest((y) => cost(x, y), start.y - reach, start.y + reach);
  const x = lowest((at) => cost(at, across(at)), start.x - reach, start.x + reach);
  const y = across(x);
  const { least, most } = distances(points, x, y);
  const radius =
    touching === 'minimum circumscribed' ? most : touching === 'maximum inscribed' ? least : (least + most) / 2;
  return { x, y, radius, roundness: most - least };
}

function distances(points: readonly Point[], x: Mm, y: Mm): { least: Mm; most: Mm } {
  let [least, most] = [Infinity, 0];
  for (const p of points) {
    const d = Math.hypot(p.x - x, p.y - y);
    if (d < least) least = d;
    if (d > most) most = d;
  }
  return { least, most };
}

const golden = (Math.sqrt(5) - 1) / 2;

/** Where a function with one lowest place is lowest, by golden section. */
function lowest(f: (at: Mm) => number, from: Mm, to: Mm): Mm {
  let [a, b] = [from, to];
  let [c, d] = [b - golden * (b - a), a + golden * (b - a)];
  let [fc, fd] = [f(c), f(d)];
  for (let i = 0; i < 60; i++) {
    if (fc < fd) {
      [b, d, fd] = [d, c, fc];
      c = b - golden * (b - a);
      fc = f(c);
    } else {
      [a, c, fc] = [c, d, fd];
      d = a + golden * (b - a);
      fd = f(d);
    }
  }
  return (a + b) / 2;
}

/** On an arc alone an enclosing circle would be that of its chord. */
function goRound(points: readonly Point[], { x, y }: Circle): void {
  const angles = points.map((p) => Math.atan2(p.y - y, p.x - x)).toSorted((a, b) => a - b);
  const gaps = angles.map((a, i) => (angles[i + 1] ?? (angles[0] ?? 0) + 2 * Math.PI) - a);
  if (Math.max(...gaps) >= Math.PI)
    throw new DomainError('points', 'one side only', 'points all round, no half of the circle bare');
}

export interface Trace {
  /** Centre of the section as the trace has it. */
  readonly x: Mm;
  readonly y: Mm;
  /** Mean of the readings. */
  readonly mean: Mm;
  /** Root mean square, and largest less smallest, of what is left when centre and mean are taken off. */
  readonly deviation: Mm;
  readonly roundness: Mm;
  /** Amplitude of each number of lobes, from two on. */
  readonly lobes: readonly { readonly count: number; readonly amplitude: Mm }[];
}

/**
 * Circle and lobes of a trace taken at equal angles round a section.
 *
 *     a = 2/n Σ d cos θ,  b = 2/n Σ d sin θ,  R = mean d;  lobes: 2/n |Σ d e^(−ikθ)|
 *
 * @param readings  indicator readings at equal angles, from 0 on [mm]
 * @returns centre, mean, what is left, and the lobes up to fifteen or a little under half the number of readings
 * @throws DomainError when there are fewer than six readings
 * @source metrology-methods §5
 * @valid small deviations, equal angles; the eccentricity small beside the radius
 * @example roundTrace([1, 0, -1, 0, 1, 0, -1, 0]).lobes[0].amplitude → 1
 */
export function roundTrace(readings: readonly Mm[]): Trace {
  const n = readings.length;
  if (n < 6) throw new DomainError('readings', n, 'at least six at equal angles');
  const wave = (k: number) => {
    let [c, s] = [0, 0];
    readings.forEach((d, i) => {
      const t = (2 * Math.PI * k * i) / n;
      c += (2 / n) * d * Math.cos(t);
      s += (2 / n) * d * Math.sin(t);
    });
    return { c, s };
  };
  const { c: x, s: y } = wave(1);
  const mean = readings.reduce((a, b) => a + b, 0) / n;
  const left = readings.map((d, i) => {
    const t = (2 * Math.PI * i) / n;
    return d - mean - x * Math.cos(t) - y * Math.sin(t);
  });
  const last = Math.min(15, Math.ceil(n / 2) - 1);
  return {
    x,
    y,
    mean,
    deviation: Math.sqrt(left.reduce((sum, d) => sum + d * d, 0) / n),
    roundness: Math.max(...left) - Math.min(...left),
    lobes: Array.from({ length: Math.max(0, last - 1) }, (_, i) => {
      const { c, s } = wave(i + 2);
      return { count: i + 2, amplitude: Math.hypot(c, s) };
    }),
  };
}
