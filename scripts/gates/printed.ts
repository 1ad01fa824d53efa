/** Results as they are printed in an `@example`, and whether a value agrees with them to the digits shown. */

/** `0.00849`, `{ lower: -0.025, upper: 0 }`, `'H7'`, `[1, 2]`, `undefined`, or `throws DomainError`. */
export type Printed =
  | { readonly kind: 'number'; readonly value: number; readonly half: number; readonly digits: number }
  | { readonly kind: 'exact'; readonly value: unknown }
  | { readonly kind: 'list'; readonly items: readonly Printed[] }
  | { readonly kind: 'record'; readonly fields: ReadonlyMap<string, Printed> };

const token =
  /\s*(?:('(?:[^'\\]|\\.)*'|"(?:[^"\\]|\\.)*")|([-−]?(?:\d[\d_]*\.?\d*|\.\d+)(?:e[-+−]?\d+)?)|([-−]?Infinity|[\p{L}_$][\p{L}\p{N}_$]*)|([[\]{}:,]))/uy;

/** Reads a printed result; undefined when the text is not one. */
export function readPrinted(text: string): Printed | undefined {
  const tokens: RegExpExecArray[] = [];
  token.lastIndex = 0;
  while (token.lastIndex < text.trimEnd().length) {
    const next = token.exec(text);
    if (!next) return undefined;
    tokens.push(next);
  }
  let at = 0;
  const mark = () => tokens[at]?.[4];

  const value = (): Printed | undefined => {
    const [, quoted, digits, word, sign] = tokens[at++] ?? [];
    if (quoted !== undefined) return { kind: 'exact', value: unquote(quoted) };
    if (digits !== undefined) return printedNumber(digits);
    if (word !== undefined) return word in words ? { kind: 'exact', value: words[word] } : undefined;
    if (sign === '[') return list();
    return sign === '{' ? record() : undefined;
  };
  const list = (): Printed | undefined => {
    const items: Printed[] = [];
    while (mark() !== ']') {
      const item = value();
      if (!item) return undefined;
      items.push(item);
      if (mark() === ',') at++;
      else if (mark() !== ']') return undefined;
    }
    at++;
    return { kind: 'list', items };
  };
  const record = (): Printed | undefined => {
    const fields = new Map<string, Printed>();
    while (mark() !== '}') {
      const [, quoted, , word] = tokens[at++] ?? [];
      const name = quoted === undefined ? word : unquote(quoted);
      if (name === undefined || mark() !== ':') return undefined;
      at++;
      const field = value();
      if (!field) return undefined;
      fields.set(name, field);
      if (mark() === ',') at++;
      else if (mark() !== '}') return undefined;
    }
    at++;
    return { kind: 'record', fields };
  };

  const whole = value();
  return whole && at === tokens.length ? whole : undefined;
}

const words: Readonly<Record<string, unknown>> = {
  true: true,
  false: false,
  undefined: undefined,
  null: null,
  Infinity: Number.POSITIVE_INFINITY,
  '-Infinity': Number.NEGATIVE_INFINITY,
};

const unquote = (quoted: string): string => quoted.slice(1, -1).replace(/\\(.)/g, '$1');

function printedNumber(text: string): Printed {
  const plain = text.replace(/−/g, '-').replace(/_/g, '');
  const [mantissa = '', exponent = '0'] = plain.split('e');
  const decimals = mantissa.split('.')[1]?.length ?? 0;
  const digits = mantissa.replace(/[-.]/g, '').replace(/^0+/, '').length;
  return { kind: 'number', value: Number(plain), half: 0.5 * 10 ** (Number(exponent) - decimals), digits };
}

/** What is wrong with a value held against what is printed; undefined when they agree. Records may have further fields. */
export function disagreement(printed: Printed, actual: unknown, at = 'the result'): string | undefined {
  switch (printed.kind) {
    case 'exact':
      return Object.is(actual, printed.value) ? undefined : `${at} is ${show(actual)}, not ${show(printed.value)}`;
    case 'number': {
      if (typeof actual !== 'number') return `${at} is ${show(actual)}, not ${printed.value}`;
      const off = Math.abs(actual - printed.value);
      if (off <= 1e-12 * Math.abs(printed.value)) return undefined;
      if (!(off <= printed.half * (1 + 1e-9))) return `${at} is ${actual}, not ${printed.value}`;
      return printed.digits < 2 ? `${at} is ${actual}: one digit, ${printed.value}, proves too little` : undefined;
    }
    case 'list': {
      if (!Array.isArray(actual)) return `${at} is ${show(actual)}, not a list`;
      if (actual.length !== printed.items.length)
        return `${at} has ${actual.length} items, not ${printed.items.length}`;
      return first(printed.items.map((item, i) => disagreement(item, actual[i], `${at}[${i}]`)));
    }
    case 'record': {
      if (typeof actual !== 'object' || actual === null) return `${at} is ${show(actual)}, not a record`;
      const fields: Readonly<Record<string, unknown>> = { ...actual };
      return first([...printed.fields].map(([name, field]) => disagreement(field, fields[name], `${at}.${name}`)));
    }
  }
}

const first = (says: readonly (string | undefined)[]): string | undefined => says.find((s) => s !== undefined);

const show = (value: unknown): string => (JSON.stringify(value) ?? String(value)).slice(0, 200);
