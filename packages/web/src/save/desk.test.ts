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

  /** A backup is put in place of everything. */
  restore(revisions: readonly Json[]): void {
    this.revisions.splice(0, this.revisions.length, ...revisions);
    this.listeners.get('missed')?.(new MessageEvent('missed'));
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
  const { openDesk } = await import('./desk.ts');
  const { unopened } = await import('./desk-state.ts');
  const { Refused } = await import('../ask-server.ts');
  let state = unopened<Json>();
  const desk = openDesk<Json>({
    key: 'job.pin',
    address: '/api/jobs/pin',
    check: (document) =>
      JSON.stringify(document).includes('thick')
        ? Promise.reject(new Refused({ message: 'no size', issues: [] }, 422))
        : Promise.resolve(document),
    concerns: (news) => (news.kind === 'saved' || news.kind === 'back' ? 'saved' : undefined),
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

  test('is shown at once, and kept only when it has stood for a while', async () => {
    const { desk, type, state } = await opened();
    type('guide', '1');
    await vi.advanceTimersByTimeAsync(0);
    expect(state().view).toEqual({ guide: '1', head: '8' });
    await vi.advanceTimersByTimeAsync(200);
    expect(localStorage.getItem('sparewright.outbox.job.pin')).toBeNull();
    type('guide', '12');
    await vi.advanceTimersByTimeAsync(3000);
    expect(server.revisions).toEqual([
      { guide: '6', head: '8' },
      { guide: '12', head: '8' },
    ]);
    desk.close();
  });

  test('that is refused is told after a while, and left by undoing, at once if need be', async () => {
    const { desk, type, state } = await opened();
    for (const patience of [100, 600]) {
      type('guide', 'thick');
      await vi.advanceTimersByTimeAsync(patience);
      expect(state().standing).toBe(patience < 300 ? 'sending' : 'refused');
      desk.undo();
      await vi.advanceTimersByTimeAsync(100);
      expect(state().document).toEqual({ guide: '6', head: '8' });
    }
    expect(server.revisions).toHaveLength(1);
    desk.close();
  });

  test.each([
    { pace: 500, that: 'each stands for a while' },
    { pace: 200, that: 'none stands for long' },
  ])('after change without a pause reaches the others all the same: $that', async ({ pace }) => {
    const { desk, type, state } = await opened();
    let words = '';
    for (let typed = 0; typed < 12_000; typed += pace) {
      words += 'x';
      type('notes', words);
      await vi.advanceTimersByTimeAsync(pace);
      // Neither a letter a revision, nor nothing.
      expect(server.revisions.length).toBeLessThan(2 + typed / 3000);
      if (typed > 9000) expect(server.revisions.length).toBeGreaterThan(1);
      if (state().standing === 'saved') expect(state().document).toEqual(server.document);
    }
    await vi.advanceTimersByTimeAsync(3000);
    expect(server.document).toEqual({ guide: '6', head: '8', notes: words });
    expect(state().standing).toBe('saved');
    desk.close();
  });

  test('typed on while it is on its way is not called kept before it is, nor one that is refused', async () => {
    server.late.save = 1000;
    const { desk, type, state } = await opened();
    type('guide', '7');
    await vi.advanceTimersByTimeAsync(2100);
    type('guide', '7.5');
    await vi.advanceTimersByTimeAsync(150);
    expect(server.document).toEqual({ guide: '7', head: '8' });
    expect(state().standing).toBe('sending');
    await vi.advanceTimersByTimeAsync(5000);
    expect(state().standing).toBe('saved');
    type('guide', '8');
    await vi.advanceTimersByTimeAsync(1300);
    type('guide', 'thick');
    await vi.advanceTimersByTimeAsync(5000);
    expect(server.document).toEqual({ guide: '8', head: '8' });
    expect(state().standing).toBe('refused');
    desk.close();
  });

  test('made just before one leaves is delivered', async () => {
    const { desk, type } = await opened();
    type('guide', '7');
    await vi.advanceTimersByTimeAsync(50);
    desk.close();
    await vi.advanceTimersByTimeAsync(100);
    expect(server.document).toEqual({ guide: '7', head: '8' });
  });
});

test('what lies in the outbox is opened while the server is away, and delivered when it is back', async () => {
  const letter = { base: 1, baseDocument: { guide: '6', head: '8' }, document: { guide: '7', head: '8' } };
  localStorage.setItem('sparewright.outbox.job.pin', JSON.stringify(letter));
  vi.stubGlobal('fetch', () => Promise.reject(new TypeError('away')));
  const { desk, state } = await opened();
  await vi.advanceTimersByTimeAsync(5000);
  expect(state()).toMatchObject({ view: letter.document, standing: 'kept here', trouble: '' });
  server.save({ guide: '6', head: '9' });
  vi.stubGlobal('fetch', (address: string, init: RequestInit) => server.answer(address, init));
  await vi.advanceTimersByTimeAsync(5000);
  expect(server.document).toEqual({ guide: '7', head: '9' });
  expect(state()).toMatchObject({ document: { guide: '7', head: '9' }, standing: 'merged' });
  desk.close();
});

test('a restored backup is shown by itself, though its revisions are older', async () => {
  const { desk, type, state } = await opened();
  type('guide', '7');
  await vi.advanceTimersByTimeAsync(3000);
  expect(state().revision).toBe(2);
  server.restore([{ guide: '5', head: '9' }]);
  await vi.advanceTimersByTimeAsync(100);
  expect(state()).toMatchObject({ revision: 1, document: { guide: '5', head: '9' }, standing: 'saved' });
  desk.close();
});
