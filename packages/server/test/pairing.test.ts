import { expect, it } from 'vitest';
import { createPairing } from '../src/pairing.ts';
import { answerOf } from './documents.ts';
import { openApp } from './test-app.ts';

const host = '127.0.0.1';
const tablet = {
  'test-from': '192.0.2.7',
  'user-agent': 'Mozilla/5.0 (Linux; Android 14) AppleWebKit/537.36 Chrome/130.0 Safari/537.36',
};

it('the computer itself is told the code and the devices, and can send one of them away', async () => {
  const pairing = createPairing();
  const app = openApp({ bare: true, pairing, from: host });
  const empty = await answerOf(await app.get('/api/pairing'));
  expect(empty).toMatchObject({ code: pairing.code, devices: [] });
  const paired = await app.post('/api/pair', JSON.stringify({ code: pairing.code }), tablet);
  const cookie = (paired.headers.get('set-cookie') ?? '').split(';')[0] ?? '';
  expect(cookie).toMatch(/^sparewright=/);
  expect((await app.get('/api/jobs', { ...tablet, cookie })).status).toBe(200);

  const { devices } = await answerOf(await app.get('/api/pairing'));
  expect(devices).toEqual([
    {
      id: expect.stringMatching(/^[0-9a-f]{12}$/),
      name: 'Android, Chrome',
      address: '192.0.2.7',
      since: expect.any(String),
      seen: expect.any(String),
    },
  ]);
  expect(JSON.stringify(devices)).not.toContain(cookie.split('=')[1] ?? 'nothing');

  await answerOf(await app.get('/api/pairing', { ...tablet, cookie }), 403);
  const asTablet = { method: 'DELETE', headers: { host: '127.0.0.1:4180', ...tablet, cookie } };
  await answerOf(await app.ask(`/api/pairing/${devices[0].id}`, asTablet), 403);

  await answerOf(await app.send('DELETE', `/api/pairing/${devices[0].id}`));
  await answerOf(await app.send('DELETE', `/api/pairing/${devices[0].id}`), 404);
  await answerOf(await app.get('/api/jobs', { ...tablet, cookie }), 401);
  expect((await answerOf(await app.get('/api/pairing'))).devices).toEqual([]);
  await app.close();
});

it('without a network there is no code', async () => {
  const app = openApp({ bare: true, from: host });
  expect(await answerOf(await app.get('/api/pairing'))).toEqual({ code: null, addresses: [], devices: [] });
  await app.close();
});
