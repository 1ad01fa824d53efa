/** Reads a job and its workshop, and assesses them. */
import { assess } from '@sparewright/core/job/assess';
import type { Assessment } from '@sparewright/core/job/assessment';
import { withProgress } from './progress.ts';
import { type ReadJob, type ReadWorkshop, readJobFile, readWorkshopFor } from './read-file.ts';
import type { Terminal } from './terminal.ts';

export interface AssessedFile {
  readonly read: ReadJob;
  readonly chosen: ReadWorkshop;
  readonly assessment: Assessment;
}

export async function assessFile(
  file: string,
  workshop: string | undefined,
  terminal: Terminal,
): Promise<AssessedFile> {
  const read = readJobFile(file);
  const chosen = readWorkshopFor(file, workshop);
  const assessment = await withProgress(terminal, 'Working the job out', () => assess(read.job, chosen.workshop));
  return { read, chosen, assessment };
}
