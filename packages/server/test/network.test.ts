import { afterEach, describe, expect, it } from 'vitest';
import { createPairing, pairedFor } from '../src/pairing.ts';
import { rateLimit } from '../src/rate.ts';
import { answerOf } from './documents.ts';
import { openApp, own, type TestApp } from './test-app.ts';

const running: TestApp[] = [];
afterEach(() => Promise.all(running.splice(0).map((app) => app.close())));

/** A server on the network, asked from elsewhere unless a test says otherwise. */
function open() {
  const pairing = createPairing();
  const app = openApp({ bare: true, pairing, from: '192.0.2.7' });
  running.push(app);
  const pair = (code: string, headers = {}) => app.post('/api/pair', JSON.stringify({ code }), headers);
  return { ...app, pairing, pair };
}

const ways = [
  ['GET', '/api/jobs'],
  ['GET', '/api/workshop'],
  ['GET', '/api/backup'],
  ['GET', '/api/events'],
  ['POST', '/api/restore'],
  ['POST', '/api/import'],
  ['POST', '/api/jobs'],
  ['PUT', '/api/jobs/pin'],
  ['DELETE', '/api/jobs/pin'],
  ['POST', '/api/attachments'],
  ['POST', '/api/assess'],
  ['GET', '/api/no-such-thing'],
] as const;

describe('over the network', () => {
  it.each(ways)('%s %s is for paired devices', async (method, path) => {
    await answerOf(await open().send(method, path), 401);
  });

  it('in place of every screen there is the page on which the code is typed, until it was', async () => {
    const { get, ask, pairing } = open();
    expect((await get('/health')).status).toBe(200);
    for (const path of ['/', '/jobs/valve-guide-pin/duty', '/workshop']) {
      const page = await get(path);
      expect(page.status).toBe(401);
      expect(await page.text()).toContain('<form method="post" action="/pair">');
      const policy = page.headers.get('content-security-policy') ?? '';
      expect(policy).toContain("form-action 'self'");
      expect(policy).toContain("default-src 'none'");
      expect(page.headers.get('cache-control')).toBe('no-store');
    }
    const form = (code: string) =>
      ask('/pair', {
        method: 'POST',
        body: new URLSearchParams({ code }),
        headers: { host: own, origin: `http://${own}`, 'content-type': 'application/x-www-form-urlencoded' },
      });
    const wrong = await form('<script>alert(1)</script>');
    expect(wrong.status).toBe(403);
    expect(await wrong.text()).not.toContain('<script');
    const right = await form(pairing.code);
    expect(right.status).toBe(303);
    expect(right.headers.get('location')).toBe('/');
    const [cookie = ''] = (right.headers.get('set-cookie') ?? '').split(';');
    expect([200, 503]).toContain((await get('/', { cookie })).status);
    for (let i = 0; i < 4; i++) expect((await form('AAAA-AAAA')).status).toBe(403);
    const held = await form(pairing.code);
    expect(held.status).toBe(429);
    expect(await held.text()).toContain('Wait ten minutes');
  });

  it('a form on another site cannot send the code', async () => {
    const { ask, pairing } = open();
    const headers = { host: own, origin: 'null', 'content-type': 'application/x-www-form-urlencoded' };
    const body = new URLSearchParams({ code: pairing.code });
    expect((await ask('/pair', { method: 'POST', body, headers })).status).toBe(403);
  });

  it('the code on the host’s screen opens, with a cookie that scripts and other sites cannot use', async () => {
    const { get, pair, pairing } = open();
    expect(pairing.code).toMatch(/^[2-9A-HJKMNP-Z]{4}-[2-9A-HJKMNP-Z]{4}$/);
    const response = await pair(` ${pairing.code.toLowerCase().replace('-', ' ')} `);
    expect(await answerOf(response)).toEqual({ paired: true });
    const cookie = response.headers.get('set-cookie') ?? '';
    expect(cookie).toMatch(/; *HttpOnly/i);
    expect(cookie).toMatch(/; *SameSite=Strict/i);
    const [token = ''] = cookie.split(';');
    expect((await get('/api/jobs', { cookie: token })).status).toBe(200);
    expect((await get('/api/jobs', { cookie: `${token}x` })).status).toBe(401);
    expect((await get('/api/jobs', { cookie: 'sparewright=' })).status).toBe(401);
    // Another server, or this one started anew, does not know it.
    expect((await open().get('/api/jobs', { cookie: token })).status).toBe(401);
  });

  it('five wrong codes within ten minutes are all that an address may try, the right one does not help then', async () => {
    const { pair, pairing } = open();
    for (let i = 0; i < 5; i++) await answerOf(await pair('AAAA-AAAA'), 403);
    const refused = await pair(pairing.code);
    expect(Number(refused.headers.get('retry-after'))).toBeGreaterThan(500);
    await answerOf(refused, 429);
    await answerOf(await pair(pairing.code, { 'test-from': '192.0.2.8' }));
  });

  it('this computer itself needs no code', async () => {
    const { get } = open();
    for (const from of ['127.0.0.1', '::1', '::ffff:127.0.0.1'])
      expect((await get('/api/jobs', { 'test-from': from })).status).toBe(200);
    for (const from of ['', '127.0.0.1.evil', '10.127.0.1', '::ffff:192.0.2.7'])
      expect((await get('/api/jobs', { 'test-from': from })).status).toBe(401);
  });

  it.each(['{}', '{"code":7}', `{"code":"${'a'.repeat(100)}"}`, '[]'])('a code is text: %s', async (body) => {
    await answerOf(await open().post('/api/pair', body), 422);
  });

  it('a flood of requests from one address is held off, others go through', async () => {
    const { get } = open();
    let refused = 0;
    for (let i = 0; i < 600 && refused === 0; i++) refused += Number((await get('/health')).status === 429);
    expect(refused).toBe(1);
    expect((await get('/health', { 'test-from': '192.0.2.9' })).status).toBe(200);
    expect((await get('/health', { 'test-from': '127.0.0.1' })).status).toBe(200);
  });
});

