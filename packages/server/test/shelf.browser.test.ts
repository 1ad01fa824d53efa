/** The shelf of jobs, the five questions to a new one, and the workshop, as a person meets them. */
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { complaintsOfAxe, openScreens, type Screens, views } from './open-screens.ts';

let screens: Screens;
beforeAll(async () => {
  screens = await openScreens();
});
afterAll(async () => {
  await screens.close();
});

const standing = (page: Page) => page.locator('.standing [role="status"]');
const onShelf = (page: Page, title: string) => page.getByRole('article', { name: title, exact: true });
const plunger = 'Plunger of an orchard sprayer pump';

describe('the shelf', () => {
  it('is one link away from the demonstration job, which the first visit opens', async () => {
    const context = await screens.browser.newContext({ viewport: views.desktop });
    const page = await context.newPage();
    await page.goto(screens.address);
    await page.locator('.drawing svg').waitFor();
    expect(new URL(page.url()).pathname).toBe('/jobs/valve-guide-pin/part');
    await page.getByRole('link', { name: 'All jobs' }).click();
    await onShelf(page, plunger).waitFor();
    await page.reload();
    await onShelf(page, plunger).waitFor();
    expect(new URL(page.url()).pathname).toBe('/');
    await context.close();
  });

  it('shows each job with its drawing, how far it has come and the worst that was found', async () => {
    await screens.look('', views.desktop, async (page) => {
      const job = onShelf(page, plunger);
      await job.waitFor();
      const picture = job.getByRole('img');
      await picture.scrollIntoViewIfNeeded();
      await expect
        .poll(() => picture.evaluate((i) => i instanceof HTMLImageElement && i.naturalWidth))
        .toBeGreaterThan(0);
      const words = await job.textContent();
      expect(words).toMatch(/Has come to(bench|route|inspection)/);
      expect(words).toMatch(/Stop|Caution|Note/);
      expect(words).toContain('pressure');
    });
  });

  it('finds by words, copies, removes to the bin and puts back', async () => {
    await screens.look('', views.desktop, async (page) => {
      await onShelf(page, plunger).waitFor();
      await page.getByRole('searchbox').fill('gland');
      await onShelf(page, plunger).waitFor({ state: 'detached' });
      expect(await page.getByRole('article').count()).toBe(1);
      await page.getByRole('searchbox').fill('nothing of that name');
      await page.getByText('No job has all these words.').waitFor();
      await page.getByRole('searchbox').fill('');
      await page.getByRole('button', { name: `Copy: ${plunger}`, exact: true }).click();
      const copy = `${plunger} (copy)`;
      await onShelf(page, copy).waitFor();
      await page.getByRole('button', { name: `Remove: ${copy}`, exact: true }).click();
      await onShelf(page, copy).waitFor({ state: 'detached' });
      await page.reload();
      await page.getByRole('button', { name: `Put it back: ${copy}` }).click();
      await onShelf(page, copy).waitFor();
      await page.getByRole('button', { name: `Remove: ${copy}`, exact: true }).click();
      await onShelf(page, copy).waitFor({ state: 'detached' });
    });
  });

  it('hands a job out as one file and takes it in again', async () => {
    await screens.look('', views.desktop, async (page) => {
      await onShelf(page, plunger).waitFor();
      const wait = page.waitForEvent('download');
      await page.getByRole('link', { name: `Export: ${plunger}`, exact: true }).click();
      const file = await (await wait).path();
      expect(readFileSync(file, 'utf8')).toContain('"32 f7"');
      await page.getByLabel('Take in a job from a file').setInputFiles(file);
      await page.locator('.drawing svg text', { hasText: 'Ø32 f7' }).waitFor();
      expect(new URL(page.url()).pathname).not.toContain('/jobs/plunger/');
      await page.getByRole('link', { name: 'All jobs' }).click();
      const broken = { name: 'broken.json', mimeType: 'application/json', buffer: Buffer.from('no job') };
      await page.getByLabel('Take in a job from a file').setInputFiles(broken);
      expect(await page.getByRole('alert').textContent()).not.toBe('');
    });
  });

  it('follows what happens in another browser', async () => {
    await screens.look('', views.desktop, async (page) => {
      await page.getByRole('article').first().waitFor();
      const before = await page.getByRole('article').count();
      await screens.copyOf('gland-spindle');
      await expect.poll(() => page.getByRole('article').count()).toBe(before + 1);
    });
  });
});

