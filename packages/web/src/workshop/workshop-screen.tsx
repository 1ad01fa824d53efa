/** The workshop: the lathe, its cutters, drills and gauges, and the bars on the rack. Every job is worked out upon it. */
import type { Json } from '@sparewright/core/job/merge';
import { type KeyboardEvent, Suspense, useEffect } from 'react';
import { listAt, textAt, valueAt } from '../document.ts';
import { Fields, RecordTable } from '../forms/record-table.tsx';
import { HelpHere } from '../help/in-place.tsx';
import { helpOfWorkshop } from '../help/where.ts';
import { later } from '../later.tsx';
import { testKinds } from '../lathe/test-kinds.ts';
import { History } from '../parts/history.tsx';
import { Choosing, Standing } from '../parts/standing.tsx';
import { go, type WorkshopPart, workshopParts } from '../place.ts';
import { ScreenHead } from '../shelf/screen-head.tsx';
import { type Open, useWorkshop } from '../use-job.ts';
import { chucks, latheFields, lists, wholeWorkshop } from './workshop-fields.ts';

/** Its pictures and what they rest on are read only when they are wanted. */
const LatheKnown = later(() => import('../lathe/lathe-known.tsx'));

const names: Readonly<Record<WorkshopPart, string>> = {
  lathe: 'Lathe',
  known: 'Tests',
  cutters: 'Cutters',
  drills: 'Drills',
  gauges: 'Gauges',
  bars: 'Bars',
};

export function WorkshopScreen({ part }: { readonly part: WorkshopPart }) {
  const workshop = useWorkshop();
  useEffect(() => {
    document.title = `Workshop, ${names[part].toLowerCase()} · Sparewright`;
  }, [part]);
  const title = textAt(workshop.document, ['name']) || 'Workshop';
  const inInches = textAt(workshop.document, ['units']) === 'in';
  return (
    <>
      <ScreenHead title={title} here="workshop">
        <Standing open={workshop} />
      </ScreenHead>
      <main className="workshop">
        <Choosing open={workshop} />
        <Parts workshop={workshop} part={part} />
        <section
          className={part === 'lathe' || part === 'known' ? 'sheet' : 'sheet one-list'}
          id="sheet"
          role="tabpanel"
          aria-labelledby={`part-${part}`}
          tabIndex={-1}
        >
          <h2>{titleOf(part)}</h2>
          <HelpHere key={part} meaning={helpOfWorkshop[part]} />
          {workshop.trouble !== '' && (
            <p className="refusal" role="alert">
              {workshop.trouble}
            </p>
          )}
          <p className="secondary">
            Bare lengths are in {inInches ? 'inches' : 'millimetres'}; others are typed with their unit: 1/2 in · 12 mm
          </p>
          <Part workshop={workshop} part={part} />
        </section>
      </main>
    </>
  );
}

function titleOf(part: WorkshopPart): string {
  if (part === 'lathe') return names.lathe;
  return part === 'known' ? 'What this lathe is known to do' : lists[part].title;
}

function Part({ workshop, part }: { readonly workshop: Open<undefined>; readonly part: WorkshopPart }) {
  if (workshop.document === undefined) return <p role="status">Opening the workshop …</p>;
  if (part === 'known')
    return (
      <Suspense fallback={<p role="status">Opening the tests …</p>}>
        <LatheKnown workshop={workshop} />
      </Suspense>
    );
  if (part !== 'lathe') return <RecordTable key={part} form={workshop} {...lists[part]} />;
  const lathe = workshop.document;
  return (
    <>
      <Fields form={workshop} at={[]} fields={wholeWorkshop} title="The workshop" />
      {latheFields.map((group) => (
        <Fields
          key={group.title}
          form={workshop}
          at={['lathe']}
          title={group.title}
          fields={group.fields.filter((f) => f.of === undefined || f.of(latheOf(lathe)))}
        />
      ))}
      <RecordTable form={workshop} {...chucks} />
      <History open={workshop} />
    </>
  );
}

function latheOf(document: Json): Json {
  return valueAt(document, ['lathe']) ?? {};
}

function Parts({ workshop, part }: { readonly workshop: Open<undefined>; readonly part: WorkshopPart }) {
  const onKeyDown = (event: KeyboardEvent): void => {
    const at = workshopParts.indexOf(part);
    const to = { ArrowRight: at + 1, ArrowLeft: at - 1, Home: 0, End: workshopParts.length - 1 }[event.key];
    const next = to === undefined ? undefined : workshopParts[(to + workshopParts.length) % workshopParts.length];
    if (!next) return;
    event.preventDefault();
    go({ screen: 'workshop', part: next }, 'instead');
    document.getElementById(`part-${next}`)?.focus();
  };
  const stands = (p: WorkshopPart): string => {
    if (p === 'lathe') return textAt(workshop.document, ['lathe', 'name']);
    if (p === 'known') {
      const tests = testKinds.reduce((n, k) => n + listAt(workshop.document, ['lathe', 'tests', k]).length, 0);
      return tests === 0 ? 'none written down' : String(tests);
    }
    const n = listAt(workshop.document, [p]).length;
    return n === 0 ? 'none entered' : String(n);
  };
  return (
    <div className="stage-strip parts-strip" role="tablist" aria-label="Parts of the workshop" onKeyDown={onKeyDown}>
      {workshopParts.map((p) => (
        <button
          key={p}
          type="button"
          role="tab"
          id={`part-${p}`}
          aria-selected={p === part}
          aria-controls="sheet"
          tabIndex={p === part ? 0 : -1}
          onClick={() => go({ screen: 'workshop', part: p }, 'instead')}
        >
          <span className="name">{names[p]}</span>
          <span className="stands">{stands(p)}</span>
        </button>
      ))}
    </div>
  );
}
