import { afterAll, describe, expect, it } from 'vitest';
import { answerOf, jobDocument } from './documents.ts';
import { openApp } from './test-app.ts';

const app = openApp({ bare: true });
afterAll(() => app.close());

const { get, post, put, send } = app;
const create = async (changes: object = {}) =>
  answerOf(await post('/api/jobs', JSON.stringify({ document: jobDocument(changes), client: 'desk' })), 201);
const save = (id: string, baseRevision: number, changes: object, client = 'desk') =>
  put(`/api/jobs/${id}`, { baseRevision, document: jobDocument(changes), client });

describe('the list', () => {
  it('is searched by words of title and machine, the latest first, a piece at a time', async () => {
    for (const n of [1, 2, 3]) await create({ title: `Zinnober pin ${n}`, machine: { name: 'Walnut press' } });
    const found = await answerOf(await get('/api/jobs?search=zinnob&limit=2'));
    expect(found.total).toBe(3);
    expect(found.jobs).toHaveLength(2);
    const walnut = await answerOf(await get('/api/jobs?search=walnut+pin&limit=10&offset=2'));
    expect(walnut.total).toBe(3);
    expect(walnut.jobs).toHaveLength(1);
    expect(await answerOf(await get('/api/jobs?search=walnut+cherry'))).toEqual({ total: 0, jobs: [] });
    const [latest] = (await answerOf(await get('/api/jobs?limit=1'))).jobs;
    expect(latest).toMatchObject({
      title: 'Zinnober pin 3',
      machine: 'Walnut press',
      hazard: 'ordinary',
      revision: 1,
      stage: 'evidence',
    });
  });

  it.each(['limit=0', 'limit=1000', 'limit=x', 'offset=-1'])('refuses %s in words', async (query) => {
    const { message } = await answerOf(await get(`/api/jobs?${query}`), 422);
    expect(message).toContain(query.split('=')[0]);
  });
});

describe('a new job', () => {
  it('is there with its document, under the id that the client made, once however often it is sent', async () => {
    const body = JSON.stringify({ document: jobDocument({ title: 'Sent twice' }), id: 'sent-twice' });
    const first = await answerOf(await post('/api/jobs', body), 201);
    expect(first).toEqual({ id: 'sent-twice', revision: 1, document: jobDocument({ title: 'Sent twice' }) });
    await answerOf(await post('/api/jobs', body), 201);
    expect((await answerOf(await get('/api/jobs?search=sent+twice'))).total).toBe(1);
    const other = JSON.stringify({ document: jobDocument({ title: 'Another' }), id: 'sent-twice' });
    await answerOf(await post('/api/jobs', other), 409);
  });

  it('can begin as a copy, which then goes its own way', async () => {
    const { id } = await create({ title: 'Original' });
    const copy = await answerOf(await post('/api/jobs', JSON.stringify({ copyOf: id })), 201);
    expect(copy.id).not.toBe(id);
    expect(copy.document.title).toBe('Original (copy)');
    await answerOf(await save(copy.id, 1, { title: 'Changed' }));
    expect((await answerOf(await get(`/api/jobs/${id}`))).document.title).toBe('Original');
  });

  it('is refused when it is no job, naming the place', async () => {
    const body = JSON.stringify({ document: { ...jobDocument(), hazard: 'terrible' } });
    const { issues } = await answerOf(await post('/api/jobs', body), 422);
    expect(issues[0].path).toBe('hazard');
    for (const nothing of [{}, { document: null }, { copyOf: 7 }, { document: jobDocument(), extra: 1 }])
      await answerOf(await post('/api/jobs', JSON.stringify(nothing)), 422);
    await answerOf(await post('/api/jobs', JSON.stringify({ copyOf: 'no-such-job' })), 404);
  });
});