describe('a new job', () => {
  it('is five questions away from its drawing, with the keyboard alone, in inches', async () => {
    await screens.look('new', views.desktop, async (page) => {
      await page.getByLabel('Name of the job').focus();
      await page.keyboard.type('Swivel pin');
      await page.keyboard.press('Tab');
      await page.keyboard.type('Field gate');
      await page.keyboard.press('Tab');
      await page.keyboard.type('inches');
      await page.keyboard.press('Tab');
      await page.keyboard.type('lifting');
      await page.keyboard.press('Tab');
      await page.keyboard.press('ArrowDown');
      await page.keyboard.press('ArrowDown');
      await page.keyboard.press('ArrowDown');
      await page.keyboard.press('Tab');
      await page.keyboard.type('3 1/8');
      // 3 1/8 in is 79.375 mm exactly.
      await page.getByText('Understood: 79.375 mm').waitFor();
      await page.keyboard.press('Tab');
      await page.keyboard.type('3/4');
      await page.keyboard.press('Enter');
      await page
        .locator('.drawing svg text', { hasText: 'Ø.75' })
        .or(page.locator('.drawing svg text', { hasText: 'Ø0.75' }))
        .first()
        .waitFor();
      expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe('Swivel pin');
      expect(await page.locator('.title-block').textContent()).toContain('lifting');
      expect(await page.locator('.records').first().locator('tbody').count()).toBe(3);
    });
  });

  it('says at the field what is missing', async () => {
    await screens.look('new', views.phone, async (page) => {
      await page.getByLabel('Thickest diameter').fill('wide');
      await page.getByRole('button', { name: 'Draw it' }).click();
      expect(await page.locator('.refusal').allTextContents()).toEqual([
        'A name to find it by.',
        'A length above 0 and up to 3 m, for example 12,5 or 1/2 in.',
        'A length above 0 and up to 3 m, for example 12,5 or 1/2 in.',
      ]);
      expect(await page.evaluate(() => document.activeElement?.id)).toBe('new-title');
    });
  });
});

describe('the workshop', () => {
  it('is typed into, kept, undone, and jobs are worked out upon it at once', async () => {
    await screens.look('workshop/drills', views.desktop, async (page) => {
      await standing(page).filter({ hasText: 'is kept' }).waitFor();
      const rows = page.locator('.records tbody');
      const before = await rows.count();
      await page.getByRole('button', { name: 'Add a drill' }).click();
      await rows
        .nth(before)
        .getByRole('textbox', { name: /^Diameter/ })
        .fill('10.2');
      await standing(page)
        .filter({ hasText: /Revision [2-9]/ })
        .waitFor();
      const stored = await (await fetch(`${screens.address}/api/workshop`)).json();
      expect(JSON.stringify(stored.document.drills.at(-1))).toContain('10.2');
      await screens.look('jobs/plunger/route', views.desktop, async (job) => {
        const route = await job.locator('#sheet').textContent();
        await page.getByRole('tab', { name: /^Lathe/ }).click();
        await page.getByLabel('Steps, one after the other').fill('60 110');
        await expect.poll(() => job.locator('#sheet').textContent(), { timeout: 20_000 }).not.toBe(route);
      });
      await page.getByRole('button', { name: 'Undo' }).click();
      await expect.poll(() => page.getByLabel('Steps, one after the other').inputValue()).toContain('125 200');
    });
  });

  it('refuses in words at the field', async () => {
    await screens.look('workshop/lathe', views.phone, async (page) => {
      await standing(page).filter({ hasText: 'is kept' }).waitFor();
      await page.getByLabel('Power of the motor').fill('strong');
      expect(
        await page
          .locator('.field', { has: page.getByLabel('Power of the motor') })
          .locator('.refusal')
          .textContent(),
      ).toMatch(/Not taken: "strong"\. Expected a number from 10 to 50000 W/);
      await page.getByRole('button', { name: 'Undo' }).click();
      await page.locator('.field .refusal').waitFor({ state: 'detached' });
      expect(await page.getByLabel('Power of the motor').inputValue()).toBe('450');
    });
  });
});

describe('on every size of screen', () => {
  const addresses = ['', 'new', ...['lathe', 'cutters', 'drills', 'gauges', 'bars'].map((part) => `workshop/${part}`)];

  it.each(['desktop', 'tablet', 'phone'] as const)(
    'nothing sticks out sideways, and axe knows nothing to complain of: %s',
    async (view) => {
      for (const at of addresses) {
        for (const colours of view === 'desktop' ? (['light', 'dark'] as const) : (['light'] as const)) {
          await screens.look(
            at,
            views[view],
            async (page) => {
              await page
                .locator(at === '' ? 'article' : at === 'new' ? 'form' : '.records')
                .first()
                .waitFor();
              const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
              expect(over, at).toBeLessThanOrEqual(0);
              expect(await complaintsOfAxe(page), at).toEqual([]);
            },
            colours,
          );
        }
      }
    },
  );
});
