/** What the page works out by itself: at once, without the server, in the unit and the light one wants. */
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

const shown = (page: Page, text: string) => page.locator('.drawing svg text', { hasText: text });
const standing = (page: Page) => page.locator('.standing [role="status"]');
const kept = (page: Page) => standing(page).filter({ hasText: 'is kept' }).waitFor();
const field = (page: Page, title: string) => page.getByRole('textbox', { name: `${title}, as typed` });
const findings = (page: Page) => page.locator('.findings ol');
const documentOf = async (id: string) => (await (await fetch(`${screens.address}/api/jobs/${id}`)).json()).document;
const open = (page: Page) => page.locator('.switches summary').click();

describe('the page', () => {
  it('asks the server for nothing to draw and check what is typed', async () => {
    const id = await screens.copyOf('plunger');
    await screens.look(`jobs/${id}/part`, views.desktop, async (page) => {
      await kept(page);
      const asked: string[] = [];
      page.on('request', (request) => asked.push(`${request.method()} ${new URL(request.url()).pathname}`));
      await field(page, 'diameter of the body').fill('31.5 f7');
      await shown(page, 'Ø31.5 f7').waitFor();
      await findings(page).getByText('squeeze').first().waitFor();
      expect(asked.filter((line) => !/\/assets\/|\/revisions$|^PUT/.test(line))).toEqual([]);
    });
  });

  it('goes on drawing and checking with the server away, and delivers all of it later', async () => {
    const id = await screens.copyOf('plunger');
    await screens.look(`jobs/${id}/part`, views.desktop, async (page) => {
      await kept(page);
      // What is loaded ahead comes once the page has come to rest.
      await page.waitForTimeout(3000);
      await screens.stop();
      const before = await findings(page).textContent();
      await field(page, 'diameter of the body').fill('31.5 f7');
      await shown(page, 'Ø31.5 f7').waitFor();
      await findings(page).getByText('squeeze').first().waitFor();
      expect(await findings(page).textContent()).not.toBe(before);
      await page.getByRole('tab', { name: /^Route/ }).click();
      expect(await page.locator('#sheet').textContent()).toMatch(/three-jaw chuck/);
      for (const stage of await page.getByRole('tab').all()) {
        await stage.click();
        expect(await page.locator('#sheet').textContent()).not.toContain('part of the page did not come');
      }
      await page.getByRole('tab', { name: /^Part/ }).click();
      await field(page, 'diameter of the body').fill('31.6 f7');
      await shown(page, 'Ø31.6 f7').waitFor();
      await standing(page).filter({ hasText: 'does not answer' }).waitFor();
      await screens.start();
      await standing(page).filter({ hasText: 'Revision 2.' }).waitFor({ timeout: 20_000 });
    });
    expect(JSON.stringify(await documentOf(id))).toContain('"31.6 f7"');
  });

  it('goes on when its worker breaks', async () => {
    const page = await screens.open(views.desktop, 'jobs/plunger/part');
    const worker = page.workers().find((one) => one.url().includes('assess-worker'));
    if (!worker) throw new Error('there is no worker that assesses');
    const gone = new Promise((resolve) => worker.once('close', resolve));
    await worker.evaluate(
      () =>
        void setTimeout(() => {
          throw new Error('broken on purpose');
        }),
    );
    await gone;
    await field(page, 'diameter of the body').fill('31.7 f7');
    await shown(page, 'Ø31.7 f7').waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await kept(page);
    await page.context().close();
  });
});

