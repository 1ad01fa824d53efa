/** What is typed is kept: through a reload, a dead server, a second browser, and with a way back. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openScreens, type Screens, views } from './open-screens.ts';

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
const documentOf = async (id: string): Promise<string> =>
  JSON.stringify((await (await fetch(`${screens.address}/api/jobs/${id}`)).json()).document);

describe('a change', () => {
  it('is with the server without a button, is one revision however many keys, and is there after a reload', async () => {
    const id = await screens.copyOf('valve-guide-pin');
    await screens.look(`jobs/${id}/part`, views.desktop, async (page) => {
      await field(page, 'diameter of the guide').fill('');
      await field(page, 'diameter of the guide').pressSequentially('6,5 h6', { delay: 60 });
      await shown(page, 'Ø6.5 h6').waitFor();
      await standing(page).filter({ hasText: 'Revision 2.' }).waitFor();
      await page.reload();
      await shown(page, 'Ø6.5 h6').waitFor();
      expect(await field(page, 'diameter of the guide').inputValue()).toBe('6,5 h6');
    });
    expect(await documentOf(id)).toContain('"6,5 h6"');
  });

  it('typed while the server is dead is kept in the browser, through a reload too, and delivered when it is back', async () => {
    const id = await screens.copyOf('plunger');
    await screens.look(`jobs/${id}/part`, views.desktop, async (page) => {
      await kept(page);
      await screens.stop();
      await field(page, 'diameter of the body').fill('31.7 f7');
      await standing(page).filter({ hasText: 'does not answer' }).waitFor();
      await screens.start();
      await page.reload();
      await shown(page, 'Ø31.7 f7').waitFor();
      await standing(page).filter({ hasText: 'Revision 2.' }).waitFor();
      await screens.stop();
      await field(page, 'diameter of the body').fill('31.8 f7');
      await standing(page).filter({ hasText: 'does not answer' }).waitFor();
      await screens.start();
      await standing(page).filter({ hasText: 'Revision 3.' }).waitFor({ timeout: 20_000 });
    });
    expect(await documentOf(id)).toContain('"31.8 f7"');
  });

  it('that is refused is not kept, and says so', async () => {
    const id = await screens.copyOf('plunger');
    const before = await documentOf(id);
    await screens.look(`jobs/${id}/part`, views.desktop, async (page) => {
      await field(page, 'diameter of the body').fill('thick');
      await standing(page).filter({ hasText: 'refused' }).waitFor();
      await page.getByRole('button', { name: 'Undo' }).click();
      await kept(page);
      expect(await field(page, 'diameter of the body').inputValue()).toBe('32 f7');
    });
    expect(await documentOf(id)).toBe(before);
  });
});

describe('the way back', () => {
  it('goes step by step with keys and buttons, also after a reload', async () => {
    const id = await screens.copyOf('valve-guide-pin');
    await screens.look(`jobs/${id}/part`, views.desktop, async (page) => {
      for (const [text, revision] of [
        ['7 f7', 2],
        ['8 f7', 3],
      ] as const) {
        await field(page, 'diameter of the guide').fill(text);
        await standing(page)
          .filter({ hasText: `Revision ${revision}.` })
          .waitFor();
      }
      await page.reload();
      await shown(page, 'Ø8 f7').waitFor();
      await kept(page);
      await page.keyboard.press('Control+z');
      await shown(page, 'Ø7 f7').waitFor();
      await standing(page).filter({ hasText: 'Revision 4.' }).waitFor();
      await page.getByRole('button', { name: 'Undo' }).click();
      await shown(page, 'Ø6 f7').waitFor();
      await standing(page).filter({ hasText: 'Revision 5.' }).waitFor();
      await page.reload();
      await shown(page, 'Ø6 f7').waitFor();
      await kept(page);
      await page.keyboard.press('Control+Shift+z');
      await shown(page, 'Ø7 f7').waitFor();
      await standing(page).filter({ hasText: 'Revision 6.' }).waitFor();
      await page.getByRole('button', { name: 'Redo' }).click();
      await shown(page, 'Ø8 f7').waitFor();
      await standing(page).filter({ hasText: 'Revision 7.' }).waitFor();
      expect(await page.getByRole('button', { name: 'Redo' }).isDisabled()).toBe(true);
    });
  });
});

describe('two browsers', () => {
  it('see each other’s changes, and different ones are joined', async () => {
    const id = await screens.copyOf('valve-guide-pin');
    await screens.look(`jobs/${id}/part`, views.desktop, async (one) => {
      await screens.look(`jobs/${id}/part`, views.tablet, async (two) => {
        await field(one, 'diameter of the guide').fill('6.2 f7');
        await shown(two, 'Ø6.2 f7').waitFor();
        // Both at the same time, at different places.
        await Promise.all([
          field(one, 'diameter of the guide').fill('6.3 f7'),
          field(two, 'length of the head').fill('8.5'),
        ]);
        for (const page of [one, two]) {
          await shown(page, 'Ø6.3 f7').waitFor();
          await shown(page, '8.5').first().waitFor();
          await kept(page);
        }
      });
    });
    const document = await documentOf(id);
    expect(document).toContain('"6.3 f7"');
    expect(document).toContain('"8.5"');
  });

  it.each([
    ['Keep as I typed it', '6.6 f7'],
    ['Take what is there', '6.5 f7'],
  ])('that changed the same thing apart are asked which to keep: %s', async (button, left) => {
    const id = await screens.copyOf('valve-guide-pin');
    await screens.look(`jobs/${id}/part`, views.desktop, async (page) => {
      await kept(page);
      // The other one saves while this one is cut off.
      await page.context().setOffline(true);
      await field(page, 'diameter of the guide').fill('6.6 f7');
      await standing(page).filter({ hasText: 'does not answer' }).waitFor();
      await screens.look(`jobs/${id}/part`, views.desktop, async (other) => {
        await field(other, 'diameter of the guide').fill('6.5 f7');
        await field(other, 'length of the head').fill('8.4');
        await expect.poll(() => documentOf(id), { timeout: 20_000 }).toContain('"8.4"');
      });
      await page.context().setOffline(false);
      const both = page.locator('.choosing tbody tr');
      await both.first().waitFor({ timeout: 20_000 });
      expect(await both.allTextContents()).toEqual(['part, sections, guide, diameter6.6 f76.5 f7']);
      await page.getByRole('button', { name: button }).click();
      await shown(page, `Ø${left}`).waitFor();
      await kept(page);
      await page.locator('.choosing').waitFor({ state: 'detached' });
    });
    const document = await documentOf(id);
    expect(document).toContain(`"${left}"`);
    expect(document).toContain('"8.4"');
  });
});

describe('history', () => {
  it('lists every revision, says what changed in words, and brings one back', async () => {
    const id = await screens.copyOf('valve-guide-pin');
    await screens.look(`jobs/${id}/part`, views.desktop, async (page) => {
      await field(page, 'diameter of the guide').fill('7 f7');
      await standing(page).filter({ hasText: 'Revision 2.' }).waitFor();
      await page.getByRole('tab', { name: /^Record/ }).click();
      await page.getByRole('button', { name: 'What changed: revision 2' }).click();
      const row = page.locator('.compared tbody tr');
      await row.waitFor();
      expect(await row.locator('th, td').allTextContents()).toEqual([
        'part, sections, guide, diameter',
        '6 f7',
        '7 f7',
      ]);
      await page.getByRole('button', { name: 'Bring back: revision 1' }).click();
      await shown(page, 'Ø6 f7').waitFor();
      await standing(page).filter({ hasText: 'Revision 3.' }).waitFor();
    });
    expect(await documentOf(id)).not.toContain('"7 f7"');
  });
});
