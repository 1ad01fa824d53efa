/** Puts typed values into a job document, leaving the document itself as it was. */

type Path = readonly (string | number)[];

export interface TypedValue {
  readonly path: Path;
  readonly text: string;
}

export function withValues(document: unknown, values: readonly TypedValue[]): unknown {
  return values.reduce<unknown>((changed, { path, text }) => withValue(changed, path, text), document);
}

function withValue(node: unknown, [step, ...rest]: Path, text: string): unknown {
  if (step === undefined) return text;
  if (Array.isArray(node)) return node.map((entry, i) => (i === step ? withValue(entry, rest, text) : entry));
  if (typeof node !== 'object' || node === null) return node;
  return { ...node, [step]: withValue(Reflect.get(node, step), rest, text) };
}

/** `part.outside[2].diameter`, as the server names places in its refusals. */
export function pathText(path: Path): string {
  return path
    .map((step) => (typeof step === 'number' ? `[${step}]` : `.${step}`))
    .join('')
    .replace(/^\./, '');
}
