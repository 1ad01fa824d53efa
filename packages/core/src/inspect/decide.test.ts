import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { countOutside, referenceRows } from '../../test/reference.ts';
import { DomainError } from '../errors.ts';
import { conformityProbability, decide, guardBand } from './decide.ts';

const rows = referenceRows('metrology', 'conformity-examples');
const published = (id: string) => Number(rows.find((r) => r.id === id)?.published);

describe('conformity', () => {
  test('a container of 509.7 kPa, u 8.6, holds at least 490 with 99 % [JCGM106 7.3.3 example 2, row C02]', ({
    task,
  }) => {
    expect(conformityProbability(509.7, 8.6, 490, Number.MAX_VALUE)).toBeCloseTo(published('C02'), 2);
    countOutside(task, 1);
  });

  test('an oil of 13.6, u 1.8, lies within 12.5 to 16.3 with 66 % [JCGM106 7.4, row C04]', ({ task }) => {
    expect(conformityProbability(13.6, 1.8, 12.5, 16.3)).toBeCloseTo(published('C04'), 2);
    countOutside(task, 1);
  });

  test('the guard band is the 95 % quantile of the normal distribution [JCGM106 table 1, row C08]', ({ task }) => {
    expect(guardBand(1)).toBeCloseTo(published('C08'), 2);
    countOutside(task, 1);
  });

  test('at the guard-banded limit one in twenty is out', () => {
    const u = 0.003;
    expect(conformityProbability(10 - guardBand(u), u, 9, 10)).toBeCloseTo(0.95, 4);
  });

  test('well inside conforms, well outside does not, at the limit nothing is proved', () => {
    expect(decide(5.984, 0.001, 5.978, 5.99)).toBe('conforms');
    expect(decide(5.97, 0.001, 5.978, 5.99)).toBe('does not conform');
    expect(decide(5.99, 0.001, 5.978, 5.99)).toBe('cannot be decided');
  });

  test('a gauge as coarse as the tolerance proves nothing, even in the middle', () => {
    expect(decide(5.984, 0.006, 5.978, 5.99)).toBe('cannot be decided');
  });

  test('never conforms when the chance of being within is under 95 %', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -2, max: 3, noNaN: true }),
        fc.double({ min: 0.01, max: 2, noNaN: true }),
        (y, u) => {
          if (decide(y, u, 0, 1) === 'conforms') expect(conformityProbability(y, u, 0, 1)).toBeGreaterThanOrEqual(0.95);
        },
      ),
    );
  });

  test('refuses an uncertainty of nought', () => {
    expect(() => conformityProbability(5, 0, 4, 6)).toThrow(DomainError);
  });
});
