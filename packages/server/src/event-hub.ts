/** What happens to the data, told to every screen that listens. */
import { randomUUID } from 'node:crypto';

export type Happening =
  | { readonly kind: 'saved'; readonly id: string; readonly revision: number; readonly client: string | undefined }
  | { readonly kind: 'created' | 'removed'; readonly id: string }
  | { readonly kind: 'workshop'; readonly revision: number; readonly client: string | undefined }
  | { readonly kind: 'bench'; readonly job: string }
  /** More happened than can be told: ask for everything anew. */
  | { readonly kind: 'missed' };

export interface Told {
  /** Sent back as `Last-Event-ID` by a screen that was cut off. */
  readonly id: string;
  readonly kind: Happening['kind'];
  readonly data: string;
}

export interface Listener {
  readonly hear: (told: Told) => void;
  /** The server stops. */
  readonly end: () => void;
}

export interface EventHub {
  tell(happening: Happening): void;
  isFull(): boolean;
  /** The event last told, so that a screen cut off before it heard any knows what it missed. */
  lastId(): string;
  /** Hears what came after the event last heard, then what comes. @returns a function that ends it */
  listen(listener: Listener, lastHeard?: string | undefined): () => void;
  /** Sends every screen away, to come back and ask for everything anew: after a restore. */
  startAnew(): void;
  close(): void;
}

/** A screen that was away for longer asks anew. */
const mostRemembered = 500;
const mostListeners = 200;

export function eventHub(): EventHub {
  /** Numbers of an earlier run of the server mean nothing in this one. */
  let run = randomUUID().slice(0, 8);
  const remembered: Told[] = [];
  const listeners = new Set<Listener>();
  let count = 0;

  const told = ({ kind, ...rest }: Happening): Told => ({ id: `${run}-${count}`, kind, data: JSON.stringify(rest) });

  function missedSince(lastHeard: string): readonly Told[] {
    const heard = lastHeard.startsWith(`${run}-`) ? Number(lastHeard.slice(run.length + 1)) : Number.NaN;
    const missing = count - heard;
    if (!(missing >= 0 && missing <= remembered.length)) return [told({ kind: 'missed' })];
    return remembered.slice(remembered.length - missing);
  }

  function close(): void {
    for (const { end } of listeners) end();
    listeners.clear();
  }

  return {
    tell(happening) {
      count += 1;
      const event = told(happening);
      remembered.push(event);
      if (remembered.length > mostRemembered) remembered.shift();
      for (const { hear } of listeners) hear(event);
    },
    lastId: () => `${run}-${count}`,
    isFull: () => listeners.size >= mostListeners,
    listen(listener, lastHeard) {
      if (lastHeard !== undefined) for (const event of missedSince(lastHeard)) listener.hear(event);
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
    startAnew() {
      run = randomUUID().slice(0, 8);
      remembered.length = 0;
      close();
    },
    close,
  };
}
