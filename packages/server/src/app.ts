/** The routes. Everything that is answered is computed by the core and worded by output; nothing here knows the trade. */
import { worstFirst } from '@sparewright/core/finding';
import type { Job } from '@sparewright/core/job/schema';
import { ask } from '@sparewright/core/questions/ask';
import { makePacket } from '@sparewright/output/packet/packet';
import { type Context, Hono } from 'hono';
import type { JobEntry } from './answer.ts';
import { jsonBody } from './body.ts';
import { headers, limitBody, ownHostOnly } from './guard.ts';
import type { Jobs } from './jobs.ts';
import { type Assessed, drawingOf, jobPage } from './page/job-page.ts';
import { refusalOf, refuse } from './refusal.ts';
import type { ScreenFile } from './screens.ts';

export interface AppParts {
  readonly jobs: Jobs;
  readonly screens: ReadonlyMap<string, ScreenFile>;
  readonly isOwnHost: (host: string) => boolean;
  /** Told of every answer. */
  readonly log?: ((line: { method: string; path: string; status: number; milliseconds: number }) => void) | undefined;
  /** Told of errors that are the program's own fault. */
  readonly fault: (error: unknown) => void;
}

export function createApp({ jobs, screens, isOwnHost, log, fault }: AppParts): Hono {
  const app = new Hono();

  app.use(headers);
  if (log) {
    app.use(async (c, next) => {
      const began = performance.now();
      await next();
      const { method, path } = c.req;
      log({ method, path, status: c.res.status, milliseconds: Math.round(performance.now() - began) });
    });
  }
  app.use(ownHostOnly(isOwnHost));
  app.use('/api/*', async (c, next) => {
    await next();
    c.res.headers.set('cache-control', 'no-store');
  });

  app.get('/health', (c) => c.json({ status: 'ok' }));
  app.get('/api/jobs', (c) => c.json(jobs.ids.flatMap((id) => entryOf(id, jobs.find(id)))));
  app.get('/api/jobs/:id', (c) => withJob(c, jobs, (found) => c.json(jobPage(found))));
  app.get('/api/jobs/:id/packet.pdf', (c) => withJob(c, jobs, (found) => packet(c, found)));
  app.get('/api/jobs/:id/drawing.svg', (c) => withJob(c, jobs, (found) => drawing(c, found)));

  app.post('/api/*', limitBody, async (c, next) => {
    if (/^application\/json\b/i.test(c.req.header('content-type') ?? '')) return next();
    return refuse(c, 415, 'The body must be JSON, sent as application/json.');
  });
  app.post('/api/assess', async (c) => c.json(jobPage(jobs.assess(await jsonBody(c)))));
  app.post('/api/ask/:name', async (c) => c.json(ask(c.req.param('name'), await jsonBody(c))));

  app.all('/api/*', (c) => refuse(c, 404, 'There is no such address.'));
  app.get('*', (c) => {
    if (screens.size === 0) return c.text('The screens are not built yet: run `npm run build`, then start again.', 503);
    const file = screens.get(c.req.path);
    if (!file) return refuse(c, 404, 'There is no such page.');
    const cache = file.lasting ? 'public, max-age=31536000, immutable' : 'no-cache';
    return c.body(file.bytes, 200, { 'content-type': file.type, 'cache-control': cache });
  });
  app.notFound((c) => refuse(c, 404, 'There is no such address.'));
  app.onError((error, c) => {
    const refusal = refusalOf(error);
    if (refusal) return c.json(refusal, 422);
    fault(error);
    return refuse(c, 500, 'The program failed at this; it is its own fault. Nothing was changed.');
  });
  return app;
}

function withJob(c: Context, jobs: Jobs, answer: (found: Assessed) => Response): Response {
  const found = jobs.find(c.req.param('id') ?? '');
  return found ? answer(found) : refuse(c, 404, 'There is no job of that name.');
}

function entryOf(id: string, found: Assessed | undefined): JobEntry[] {
  if (!found) return [];
  const [worst] = worstFirst(found.assessment.findings);
  const { title, hazard } = found.job;
  return [{ id, title, hazard, worst: worst ? { level: worst.level, says: worst.says } : null }];
}

function packet(c: Context, { job, workshop, assessment }: Assessed): Response {
  const paper = c.req.query('paper') ?? job.sheet?.paper ?? 'A4';
  if (paper !== 'A4' && paper !== 'Letter')
    return refuse(c, 400, 'The paper is one of A4, Letter.', [
      { path: 'paper', value: JSON.stringify(paper.slice(0, 40)), expected: 'one of A4, Letter', example: 'A4' },
    ]);
  const onPaper: Job = { ...job, sheet: { ...job.sheet, paper } };
  const bytes = makePacket({ job: onPaper, workshop, assessment });
  return c.body(new Uint8Array(bytes), 200, attachment('application/pdf', `${fileName(job)}-packet-${paper}.pdf`));
}

function drawing(c: Context, { job, assessment }: Assessed): Response {
  const svg = drawingOf(job, assessment, 'paper');
  if (svg === undefined) return refuse(c, 404, 'There is nothing to draw yet.');
  return c.body(svg, 200, attachment('image/svg+xml', `${fileName(job)}-drawing.svg`));
}

function attachment(type: string, name: string): Record<string, string> {
  return { 'content-type': type, 'content-disposition': `attachment; filename="${name}"` };
}

/** A title as a file name that every system takes. */
function fileName({ title }: Job): string {
  const name = title
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
  return name.slice(0, 60) || 'job';
}
