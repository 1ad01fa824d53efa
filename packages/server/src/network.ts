/** What holds for requests that come over the network, and not for those from this computer itself. */
import { getConnInfo } from '@hono/node-server/conninfo';
import { type Context, Hono, type MiddlewareHandler } from 'hono';
import { getCookie, setCookie } from 'hono/cookie';
import { z } from 'zod';
import { bodyAs, limitBody, takesJson } from './body.ts';
import { pairPage } from './pair-page.ts';
import { type Pairing, pairedFor } from './pairing.ts';
import { rateLimit } from './rate.ts';
import { refuse } from './refusal.ts';
import type { Workbench } from './workbench.ts';

export interface Network {
  /** Undefined when only this computer is served. */
  readonly pairing: Pairing | undefined;
  readonly addressOf: (c: Context) => string;
  /** Where other devices find this server; empty when only this computer is served. */
  readonly networkAddresses?: (() => readonly string[]) | undefined;
  /** Address of the style that the screens have; undefined while they are not built. */
  readonly style?: string | undefined;
}

const cookie = 'sparewright';
const pairSchema = z.strictObject({ code: z.string().max(40) });

export function peerAddress(c: Context): string {
  return getConnInfo(c).remote.address ?? '';
}

function isThisComputer(address: string): boolean {
  return /^(::ffff:)?127\.\d+\.\d+\.\d+$|^::1$/.test(address);
}

export function limitRate({ addressOf }: Network): MiddlewareHandler {
  const goesThrough = rateLimit();
  return (c, next) => {
    const address = addressOf(c);
    if (isThisComputer(address) || goesThrough(address)) return next();
    c.header('retry-after', '2');
    return Promise.resolve(refuse(c, 429, 'Too many requests from this address; wait a moment.'));
  };
}

/** Whatever has to do with data comes to paired devices only. */
export function pairedOnly({ pairing, addressOf }: Network): MiddlewareHandler {
  return (c, next) => {
    if (pairing === undefined || isThisComputer(addressOf(c))) return next();
    if (c.req.path === '/api/pair' || pairing.knows(getCookie(c, cookie) ?? '')) return next();
    return Promise.resolve(refuse(c, 401, 'This device is not paired yet: type the code shown on the host’s screen.'));
  };
}

export function pairRoutes({
  pairing,
  addressOf,
  networkAddresses,
  style,
  events,
}: Network & Pick<Workbench, 'events'>): Hono {
  const app = new Hono();
  /** Pairs the device that sent the right code. */
  function tryCode(
    c: Context,
    code: string,
  ): { kind: 'paired' } | { kind: 'wrong' } | { kind: 'wait'; seconds: number } {
    if (pairing === undefined || isThisComputer(addressOf(c))) return { kind: 'paired' };
    const answer = pairing.pair(code, addressOf(c), deviceName(c.req.header('user-agent') ?? ''));
    if ('wait' in answer) {
      c.header('retry-after', String(answer.wait));
      return { kind: 'wait', seconds: answer.wait };
    }
    if ('wrong' in answer) return { kind: 'wrong' };
    const maxAge = pairedFor / 1000;
    setCookie(c, cookie, answer.token, { httpOnly: true, sameSite: 'Strict', path: '/', maxAge });
    return { kind: 'paired' };
  }

  app.post('/api/pair', takesJson, async (c) => {
    const tried = tryCode(c, (await bodyAs(c, pairSchema)).code);
    if (tried.kind === 'paired') return c.json({ paired: true });
    if (tried.kind === 'wrong') return refuse(c, 403, 'That is not the code shown on the host’s screen.');
    return refuse(c, 429, `Too many wrong codes; wait ${Math.ceil(tried.seconds / 60)} min.`);
  });

  // The same from a plain form, for a device that has not been let in to the screens.
  app.post('/pair', limitBody(1024), async (c) => {
    const code = new URLSearchParams(await c.req.text()).get('code') ?? '';
    const { kind } = tryCode(c, code);
    return kind === 'paired' ? c.redirect('/', 303) : c.html(pairPage(kind, style), kind === 'wrong' ? 403 : 429);
  });

  /** Only this computer itself is told the code, and who is paired. */
  const hostOnly: MiddlewareHandler = (c, next) =>
    isThisComputer(addressOf(c))
      ? next()
      : Promise.resolve(refuse(c, 403, 'Only the computer on which Sparewright runs shows this.'));

  app.get('/api/pairing', hostOnly, (c) =>
    c.json({
      code: pairing?.code ?? null,
      addresses: networkAddresses?.() ?? [],
      devices: (pairing?.devices() ?? []).map(({ since, seen, ...device }) => ({
        ...device,
        since: new Date(since).toISOString(),
        seen: new Date(seen).toISOString(),
      })),
    }),
  );

  app.delete('/api/pairing/:id', hostOnly, (c) => {
    const id = c.req.param('id');
    if (!pairing?.remove(id)) return refuse(c, 404, 'There is no such device; it may have been removed already.');
    // Whoever listens is sent away to come back, and is let in again only when paired.
    events.startAnew();
    return c.json({ id });
  });

  return app;
}

/** What a browser says it runs on, in a word that tells one device from another. */
function deviceName(says: string): string {
  const known = ['iPhone', 'iPad', 'Android', 'Windows', 'Macintosh', 'CrOS', 'Linux'];
  const system = known.find((name) => says.includes(name)) ?? 'a device';
  const browser = ['Firefox', 'Edg', 'Chrome', 'Safari'].find((name) => says.includes(`${name}/`));
  return browser === undefined ? system : `${system}, ${browser === 'Edg' ? 'Edge' : browser}`;
}

/** Instead of any screen, a device that is not paired gets the page on which the code is typed. */
export function pairPageFirst(
  { pairing, addressOf, style }: Network,
  isScreen: (path: string) => boolean,
): MiddlewareHandler {
  return async (c, next) => {
    const isIn = pairing === undefined || isThisComputer(addressOf(c)) || pairing.knows(getCookie(c, cookie) ?? '');
    if (isIn || c.req.method !== 'GET' || !isScreen(c.req.path)) return next();
    return c.html(pairPage('ask', style), 401, { 'cache-control': 'no-store' });
  };
}
