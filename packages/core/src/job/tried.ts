/** What was tried on the model of the cuts, put into the findings of a whole assessment. */
import type { Finding } from '../finding.ts';
import type { Workshop } from '../lathe/schema.ts';
import { triedRemedies } from '../route/tried-remedies.ts';
import type { Assessment } from './assessment.ts';

/**
 * The same assessment; findings of cuts that would sing or give way too far name what was tried on this lathe, best first, in place of
 * what usually helps. Half a second for each such cut the first time: for paper and terminals, not for every keystroke.
 */
export function withTriedRemedies(assessment: Assessment, workshop: Workshop | undefined): Assessment {
  const { route, part } = assessment;
  if (!route || !part || !workshop) return assessment;
  const tried = triedRemedies(route, part, workshop);
  const told = (f: Finding): Finding => ({ ...f, remedies: tried.get(f) ?? f.remedies });
  return {
    ...assessment,
    route: { ...route, findings: route.findings.map(told) },
    findings: assessment.findings.map(told),
  };
}