describe('the switches', () => {
  it('change the unit without changing any size, and back', async () => {
    const id = await screens.copyOf('valve-guide-pin');
    const before = await documentOf(id);
    await screens.look(`jobs/${id}/part`, views.desktop, async (page) => {
      await open(page);
      await page.getByLabel('Unit of bare numbers').selectOption('inches');
      await shown(page, 'inches').waitFor();
      await standing(page).filter({ hasText: 'Revision 2.' }).waitFor();
      expect(await field(page, 'diameter of the guide').inputValue()).toBe('6 mm f7');
      // 6 mm; ISO 286-2: f7 over 3 to 6 mm is −10/−22 µm, so 5.978 to 5.990 mm, 0.2354 to 0.2358 in.
      const row = page.locator('.sizes tbody tr', {
        has: page.getByRole('rowheader', { name: 'diameter of the guide' }),
      });
      expect(await row.locator('.figure').allTextContents()).toEqual(['0.2354', '0.2358']);
      await page.getByRole('button', { name: 'Undo' }).click();
      await standing(page).filter({ hasText: 'Revision 3.' }).waitFor();
      expect(await field(page, 'diameter of the guide').inputValue()).toBe('6 f7');
    });
    expect(await documentOf(id)).toEqual(before);
  });

  it('change decimal sign, paper and projection of the drawing, each to be taken back', async () => {
    const id = await screens.copyOf('plunger');
    await screens.look(`jobs/${id}/part`, views.desktop, async (page) => {
      const box = () => page.locator('.drawing svg').getAttribute('viewBox');
      const a4 = await box();
      await open(page);
      await page.getByLabel('Decimal sign').selectOption('comma');
      await shown(page, '4,75').waitFor();
      await page.getByLabel('Paper').first().selectOption('Letter');
      await expect.poll(box).not.toBe(a4);
      await page.getByLabel('Projection').first().selectOption('third angle');
      await standing(page).filter({ hasText: 'is kept' }).waitFor();
      await expect
        .poll(async () => (await documentOf(id)).sheet, { timeout: 10_000 })
        .toMatchObject({
          decimalSign: 'comma',
          paper: 'Letter',
          projection: 'third angle',
        });
      await page.getByRole('button', { name: 'Undo' }).click();
      await expect.poll(async () => (await documentOf(id)).sheet.projection, { timeout: 10_000 }).toBe('first angle');
    });
  });

  it('keep the look of the screen on this device, on every screen', async () => {
    await screens.look('', views.desktop, async (page) => {
      await page.getByLabel('Screen', { exact: true }).selectOption('bench');
      expect(await page.evaluate(() => document.documentElement.dataset.theme)).toBe('bench');
      await page.goto(`${screens.address}/jobs/plunger/part`);
      await shown(page, 'Ø32').waitFor();
      expect(await page.evaluate(() => getComputedStyle(document.body).backgroundColor)).toBe('rgb(255, 255, 255)');
    });
  });

  it.each(['light', 'dark', 'bench'])('leave axe nothing to say: %s', async (theme) => {
    for (const view of [views.desktop, views.phone])
      await screens.look('jobs/plunger/part', view, async (page) => {
        await open(page);
        await page.getByLabel('Screen', { exact: true }).selectOption(theme);
        expect(await complaintsOfAxe(page)).toEqual([]);
      });
  });
});

describe('a restored backup', () => {
  it('is shown on an open page by itself', async () => {
    const id = await screens.copyOf('valve-guide-pin');
    const backup = await (await fetch(`${screens.address}/api/backup`)).arrayBuffer();
    await screens.look(`jobs/${id}/part`, views.desktop, async (page) => {
      await field(page, 'diameter of the guide').fill('6.7 f7');
      await standing(page).filter({ hasText: 'Revision 2.' }).waitFor();
      const restored = await fetch(`${screens.address}/api/restore`, { method: 'POST', body: backup });
      expect(restored.status).toBe(200);
      await shown(page, 'Ø6 f7').waitFor();
      await standing(page).filter({ hasText: 'Revision 1.' }).waitFor();
    });
  });
});

describe('what two changed in several places', () => {
  it('is settled place by place', async () => {
    const id = await screens.copyOf('valve-guide-pin');
    await screens.look(`jobs/${id}/part`, views.desktop, async (page) => {
      await kept(page);
      await page.context().setOffline(true);
      await field(page, 'diameter of the guide').fill('6.6 f7');
      await field(page, 'length of the head').fill('8.6');
      await standing(page).filter({ hasText: 'does not answer' }).waitFor();
      await screens.look(`jobs/${id}/part`, views.desktop, async (other) => {
        await field(other, 'diameter of the guide').fill('6.5 f7');
        await field(other, 'length of the head').fill('8.4');
        await expect.poll(async () => JSON.stringify(await documentOf(id)), { timeout: 20_000 }).toContain('"8.4"');
      });
      await page.context().setOffline(false);
      const rows = page.locator('.choosing tbody tr');
      await rows.first().waitFor({ timeout: 20_000 });
      expect(await rows.count()).toBe(2);
      const goOn = page.getByRole('button', { name: 'Go on with what is marked' });
      expect(await goOn.isDisabled()).toBe(true);
      expect(await complaintsOfAxe(page)).toEqual([]);
      await rows.filter({ hasText: 'guide' }).getByText('6.6 f7').click();
      await rows.filter({ hasText: 'head' }).getByText('8.4').click();
      await goOn.click();
      await standing(page).filter({ hasText: 'Revision 3.' }).waitFor();
    });
    const text = JSON.stringify(await documentOf(id));
    expect(text).toContain('"6.6 f7"');
    expect(text).toContain('"8.4"');
  });
});
