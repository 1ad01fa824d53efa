/** Where a finger on the drawing is on the part, and what a reading there is of. */
import { describe, expect, test } from 'vitest';
import { measuredSizes, newDimension } from './measured-sizes.ts';
import { placeOnPart } from './place-on-part.ts';

const row = (id: string) => ({
  id,
  feature: id.split('.')[0] ?? '',
  title: id,
  entered: '1',
  path: [],
  nominal: '1',
  least: '1',
  most: '1',
  basis: '',
});
const page = {
  sizes: ['guide.length', 'guide.diameter', 'guide.startEdge'].map(row),
  spans: [{ feature: 'guide', from: 10, to: 30 }],
};

describe('a place pointed at', () => {
  test('on an outline is of the diameter, along from the left end of its section', () => {
    expect(placeOnPart({ mark: 'guide', fromLeft: 14.5 }, page)).toEqual({ of: 'guide.diameter', along: 4.5 });
  });

  test('a little beyond the ends is at the end', () => {
    expect(placeOnPart({ mark: 'guide', fromLeft: 9.9 }, page)).toMatchObject({ along: 0 });
    expect(placeOnPart({ mark: 'guide', fromLeft: 31 }, page)).toMatchObject({ along: 20 });
  });

  test('a dimension is itself, and has no place', () => {
    expect(placeOnPart({ mark: 'guide.length' }, page)).toEqual({ of: 'guide.length' });
  });

  test('what is not measured is nothing', () => {
    expect(placeOnPart({ mark: 'overall' }, page)).toBeUndefined();
  });
});

describe('what can be measured', () => {
  test('sizes, threads, curves, mates, and what readings name already', () => {
    const document = {
      part: {
        threads: [{ id: 'thread', on: 'tail' }],
        outside: [
          { id: 'bowl', kind: 'arc' },
          { id: 'top', kind: 'crown' },
        ],
      },
      mates: [{ id: 'hole', name: 'guide hole' }],
      evidence: { readings: [{ id: 'r1', of: 'spindle.diameter' }] },
    };
    expect(measuredSizes({ document }, page.sizes.slice(0, 1)).map((c) => c.value)).toEqual([
      'guide.length',
      'thread.crest',
      'thread.pitch',
      'bowl.profile',
      'top.profile',
      'top.depths',
      'hole.size',
      'spindle.diameter',
    ]);
  });

  test('a name typed becomes a dimension; an inside diameter says so in its name', () => {
    expect(newDimension('Gland Nut', 'inside')).toBe('gland-nut-bore.diameter');
    expect(newDimension('  3rd step ', 'outside')).toBe('rd-step.diameter');
    expect(newDimension('oil hole', 'inside')).toBe('oil-hole.diameter');
    expect(newDimension('42', 'length')).toBeUndefined();
  });
});
