/** The workshop as last heard of, for the workers: asked for once, and anew with every word of a change. */
import type { Json } from '@sparewright/core/job/merge';
import { readStored, workshopAddress } from '../ask-server.ts';
import { whenNews } from '../save/events.ts';

type Listener = (document: Json) => void;

const listeners = new Set<Listener>();
let known: Json | undefined;
let asking: Promise<void> | undefined;

/** The workshop, null when there is none; waits only for the first answer of the server. */
export async function knownWorkshop(): Promise<Json> {
  if (known === undefined) await ask();
  // No answer at all: the job is shown without its route until there is one.
  return known ?? null;
}

/** Calls back whenever it has changed, with the workshop. */
export function whenWorkshopChanges(tell: Listener): () => void {
  listeners.add(tell);
  const stop = whenNews((news) => {
    if (news.kind === 'workshop' || news.kind === 'back') void ask();
  });
  return () => {
    listeners.delete(tell);
    stop();
  };
}

/** Several who ask at once get one answer. */
function ask(): Promise<void> {
  asking ??= readStored(workshopAddress, new AbortController().signal)
    .then(
      ({ document }) => {
        if (JSON.stringify(document) === JSON.stringify(known)) return;
        known = document;
        for (const tell of listeners) tell(document);
      },
      // The server is away: what is known stays, and word that it is back brings the next try.
      () => undefined,
    )
    .finally(() => {
      asking = undefined;
    });
  return asking;
}
