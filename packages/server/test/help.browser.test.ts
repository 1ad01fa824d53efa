/** Help where one stands and as pages of its own; and the reason of every figure on one click. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { tabTo } from './keyboard.ts';
import { complaintsOfAxe, openScreens, type Screens, views } from './open-screens.ts';

let screens: Screens;
beforeAll(async () => {
  screens = await openScreens();
});
afterAll(async () => {
  await screens.close();
});

const opened = (page: Page) => page.locator('.help-open');

describe('help in place', () => {
  it('unfolds where it is asked for, with its drawing, by keyboard alone, and folds up again', async () => {
    await screens.look('jobs/plunger/evidence', views.tablet, async (page) => {
      await page.locator('#stage-evidence').focus();
      await tabTo(page, /^How to measure this/);
      await page.keyboard.press('Enter');
      await tabTo(page, /^Inside diameters/);
      await page.keyboard.press('Enter');
      await opened(page)
        .getByRole('img', { name: /telescopic gauge is rocked/ })
        .waitFor();
      expect(await opened(page).textContent()).toContain('0.013 mm small');
      await page.keyboard.press('Enter');
      await opened(page).waitFor({ state: 'detached' });
    });
  });

  it('tells of a size chosen on the drawing how it is measured', async () => {
    await screens.look('jobs/plunger/part', views.desktop, async (page) => {
      await page.locator('.drawing svg text', { hasText: 'Ø32 f7' }).click();
      const bar = page.locator('.chosen-sizes');
      await bar.getByRole('button', { name: 'Outside diameters' }).click();
      await bar.getByRole('heading', { name: 'Outside diameters' }).waitFor();
    });
  });

  it('stands at every stage, and unfolded it is clean for screen readers', async () => {
    await screens.look('jobs/valve-guide-pin/inspection', views.desktop, async (page) => {
      for (const stage of ['evidence', 'part', 'duty', 'route', 'bench', 'record', 'inspection']) {
        await page.locator(`#stage-${stage}`).click();
        await page.locator('#sheet .help-here button:visible').first().click();
        await opened(page).locator('article').waitFor();
      }
      expect(await complaintsOfAxe(page)).toEqual([]);
    });
  });
});

describe('the pages of the help', () => {
  it.each(['measure', 'meaning', 'sources'])('%s is clean for screen readers and fits every screen', async (part) => {
    for (const view of Object.values(views))
      await screens.look(`help/${part}`, view, async (page) => {
        await page.getByRole('heading', { level: 2 }).waitFor();
        const [wide, room] = await page.evaluate(() => [document.documentElement.scrollWidth, innerWidth]);
        expect(wide).toBeLessThanOrEqual(room ?? 0);
        if (view === views.phone) expect(await complaintsOfAxe(page)).toEqual([]);
      });
  });

  it('lead to the piece that is asked for, and every drawing is there', async () => {
    await screens.look('help/measure/crown', views.phone, async (page) => {
      const heading = page.getByRole('heading', { name: 'Crowned ends' });
      await heading.waitFor();
      await expect.poll(() => heading.evaluate((h) => h === document.activeElement), { timeout: 5000 }).toBe(true);
      expect(await page.locator('.help-picture svg').count()).toBe(12);
    });
  });

  it('find a source by its words and its standing', async () => {
    await screens.look('help/sources', views.desktop, async (page) => {
      const items = page.locator('.sources li');
      const all = await items.count();
      expect(all).toBeGreaterThan(300);
      await page.getByLabel('Standing').selectOption('from memory');
      const remembered = await items.count();
      expect(remembered).toBeGreaterThan(20);
      expect(remembered).toBeLessThan(all);
      for (const item of await items.all()) expect(await item.locator('strong').textContent()).toBe('from memory');
      await page.getByLabel(/^Search title/).fill('uncertainty measurement');
      await page.locator('.sources li', { hasText: 'JCGM 100:2008' }).waitFor();
      expect(await items.count()).toBeLessThan(remembered);
    });
  });
});

describe('why', () => {
  it('gives formula, numbers put in and source for ring figures, accepted sizes and limits', async () => {
    await screens.look('jobs/plunger/duty', views.desktop, async (page) => {
      await page.locator('#sheet summary', { hasText: 'Why' }).nth(1).click();
      const squeeze = page.locator('.worked li', { hasText: 'squeeze = (W − h) / W' });
      await squeeze.waitFor();
      const text = (await squeeze.textContent()) ?? '';
      const put = (sign: string): number => Number(new RegExp(`${sign}, [^:]*: ([\\d.]+) mm`).exec(text)?.[1]);
      const gives = Number(/Gives: ([\d.]+) %/.exec(text)?.[1]);
      expect(gives).toBeCloseTo(100 * (1 - put('h') / put('W')), 1);
    });
    await screens.look('jobs/plunger/part', views.desktop, async (page) => {
      const row = page.locator('.sizes tbody tr', {
        has: page.getByRole('rowheader', { name: 'diameter of the body', exact: true }),
      });
      await row.locator('summary').click();
      // ISO 286-2: f7 over 30 to 50 mm is −25/−50 µm.
      await row.getByText('lower −50 µm · upper −25 µm').waitFor();
      await row.locator('.source').first().waitFor();
    });
  });
});
