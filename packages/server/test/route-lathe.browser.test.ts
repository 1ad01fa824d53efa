/** The route moved about, and the lathe tested: what a person does with both. */
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

/** A keystroke goes through the worker and the server. */
const poll: typeof expect.poll = (ask) => expect.poll(ask, { timeout: 15_000 });
const names = (page: Page) => page.locator('.op-name').allTextContents();
const row = (page: Page, title: string) => page.locator('.op', { hasText: title });
const nameOf = (page: Page, title: string) => row(page, title).locator('.op-name');

async function storedRoute(id: string): Promise<{ order?: string[]; changes?: Record<string, unknown>[] } | undefined> {
  return (await (await fetch(`${screens.address}/api/jobs/${id}?only=document`)).json()).document.route;
}

describe('the operations of a route', () => {
  it('are dragged by pointer to another place, with the rule that breaks said at the operation', async () => {
    const id = await screens.copyOf('plunger');
    await screens.look(`jobs/${id}/route`, views.desktop, async (page) => {
      await nameOf(page, 'Rough the body').waitFor();
      const before = await names(page);
      const [from, to] = [before.findIndex((n) => n.startsWith('Finish the body')), 1];
      await page
        .locator('.op')
        .nth(to)
        .evaluate((e) => e.scrollIntoView({ block: 'center' }));
      const handle = await page.locator('.op .handle').nth(from).boundingBox();
      const over = await page.locator('.op').nth(to).boundingBox();
      if (!handle || !over) throw new Error('the rows are not on the page');
      await page.mouse.move(handle.x + handle.width / 2, handle.y + handle.height / 2);
      await page.mouse.down();
      await page.mouse.move(over.x + 20, over.y + over.height + 2, { steps: 4 });
      await page.mouse.move(over.x + 20, over.y + over.height / 2, { steps: 4 });
      expect(await page.locator('.op.drop-over').count()).toBe(1);
      await page.mouse.up();
      const place = async (start: string) => (await names(page)).findIndex((n) => n.startsWith(start));
      await poll(async () => (await place('Finish the body')) < (await place('Rough the body'))).toBe(true);
      expect(await row(page, 'Finish the body').locator('.op-stands').textContent()).toContain('Caution');
      await nameOf(page, 'Finish the body').click();
      await row(page, 'Finish the body').getByText('which should come first').first().waitFor();
      await page.getByText(/than the planner’s own order|As long as the planner’s/).waitFor();
      await poll(async () => (await storedRoute(id))?.order?.length ?? 0).toBeGreaterThan(1);
      await page.getByRole('button', { name: 'Leave the order to the planner' }).click();
      await poll(() => names(page)).toEqual(before);
    });
  });

  it('are opened, moved, kept, left out and done otherwise by keyboard alone', async () => {
    const id = await screens.copyOf('plunger');
    await screens.look(`jobs/${id}/route`, views.tablet, async (page) => {
      await nameOf(page, 'Chamfer the body').waitFor();
      const before = await names(page);
      const at = before.findIndex((n) => n.startsWith('Chamfer the body'));
      await nameOf(page, 'Chamfer the body').focus();
      await page.keyboard.press('Enter');
      await page.getByRole('button', { name: /^Earlier: Chamfer the body/ }).waitFor();
      await page.keyboard.press('Tab');
      await page.keyboard.press('Enter');
      await poll(async () => (await names(page))[at - 1]).toBe(before[at]);
      await nameOf(page, 'Chamfer the body').focus();
      await page.keyboard.press('Alt+ArrowDown');
      await poll(async () => (await names(page))[at]).toBe(before[at]);
      // Wherever the row goes, what was pressed stays under the finger.
      for (const tool of ['Earlier', 'Later']) {
        await page.getByRole('button', { name: new RegExp(`^${tool}: Chamfer`) }).press('Enter');
        const there = tool === 'Earlier' ? at - 1 : at;
        await poll(async () => (await names(page))[there]).toBe(before[at]);
        expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toMatch(
          new RegExp(`^${tool}: Chamfer`),
        );
      }
      await page.getByRole('button', { name: /^Let it move: Chamfer the body/ }).press('Enter');
      await page.getByRole('button', { name: /^Keep it here: Chamfer the body/ }).press('Enter');
      await row(page, 'Chamfer the body').getByText('kept here').waitFor();

      const otherwise = page.getByRole('region', { name: /^Do it otherwise: Chamfer the body/ });
      await otherwise.getByLabel('In another way, which is').fill('filed by hand');
      await row(page, 'Chamfer the body').getByText('done otherwise').waitFor();
      await otherwise.getByLabel('It takes').fill('3');
      await poll(() => row(page, 'Chamfer the body').locator('.op-time').textContent()).toContain('3 min');
      await otherwise.getByRole('button', { name: 'Leave it out' }).press('Enter');
      await row(page, 'Chamfer the body').getByText('left out').first().waitFor();
      await poll(async () => (await storedRoute(id))?.changes).toMatchObject([
        { instead: 'filed by hand', minutes: 3, skip: true },
      ]);
      await otherwise.getByRole('button', { name: 'Do it after all' }).press('Enter');
      await poll(async () => JSON.stringify((await storedRoute(id))?.changes)).not.toContain('skip');
    });
  });

  it('show the work, the cut on this lathe and what would help; another cutter changes them', async () => {
    const id = await screens.copyOf('plunger');
    await screens.look(`jobs/${id}/route`, views.desktop, async (page) => {
      await nameOf(page, 'Rough the body').click();
      const open = row(page, 'Rough the body');
      await open.locator('.verdict').waitFor({ timeout: 20_000 });
      expect(await open.locator('.verdict').textContent()).toMatch(/^(Goes|Goes if .*|Not on this lathe .*): .*\d/);
      await open.locator('figure').nth(2).waitFor({ timeout: 20_000 });
      expect(await open.locator('.picture svg[role="img"]').count()).toBeGreaterThanOrEqual(4);
      expect(await open.locator('.picture svg').first().locator('path.cut').count()).toBeGreaterThan(0);
      await open.getByLabel('Cutter').selectOption({ label: 'stoned high-speed steel finishing cutter, 0.3 nose' });
      await open.getByText('own cutter').waitFor();
      await open.getByText(/as wished it/).waitFor();
      expect(await complaintsOfAxe(page)).toEqual([]);
    });
  });

  it('are marked where they cut what is chosen on the drawing', async () => {
    await screens.look('jobs/plunger/route', views.desktop, async (page) => {
      await nameOf(page, 'Rough the body').waitFor();
      expect(await page.locator('.op.chosen').count()).toBe(0);
      await page.locator('.drawing [data-of^="seal-groove"] text').first().click();
      await row(page, 'Cut the seal groove').and(page.locator('.chosen')).waitFor();
      expect(await row(page, 'Rough the body').and(page.locator('.chosen')).count()).toBe(0);
    });
  });

  it('take wishes for setup, bar and number of parts', async () => {
    const id = await screens.copyOf('plunger');
    await screens.look(`jobs/${id}/route`, views.phone, async (page) => {
      await page.getByText('As you want it').click();
      await page.getByLabel('End that stands out first').selectOption('left end');
      await page.getByRole('heading', { name: /Setup 1.*left end out/ }).waitFor();
      await page.getByLabel('Parts to make').fill('3');
      await poll(() => page.locator('.stock-fold').textContent()).toMatch(/3 parts/);
      expect(await complaintsOfAxe(page)).toEqual([]);
      // Nothing may be wider than the screen.
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(views.phone.width);
    });
  });
});

