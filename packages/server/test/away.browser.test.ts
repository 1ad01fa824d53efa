/** The screens opened while the server is away: the browser has kept them, as they were built last, and nothing else. */
import { cpSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { startServer } from '../src/start.ts';
import { openScreens, type Screens, views } from './open-screens.ts';
import { places } from './places.ts';
import { temporaryFolder } from './temporary.ts';

let screens: Screens;
beforeAll(async () => {
  screens = await openScreens();
});
afterAll(async () => {
  await screens.close();
});

const patiently = { timeout: 20_000 };
const shown = (page: Page, text: string) => page.locator('.drawing svg text', { hasText: text });

/** The page that the browser keeps; '' while it keeps none. */
const keptPage = (page: Page) => page.evaluate(async () => (await (await caches.match('/index.html'))?.text()) ?? '');

it('a job with something in the outbox opens, and is delivered when the server is back', async () => {
  const job = await screens.copyOf('plunger');
  const page = await screens.open(views.desktop, `jobs/${job}/part`);
  await expect.poll(() => keptPage(page), patiently).toContain('<div id="page">');
  await screens.stop();
  await page.locator('.sizes').getByLabel('diameter of the body, as typed', { exact: true }).fill('31.2 f7');
  await page.getByText('kept in this browser').waitFor();
  await page.reload();
  await shown(page, 'Ø31.2 f7').waitFor();
  await page.getByText('kept in this browser').waitFor();
  await page.goto(`${screens.address}/jobs/valve-guide-pin/part`);
  await page.getByText('The server does not answer').waitFor();
  await page.goto(`${screens.address}/jobs/${job}/part`);
  await screens.start();
  await page.getByText('Every change is kept').waitFor(patiently);
  const { document } = await (await fetch(`${screens.address}/api/jobs/${job}?only=document`)).json();
  expect(JSON.stringify(document.part)).toContain('31.2 f7');
  // The workshop could not be asked for before.
  await page.locator('#stage-route', { hasText: 'setup' }).waitFor(patiently);
  // Of what the server answers nothing is kept but the built files.
  const kept = await page.evaluate(async () => {
    const caught = await Promise.all((await caches.keys()).map(async (name) => (await caches.open(name)).keys()));
    return caught.flat().map(({ url }) => new URL(url).pathname);
  });
  expect(kept.filter((path) => !/^\/(assets\/|index\.html$|favicon\.svg$)/.test(path))).toEqual([]);
  await page.context().close();
});

it('screens built anew take the place of those kept; where something else is served they are given up', async () => {
  const web = temporaryFolder();
  const data = temporaryFolder();
  cpSync(places.web, web.path, { recursive: true });
  const index = join(web.path, 'index.html');
  const built = readFileSync(index, 'utf8');
  const serve = (port: number) => startServer({ examples: places.examples, web: web.path, data: data.path, port });
  writeFileSync(join(web.path, 'assets', 'only-old.js'), 'export {};');
  let server = await serve(0);
  const port = Number(new URL(server.address).port);
  const page = await (await screens.browser.newContext({ viewport: views.desktop })).newPage();
  await page.goto(server.address);
  await expect.poll(() => keptPage(page), patiently).toContain('<div id="page">');
  expect(await page.evaluate(async () => (await caches.match('/assets/only-old.js')) !== undefined)).toBe(true);
  await server.close();

  rmSync(join(web.path, 'assets', 'only-old.js'));
  writeFileSync(index, built.replace('<head>', '<head><meta name="built" content="anew">'));
  server = await serve(port);
  await page.reload();
  await expect.poll(() => keptPage(page), patiently).toContain('built');
  await expect
    .poll(() => page.evaluate(async () => (await caches.match('/assets/only-old.js')) === undefined))
    .toBe(true);
  await server.close();
  await page.reload();
  expect(await page.locator('meta[name=built]').getAttribute('content')).toBe('anew');

  const other = createServer((_, answer) => answer.writeHead(404).end('another program'));
  await new Promise<void>((done) => other.listen(port, '127.0.0.1', done));
  await page.reload();
  expect(await page.textContent('body')).toBe('another program');
  await expect.poll(() => page.evaluate(async () => (await navigator.serviceWorker.getRegistrations()).length)).toBe(0);
  expect(await keptPage(page)).toBe('');
  await page.context().close();
  other.closeAllConnections();
  other.close();
  web.remove();
  data.remove();
});
