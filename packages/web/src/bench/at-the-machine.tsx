/** What is open at the machine: the pass to set in large figures, the reading typed by thumb or by the gauge itself. */

import { readLength } from '@sparewright/core/units/length';
import type { JobPage } from '@sparewright/output/present/job-view';
import { presentDeviation } from '@sparewright/output/present/length';
import { signOf } from '@sparewright/output/present/settings';
import { type FormEvent, useEffect, useRef, useState } from 'react';
import type { Operation } from './dials.ts';
import { type Happened, newEntry } from './entry.ts';
import { Keypad } from './keypad.tsx';
import { settingsOf } from './settings-of.ts';
import { useStayAwake } from './stay-awake.ts';
import type { BenchLog } from './use-bench-log.ts';

interface Props {
  readonly job: string;
  readonly page: JobPage;
  readonly operations: readonly Operation[];
  readonly log: BenchLog;
}

export function AtTheMachine({ job, page, operations, log }: Props) {
  const [chosen, setChosen] = useState<string>();
  const operation = operations.find((o) => o.id === (chosen ?? next(operations, log))) ?? operations[0];
  const [place, setPlace] = useState<number>();
  const at = Math.min(place ?? passesDone(operation, log), Math.max(0, (operation?.rows.length ?? 0) - 1));
  const row = operation?.rows[at];
  const [asked, setAsked] = useState<string>();
  const [read, setRead] = useState('');
  const [note, setNote] = useState('');
  const [said, setSaid] = useState('');
  const [wrong, setWrong] = useState('');
  const readField = useRef<HTMLInputElement>(null);
  const askedField = useRef<HTMLInputElement>(null);
  const lastField = useRef<'asked' | 'read'>('read');
  const awake = useStayAwake(true);
  const settings = settingsOf(page);
  const askedNow = asked ?? row?.asked ?? '';

  const write = (happened: Happened, words: string): void => {
    log.log(newEntry(job, operation, happened));
    setSaid(`Kept: ${words}.`);
    setWrong('');
  };
  const keepReading = (event?: FormEvent): void => {
    event?.preventDefault();
    const found = wrongIn(read, askedNow, page);
    setWrong(found);
    if (found !== '') return;
    write(
      {
        kind: 'pass',
        read: read.trim(),
        units: page.units,
        ...(askedNow.trim() === '' ? {} : { asked: askedNow.trim() }),
        ...(row ? { table: row.table, row: row.row } : {}),
      },
      `${read.trim()} read${askedNow.trim() === '' ? '' : `, ${askedNow.trim()} asked`}`,
    );
    setRead('');
    setAsked(undefined);
    // The next pass is there to be set; after the last one it stays.
    setPlace(at + 1);
    readField.current?.focus();
  };
  const press = (key: string): void => {
    const change = (text: string): string => (key === 'back' ? text.slice(0, -1) : text + key);
    if (lastField.current === 'asked') setAsked(change(askedNow));
    else setRead(change);
  };
  useGaugeKeys(readField);

  if (!operation) return <p className="secondary">There is no route yet, so there is no operation to write about.</p>;
  const words = wordsOf(read, askedNow, page, settings);
  return (
    <form className="at-the-machine" onSubmit={keepReading} noValidate>
      <div className="field operation-choice">
        <label htmlFor="bench-operation">Operation</label>
        <select
          id="bench-operation"
          value={operation.id}
          onChange={(e) => {
            setChosen(e.target.value);
            setPlace(undefined);
            setAsked(undefined);
          }}
        >
          {operations.map(({ id, number, title }) => (
            <option key={id} value={id}>
              {number}: {title}
            </option>
          ))}
        </select>
      </div>
      {row && (
        <section className="pass-to-set" aria-label="Pass to set">
          <p className="which">
            {row.table}, {at + 1} of {operation.rows.length}
            <span className="steps">
              <button type="button" disabled={at === 0} onClick={() => setPlace(at - 1)}>
                Back
              </button>
              <button type="button" disabled={at + 1 >= operation.rows.length} onClick={() => setPlace(at + 1)}>
                Next
              </button>
            </span>
          </p>
          <dl className="large-figures">
            {row.figures.map(({ place, what, is }) => (
              <div key={place}>
                <dt>{what}</dt>
                <dd>{is}</dd>
              </div>
            ))}
            {row.asked !== '' && (
              <div className="to-come-to">
                <dt>come to, {page.units}</dt>
                <dd>{row.asked}</dd>
              </div>
            )}
          </dl>
        </section>
      )}
      <div className="typing">
        <div className="two-sizes">
          <span className="field">
            <label htmlFor="bench-asked">Asked, {page.units}</label>
            <input
              id="bench-asked"
              ref={askedField}
              value={askedNow}
              inputMode="none"
              autoComplete="off"
              onFocus={() => {
                lastField.current = 'asked';
              }}
              onChange={(e) => setAsked(e.target.value)}
            />
          </span>
          <span className="field">
            <label htmlFor="bench-read">Read, {page.units}</label>
            <input
              id="bench-read"
              ref={readField}
              value={read}
              inputMode="none"
              autoComplete="off"
              aria-invalid={wrong !== ''}
              aria-describedby="bench-says"
              onFocus={() => {
                lastField.current = 'read';
              }}
              onChange={(e) => setRead(e.target.value)}
            />
          </span>
        </div>
        <p id="bench-says" className={wrong === '' ? 'difference' : 'refusal'} aria-live="polite">
          {wrong === '' ? words : wrong}
        </p>
        <Keypad press={press} decimalSign={signOf(settings.decimalSign)} />
        <button type="submit" className="broad keep">
          Keep this reading
        </button>
      </div>
      <fieldset className="how-it-sounded" aria-label="How it sounded">
        <button type="button" className="broad" onClick={() => write({ kind: 'sound', sound: 'sang' }, 'it sang')}>
          It sang
        </button>
        <button
          type="button"
          className="broad"
          onClick={() => write({ kind: 'sound', sound: 'quiet' }, 'it was quiet')}
        >
          It was quiet
        </button>
      </fieldset>
      <div className="bench-note field">
        <label htmlFor="bench-note">Note</label>
        <input id="bench-note" value={note} autoComplete="off" onChange={(e) => setNote(e.target.value)} />
        <button
          type="button"
          className="broad"
          disabled={note.trim() === ''}
          onClick={() => {
            write({ kind: 'note', text: note.trim() }, 'the note');
            setNote('');
          }}
        >
          Keep the note
        </button>
      </div>
      <p role="status" className="understood said">
        {said} {log.away && 'The server does not answer: what you write is kept here and goes there when it is back.'}
      </p>
      <p className="understood">{awakeWords[awake]}</p>
    </form>
  );
}

