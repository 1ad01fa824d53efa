/** What cannot be: features that contradict each other or leave no metal between them. */
import type { Finding } from '../finding.ts';
import type { BuiltOutline } from './outline.ts';
import type { PlacedThread } from './part-result.ts';
import type { PlacedSection } from './place-sections.ts';
import type { Part } from './schema.ts';

export interface ToJudge {
  readonly part: Part;
  readonly sections: readonly PlacedSection[];
  readonly threads: readonly PlacedThread[];
  readonly built: BuiltOutline;
}

export function feasibility(_: ToJudge): Finding[] {
  return [];
}
