/**
 * The two ways the core refuses: a value outside a formula's validity, and a document that does not say what it must.
 */

/** A number lies outside what a formula or table covers. Says which limit, and what would do. */
export class DomainError extends Error {
  readonly parameter: string;
  readonly value: unknown;
  readonly allowed: string;

  constructor(parameter: string, value: unknown, allowed: string) {
    super(`${parameter} is ${show(value)}; expected ${allowed}`);
    this.name = 'DomainError';
    this.parameter = parameter;
    this.value = value;
    this.allowed = allowed;
  }
}

/** One thing wrong with a document or a request. */
export interface InputIssue {
  /** Place in the document, `part.outside[2].diameter`; empty for the document itself. */
  readonly path: string;
  readonly value: unknown;
  /** What was expected there, in words. */
  readonly expected: string;
  /** Something that would be accepted there. */
  readonly example?: string | undefined;
}

/** A document or request was refused at the edge; nothing was computed. */
export class InputError extends Error {
  readonly issues: readonly InputIssue[];

  constructor(issues: readonly InputIssue[]) {
    super(issues.map(sentence).join('\n'));
    this.name = 'InputError';
    this.issues = issues;
  }
}

/** The one sentence in which a refused value is reported. */
export function sentence(issue: InputIssue): string {
  const example = issue.example === undefined ? '' : `, for example ${issue.example}`;
  return `${issue.path === '' ? 'document' : issue.path}: got ${show(issue.value)}, expected ${issue.expected}${example}`;
}

/** A value as it is quoted in a message: one line, at most 60 characters. */
export function show(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (typeof value === 'number') return String(value);
  const text = written(value);
  return text.length > 60 ? `${text.slice(0, 57)}…` : text;
}

function written(value: unknown): string {
  try {
    return JSON.stringify(value) ?? String(value);
  } catch {
    // Nested too deeply to be written down.
    return 'something that cannot be shown';
  }
}
