/**
 * How long an edge lasts: Taylor.
 */
import { DomainError } from '../errors.ts';
import type { MetrePerMinute, Mm, MmPerRev } from '../units/quantities.ts';

/** V T^n = C, with T in minutes. */
export interface TaylorLaw {
  readonly exponent: number;
  /** Cutting speed for a life of one minute, m/min. */
  readonly constant: MetrePerMinute;
}

function checkLaw(law: TaylorLaw): void {
  if (!(law.exponent > 0 && law.exponent < 1))
    throw new DomainError('exponent', law.exponent, 'more than 0 to less than 1');
  if (!(law.constant > 0)) throw new DomainError('constant', law.constant, 'more than 0 m/min');
}

/**
 * Life of an edge at a speed.
 *
 *     T = (C / V)^(1/n)
 *
 * @param law  Taylor's exponent and constant
 * @param speed  cutting speed V [m/min]
 * @returns life [min]
 * @throws DomainError when the law or speed is out of range
 * @source GRO Taylor tool life
 * @valid within the speeds the law was fitted to
 * @example toolLife({ exponent: 0.25, constant: 500 }, 150) → 123.5
 */
export function toolLife(law: TaylorLaw, speed: MetrePerMinute): number {
  checkLaw(law);
  if (!(speed > 0)) throw new DomainError('speed', speed, 'more than 0 m/min');
  return (law.constant / speed) ** (1 / law.exponent);
}

/**
 * Speed at which an edge lasts a given time.
 *
 *     V = C / T^n
 *
 * @param law  Taylor's exponent and constant
 * @param life  T [min]
 * @returns cutting speed [m/min]
 * @throws DomainError when the law or life is out of range
 * @source GRO Taylor tool life
 * @valid within the speeds the law was fitted to
 * @example speedForLife({ exponent: 0.45, constant: 90 }, 14.9) → 26.7
 */
export function speedForLife(law: TaylorLaw, life: number): MetrePerMinute {
  checkLaw(law);
  if (!(life > 0)) throw new DomainError('life', life, 'more than 0 min');
  return law.constant / life ** law.exponent;
}

/**
 * The law through two edges worn out at two speeds.
 *
 *     n = ln(V₁/V₂) / ln(T₂/T₁),   C = V₁ T₁^n
 *
 * @param first  speed [m/min] and life [min] of one edge
 * @param second  speed [m/min] and life [min] of the other
 * @returns Taylor's exponent and constant
 * @throws DomainError when the faster edge did not wear out first
 * @source GRO Taylor tool life
 * @valid between the two speeds
 * @example taylorThrough({ speed: 160, life: 5 }, { speed: 100, life: 41 }).exponent → 0.2234
 */
export function taylorThrough(
  first: { readonly speed: MetrePerMinute; readonly life: number },
  second: { readonly speed: MetrePerMinute; readonly life: number },
): TaylorLaw {
  const exponent = Math.log(first.speed / second.speed) / Math.log(second.life / first.life);
  if (!(exponent > 0 && exponent < 1)) throw new DomainError('life', second.life, 'the faster edge to wear out first');
  return { exponent, constant: first.speed * first.life ** exponent };
}

/** How speed, feed and depth share in the life of an edge: V T^n f^x a^y constant. */
export interface ExtendedTaylor {
  readonly exponent: number;
  readonly feedExponent: number;
  readonly depthExponent: number;
}

/** A cut and how long its edge lasts. */
export interface LifeOfCut {
  readonly speed: MetrePerMinute;
  readonly feed: MmPerRev;
  readonly depth: Mm;
  /** Minutes. */
  readonly life: number;
}

/**
 * Life after a change of speed, feed or depth.
 *
 *     T = T₀ · ((V₀/V) (f₀/f)^x (a₀/a)^y)^(1/n)
 *
 * @param law  exponents on life, feed and depth
 * @param known  a cut whose life is known
 * @param now  the cut now: speed [m/min], feed [mm/rev], depth [mm]
 * @returns life now [min]
 * @throws DomainError when a value is not above 0
 * @source RAO extended Taylor equation
 * @valid near the cut known
 * @example lifeAfterChange({ exponent: 0.13, feedExponent: 0.6, depthExponent: 0.3 }, { speed: 40, feed: 0.25, depth: 2, life: 60 }, { speed: 50, feed: 0.25, depth: 2 }) → 10.78
 */
export function lifeAfterChange(law: ExtendedTaylor, known: LifeOfCut, now: Omit<LifeOfCut, 'life'>): number {
  for (const [name, value] of Object.entries({ ...now, life: known.life, exponent: law.exponent })) {
    if (!(value > 0)) throw new DomainError(name, value, 'more than 0');
  }
  const ratio =
    (known.speed / now.speed) *
    (known.feed / now.feed) ** law.feedExponent *
    (known.depth / now.depth) ** law.depthExponent;
  return known.life * ratio ** (1 / law.exponent);
}
