/** The shelf: every job with its drawing, how far it has come, and the worst that was found. */

import type { JobEntry } from '@sparewright/output/present/job-view';
import { useCallback, useEffect, useRef, useState } from 'react';
import { copyJob, importJob, type JobList, jobAddress, listBin, listJobs, removeJob, unbinJob } from '../ask-server.ts';
import { levelMarks, levelWords } from '../parts/levels.ts';
import { go, linkTo } from '../place.ts';
import { whenNews } from '../save/events.ts';
import { waiting } from '../save/outbox.ts';
import { ScreenHead } from './screen-head.tsx';

/** Typing goes on as long as keys follow each other faster than this [ms]. */
const pause = 250;
/** Jobs shown at first, and with each asking for more. */
const shownAtOnce = 60;
const opened = 'sparewright.opened';
const demonstration = 'valve-guide-pin';

export function Shelf() {
  const [search, setSearch] = useState('');
  const [most, setMost] = useState(shownAtOnce);
  const [list, setList] = useState<JobList>();
  const [bin, setBin] = useState<JobList>();
  const [trouble, setTrouble] = useState('');
  const [silence, setSilence] = useState('');
  const file = useRef<HTMLInputElement>(null);

  const load = useCallback(async (words: string, most: number, signal: AbortSignal): Promise<void> => {
    try {
      const found = await listJobs(words, most, signal);
      // Whoever comes for the first time meets a whole job before an index of jobs.
      if (firstVisit() && found.jobs.some((job) => job.id === demonstration))
        return go({ screen: 'job', job: demonstration, stage: 'part' }, 'instead');
      setList(found);
      setBin(await listBin(signal));
      setSilence('');
    } catch (error) {
      if (!signal.aborted) setSilence(error instanceof Error ? error.message : 'The list of jobs did not come.');
    }
  }, []);

  useEffect(() => {
    document.title = 'Jobs · Sparewright';
    const stop = new AbortController();
    const soon = setTimeout(() => void load(search, most, stop.signal), search === '' ? 0 : pause);
    const end = whenNews(() => void load(search, most, stop.signal));
    return () => {
      clearTimeout(soon);
      stop.abort();
      end();
    };
  }, [search, most, load]);

  const doing = async (work: () => Promise<unknown>): Promise<void> => {
    try {
      await work();
      setTrouble('');
    } catch (error) {
      setTrouble(error instanceof Error ? error.message : 'That did not work.');
    }
    await load(search, most, new AbortController().signal);
  };
  const undelivered = waiting();
  return (
    <>
      <ScreenHead title="Jobs" here="shelf" />
      <main className="shelf">
        <div className="shelf-tools">
          <span className="field">
            <label htmlFor="search">Search title, machine, notes</label>
            <input
              id="search"
              type="search"
              value={search}
              onChange={(e) => {
                setSearch(e.target.value);
                setMost(shownAtOnce);
              }}
            />
          </span>
          <a {...linkTo({ screen: 'new' })} className="press">
            New job
          </a>
          <a {...linkTo({ screen: 'pairing' })} className="press">
            Other devices
          </a>
          <span className="field">
            <label htmlFor="import">Take in a job from a file</label>
            <input
              id="import"
              ref={file}
              type="file"
              accept=".json,application/json"
              onChange={(e) => {
                const chosen = e.target.files?.[0];
                if (!chosen) return;
                void doing(async () => go({ screen: 'job', job: (await importJob(chosen)).id, stage: 'part' }));
                e.target.value = '';
              }}
            />
          </span>
        </div>
        {(trouble || silence) !== '' && (
          <p className="refusal" role="alert">
            {trouble || silence}
          </p>
        )}
        <p role="status" className="understood">
          {list === undefined ? 'Opening the jobs …' : countWords(list.total, search)}
        </p>
        <ul className="jobs-on-shelf">
          {(list?.jobs ?? []).map((job) => (
            <li key={job.id}>
              <ShelfJob
                job={job}
                undelivered={undelivered.includes(`job.${job.id}`)}
                copy={() => void doing(() => copyJob(job.id))}
                remove={() => void doing(() => removeJob(job.id))}
              />
            </li>
          ))}
        </ul>
        {list !== undefined && list.jobs.length < list.total && (
          <p>
            <button type="button" onClick={() => setMost(list.jobs.length + shownAtOnce)}>
              Show {Math.min(shownAtOnce, list.total - list.jobs.length)} more of {list.total}
            </button>
          </p>
        )}
        {bin !== undefined && bin.total > 0 && (
          <section className="binned" aria-labelledby="bin-heading">
            <h2 id="bin-heading">In the bin</h2>
            <ul>
              {bin.jobs.map(({ id, title }) => (
                <li key={id}>
                  {title}{' '}
                  <button
                    type="button"
                    onClick={() => void doing(() => unbinJob(id))}
                    aria-label={`Put it back: ${title}`}
                  >
                    Put it back
                  </button>
                </li>
              ))}
            </ul>
          </section>
        )}
      </main>
    </>
  );
}

