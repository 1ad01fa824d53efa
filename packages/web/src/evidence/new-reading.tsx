/**
 * The next reading, typed in one row: what it is of and where stay, only the value is typed anew, so that a gauge that types
 * like a keyboard writes one reading after another. A place pointed at on the drawing is taken over.
 */

import { conditions } from '@sparewright/core/evidence/reading-kinds';
import type { Json } from '@sparewright/core/job/merge';
import { type LengthUnit, readLength } from '@sparewright/core/units/length';
import type { JobPage } from '@sparewright/output/present/job-view';
import { type FormEvent, useEffect, useId, useRef, useState } from 'react';
import { freeId, listAt, type Path, textAt, withValue } from '../document.ts';
import { type Choice, words } from '../forms/fields.ts';
import type { Form } from '../use-job.ts';
import { inWords, measuredSizes, newDimension, newKinds } from './measured-sizes.ts';
import { type Pointed, placeOnPart, pointedText } from './place-on-part.ts';

interface Props {
  readonly form: Form;
  readonly page: Pick<JobPage, 'sizes' | 'spans' | 'units'>;
  readonly gauges: readonly Choice[];
  readonly pointed: Pointed | undefined;
}

const readings: Path = ['evidence', 'readings'];
const another = '+';

interface Draft {
  readonly of: string;
  readonly name: string;
  readonly kind: string;
  readonly specimen: string;
  readonly gauge: string;
  readonly condition: string;
  readonly along: string;
  readonly angle: string;
  readonly value: string;
}

export function NewReading({ form, page, gauges, pointed }: Props) {
  const id = useId();
  const [draft, setDraft] = useState<Draft>(() => begun(form, page));
  const [said, setSaid] = useState('');
  const [lacks, setLacks] = useState('');
  const value = useRef<HTMLInputElement>(null);
  const change = (part: Partial<Draft>) => setDraft((before) => ({ ...before, ...part }));
  const choices = measuredSizes(form, page.sizes);
  const taken = [...named(form, ['evidence', 'specimens']), ...named(form, ['mates'])];
  const seen = useRef(page);
  seen.current = page;

  useEffect(() => {
    const place = pointed && placeOnPart(pointed, seen.current);
    if (!place) return;
    const { of, along } = place;
    setDraft((before) => ({
      ...before,
      of,
      along: along === undefined ? before.along : pointedText(along, seen.current.units),
    }));
    setSaid(along === undefined ? '' : 'Place taken from the drawing.');
    value.current?.focus();
  }, [pointed]);

  const add = (event: FormEvent): void => {
    event.preventDefault();
    const made = readingOf(draft, page.units);
    if (typeof made === 'string') {
      setLacks(made);
      return;
    }
    setLacks('');
    form.edit((document) => {
      const all = listAt(document, readings);
      return withValue(document, readings, [...all, { id: freeId('r', all), ...made }]);
    });
    setSaid(`Added: ${draft.value.trim()}, ${inWords(String(made.of))}.`);
    change({ value: '', of: String(made.of) });
    value.current?.focus();
  };
  const select = (key: keyof Draft, title: string, options: readonly Choice[], none?: string) => (
    <span className="field">
      <label htmlFor={`${id}-${key}`}>{title}</label>
      <select id={`${id}-${key}`} value={draft[key]} onChange={(e) => change({ [key]: e.target.value })}>
        {none !== undefined && <option value="">{none}</option>}
        {options.map((o) => (
          <option key={o.value} value={o.value}>
            {o.words}
          </option>
        ))}
      </select>
    </span>
  );
  const input = (key: keyof Draft, title: string, unit = '') => (
    <span className="field">
      <label htmlFor={`${id}-${key}`}>
        {title}
        {unit !== '' && <span className="unit">, {unit}</span>}
      </label>
      <input
        id={`${id}-${key}`}
        ref={key === 'value' ? value : undefined}
        value={draft[key]}
        autoComplete="off"
        spellCheck={false}
        aria-describedby={key === 'value' ? `${id}-says` : undefined}
        onChange={(e) => change({ [key]: e.target.value })}
      />
    </span>
  );
  return (
    <form className="new-reading" onSubmit={add} noValidate aria-labelledby={`${id}-title`}>
      <h4 id={`${id}-title`}>The next reading</h4>
      <p className="secondary">
        Point at the part on the drawing, or choose here. Type the value and press Enter; all else stays for the next
        one.
      </p>
      <div className="fields">
        {select('of', 'Reading of', [...choices, { value: another, words: 'something the part does not have yet' }])}
        {draft.of === another && input('name', 'What you call it')}
        {draft.of === another && select('kind', 'It is a', newKinds)}
        {select('specimen', 'On', taken, '–')}
        {select('gauge', 'Gauge', gauges, '–')}
        {select('condition', 'Surface there', words(...conditions), '–')}
        {input('along', /\.depths$/.test(draft.of) ? 'Distance from the axis' : 'Along, from its left end')}
        {input('angle', 'Round', '°')}
        {input('value', 'The gauge showed')}
        <span className="tools">
          <button type="submit">Add the reading</button>
        </span>
      </div>
      <p id={`${id}-says`} className={lacks === '' ? 'understood' : 'refusal'} role="status">
        {lacks === '' ? understood(draft.value, page.units, said) : lacks}
      </p>
    </form>
  );
}

/** Goes on where the last reading stopped. */
function begun(form: Form, { sizes }: Props['page']): Draft {
  const last = listAt(form.document, readings).at(-1);
  const of = textAt(last, ['of']) || measuredSizes(form, sizes)[0]?.value || another;
  return {
    of,
    name: '',
    kind: 'outside',
    specimen: textAt(last ?? listAt(form.document, ['evidence', 'specimens'])[0], [
      last === undefined ? 'id' : 'specimen',
    ]),
    gauge: textAt(last, ['gauge']),
    condition: textAt(last, ['condition']),
    along: '',
    angle: '',
    value: '',
  };
}

/** The reading without its name, or why there is none yet. */
function readingOf(draft: Draft, units: LengthUnit): Readonly<Record<string, Json>> | string {
  const of = draft.of === another ? newDimension(draft.name, draft.kind) : draft.of;
  if (of === undefined) return 'Give it a name first: guide, gland bore.';
  if (!readLength(draft.value, units)) return 'Type what the gauge showed, for example 11.98 or 1/2 in.';
  if (draft.along.trim() !== '' && !readLength(draft.along, units)) return 'The place along the part is no length.';
  const angle = Number(draft.angle.replace(',', '.'));
  if (draft.angle.trim() !== '' && !(angle >= 0 && angle <= 360)) return 'The place round the part is 0 to 360°.';
  const optional = {
    specimen: draft.specimen,
    gauge: draft.gauge,
    condition: draft.condition,
    along: draft.along.trim(),
  };
  return {
    of,
    value: draft.value.trim(),
    ...Object.fromEntries(Object.entries(optional).filter(([, text]) => text !== '')),
    ...(draft.angle.trim() === '' ? {} : { angle }),
  };
}

function understood(typed: string, units: LengthUnit, otherwise: string): string {
  const read = typed.trim() === '' ? undefined : readLength(typed, units);
  if (!read) return otherwise;
  return `Understood: ${Number(read.mm.toFixed(4))} mm = ${Number((read.mm / 25.4).toFixed(5))} in`;
}

function named(form: Form, path: Path): Choice[] {
  return listAt(form.document, path).map((record) => {
    const value = textAt(record, ['id']);
    return { value, words: textAt(record, ['name']) || value };
  });
}
