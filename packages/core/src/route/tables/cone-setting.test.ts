import fc from 'fast-check';
import { expect, test } from 'vitest';
import { countOutside } from '../../../test/reference.ts';
import { DomainError } from '../../errors.ts';
import { degrees, mmPerInch } from '../../units/quantities.ts';
import { angleTolerance, degreesMinutes, setOverAngle, sideLength } from './cone-setting.ts';
import { coneTable } from './cone-table.ts';

test('a taper of 0.6051 inch in the foot is set to half of 2° 53′ 20″ [GROFF, row S02 and S03 of the metrology reference]', ({
  task,
}) => {
  const foot = { startDiameter: 1.6051 * mmPerInch, endDiameter: mmPerInch, length: 12 * mmPerInch };
  expect(2 * degrees(setOverAngle(foot))).toBeCloseTo(2.88889, 3);
  countOutside(task, 1);
});

test('the centre of a lathe, 60° included, is set to 30°; a taper of 1 in 20 to 1° 26′ [by hand]', () => {
  expect(degrees(setOverAngle({ startDiameter: 0, endDiameter: 20, length: 10 * Math.sqrt(3) }))).toBeCloseTo(30, 9);
  expect(degreesMinutes(setOverAngle({ startDiameter: 20, endDiameter: 19, length: 20 }))).toBe('1° 26′');
});

test('the angle, the side and the length along the axis make a right triangle', () => {
  const size = fc.double({ min: 0.1, max: 60, noNaN: true });
  fc.assert(
    fc.property(size, size, size, (startDiameter, endDiameter, length) => {
      const cone = { startDiameter, endDiameter, length };
      const side = sideLength(cone);
      expect(side ** 2).toBeCloseTo(length ** 2 + ((startDiameter - endDiameter) / 2) ** 2, 6);
      expect(Math.sin(setOverAngle(cone)) * side).toBeCloseTo(Math.abs(startDiameter - endDiameter) / 2, 9);
    }),
  );
});

test('an angle off by its tolerance puts the difference of the diameters off by theirs', () => {
  const cone = { startDiameter: 20, endDiameter: 14, length: 18 };
  const off = setOverAngle(cone) + angleTolerance(cone, 0.05);
  expect(2 * cone.length * Math.tan(off) - 6).toBeCloseTo(0.05, 3);
});

test('minutes that round to sixty carry over into a degree', () => {
  expect(degreesMinutes((1.9999 * Math.PI) / 180)).toBe('2° 00′');
});

test('a cone without length is refused', () => {
  expect(() => setOverAngle({ startDiameter: 20, endDiameter: 14, length: 0 })).toThrow(DomainError);
});

test('the strokes of a cone end at its thin end, by less than two divisions of the radius and never past it', () => {
  const diameter = fc.double({ min: 3, max: 40, noNaN: true });
  fc.assert(
    fc.property(diameter, diameter, fc.constantFrom('outside' as const, 'bore' as const), (a, b, where) => {
      const [thin, wide] = [Math.min(a, b), Math.max(a, b)];
      const start = where === 'outside' ? wide + 0.6 : Math.max(0.5, thin - 1);
      const table = coneTable({
        id: 't',
        operation: 'o',
        title: 'cone',
        cone: { startDiameter: a, endDiameter: b, length: 12 },
        startDiameter: start,
        along: { end: 'right', near: 0, far: 12 },
        where,
        thinEnd: 'free',
        greatest: 0.4,
        across: { division: 0.02, perTurn: 1, reads: 'radius' },
      });
      const end = Number(table.rows.at(-1)?.diameter);
      const left = where === 'outside' ? end - thin : wide - end;
      expect(left).toBeGreaterThanOrEqual(-1e-6);
      expect(left).toBeLessThan(0.04);
    }),
  );
});
