/** The parts of a package.json or its lock that the gates look at. */
export interface Manifest {
  readonly dependencies?: Readonly<Record<string, string>>;
  readonly packages?: Readonly<Record<string, { readonly resolved?: string }>>;
}

export function parseJson(text: string): Manifest {
  return JSON.parse(text);
}
