/** Which job and stage is looked at; kept in the address, so that reloading and going back stay in place. */
import { useEffect, useState } from 'react';
import type { StageName } from './answer.ts';

export interface Place {
  /** '' for the first job there is. */
  readonly job: string;
  readonly stage: StageName;
}

const stages: readonly StageName[] = ['evidence', 'part', 'duty', 'route', 'bench', 'inspection', 'record'];

export function usePlace(): [Place, (place: Place) => void] {
  const [place, setPlace] = useState(() => readPlace(location.hash));
  useEffect(() => {
    const follow = (): void => {
      // Links within the page name a part of it; the address goes on naming job and stage.
      if (location.hash.includes('/')) setPlace(readPlace(location.hash));
      else history.replaceState(null, '', placeHash(place));
    };
    addEventListener('hashchange', follow);
    return () => removeEventListener('hashchange', follow);
  }, [place]);
  const go = (next: Place): void => {
    history.replaceState(null, '', placeHash(next));
    setPlace(next);
  };
  return [place, go];
}

export function placeHash({ job, stage }: Place): string {
  return `#${encodeURIComponent(job)}/${stage}`;
}

function readPlace(hash: string): Place {
  const [job = '', named] = hash.replace(/^#/, '').split('/');
  return { job: decoded(job), stage: stages.find((s) => s === named) ?? 'part' };
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return '';
  }
}
