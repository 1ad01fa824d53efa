/**
 * What was typed and is not yet with the server, in the browser's own store: it outlives a reload and a dead server.
 * One letter a document; a later change takes the place of an earlier one that has not left yet.
 */
import type { Json } from '@sparewright/core/job/merge';

export interface Letter {
  /** The revision that was changed, and its document, so that a conflict can be told without asking. */
  readonly base: number;
  readonly baseDocument: Json;
  readonly document: Json;
  readonly undoes?: number | undefined;
}

const prefix = 'sparewright.outbox.';

export function letterOf(key: string): Letter | undefined {
  const text = localStorage.getItem(prefix + key);
  if (text === null) return undefined;
  try {
    const letter: unknown = JSON.parse(text);
    return isLetter(letter) ? letter : undefined;
  } catch {
    return undefined;
  }
}

export function putLetter(key: string, letter: Letter): void {
  localStorage.setItem(prefix + key, JSON.stringify(letter));
}

export function dropLetter(key: string): void {
  localStorage.removeItem(prefix + key);
}

/** Keys of all documents with something in the outbox. */
export function waiting(): string[] {
  return Object.keys(localStorage)
    .filter((key) => key.startsWith(prefix))
    .map((key) => key.slice(prefix.length));
}

/** Calls back when another window of this browser put something into the outbox, or took it out. */
export function whenOutboxChanges(key: string, tell: () => void): () => void {
  const listen = (event: StorageEvent): void => {
    if (event.key === prefix + key) tell();
  };
  addEventListener('storage', listen);
  return () => removeEventListener('storage', listen);
}

function isLetter(value: unknown): value is Letter {
  return typeof value === 'object' && value !== null && 'base' in value && 'document' in value;
}

/** This window's name for itself: a change that comes back as news is known by it. */
// A page that came over the network by plain HTTP has no crypto.randomUUID.
export const client: string = [...crypto.getRandomValues(new Uint32Array(4))].map((n) => n.toString(16)).join('-');
