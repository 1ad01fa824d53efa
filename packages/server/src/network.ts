/** What holds for requests that come over the network, and not for those from this computer itself. */
import { getConnInfo } from '@hono/node-server/conninfo';
import { type Context, Hono, type MiddlewareHandler } from 'hono';
import { getCookie, setCookie } from 'hono/cookie';
import { z } from 'zod';
import { bodyAs, takesJson } from './body.ts';
import { type Pairing, pairedFor } from './pairing.ts';
import { rateLimit } from './rate.ts';
import { refuse } from './refusal.ts';

export interface Network {
  /** Undefined when only this computer is served. */
  readonly pairing: Pairing | undefined;
  readonly addressOf: (c: Context) => string;
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

/** The screens come to everyone, so that they can ask for the code; what they show comes to paired devices only. */
export function pairedOnly({ pairing, addressOf }: Network): MiddlewareHandler {
  return (c, next) => {
    if (pairing === undefined || isThisComputer(addressOf(c))) return next();
    if (c.req.path === '/api/pair' || pairing.knows(getCookie(c, cookie) ?? '')) return next();
    return Promise.resolve(refuse(c, 401, 'This device is not paired yet: type the code shown on the host’s screen.'));
  };
}

export function pairRoutes({ pairing, addressOf }: Network): Hono {
  const app = new Hono();
  app.post('/pair', takesJson, async (c) => {
    const { code } = await bodyAs(c, pairSchema);
    if (pairing === undefined || isThisComputer(addressOf(c))) return c.json({ paired: true });
    const answer = pairing.pair(code, addressOf(c));
    if ('wait' in answer) {
      c.header('retry-after', String(answer.wait));
      return refuse(c, 429, `Too many wrong codes; wait ${Math.ceil(answer.wait / 60)} min.`);
    }
    if ('wrong' in answer) return refuse(c, 403, 'That is not the code shown on the host’s screen.');
    const maxAge = pairedFor / 1000;
    setCookie(c, cookie, answer.token, { httpOnly: true, sameSite: 'Strict', path: '/', maxAge });
    return c.json({ paired: true });
  });
  return app;
}
