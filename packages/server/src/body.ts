/** Reads a JSON body, refusing what is none before anything is computed. */
import { InputError } from '@sparewright/core/errors';
import { parseJson } from '@sparewright/core/job/read-document';
import type { Context } from 'hono';

/** No document is nested nearly as deep. */
const deepest = 64;

/** @throws InputError when the body is no JSON text, or nested past all sense */
export async function jsonBody(c: Context): Promise<unknown> {
  const text = await c.req.text();
  if (depthOf(text) > deepest)
    throw new InputError([
      { path: 'body', value: 'text', expected: `lists and objects nested at most ${deepest} deep` },
    ]);
  return parseJson(text, 'body');
}

/** How deep brackets are nested; counted on the text, because a parsed value would already be too deep to walk. */
function depthOf(text: string): number {
  let depth = 0;
  let most = 0;
  for (const [sign] of text.matchAll(/"(?:[^"\\]|\\.)*"|[[\]{}]/gs)) {
    if (sign === '[' || sign === '{') depth += 1;
    else if (sign === ']' || sign === '}') depth -= 1;
    most = Math.max(most, depth);
  }
  return most;
}
