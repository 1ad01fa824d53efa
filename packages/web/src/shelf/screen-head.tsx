/** The head of every screen that is not a job: where one is, and the ways to the others. */
import type { ReactNode } from 'react';
import { ThemeSwitch } from '../parts/theme-switch.tsx';
import { linkTo, type Place } from '../place.ts';

interface Props {
  readonly title: string;
  readonly here: Place['screen'];
  readonly children?: ReactNode;
}

export function ScreenHead({ title, here, children }: Props) {
  return (
    <header className="title-block screen-head">
      <div className="cell job">
        <span className="label">Sparewright</span>
        <h1>{title}</h1>
      </div>
      <div className="cell jobs">
        <Ways here={here} />
        {children}
        <ThemeSwitch />
      </div>
    </header>
  );
}

export function Ways({ here }: { readonly here: Place['screen'] }) {
  const ways: readonly [Place, string][] = [
    [{ screen: 'shelf' }, 'All jobs'],
    [{ screen: 'new' }, 'New job'],
    [{ screen: 'workshop', part: 'lathe' }, 'Workshop'],
    [{ screen: 'help', part: 'measure' }, 'Help'],
  ];
  return (
    <nav aria-label="Screens">
      <ul>
        {ways.map(([place, words]) => (
          <li key={words}>
            <a {...linkTo(place)} aria-current={place.screen === here ? 'page' : undefined}>
              {words}
            </a>
          </li>
        ))}
      </ul>
    </nav>
  );
}
