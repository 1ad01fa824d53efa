/** A finding with its words and its place on the page. */
import type { Finding } from '@sparewright/core/finding';
import type { Assessment } from '@sparewright/core/job/assessment';
import type { Job } from '@sparewright/core/job/schema';
import { presentFinding } from './finding.ts';
import type { FindingView } from './job-view.ts';
import { presentPlace } from './place.ts';
import type { PresentSettings } from './settings.ts';

export function findingView(
  finding: Finding,
  job: Job,
  assessment: Pick<Assessment, 'part' | 'route'>,
  settings: PresentSettings,
): FindingView {
  const { level, headline, because, remedies } = presentFinding(finding, settings);
  const operation = assessment.route?.operations.find((o) => o.id === finding.at);
  const mate = job.mates?.find((m) => m.id === finding.at);
  return {
    level,
    stage: finding.stage,
    where: presentPlace(finding.at, job, assessment),
    says: headline,
    because: because.map((b) => ({ text: b.text, source: b.source ?? '' })),
    remedies,
    marks: operation?.features ?? (mate?.with === undefined ? [finding.at] : [mate.with]),
  };
}
