/** All of the help: how to measure, what a number means, and where it comes from. */
import { useEffect } from 'react';
import { linkTo, type Place } from '../place.ts';
import { ScreenHead } from '../shelf/screen-head.tsx';
import { topics } from './content.ts';
import { Sources } from './sources.tsx';
import { titleOf } from './titles.ts';
import TopicView from './topic-view.tsx';

type HelpPlace = Extract<Place, { screen: 'help' }>;

const names: Readonly<Record<HelpPlace['part'], string>> = {
  measure: 'How to measure',
  meaning: 'What it means',
  sources: 'Where it comes from',
};

export default function HelpScreen({ part, topic }: HelpPlace) {
  useEffect(() => {
    document.title = `${names[part]} · Sparewright`;
    const heading = topic === undefined ? undefined : document.getElementById(`topic-${topic}`);
    heading?.scrollIntoView();
    heading?.focus({ preventScroll: true });
  }, [part, topic]);
  return (
    <>
      <ScreenHead title="Help" here="help" />
      <main className="help">
        <nav className="help-parts" aria-label="Parts of the help">
          <ul>
            {(['measure', 'meaning', 'sources'] as const).map((p) => (
              <li key={p}>
                <a {...linkTo({ screen: 'help', part: p })} aria-current={p === part ? 'page' : undefined}>
                  {names[p]}
                </a>
              </li>
            ))}
          </ul>
        </nav>
        <h2>{names[part]}</h2>
        {part === 'sources' ? <Sources /> : <Pieces part={part} />}
      </main>
    </>
  );
}

function Pieces({ part }: { readonly part: 'measure' | 'meaning' }) {
  return (
    <>
      <nav aria-label={names[part]} className="help-contents">
        <ul>
          {topics[part].map(({ id }) => (
            <li key={id}>
              <a {...linkTo({ screen: 'help', part, topic: id })}>{titleOf(id)}</a>
            </li>
          ))}
        </ul>
      </nav>
      {topics[part].map(({ id }) => (
        <TopicView key={id} id={id} heading="h3" />
      ))}
    </>
  );
}
