import { describe, expect, test } from 'vitest';
import { isLearned, withTimes } from './learn-times.ts';

const timed = [
  { of: 'face-right', kind: 'face' as const, planned: 300, taken: 420, with: [] },
  { of: 'bore-seat', kind: 'bore' as const, planned: 1200, taken: 1500, with: ['drill-seat'] },
];

describe('times put into a job', () => {
  const document = { route: { firstEndOut: 'left', taken: [{ kind: 'face', planned: 5, taken: 9 }] } };

  test('stand in minutes beside those that came from elsewhere', () => {
    expect(withTimes(document, timed)).toEqual({
      route: {
        firstEndOut: 'left',
        taken: [
          { kind: 'face', planned: 5, taken: 9 },
          { kind: 'face', planned: 5, taken: 7, of: 'face-right' },
          { kind: 'bore', planned: 20, taken: 25, of: 'bore-seat' },
        ],
      },
    });
    expect(withTimes({}, timed.slice(0, 1))).toEqual({
      route: { taken: [{ kind: 'face', planned: 5, taken: 7, of: 'face-right' }] },
    });
  });

  test('put in again take the place of those of the same operations', () => {
    const once = withTimes(document, timed);
    expect(isLearned(document, timed)).toBe(false);
    expect(isLearned(once, timed)).toBe(true);
    expect(withTimes(once, timed)).toEqual(once);
    const [face] = timed;
    if (!face) throw new Error('no time');
    const longer = { ...face, taken: 600 };
    expect(isLearned(once, [longer])).toBe(false);
    expect(JSON.stringify(withTimes(once, [longer])).match(/face-right/g)).toHaveLength(1);
  });
});
