/** What the list of jobs says of a job: how far it has come and the worst that was found. */
import { type Stage, worstFirst } from '@sparewright/core/finding';
import type { Assessment } from '@sparewright/core/job/assessment';
import type { Summary } from '@sparewright/store/history';

export function summaryOf(assessment: Assessment): Summary {
  const [worst] = worstFirst(assessment.findings);
  return { stage: stageOf(assessment), worst: worst && { level: worst.level, says: worst.says } };
}

/** The first stage that still has something to settle. */
function stageOf({ evidence, part, route, inspection, findings }: Assessment): Stage {
  const stopped = (stage: Stage) => findings.some((f) => f.stage === stage && f.level === 'stop');
  const measured = inspection.rows.filter(({ decision }) => decision !== 'not measured').length;
  if (!part && evidence.gathered.length === 0) return 'evidence';
  if (!part?.complete || stopped('part')) return 'part';
  if (stopped('duty')) return 'duty';
  if (!route || stopped('route')) return 'route';
  if (measured === 0) return 'bench';
  return measured < inspection.rows.length ? 'inspection' : 'record';
}
