import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { loggedTimes, type PlannedOperation } from './logged-times.ts';

const minutes = (n: number) => 60 * n;
const operation = (
  id: string,
  kind: PlannedOperation['kind'],
  planned: number,
  setup = 'setup-1',
): PlannedOperation => ({ id, kind, setup, planned: minutes(planned) });

const route = [
  operation('face', 'face', 5),
  operation('centre', 'centre', 4),
  operation('drill', 'drill', 6),
  operation('rough', 'rough turn', 10),
  operation('finish', 'finish turn', 20),
  operation('crown', 'turn curve', 25, 'setup-2'),
];
const at = (minute: number, of: string) => ({ at: minutes(minute), of });
const later = minutes(10_000);

describe('by hand, from a log of one morning', () => {
  test('an operation begins with the last entry of the one before and ends with its own last', () => {
    const { timed, notTimed } = loggedTimes(
      [at(0, 'rough'), at(4, 'rough'), at(12, 'finish'), at(20, 'finish'), at(30, 'finish')],
      route,
      later,
    );
    expect(timed).toEqual([{ of: 'finish', kind: 'finish turn', planned: minutes(20), taken: minutes(26), with: [] }]);
    expect(notTimed).toEqual([{ of: 'rough', why: 'nothing tells when it began' }]);
  });

  test('operations of which nothing was written share the time, which goes to the kind of the longest', () => {
    const { timed } = loggedTimes([at(0, 'face'), at(14, 'rough'), at(24, 'rough')], route, later);
    expect(timed).toEqual([
      { of: 'rough', kind: 'rough turn', planned: minutes(20), taken: minutes(24), with: ['centre', 'drill'] },
    ]);
  });

  test('a night in between is no time at the lathe, and the turning round of the work belongs to no operation', () => {
    const night = loggedTimes([at(0, 'rough'), at(12, 'finish'), at(900, 'finish')], route, later);
    expect(night.timed).toEqual([]);
    expect(night.notTimed[1]).toEqual({ of: 'finish', why: 'a pause lies in it' });
    const turned = loggedTimes([at(0, 'finish'), at(20, 'crown'), at(40, 'crown')], route, later);
    expect(turned.timed).toEqual([]);
  });

  test('the last one written about may still be under way', () => {
    const entries = [at(0, 'rough'), at(12, 'finish'), at(20, 'finish')];
    expect(loggedTimes(entries, route, minutes(21)).notTimed.at(-1)?.why).toBe('it may still be under way');
    expect(loggedTimes(entries, route, minutes(60)).timed).toHaveLength(1);
  });

  test('gone back to, only that one was done again', () => {
    const { timed } = loggedTimes(
      [at(0, 'face'), at(14, 'rough'), at(30, 'finish'), at(35, 'rough'), at(45, 'finish')],
      route,
      later,
    );
    expect(timed.map(({ of, taken }) => [of, taken / 60])).toEqual([
      ['rough', 19],
      ['finish', 26],
    ]);
  });
});

test('whatever is written, no time is counted twice, and none that did not pass', () => {
  const entry = fc.record({
    at: fc.integer({ min: 0, max: 30_000 }),
    of: fc.constantFrom('other', ...route.map((o) => o.id)),
  });
  fc.assert(
    fc.property(fc.array(entry, { maxLength: 30 }), (entries) => {
      const { timed, notTimed } = loggedTimes(entries, route, later);
      const times = entries.filter((e) => e.of !== 'other').map((e) => e.at);
      const whole = times.length > 0 ? Math.max(...times) - Math.min(...times) : 0;
      expect(timed.reduce((sum, t) => sum + t.taken, 0)).toBeLessThanOrEqual(whole);
      const named = [...timed.flatMap((t) => [t.of]), ...notTimed.map((n) => n.of)];
      expect(new Set(named).size).toBe(named.length);
      for (const t of timed) expect(t.planned).toBeGreaterThan(0);
    }),
  );
});
