/** Entries that the server does not have yet, in the browser's own store: they outlive a reload and a lost network. */
import { type BenchEntry, isEntry } from './entry.ts';

const prefix = 'sparewright.bench.';
const key = (job: string): string => prefix + job;

/** Jobs of which something waits. */
export function jobsWaiting(): string[] {
  return Object.keys(localStorage)
    .filter((name) => name.startsWith(prefix))
    .map((name) => name.slice(prefix.length));
}

export function unsent(job: string): readonly BenchEntry[] {
  try {
    const held: unknown = JSON.parse(localStorage.getItem(key(job)) ?? '[]');
    return Array.isArray(held) ? held.filter(isEntry) : [];
  } catch {
    return [];
  }
}

export function hold(job: string, entry: BenchEntry): void {
  localStorage.setItem(key(job), JSON.stringify([...unsent(job), entry]));
}

/** Lets go of what has arrived. */
export function release(job: string, ids: readonly string[]): void {
  const left = unsent(job).filter(({ id }) => !ids.includes(id));
  if (left.length === 0) localStorage.removeItem(key(job));
  else localStorage.setItem(key(job), JSON.stringify(left));
}
