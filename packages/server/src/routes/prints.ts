/** What can be taken along of a job: the packet, the drawing, the job itself with everything that belongs to it. */
import { gunzipSync } from 'node:zlib';
import { drawingOf } from '@sparewright/output/page/job-page';
import { type Context, Hono } from 'hono';
import type { StoredJob } from '../assessments.ts';
import type { Paper, Tasks, ToPrint } from '../long-work.ts';
import { refuse } from '../refusal.ts';
import type { Workbench } from '../workbench.ts';
import { download, fileName } from './download.ts';

export function printRoutes({ assessments, data }: Workbench): Hono {
  const app = new Hono();
  /** Pages of the packet looked at last: they are asked for one by one. */
  let looked: { readonly at: StoredJob; readonly paper: Paper; readonly pages: Promise<Pages> } | undefined;

  function pagesOf(at: StoredJob, paper: Paper): Promise<Pages> {
    if (looked?.at !== at || looked.paper !== paper) {
      const pages = data.longWork.run('pages', { of: toPrint(at, data.store.folder), paper });
      looked = { at, paper, pages };
      // What failed is tried anew by whoever asks next.
      pages.catch(() => {
        if (looked?.pages === pages) looked = undefined;
      });
    }
    return looked.pages;
  }

  app.get('/:id/packet.pdf', async (c) => {
    const found = assessments.ofJob(c.req.param('id'));
    const paper = paperOf(c, found);
    if (paper === undefined) return refusePaper(c);
    const bytes = await data.longWork.run('packet', { of: toPrint(found, data.store.folder), paper });
    const name = `${fileName(found.job.title)}-packet-${paper}.pdf`;
    return c.body(bytes, 200, download('application/pdf', name));
  });

  app.get('/:id/packet', async (c) => {
    const found = assessments.ofJob(c.req.param('id'));
    const paper = paperOf(c, found);
    if (paper === undefined) return refusePaper(c);
    return c.json({ revision: found.revision, paper, pages: (await pagesOf(found, paper)).length });
  });

  app.get('/:id/packet/:page{[0-9]{1,4}[.]svg}', async (c) => {
    const found = assessments.ofJob(c.req.param('id'));
    const paper = paperOf(c, found);
    if (paper === undefined) return refusePaper(c);
    const bytes = (await pagesOf(found, paper))[Number.parseInt(c.req.param('page'), 10) - 1];
    if (!bytes) return refuse(c, 404, 'The packet has no such page.');
    const headers = { 'content-type': 'image/svg+xml', vary: 'accept-encoding' };
    // As it is kept, unless it is asked for by something that cannot read it so.
    if (!/\bgzip\b/.test(c.req.header('accept-encoding') ?? '')) return c.body(gunzipSync(bytes), 200, headers);
    return c.body(bytes, 200, { ...headers, 'content-encoding': 'gzip' });
  });

  app.get('/:id/drawing.svg', (c) => {
    const { job, assessment } = assessments.ofJob(c.req.param('id'));
    const svg = drawingOf(job, assessment.part, 'paper');
    if (svg === undefined) return refuse(c, 404, 'There is nothing to draw yet.');
    return c.body(svg, 200, download('image/svg+xml', `${fileName(job.title)}-drawing.svg`));
  });

  app.get('/:id/export', (c) => {
    const id = c.req.param('id');
    const text = data.store.archives.export(id);
    return c.body(text, 200, download('application/json', `${fileName(id)}.sparewright.json`));
  });

  return app;
}

type Pages = Tasks['pages']['gives'];

/** The paper asked for, else the job's own; undefined for one that is not printed on here. */
function paperOf(c: Context, { job }: StoredJob): Paper | undefined {
  const asked = c.req.query('paper') ?? job.sheet?.paper ?? 'A4';
  return asked === 'A4' || asked === 'Letter' ? asked : undefined;
}

function refusePaper(c: Context): Response {
  const value = JSON.stringify((c.req.query('paper') ?? '').slice(0, 40));
  const issue = { path: 'paper', value, expected: 'one of A4, Letter', example: 'A4' };
  return refuse(c, 400, 'The paper is one of A4, Letter.', [issue]);
}

/** What is not printed is not handed over. */
function toPrint({ job, workshop, assessment }: StoredJob, folder: string): ToPrint {
  return { job, workshop, assessment, folder };
}
