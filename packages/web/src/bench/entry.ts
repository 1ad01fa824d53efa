/** What is written into the log of the bench. */
import type { LengthUnit } from '@sparewright/core/units/length';

/** What happened, as the hand at the machine says it. */
export type Happened =
  | {
      readonly kind: 'pass';
      /** Dial table and row it was, where there was one. */
      readonly table?: string | undefined;
      readonly row?: string | undefined;
      /** Sizes as typed; bare numbers are in `units`. */
      readonly asked?: string | undefined;
      readonly read: string;
      readonly units: LengthUnit;
    }
  | { readonly kind: 'sound'; readonly sound: 'sang' | 'quiet' }
  | { readonly kind: 'note'; readonly text: string }
  /** Takes back an earlier entry, which stays in the log. */
  | { readonly kind: 'struck'; readonly entry: string };

export type BenchEntry = Happened & {
  readonly id: string;
  readonly job: string;
  /** By the clock of the device it was written on. */
  readonly at: string;
  /** The operation, by the name that stays when others change. */
  readonly of?: string | undefined;
  /** Its number and title, as the route has them that day. */
  readonly operation?: string | undefined;
  readonly title?: string | undefined;
};

/** An entry for now; its id is made here, so that sending it twice keeps it once. */
export function newEntry(
  job: string,
  operation: { readonly id: string; readonly number: string; readonly title: string } | undefined,
  happened: Happened,
): BenchEntry {
  // A page that came over the network by plain HTTP has no crypto.randomUUID.
  const id = [...crypto.getRandomValues(new Uint32Array(4))].map((n) => n.toString(16).padStart(8, '0')).join('');
  const at = new Date().toISOString();
  return {
    ...happened,
    id,
    job,
    at,
    ...(operation ? { of: operation.id, operation: operation.number, title: operation.title } : {}),
  };
}

/** What another program wrote in some other way is left out. */
export function isEntry(value: unknown): value is BenchEntry {
  if (typeof value !== 'object' || value === null) return false;
  const has = (key: string): boolean => key in value && typeof Reflect.get(value, key) === 'string';
  if (!has('id') || !has('at') || !has('kind')) return false;
  switch (Reflect.get(value, 'kind')) {
    case 'pass':
      return has('read') && has('units');
    case 'sound':
      return has('sound');
    case 'note':
      return has('text');
    case 'struck':
      return has('entry');
    default:
      return false;
  }
}
