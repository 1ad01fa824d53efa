/**
 * Lets the screens open while the server is away: on this computer only, for browsers allow it nowhere else without a certificate.
 * The server is always asked first; what is kept is shown only when it does not answer. Kept are the built files that the server
 * itself lists, never an answer with anybody's data.
 */
const kept = 'sparewright-screens';
const page = '/index.html';
const list = '/screens.json';

self.addEventListener('install', (event) => {
  self.skipWaiting();
  event.waitUntil(keep());
});

self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()));

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== 'GET' || origin !== self.location.origin) return;
  if (request.mode === 'navigate') event.respondWith(opened(event));
  else if (pathname.startsWith('/assets/') || pathname === '/favicon.svg') event.respondWith(file(request));
});

async function opened(event) {
  try {
    const answer = await fetch(event.request);
    event.waitUntil(keep());
    return answer;
  } catch (error) {
    const known = await (await caches.open(kept)).match(page);
    if (known) return known;
    throw error;
  }
}

async function file(request) {
  try {
    return await fetch(request);
  } catch (error) {
    const known = await (await caches.open(kept)).match(request);
    if (known) return known;
    throw error;
  }
}

/** What is new is fetched first and the page put in last, so that what is kept always goes together. */
async function keep() {
  const answer = await fetch(list, { cache: 'no-store' }).catch(() => undefined);
  if (!answer) return;
  const paths = answer.ok ? await answer.json().catch(() => undefined) : undefined;
  if (!Array.isArray(paths)) {
    // Something else is served at this address now.
    await caches.delete(kept);
    await self.registration.unregister();
    return;
  }
  const cache = await caches.open(kept);
  const there = new Set((await cache.keys()).map(({ url }) => new URL(url).pathname));
  const lacking = paths.filter((path) => !(path.startsWith('/assets/') && there.has(path)) && path !== page);
  try {
    await cache.addAll(lacking);
    await cache.add(new Request(page, { cache: 'no-store' }));
  } catch {
    // It went away meanwhile; the next visit goes on with it.
    return;
  }
  for (const path of there) if (!paths.includes(path)) await cache.delete(path);
}
