/** Photographs of a job: taken or chosen, described, put in their place, looked at large, and taken along. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { complaintsOfAxe, openScreens, type Screens, views } from './open-screens.ts';

let screens: Screens;
beforeAll(async () => {
  screens = await openScreens();
});
afterAll(async () => {
  await screens.close();
});

const pictures = (page: Page) => page.locator('.pictures > li');

/** A change is kept a moment after the last key. */
const patiently = { timeout: 15_000 };

async function inStore(job: string): Promise<number> {
  const { document } = await (await fetch(`${screens.address}/api/jobs/${job}?only=document`)).json();
  return document.photographs?.length ?? 0;
}

/** A photograph as a camera writes it: with a block that tells where it was taken. */
async function photograph(page: Page): Promise<{ name: string; mimeType: string; buffer: Buffer }> {
  const plain = await page.screenshot({ type: 'jpeg' });
  const told = Buffer.from('Exif\0\0 somewhere north of here', 'latin1');
  const block = Buffer.concat([Buffer.from([0xff, 0xe1, 0, told.length + 2]), told]);
  const buffer = Buffer.concat([plain.subarray(0, 2), block, plain.subarray(2)]);
  return { name: 'pin, worn end.jpg', mimeType: 'image/jpeg', buffer };
}

it('is kept by its content, described, shown large with its place on the drawing, and goes into the export file', async () => {
  const job = await screens.copyOf('plunger');
  await screens.look(`jobs/${job}/evidence`, views.desktop, async (page) => {
    const sent = await photograph(page);
    await page.getByLabel('Take a photograph').setInputFiles(sent);
    await pictures(page).getByRole('button', { name: 'Larger: photograph 1' }).waitFor();
    await page.getByLabel('What it shows, photograph 1').fill('Scores along the working end');
    // A reading is marked where its size stands; those of a groove stand together.
    await page.getByLabel('Of, photograph 1').selectOption('p5');
    await page.getByRole('button', { name: 'Larger: photograph 1' }).click();
    await page.locator('.drawing .chosen', { hasText: '25.9' }).first().waitFor();
    await page.getByRole('button', { name: 'Smaller: photograph 1' }).click();
    await page.getByLabel('Of, photograph 1').selectOption('body.diameter');
    await page.getByLabel('Along, photograph 1').fill('12');
    await page.getByRole('button', { name: 'Larger: photograph 1' }).click();
    await page.getByRole('img', { name: 'Scores along the working end' }).waitFor();
    expect(await page.locator('.drawing .chosen text').allTextContents()).toEqual([expect.stringContaining('Ø32 f7')]);
    const wide = await pictures(page)
      .locator('img')
      .evaluate((img) => img.getBoundingClientRect().width);
    expect(wide).toBeGreaterThan(700);
    const shown = await page
      .locator('.pictures img')
      .evaluate((img) => (img instanceof HTMLImageElement ? img.naturalWidth : 0));
    expect(shown).toBe(1440);
    const exported = async () => (await fetch(`${screens.address}/api/jobs/${job}/export`)).json();
    const along = async () => (await exported()).revisions.at(-1).document.photographs?.[0]?.along;
    await expect.poll(along, patiently).toBe('12');
    const archive = await exported();
    expect(archive.revisions.at(-1).document.photographs).toEqual([
      {
        id: expect.stringMatching(/^photograph-[0-9a-z]+$/),
        file: archive.attachments[0].hash,
        shows: 'Scores along the working end',
        of: 'body.diameter',
        along: '12',
      },
    ]);
    const kept = Buffer.from(archive.attachments[0].content, 'base64');
    expect(sent.buffer.includes('somewhere north')).toBe(true);
    expect(kept.includes('somewhere north')).toBe(false);
    expect(kept.includes('Exif')).toBe(false);
  });
});

