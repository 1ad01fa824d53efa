import { beforeAll, describe, expect, test } from 'vitest';
import { seeded } from '../numerics/seeded.ts';
import { habits, limitsOf } from './hypotheses.ts';
import { joinMates } from './mates.ts';
import { nominalsBetween } from './nominals.ts';
import { sizeDensities, summary } from './posterior.ts';
import type { Ready } from './reading-density.ts';
import { classWeights } from './role-classes.ts';
import { priorWeights, probabilities, ranked, sizeEvidence } from './size.ts';

const known = [0.75, 0.25, 0, 0] as const;
const own = 0.0036;
const shared = 0.0023;

/** Pins worn past telling and their bores, designed on one nominal size as nine pairs in ten are. */
function pairs(count: number) {
  const random = seeded(21);
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const pick = <T>(items: readonly (readonly [T, number])[]): T => {
    let left = random() * items.reduce((sum, [, w]) => sum + w, 0);
    for (const [item, w] of items) {
      left -= w;
      if (left <= 0) return item;
    }
    throw new Error('nothing to pick');
  };
  const sizes = nominalsBetween('metric', 6, 30, true).map((n) => [n.size, n.weight] as const);
  let [alone, joined, wide] = [0, 0, 0];
  for (let i = 0; i < count; i++) {
    const habit = pick(habits.map((h, k) => [h, known[k] ?? 0] as const));
    const nominal = pick(sizes);
    const make = (isShaft: boolean, size: number) => {
      const limits = limitsOf(size, pick([...classWeights('sliding', isShaft, habit.basis)]));
      return limits ? limits.min + random() * (limits.max - limits.min) : size;
    };
    const pin = make(true, nominal);
    const bore = make(false, random() < 0.9 ? nominal : pick(sizes));
    const bias = shared * normal();
    const reading = (id: string, value: number, condition: Ready['condition'], turn: number): Ready => ({
      id,
      specimen: '',
      condition,
      gauge: 'm',
      value: turn * value,
      own,
      shared,
    });
    const wear = 0.15 * -Math.log(1 - random());
    const pinReadings = [0, 1].map((k) =>
      reading(`p${k}`, pin + bias - wear * (0.5 + random()) + own * normal(), 'worn', 1),
    );
    const boreReadings = [0, 1].map((k) =>
      reading(`b${k}`, bore + shared * normal() + own * normal(), 'protected', -1),
    );
    const asked = { role: 'sliding' as const, isDiameter: true };
    const one = sizeEvidence(pinReadings, { ...asked, isShaft: true });
    const other = sizeEvidence(boreReadings, { ...asked, isShaft: false });
    if (!one || !other) throw new Error('no evidence');
    const nominalOf = (e: typeof one) => {
      const byNominal = new Map<number, number>();
      for (const { hypothesis, probability } of ranked(
        e.weighed,
        probabilities(e.weighed, e.byHabit, known).hypotheses,
      ))
        if (hypothesis.nominal !== undefined)
          byNominal.set(hypothesis.nominal, (byNominal.get(hypothesis.nominal) ?? 0) + probability);
      return [...byNominal].toSorted((a, b) => b[1] - a[1])[0]?.[0];
    };
    const together = joinMates(one, [other]).feature;
    if (nominalOf(one) === nominal) alone++;
    if (nominalOf(together) === nominal) joined++;
    const [density] = sizeDensities(together.weighed, priorWeights(together.weighed, known), together.likelihood, 1);
    const interval = density && summary(density).wide;
    if (interval && pin > interval.low && pin < interval.high) wide++;
  }
  return { alone: alone / count, joined: joined / count, wide: wide / count };
}

describe('a badly worn pin and its bore', () => {
  let found: ReturnType<typeof pairs>;
  beforeAll(() => {
    found = pairs(600);
  });

  test('the bore makes the pin’s nominal size right much more often', () => {
    expect(found.joined).toBeGreaterThan(found.alone + 0.15);
    expect(found.joined).toBeGreaterThan(0.85);
  });

  test('95 % intervals of the pin still hold 92 to 98 % of the true sizes', () => {
    expect(found.wide).toBeGreaterThan(0.92);
    expect(found.wide).toBeLessThan(0.98);
  });
});
