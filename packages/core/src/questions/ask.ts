/** Asks one question by name: parses what is put in, checks what comes out, says where it comes from. */
import { InputError } from '../errors.ts';
import { parseWith } from '../job/read-document.ts';
import type { Question } from '../question.ts';
import { type SourceKey, source, sourceKeys } from '../sources/register.ts';
import type { Source } from '../sources/source.ts';
import { nearestName } from './nearest-name.ts';
import { nonFiniteAt } from './non-finite.ts';
import { questions } from './registry.ts';

export interface Reference {
  readonly key: SourceKey;
  readonly title: string;
  readonly kind: Source['kind'];
}

export interface Answered {
  readonly answer: unknown;
  /** Those of this answer where they depend on it, else those of the question. */
  readonly sources: readonly Reference[];
}

const byName = new Map(questions.map((q) => [q.name, q]));
const keys = new Map(sourceKeys.map((key): [string, SourceKey] => [key, key]));

/**
 * The question of that name.
 *
 * @throws InputError naming the nearest when there is none
 */
export function questionNamed(name: string): Question {
  const found = byName.get(name);
  if (found) return found;
  const nearest = nearestName(name, [...byName.keys()]);
  throw new InputError([{ path: 'ask', value: name, expected: 'the name of a question', example: nearest }]);
}

/**
 * Answers one question.
 *
 * @throws InputError or DomainError when what was put in will not do; any other error is the program's own fault
 */
export function ask(name: string, input: unknown): Answered {
  return answerTo(questionNamed(name), input);
}

/** As {@link ask}, for a question in hand. */
export function answerTo(question: Question, input: unknown): Answered {
  const answer = checked(question, question.answer(parsed(question, input)));
  return { answer, sources: referencesOf(question, answer) };
}

/** A refused field shows what the question's own example has there. */
function parsed(question: Question, input: unknown): unknown {
  try {
    return parseWith(question.input, input);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    const { input: example } = question.example;
    throw new InputError(
      error.issues.map((issue) => ({ ...issue, example: issue.example ?? exampleAt(example, issue.path) })),
    );
  }
}

/** The example's value of a field, if it is short enough to read. */
function exampleAt(example: unknown, field: string): string | undefined {
  if (typeof example !== 'object' || example === null || !Object.hasOwn(example, field)) return undefined;
  const text = JSON.stringify(Reflect.get(example, field));
  return text.length <= 60 ? text : undefined;
}

/** An answer that breaks its own promise is a fault of the program, and is not shown. */
function checked(question: Question, answer: unknown): unknown {
  const at = nonFiniteAt(answer);
  if (at !== undefined) throw new Error(`question ${question.name} answered no number at ${at}`);
  const result = question.output.safeParse(answer);
  if (result.success) return result.data;
  const [first] = result.error.issues;
  throw new Error(
    `question ${question.name} answered otherwise than promised at ${first?.path.join('.')}: ${first?.message}`,
  );
}

function referencesOf(question: Question, answer: unknown): Reference[] {
  const named = typeof answer === 'object' && answer !== null && 'sources' in answer ? answer.sources : undefined;
  const own = Array.isArray(named) ? named.flatMap((key) => keys.get(String(key)) ?? []) : question.sources;
  return [...new Set(own)].map((key) => ({ key, title: source(key).title, kind: source(key).kind }));
}
