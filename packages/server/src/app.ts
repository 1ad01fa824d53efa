/** The routes. Everything that is answered is computed by the core and worded by output; nothing here knows the trade. */
import { ask } from '@sparewright/core/questions/ask';
import { jobPage } from '@sparewright/output/page/job-page';
import { Hono, type MiddlewareHandler } from 'hono';
import { recoveredOf } from './assessments.ts';
import { jsonBody, takesJson } from './body.ts';
import { allowOwnForm, closeAfterUnreadBody, headers, ownHostOnly } from './guard.ts';
import { limitRate, type Network, pairedOnly, pairPageFirst, pairRoutes } from './network.ts';
import { refusalOf, refuse } from './refusal.ts';
import { attachmentRoutes } from './routes/attachments.ts';
import { benchLogRoutes } from './routes/bench-log.ts';
import { eventRoutes } from './routes/events.ts';
import { jobRoutes } from './routes/jobs.ts';
import { keepingRoutes } from './routes/keeping.ts';
import { printRoutes } from './routes/prints.ts';
import { workshopRoutes } from './routes/workshop.ts';
import type { ScreenFile } from './screens.ts';
import type { Workbench } from './workbench.ts';

export interface AppParts extends Workbench, Network {
  readonly screens: ReadonlyMap<string, ScreenFile>;
  readonly isOwnHost: (host: string) => boolean;
  /** Time between two signs of life to a screen that listens [ms]; 20 s when left out. */
  readonly heartbeat?: number | undefined;
  /** Told of every answer. */
  readonly log?: ((line: LogLine) => void) | undefined;
  /** Told of errors that are the program's own fault. */
  readonly fault: (error: unknown) => void;
}

export interface LogLine {
  readonly method: string;
  readonly path: string;
  readonly status: number;
  readonly milliseconds: number;
  readonly from: string;
}

export function createApp(parts: AppParts): Hono {
  const { assessments, events, screens, isOwnHost, heartbeat = 20_000, log, addressOf, fault } = parts;
  const network = { ...parts, style: styleOf(screens) };
  const app = new Hono();

  app.use(allowOwnForm);
  app.use(headers);
  app.use(closeAfterUnreadBody);
  if (log) app.use(logged(log, addressOf));
  app.use(limitRate(parts));
  app.use(ownHostOnly(isOwnHost));
  app.use('/api/*', pairedOnly(parts));
  app.use(pairPageFirst(network, isScreen));
  app.use('/api/*', async (c, next) => {
    await next();
    if (!c.res.headers.has('cache-control')) c.res.headers.set('cache-control', 'no-store');
  });

  app.get('/health', (c) => c.json({ status: 'ok' }));
  app.route('/', pairRoutes(network));
  app.route('/api/jobs', printRoutes(parts));
  app.route('/api/jobs', jobRoutes(parts));
  app.route('/api/workshop', workshopRoutes(parts));
  app.route('/api', benchLogRoutes(parts));
  app.route('/api/attachments', attachmentRoutes(parts));
  app.route('/api', keepingRoutes(parts));
  app.route('/api', eventRoutes({ events, heartbeat }));
  app.post('/api/assess', takesJson, async (c) => {
    const found = assessments.ofDocument(await jsonBody(c));
    return c.json(jobPage(found, recoveredOf(found)));
  });
  app.post('/api/ask/:name', takesJson, async (c) => c.json(ask(c.req.param('name'), await jsonBody(c))));

  // What the screens are made of, for the browser that keeps them.
  app.get('/screens.json', (c) => {
    c.header('cache-control', 'no-store');
    return c.json([...screens.keys()].filter((path) => path !== '/' && path !== '/service-worker.js'));
  });
  app.all('/api/*', (c) => refuse(c, 404, 'There is no such address.'));
  app.get('*', (c) => {
    if (screens.size === 0) return c.text('The screens are not built yet: run `npm run build`, then start again.', 503);
    const file = screens.get(isScreen(c.req.path) ? '/index.html' : c.req.path);
    if (!file) return refuse(c, 404, 'There is no such page.');
    const cache = file.lasting ? 'public, max-age=31536000, immutable' : 'no-cache';
    return c.body(file.bytes, 200, { 'content-type': file.type, 'cache-control': cache });
  });
  app.notFound((c) => refuse(c, 404, 'There is no such address.'));
  app.onError((error, c) => {
    const known = refusalOf(error);
    if (known && known.status < 500) return c.json(known.refusal, known.status);
    fault(error);
    if (known) return c.json(known.refusal, known.status);
    return refuse(c, 500, 'The program failed at this; it is its own fault. Nothing was changed.');
  });
  return app;
}

/** Addresses of the screens themselves, which one page answers. */
function isScreen(path: string): boolean {
  return path === '/' || /^\/(jobs|workshop|new|help|pairing)(\/[a-z0-9-]+){0,2}\/?$/.test(path);
}

/** The style that the page of the screens asks for. */
function styleOf(screens: ReadonlyMap<string, ScreenFile>): string | undefined {
  return [...screens.keys()].find((path) => path.startsWith('/assets/index-') && path.endsWith('.css'));
}

function logged(log: (line: LogLine) => void, addressOf: Network['addressOf']): MiddlewareHandler {
  return async (c, next) => {
    const began = performance.now();
    await next();
    const { method, path } = c.req;
    const milliseconds = Math.round(performance.now() - began);
    log({ method, path, status: c.res.status, milliseconds, from: addressOf(c) });
  };
}
