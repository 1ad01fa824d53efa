/** What the judgement of a part looks at. */
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
