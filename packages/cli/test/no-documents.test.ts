import { InputError } from '@sparewright/core/errors';
import { readJob, readWorkshop } from '@sparewright/core/job/read-document';
import fc from 'fast-check';
import { expect, test } from 'vitest';

test('what is no document at all is refused', () => {
  fc.assert(
    fc.property(fc.jsonValue(), (value) => {
      expect(() => readJob(value)).toThrow(InputError);
      expect(() => readWorkshop(value)).toThrow(InputError);
    }),
    { numRuns: 300 },
  );
});

test('a document nested beyond all measure is refused, not choked on', () => {
  const deep: unknown = JSON.parse('['.repeat(100_000) + ']'.repeat(100_000));
  expect(() => readJob(deep)).toThrow(InputError);
  expect(() => readJob({ sparewright: 'job', version: 1, units: deep })).toThrow(InputError);
  expect(() => readJob({ sparewright: 'job', version: deep })).toThrow(InputError);
  expect(() => readJob({ sparewright: deep })).toThrow(InputError);
});
