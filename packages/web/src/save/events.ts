/** News from the server: what was saved elsewhere. One connection for the whole page. */

export type News =
  | { readonly kind: 'saved'; readonly id: string; readonly revision: number; readonly client?: string | undefined }
  | { readonly kind: 'created' | 'removed'; readonly id: string }
  | { readonly kind: 'workshop'; readonly revision: number; readonly client?: string | undefined }
  /** Something was written into the log of a job's bench. */
  | { readonly kind: 'bench'; readonly job: string }
  /** The connection is there again: anything may have happened. */
  | { readonly kind: 'back' };

type Listener = (news: News) => void;

const listeners = new Set<Listener>();
let source: EventSource | undefined;

export function whenNews(tell: Listener): () => void {
  listeners.add(tell);
  source ??= connect();
  return () => {
    listeners.delete(tell);
    if (listeners.size > 0) return;
    source?.close();
    source = undefined;
  };
}

function connect(): EventSource {
  const events = new EventSource('/api/events');
  const all = (news: News): void => {
    for (const listener of listeners) listener(news);
  };
  for (const kind of ['saved', 'created', 'removed', 'workshop', 'bench'])
    events.addEventListener(kind, (event) => {
      const data: unknown = event instanceof MessageEvent ? JSON.parse(String(event.data)) : undefined;
      const news = { kind, ...(typeof data === 'object' ? data : {}) };
      if (isNews(news)) all(news);
    });
  // More happened than the server could tell: the same as having been away.
  events.addEventListener('missed', () => all({ kind: 'back' }));
  let wasAway = false;
  events.addEventListener('error', () => {
    wasAway = true;
  });
  events.addEventListener('open', () => {
    if (wasAway) all({ kind: 'back' });
    wasAway = false;
  });
  return events;
}

function isNews(value: { kind: string; id?: unknown; revision?: unknown; job?: unknown }): value is News {
  if (value.kind === 'bench') return typeof value.job === 'string';
  return value.kind === 'workshop' ? typeof value.revision === 'number' : typeof value.id === 'string';
}
