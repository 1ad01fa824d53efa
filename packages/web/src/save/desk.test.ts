import { type Json, merge } from '@sparewright/core/job/merge';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';

/** A server in memory that keeps and merges as the real one does, each answer as late as the test wants it. */
class ServerInMemory {
  readonly revisions: Json[] = [{ guide: '6', head: '8' }];
  readonly late = { save: 10, list: 10, read: 10 };
  readonly listeners = new Map<string, (event: MessageEvent) => void>();

  get document(): Json {
    return this.revisions.at(-1) ?? null;
  }

  /** Someone else saves. */
  save(document: Json): void {
    this.revisions.push(document);
    const data = JSON.stringify({ id: 'pin', revision: this.revisions.length });
    this.listeners.get('saved')?.(new MessageEvent('saved', { data }));
  }

  async answer(address: string, init: RequestInit): Promise<Response> {
    if (init.method === 'PUT') {
      const { baseRevision, document } = JSON.parse(String(init.body));
      const joined = merge(this.revisions[baseRevision - 1] ?? null, document, this.document);
      if (joined.kind !== 'merged') throw new Error('the test is not about conflicts');
      if (JSON.stringify(joined.document) !== JSON.stringify(this.document)) this.revisions.push(joined.document);
      const body = { kind: 'saved', revision: this.revisions.length, document: this.document };
      return this.after(this.late.save, body);
    }
    if (address.endsWith('/revisions'))
      return this.after(
        this.late.list,
        this.revisions.map((_, i) => ({ revision: i + 1, at: '' })),
      );
    return this.after(this.late.read, { revision: this.revisions.length, document: this.document });
  }

  private async after(delay: number, body: unknown): Promise<Response> {
    await new Promise((resolve) => setTimeout(resolve, delay));
    return Response.json(body);
  }
}

let server: ServerInMemory;

beforeEach(() => {
  vi.useFakeTimers();
  server = new ServerInMemory();
  const kept = new Map<string, string>();
  vi.stubGlobal('localStorage', {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
    removeItem: (key: string) => void kept.delete(key),
  });
  vi.stubGlobal('addEventListener', () => undefined);
  vi.stubGlobal('removeEventListener', () => undefined);
  vi.stubGlobal('fetch', (address: string, init: RequestInit) => server.answer(address, init));
  vi.stubGlobal(
    'EventSource',
    class {
      addEventListener(kind: string, tell: (event: MessageEvent) => void): void {
        server.listeners.set(kind, tell);
      }
      close(): void {
        server.listeners.clear();
      }
    },
  );
});

afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

async function opened() {
  const { openDesk, unopened } = await import('./desk.ts');
  let state = unopened<Json>();
  const desk = openDesk<Json>({
    key: 'job.pin',
    address: '/api/jobs/pin',
    check: (document) => Promise.resolve(document),
    concerns: (news) => (news.kind === 'saved' ? 'saved' : undefined),
    tell: (next) => {
      state = next;
    },
  });
  await vi.advanceTimersByTimeAsync(100);
  const type = (field: string, value: string) =>
    desk.edit((document) => ({ ...(typeof document === 'object' ? document : {}), [field]: value }));
  return { desk, type, state: () => state };
}

describe('a change', () => {
  test('made while the list of revisions is slow to come is delivered all the same', async () => {
    server.late.list = 5000;
    const { desk, type, state } = await opened();
    type('guide', '7');
    await vi.advanceTimersByTimeAsync(1300);
    expect(server.document).toEqual({ guide: '7', head: '8' });
    type('guide', '7.5');
    await vi.advanceTimersByTimeAsync(2000);
    expect(server.document).toEqual({ guide: '7.5', head: '8' });
    expect(state().standing).toBe('saved');
    desk.close();
  });

  test('made while an earlier one is slow to arrive follows it', async () => {
    server.late.save = 4000;
    const { desk, type, state } = await opened();
    type('guide', '7');
    await vi.advanceTimersByTimeAsync(1500);
    type('guide', '7.5');
    await vi.advanceTimersByTimeAsync(20_000);
    expect(server.document).toEqual({ guide: '7.5', head: '8' });
    expect(state().standing).toBe('saved');
    desk.close();
  });

  test('of another that is told while one’s own is on its way is shown afterwards', async () => {
    server.late.save = 3000;
    const { desk, type, state } = await opened();
    type('guide', '7');
    await vi.advanceTimersByTimeAsync(2000);
    server.save({ guide: '7', head: '8.5' });
    await vi.advanceTimersByTimeAsync(20_000);
    expect(state().document).toEqual({ guide: '7', head: '8.5' });
    expect(state().standing).toBe('saved');
    desk.close();
  });

  test('of each of two at the same time leaves both with both, and at rest', async () => {
    const { desk, type, state } = await opened();
    server.late.list = 3000;
    type('guide', '7');
    await vi.advanceTimersByTimeAsync(600);
    server.save({ guide: '6', head: '8.5' });
    await vi.advanceTimersByTimeAsync(20_000);
    expect(server.document).toEqual({ guide: '7', head: '8.5' });
    expect(state().document).toEqual({ guide: '7', head: '8.5' });
    expect(['saved', 'merged']).toContain(state().standing);
    desk.close();
  });
});
