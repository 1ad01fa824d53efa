/**
 * Pieces of the page that are not read with the page itself, but when they are wanted, or once the page has come to rest: later
 * the server may be away.
 */
import { type ComponentType, type LazyExoticComponent, lazy } from 'react';
import { NotHere } from './help/not-here.tsx';

type Load<Props> = () => Promise<{ readonly default: ComponentType<Props> }>;

const notAsked: (() => Promise<unknown>)[] = [];

/** The piece; where it did not come stands a word about it. */
export function later<Props>(load: Load<Props>): LazyExoticComponent<ComponentType<Props>> {
  notAsked.push(load);
  return lazy(() => load().catch(() => ({ default: NotHere })));
}

/** What does not come now is asked for again when it is wanted. */
export function loadAhead(): void {
  for (const load of notAsked.splice(0)) load().catch(() => undefined);
}
