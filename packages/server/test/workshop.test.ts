import { afterAll, describe, expect, it } from 'vitest';
import { answerOf, exampleDocument } from './documents.ts';
import { openApp } from './test-app.ts';

const app = openApp({ bare: true });
afterAll(() => app.close());

const { get, post, put } = app;
const example = exampleDocument('bench-lathe.workshop.json');
const save = (baseRevision: number, document: object, client = 'desk') =>
  put('/api/workshop', { baseRevision, document, client });

describe('the workshop', () => {
  it('is nothing at first, then what was saved, with every state of it', async () => {
    expect(await answerOf(await get('/api/workshop'))).toEqual({ revision: 0, document: null });
    expect(await answerOf(await save(0, example))).toMatchObject({ kind: 'saved', revision: 1 });
    await answerOf(await save(1, { ...example, name: 'Shed' }));
    expect(await answerOf(await get('/api/workshop'))).toMatchObject({ revision: 2, document: { name: 'Shed' } });
    expect(await answerOf(await get('/api/workshop/revisions'))).toMatchObject([
      { revision: 1 },
      { revision: 2, by: 'desk' },
    ]);
    expect((await answerOf(await get('/api/workshop/revisions/1'))).document).toEqual(example);
    const back = await answerOf(await post('/api/workshop/restore', JSON.stringify({ revision: 1 })));
    expect(back).toMatchObject({ revision: 3, document: example });
  });

  it('shows both sides when two changed the same', async () => {
    const { revision } = await answerOf(await get('/api/workshop'));
    await answerOf(await save(revision, { ...example, name: 'One' }));
    const refused = await answerOf(await save(revision, { ...example, name: 'Two' }, 'phone'), 409);
    expect(refused).toMatchObject({ kind: 'conflict', theirs: { name: 'One' }, paths: ['name'] });
  });

  it('is refused when it is none, naming the place', async () => {
    const { revision } = await answerOf(await get('/api/workshop'));
    const { issues } = await answerOf(await save(revision, { ...example, name: 7 }), 422);
    expect(issues[0].path).toBe('name');
    await answerOf(await put('/api/workshop', { baseRevision: revision, client: 'desk' }), 422);
  });

  it('decides what a job is told: without it nothing is planned', async () => {
    const bare = openApp({ bare: true });
    const job = JSON.stringify(exampleDocument('plunger.job.json'));
    const route = async () =>
      (await answerOf(await bare.post('/api/assess', job))).stages.find((s: { stage: string }) => s.stage === 'route')
        .stands;
    expect(await route()).toBe('not planned');
    await answerOf(await bare.put('/api/workshop', { baseRevision: 0, document: example, client: 'desk' }));
    expect(await route()).toMatch(/operation/);
    await bare.close();
  });

  it('changes what the list says of a job when that is next looked at', async () => {
    const other = openApp({ bare: true });
    const body = JSON.stringify({ document: exampleDocument('plunger.job.json'), id: 'plunger' });
    await answerOf(await other.post('/api/jobs', body), 201);
    const stage = async () => (await answerOf(await other.get('/api/jobs?limit=1'))).jobs[0].stage;
    const before = await stage();
    await answerOf(await other.put('/api/workshop', { baseRevision: 0, document: example, client: 'desk' }));
    await answerOf(await other.get('/api/jobs/plunger'));
    expect([before, await stage()]).toEqual(['route', 'bench']);
    await other.close();
  });
});
