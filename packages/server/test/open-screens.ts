/** The server in this process and a browser before it, for tests that look at the screens as a person would. */
import { existsSync } from 'node:fs';
import axe from 'axe-core';
import { type Browser, chromium, type Page } from 'playwright-core';
import { expect } from 'vitest';
import { startServer } from '../src/start.ts';
import { places } from './places.ts';
import { temporaryFolder } from './temporary.ts';

/** Nothing in a test may reach out of this computer. */
const args = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

export const views = {
  desktop: { width: 1440, height: 900 },
  tablet: { width: 820, height: 1180 },
  phone: { width: 390, height: 844 },
} as const;

export type View = { readonly width: number; readonly height: number };

export interface Screens {
  readonly address: string;
  readonly browser: Browser;
  /** A page in a browser of its own that has been here before. */
  open(view: View, at?: string, colours?: 'light' | 'dark'): Promise<Page>;
  /** The same, and an assertion that the page complained of nothing. */
  look(at: string, view: View, see: (page: Page) => Promise<void>, colours?: 'light' | 'dark'): Promise<void>;
  /** A copy of a job, for a test that changes it; its id. */
  copyOf(id: string): Promise<string>;
  /** The server as if its plug were pulled, and back again at the same address. */
  stop(): Promise<void>;
  start(): Promise<void>;
  close(): Promise<void>;
}

export async function openScreens(): Promise<Screens> {
  if (!existsSync(`${places.web}/index.html`)) throw new Error('the screens are not built: run npm run build first');
  const folder = temporaryFolder();
  const startAt = (port: number) =>
    startServer({ examples: places.examples, web: places.web, data: folder.path, port });
  let server: Awaited<ReturnType<typeof startServer>> | undefined = await startAt(0);
  const { address } = server;
  const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args });

  async function open(view: View, at = '', colours: 'light' | 'dark' = 'light'): Promise<Page> {
    const context = await browser.newContext({ viewport: view, colorScheme: colours, acceptDownloads: true });
    await context.addInitScript(() => localStorage.setItem('sparewright.opened', 'yes'));
    const page = await context.newPage();
    await page.goto(`${address}/${at}`);
    await page.locator(at.startsWith('jobs/') ? '.drawing svg' : 'main').waitFor();
    await page.evaluate(() => document.fonts.ready.then(() => undefined));
    return page;
  }

  return {
    address,
    browser,
    open,
    async look(at, view, see, colours) {
      const page = await open(view, at, colours);
      const complaints: string[] = [];
      page.on('pageerror', (error) => complaints.push(error.message));
      page.on('console', (message) => {
        // The browser itself reports answers of 4xx, which a refused or disputed value is, and a server that is away.
        if (
          message.type() === 'error' &&
          !/status of 4(22|09)|ERR_CONNECTION|ERR_INCOMPLETE|ERR_INTERNET|occurred when fetching the script/.test(
            message.text(),
          )
        )
          complaints.push(message.text());
      });
      await see(page);
      await page.context().close();
      expect(complaints).toEqual([]);
    },
    async copyOf(id) {
      const headers = { 'content-type': 'application/json' };
      const body = JSON.stringify({ copyOf: id });
      const made: { id: string } = await (await fetch(`${address}/api/jobs`, { method: 'POST', headers, body })).json();
      return made.id;
    },
    async stop() {
      await server?.close();
      server = undefined;
    },
    async start() {
      server = await startAt(Number(new URL(address).port));
    },
    async close() {
      await browser.close();
      await server?.close();
      folder.remove();
    },
  };
}

/** What axe has against the page, in a line each. */
export async function complaintsOfAxe(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  const found = await page.evaluate<{ violations: { id: string; nodes: { html: string }[] }[] }>(
    'axe.run(document, { resultTypes: ["violations"] })',
  );
  return found.violations.map((v) => `${v.id} ${v.nodes[0]?.html.slice(0, 200)}`);
}
