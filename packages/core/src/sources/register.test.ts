import { describe, expect, test } from 'vitest';
import { chapters, source, sourceKeys } from './register.ts';

const places = Object.entries(chapters).flatMap(([chapter, keys]) =>
  Object.keys(keys).map((key) => ({ chapter, key })),
);

test('a key names one source: no two chapters use the same', () => {
  const twice = places.filter(({ key }, i) => places.findIndex((other) => other.key === key) !== i);
  expect(twice).toEqual([]);
});

test('every key of every chapter is in the register, and no other', () => {
  expect(new Set(sourceKeys)).toEqual(new Set(places.map(({ key }) => key)));
});

describe('every source', () => {
  test.each(sourceKeys)('%s can be looked up by a reader', (key) => {
    const { title, address } = source(key);
    expect(title.trim()).toBe(title);
    expect(title.length).toBeGreaterThan(4);
    if (address !== undefined) expect(new URL(address).protocol).toMatch(/^https?:$/);
  });

  test.each(sourceKeys)('%s has a key that can stand in a docblock', (key) => {
    expect(key).toMatch(/^[\w.\-/+]+$/);
  });
});
