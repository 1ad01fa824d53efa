/** What can be taken along of a job: the packet, the drawing, the job itself with everything that belongs to it. */
import { gunzipSync, gzipSync } from 'node:zlib';
import type { Job } from '@sparewright/core/job/schema';
import { makePacket, type PacketInput, packetPages } from '@sparewright/output/packet/packet';
import { drawingOf } from '@sparewright/output/page/job-page';
import { type Context, Hono } from 'hono';
import { recoveredOf, type StoredJob } from '../assessments.ts';
import { refuse } from '../refusal.ts';
import type { Workbench } from '../workbench.ts';
import { download, fileName } from './download.ts';

type Paper = 'A4' | 'Letter';

export function printRoutes({ assessments, data }: Workbench): Hono {
  const app = new Hono();
  /** Pages of the packet looked at last: they are asked for one by one. */
  let looked: { readonly at: StoredJob; readonly paper: Paper; readonly pages: readonly PageBytes[] } | undefined;

  function pagesOf(at: StoredJob, paper: Paper): readonly PageBytes[] {
    if (looked?.at !== at || looked.paper !== paper) {
      const pages = packetPages(packetInput(at, paper)).map((page) => new Uint8Array(gzipSync(page)));
      looked = { at, paper, pages };
    }
    return looked.pages;
  }

  app.get('/:id/packet.pdf', (c) => {
    const found = assessments.ofJob(c.req.param('id'));
    const paper = paperOf(c, found);
    if (paper === undefined) return refusePaper(c);
    const bytes = makePacket(packetInput(found, paper));
    const name = `${fileName(found.job.title)}-packet-${paper}.pdf`;
    return c.body(new Uint8Array(bytes), 200, download('application/pdf', name));
  });

  app.get('/:id/packet', (c) => {
    const found = assessments.ofJob(c.req.param('id'));
    const paper = paperOf(c, found);
    if (paper === undefined) return refusePaper(c);
    return c.json({ revision: found.revision, paper, pages: pagesOf(found, paper).length });
  });

  app.get('/:id/packet/:page{[0-9]{1,4}[.]svg}', (c) => {
    const found = assessments.ofJob(c.req.param('id'));
    const paper = paperOf(c, found);
    if (paper === undefined) return refusePaper(c);
    const bytes = pagesOf(found, paper)[Number.parseInt(c.req.param('page'), 10) - 1];
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

type PageBytes = Uint8Array<ArrayBuffer>;

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

function packetInput(found: StoredJob, paper: Paper): PacketInput {
  const { job, workshop, assessment } = found;
  const onPaper: Job = { ...job, sheet: { ...job.sheet, paper } };
  return { job: onPaper, workshop, assessment, recovered: recoveredOf(found) };
}
