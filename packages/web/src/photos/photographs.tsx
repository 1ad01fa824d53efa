/** Photographs of the originals and of the new part: taken or chosen here, each with its place and its words. */
import type { Json } from '@sparewright/core/job/merge';
import type { JobPage, SizeRow } from '@sparewright/output/present/job-view';
import { useEffect, useId, useRef, useState } from 'react';
import { listAt, textAt, withValue } from '../document.ts';
import { type Pointed, pointedText } from '../evidence/place-on-part.ts';
import { Field } from '../forms/field.tsx';
import { type Choice, choice, size, text } from '../forms/fields.ts';
import type { OpenJob } from '../use-job.ts';
import { photographPlace, photographs as place, withPlace } from './records.ts';
import type { OnItsWay, Sending } from './use-sending.ts';

/** A photograph that waits to be told its place on the drawing. */
export interface Placing {
  /** Id of its record; undefined while none waits. */
  readonly photograph: string | undefined;
  set(photograph: string | undefined): void;
}

interface Props {
  readonly job: OpenJob;
  readonly page: Pick<JobPage, 'sizes' | 'spans' | 'units'>;
  readonly sending: Sending;
  readonly placing: Placing;
  /** What was pointed at on the drawing last. */
  readonly pointed: Pointed | undefined;
  /** Marks on the drawing what a photograph shows. */
  readonly choose: (mark: string) => void;
}

const kept = 'image/jpeg,image/png,image/webp';

export function Photographs({ job, page, sending, placing, pointed, choose }: Props) {
  const { sizes } = page;
  const photographs = listAt(job.document, place);
  const [large, setLarge] = useState<string>();
  usePlacing(job, page, placing, pointed);
  const enlarge = (id: string, of: string): void => {
    setLarge(large === id ? undefined : id);
    if (large !== id && of !== '') choose(markOf(job.document, of));
  };
  const remove = (at: number): void =>
    job.edit((document) =>
      withValue(
        document,
        place,
        listAt(document, place).filter((_, i) => i !== at),
      ),
    );
  return (
    <section className="photographs" aria-labelledby="photographs-heading">
      <h3 className="large" id="photographs-heading">
        Photographs
      </h3>
      <p className="secondary">
        Kept with the job and in its export file, without the place and time that a camera writes into them.
      </p>
      <p className="take">
        <Picker words="Take a photograph" capture take={sending.send} />
        <Picker words="Choose pictures" take={sending.send} />
      </p>
      {sending.trouble !== '' && (
        <p className="refusal" role="alert">
          {sending.trouble}
        </p>
      )}
      <ul className="pictures">
        {photographs.map((record, i) => (
          <li key={textAt(record, ['id'])} className={large === textAt(record, ['id']) ? 'enlarged' : undefined}>
            <Photograph
              job={job}
              record={record}
              at={i}
              of={placesOf(job.document, sizes)}
              large={large === textAt(record, ['id'])}
              enlarge={enlarge}
              placing={placing}
              remove={() => remove(i)}
            />
          </li>
        ))}
        {sending.underWay.map((one) => (
          <li key={one.key}>
            <img src={one.preview} alt="A photograph on its way" />
            <p role="status">{wordsOf(one)}</p>
          </li>
        ))}
      </ul>
    </section>
  );
}

function wordsOf({ waits, stored }: OnItsWay): string {
  if (!waits) return 'On its way …';
  return stored
    ? 'The server does not answer. The picture is kept in this browser and goes there when it is back.'
    : 'The server does not answer. Keep this page open: the picture goes there when it is back.';
}

/** The next place pointed at on the drawing is that of the photograph which waits for one. */
function usePlacing(job: OpenJob, page: Props['page'], placing: Placing, pointed: Pointed | undefined): void {
  const seen = useRef(pointed);
  const now = useRef({ job, page });
  now.current = { job, page };
  const { photograph, set } = placing;
  useEffect(() => {
    if (pointed === seen.current) return;
    seen.current = pointed;
    const where = pointed && photograph !== undefined && photographPlace(pointed, now.current.page);
    if (!where) return;
    const along = where.along === undefined ? undefined : pointedText(where.along, now.current.page.units);
    now.current.job.edit((document) => withPlace(document, photograph, where.of, along));
    set(undefined);
    document.getElementById(placeButton(photograph))?.focus();
  }, [pointed, photograph, set]);
}

