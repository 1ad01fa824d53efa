import fc from 'fast-check';
import { expect, test } from 'vitest';
import { countOutside, referenceRows } from '../../../test/reference.ts';
import { InputError } from '../../errors.ts';
import { classFit, fit, parseFit } from './fit.ts';
import { preferredFits } from './preferred-fits.ts';

const worked = referenceRows('limits-fits', 'fits-worked-examples');

test.each(worked.map((row) => [row.nominal_mm, `${row.hole_class}/${row.shaft_class}`, row.source, row] as const))(
  '%s %s comes out as in the worked example [%s]',
  (nominal, classes, _source, row) => {
    const written = parseFit(`${nominal} ${classes}`);
    const result = classFit(written.nominal, written.hole, written.shaft);
    expect(result.hole).toEqual({ max: Number(row.hole_max_mm), min: Number(row.hole_min_mm) });
    expect(result.shaft).toEqual({ max: Number(row.shaft_max_mm), min: Number(row.shaft_min_mm) });
    if (row.max_clearance_um !== '') expect(result.maxClearance * 1000).toBeCloseTo(Number(row.max_clearance_um), 6);
    if (row.min_clearance_um !== '') expect(result.minClearance * 1000).toBeCloseTo(Number(row.min_clearance_um), 6);
    expect(result.kind).toBe(row.kind);
  },
);

test('all worked examples of the reference were run', ({ task }) => {
  expect(worked.length).toBe(16);
  countOutside(task, worked.length * 4 + worked.filter((r) => r.max_clearance_um !== '').length * 2);
});

test('inch examples: limits in thousandths give the printed clearances [MT-13-1, NV-340, SH-7-8]', ({ task }) => {
  const inch = (text: string | undefined) => Number(text) * 25.4;
  for (const row of referenceRows('limits-fits', 'fits-worked-examples-inch')) {
    const result = fit(
      { max: inch(row.hole_max_in), min: inch(row.hole_min_in) },
      { max: inch(row.shaft_max_in), min: inch(row.shaft_min_in) },
    );
    if (row.max_clearance_in !== '') {
      expect(result.maxClearance).toBeCloseTo(inch(row.max_clearance_in), 6);
      expect(result.minClearance).toBeCloseTo(inch(row.min_clearance_in), 6);
      expect(result.kind).toBe('clearance');
      countOutside(task, 2);
    } else {
      expect(result.kind).toBe('interference');
      countOutside(task, 1);
    }
  }
});

test('the preferred fits have the clearances of the reference list and the kind it names', () => {
  const rows = referenceRows('limits-fits', 'preferred-fits');
  expect(rows.map((r) => r.hole_basis_fit)).toEqual(preferredFits.map((f) => `${f.hole}/${f.shaft}`));
  for (const row of rows) {
    for (const nominal of [6, 12, 25, 50]) {
      const { hole, shaft } = parseFit(`${nominal} ${row.hole_basis_fit}`);
      const result = classFit(nominal, hole, shaft);
      expect(result.minClearance * 1000).toBeCloseTo(Number(row[`clearance_min_at_${nominal}mm_um`]), 6);
      expect(result.maxClearance * 1000).toBeCloseTo(Number(row[`clearance_max_at_${nominal}mm_um`]), 6);
      expect(result.kind).toBe(row.kind);
    }
  }
});

test('H7/p6 is a transition fit up to 3 mm and an interference fit above [DM-276]', ({ task }) => {
  expect(classFit(3, 'H7', 'p6').kind).toBe('transition');
  expect(classFit(25, 'H7', 'p6').kind).toBe('interference');
  countOutside(task, 2);
});

test('hole basis and shaft basis of a preferred fit give the same clearances over 3 mm', () => {
  for (const f of preferredFits) {
    // H7/f7 has no twin; js, k, m, n, p … mirror through the delta rule; coarse letters mirror only when grades agree.
    if (f.hole === 'H7' && f.shaft === 'f7') continue;
    const nominal = 25;
    const a = classFit(nominal, f.hole, f.shaft);
    const b = classFit(nominal, f.shaftBasis.hole, f.shaftBasis.shaft);
    // D10/h9 swaps grades 9 and 10 with H9/d10: the sum of the tolerances, and so the spread, stays.
    expect(b.maxClearance - b.minClearance).toBeCloseTo(a.maxClearance - a.minClearance, 9);
    expect(b.kind).toBe(a.kind);
  }
});

test('the spread of a fit is the sum of both tolerances', () => {
  const size = fc.double({ min: 3, max: 500, noNaN: true });
  fc.assert(
    fc.property(size, fc.constantFrom(...preferredFits), (nominal, f) => {
      const { hole, shaft, maxClearance, minClearance } = classFit(nominal, f.hole, f.shaft);
      expect(maxClearance - minClearance).toBeCloseTo(hole.max - hole.min + shaft.max - shaft.min, 8);
    }),
  );
});

test.each([
  ['40 H8/f7', 40, 'H8', 'f7'],
  ['40H8/f7', 40, 'H8', 'f7'],
  ['⌀40 H8 - f7', 40, 'H8', 'f7'],
  ['1/2 in H7/g6', 12.7, 'H7', 'g6'],
  ['12,5 f7/H8', 12.5, 'H8', 'f7'],
])('%s is read as a fit', (text, nominal, hole, shaft) => {
  expect(parseFit(text)).toMatchObject({ nominal, hole, shaft, text });
});

test.each([
  ['40 H8/F7', 'one class in capitals'],
  ['40 h8/f7', 'one class in capitals'],
  ['40 H8/q7', 'nearest p7 or r7'],
  ['600 H8/f7', 'up to 500 mm'],
  ['0 H8/f7', 'over 0'],
  ['-3 H8/f7', 'over 0'],
  ['40 H8', 'class of the shaft'],
  ['H8/f7', 'a size'],
])('%s is refused: %s', (text, expected) => {
  expect(() => parseFit(text)).toThrow(InputError);
  expect(() => parseFit(text)).toThrow(expected);
});

test('limits the wrong way round are refused', () => {
  expect(() => fit({ max: 10, min: 10.1 }, { max: 10, min: 9.9 })).toThrow('not below the smallest');
  expect(() => fit({ max: Number.NaN, min: 10 }, { max: 10, min: 9.9 })).toThrow('not below the smallest');
});
