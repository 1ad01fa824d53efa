import { expect, test } from 'vitest';
import { countOutside } from '../../../test/reference.ts';
import { DomainError } from '../../errors.ts';
import { standardThreads } from '../../standards/threads/catalogue.ts';
import { rootOf, threadAim } from './thread-aim.ts';
import { threadChamfer } from './thread-chamfer.ts';

test('the chamfer of every thread ends just past its root: below it outside, above it inside [FLIPHTML-242]', ({
  task,
}) => {
  let seen = 0;
  for (const thread of standardThreads()) {
    if (thread.family === 'npt' || thread.family === 'pipe-taper') continue;
    for (const side of ['external', 'internal'] as const) {
      const crest = threadAim(thread, side).crest;
      const root = rootOf(thread, side, undefined);
      const { diameter, length } = threadChamfer(crest, root);
      const past = side === 'external' ? root - diameter : diameter - root;
      expect(past, thread.designation).toBeGreaterThanOrEqual(0.1 - 1e-9);
      expect(past, thread.designation).toBeLessThanOrEqual(0.2 + 1e-9);
      // At 45° it is as long as it is deep.
      expect(length).toBeCloseTo(Math.abs(crest - diameter) / 2, 9);
      seen++;
    }
  }
  countOutside(task, 1);
  expect(seen).toBeGreaterThan(200);
});

test('at 30° to the axis it is √3 times as long', () => {
  expect(threadChamfer(10, 8, Math.PI / 6).length / threadChamfer(10, 8).length).toBeCloseTo(Math.sqrt(3), 9);
});

test('a crest that is the root has no chamfer', () => {
  expect(() => threadChamfer(10, 10)).toThrow(DomainError);
  expect(() => threadChamfer(10, 8, 0)).toThrow(DomainError);
});
