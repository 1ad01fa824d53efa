/** What the page and its workers say to each other. Plain data only, for it is copied on the way. */
import type { Json } from '@sparewright/core/job/merge';
import type { PageParts } from '@sparewright/output/page/job-page';
import type { Refusal } from '@sparewright/output/present/job-view';

/** A task by its number. A later task of the same kind may put it off. */
export type Task =
  /** The page of a job. What `desk` was told already and has not changed is not told again. */
  | { readonly kind: 'assess'; readonly desk: number; readonly document: Json }
  /** What the readings of a job say the part was meant to be. */
  | { readonly kind: 'recover'; readonly document: Json }
  /** One of the questions that can be asked. */
  | { readonly kind: 'ask'; readonly name: string; readonly input: unknown };

export type ToWorker =
  | { readonly say: 'do'; readonly number: number; readonly task: Task }
  | { readonly say: 'leave'; readonly number: number }
  /** Null while there is none. */
  | { readonly say: 'workshop'; readonly document: Json };

export type FromWorker =
  | { readonly say: 'parts'; readonly number: number; readonly parts: PageParts }
  /** It was left, and no further part of it will come. */
  | { readonly say: 'left'; readonly number: number }
  | { readonly say: 'done'; readonly number: number; readonly answer: unknown }
  | { readonly say: 'refused'; readonly number: number; readonly refusal: Refusal }
  /** The program's own fault. */
  | { readonly say: 'failed'; readonly number: number; readonly message: string };
