/** Reads bodies, refusing what is too large or no such body before anything is computed. */
import { createWriteStream } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { pipeline } from 'node:stream/promises';
import { parseJson, parseWith } from '@sparewright/core/job/read-document';
import type { Context, MiddlewareHandler } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import type { z } from 'zod';
import { refuseDeep } from './deep-json.ts';
import { refuse } from './refusal.ts';

/** A job with every list full is far smaller. */
const largestDocument = 2 ** 20;

const limitDocument = limitBody(largestDocument);

/** For routes that take a document or a request as JSON. */
export const takesJson: MiddlewareHandler = (c, next) => {
  if (/^application\/json\b/i.test(c.req.header('content-type') ?? '')) return limitDocument(c, next);
  return Promise.resolve(refuse(c, 415, 'The body must be JSON, sent as application/json.'));
};

export function limitBody(maxSize: number): MiddlewareHandler {
  const most = maxSize < 2e6 ? `${Math.floor(maxSize / 1024)} kB` : `${Math.floor(maxSize / 1e6)} MB`;
  return bodyLimit({ maxSize, onError: (c) => refuse(c, 413, `The request is too large: at most ${most}.`) });
}

/** @throws InputError when the body is no JSON text, or nested past all sense */
export async function jsonBody(c: Context): Promise<unknown> {
  const text = await c.req.text();
  refuseDeep(text);
  return parseJson(text, 'body');
}

/** @throws InputError when the body is not what the schema says */
export async function bodyAs<S extends z.ZodType>(c: Context, schema: S): Promise<z.output<S>> {
  return parseWith(schema, await jsonBody(c));
}

/** @throws InputError when the query is not what the schema says */
export function queryAs<S extends z.ZodType>(c: Context, schema: S): z.output<S> {
  return parseWith(schema, c.req.query());
}

/** Writes the body into a new file as it comes, so that it need not fit into memory. @returns false when it is too large */
export async function bodyToFile(c: Context, path: string, largest: number): Promise<boolean> {
  const body = c.req.raw.body;
  if (body === null) {
    await writeFile(path, '', { flag: 'wx', mode: 0o600 });
    return true;
  }
  let size = 0;
  async function* counted(): AsyncGenerator<Uint8Array> {
    for await (const piece of piecesOf(body)) {
      size += piece.length;
      if (size > largest) return;
      yield piece;
    }
  }
  await pipeline(counted, createWriteStream(path, { flags: 'wx', mode: 0o600 }));
  return size <= largest;
}

async function* piecesOf(body: ReadableStream<Uint8Array> | null): AsyncGenerator<Uint8Array> {
  const reader = body?.getReader();
  if (!reader) return;
  try {
    for (let piece = await reader.read(); !piece.done; piece = await reader.read()) yield piece.value;
  } finally {
    await reader.cancel();
  }
}
