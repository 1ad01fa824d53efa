/** The server in this process and a browser before it, for tests that look at the screens as a person would. */
import { existsSync } from 'node:fs';
import { type Browser, chromium, type Page } from 'playwright-core';
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

export interface Screens {
  readonly address: string;
  readonly browser: Browser;
  open(view: { width: number; height: number }, at?: string, colours?: 'light' | 'dark'): Promise<Page>;
  close(): Promise<void>;
}

export async function openScreens(): Promise<Screens> {
  if (!existsSync(`${places.web}/index.html`)) throw new Error('the screens are not built: run npm run build first');
  const folder = temporaryFolder();
  const server = await startServer({ examples: places.examples, web: places.web, data: folder.path, port: 0 });
  const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args });
  return {
    address: server.address,
    browser,
    async open(view, at = '', colours = 'light') {
      const context = await browser.newContext({ viewport: view, colorScheme: colours, acceptDownloads: true });
      const page = await context.newPage();
      await page.goto(`${server.address}/${at}`);
      await page.locator('.drawing svg').waitFor();
      await page.evaluate(() => document.fonts.ready.then(() => undefined));
      return page;
    },
    async close() {
      await browser.close();
      await server.close();
      folder.remove();
    },
  };
}