describe('pairing', () => {
  const wrong = { wrong: true };

  it('lets an address try again when ten minutes are over', () => {
    let time = 0;
    const { pair, code } = createPairing(() => time);
    for (let i = 0; i < 5; i++) expect(pair('x', 'a')).toEqual(wrong);
    expect(pair(code, 'a')).toEqual({ wait: 600 });
    time = 600_000;
    expect(pair(code, 'a')).toEqual({ token: expect.any(String) });
  });

  it('holds off one who tries from ever new addresses', () => {
    const { pair, code } = createPairing(() => 0);
    for (let i = 0; i < 60; i++) expect(pair('x', `address ${i}`)).toEqual(wrong);
    expect(pair(code, 'yet another')).toEqual({ wait: 600 });
  });

  it('ends after thirty days, and for the first of more than a hundred devices', () => {
    let time = 0;
    const { pair, code, knows } = createPairing(() => time);
    const tokens = Array.from({ length: 101 }, () => {
      const answer = pair(code, 'a');
      return 'token' in answer ? answer.token : '';
    });
    expect(new Set(tokens).size).toBe(101);
    expect(tokens.map(knows)).toEqual([false, ...Array(100).fill(true)]);
    time = pairedFor;
    expect(tokens.some(knows)).toBe(false);
  });

  it('makes another code each time', () => {
    expect(new Set(Array.from({ length: 50 }, () => createPairing().code)).size).toBe(50);
  });
});

describe('the rate of requests', () => {
  it('is many at once, and forty a second in the long run', () => {
    let time = 0;
    const goesThrough = rateLimit(() => time);
    const passed = (n: number) => Array.from({ length: n }, () => goesThrough('a')).filter(Boolean).length;
    expect(passed(1000)).toBe(400);
    time = 1000;
    expect(passed(1000)).toBe(40);
    time = 3_600_000;
    expect(passed(1000)).toBe(400);
  });
});
