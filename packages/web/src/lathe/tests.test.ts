import { testsSchema } from '@sparewright/core/lathe/test-schema';
import { expect, test } from 'vitest';
import { isObject, withValue } from '../document.ts';
import { lackedByLoads, withReadLoads } from './push-loads.tsx';
import { kinds, testKinds, testWords } from './test-kinds.ts';

test('a push says something from two different forces on, and rows nobody read are not written down', () => {
  const read = { readings: [{ force: 0, up: 0 }, { force: 50 }, { force: 100, down: 12 }] };
  expect(lackedByLoads({ readings: [{ force: 0, up: 0 }, { force: 50 }] })).not.toBe('');
  expect(lackedByLoads({})).not.toBe('');
  expect(lackedByLoads(read)).toBe('');
  expect(withReadLoads(read)).toEqual({
    readings: [
      { force: 0, up: 0 },
      { force: 100, down: 12 },
    ],
  });
});

/** A value that suits a field. */
const typed = { size: '12', text: '303', number: 100, yes: true } as const;

test.each(testKinds)('a test of %s with all its fields filled in is one that a workshop takes', (kind) => {
  const { begins, fields, stem } = kinds[kind];
  const choices = [{ value: 'knife', words: 'knife' }];
  const whole = fields({ cutters: choices, states: choices }).reduce(
    (record, f) => {
      if (record === undefined || (f.of && !f.of(record))) return record;
      const first = f.choices?.[0]?.value;
      const value = f.path.at(-1) === 'damping' ? 0.05 : f.path.at(-1) === 'feed' ? 0.05 : Reflect.get(typed, f.kind);
      return withValue(record, f.path, first ?? value);
    },
    withValue({ id: `${stem}-1`, ...begins }, ['bar'], undefined),
  );
  const readings =
    kind === 'pushes'
      ? {
          readings: [
            { force: 0, up: 0 },
            { force: 100, up: 9 },
          ],
        }
      : {};
  const written = { ...(isObject(whole) ? whole : {}), ...readings };
  const result = testsSchema('mm').safeParse({ [kind]: [written] });
  expect(result.error?.issues ?? []).toEqual([]);
  expect(testWords(kind, written)).not.toMatch(/undefined| {2}/);
});
