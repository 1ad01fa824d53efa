/**
 * Reads job and workshop documents: anything that is not one is refused with place, value, what was expected and an example.
 */
import type { z } from 'zod';
import { InputError, type InputIssue } from '../errors.ts';
import { type Workshop, workshopSchema } from '../lathe/schema.ts';
import type { LengthUnit } from '../units/length.ts';
import { migrate } from './migrate.ts';
import { type Job, jobSchema } from './schema.ts';

/** A job from parsed JSON of any earlier version. */
export function readJob(document: unknown): Job {
  return readWith(jobSchema, 'job', document);
}

/** A workshop from parsed JSON of any earlier version. */
export function readWorkshop(document: unknown): Workshop {
  return readWith(workshopSchema, 'workshop', document);
}

/** JSON text to a value, refusing with the line where it breaks. */
export function parseJson(text: string, name: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    const reason = error instanceof Error ? error.message.replace(/\s+/g, ' ') : 'broken';
    const at = /position (\d+)/.exec(reason)?.[1];
    const line = at === undefined ? '' : `, line ${text.slice(0, Number(at)).split('\n').length}`;
    const broken = at === undefined ? text : text.slice(Math.max(0, Number(at) - 20), Number(at) + 20);
    const why = reason.replace(/ in JSON at position.*| is not valid JSON/, '').slice(0, 80);
    throw new InputError([{ path: name, value: broken.trim().slice(0, 60), expected: `JSON text (${why}${line})` }]);
  }
}

function readWith<S extends z.ZodType>(
  schemaFor: (unit: LengthUnit) => S,
  kind: 'job' | 'workshop',
  raw: unknown,
): z.output<S> {
  const document = migrate(kind, raw);
  const unit = unitOf(document);
  return parseWith(schemaFor(unit), document);
}

function unitOf(document: unknown): LengthUnit {
  const unit = typeof document === 'object' && document !== null && 'units' in document ? document.units : undefined;
  return unit === 'in' ? 'in' : 'mm';
}

/** Applies a schema; a refusal becomes an InputError in the project's own words. */
export function parseWith<S extends z.ZodType>(schema: S, value: unknown): z.output<S> {
  const result = schema.safeParse(value, { reportInput: true });
  if (result.success) return result.data;
  throw new InputError(result.error.issues.slice(0, 20).map((issue) => inWords(issue, value)));
}

type Issue = z.core.$ZodIssue;

function inWords(issue: Issue, document: unknown): InputIssue {
  const path = pathText(issue.path);
  const value = valueAt(document, issue.path);
  const [expected, example] = expectation(issue).split(', for example ');
  return {
    path,
    value: typeof value === 'object' && value !== null ? summary(value) : value,
    expected: expected ?? '',
    example,
  };
}

function summary(value: object): string {
  return Array.isArray(value)
    ? `a list of ${value.length}`
    : `an object with ${Object.keys(value).slice(0, 4).join(', ') || 'nothing'}`;
}

function expectation(issue: Issue): string {
  switch (issue.code) {
    case 'invalid_type':
      return issue.message.startsWith('Invalid input') ? `${article(issue.expected)}` : issue.message;
    case 'unrecognized_keys':
      return `no field named ${issue.keys.map((k) => k.slice(0, 40)).join(', ')}`;
    case 'invalid_value':
      return `one of ${issue.values.map((v) => JSON.stringify(v)).join(', ')}`;
    case 'invalid_union':
      return unionExpectation(issue);
    case 'too_small':
      return issue.message.startsWith('Too small')
        ? `at least ${issue.minimum} ${issue.origin === 'array' ? 'entries' : ''}`.trim()
        : issue.message;
    case 'too_big':
      return issue.message.startsWith('Too big')
        ? `at most ${issue.maximum} ${issue.origin === 'array' ? 'entries' : issue.origin === 'string' ? 'characters' : ''}`.trim()
        : issue.message;
    default:
      return issue.message;
  }
}

function unionExpectation(issue: Extract<Issue, { code: 'invalid_union' }>): string {
  if (!issue.message.startsWith('Invalid input')) return issue.message;
  const options = 'options' in issue && Array.isArray(issue.options) ? issue.options : undefined;
  if (options) return `a field kind, one of ${options.map((o) => JSON.stringify(o)).join(', ')}`;
  const nested = issue.errors.flat().find((e) => e.code === 'custom' || !e.message.startsWith('Invalid input'));
  if (nested) return expectation(nested);
  const values = issue.errors
    .flat()
    .flatMap((e) => (e.code === 'invalid_value' ? e.values.map((v) => JSON.stringify(v)) : []));
  if (values.length > 0) return `one of ${values.join(', ')}`;
  const kinds = issue.errors.flatMap(([first]) => (first?.code === 'invalid_type' ? [article(first.expected)] : []));
  return kinds.length > 0 ? [...new Set(kinds)].join(' or ') : 'another kind of value';
}

function article(type: string): string {
  const words: Record<string, string> = {
    object: 'an object in braces',
    array: 'a list in brackets',
    string: 'text in quotes',
    number: 'a number',
    int: 'a whole number',
    boolean: 'true or false',
  };
  return words[type] ?? type;
}

/** `part.outside[2].diameter` */
export function pathText(path: readonly PropertyKey[]): string {
  return path
    .map((step) => (typeof step === 'number' ? `[${step}]` : `.${String(step)}`))
    .join('')
    .replace(/^\./, '');
}

function valueAt(document: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>(
    (value, step) => (typeof value === 'object' && value !== null ? Reflect.get(value, step) : undefined),
    document,
  );
}
