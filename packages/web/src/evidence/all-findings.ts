/** Everything found, the contradictions among the readings with the rest, worst first. */
import type { FindingView, JobPage } from '@sparewright/output/present/job-view';

const rank = { stop: 0, caution: 1, note: 2 } as const;

export function allFindings({ findings, recovered }: Pick<JobPage, 'findings' | 'recovered'>): FindingView[] {
  const said = new Set(findings.map((f) => f.says));
  const ofReadings = recovered ? [...recovered.conflicts, ...recovered.features.flatMap((f) => f.conflicts)] : [];
  const fresh = ofReadings.filter((f) => !said.has(f.says));
  return [...findings, ...fresh].toSorted((a, b) => rank[a.level] - rank[b.level]);
}
