/** The pictures of the page in the README and the user guide. With SPAREWRIGHT_PICTURES=1 they are written to docs/pictures. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { openScreens, type Screens, type View } from './open-screens.ts';
import { places } from './places.ts';

let screens: Screens;
beforeAll(async () => {
  screens = await openScreens();
});
afterAll(async () => {
  await screens.close();
});

interface Picture {
  readonly name: string;
  readonly view: View;
  readonly at: string;
  /** What is done before the picture is taken. */
  readonly first?: (page: Page) => Promise<void>;
  /** Only this part of the page, as high as the view; all that is in view when left out. */
  readonly of?: string;
}

const desk = (height: number): View => ({ width: 1440, height });
const phone: View = { width: 390, height: 844 };
const tablet: View = { width: 820, height: 1180 };

const pictures: readonly Picture[] = [
  { name: 'first-page-desktop', view: desk(1240), at: 'jobs/valve-guide-pin/part' },
  { name: 'first-page-tablet', view: tablet, at: 'jobs/plunger/duty' },
  { name: 'first-page-phone', view: phone, at: 'jobs/gland-spindle/part' },
  { name: 'shelf', view: desk(760), at: '' },
  { name: 'new-job', view: { width: 820, height: 940 }, at: 'new' },
  { name: 'evidence', view: desk(1100), at: 'jobs/plunger/evidence', of: '#sheet' },
  { name: 'recovered', view: desk(1000), at: 'jobs/plunger/evidence', of: '.recovered' },
  { name: 'part', view: desk(1000), at: 'jobs/plunger/part', of: '#sheet' },
  { name: 'duty', view: desk(1000), at: 'jobs/plunger/duty', of: '#sheet', first: (page) => whyOf(page, 1) },
  { name: 'route', view: desk(1200), at: 'jobs/plunger/route', of: '#sheet' },
  { name: 'bench', view: desk(1000), at: 'jobs/plunger/bench', of: '.dial:has(svg)' },
  { name: 'bench-log', view: tablet, at: 'jobs/plunger/bench', of: '.bench-log', first: writeAtTheMachine },
  { name: 'inspection', view: desk(1000), at: 'jobs/plunger/inspection', of: '#sheet' },
  { name: 'packet', view: desk(1000), at: 'jobs/plunger/record', of: '.packet-preview', first: lookAtThePacket },
  { name: 'help', view: desk(1000), at: 'help/measure/bores' },
  { name: 'help-in-place', view: phone, at: 'jobs/plunger/evidence', of: '.help-open', first: askHowToMeasure },
  { name: 'pairing', view: { width: 1100, height: 700 }, at: 'pairing', first: pretendNetwork },
  { name: 'workshop', view: desk(900), at: 'workshop/cutters' },
  { name: 'workshop-lathe', view: desk(1000), at: 'workshop/lathe' },
];

it.each(pictures)(
  'a picture of the page, $name, is made of more than paper and is small enough to show',
  async (one) => {
    const page = await screens.open(one.view, one.at);
    if (/^(jobs|workshop)/.test(one.at)) await page.getByText('Every change is kept').waitFor();
    await one.first?.(page);
    if (one.of !== undefined) await page.locator(one.of).first().scrollIntoViewIfNeeded();
    await page.waitForFunction(() => [...document.images].every((image) => image.complete || image.loading === 'lazy'));
    const picture = await page.screenshot(
      one.of === undefined ? {} : { fullPage: true, clip: await clipOf(page, one) },
    );
    await page.context().close();
    // Blank paper alone takes a few kilobytes.
    expect(picture.length).toBeGreaterThan(15_000);
    expect(picture.length).toBeLessThan(400_000);
    if (process.env.SPAREWRIGHT_PICTURES !== '1') return;
    mkdirSync(places.pictures, { recursive: true });
    writeFileSync(join(places.pictures, `${one.name}.png`), picture);
  },
);

/** The part of the page, no higher than the view. */
async function clipOf(page: Page, { of = 'body', view }: Picture) {
  const box = await page
    .locator(of)
    .first()
    .evaluate((part) => {
      const { left, top, width, height } = part.getBoundingClientRect();
      return { x: left + scrollX, y: top + scrollY, width, height };
    });
  return { ...box, height: Math.min(box.height, view.height) };
}

async function whyOf(page: Page, place: number): Promise<void> {
  await page.locator('#sheet summary', { hasText: 'Why' }).nth(place).click();
}

/** The readings are invented. */
async function writeAtTheMachine(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Write at the machine' }).click();
  await page.getByLabel('Operation', { exact: true }).selectOption('rough-turn-body');
  const asked = page.getByLabel('Asked, mm');
  for (const over of [0.02, 0.015]) {
    await page.getByLabel('Read, mm').fill((Number(await asked.inputValue()) + over).toFixed(3));
    await page.keyboard.press('Enter');
  }
  await page.getByRole('button', { name: 'It was quiet' }).click();
  await page.locator('.lesson').waitFor();
}

async function lookAtThePacket(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Look at the pages' }).click();
  const images = page.locator('.packet-pages img');
  await images.first().waitFor();
  await images.first().scrollIntoViewIfNeeded();
  await page.waitForFunction(() => {
    const shown = [...document.querySelectorAll<HTMLImageElement>('.packet-pages img')].slice(0, 6);
    return shown.every((image) => image.complete && image.naturalWidth > 0);
  });
}

async function askHowToMeasure(page: Page): Promise<void> {
  await page.locator('#sheet summary', { hasText: 'How to measure this' }).first().click();
  await page.locator('#sheet').getByRole('button', { name: 'Inside diameters' }).first().click();
  await page.locator('.help-picture svg').waitFor();
}

/** An address for documentation (RFC 5737) and an invented code in place of those of whoever makes the pictures. */
async function pretendNetwork(page: Page): Promise<void> {
  const pairing = {
    code: 'K7QM-4R2X',
    addresses: ['http://192.0.2.17:4180'],
    devices: [
      {
        id: '1',
        name: 'Android, Chrome',
        address: '192.0.2.40',
        since: '2026-03-01T09:30:00Z',
        seen: '2026-03-01T10:12:00Z',
      },
    ],
  };
  await page.route('**/api/pairing', (route) => route.fulfill({ json: pairing }));
  await page.reload();
  await page.getByText('K7QM-4R2X').waitFor();
}
