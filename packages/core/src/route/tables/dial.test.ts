import fc from 'fast-check';
import { expect, test } from 'vitest';
import { DomainError } from '../../errors.ts';
import { type Dial, dialNote, dialSetting, slidePerDivision, wholeDivisions } from './dial.ts';

const arbitraryDial = fc.record({
  division: fc.constantFrom(0.01, 0.02, 0.025, 0.05, 0.0254, 0.25),
  perTurn: fc.constantFrom(1, 1.25, 2, 2.54, 5),
  reads: fc.constantFrom<Dial['reads'][]>('radius', 'diameter', 'travel'),
});

test('a setting never moves the slide further than asked, and falls short by less than a division', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 60, noNaN: true }), arbitraryDial, (travel, dial) => {
      const made = dialSetting(travel, dial).travel;
      // A millionth of a division is the noise of binary fractions.
      expect(made).toBeLessThanOrEqual(travel + 1e-6 * dial.division);
      expect(travel - made).toBeLessThan(slidePerDivision(dial));
    }),
  );
});

test('turns and divisions make up the movement again, with fewer divisions than a turn has', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 60, noNaN: true }), arbitraryDial, (travel, dial) => {
      const { turns, divisions, travel: made } = dialSetting(travel, dial);
      const inTurn = Math.round(dial.perTurn / dial.division);
      expect(Number.isInteger(turns) && Number.isInteger(divisions)).toBe(true);
      expect(divisions).toBeLessThan(inTurn);
      expect((turns * inTurn + divisions) * slidePerDivision(dial)).toBeCloseTo(made, 9);
    }),
  );
});

test('a movement of so many divisions is set as exactly so many, whatever binary fractions make of it', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 3000 }), arbitraryDial, (n, dial) => {
      expect(wholeDivisions(n * slidePerDivision(dial), dial)).toBe(n);
    }),
  );
});

test('1 mm on the radius is 50 divisions of 0.02 mm read on the radius, and 100 where they are read on the diameter', () => {
  const dial = { division: 0.02, perTurn: 1 };
  expect(dialSetting(1, { ...dial, reads: 'radius' })).toEqual({ turns: 1, divisions: 0, travel: 1 });
  expect(dialSetting(1, { ...dial, reads: 'diameter' })).toMatchObject({ turns: 2, divisions: 0 });
});

test('a dial is not turned back beyond its zero', () => {
  expect(() => dialSetting(-0.01, { division: 0.02, perTurn: 1, reads: 'radius' })).toThrow(DomainError);
});

test('the note says what a division stands for', () => {
  expect(dialNote('Cross slide', { division: 0.02, perTurn: 1, reads: 'diameter' })).toContain('on the diameter');
});