describe('two screens on one job', () => {
  it('have their changes joined when they changed different things', async () => {
    const { id } = await create({ title: 'Pin', notes: 'none' });
    const mine = await answerOf(await save(id, 1, { title: 'Pin of the gate', notes: 'none' }, 'desk'));
    expect(mine).toMatchObject({ kind: 'saved', revision: 2 });
    const theirs = await answerOf(await save(id, 1, { title: 'Pin', notes: 'worn on one side' }, 'phone'));
    expect(theirs).toMatchObject({
      kind: 'merged',
      revision: 3,
      document: { title: 'Pin of the gate', notes: 'worn on one side' },
      changed: ['title'],
    });
    const { document, revision } = await answerOf(await get(`/api/jobs/${id}?only=document`));
    expect({ document, revision }).toEqual({ document: theirs.document, revision: 3 });
    expect((await answerOf(await get('/api/jobs?search=gate'))).jobs[0]).toMatchObject({
      id,
      title: 'Pin of the gate',
    });
  });

  it('are shown both sides when they changed the same, and nothing is stored', async () => {
    const { id } = await create({ notes: 'begun' });
    await answerOf(await save(id, 1, { notes: 'by the desk' }, 'desk'));
    const refused = await answerOf(await save(id, 1, { notes: 'by the phone' }, 'phone'), 409);
    expect(refused).toMatchObject({
      kind: 'conflict',
      revision: 2,
      theirs: { notes: 'by the desk' },
      paths: ['notes'],
    });
    expect(await answerOf(await get(`/api/jobs/${id}/revisions`))).toHaveLength(2);
    // Having seen theirs, the phone insists.
    expect(await answerOf(await save(id, 2, { notes: 'by the phone' }, 'phone'))).toMatchObject({ revision: 3 });
  });

  it('may send a save twice, or one that changes nothing, without a further revision', async () => {
    const { id } = await create();
    for (let i = 0; i < 2; i++)
      expect(await answerOf(await save(id, 1, { notes: 'n' }))).toMatchObject({ revision: 2 });
    expect(await answerOf(await get(`/api/jobs/${id}/revisions`))).toHaveLength(2);
  });

  it('get both sides when a save builds upon a revision that a restore has taken away', async () => {
    const { id } = await create({ notes: 'old' });
    expect(await answerOf(await save(id, 40, { notes: 'new' }), 409)).toMatchObject({
      kind: 'conflict',
      revision: 1,
      theirs: { notes: 'old' },
    });
  });
});

describe('revisions', () => {
  it('say when and by whom, can each be read, gone back to, and taken back', async () => {
    const { id } = await create({ notes: 'one' });
    await answerOf(await save(id, 1, { notes: 'two' }, 'phone'));
    const back = await answerOf(await post(`/api/jobs/${id}/restore`, JSON.stringify({ revision: 1, client: 'desk' })));
    expect(back).toMatchObject({ kind: 'saved', revision: 3, document: { notes: 'one' } });
    const undo = { baseRevision: 3, document: jobDocument({ notes: 'two' }), client: 'desk', undoes: 3 };
    expect(await answerOf(await put(`/api/jobs/${id}`, undo))).toMatchObject({ revision: 4 });
    const rows = await answerOf(await get(`/api/jobs/${id}/revisions`));
    expect(rows.map((r: { by: string }) => r.by)).toEqual(['desk', 'phone', 'desk', 'desk']);
    expect(rows[3]).toMatchObject({ revision: 4, at: expect.stringMatching(/^\d{4}-.*Z$/), undoes: 3 });
    expect(await answerOf(await get(`/api/jobs/${id}/revisions/2`))).toEqual({
      revision: 2,
      document: jobDocument({ notes: 'two' }),
    });
    await answerOf(await get(`/api/jobs/${id}/revisions/99`), 404);
    await answerOf(await get(`/api/jobs/${id}/revisions/x`), 422);
    await answerOf(await post(`/api/jobs/${id}/restore`, JSON.stringify({ revision: 99 })), 404);
  });
});

describe('the bin', () => {
  it('takes a job out of the list until it is put back; it can be read but not changed there', async () => {
    const { id } = await create({ title: 'Quince' });
    await answerOf(await send('DELETE', `/api/jobs/${id}`));
    expect((await answerOf(await get('/api/jobs?search=quince'))).total).toBe(0);
    expect((await answerOf(await get('/api/jobs?bin=yes'))).jobs.map((j: { id: string }) => j.id)).toEqual([id]);
    await answerOf(await get(`/api/jobs/${id}`));
    const { message, kind } = await answerOf(await save(id, 1, { notes: 'x' }), 409);
    expect(message).toContain('bin');
    expect(kind).toBeUndefined();
    await answerOf(await post(`/api/jobs/${id}/unbin`, '{}'));
    expect((await answerOf(await get('/api/jobs?search=quince'))).total).toBe(1);
  });

  it('knows no job that never was', async () => {
    await answerOf(await send('DELETE', '/api/jobs/never-was'), 404);
    await answerOf(await post('/api/jobs/never-was/unbin', '{}'), 404);
    await answerOf(await save('never-was', 1, {}), 404);
    await answerOf(await get('/api/jobs/never-was/revisions'), 404);
  });
});

describe('text that a person typed', () => {
  const script = '<script>alert(1)</script>';

  it('comes back as it was typed, as JSON, and in no answer as a page', async () => {
    const { id } = await create({ title: script, notes: script, machine: { name: script } });
    for (const path of ['/api/jobs?limit=5', `/api/jobs/${id}`, `/api/jobs/${id}/revisions/1`]) {
      const response = await get(path);
      expect(response.headers.get('content-type')).toMatch(/^application\/json/);
      expect(response.headers.get('x-content-type-options')).toBe('nosniff');
      expect(await response.text()).toContain(script);
    }
    expect(app.ownFaults()).toEqual([]);
  });
});
