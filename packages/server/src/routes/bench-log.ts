/** What was done and measured at the machine: entries come in, as often as a phone without reception sends them. */
import type { BenchEntry } from '@sparewright/store/bench-log';
import { Hono } from 'hono';
import { z } from 'zod';
import { bodyAs, queryAs, takesJson } from '../body.ts';
import { together } from '../together.ts';
import type { Workbench } from '../workbench.ts';

const entrySchema = z.looseObject({
  id: z.string().min(1).max(80),
  job: z.string(),
  at: z.string(),
  kind: z.string().min(1).max(40),
});

const sendSchema = z.strictObject({ entries: z.array(entrySchema).min(1).max(500) });
const listSchema = z.object({ after: z.coerce.number().int().min(0).optional() });

export function benchLogRoutes({ data, events }: Workbench): Hono {
  const app = new Hono();
  const append = together((entries) => data.store.benchLog.append(entries));

  /** An entry is accepted, known already, or refused for good: then sending it again is of no use. */
  app.post('/bench-log', takesJson, async (c) => {
    const { entries } = await bodyAs(c, sendSchema);
    const done = await append(entries.map(({ id, job, at, ...content }) => ({ id, job, at, content })));
    const accepted = done.filter(({ outcome }) => outcome === 'added').map(({ id }) => id);
    const known = done.filter(({ outcome }) => outcome === 'known').map(({ id }) => id);
    const refused = done.flatMap((one) => {
      if (one.outcome === 'refused') return [{ id: one.id, why: one.why }];
      if (one.outcome === 'differs') return [{ id: one.id, why: 'Another entry with this id says something else.' }];
      return [];
    });
    const jobs = new Set(entries.filter((_, i) => done[i]?.outcome === 'added').map(({ job }) => job));
    for (const job of jobs) events.tell({ kind: 'bench', job });
    return c.json({ accepted, known, refused });
  });

  app.get('/jobs/:id/bench-log', (c) => {
    const id = c.req.param('id');
    const { after } = queryAs(c, listSchema);
    // An unknown job is a refusal, not an empty log.
    data.store.jobs.get(id);
    return c.json({ entries: data.store.benchLog.list(id, after).map(entryRow) });
  });

  return app;
}

function entryRow({ id, at, received, sequence, content }: BenchEntry) {
  const fields = typeof content === 'object' && content !== null && !Array.isArray(content) ? content : { content };
  return { ...fields, id, at, received, sequence };
}
