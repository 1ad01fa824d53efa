/** Saving, the same for jobs and the workshop: merged with what others saved since, or answered with both sides. */
import { InputError } from '@sparewright/core/errors';
import type { Revision, Saved, Stored } from '@sparewright/store/history';
import type { Context } from 'hono';
import { z } from 'zod';

/** Names the screen that saves: it knows its own changes by that. */
export const clientField = z.string().min(1).max(80);

export const saveSchema = z.strictObject({
  baseRevision: z.int().min(0),
  document: z.unknown().optional(),
  client: clientField,
  undoes: z.int().min(1).optional(),
});

export const goBackSchema = z.strictObject({ revision: z.int().min(1), client: clientField.optional() });

/** What lies there when a screen saves upon a revision that is not there: it comes from before a restore. */
export function uponNothing(latest: Stored): Saved {
  return { kind: 'conflict', revision: latest.number, theirs: latest.document, paths: [''], conflicts: [] };
}

export function savedAnswer(c: Context, saved: Saved): Response {
  if (saved.kind !== 'conflict') return c.json(saved);
  const { kind, revision, theirs, paths } = saved;
  const message = 'The same was changed elsewhere meanwhile; nothing was saved. Choose between the two.';
  return c.json({ kind, revision, theirs, paths, message, issues: [] }, 409);
}

export function revisionRow({ number, saved, author, undoes }: Revision) {
  return {
    revision: number,
    at: saved,
    ...(author === undefined ? {} : { by: author }),
    ...(undoes === undefined ? {} : { undoes, note: `takes back revision ${undoes}` }),
  };
}

/** The number of a revision in an address. @throws InputError when it is no number */
export function revisionIn(c: Context): number {
  const typed = c.req.param('revision') ?? '';
  if (/^\d{1,9}$/.test(typed)) return Number(typed);
  throw new InputError([{ path: 'revision', value: typed, expected: 'the number of a revision', example: '1' }]);
}