it('taken while the server is away is sent when it is back; what is no picture is refused in words; one removed can come back', async () => {
  const job = await screens.copyOf('plunger');
  const page = await screens.open(views.phone, `jobs/${job}/inspection`);
  await page
    .getByLabel('Choose pictures')
    .setInputFiles({ name: 'not.png', mimeType: 'image/png', buffer: Buffer.from('<script>') });
  await page.getByText('cannot read that file as a picture').waitFor();
  await screens.stop();
  await page.getByLabel('Choose pictures').setInputFiles([await photograph(page), await photograph(page)]);
  await page.getByText('kept in this browser and goes there when it is back').first().waitFor();
  await screens.start();
  await expect
    .poll(
      () =>
        pictures(page)
          .getByRole('button', { name: /^Larger/ })
          .count(),
      { timeout: 20_000 },
    )
    .toBe(2);
  await expect.poll(() => inStore(job), patiently).toBe(2);
  expect(await complaintsOfAxe(page)).toEqual([]);
  await page.getByRole('button', { name: 'Remove: photograph 1' }).click();
  await expect.poll(() => inStore(job), patiently).toBe(1);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect.poll(() => pictures(page).count(), patiently).toBe(2);
  await page.context().close();
});

it('chosen while the server is away outlasts the page, and becomes one record though two windows send it', async () => {
  const job = await screens.copyOf('plunger');
  const page = await screens.open(views.desktop, `jobs/${job}/evidence`);
  await screens.stop();
  await page.getByLabel('Choose pictures').setInputFiles(await photograph(page));
  await page.getByText('kept in this browser and goes there when it is back').waitFor();
  const context = page.context();
  await page.close();
  await screens.start();
  const [one, two] = [await context.newPage(), await context.newPage()];
  for (const window of [one, two]) await window.goto(`${screens.address}/jobs/${job}/evidence`);
  const shown = { name: 'Larger: photograph 1' };
  for (const window of [one, two]) await window.getByRole('button', shown).waitFor();
  await expect.poll(() => inStore(job), patiently).toBe(1);
  await one.waitForTimeout(3000);
  expect(await inStore(job)).toBe(1);
  // Kept by the server, it is not kept here any longer: taken out, it stays out.
  await one.getByRole('button', { name: 'Remove: photograph 1' }).click();
  await expect.poll(() => inStore(job), patiently).toBe(0);
  await one.getByText('Every change is kept').waitFor();
  await one.reload();
  await one.locator('.drawing svg').waitFor();
  await one.waitForTimeout(1500);
  expect(await pictures(one).count()).toBe(0);
  await context.close();
});

it('takes its place from the drawing, and the next reading does not', async () => {
  const job = await screens.copyOf('plunger');
  await screens.look(`jobs/${job}/evidence`, views.desktop, async (page) => {
    await page.getByLabel('Take a photograph').setInputFiles(await photograph(page));
    await page.getByRole('button', { name: 'Point at its place: photograph 1' }).click();
    await page.getByText('Point at the part where the photograph was taken').waitFor();
    const along = page.getByLabel('Along, photograph 1');
    const reading = page.locator('.new-reading');
    const before = await reading.getByLabel('Along, from its left end').inputValue();
    const pointAtBody = async (): Promise<void> => {
      const outlines = await page.locator('.drawing [data-of="body"] path.outline').all();
      const boxes = await Promise.all(outlines.map((outline) => outline.boundingBox()));
      // The longest line along the part: the others are chamfers and faces.
      const [box] = boxes.flatMap((b) => b ?? []).toSorted((a, b) => b.width - a.width);
      if (!box) throw new Error('the outline of the body is not on the screen');
      await page.mouse.click(box.x + box.width / 3, box.y + box.height / 2);
    };
    await pointAtBody();
    await expect.poll(() => page.getByLabel('Of, photograph 1').inputValue()).toBe('body');
    expect(Number(await along.inputValue())).toBeGreaterThan(0);
    expect(await reading.getByLabel('Along, from its left end').inputValue()).toBe(before);
    const focused = await page.evaluate(() => document.activeElement?.getAttribute('aria-label'));
    expect(focused).toBe('Point at its place: photograph 1');
    // A size is a place, too, though no stretch of the part.
    await page.getByRole('button', { name: 'Point at its place: photograph 1' }).click();
    await page.locator('.drawing [data-of="body.diameter"] text').click();
    await expect.poll(() => page.getByLabel('Of, photograph 1').inputValue()).toBe('body.diameter');
    expect(await along.inputValue()).toBe('');
    await page.evaluate(() => scrollTo(0, 0));
    await pointAtBody();
    await page.getByText('Place taken from the drawing').waitFor();
    expect(await page.getByLabel('Of, photograph 1').inputValue()).toBe('body.diameter');
  });
});
