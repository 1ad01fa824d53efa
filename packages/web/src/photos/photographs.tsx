/** Photographs of the originals and of the new part: taken or chosen here, each with its place and its words. */
import type { Json } from '@sparewright/core/job/merge';
import type { SizeRow } from '@sparewright/output/present/job-view';
import { useId, useState } from 'react';
import { freeId, listAt, textAt, withValue } from '../document.ts';
import { Field } from '../forms/field.tsx';
import { type Choice, choice, size, text } from '../forms/fields.ts';
import type { OpenJob } from '../use-job.ts';
import { useSending } from './use-sending.ts';

interface Props {
  readonly job: OpenJob;
  readonly sizes: readonly SizeRow[];
  /** Marks on the drawing what a photograph shows. */
  readonly choose: (mark: string) => void;
}

const place = ['photographs'] as const;
const kept = 'image/jpeg,image/png,image/webp';

export function Photographs({ job, sizes, choose }: Props) {
  const photographs = listAt(job.document, place);
  const [large, setLarge] = useState<string>();
  const sending = useSending((hash) =>
    job.edit((document) => {
      const all = listAt(document, place);
      return withValue(document, place, [...all, { id: freeId('photograph', all), file: hash }]);
    }),
  );
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
              remove={() => remove(i)}
            />
          </li>
        ))}
        {sending.underWay.map(({ key, preview, waits }) => (
          <li key={key}>
            <img src={preview} alt="A photograph on its way" />
            <p role="status">
              {waits ? 'The server does not answer. Keep this page open: it is sent when it is back.' : 'On its way …'}
            </p>
          </li>
        ))}
      </ul>
    </section>
  );
}

interface PictureProps {
  readonly job: OpenJob;
  readonly record: Json;
  readonly at: number;
  readonly of: readonly Choice[];
  readonly large: boolean;
  readonly enlarge: (id: string, of: string) => void;
  readonly remove: () => void;
}

function Photograph({ job, record, at, of, large, enlarge, remove }: PictureProps) {
  const id = textAt(record, ['id']);
  const name = `photograph ${at + 1}`;
  const shows = textAt(record, ['shows']);
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
