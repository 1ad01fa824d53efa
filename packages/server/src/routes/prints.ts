/** What can be taken along of a job: the packet, the drawing, the job itself with everything that belongs to it. */
import type { Job } from '@sparewright/core/job/schema';
import { makePacket } from '@sparewright/output/packet/packet';
import { drawingOf } from '@sparewright/output/page/job-page';
import { Hono } from 'hono';
import { recoveredOf } from '../assessments.ts';
import { refuse } from '../refusal.ts';
import type { Workbench } from '../workbench.ts';
import { download, fileName } from './download.ts';

export function printRoutes({ assessments, data }: Workbench): Hono {
  const app = new Hono();

  app.get('/:id/packet.pdf', (c) => {
    const found = assessments.ofJob(c.req.param('id'));
    const { job, workshop, assessment } = found;
    const paper = c.req.query('paper') ?? job.sheet?.paper ?? 'A4';
    if (paper !== 'A4' && paper !== 'Letter')
      return refuse(c, 400, 'The paper is one of A4, Letter.', [
        { path: 'paper', value: JSON.stringify(paper.slice(0, 40)), expected: 'one of A4, Letter', example: 'A4' },
      ]);
    const onPaper: Job = { ...job, sheet: { ...job.sheet, paper } };
    const bytes = makePacket({ job: onPaper, workshop, assessment, recovered: recoveredOf(found) });
    return c.body(
      new Uint8Array(bytes),
      200,
      download('application/pdf', `${fileName(job.title)}-packet-${paper}.pdf`),
    );
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