const awakeWords = {
  awake: 'The screen stays awake while this is open.',
  asleep: 'The screen may go dark by itself.',
  'not offered':
    'The screen may go dark by itself: over a plain network address the browser does not let a page keep it awake. Set a longer time in the settings of the device.',
} as const;

/** The operation after the one that was written about last, once its table is through. */
function next(operations: readonly Operation[], log: BenchLog): string | undefined {
  const last = log.logged.find(({ entry, struck }) => !struck && entry.of !== undefined)?.entry.of;
  const at = operations.findIndex((o) => o.id === last);
  const current = operations[at];
  if (!current) return operations.find((o) => o.rows.length > 0)?.id;
  const through = passesDone(current, log) >= current.rows.length;
  return (through ? operations.slice(at + 1).find((o) => o.rows.length > 0) : current)?.id ?? current.id;
}

/** Rows of its tables that have a reading, counted from the first. */
function passesDone(operation: Operation | undefined, { logged }: BenchLog): number {
  if (!operation) return 0;
  const done = logged.flatMap(({ entry, struck }) =>
    entry.kind === 'pass' && !struck && entry.of === operation.id ? [`${entry.table}|${entry.row}`] : [],
  );
  const last = operation.rows.findLastIndex((row) => done.includes(`${row.table}|${row.row}`));
  return last + 1;
}

function wrongIn(read: string, asked: string, { units }: JobPage): string {
  if (readLength(read, units) === undefined) return 'Type the size as the gauge shows it: 12,34 or .4856 in.';
  const isSize = asked.trim() === '' || readLength(asked, units) !== undefined;
  return isSize ? '' : 'What was asked is no size; leave it empty if there was none.';
}

function wordsOf(read: string, asked: string, page: JobPage, settings: ReturnType<typeof settingsOf>): string {
  const got = readLength(read, page.units);
  const wanted = readLength(asked, page.units);
  if (!got) return 'Press the digits, or let the gauge type: its value and Enter.';
  if (!wanted) return 'Nothing was asked to compare it with.';
  const off = got.mm - wanted.mm;
  // A size of which only the first digit stands there is far from anything.
  if (Math.abs(off) > wanted.mm / 4 && read.trim().length < 3) return '';
  if (Math.abs(off) > wanted.mm / 4) return 'That is far from what was asked. Inch for millimetre, or another place?';
  const size = presentDeviation(off, settings, page.units === 'in' ? 4 : 3);
  return `${size} ${page.units} against what was asked.`;
}

/** A gauge that types like a keyboard types where the cursor happens to be; outside of fields it is led to the reading. */
function useGaugeKeys(field: { readonly current: HTMLInputElement | null }): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      if (event.ctrlKey || event.metaKey || event.altKey || !/^[\d.,+-]$/.test(event.key)) return;
      const { target } = event;
      if (target instanceof Element && target.closest('input, select, textarea')) return;
      // The key itself then arrives in the field.
      field.current?.focus();
    };
    addEventListener('keydown', onKey);
    return () => removeEventListener('keydown', onKey);
  }, [field]);
}
