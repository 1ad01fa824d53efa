/** Documents and files that tests send, and what is expected of every answer. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect } from 'vitest';
import { places } from './places.ts';

type Answer = ReturnType<typeof JSON.parse>;

/** The JSON of an answer with that status; a refusal must say something. */
export async function answerOf(response: Response, status = 200): Promise<Answer> {
  const text = await response.text();
  expect(response.status, text.slice(0, 300)).toBe(status);
  const answer: Answer = JSON.parse(text);
  if (status >= 400) expect(answer).toMatchObject({ message: expect.stringMatching(/\S/), issues: expect.any(Array) });
  return answer;
}

/** The smallest job, with some of its fields changed. */
export function jobDocument(changes: object = {}): object {
  return { sparewright: 'job', version: 1, title: 'A pin', units: 'mm', hazard: 'ordinary', ...changes };
}

export function exampleDocument(file: string): Answer {
  return JSON.parse(readFileSync(join(places.examples, file), 'utf8'));
}

/** A file that begins as a picture does, different for each number. */
export function picture(number = 0): Uint8Array<ArrayBuffer> {
  return new Uint8Array(Buffer.concat([Buffer.from('89504e470d0a1a0a', 'hex'), Buffer.from(`shade ${number}`)]));
}
