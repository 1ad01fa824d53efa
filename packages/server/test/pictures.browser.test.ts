/** The pictures of the page in the README. With SPAREWRIGHT_PICTURES=1 they are written to docs/pictures. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { openScreens, type Screens } from './open-screens.ts';
import { places } from './places.ts';

let screens: Screens;
beforeAll(async () => {
  screens = await openScreens();
});
afterAll(async () => {
  await screens.close();
});

it.each([
  ['first-page-desktop', { width: 1440, height: 1240 }, 'jobs/valve-guide-pin/part'],
  ['first-page-tablet', { width: 820, height: 1180 }, 'jobs/plunger/duty'],
  ['first-page-phone', { width: 390, height: 844 }, 'jobs/gland-spindle/part'],
  ['shelf', { width: 1440, height: 760 }, ''],
  ['new-job', { width: 820, height: 940 }, 'new'],
  ['workshop', { width: 1440, height: 900 }, 'workshop/cutters'],
])('a picture of the page, %s, is made of more than paper and is small enough to show', async (name, view, at) => {
  const page = await screens.open(view, at);
  await page.waitForFunction(() => [...document.images].every((image) => image.complete));
  if (at !== '' && at !== 'new') await page.getByText('Every change is kept').waitFor();
  const picture = await page.screenshot();
  await page.context().close();
  // Blank paper alone takes a few kilobytes.
  expect(picture.length).toBeGreaterThan(15_000);
  expect(picture.length).toBeLessThan(300_000);
  if (process.env.SPAREWRIGHT_PICTURES !== '1') return;
  mkdirSync(places.pictures, { recursive: true });
  writeFileSync(join(places.pictures, `${name}.png`), picture);
});
