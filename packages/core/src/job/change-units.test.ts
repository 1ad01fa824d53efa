import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { exampleDocument, exampleNames } from '../../test/examples.ts';
import { withUnits } from './change-units.ts';
import { readJob } from './read-document.ts';

const plain = (value: unknown): Record<string, unknown> => JSON.parse(JSON.stringify(value));
/** The sizes of a job, without the text they were typed as and the unit of bare numbers. */
const sizes = (document: unknown): unknown =>
  JSON.parse(JSON.stringify({ ...readJob(document), units: '' }, (key, value) => (key === 'text' ? undefined : value)));

const job = (diameter: string | number, units = 'mm') => ({
  sparewright: 'job',
  version: 1,
  title: '12 of these',
  units,
  hazard: 'ordinary',
  notes: '5 were lost',
  part: { name: '3 pins', outside: [{ id: 'pin', kind: 'cylinder', diameter, length: 30 }] },
});

const diameterOf = (document: unknown): unknown => Reflect.get(Object(plain(document)), 'part').outside[0].diameter;

describe('the unit of a job changed', () => {
  test.each(exampleNames)('%s: every size stays what it was, there and back', (name) => {
    const document = plain(exampleDocument(`${name}.job.json`));
    const other = readJob(document).units === 'mm' ? 'in' : 'mm';
    const there = withUnits(document, other);
    expect(readJob(there).units).toBe(other);
    expect(sizes(there)).toEqual(sizes(document));
    const back = withUnits(there, readJob(document).units);
    expect(sizes(back)).toEqual(sizes(document));
  });

  test.each([
    ['6 f7', '6 mm f7'],
    ['42 ±0.2', '42 mm ±0.2'],
    ['12,5 +0,1/-0,05', '12,5 mm +0,1/-0,05'],
    ['11.95..11.98', '11.95..11.98 mm'],
    ['⌀20', '⌀20 mm'],
    [12, '12 mm'],
    ['5/16 in h9', '5/16 in h9'],
    ['.5"', '.5"'],
  ])('%s becomes %s', (typed, written) => {
    const changed = withUnits(job(typed), 'in');
    expect(diameterOf(changed)).toBe(written);
    expect(sizes(changed)).toEqual(sizes(job(typed)));
  });

  test.each([
    ['.312 ±2 thou', '.312 in ±2 thou'],
    ['1 1/2', '1 1/2 in'],
    ['5/16 h9', '5/16 in h9'],
    ['1/2', '1/2 in'],
  ])('in inches, %s becomes %s', (typed, written) => {
    expect(diameterOf(withUnits(job(typed, 'in'), 'mm'))).toBe(written);
  });

  test('words that begin with a number stay', () => {
    const changed = plain(withUnits(job('6'), 'in'));
    expect(changed).toMatchObject({ title: '12 of these', notes: '5 were lost', version: 1, part: { name: '3 pins' } });
  });

  test('any size at all stays what it was', () => {
    const amount = fc.integer({ min: 1, max: 60_000 }).map((n) => n / 1000);
    fc.assert(
      fc.property(amount, fc.integer({ min: 0, max: 90 }), fc.boolean(), (n, tenth, comma) => {
        const text = `${n} ±${tenth / 100000}`.replaceAll('.', comma ? ',' : '.');
        const document = job(text);
        expect(sizes(withUnits(document, 'in'))).toEqual(sizes(document));
      }),
      { numRuns: 60 },
    );
  });

  test('the same unit changes nothing, and no job is refused', () => {
    expect(withUnits(job('6 f7'), 'mm')).toEqual(job('6 f7'));
    expect(() => withUnits({ units: 'mm' }, 'in')).toThrow();
  });
});