async function storedPushes(): Promise<number> {
  const { document } = await (await fetch(`${screens.address}/api/workshop`)).json();
  return document.lathe.tests?.pushes?.length ?? 0;
}

/** One knock every 0.6 s that rings at a tone, 16 bits at 44.1 kHz, as a telephone would keep it. */
function recording(tone: number): Buffer {
  const rate = 44_100;
  const frames = Math.round(2.4 * rate);
  const file = Buffer.alloc(44 + 2 * frames);
  file.write('RIFF', 0);
  file.writeUInt32LE(36 + 2 * frames, 4);
  file.write('WAVEfmt ', 8);
  file.writeUInt32LE(16, 16);
  file.writeUInt16LE(1, 20);
  file.writeUInt16LE(1, 22);
  file.writeUInt32LE(rate, 24);
  file.writeUInt32LE(2 * rate, 28);
  file.writeUInt16LE(2, 32);
  file.writeUInt16LE(16, 34);
  file.write('data', 36);
  file.writeUInt32LE(2 * frames, 40);
  for (let i = 0; i < frames; i++) {
    const t = (i / rate - 0.3) % 0.6;
    const omega = 2 * Math.PI * tone;
    const sound = i / rate < 0.3 ? 0 : 0.7 * Math.exp(-0.03 * omega * t) * Math.sin(omega * t);
    file.writeInt16LE(Math.round(30_000 * sound + 40 * Math.sin(i)), 44 + 2 * i);
  }
  return file;
}

