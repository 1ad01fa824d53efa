import { describe, expect, test } from 'vitest';
import { differences, settled } from './join.ts';

const pin = (guide: string, head: string, order = ['guide', 'head']) => ({
  outside: order.map((id) => ({ id, diameter: id === 'guide' ? guide : head })),
});
const base = pin('6', '20');

describe('what both have changed', () => {
  const mine = { ...pin('6.1', '21'), notes: 'mine' };
  const theirs = { ...pin('6.2', '22'), title: 'theirs' };

  test('is told place by place', () => {
    expect(differences(base, mine, theirs).map((d) => d.path)).toEqual([
      'outside[guide].diameter',
      'outside[head].diameter',
    ]);
  });

  test('is settled place by place, and what only one side changed stays', () => {
    const chosen = settled(base, mine, theirs, (path) => (path.includes('guide') ? 'mine' : 'theirs'));
    expect(chosen).toEqual({ ...pin('6.1', '22'), notes: 'mine', title: 'theirs' });
  });

  test('may be taken whole from either side', () => {
    expect(settled(base, mine, theirs, () => 'mine')).toEqual({ ...pin('6.1', '21'), notes: 'mine', title: 'theirs' });
    expect(settled(base, mine, theirs, () => 'theirs')).toEqual({
      ...pin('6.2', '22'),
      notes: 'mine',
      title: 'theirs',
    });
  });
});

test('of two orders of the same records one is chosen', () => {
  const three = (ids: readonly string[]) => ({ list: ids.map((id) => ({ id })) });
  const [first, mine, theirs] = [three(['a', 'b', 'c']), three(['c', 'a', 'b']), three(['b', 'a', 'c'])];
  const [difference] = differences(first, mine, theirs);
  expect(difference?.path).toBe('list: order');
  expect(settled(first, mine, theirs, () => 'mine')).toEqual(mine);
  expect(settled(first, mine, theirs, () => 'theirs')).toEqual(theirs);
});

test('a record taken out on one side and changed on the other', () => {
  const mine = { outside: [{ id: 'head', diameter: '20' }] };
  const theirs = pin('6.2', '20');
  expect(settled(base, mine, theirs, () => 'mine')).toEqual(mine);
  expect(settled(base, mine, theirs, () => 'theirs')).toEqual(theirs);
});