const placeButton = (id: string): string => `place-of-${id}`;

interface PictureProps {
  readonly job: OpenJob;
  readonly record: Json;
  readonly at: number;
  readonly of: readonly Choice[];
  readonly large: boolean;
  readonly enlarge: (id: string, of: string) => void;
  readonly placing: Placing;
  readonly remove: () => void;
}

function Photograph({ job, record, at, of, large, enlarge, placing, remove }: PictureProps) {
  const id = textAt(record, ['id']);
  const name = `photograph ${at + 1}`;
  const shows = textAt(record, ['shows']);
  const waits = placing.photograph === id;
  const askForPlace = (): void => {
    placing.set(waits ? undefined : id);
    if (!waits) document.querySelector('.drawing')?.scrollIntoView({ block: 'start' });
  };
  return (
    <>
      <img
        src={`/api/attachments/${textAt(record, ['file'])}`}
        alt={shows === '' ? `Photograph ${at + 1}, not described yet` : shows}
        loading="lazy"
      />
      <p className="tools">
        <button
          type="button"
          aria-pressed={large}
          aria-label={`${large ? 'Smaller' : 'Larger'}: ${name}`}
          onClick={() => enlarge(id, textAt(record, ['of']))}
        >
          {large ? 'Smaller' : 'Larger'}
        </button>
        <button
          type="button"
          id={placeButton(id)}
          aria-pressed={waits}
          aria-label={`Point at its place: ${name}`}
          onClick={askForPlace}
        >
          Point at its place
        </button>
        <button type="button" aria-label={`Remove: ${name}`} onClick={remove}>
          Remove
        </button>
      </p>
      <Field form={job} at={[...place, at]} of={name} titled spec={text('shows', 'What it shows', { wide: true })} />
      <Field form={job} at={[...place, at]} of={name} titled spec={choice('of', 'Of', { choices: of })} />
      <Field form={job} at={[...place, at]} of={name} titled spec={size('along', 'Along')} />
    </>
  );
}

function Picker({
  words,
  capture,
  take,
}: {
  words: string;
  capture?: boolean;
  take: (files: readonly File[]) => void;
}) {
  const id = useId();
  return (
    <span className="picker">
      <input
        id={id}
        type="file"
        className="unseen"
        accept={kept}
        multiple={!capture}
        capture={capture ? 'environment' : undefined}
        onChange={(e) => {
          take([...(e.target.files ?? [])]);
          e.target.value = '';
        }}
      />
      <label htmlFor={id} className="press">
        {words}
      </label>
    </span>
  );
}

function allReadings(document: Json | undefined): readonly Json[] {
  return [...listAt(document, ['evidence', 'readings']), ...listAt(document, ['inspection', 'readings'])];
}

/** A reading stands on the drawing where its size does. */
function markOf(document: Json | undefined, of: string): string {
  const reading = allReadings(document).find((record) => textAt(record, ['id']) === of);
  return reading === undefined ? of : textAt(reading, ['of']);
}

/** Whatever a photograph can be of: originals, mates, everything on the part, and single readings; none for the whole job. */
function placesOf(document: Json | undefined, sizes: readonly SizeRow[]): Choice[] {
  const named = (path: readonly string[]): Choice[] =>
    listAt(document, path).map((record) => {
      const value = textAt(record, ['id']);
      return { value, words: textAt(record, ['name']) || value };
    });
  const readings = allReadings(document).map((record) => {
    const of = textAt(record, ['of']);
    const title = sizes.find((s) => s.id === of)?.title ?? of.replaceAll('-', ' ').replace('.', ', ');
    return { value: textAt(record, ['id']), words: `reading ${textAt(record, ['value'])}, ${title}` };
  });
  const features = [...new Set(sizes.map(({ feature }) => feature))];
  return [
    ...named(['evidence', 'specimens']),
    ...named(['mates']),
    ...features.map((value) => ({ value, words: value.replaceAll('-', ' ') })),
    ...sizes.map(({ id, title }) => ({ value: id, words: title })),
    ...readings,
  ];
}
