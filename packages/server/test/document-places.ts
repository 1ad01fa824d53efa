/** Every place in a document, and the document with something else there: for tests that change one thing at a time. */

export function placesIn(node: unknown, path: readonly string[] = []): string[][] {
  if (typeof node !== 'object' || node === null) return [[...path]];
  return [[...path], ...Object.entries(node).flatMap(([key, value]) => placesIn(value, [...path, key]))];
}

export function replaced(node: unknown, [step, ...rest]: readonly string[], by: unknown): unknown {
  if (step === undefined) return by;
  if (typeof node !== 'object' || node === null) return node;
  const put = (value: unknown): unknown => replaced(value, rest, by);
  if (Array.isArray(node)) return node.map((entry, i) => (String(i) === step ? put(entry) : entry));
  return Object.fromEntries(Object.entries(node).map(([key, value]) => [key, key === step ? put(value) : value]));
}

export function valueAt(node: unknown, path: readonly string[]): unknown {
  return path.reduce<unknown>((at, step) => (typeof at === 'object' && at !== null ? Reflect.get(at, step) : at), node);
}
