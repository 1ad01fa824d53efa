import { expect, test } from 'vitest';
import { barelyBegun, exampleJob, packetInput } from '../../test/jobs.ts';
import { presentPlace } from './place.ts';
import { presentStages } from './stages.ts';

const { job, assessment } = packetInput(exampleJob('valve-guide-pin'));

test('a job that has only begun says of each stage that nothing is there', () => {
  const input = packetInput(barelyBegun, null);
  expect(presentStages(input.job, input.assessment).map((s) => s.stands)).toEqual([
    'no readings',
    'no part entered',
    'nothing to check',
    'not planned',
    'no stop points',
    'nothing to measure yet',
  ]);
});

test('a finished job counts what each stage came to', () => {
  const stands = new Map(presentStages(job, assessment).map((s) => [s.stage, s.stands]));
  expect(stands.get('evidence')).toContain(`settled by ${job.evidence?.readings?.length} readings`);
  const open = { ...job, part: job.part && { ...job.part, leftOpen: ['guide.length', 'head.length'] } };
  expect(presentStages(open, assessment)[0]?.stands).toMatch(/readings, 2 left open$/);
  expect(stands.get('route')).toContain(`${assessment.route?.operations.length} operations in 2 setups`);
  expect(stands.get('inspection')).toBe(`0 of ${assessment.inspection.rows.length} measured`);
});

test('a place is named as the person named it', () => {
  expect(presentPlace('guide.diameter', job, assessment)).toBe('diameter of the guide');
  expect(presentPlace('setup-2', job, assessment)).toBe('setup 2');
  expect(presentPlace('guide-hole.size', job, assessment)).toBe('size of the guide hole of the valve');
  expect(presentPlace('nothing-known', job, assessment)).toBe('nothing known');
});
