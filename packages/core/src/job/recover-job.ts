/**
 * What a job's readings say the part was meant to be. Apart from assess(), which follows every keystroke: this weighs every reading
 * against every design, takes many times as long, and is wanted on one sheet only.
 */
import type { Workshop } from '../lathe/schema.ts';
import type { PartResult } from '../part/part-result.ts';
import { recover } from '../recover/recover.ts';
import type { RecoverResult } from '../recover/recover-result.ts';
import type { Job } from './schema.ts';

/** The recovered design; undefined while there are no readings. */
export function recoverJob(
  job: Pick<Job, 'evidence' | 'mates' | 'machine'>,
  workshop: Workshop | undefined,
  part: PartResult | undefined,
): RecoverResult | undefined {
  if (!job.evidence?.readings?.length) return undefined;
  const gauges = workshop?.gauges ?? [];
  return recover({ evidence: job.evidence, gauges, part, mates: job.mates, machine: job.machine });
}
