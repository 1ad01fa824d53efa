/** Answers a stream of questions, one JSON request a line, one JSON answer a line, in the same order. */
import { DomainError, InputError, type InputIssue, show } from '@sparewright/core/errors';
import { parseJson } from '@sparewright/core/job/read-document';
import { ask } from '@sparewright/core/questions/ask';
import { largestFile } from '../read-file.ts';
import { faultWords } from '../report.ts';
import type { Terminal } from '../terminal.ts';

const newline = 0x0a;

/** Ends with its input; no line, however broken, ends it sooner. */
export async function answerLines(terminal: Terminal): Promise<void> {
  let waiting: Uint8Array[] = [];
  let size = 0;
  const take = (): string | undefined => {
    const answer = size > largestFile ? tooLong : answerLine(Buffer.concat(waiting));
    waiting = [];
    size = 0;
    return answer;
  };
  for await (const chunk of terminal.input) {
    const answers: (string | undefined)[] = [];
    let from = 0;
    for (let at = chunk.indexOf(newline); at >= 0; at = chunk.indexOf(newline, from)) {
      keep(chunk.subarray(from, at));
      answers.push(take());
      from = at + 1;
    }
    keep(chunk.subarray(from));
    const text = answers.filter((a) => a !== undefined).join('');
    if (text !== '') await terminal.out(text);
  }
  const last = take();
  if (last !== undefined) await terminal.out(last);

  function keep(piece: Uint8Array): void {
    size += piece.length;
    // What is too long is counted but not kept.
    if (size > largestFile) waiting = [];
    else if (piece.length > 0) waiting.push(piece);
  }
}

/** The answer with its line end; undefined for an empty line. */
export function answerLine(bytes: Uint8Array): string | undefined {
  let name: string | null = null;
  try {
    const text = decode(bytes);
    if (text.trim() === '') return undefined;
    const request = parseJson(text, 'request');
    if (typeof request !== 'object' || request === null || Array.isArray(request)) {
      throw new InputError([
        { path: 'request', value: request, expected: 'an object in braces', example: exampleRequest },
      ]);
    }
    const { ask: asked, ...input }: Record<string, unknown> = { ...request };
    if (typeof asked !== 'string') {
      throw new InputError([
        { path: 'ask', value: asked, expected: 'the name of a question', example: exampleRequest },
      ]);
    }
    name = asked;
    return `${JSON.stringify({ ask: name, ok: true, ...ask(name, input) })}\n`;
  } catch (error) {
    return refusal(name, error);
  }
}

const exampleRequest = '{"ask":"limits","size":"40 f7"}';

function decode(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new InputError([{ path: 'request', value: 'bytes that are no UTF-8 text', expected: 'UTF-8 text' }]);
  }
}

function refusal(name: string | null, error: unknown): string {
  const known = error instanceof InputError || error instanceof DomainError;
  const message = known ? error.message : faultWords(error);
  return `${JSON.stringify({ ask: name, ok: false, error: { message, issues: issuesOf(error) } })}\n`;
}

const tooLong = refusal(
  null,
  new InputError([
    { path: 'request', value: 'a longer line', expected: `a line of at most ${largestFile / 1024 / 1024} MB` },
  ]),
);

function issuesOf(error: unknown): readonly InputIssue[] {
  if (error instanceof DomainError) {
    return [{ path: error.parameter, value: plain(error.value), expected: error.allowed }];
  }
  return error instanceof InputError ? error.issues.map((i) => ({ ...i, value: plain(i.value) })) : [];
}

/** A value as it can be sent back: short, and nothing that JSON does not know. */
function plain(value: unknown): unknown {
  if (value === undefined || value === null) return null;
  if (typeof value === 'boolean' || (typeof value === 'number' && Number.isFinite(value))) return value;
  return typeof value === 'string' && value.length <= 200 ? value : show(value);
}
