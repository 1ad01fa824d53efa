/** Every refusal has one shape: a message and, for documents, what is wrong where. */
import type { Refusal } from '@sparewright/output/present/job-view';
import { presentRefusal } from '@sparewright/output/present/refusal';
import { StoreError, type StoreReason } from '@sparewright/store/store-error';
import type { Context } from 'hono';
import type { ContentfulStatusCode } from 'hono/utils/http-status';

export function refuse(
  c: Context,
  status: ContentfulStatusCode,
  message: string,
  issues: Refusal['issues'] = [],
): Response {
  return c.json({ message, issues } satisfies Refusal, status);
}

const statusOf: Readonly<Record<StoreReason, ContentfulStatusCode>> = {
  missing: 404,
  taken: 409,
  'in the bin': 409,
  newer: 422,
  'not kept': 415,
  damaged: 500,
  busy: 503,
  disk: 507,
};

/** An error in words, with its status; undefined for one that is the program's own fault. */
export function refusalOf(error: unknown): { status: ContentfulStatusCode; refusal: Refusal } | undefined {
  const refusal = presentRefusal(error);
  if (refusal) return { status: 422, refusal };
  if (error instanceof StoreError)
    return { status: statusOf[error.reason], refusal: { message: error.message, issues: [] } };
  return undefined;
}
