/** Short cuts for findings of the part stage. */
import type { Finding } from '../finding.ts';

/** A number as it is shown in a finding: to a tenth of a micrometre. */
export const round = (value: number): number => Math.round(value * 1e4) / 1e4;

export function stop(
  id: string,
  at: string,
  says: string,
  because: Finding['because'],
  remedies: readonly string[],
): Finding {
  return { id, level: 'stop', stage: 'part', at, says, because, remedies };
}
