/** A device on the network, from the first look to the shelf. Needs an address that is not this computer's own loopback. */
import { type Browser, chromium } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { type Started, startServer } from '../src/start.ts';
import { complaintsOfAxe } from './open-screens.ts';
import { places } from './places.ts';
import { temporaryFolder } from './temporary.ts';

const folder = temporaryFolder();
let browser: Browser;
let server: Started;
beforeAll(async () => {
  server = await startServer({
    examples: places.examples,
    web: places.web,
    data: folder.path,
    port: 0,
    host: '0.0.0.0',
  });
  browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox', '--disable-gpu'] });
});
afterAll(async () => {
  await browser.close();
  await server.close();
  folder.remove();
});

it('is asked for the code, told when it is wrong, and let in when it is right', async (context) => {
  const address = server.networkAddresses.find((one) => !one.includes('['));
  if (address === undefined) return context.skip('this computer is on no network');
  const page = await (await browser.newContext()).newPage();
  const complaints: string[] = [];
  page.on('console', (message) => {
    if (/Content Security Policy/i.test(message.text())) complaints.push(message.text());
  });
  await page.goto(`${address}/jobs/valve-guide-pin`);
  const code = page.getByLabel('Code');
  expect(await code.evaluate((field) => field === document.activeElement)).toBe(true);
  await code.fill('AAAA-AAAA');
  await page.getByRole('button', { name: 'Pair' }).click();
  await page.getByText('That is not the code').waitFor();
  await code.fill(server.pairingCode ?? '');
  await page.keyboard.press('Enter');
  await page.waitForURL(`${address}/`);
  await page.getByText('Valve guide pin of an orchard sprayer pump').first().waitFor();
  expect(await page.evaluate(() => document.cookie)).toBe('');
  expect(complaints).toEqual([]);
});

it('shows the code large on the computer itself, lists the device, and sends it away when it is removed', async (context) => {
  const address = server.networkAddresses.find((one) => !one.includes('['));
  if (address === undefined) return context.skip('this computer is on no network');
  const host = await (await browser.newContext()).newPage();
  await host.goto(`${server.address}/pairing`);
  await host.getByText(server.pairingCode ?? 'no code', { exact: true }).waitFor();
  expect(await host.locator('.address').first().textContent()).toBe(server.networkAddresses[0]);
  const device = await (await browser.newContext()).newPage();
  await device.goto(address);
  await device.getByLabel('Code').fill(server.pairingCode ?? '');
  await device.getByRole('button', { name: 'Pair' }).click();
  await device.waitForURL(`${address}/`);
  const remove = host.getByRole('button', { name: /^Remove: Linux, Chrome/ });
  // The device of the test before is still there.
  await expect.poll(() => remove.count(), { timeout: 10_000 }).toBe(2);
  expect(await complaintsOfAxe(host)).toEqual([]);
  // The one paired last stands first.
  await remove.first().click();
  await device.goto(`${address}/jobs/valve-guide-pin`);
  await device.getByLabel('Code').waitFor();
  expect(await complaintsOfAxe(device)).toEqual([]);
});
