/** What a piece of help is made of: finished words in order. The screens and `docs/users` place the same ones. */
import type { Scene } from '@sparewright/core/drawing/scene';
import type { SourceKey } from '@sparewright/core/sources/register';
import type { TopicId } from './titles.ts';

export interface Topic {
  /** Its place in addresses: `/help/measure/bores`. */
  readonly id: TopicId;
  /** What it is about, in a sentence or two. */
  readonly lead: string;
  readonly picture?: Scene | undefined;
  /** One after another, where there is an order. */
  readonly steps: readonly string[];
  /** What goes wrong, or what to know besides. */
  readonly beware: readonly string[];
  /** How it is worked out, in plain mathematics. */
  readonly formula?: string | undefined;
  /** What to type, and where. */
  readonly enter?: string | undefined;
  readonly sources: readonly SourceKey[];
}
