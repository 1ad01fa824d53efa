/** The drawing while it is typed at: renewed item by item, and no different from one that is made as a whole. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { openScreens, type Screens, views } from './open-screens.ts';

let screens: Screens;
beforeAll(async () => {
  screens = await openScreens();
});
afterAll(async () => {
  await screens.close();
});

const shown = (page: Page, text: string) => page.locator('.drawing svg text', { hasText: text });
const typed = (page: Page, title: string) => page.locator('.sizes').getByLabel(`${title}, as typed`, { exact: true });
const kept = (page: Page) => page.getByText('Every change is kept').waitFor();
/** The whole of it, as it is there for eyes, fingers and readers; what happens to be chosen is left out. */
const drawn = (page: Page) =>
  page.locator('.drawing svg').evaluate((svg) => {
    for (const item of svg.querySelectorAll('[class]')) {
      item.classList.remove('chosen');
      if (item.classList.length === 0) item.removeAttribute('class');
    }
    return svg.outerHTML;
  });

async function reloaded(page: Page): Promise<string> {
  await kept(page);
  await page.reload();
  await page.locator('.drawing svg').waitFor();
  await page.locator('.findings li').first().waitFor();
  return drawn(page);
}

it('keeps what a keystroke does not change, and is the same as if it were made anew', async () => {
  const job = await screens.copyOf('plunger');
  await screens.look(`jobs/${job}/part`, views.desktop, async (page) => {
    const items = () => page.locator('.drawing svg > g > *').elementHandles();
    const type = async (value: string): Promise<void> => {
      await typed(page, 'diameter of the body').fill(value);
      await shown(page, `Ø${value}`).waitFor();
    };
    await type('31.2 f7');
    const before = await items();
    await type('31.24 f7');
    await type('31.241 f7');
    const stay = await Promise.all(before.map((item) => item.evaluate((element) => element.isConnected)));
    expect(stay.filter(Boolean).length).toBeGreaterThan(before.length / 2);
    expect(stay).toContain(false);
    await page.waitForTimeout(500);
    const now = await drawn(page);
    expect(await reloaded(page)).toBe(now);
  });
});

it('is made as a whole where a section more or another scale moves everything', async () => {
  const job = await screens.copyOf('valve-guide-pin');
  await screens.look(`jobs/${job}/part`, views.desktop, async (page) => {
    const length = page
      .locator('.sizes')
      .getByLabel(/^length of the .*as typed$/)
      .first();
    await length.fill('61.5');
    await shown(page, '61.5').first().waitFor();
    await page.getByRole('button', { name: /add a section/i }).click();
    await page.waitForTimeout(1500);
    const now = await drawn(page);
    expect(await reloaded(page)).toBe(now);
  });
});

it('leaves the keyboard where it was when a change is taken back', async () => {
  const job = await screens.copyOf('plunger');
  await screens.look(`jobs/${job}/part`, views.desktop, async (page) => {
    await typed(page, 'diameter of the body').fill('31.2 f7');
    await shown(page, 'Ø31.2 f7').waitFor();
    await kept(page);
    const size = page.locator('.drawing [data-of="body.diameter"][tabindex]');
    await size.evaluate((item) => {
      if (item instanceof SVGElement) item.focus();
    });
    await page.keyboard.press('Control+z');
    await shown(page, 'Ø31.2 f7').waitFor({ state: 'detached' });
    expect(await page.evaluate(() => document.activeElement?.getAttribute('data-of'))).toBe('body.diameter');
  });
});
