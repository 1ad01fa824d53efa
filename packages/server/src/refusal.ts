/** Every refusal has one shape: a message and, for documents, what is wrong where. */
import { DomainError, InputError, show } from '@sparewright/core/errors';
import type { Context } from 'hono';
import type { ContentfulStatusCode } from 'hono/utils/http-status';
import type { Refusal } from './answer.ts';

export function refuse(
  c: Context,
  status: ContentfulStatusCode,
  message: string,
  issues: Refusal['issues'] = [],
): Response {
  return c.json({ message, issues } satisfies Refusal, status);
}

/** A refusal by the core in words; undefined for any other error, which is the program's own fault. */
export function refusalOf(error: unknown): Refusal | undefined {
  if (error instanceof InputError) {
    const issues = error.issues.map((i) => ({
      path: i.path,
      value: show(i.value),
      expected: i.expected,
      example: i.example ?? null,
    }));
    return { message: error.message, issues };
  }
  if (error instanceof DomainError) {
    const issue = { path: error.parameter, value: show(error.value), expected: error.allowed, example: null };
    return { message: error.message, issues: [issue] };
  }
  return undefined;
}
