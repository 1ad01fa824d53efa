/** Remembers the last answer of a pure function, as long as its arguments are equal in content. */

export type Memo<F extends (...args: never[]) => unknown> = (...args: Parameters<F>) => ReturnType<F>;

export function memo<A extends unknown[], R>(compute: (...args: A) => R): (...args: A) => R {
  let last: { readonly args: A; readonly result: R } | undefined;
  return (...args) => {
    if (last && args.every((arg, i) => same(arg, last?.args[i]))) return last.result;
    last = { args, result: compute(...args) };
    return last.result;
  };
}

/** Equal in content: plain data only, compared field by field. */
export function same(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const keys = Object.keys(a);
  return (
    keys.length === Object.keys(b).length &&
    keys.every((key) => key in b && same(Reflect.get(a, key), Reflect.get(b, key)))
  );
}
