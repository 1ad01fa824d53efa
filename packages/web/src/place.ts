/** What is looked at; kept in the address, so that reloading and going back stay in place. */

import type { StageName } from '@sparewright/output/present/job-view';
import { type MouseEvent, useSyncExternalStore } from 'react';

export type Place =
  | { readonly screen: 'shelf' | 'new' | 'pairing' }
  | { readonly screen: 'job'; readonly job: string; readonly stage: StageName }
  | { readonly screen: 'workshop'; readonly part: WorkshopPart }
  | { readonly screen: 'help'; readonly part: HelpPart; readonly topic?: string | undefined };

export const workshopParts = ['lathe', 'known', 'cutters', 'drills', 'gauges', 'bars'] as const;
export type WorkshopPart = (typeof workshopParts)[number];

const helpParts = ['measure', 'meaning', 'sources'] as const;
type HelpPart = (typeof helpParts)[number];

const stages: readonly StageName[] = ['evidence', 'part', 'duty', 'route', 'bench', 'inspection', 'record'];

export function addressOf(place: Place): string {
  switch (place.screen) {
    case 'shelf':
      return '/';
    case 'new':
      return '/new';
    case 'pairing':
      return '/pairing';
    case 'job':
      return `/jobs/${encodeURIComponent(place.job)}/${place.stage}`;
    case 'workshop':
      return `/workshop/${place.part}`;
    case 'help':
      return place.topic === undefined ? `/help/${place.part}` : `/help/${place.part}/${place.topic}`;
  }
}

function placeOf(address: string): Place {
  const [screen, first = '', second] = address.split('/').slice(1);
  if (screen === 'jobs' && first !== '')
    return { screen: 'job', job: decoded(first), stage: stages.find((s) => s === second) ?? 'part' };
  if (screen === 'new' || screen === 'pairing') return { screen };
  if (screen === 'workshop') return { screen: 'workshop', part: workshopParts.find((p) => p === first) ?? 'lathe' };
  if (screen === 'help')
    return { screen: 'help', part: helpParts.find((p) => p === first) ?? 'measure', topic: second };
  return { screen: 'shelf' };
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return '';
  }
}

/** Told of going forth here and back in the browser alike. */
const gone = new EventTarget();

export function go(place: Place, how: 'new' | 'instead' = 'new'): void {
  const address = addressOf(place);
  if (how === 'instead') history.replaceState(null, '', address);
  else history.pushState(null, '', address);
  gone.dispatchEvent(new Event('gone'));
}

export function usePlace(): Place {
  return placeOf(useSyncExternalStore(listen, () => location.pathname));
}

function listen(tell: () => void): () => void {
  gone.addEventListener('gone', tell);
  addEventListener('popstate', tell);
  return () => {
    gone.removeEventListener('gone', tell);
    removeEventListener('popstate', tell);
  };
}

/** A link stays a link, to be opened in another window; pressed plainly it goes there without loading anew. */
export function linkTo(place: Place): { href: string; onClick: (event: MouseEvent) => void } {
  return {
    href: addressOf(place),
    onClick: (event) => {
      if (event.metaKey || event.ctrlKey || event.shiftKey || event.button !== 0) return;
      event.preventDefault();
      go(place);
      scrollTo(0, 0);
    },
  };
}
