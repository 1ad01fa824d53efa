/** Errors that are no fault of the program, as every shell tells them: a message and, for documents, what is wrong where. */
import { DomainError, InputError, show } from '@sparewright/core/errors';
import type { Refusal } from './job-view.ts';

/** Undefined for an error that is the program's own fault. */
export function presentRefusal(error: unknown): Refusal | undefined {
  if (error instanceof InputError) {
    const issues = error.issues.map(({ path, value, expected, example = null }) => ({
      path,
      value: show(value),
      expected,
      example,
    }));
    return { message: error.message, issues };
  }
  if (error instanceof DomainError) {
    const { parameter, value, allowed } = error;
    return {
      message: error.message,
      issues: [{ path: parameter, value: show(value), expected: allowed, example: null }],
    };
  }
  return undefined;
}
