/** What a desk shows of its document, what can be done at it, and what it is opened with. */
import type { Json } from '@sparewright/core/job/merge';
import type { News } from './events.ts';
import type { Difference, Side } from './join.ts';
import type { Steps } from './steps.ts';

export type Standing = 'opening' | 'saved' | 'merged' | 'sending' | 'kept here' | 'refused' | 'conflict';

export interface Disagreement {
  readonly revision: number;
  readonly theirs: Json;
  readonly differences: readonly Difference[];
}

export interface DeskState<View> {
  /** As typed last; undefined until it is there. */
  readonly document: Json | undefined;
  /** What was made of the last document that could be understood. */
  readonly view: View | undefined;
  readonly revision: number;
  /** Why a value is not taken, by its place: `part.outside[2].diameter`. */
  readonly refusals: Readonly<Record<string, string>>;
  /** Something that is not about one value. */
  readonly trouble: string;
  readonly standing: Standing;
  /** The view is behind what is typed, for longer than goes unnoticed. */
  readonly busy: boolean;
  readonly disagreement: Disagreement | undefined;
  readonly steps: Steps;
}

export interface Desk {
  edit(change: (document: Json) => Json): void;
  undo(): void;
  redo(): void;
  /** Which side to keep at each place where both had changed the same. */
  settle(choice: (path: string) => Side): void;
  /** Asks anew: something it depends on has changed. */
  refresh(): void;
  close(): void;
}

export interface DeskOptions<View> {
  /** Name in the outbox. */
  readonly key: string;
  readonly address: string;
  /** May tell of views as they come, the last of them also after it has ended. */
  readonly check: (document: Json, signal: AbortSignal, tell: (view: View) => void) => Promise<View>;
  /** Whether the news is about this document, saved by someone else. */
  readonly concerns: (news: News) => 'saved' | undefined;
  /** Calls back when the view must be made anew, though the document is the same; answers how to stop. */
  readonly whenStale?: ((look: () => void) => () => void) | undefined;
  readonly tell: (state: DeskState<View>) => void;
}

/** Always the same, so that who shows it sees that nothing has changed. */
export const noRefusals: DeskState<unknown>['refusals'] = {};

export function unopened<View>(): DeskState<View> {
  return {
    document: undefined,
    view: undefined,
    revision: 0,
    refusals: noRefusals,
    trouble: '',
    standing: 'opening',
    busy: false,
    disagreement: undefined,
    steps: { undo: undefined, redo: undefined },
  };
}
