import { createServer } from 'node:net';
import { afterAll, afterEach, describe, expect, it } from 'vitest';
import { type Started, startServer } from '../src/start.ts';
import { places } from './places.ts';
import { temporaryFolder } from './temporary.ts';

const { examples, web } = places;
const folder = temporaryFolder();
afterAll(() => folder.remove());
const base = { examples, web, data: folder.path };
const running: Started[] = [];
const start = async (options: { host?: string; port?: number } = {}): Promise<Started> => {
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
