import { expect, test } from 'vitest';
import { rings } from './rings.ts';

function graph(text: string): Map<string, Set<string>> {
  return new Map(text.split(' ').map((edges) => [edges[0] ?? '', new Set(edges.slice(2))]));
}

test('a graph that only goes down has no ring', () => expect(rings(graph('a:bc b:d c:d d:'))).toEqual([]));
test('a long way round is found', () => expect(rings(graph('a:b b:c c:d d:a e:a'))).toEqual([['a', 'b', 'c', 'd']]));
test('two rings are told apart', () => {
  expect(rings(graph('a:b b:a c:d d:c e:ac')).toSorted()).toEqual([
    ['a', 'b'],
    ['c', 'd'],
  ]);
});
test('a node that leads to itself is a ring', () => expect(rings(graph('a:a b:a'))).toEqual([['a']]));
