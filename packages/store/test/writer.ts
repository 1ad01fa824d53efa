/**
 * A program of its own that works in a data folder until it is killed. Each thing that the store has acknowledged is told
 * to whoever started it, in a line of JSON that is out of this process before the next thing begins.
 */
import { readFileSync, writeSync } from 'node:fs';
import { openStore } from '../src/open-store.ts';
import { restoreBackup } from '../src/restore.ts';
import { StoreError } from '../src/store-error.ts';

const tell = (line: object) => writeSync(1, `${JSON.stringify(line)}\n`);
const [deed = '', folder = '', name = '', count = '0'] = process.argv.slice(2);
const job = (title: string, readings: object[] = []) => ({
  sparewright: 'job',
  version: 1,
  title,
  units: 'mm',
  hazard: 'ordinary',
  evidence: { readings },
});

/** Saves, logs and photographs without end. */
function workUntilKilled(): void {
  const { jobs, benchLog, attachments } = openStore({ folder });
  tell({ did: 'open' });
  const { id } = jobs.create(job('begun'), {}, { id: 'job', author: name });
  for (let i = 0; ; i++) {
    const what = `${name}-${i}`;
    if (i % 3 === 0) {
      const { number } = jobs.get(id);
      const saved = jobs.save(id, number, job(what), {});
      tell({ did: 'save', revision: saved.revision, what });
    } else if (i % 3 === 1) {
      const entries = [what, `${what}-b`].map((entry) => ({
        id: entry,
        job: id,
        at: '2026-03-01T09:30:00Z',
        content: entry,
      }));
      for (const done of benchLog.append(entries)) tell({ did: 'log', what: done.id });
    } else {
      const bytes = Buffer.from(what.repeat(1 + ((i * 7919) % 3000)));
      const { hash } = attachments.put(bytes, { type: 'text/plain', name: what });
      attachments.link(id, hash);
      tell({ did: 'photo', what: hash });
    }
  }
}

/** Adds readings to a job that others change too, each time upon the revision it last saw. */
function workTogether(): void {
  const { jobs, benchLog, close } = openStore({ folder });
  const { id } = jobs.create(job('shared'), {}, { id: 'shared' });
  tell({ did: 'open' });
  // Waits for the word to begin: the end of its input.
  readFileSync(0);
  let mine: object[] = [];
  let base = 1;
  for (let i = 0; i < Number(count); i++) {
    mine = [...mine, { id: `${name}-${i}`, of: 'body.diameter', value: 12 }];
    const saved = patiently(() => jobs.save(id, base, job('shared', mine), {}, { author: name }));
    if (saved.kind === 'conflict') throw new Error(`conflict at ${saved.paths.join(', ')}`);
    patiently(() => benchLog.append([{ id: `${name}-${i}`, job: id, at: '2026-03-01T09:30:00Z', content: i }]));
    tell({ did: saved.kind });
    // A breath, as people take one; else whoever came first would be through before the others have their turn.
    Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, (i * 7) % 11);
    // Every third time what the others did is seen.
    if (i % 3 === 2) {
      base = saved.revision;
      mine = readingsOf(saved.document);
    }
  }
  close();
}

function patiently<T>(action: () => T): T {
  try {
    return action();
  } catch (error) {
    if (error instanceof StoreError && error.reason === 'busy') return patiently(action);
    throw error;
  }
}

function readingsOf(document: unknown): object[] {
  const { evidence }: { evidence: { readings: object[] } } = JSON.parse(JSON.stringify(document));
  return evidence.readings;
}

function restore(): void {
  tell({ did: 'open' });
  restoreBackup({ from: name, folder });
  tell({ did: 'restore' });
}

if (deed === 'work') workUntilKilled();
else if (deed === 'together') workTogether();
else if (deed === 'restore') restore();
else throw new Error(`no deed ${deed}`);
