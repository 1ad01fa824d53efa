/** Everything as one file and back, one job as one file and back, and whether the data is whole. */
import { createReadStream } from 'node:fs';
import { rm } from 'node:fs/promises';
import { StoreError } from '@sparewright/store/store-error';
import { type Context, Hono } from 'hono';
import { z } from 'zod';
import { bodyToFile, queryAs } from '../body.ts';
import { refuse } from '../refusal.ts';
import type { Workbench } from '../workbench.ts';
import { download } from './download.ts';

/** Photographs of 300 MB, which is the most in one archive, as base64. */
const largestArchive = 420_000_000;
const largestBackup = 20_000_000_000;

const integritySchema = z.object({ depth: z.enum(['quick', 'thorough']).default('quick') });

export function keepingRoutes({ data, events }: Workbench): Hono {
  const app = new Hono();

  /** Hands on the body as a file, which is gone afterwards. */
  async function withUpload(c: Context, largest: number, use: (path: string) => Promise<Response>): Promise<Response> {
    const path = data.passing();
    try {
      if (!(await bodyToFile(c, path, largest)))
        return refuse(c, 413, `The request is too large: at most ${largest / 1e6} MB.`);
      return await use(path);
    } catch (error) {
      // Damaged is here what was sent, not what lies on the disk.
      if (error instanceof StoreError && error.reason === 'damaged') return refuse(c, 422, error.message);
      throw error;
    } finally {
      await rm(path, { force: true });
    }
  }

  app.get('/backup', async (c) => {
    const path = data.passing();
    const { problems, bytes } = await data.whileOpen(({ folder }) =>
      data.longWork.run('backup', { folder, target: path }),
    );
    const day = new Date().toISOString().slice(0, 10);
    return c.body(fileOnce(path), 200, {
      ...download('application/vnd.sqlite3', `sparewright-${day}.backup`),
      'content-length': String(bytes),
      // How many photographs or documents could not be saved, for they are damaged already; /api/integrity names them.
      'sparewright-problems': String(problems.length),
    });
  });

  app.post('/restore', (c) =>
    withUpload(c, largestBackup, async (from) => {
      const { report, kept } = await data.restore(from);
      events.startAnew();
      return c.json({ ...report, kept: kept !== undefined });
    }),
  );

  app.post('/import', (c) =>
    withUpload(c, largestArchive, async (path) => {
      const { id, revision } = await data.whileOpen(async ({ archives, folder }) =>
        archives.adopt(await data.longWork.run('prepareImport', { from: path, folder })),
      );
      events.tell({ kind: 'created', id });
      return c.json({ id, revision, document: data.store.jobs.get(id).document }, 201);
    }),
  );

  app.get('/integrity', (c) => c.json(data.store.check(queryAs(c, integritySchema).depth)));

  return app;
}

/** The content of a file, which is gone when it has been read or nobody wants it any more. */
function fileOnce(path: string): ReadableStream<Uint8Array> {
  const file = createReadStream(path);
  const pieces: AsyncIterator<Uint8Array> = file[Symbol.asyncIterator]();
  file.once('close', () => rm(path, { force: true }));
  return new ReadableStream({
    async pull(controller) {
      const { done, value } = await pieces.next();
      if (done) controller.close();
      else controller.enqueue(value);
    },
    cancel() {
      file.destroy();
    },
  });
}
