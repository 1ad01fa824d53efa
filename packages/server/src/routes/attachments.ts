/** Photographs and sounds: sent once, named by their content from then on. */
import { Hono } from 'hono';
import { z } from 'zod';
import { limitBody, queryAs } from '../body.ts';
import { refuse } from '../refusal.ts';
import type { Workbench } from '../workbench.ts';
import { fileName } from './download.ts';

const largest = 20_000_000;
const kept = ['image/jpeg', 'image/png', 'image/webp', 'audio/wav'] as const;

const sendSchema = z.object({ name: z.string().max(300).default('file'), type: z.enum(kept) });

export function attachmentRoutes({ data }: Workbench): Hono {
  const app = new Hono();

  app.post('/', limitBody(largest), async (c) => {
    const { name, type } = queryAs(c, sendSchema);
    const bytes = new Uint8Array(await c.req.arrayBuffer());
    const { hash } = data.store.attachments.put(bytes, { type, name });
    return c.json({ hash }, 201);
  });

  app.get('/:hash', (c) => {
    const found = data.store.attachments.get(c.req.param('hash'));
    if (!found) return refuse(c, 404, 'There is no such attachment.');
    const { type, name, bytes } = found;
    // Pictures and sounds are shown; anything else, such as what an import brought, is only ever written to a file.
    const shown = kept.some((one) => one === type);
    return c.body(new Uint8Array(bytes), 200, {
      'content-type': type,
      'content-disposition': `${shown ? 'inline' : 'attachment'}; filename="${fileName(name)}"`,
      // The name is made from the content, so the content never changes.
      'cache-control': 'private, max-age=31536000, immutable',
    });
  });

  return app;
}
