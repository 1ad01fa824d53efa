/** The one workshop, with its revisions. */
import { Hono } from 'hono';
import { bodyAs, takesJson } from '../body.ts';
import type { Workbench } from '../workbench.ts';
import { goBackSchema, revisionIn, revisionRow, savedAnswer, saveSchema, uponNothing } from './saving.ts';

export function workshopRoutes({ data, events }: Workbench): Hono {
  const app = new Hono();

  app.get('/', (c) => {
    const stored = data.store.workshop.get();
    return c.json({ revision: stored?.number ?? 0, document: stored?.document ?? null });
  });

  app.put('/', takesJson, async (c) => {
    const { baseRevision, document, client, undoes } = await bodyAs(c, saveSchema);
    const { workshop } = data.store;
    const latest = workshop.get();
    if (latest && baseRevision > latest.number) return savedAnswer(c, uponNothing(latest));
    const saved = workshop.save(latest ? baseRevision : 0, document, { author: client, undoes });
    if (saved.kind !== 'conflict' && saved.revision !== latest?.number)
      events.tell({ kind: 'workshop', revision: saved.revision, client });
    return savedAnswer(c, saved);
  });

  app.get('/revisions', (c) => c.json(data.store.workshop.revisions().map(revisionRow)));

  app.get('/revisions/:revision', (c) => {
    const { number, document } = data.store.workshop.revision(revisionIn(c));
    return c.json({ revision: number, document });
  });

  app.post('/restore', takesJson, async (c) => {
    const { revision, client } = await bodyAs(c, goBackSchema);
    const saved = data.store.workshop.restore(revision, client);
    events.tell({ kind: 'workshop', revision: saved.revision, client });
    return savedAnswer(c, saved);
  });

  return app;
}
