import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { Refused } from '../ask-server.ts';
import { Fault, openHost } from './host.ts';
import type { FromWorker, ToWorker } from './protocol.ts';

/** Hears what it is told and says what the test wants it to say. */
class WorkerInHand extends EventTarget {
  readonly heard: ToWorker[] = [];
  ended = false;

  postMessage(message: ToWorker): void {
    this.heard.push(structuredClone(message));
  }

  terminate(): void {
    this.ended = true;
  }

  says(data: FromWorker): void {
    this.dispatchEvent(new MessageEvent('message', { data }));
  }

  dies(): void {
    this.dispatchEvent(new Event('error', { cancelable: true }));
  }

  /** Numbers of the tasks it was given, in their order. */
  get tasks(): number[] {
    return this.heard.flatMap((m) => (m.say === 'do' ? [m.number] : []));
  }
}

let workers: WorkerInHand[];
const last = (): WorkerInHand => workers.at(-1) ?? new WorkerInHand();

function hostWith(leave: 'between steps' | 'at once', patience = Number.POSITIVE_INFINITY) {
  return openHost({
    start: () => {
      const worker = new WorkerInHand();
      workers.push(worker);
      return worker as unknown as Worker;
    },
    patience,
    leave,
  });
}

const task = { kind: 'ask', name: 'limits', input: {} } as const;
const given = () => new Promise((resolve) => setTimeout(resolve, 0));

beforeEach(() => {
  workers = [];
  vi.stubGlobal('fetch', () => Promise.resolve(Response.json({ revision: 1, document: { sparewright: 'workshop' } })));
  vi.stubGlobal(
    'EventSource',
    class {
      addEventListener(): void {}
      close(): void {}
    },
  );
});

afterEach(() => {
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

test('the workshop is handed over once, before the first task', async () => {
  const host = hostWith('at once');
  void host.run(task, {});
  await given();
  void host.run(task, {});
  await given();
  expect(last().heard.map((m) => m.say)).toEqual(['workshop', 'do', 'do']);
});

test('once the workshop is known a task goes off before anything else is done', async () => {
  const host = hostWith('at once');
  void host.run(task, {});
  await given();
  void host.run(task, {});
  expect(last().tasks).toHaveLength(2);
});

test('answers, refusals and faults come back to whoever asked', async () => {
  const host = hostWith('at once');
  const asked = [host.run(task, {}), host.run(task, {}), host.run(task, {})];
  await given();
  const [first = 0, second = 0, third = 0] = last().tasks;
  last().says({ say: 'failed', number: third, message: 'no such luck' });
  last().says({ say: 'refused', number: second, refusal: { message: 'too large', issues: [] } });
  last().says({ say: 'done', number: first, answer: 42 });
  await expect(asked[0]).resolves.toBe(42);
  await expect(asked[1]).rejects.toBeInstanceOf(Refused);
  await expect(asked[2]).rejects.toBeInstanceOf(Fault);
});

test('one that dies is started anew and given what was still to be done; what kills twice is given up', async () => {
  const host = hostWith('between steps');
  const asked = host.run(task, {});
  await given();
  const [number] = last().tasks;
  last().dies();
  expect(workers).toHaveLength(2);
  expect(workers[0]?.ended).toBe(true);
  expect(last().tasks).toEqual([number]);
  last().dies();
  await expect(asked).rejects.toThrow('given up');
});

test('one that gives no sign counts as dead', async () => {
  const host = hostWith('between steps', 1000);
  void host.run(task, {}).catch(() => undefined);
  await given();
  vi.useFakeTimers();
  const [number = 0] = last().tasks;
  // A sign starts the watch, which is then on the clock of the test.
  last().says({ say: 'parts', number, parts: {} });
  vi.advanceTimersByTime(900);
  last().says({ say: 'parts', number, parts: {} });
  vi.advanceTimersByTime(900);
  expect(workers).toHaveLength(1);
  vi.advanceTimersByTime(200);
  expect(workers).toHaveLength(2);
});

test('of a task that was left, parts that were on their way are still told', async () => {
  const host = hostWith('between steps');
  const stop = new AbortController();
  const told: unknown[] = [];
  const asked = host.run(task, { signal: stop.signal, tell: (parts) => told.push(parts) });
  await given();
  const [number = 0] = last().tasks;
  stop.abort();
  await expect(asked).rejects.toBe(stop.signal.reason);
  expect(last().heard.at(-1)).toEqual({ say: 'leave', number });
  last().says({ say: 'parts', number, parts: { title: 'late' } });
  expect(told).toEqual([{ title: 'late' }]);
});

test('a question under way is ended with its worker, and the next one goes to a new one', async () => {
  const host = hostWith('at once');
  const stop = new AbortController();
  const long = host.run(task, { signal: stop.signal });
  const next = host.run(task, {});
  await given();
  const [, second = 0] = last().tasks;
  stop.abort();
  await expect(long).rejects.toBe(stop.signal.reason);
  expect(workers).toHaveLength(2);
  expect(last().tasks).toEqual([second]);
  last().says({ say: 'done', number: second, answer: 'well' });
  await expect(next).resolves.toBe('well');
});
