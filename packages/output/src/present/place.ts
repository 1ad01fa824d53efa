/** Where a finding belongs, in words instead of ids. */
import type { Assessment } from '@sparewright/core/job/assessment';
import type { Job } from '@sparewright/core/job/schema';

/** The dimension, operation, setup, mate, reading or feature that `at` names; the id itself when none does. */
export function presentPlace(at: string, job: Job, assessment: Pick<Assessment, 'part' | 'route'>): string {
  const dimension = assessment.part?.dimensions.find((d) => d.id === at);
  if (dimension) return dimension.title;
  const operation = assessment.route?.operations.find((o) => o.id === at);
  if (operation) return `operation ${operation.number}`;
  const setup = assessment.route?.setups.find((s) => s.id === at);
  if (setup) return `setup ${setup.number}`;
  const reading = [...(job.evidence?.readings ?? []), ...(job.inspection?.readings ?? [])].find((r) => r.id === at);
  if (reading) return `reading ${reading.id} of ${reading.of}`;
  return named(at, job) ?? at.replaceAll('-', ' ').replace('.', ', ');
}

function named(at: string, job: Job): string | undefined {
  const { outside = [], inside, grooves = [], notTurned = [] } = job.part ?? {};
  const features = [...outside, ...(inside?.left ?? []), ...(inside?.right ?? []), ...grooves, ...notTurned];
  const [id, field] = at.split('.');
  const feature = features.find((f) => f.id === id);
  if (feature?.name !== undefined) return field === undefined ? feature.name : `${feature.name}, ${field}`;
  const mate = job.mates?.find((m) => m.id === id)?.name;
  return mate === undefined || field === undefined ? mate : `${field} of the ${mate.replace(/^the /i, '')}`;
}
