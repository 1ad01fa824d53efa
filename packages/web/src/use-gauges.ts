/** The gauges of the workshop, to choose from at a reading. */
import { useEffect, useState } from 'react';
import { readStored, workshopAddress } from './ask-server.ts';
import { listAt, textAt } from './document.ts';
import type { Choice } from './forms/fields.ts';
import { whenNews } from './save/events.ts';

export function useGauges(): readonly Choice[] {
  const [gauges, setGauges] = useState<readonly Choice[]>([]);
  useEffect(() => {
    const stop = new AbortController();
    const load = (): void => {
      readStored(workshopAddress, stop.signal).then(
        ({ document }) =>
          setGauges(
            listAt(document, ['gauges']).map((g) => ({ value: textAt(g, ['id']), words: textAt(g, ['name']) })),
          ),
        // Without them the field still shows what was chosen before.
        () => undefined,
      );
    };
    load();
    const end = whenNews((news) => {
      if (news.kind === 'workshop') load();
    });
    return () => {
      end();
      stop.abort();
    };
  }, []);
  return gauges;
}
