/** The shelf of jobs, and each job with its revisions. */

import { jobPage } from '@sparewright/output/page/job-page';
import type { JobEntry as ListedJob } from '@sparewright/output/present/job-view';
import type { JobEntry } from '@sparewright/store/jobs';
import { Hono } from 'hono';
import { z } from 'zod';
import { recoveredOf } from '../assessments.ts';
import { bodyAs, queryAs, takesJson } from '../body.ts';
import type { Workbench } from '../workbench.ts';
import { clientField, goBackSchema, revisionIn, revisionRow, savedAnswer, saveSchema, uponNothing } from './saving.ts';

const listSchema = z.object({
  search: z.string().max(200).optional(),
  limit: z.coerce.number().int().min(1).max(200).default(50),
  offset: z.coerce.number().int().min(0).max(1e9).default(0),
  bin: z.literal('yes').optional(),
});

const getSchema = z.object({ only: z.literal('document').optional() });

/** A document, or the name of a job to begin from. */
const createSchema = z.strictObject({
  document: z.unknown().optional(),
  copyOf: z.string().optional(),
  /** Of the copy. */
  title: z.string().max(160).optional(),
  /** Made by the client, so that sending a document twice makes one job. */
  id: z.string().optional(),
  client: clientField.optional(),
});

export function jobRoutes({ data, assessments, events }: Workbench): Hono {
  const app = new Hono();

  function created(id: string): { id: string; revision: number; document: unknown } {
    const { number, document } = data.store.jobs.get(id);
    events.tell({ kind: 'created', id });
    return { id, revision: number, document };
  }

  app.get('/', (c) => {
    const { bin, ...options } = queryAs(c, listSchema);
    const { total, jobs } = data.store.jobs.list({ ...options, bin: bin === 'yes' });
    return c.json({ total, jobs: jobs.map(listed) });
  });

  app.post('/', takesJson, async (c) => {
    const { document, copyOf, title, id, client } = await bodyAs(c, createSchema);
    const { jobs } = data.store;
    const made =
      copyOf === undefined
        ? jobs.create(document, assessments.summaryOf(document), { id, author: client })
        : jobs.copy(copyOf, title ?? titleOfCopy(jobs.get(copyOf).document));
    return c.json(created(made.id), 201);
  });

  app.get('/:id', (c) => {
    const id = c.req.param('id');
    if (queryAs(c, getSchema).only === 'document') {
      const { number, document } = data.store.jobs.get(id);
      return c.json({ id, revision: number, document });
    }
    const found = assessments.ofJob(id);
    return c.json({ ...jobPage(found, recoveredOf(found)), id, revision: found.revision });
  });

  app.put('/:id', takesJson, async (c) => {
    const id = c.req.param('id');
    const { baseRevision, document, client, undoes } = await bodyAs(c, saveSchema);
    const { jobs } = data.store;
    const latest = jobs.get(id);
    if (baseRevision > latest.number) return savedAnswer(c, uponNothing(latest));
    const saved = jobs.save(id, baseRevision, document, assessments.summaryOf(document), { author: client, undoes });
    if (saved.kind === 'merged') jobs.summarise(id, saved.revision, assessments.summaryOf(saved.document));
    if (saved.kind !== 'conflict' && saved.revision !== latest.number)
      events.tell({ kind: 'saved', id, revision: saved.revision, client });
    return savedAnswer(c, saved);
  });

  app.delete('/:id', (c) => {
    const id = c.req.param('id');
    data.store.jobs.remove(id);
    events.tell({ kind: 'removed', id });
    return c.json({ id });
  });

  app.post('/:id/unbin', (c) => {
    const id = c.req.param('id');
    data.store.jobs.putBack(id);
    return c.json(created(id));
  });

  app.get('/:id/revisions', (c) => c.json(data.store.jobs.revisions(c.req.param('id')).map(revisionRow)));

  app.get('/:id/revisions/:revision', (c) => {
    const { number, document } = data.store.jobs.revision(c.req.param('id'), revisionIn(c));
    return c.json({ revision: number, document });
  });

  app.post('/:id/restore', takesJson, async (c) => {
    const id = c.req.param('id');
    const { revision, client } = await bodyAs(c, goBackSchema);
    const saved = data.store.jobs.restore(id, revision, client);
    events.tell({ kind: 'saved', id, revision: saved.revision, client });
    return savedAnswer(c, saved);
  });

  return app;
}

function listed({
  id,
  title,
  machine,
  hazard,
  created,
  updated,
  revision,
  stage,
  worst,
}: JobEntry): ListedJob & { created: string } {
  return { id, title, machine, hazard, created, updated, revision, stage: stage ?? null, worst: worst ?? null };
}

function titleOfCopy(document: unknown): string {
  const title = typeof document === 'object' && document !== null && 'title' in document ? document.title : '';
  return `${String(title).slice(0, 150)} (copy)`;
}
