import { expect, test } from 'vitest';
import { exampleJob, exampleWorkshop } from '../../test/examples.ts';
import { definePart } from '../part/define-part.ts';
import { recoverJob } from './recover-job.ts';

test('the plunger was meant to be 32 mm, by its readings', () => {
  const job = exampleJob('plunger');
  const result = recoverJob(job, exampleWorkshop(), job.part && definePart(job.part));
  const body = result?.sizes.find((s) => s.of === 'body.diameter');
  expect(body?.nominals[0]).toMatchObject({ size: 32 });
});

test('without readings nothing is recovered', () => {
  const { evidence: _, ...bare } = exampleJob('plunger');
  expect(recoverJob(bare, exampleWorkshop(), undefined)).toBeUndefined();
});
