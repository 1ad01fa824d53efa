/**
 * The shape of a question: one thing that a person, a screen, the HTTP API or a test can ask for.
 * Questions stand beside the code that answers them; `questions/registry.ts` lists them all.
 */
import type { z } from 'zod';
import type { SourceKey } from './sources/register.ts';

export interface Question<I extends z.ZodType = z.ZodType, O extends z.ZodType = z.ZodType> {
  /** kebab-case, as typed on the command line. */
  readonly name: string;
  /** What is asked, one sentence in the words of the trade. */
  readonly asks: string;
  /** What is put in. Each field carries `.describe()` with its unit. */
  readonly input: I;
  /** What comes out. Each field carries `.describe()` with its unit. */
  readonly output: O;
  /** Where the answer comes from. */
  readonly sources: readonly SourceKey[];
  /** A real case that documents and tests the question; `gives` is a part of the answer known from outside. */
  readonly example: { readonly input: z.input<I>; readonly gives: unknown; readonly from: string };
  answer(input: z.output<I>): z.output<O>;
}

/** Types a question from its schemas. */
export function defineQuestion<I extends z.ZodType, O extends z.ZodType>(question: Question<I, O>): Question<I, O> {
  return question;
}
