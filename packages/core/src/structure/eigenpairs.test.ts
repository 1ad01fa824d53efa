import fc from 'fast-check';
import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import { describe, expect, test } from 'vitest';
import { addTo, type BandedSymmetric, bandedZeros } from '../numerics/banded.ts';
import { bandedDiagonal, lowestEigenpairs, timesBanded } from './eigenpairs.ts';

/** A chain of springs and masses with all neighbours to the third tied together. */
function chain(springs: readonly number[], masses: readonly number[]): { k: BandedSymmetric; m: BandedSymmetric } {
  const n = masses.length;
  const k = bandedZeros(n, 3);
  for (let i = 0; i < n; i++) {
    addTo(k, i, i, 1 + (springs[i] ?? 1));
    for (let j = Math.max(0, i - 3); j < i; j++) {
      const s = springs[(i * 7 + j) % springs.length] ?? 1;
      addTo(k, i, i, s);
      addTo(k, j, j, s);
      addTo(k, i, j, -s);
    }
  }
  return { k, m: bandedDiagonal(masses) };
}

const dense = (m: BandedSymmetric): number[][] =>
  Array.from({ length: m.size }, (_, i) => [
    ...timesBanded(
      m,
      Float64Array.from({ length: m.size }, (_x, j) => (i === j ? 1 : 0)),
    ),
  ]);

const some = fc.record({
  springs: fc.array(fc.double({ min: 0.1, max: 50, noNaN: true }), { minLength: 30, maxLength: 30 }),
  masses: fc.array(fc.double({ min: 0.2, max: 5, noNaN: true }), { minLength: 30, maxLength: 30 }),
});

describe('lowest eigenpairs', () => {
  test('agree with the dense decomposition of ml-matrix', () => {
    fc.assert(
      fc.property(some, ({ springs, masses }) => {
        const { k, m } = chain(springs, masses);
        const root = masses.map((x) => 1 / Math.sqrt(x));
        const scaled = dense(k).map((row, i) => row.map((x, j) => x * (root[i] ?? 1) * (root[j] ?? 1)));
        const all = new EigenvalueDecomposition(new Matrix(scaled), { assumeSymmetric: true }).realEigenvalues;
        const wanted = all.toSorted((a, b) => a - b);
        lowestEigenpairs(k, m, 5).forEach(({ value }, i) => {
          expect(value / (wanted[i] ?? 0)).toBeCloseTo(1, 8);
        });
      }),
      { numRuns: 40 },
    );
  });

  test('satisfy K v = λ M v with vᵀ M v = 1', () => {
    fc.assert(
      fc.property(some, ({ springs, masses }) => {
        const { k, m } = chain(springs, masses);
        for (const { value, vector } of lowestEigenpairs(k, m, 4)) {
          const [kv, mv] = [timesBanded(k, vector), timesBanded(m, vector)];
          let norm = 0;
          kv.forEach((x, i) => {
            expect(x).toBeCloseTo(value * (mv[i] ?? 0), 5);
            norm += (vector[i] ?? 0) * (mv[i] ?? 0);
          });
          expect(norm).toBeCloseTo(1, 8);
        }
      }),
      { numRuns: 40 },
    );
  });

  test('are as many as there are unknowns when more are wanted', () => {
    expect(lowestEigenpairs(bandedDiagonal([4, 9]), bandedDiagonal([1, 1]), 5).map((p) => p.value)).toHaveLength(2);
  });

  test('a structure that nothing holds is refused', () => {
    const k = bandedZeros(2, 1);
    addTo(k, 0, 0, 1);
    addTo(k, 1, 1, 1);
    addTo(k, 0, 1, -1);
    expect(() => lowestEigenpairs(k, bandedDiagonal([1, 1]), 1)).toThrow('positive definite');
  });
});
