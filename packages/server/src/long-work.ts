/** Work that takes so long that nobody else should wait for it, done on a thread of its own: one, started when it is first needed. */
import { Worker } from 'node:worker_threads';
import { InputError, type InputIssue } from '@sparewright/core/errors';
import type { Assessed } from '@sparewright/output/page/job-page';
import type { Backup } from '@sparewright/store/backup';
import type { CheckReport } from '@sparewright/store/check';
import type { PreparedArchive } from '@sparewright/store/read-archive';
import { StoreError, type StoreReason } from '@sparewright/store/store-error';

export type Paper = 'A4' | 'Letter';
export interface ToPrint extends Pick<Assessed, 'job' | 'workshop' | 'assessment'> {
  /** The data folder, with the photographs. */
  readonly folder: string;
}

/** What is asked of the thread, and the answer to each. */
export interface Tasks {
  readonly packet: {
    readonly put: { readonly of: ToPrint; readonly paper: Paper };
    readonly gives: Uint8Array<ArrayBuffer>;
  };
  /** Each page as compressed SVG. */
  readonly pages: {
    readonly put: { readonly of: ToPrint; readonly paper: Paper };
    readonly gives: readonly Uint8Array<ArrayBuffer>[];
  };
  readonly backup: {
    readonly put: { readonly folder: string; readonly target: string };
    readonly gives: Backup;
  };
  /** The text of a job's archive, in a file. */
  readonly prepareImport: {
    readonly put: { readonly from: string; readonly folder: string };
    readonly gives: PreparedArchive;
  };
  readonly prepareRestore: {
    readonly put: { readonly from: string; readonly folder: string };
    readonly gives: CheckReport;
  };
}

export type Task = { [K in keyof Tasks]: { readonly kind: K; readonly put: Tasks[K]['put'] } }[keyof Tasks];

export interface Asked {
  readonly number: number;
  readonly task: Task;
}

export type Answer =
  | { readonly number: number; readonly gives: unknown }
  /** `reason` where the store refused, `issues` where what was put in will not do; without them the fault is the program's. */
  | {
      readonly number: number;
      readonly failed: string;
      readonly reason?: StoreReason;
      readonly issues?: readonly InputIssue[];
    };

export interface LongWork {
  /**
   * In the order in which it is asked for.
   *
   * @throws StoreError when the store refuses, InputError when what was put in will not do; Error when the program failed at it
   */
  run<K extends keyof Tasks>(kind: K, put: Tasks[K]['put']): Promise<Tasks[K]['gives']>;
  /** Gives up what is under way. */
  close(): Promise<void>;
}

interface Waiting {
  readonly done: (gives: never) => void;
  readonly failed: (error: Error) => void;
}

export function longWork(): LongWork {
  const waiting = new Map<number, Waiting>();
  let thread: Worker | undefined;
  let count = 0;

  function started(): Worker {
    if (thread) return thread;
    const begun = startThread();
    begun.on('message', hear);
    begun.on('error', (error) => end(begun, error instanceof Error ? error : new Error(String(error))));
    begun.on('exit', () => end(begun, new Error('The work was broken off.')));
    // A server that has nothing else to do may end.
    begun.unref();
    thread = begun;
    return begun;
  }

  function hear(answer: Answer): void {
    const one = waiting.get(answer.number);
    waiting.delete(answer.number);
    if (waiting.size === 0) thread?.unref();
    if ('gives' in answer) one?.done(answer.gives as never);
    else one?.failed(errorOf(answer));
  }

  /** The next task starts a new one. */
  function end(ended: Worker, why: Error): void {
    if (thread !== ended) return;
    thread = undefined;
    const left = [...waiting.values()];
    waiting.clear();
    for (const { failed } of left) failed(why);
  }

  return {
    run(kind, put) {
      return new Promise((done, failed) => {
        count += 1;
        waiting.set(count, { done, failed });
        const worker = started();
        worker.ref();
        worker.postMessage({ number: count, task: { kind, put } });
      });
    },
    async close() {
      const running = thread;
      if (!running) return;
      end(running, new Error('The server stops.'));
      await running.terminate();
    },
  };
}

function errorOf({ failed, reason, issues }: Extract<Answer, { failed: string }>): Error {
  if (issues) return new InputError(issues);
  return reason ? new StoreError(reason, failed) : new Error(failed);
}

/** Bundled, the thread has a bundle of its own beside the program's; otherwise its source is compiled as it is read. */
function startThread(): Worker {
  if (process.env.SPAREWRIGHT_BUNDLE === 'yes')
    return new Worker(new URL('../../cli/dist/long-work-thread.js', import.meta.url));
  const source = JSON.stringify(new URL('long-work-thread.ts', import.meta.url).href);
  const readAndRun = `import('tsx/esm/api').then(({ register }) => { register(); return import(${source}); })`;
  return new Worker(readAndRun, { eval: true });
}
