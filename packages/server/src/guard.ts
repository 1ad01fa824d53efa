/** What every request must keep to and every answer carries. */
import type { MiddlewareHandler } from 'hono';
import { secureHeaders } from 'hono/secure-headers';
import { refuse } from './refusal.ts';

/** A page of another site, or a name that was made to point at this computer, gets nothing. */
export function ownHostOnly(isOwnHost: (host: string) => boolean): MiddlewareHandler {
  return async (c, next) => {
    const host = c.req.header('host') ?? '';
    if (!isOwnHost(host.toLowerCase())) return refuse(c, 421, 'This address is not served here.');
    const origin = c.req.header('origin');
    if (origin !== undefined && origin.toLowerCase() !== `http://${host.toLowerCase()}`)
      return refuse(c, 403, 'Requests from pages of another site are refused.');
    // Browsers say so even where they send no origin, as for a picture: nothing here is computed for another site's page.
    const site = c.req.header('sec-fetch-site') ?? 'none';
    if (c.req.path.startsWith('/api/') && site !== 'same-origin' && site !== 'none')
      return refuse(c, 403, 'Requests from pages of another site are refused.');
    return next();
  };
}

export const headers: MiddlewareHandler = secureHeaders({
  contentSecurityPolicy: {
    defaultSrc: ["'none'"],
    scriptSrc: ["'self'"],
    styleSrc: ["'self'"],
    // A photograph just taken, before it is sent.
    imgSrc: ["'self'", 'blob:'],
    mediaSrc: ["'self'", 'blob:'],
    workerSrc: ["'self'"],
    fontSrc: ["'self'"],
    connectSrc: ["'self'"],
    baseUri: ["'none'"],
    formAction: ["'none'"],
    frameAncestors: ["'none'"],
  },
  xFrameOptions: 'DENY',
  xContentTypeOptions: 'nosniff',
  referrerPolicy: 'no-referrer',
  crossOriginOpenerPolicy: 'same-origin',
  crossOriginResourcePolicy: 'same-origin',
  strictTransportSecurity: false,
});

/** A request refused before its body was read ends its connection, so that no further one is sent into what is left of it. */
export const closeAfterUnreadBody: MiddlewareHandler = async (c, next) => {
  await next();
  const wasRead = c.res.status < 400 || c.res.status === 409 || c.res.status === 422;
  if (c.req.method !== 'GET' && !wasRead) c.res.headers.set('connection', 'close');
};

/** The one page with a form, that of pairing, may send it here; without a referrer policy it would come from nowhere. */
export const allowOwnForm: MiddlewareHandler = async (c, next) => {
  await next();
  const policy = c.res.headers.get('content-security-policy');
  if (policy === null || !c.res.headers.get('content-type')?.startsWith('text/html') || c.res.status < 400) return;
  c.res.headers.set('content-security-policy', policy.replace("form-action 'none'", "form-action 'self'"));
  c.res.headers.set('referrer-policy', 'same-origin');
};
