/** The hand that holds the gauge: how well its owner repeats a reading, from readings repeated at one place. */
import { DomainError } from '../errors.ts';
import type { Mm } from '../units/quantities.ts';
import type { Reading } from './schema.ts';

/**
 * Standard deviation of one reading, pooled over places that were read several times.
 *
 *     s² = Σ νᵢ sᵢ² / Σ νᵢ,  νᵢ = nᵢ − 1
 *
 * @param groups  readings of each place [mm]
 * @returns pooled standard deviation and its degrees of freedom [mm, -]
 * @throws DomainError when no place was read twice
 * @source GUM clause 4.2.4
 * @valid one gauge and one hand; places of like size
 * @example pooledDeviation([[1, 3], [5, 5, 5]]) → { deviation: 0.8165, degreesOfFreedom: 3 }
 */
export function pooledDeviation(groups: readonly (readonly Mm[])[]): { deviation: Mm; degreesOfFreedom: number } {
  let [squares, degreesOfFreedom] = [0, 0];
  for (const group of groups) {
    const mean = group.reduce((a, b) => a + b, 0) / group.length;
    squares += group.reduce((sum, v) => sum + (v - mean) ** 2, 0);
    degreesOfFreedom += Math.max(0, group.length - 1);
  }
  if (degreesOfFreedom === 0) throw new DomainError('groups', groups.length, 'a place that was read twice or more');
  return { deviation: Math.sqrt(squares / degreesOfFreedom), degreesOfFreedom };
}

/** Fewer repeats than this say less than the habit of such gauges. */
const enough = 5;

/** Repeatability of the hand with each gauge, from the job's own readings, where enough were repeated at one place. */
export function handsOf(readings: readonly Reading[]): ReadonlyMap<string, Mm> {
  const places = new Map<string, Map<string, Mm[]>>();
  for (const { gauge, of, specimen, along, angle, value } of readings) {
    if (gauge === undefined || (along === undefined && angle === undefined)) continue;
    const ofGauge = places.get(gauge) ?? new Map<string, Mm[]>();
    places.set(gauge, ofGauge);
    const place = [of, specimen, along, angle].join('|');
    ofGauge.set(place, [...(ofGauge.get(place) ?? []), value]);
  }
  const hands = new Map<string, Mm>();
  for (const [gauge, groups] of places) {
    const repeated = [...groups.values()].filter((g) => g.length > 1);
    if (repeated.length === 0) continue;
    const { deviation, degreesOfFreedom } = pooledDeviation(repeated);
    // A display that never moved shows its step, not a hand without error: the step's share is in the budget anyway.
    if (degreesOfFreedom >= enough && deviation > 0) hands.set(gauge, deviation);
  }
  return hands;
}
