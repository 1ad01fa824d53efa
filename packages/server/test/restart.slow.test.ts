/** What was acknowledged is there after the server was killed, whatever it was doing. */
import { type ChildProcess, spawn } from 'node:child_process';
import { mkdirSync, rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { answerOf, jobDocument, picture } from './documents.ts';
import { places } from './places.ts';
import { temporaryFolder } from './temporary.ts';

// Below node_modules, where it finds the native packages.
const bundle = fileURLToPath(new URL(`../../../node_modules/.cache/server-${process.pid}/`, import.meta.url));
const script = `${bundle}server-process.mjs`;

beforeAll(async () => {
  mkdirSync(bundle, { recursive: true });
  await build({
    entryPoints: [fileURLToPath(new URL('server-process.ts', import.meta.url))],
    outfile: script,
    bundle: true,
    platform: 'node',
    format: 'esm',
    external: ['better-sqlite3', '@myriaddreamin/*'],
    banner: { js: "import { createRequire } from 'node:module';\nconst require = createRequire(import.meta.url);" },
    logLevel: 'warning',
  });
});
afterAll(() => rmSync(bundle, { recursive: true, force: true }));

interface Running {
  readonly address: string;
  readonly child: ChildProcess;
  readonly ended: Promise<number | null>;
}

const running: Running[] = [];
afterEach(async () => {
  for (const { child, ended } of running.splice(0)) {
    child.kill('SIGKILL');
    await ended;
  }
});

async function start(folder: string): Promise<Running> {
  const child = spawn(process.execPath, [script, folder, places.examples, places.web], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const ended = new Promise<number | null>((resolve) => child.once('exit', resolve));
  const address = await new Promise<string>((resolve, reject) => {
    child.stdout.once('data', (chunk) => resolve(String(chunk).trim()));
    child.once('exit', () => reject(new Error('the server ended before it was there')));
  });
  const one = { address, child, ended };
  running.push(one);
  return one;
}

const sent = (method: string, body: unknown): RequestInit => ({
  method,
  headers: { 'content-type': 'application/json' },
  body: JSON.stringify(body),
});

describe('a server that is killed and started again', () => {
  it('has every save, entry and photograph that it had acknowledged, and goes on from there', async () => {
    const folder = temporaryFolder();
    const acknowledged = { revision: 0, entries: 0, photographs: new Set<string>() };
    for (let round = 0; round < 4; round++) {
      const { address, child, ended } = await start(folder.path);
      if (round === 0)
        await answerOf(await fetch(`${address}/api/jobs`, sent('POST', { document: jobDocument(), id: 'pin' })), 201);
      const stored = await answerOf(await fetch(`${address}/api/jobs/pin?only=document`));
      const log = await answerOf(await fetch(`${address}/api/jobs/pin/bench-log`));
      expect(stored.revision).toBeGreaterThanOrEqual(acknowledged.revision);
      expect(log.entries.length).toBeGreaterThanOrEqual(acknowledged.entries);
      for (const hash of acknowledged.photographs)
        expect((await fetch(`${address}/api/attachments/${hash}`)).status).toBe(200);
      const report = await answerOf(await fetch(`${address}/api/integrity?depth=thorough`));
      expect(report).toMatchObject({ problems: [], documents: 5 });

      setTimeout(() => child.kill('SIGKILL'), 400 + round * 150);
      await workUntilDead(address, stored.revision, log.entries.length, acknowledged);
      expect(await ended).toBeNull();
    }
    expect(acknowledged.revision).toBeGreaterThan(8);
    folder.remove();
  });

  it('closes the streams of events and ends with 0 when it is asked to stop', async () => {
    const folder = temporaryFolder();
    const { address, child, ended } = await start(folder.path);
    const events = await fetch(`${address}/api/events`);
    const reader = events.body?.getReader();
    await reader?.read();
    const began = performance.now();
    child.kill('SIGTERM');
    let done = false;
    while (!done) done = (await reader?.read())?.done ?? true;
    expect(await ended).toBe(0);
    expect(performance.now() - began).toBeLessThan(2500);
    folder.remove();
  });
});

async function workUntilDead(
  address: string,
  revision: number,
  entries: number,
  acknowledged: { revision: number; entries: number; photographs: Set<string> },
): Promise<void> {
  let base = revision;
  let count = entries;
  try {
    for (;;) {
      const document = jobDocument({ notes: `after ${base}` });
      const saved = await fetch(
        `${address}/api/jobs/pin`,
        sent('PUT', { baseRevision: base, document, client: 'desk' }),
      );
      base = (await answerOf(saved)).revision;
      acknowledged.revision = base;
      const entry = { id: `e${count}`, job: 'pin', at: '2026-03-01T09:30:00Z', kind: 'note' };
      await answerOf(await fetch(`${address}/api/bench-log`, sent('POST', { entries: [entry] })));
      count += 1;
      acknowledged.entries = count;
      const photograph = await fetch(`${address}/api/attachments?type=image/png`, {
        method: 'POST',
        body: picture(base),
      });
      acknowledged.photographs.add((await answerOf(photograph, 201)).hash);
    }
  } catch (error) {
    // The connection breaks off when the server dies; anything else is a fault.
    if (!(error instanceof TypeError || (error instanceof Error && /terminated|ECONNRESET/.test(error.message))))
      throw error;
  }
}
