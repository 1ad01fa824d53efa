/** What the views of the recovered design are made from besides the design itself. */
import type { Assessment } from '@sparewright/core/job/assessment';
import type { Job } from '@sparewright/core/job/schema';
import type { DocumentPath } from './job-view.ts';
import type { PresentSettings } from './settings.ts';

export interface RecoveredFrom {
  readonly document: unknown;
  readonly job: Job;
  readonly assessment: Pick<Assessment, 'part' | 'route' | 'evidence'>;
  readonly settings: PresentSettings;
}

export interface ViewContext extends RecoveredFrom {
  /** Where features stand in the document. */
  readonly places: ReadonlyMap<string, DocumentPath>;
}
