/** Word of what others changed, as server-sent events. */
import { Hono } from 'hono';
import { streamSSE } from 'hono/streaming';
import type { EventHub, Told } from '../event-hub.ts';
import { refuse } from '../refusal.ts';

export interface EventOptions {
  readonly events: EventHub;
  /** Time between two signs of life [ms]. */
  readonly heartbeat: number;
}

export function eventRoutes({ events, heartbeat }: EventOptions): Hono {
  const app = new Hono();

  app.get('/events', (c) => {
    if (events.isFull()) return refuse(c, 503, 'Too many screens are open already; close one.');
    let stop = () => {};
    const lastHeard = heardLast(c.req.header('last-event-id'));
    const response = streamSSE(c, async (stream) => {
      const ended = new Promise<void>((end) => {
        stream.onAbort(end);
        c.req.raw.signal.addEventListener('abort', () => end());
        // The first words open the stream at once, and say how soon to come back after a loss [ms].
        void stream.write(`retry: 2000\nid: ${lastHeard ?? events.lastId()}\n\n`);
        const hear = ({ id, kind, data }: Told) => void stream.write(`id: ${id}\nevent: ${kind}\ndata: ${data}\n\n`);
        stop = events.listen({ hear, end }, lastHeard);
      });
      const alive = setInterval(() => void stream.write(': still here\n\n'), heartbeat);
      await ended;
      clearInterval(alive);
      stop();
    });
    response.headers.set('x-accel-buffering', 'no');
    return response;
  });

  return app;
}

/** Nothing but what such an id is made of, for it is written back into the stream. */
function heardLast(header: string | undefined): string | undefined {
  return header === undefined || /^[\w-]{1,40}$/.test(header) ? header : 'unknown';
}
