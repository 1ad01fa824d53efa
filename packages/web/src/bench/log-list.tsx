/** What was written at the machine, the latest first, and what it teaches. */
import { askedAndRead } from '@sparewright/core/bench/asked-and-read';
import { readLength } from '@sparewright/core/units/length';
import type { JobPage } from '@sparewright/output/present/job-view';
import { presentDeviation, presentLength } from '@sparewright/output/present/length';
import { type BenchEntry, newEntry } from './entry.ts';
import { settingsOf } from './settings-of.ts';
import type { BenchLog, Logged } from './use-bench-log.ts';

interface Props {
  readonly log: BenchLog;
  readonly page: JobPage;
  readonly job: string;
}

export function LogList({ log, page, job }: Props) {
  const { logged } = log;
  if (logged.length === 0) return <p className="secondary">Nothing is written yet.</p>;
  const waits = logged.filter((l) => l.waits).length;
  return (
    <>
      <Lesson logged={logged} page={page} />
      {waits > 0 && (
        <p role="status" className="understood">
          {waits === 1 ? 'One entry waits' : `${waits} entries wait`} for the network.
        </p>
      )}
      <ol className="logged">
        {logged.map(({ entry, waits: waiting, struck }) => (
          <li key={entry.id} className={struck ? 'struck' : undefined}>
            <span className="when">{timeWords(entry.at)}</span>{' '}
            {entry.operation !== undefined && (
              <span className="where">
                {entry.operation}: {entry.title}
              </span>
            )}{' '}
            <span className="what">{entryWords(entry)}</span>
            {waiting && <span className="waits"> waits for the network</span>}
            {struck ? (
              <span className="waits"> struck out</span>
            ) : (
              <button
                type="button"
                onClick={() => log.log(newEntry(job, undefined, { kind: 'struck', entry: entry.id }))}
                aria-label={`Strike out: ${entryWords(entry)}`}
              >
                Strike out
              </button>
            )}
          </li>
        ))}
      </ol>
    </>
  );
}

function Lesson({ logged, page }: { readonly logged: readonly Logged[]; readonly page: JobPage }) {
  const passes = logged.flatMap(({ entry, struck }) => {
    if (entry.kind !== 'pass' || struck || entry.asked === undefined) return [];
    const asked = readLength(entry.asked, entry.units)?.mm;
    const read = readLength(entry.read, entry.units)?.mm;
    // What is far off is a slip of the finger or another place, and no lesson about the lathe.
    if (asked === undefined || read === undefined || Math.abs(read - asked) > asked / 4) return [];
    return [{ asked, read }];
  });
  const lesson = askedAndRead(passes);
  if (!lesson) return null;
  const settings = settingsOf(page);
  const decimals = page.units === 'in' ? 4 : 3;
  const scatter =
    lesson.scatter === undefined
      ? ''
      : `, a single pass scatters by ${presentLength(lesson.scatter, page.units, settings.decimalSign, decimals)}`;
  return (
    <p className="lesson">
      Read against asked: {presentDeviation(lesson.mean, settings, decimals)} {page.units} on average over{' '}
      {lesson.passes === 1 ? 'one pass' : `${lesson.passes} passes`}
      {scatter}.
    </p>
  );
}

function entryWords(entry: BenchEntry): string {
  switch (entry.kind) {
    case 'pass': {
      const asked = entry.asked === undefined ? '' : `, ${entry.asked} asked`;
      const place = entry.table === undefined ? '' : `, ${entry.table} row ${entry.row ?? ''}`;
      return `${entry.read} read${asked}${place}`;
    }
    case 'sound':
      return entry.sound === 'sang' ? 'it sang' : 'it was quiet';
    case 'note':
      return entry.text;
    case 'struck':
      return '';
  }
}

function timeWords(at: string): string {
  const time = new Date(at);
  return Number.isNaN(time.getTime()) ? at : time.toLocaleString(undefined, { dateStyle: 'short', timeStyle: 'short' });
}
