import fc from 'fast-check';
import { EigenvalueDecomposition, inverse, Matrix, solve } from 'ml-matrix';
import { describe, expect, test } from 'vitest';
import { integrate } from '../../test/quadrature.ts';
import { addTo, bandedFrom, bandedZeros, diagonalOfInverse, factorBanded, solveBanded } from './banded.ts';
import { findRoot, goldenSection } from './root.ts';
import { symmetricEigenpairs } from './symmetric.ts';

/** A random symmetric banded matrix made positive definite by a heavy diagonal. */
const anySystem = fc.integer({ min: 2, max: 25 }).chain((size) =>
  fc.integer({ min: 0, max: Math.min(4, size - 1) }).chain((band) =>
    fc.record({
      band: fc.constant(band),
      values: fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: size * size, maxLength: size * size }),
      load: fc.array(fc.double({ min: -10, max: 10, noNaN: true }), { minLength: size, maxLength: size }),
    }),
  ),
);

describe('a banded system', () => {
  test('is solved as a dense solver solves it [ml-matrix]', () => {
    fc.assert(
      fc.property(anySystem, ({ band, values, load }) => {
        const size = load.length;
        const rows = Array.from({ length: size }, (_, i) =>
          Array.from({ length: size }, (_, j) => {
            if (Math.abs(i - j) > band) return 0;
            return i === j ? 2 * band + 2 : (values[Math.max(i, j) * size + Math.min(i, j)] ?? 0);
          }),
        );
        const dense = solve(new Matrix(rows), Matrix.columnVector(load)).to1DArray();
        const banded = solveBanded(factorBanded(bandedFrom(rows, band)), load);
        dense.forEach((x, i) => {
          expect(banded[i]).toBeCloseTo(x, 10);
        });
        const diagonal = diagonalOfInverse(factorBanded(bandedFrom(rows, band)));
        inverse(new Matrix(rows))
          .diagonal()
          .forEach((x, i) => {
            expect(diagonal[i]).toBeCloseTo(x, 10);
          });
      }),
    );
  });

  test('that can move freely is refused', () => {
    expect(() =>
      factorBanded(
        bandedFrom(
          [
            [1, -1],
            [-1, 1],
          ],
          1,
        ),
      ),
    ).toThrow('every part held');
  });

  test('keeps to its band', () => {
    expect(() => addTo(bandedZeros(4, 1), 0, 3, 1)).toThrow('within 1 of the diagonal');
    expect(() => solveBanded(factorBanded(bandedFrom([[1]], 0)), [1, 2])).toThrow('1 entries');
  });
});

/** The other program stumbles over numbers near the smallest there are. */
const millionths = fc.integer({ min: -1_000_000, max: 1_000_000 }).map((n) => n / 1e6);
const anySymmetric = fc
  .integer({ min: 1, max: 11 })
  .chain((size) =>
    fc.array(millionths, { minLength: size * size, maxLength: size * size }).map((values) => ({ size, values })),
  );

describe('the eigenpairs of a symmetric matrix', () => {
  test('A v = λ v, the vectors are square to each other, and the values are those of another program [ml-matrix]', () => {
    fc.assert(
      fc.property(anySymmetric, ({ size, values }) => {
        const at = (i: number, j: number) => values[Math.max(i, j) * size + Math.min(i, j)] ?? 0;
        const rows = Array.from({ length: size }, (_, i) => Array.from({ length: size }, (_x, j) => at(i, j)));
        const found = symmetricEigenpairs(Float64Array.from(rows.flat()), size);
        const vectors = Array.from({ length: size }, (_, i) => found.vectors.subarray(i * size, (i + 1) * size));
        const dot = (a: ArrayLike<number>, b: ArrayLike<number>) =>
          Array.from({ length: size }, (_, k) => (a[k] ?? 0) * (b[k] ?? 0)).reduce((x, y) => x + y, 0);
        vectors.forEach((v, i) => {
          rows.forEach((row, k) => {
            expect(dot(row, v)).toBeCloseTo((found.values[i] ?? 0) * (v[k] ?? 0), 10);
          });
          vectors.forEach((w, j) => {
            expect(dot(v, w)).toBeCloseTo(i === j ? 1 : 0, 10);
          });
        });
        const others = new EigenvalueDecomposition(new Matrix(rows), { assumeSymmetric: true }).realEigenvalues;
        const sorted = [...found.values].sort((a, b) => a - b);
        others
          .toSorted((a, b) => a - b)
          .forEach((x, i) => {
            expect(sorted[i]).toBeCloseTo(x, 10);
          });
      }),
    );
  });
});

describe('a root', () => {
  test('is found where the function is known to vanish', () => {
    fc.assert(
      fc.property(fc.double({ min: -5, max: 5, noNaN: true }), fc.constantFrom(1, 3, 5), (root, power) => {
        expect(Math.abs(findRoot((x) => (x - root) ** power * (2 + Math.sin(x)), -7, 8) - root)).toBeLessThan(
          power === 1 ? 1e-10 : 1e-3,
        );
      }),
    );
  });

  test('of Kepler’s equation E − 0.8 sin E = 1 satisfies it', () => {
    const e = findRoot((x) => x - 0.8 * Math.sin(x) - 1, 0, Math.PI);
    expect(e - 0.8 * Math.sin(e)).toBeCloseTo(1, 12);
  });

  test('on the end of the bracket is taken', () => {
    expect(findRoot((x) => x, 0, 1)).toBe(0);
    expect(findRoot((x) => x - 1, 0, 1)).toBe(1);
  });

  test('is not looked for where there is none', () => {
    expect(() => findRoot((x) => x * x + 1, -1, 1)).toThrow('a change of sign');
    expect(() => findRoot(() => Number.NaN, -1, 1)).toThrow('a change of sign');
  });
});

test('golden section finds the bottom of a valley', () => {
  fc.assert(
    fc.property(fc.double({ min: -2, max: 2, noNaN: true }), (bottom) => {
      expect(goldenSection((x) => Math.abs(x - bottom) ** 1.5, -3, 3)).toBeCloseTo(bottom, 6);
    }),
  );
  // The place of largest deflection between chuck and centre: (2 − √2) L [roark-8.1 case 1c].
  expect(goldenSection((a) => -(a ** 3) * (1 - a) ** 2 * (4 - a), 0.1, 0.9)).toBeCloseTo(2 - Math.SQRT2, 6);
});

describe('quadrature', () => {
  test('is exact for polynomials up to degree 22, which proves nodes and weights', () => {
    for (let degree = 0; degree <= 22; degree++) {
      expect(integrate((x) => (degree + 1) * x ** degree, 0, 1, 1e300)).toBeCloseTo(1, 13);
    }
    expect(Math.abs(integrate((x) => 31 * x ** 30, 0, 1, 1e300) - 1)).toBeGreaterThan(1e-15);
  });

  test('reaches known areas of rough and peaked curves', () => {
    expect(integrate(Math.sqrt, 0, 1)).toBeCloseTo(2 / 3, 9);
    expect(integrate((x) => 1 / (1e-4 + x * x), -1, 1, 1e-12)).toBeCloseTo(200 * Math.atan(100), 7);
    expect(integrate(Math.sin, 0, Math.PI)).toBeCloseTo(2, 12);
    expect(integrate(Math.exp, 1, 0)).toBeCloseTo(1 - Math.E, 12);
  });

  test('refuses an infinite curve and infinite limits', () => {
    expect(() => integrate((x) => 1 / x, -1, 1)).toThrow('finite');
    expect(() => integrate(Math.exp, -Infinity, 0)).toThrow('finite limits');
  });
});
