import { readFileSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { lockAlone } from '@sparewright/store/folder-lock';
import { afterAll, afterEach, describe, expect, it } from 'vitest';
import { type Started, startServer } from '../src/start.ts';
import { exampleDocument } from './documents.ts';
import { places } from './places.ts';
import { temporaryFolder } from './temporary.ts';

const { examples, web } = places;
const folder = temporaryFolder();
afterAll(() => folder.remove());
const base = { examples, web, data: folder.path };
const running: Started[] = [];
const start = async (options: { host?: string; port?: number; data?: string } = {}): Promise<Started> => {
  const started = await startServer({ ...base, ...options });
  running.push(started);
  return started;
};

afterEach(async () => {
  await Promise.all(running.splice(0).map((s) => s.close()));
});

describe('the server', () => {
  it('listens on loopback and answers there', async () => {
    const { address } = await start({ port: 0 });
    expect(address).toMatch(/^http:\/\/127\.0\.0\.1:\d+$/);
    expect(await (await fetch(`${address}/health`)).json()).toEqual({ status: 'ok' });
  });

  it('takes the next free port when the usual one is taken', async () => {
    const first = await start();
    const second = await start();
    expect(second.address).not.toBe(first.address);
    expect((await fetch(`${second.address}/health`)).status).toBe(200);
  });

  it('says so when the port that was asked for is taken', async () => {
    const blocker = createServer();
    const port = await new Promise<number>((resolve) =>
      blocker.listen(0, '127.0.0.1', () => {
        const address = blocker.address();
        resolve(typeof address === 'object' && address !== null ? address.port : 0);
      }),
    );
    await expect(start({ port })).rejects.toThrow(`Port ${port}`);
    await new Promise((resolve) => blocker.close(resolve));
  });

  it('finishes what is under way before it stops, and answers nothing after', async () => {
    const { address, close } = await startServer({ ...base, port: 0 });
    const packet = fetch(`${address}/api/jobs/plunger/packet.pdf`);
    await fetch(`${address}/health`);
    await close();
    expect((await packet).status).toBe(200);
    await expect(fetch(`${address}/health`)).rejects.toThrow();
  });
});

describe('a body that is refused unread', () => {
  it('ends its connection, so that the next request is not lost on it', async () => {
    const { address } = await start({ port: 0 });
    const post = async (path: string, bytes: number, type: string) => {
      const headers = { 'content-type': type };
      const answer = await fetch(`${address}${path}`, { method: 'POST', body: new Uint8Array(bytes), headers });
      return [answer.status, answer.headers.get('connection')];
    };
    for (let i = 0; i < 3; i++) {
      expect(await post('/api/attachments?type=image/png', 22_000_000, 'image/png')).toEqual([413, 'close']);
      expect(await post('/api/jobs', 3_000_000, 'text/plain')).toEqual([415, 'close']);
      expect(await post('/api/jobs', 10, 'application/json')).toEqual([422, 'keep-alive']);
    }
  });
});

describe('the data', () => {
  const jobsAt = async (address: string) => (await (await fetch(`${address}/api/jobs?limit=200`)).json()).jobs;

  it('begins with the examples, the valve guide pin first, each with the stage and the worst that was found', async () => {
    const own = temporaryFolder();
    const { address, report } = await start({ port: 0, data: own.path });
    expect(report).toMatchObject({ problems: [], documents: 0 });
    const jobs = await jobsAt(address);
    expect(jobs.map((j: { id: string }) => j.id)).toEqual(['valve-guide-pin', 'plunger', 'gland-spindle']);
    for (const { stage, worst } of jobs) {
      expect(stage).toMatch(/^(evidence|part|duty|route|bench|inspection|record)$/);
      expect(worst).toEqual({
        level: expect.stringMatching(/^(stop|caution|note)$/),
        says: expect.stringMatching(/\S/),
      });
    }
    const { document } = await (await fetch(`${address}/api/workshop`)).json();
    expect(document).toEqual(exampleDocument('bench-lathe.workshop.json'));
    await running.pop()?.close();
    own.remove();
  });

  it('is what it was at the next start: removed examples do not come back', async () => {
    const own = temporaryFolder();
    const { address, close } = await start({ port: 0, data: own.path });
    await fetch(`${address}/api/jobs/plunger`, { method: 'DELETE' });
    const before = await jobsAt(address);
    await close();
    running.pop();
    const again = await start({ port: 0, data: own.path });
    expect(await jobsAt(again.address)).toEqual(before);
    expect(again.report).toMatchObject({ problems: [], documents: 4, revisions: 4 });
    await running.pop()?.close();
    own.remove();
  });

  it('is left as it is when it belongs to something else, and the server does not start', async () => {
    const own = temporaryFolder();
    writeFileSync(join(own.path, 'sparewright.db'), 'a letter');
    await expect(start({ port: 0, data: own.path })).rejects.toThrow(/no database/);
    expect(readFileSync(join(own.path, 'sparewright.db'), 'utf8')).toBe('a letter');
    own.remove();
  });

  it('is closed again when the port is taken, so that it can be opened elsewhere', async () => {
    const own = temporaryFolder();
    const first = await start({ port: 0 });
    await expect(start({ port: Number(new URL(first.address).port), data: own.path })).rejects.toThrow(/taken/);
    // Only one who is alone with the folder gets this.
    lockAlone(own.path).release();
    own.remove();
  });
});

describe('on the network', () => {
  it('shows a code and asks for it, except from this computer', async () => {
    const { address, pairingCode, networkAddresses } = await start({ port: 0, host: '0.0.0.0' });
    expect(pairingCode).toMatch(/^.{4}-.{4}$/);
    expect(address).toMatch(/^http:\/\/127\.0\.0\.1:/);
    expect((await fetch(`${address}/api/jobs`)).status).toBe(200);
    for (const other of networkAddresses.filter((one) => !one.includes('['))) {
      expect((await fetch(`${other}/health`)).status).toBe(200);
      expect((await fetch(`${other}/api/jobs`)).status).toBe(401);
      const headers = { 'content-type': 'application/json' };
      const body = JSON.stringify({ code: pairingCode });
      const paired = await fetch(`${other}/api/pair`, { method: 'POST', headers, body });
      const [cookie = ''] = (paired.headers.get('set-cookie') ?? '').split(';');
      expect((await fetch(`${other}/api/jobs`, { headers: { cookie } })).status).toBe(200);
    }
  });

  it('asks for none when only this computer is served', async () => {
    for (const host of ['127.0.0.1', 'localhost']) expect((await start({ port: 0, host })).pairingCode).toBeUndefined();
  });
});
