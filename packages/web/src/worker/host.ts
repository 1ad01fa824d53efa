/** The page's side of a worker: gives it tasks, and starts it anew when it has died. */
import type { Json } from '@sparewright/core/job/merge';
import type { PageParts } from '@sparewright/output/page/job-page';
import { Refused } from '../ask-server.ts';
import { knownWorkshop, whenWorkshopChanges } from './known-workshop.ts';
import type { FromWorker, Task, ToWorker } from './protocol.ts';

/** The program failed at a task by its own fault: what was typed may be quite right. */
export class Fault extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'Fault';
  }
}

export interface Host {
  /**
   * @throws Refused when what was put in will not do
   * @throws Fault when the program failed at it
   */
  run(task: Task, options: RunOptions): Promise<unknown>;
  /** Begins to load it and the workshop, for a task that is soon to come. */
  warm(): void;
}

export interface RunOptions {
  /** Leaves the task; its promise is then rejected with the signal's reason. */
  readonly signal?: AbortSignal | undefined;
  readonly tell?: ((parts: PageParts) => void) | undefined;
}

export interface HostOptions {
  readonly start: () => Worker;
  /** Without a sign for this long while something is to be done, it counts as dead [ms]; Infinity for work that may take long. */
  readonly patience: number;
  /** How a task under way is left: it looks by itself between its steps, or it has none and its worker is ended. */
  readonly leave: 'between steps' | 'at once';
}

interface Pending {
  readonly task: Task;
  readonly options: RunOptions;
  readonly settle: { readonly done: (answer: unknown) => void; readonly failed: (error: unknown) => void };
  deaths: number;
  /** Its promise is rejected already; parts that were on their way are still told, for the worker will not tell them twice. */
  left: boolean;
}

/** A task that outlives this many workers is what kills them. */
const mostDeaths = 2;

export function openHost({ start, patience, leave }: HostOptions): Host {
  const pending = new Map<number, Pending>();
  let worker: Worker | undefined;
  let workshop: Json | undefined;
  let count = 0;
  let watch: ReturnType<typeof setTimeout> | undefined;

  whenWorkshopChanges((document) => {
    workshop = document;
    worker?.postMessage({ say: 'workshop', document } satisfies ToWorker);
  });

  function ready(): Worker {
    if (worker) return worker;
    const begun = start();
    begun.addEventListener('message', ({ data }: MessageEvent<FromWorker>) => hear(data));
    begun.addEventListener('error', (event) => {
      event.preventDefault();
      died(event.message);
    });
    worker = begun;
    if (workshop !== undefined) begun.postMessage({ say: 'workshop', document: workshop } satisfies ToWorker);
    return begun;
  }

  function give(number: number, task: Task): void {
    ready().postMessage({ say: 'do', number, task } satisfies ToWorker);
    keepWatch();
  }

  /** Also after each sign: as long as something is told, it is alive. */
  function keepWatch(): void {
    clearTimeout(watch);
    if (pending.size > 0 && Number.isFinite(patience))
      watch = setTimeout(() => died(`no answer within ${patience / 1000} s`), patience);
  }

  function hear(said: FromWorker): void {
    const found = pending.get(said.number);
    if (found && said.say !== 'parts') pending.delete(said.number);
    keepWatch();
    if (said.say === 'parts') found?.options.tell?.(said.parts);
    else if (said.say === 'done') found?.settle.done(said.answer);
    else if (said.say === 'left') return;
    else if (said.say === 'refused') found?.settle.failed(new Refused(said.refusal, 422));
    else found?.settle.failed(new Fault(`The program failed at this; it is its own fault: ${said.message}`));
  }

  function end(): void {
    clearTimeout(watch);
    worker?.terminate();
    worker = undefined;
  }

  /** Whoever is still waiting is served by a new one. */
  function beginAnew(): void {
    for (const [number, { task, left }] of pending)
      if (left) pending.delete(number);
      else give(number, task);
  }

  function died(why: string): void {
    end();
    for (const [number, one] of pending) {
      one.deaths += 1;
      if (one.deaths < mostDeaths || one.left) continue;
      pending.delete(number);
      one.settle.failed(new Fault(`The reckoning broke off twice and was given up: ${why || 'no reason was told'}.`));
    }
    beginAnew();
  }

  function left(number: number, why: unknown): void {
    const [underWay] = pending.keys();
    const one = pending.get(number);
    if (!one || one.left) return;
    one.left = true;
    one.settle.failed(why);
    if (leave === 'at once' && number === underWay) {
      end();
      beginAnew();
    } else worker?.postMessage({ say: 'leave', number } satisfies ToWorker);
  }

  /** The workshop, once; changes follow by themselves. */
  async function handOver(): Promise<void> {
    const to = ready();
    if (workshop !== undefined) return;
    const document = await knownWorkshop();
    if (workshop !== undefined) return;
    workshop = document;
    if (worker === to) to.postMessage({ say: 'workshop', document } satisfies ToWorker);
  }

  return {
    warm: () => void handOver(),
    async run(task, options) {
      // Once the workshop is known the task goes off at once, before the page is busy with showing what was typed.
      if (workshop === undefined) await handOver();
      return new Promise((done, failed) => {
        if (options.signal?.aborted) return failed(options.signal.reason);
        count += 1;
        const number = count;
        pending.set(number, { task, options, settle: { done, failed }, deaths: 0, left: false });
        options.signal?.addEventListener('abort', () => left(number, options.signal?.reason), { once: true });
        give(number, task);
      });
    },
  };
}
