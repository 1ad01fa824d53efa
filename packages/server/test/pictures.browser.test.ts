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
  ['desktop', { width: 1440, height: 1240 }, 'jobs/valve-guide-pin/part'],
  ['tablet', { width: 820, height: 1180 }, 'jobs/plunger/duty'],
  ['phone', { width: 390, height: 844 }, 'jobs/gland-spindle/part'],
])('a picture of the page on a %s is made of more than paper and is small enough to show', async (name, view, at) => {
  const page = await screens.open(view, at);
  const picture = await page.screenshot();
  await page.context().close();
  // Blank paper alone takes a few kilobytes.
  expect(picture.length).toBeGreaterThan(15_000);
  expect(picture.length).toBeLessThan(300_000);
  if (process.env.SPAREWRIGHT_PICTURES !== '1') return;
  mkdirSync(places.pictures, { recursive: true });
  writeFileSync(join(places.pictures, `first-page-${name}.png`), picture);
});