describe('what the lathe is known to do', () => {
  it('changes with a push written down: what it taught, and what gives how much', async () => {
    await screens.look('workshop/known', views.desktop, async (page) => {
      await page.getByText('Nothing was tested on this').waitFor({ timeout: 20_000 });
      const topSlide = page.locator('.elements tr', { hasText: 'top slide, or the block' });
      expect(await topSlide.textContent()).toContain('100 %');
      const form = page.getByRole('region', { name: 'New push test' });
      await form.getByLabel('Pushed and read at').selectOption('top slide');
      for (const [force, up, down] of [
        ['0', '0', '3'],
        ['100', '9', '12'],
        ['200', '18', '19'],
      ]) {
        await form.getByLabel(`While it rises, ${force} N`).fill(up ?? '');
        await form.getByLabel(`While it falls, ${force} N`).fill(down ?? '');
      }
      await form.getByRole('button', { name: 'Write it down' }).click();
      await page.getByText('1 test says how stiff').waitFor({ timeout: 20_000 });
      await page.getByText(/push test 1: push at the top slide/).waitFor();
      await poll(() => topSlide.textContent()).not.toContain('100 %');
      await page.getByText('Every change is kept').waitFor();
      expect(await complaintsOfAxe(page)).toEqual([]);
      await page.getByRole('button', { name: /^Take out: push at the top slide/ }).click();
      await page.getByText('Nothing was tested on this').waitFor({ timeout: 20_000 });
      await poll(storedPushes).toBe(0);
    });
  });

  it('hears the tone in a recording of taps, and takes it over', async () => {
    await screens.look('workshop/known', views.phone, async (page) => {
      await page.getByRole('button', { name: /^Tap/ }).click();
      const form = page.getByRole('region', { name: 'New tap test' });
      await form.getByLabel('Recording, a WAV file').setInputFiles({
        name: 'post.wav',
        mimeType: 'audio/wav',
        buffer: recording(265),
      });
      await form
        .getByRole('button', { name: /^Take this tone/ })
        .first()
        .click({ timeout: 20_000 });
      expect(Number(await form.getByLabel(/^It rings at/).inputValue())).toBeCloseTo(265, -1);
      await form.getByLabel('Recording, a WAV file').setInputFiles({
        name: 'note.wav',
        mimeType: 'audio/wav',
        buffer: Buffer.from('no recording at all'),
      });
      await form.getByText('Not taken; it must be a WAV file.').waitFor();
      expect(await complaintsOfAxe(page)).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(views.phone.width);
    });
  });

  it('is kept for named states and compared, before and after', async () => {
    await screens.look('workshop/known', views.tablet, async (page) => {
      await page.getByText('Nothing was tested on this').waitFor({ timeout: 20_000 });
      await page.getByRole('button', { name: 'Name a state' }).click();
      await page.getByLabel('What was altered').fill('solid block');
      const form = page.getByRole('region', { name: 'New push test' });
      await form.getByLabel('Pushed and read at').selectOption('top slide');
      await form.getByLabel('State of the lathe').selectOption({ label: 'solid block' });
      await form.getByLabel('While it rises, 0 N').fill('0');
      await form.getByLabel('While it rises, 200 N').fill('4');
      await form.getByRole('button', { name: 'Write it down' }).click();
      const compared = page.locator('.compared');
      await compared.getByRole('row', { name: /^Top slide/i }).waitFor({ timeout: 20_000 });
      expect(await complaintsOfAxe(page)).toEqual([]);
      await page.getByRole('button', { name: /^Remove this state/ }).click();
      await page.getByText('Nothing was tested on this').waitFor({ timeout: 20_000 });
    });
  });
});

describe('both screens', () => {
  it.each(['dark', 'bench'])('have nothing that axe complains of, nor anything that sticks out: %s', async (theme) => {
    await screens.look('jobs/valve-guide-pin/route', views.tablet, async (page) => {
      const look = async () => {
        await page.evaluate((t) => {
          document.documentElement.dataset.theme = t;
        }, theme);
        expect(await complaintsOfAxe(page)).toEqual([]);
        expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(views.tablet.width);
      };
      await page.getByText('The whole job on this lathe').click();
      await page.locator('.job-on-lathe figure').waitFor({ timeout: 30_000 });
      await nameOf(page, 'Rough the guide').click();
      await page.locator('.op.open .remedies').waitFor({ timeout: 30_000 });
      await look();
      await page.goto(`${screens.address}/workshop/known`);
      await page.locator('.elements').waitFor({ timeout: 30_000 });
      await look();
    });
  });
});