interface JobProps {
  readonly job: JobEntry;
  /** Something typed has not reached the server. */
  readonly undelivered: boolean;
  readonly copy: () => void;
  readonly remove: () => void;
}

function ShelfJob({ job, undelivered, copy, remove }: JobProps) {
  const { id, title, machine, hazard, stage, worst, revision } = job;
  const [drawn, setDrawn] = useState(true);
  return (
    <article aria-label={title}>
      <div className="thumbnail">
        {drawn ? (
          <img
            src={`${jobAddress(id)}/drawing.svg?revision=${revision}`}
            alt={`Drawing of the ${title}`}
            loading="lazy"
            onError={() => setDrawn(false)}
          />
        ) : (
          <span className="secondary">nothing to draw yet</span>
        )}
      </div>
      <div className="about">
        <h2>
          <a {...linkTo({ screen: 'job', job: id, stage: stage ?? 'part' })}>{title}</a>
        </h2>
        <p className="secondary">{machine === '' ? 'machine not entered' : machine}</p>
        <dl className="facts">
          <div>
            <dt>Has come to</dt>
            <dd>{stage ?? 'not known yet'}</dd>
          </div>
          <div>
            <dt>Hazard class</dt>
            <dd className={hazard === 'ordinary' ? undefined : 'hazard'}>{hazard}</dd>
          </div>
          <div>
            <dt>Last change</dt>
            <dd>{new Date(job.updated).toLocaleDateString(undefined, { dateStyle: 'medium' })}</dd>
          </div>
        </dl>
        <p className={worst ? `worst ${worst.level}` : 'worst'}>
          {worst ? (
            <>
              <strong>
                {levelMarks[worst.level]} {levelWords[worst.level]}
              </strong>{' '}
              {worst.says}
            </>
          ) : (
            'Nothing was found.'
          )}
        </p>
        {undelivered && (
          <p className="refusal">Changes of this browser have not reached the server yet. Open the job.</p>
        )}
        <p className="tools">
          <button type="button" onClick={copy} aria-label={`Copy: ${title}`}>
            Copy
          </button>
          <a href={`${jobAddress(id)}/export`} download className="press" aria-label={`Export: ${title}`}>
            Export
          </a>
          <button type="button" onClick={remove} aria-label={`Remove: ${title}`}>
            Remove
          </button>
        </p>
      </div>
    </article>
  );
}

function countWords(total: number, search: string): string {
  const jobs = total === 1 ? '1 job' : `${total} jobs`;
  if (search.trim() === '') return total === 0 ? 'No jobs yet. Begin with a new one.' : jobs;
  return total === 0 ? 'No job has all these words.' : `${jobs} found`;
}

function firstVisit(): boolean {
  if (localStorage.getItem(opened) !== null) return false;
  localStorage.setItem(opened, 'yes');
  return true;
}
