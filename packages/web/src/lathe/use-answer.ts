/** An answer of the register about the workshop as it stands, asked anew when what is asked has changed. */
import type { Json } from '@sparewright/core/job/merge';
import type { stiffnessBudgetQuestion } from '@sparewright/core/lathe/budget-question';
import type { cutOnLathe } from '@sparewright/core/lathe/cut-on-lathe';
import type { depthAtSpeeds } from '@sparewright/core/lathe/depth-question';
import type { remediesForJob } from '@sparewright/core/lathe/job-help';
import type { latheKnown } from '@sparewright/core/lathe/lathe-known';
import type { remediesOnLathe } from '@sparewright/core/lathe/what-would-help';
import { useEffect, useState } from 'react';
import { askQuestion } from '../worker/client.ts';
import { knownWorkshop, whenWorkshopChanges } from '../worker/known-workshop.ts';

interface Answers {
  'cut-on-lathe': ReturnType<typeof cutOnLathe.answer>;
  'depth-at-speeds': ReturnType<typeof depthAtSpeeds.answer>;
  'what-would-help': ReturnType<typeof remediesOnLathe.answer>;
  'what-would-help-job': ReturnType<typeof remediesForJob.answer>;
  'lathe-knowledge': ReturnType<typeof latheKnown.answer>;
  'stiffness-budget': ReturnType<typeof stiffnessBudgetQuestion.answer>;
}

export interface Asked<T> {
  /** The last one there was, while a new one is on its way or was refused. */
  readonly answer: T | undefined;
  /** Why the last asking was refused; empty when it was not. */
  readonly trouble: string;
}

/** Typing is over for the moment [ms]. */
const pause = 250;

/**
 * @param input  plain data; nothing is asked while it is undefined
 */
export function useAnswer<N extends keyof Answers>(name: N, input: object | undefined): Asked<Answers[N]> {
  const [asked, setAsked] = useState<Asked<Answers[N]>>({ answer: undefined, trouble: '' });
  // What is asked is plain data, made anew at every drawing of the page; its text tells whether it is the same.
  const text = input === undefined ? '' : JSON.stringify(input);
  useEffect(() => {
    if (text === '') return;
    let wanted = true;
    const wait = setTimeout(() => {
      askQuestion(name, JSON.parse(text)).then(
        ({ answer }) => {
          // The worker has held the answer against the schema of its question.
          if (wanted) setAsked({ answer: answer as Answers[N], trouble: '' });
        },
        (error: unknown) => {
          if (wanted) setAsked(({ answer }) => ({ answer, trouble: reasonOf(error) }));
        },
      );
    }, pause);
    return () => {
      wanted = false;
      clearTimeout(wait);
    };
  }, [name, text]);
  return asked;
}

function reasonOf(error: unknown): string {
  return error instanceof Error ? error.message : 'This could not be worked out.';
}

/** The workshop as last saved; undefined until it is known. */
export function useKnownWorkshop(): Json | undefined {
  const [workshop, setWorkshop] = useState<Json>();
  useEffect(() => {
    let wanted = true;
    const tell = (document: Json): void => {
      if (wanted) setWorkshop(document);
    };
    void knownWorkshop().then(tell);
    const stop = whenWorkshopChanges(tell);
    return () => {
      wanted = false;
      stop();
    };
  }, []);
  return workshop ?? undefined;
}
