/** A job typed into tables: part, evidence, duty, inspection. */
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

const table = (page: Page, name: string | RegExp) => page.getByRole('region', { name });
const shown = (page: Page, text: string) => page.locator('.drawing svg text', { hasText: text });
const keptAs = (page: Page, revision: number) =>
  page
    .locator('.standing [role="status"]')
    .filter({ hasText: `Revision ${revision}.` })
    .waitFor();
const rows = (page: Page, name: string | RegExp) => table(page, name).locator('tbody');

async function stored(id: string): Promise<{
  part: Record<string, { id: string; name?: string; on?: string }[]>;
  evidence?: { readings: Record<string, unknown>[] };
  duty?: Record<string, unknown>;
  inspection?: { readings: Record<string, unknown>[] };
}> {
  return (await (await fetch(`${screens.address}/api/jobs/${id}`)).json()).document;
}

describe('the part', () => {
  it('gets sections, moves them, and loses one with what stands on it', async () => {
    const id = await screens.copyOf('valve-guide-pin');
    await screens.look(`jobs/${id}/part`, views.desktop, async (page) => {
      const sections = rows(page, /^Sections/);
      await table(page, /^Sections/)
        .getByRole('button', { name: 'Add a section' })
        .click();
      await sections
        .nth(5)
        .getByRole('textbox', { name: /^Diameter/ })
        .fill('4.5');
      await shown(page, 'Ø4.5').first().waitFor();
      await keptAs(page, 2);
      await page.getByRole('button', { name: 'Up: new section' }).click();
      await keptAs(page, 3);
      expect((await stored(id)).part.outside?.map((s) => s.name).slice(-2)).toEqual(['new section', 'guide']);
      await page.getByRole('button', { name: 'Remove: upper land' }).click();
      await keptAs(page, 4);
      const { part } = await stored(id);
      expect(part.grooves?.map((g) => g.id)).toEqual(['thread-relief', 'lower-groove']);
      await page.keyboard.press('Control+z');
      await keptAs(page, 5);
      expect((await stored(id)).part.grooves?.length).toBe(3);
    });
  });

  it('changes the shape of a section, its edges, grooves, threads and bores', async () => {
    const id = await screens.copyOf('valve-guide-pin');
    await screens.look(`jobs/${id}/part`, views.desktop, async (page) => {
      const guide = rows(page, /^Sections/).nth(4);
      await guide.getByRole('combobox', { name: /^Shape/ }).selectOption('cone');
      await guide.getByRole('textbox', { name: /^Right ?, / }).fill('5');
      await guide.getByText('Edges and finish').click();
      await guide
        .getByLabel(/^Right edge, of|^Right edge,/)
        .first()
        .selectOption('fillet');
      await guide.getByLabel(/^Right edge: radius/).fill('0.6');
      await table(page, 'Grooves').getByRole('button', { name: 'Add a groove' }).click();
      const groove = rows(page, 'Grooves').nth(3);
      await groove.getByRole('combobox', { name: /^On/ }).selectOption('lower-land');
      await groove.getByRole('textbox', { name: /^Width/ }).fill('1,2');
      await groove.getByRole('textbox', { name: /^Floor/ }).fill('9');
      await groove.getByRole('textbox', { name: /^From its left end/ }).fill('5.5');
      await rows(page, 'Threads')
        .first()
        .getByRole('textbox', { name: /^Thread/ })
        .fill('M12x1-6g');
      await shown(page, 'M12×1-6g').waitFor();
      await table(page, /^Bores from the right/)
        .getByRole('button', { name: 'Add a bore' })
        .click();
      await rows(page, /^Bores from the right/)
        .first()
        .getByRole('textbox', { name: /^Diameter/ })
        .fill('3');
      await rows(page, /^Bores from the right/)
        .first()
        .getByRole('textbox', { name: /^Depth/ })
        .fill('10');
      await expect.poll(async () => JSON.stringify(await stored(id)), { timeout: 15_000 }).toContain('"depth":"10"');
    });
    const text = JSON.stringify(await stored(id));
    for (const part of ['"endDiameter":"5"', '"radius":"0.6"', '"width":"1,2"', '"M12x1-6g"'])
      expect(text).toContain(part);
  });

  it('refuses in words at the field, and keeps nothing of it', async () => {
    const id = await screens.copyOf('plunger');
    await screens.look(`jobs/${id}/part`, views.phone, async (page) => {
      const body = rows(page, /^Sections/).first();
      await body.getByRole('textbox', { name: /^Length/ }).fill('long');
      expect(await body.locator('.refusal').textContent()).toMatch(/Not taken: "long"\. Expected .*for example/);
    });
    expect(JSON.stringify(await stored(id))).toContain('"46 ±0.1"');
  });
});

describe('evidence and inspection', () => {
  it('take readings as typed, with gauge, place and state of the surface', async () => {
    const id = await screens.copyOf('valve-guide-pin');
    await screens.look(`jobs/${id}/evidence`, views.desktop, async (page) => {
      const before = await rows(page, 'Readings').count();
      await table(page, 'Readings').getByRole('button', { name: 'Add a reading' }).click();
      const row = rows(page, 'Readings').nth(before);
      await row.getByRole('combobox', { name: /^Of/ }).selectOption('guide.diameter');
      await row.getByRole('textbox', { name: /^The gauge showed/ }).fill('5,979');
      await row.getByRole('combobox', { name: /^Gauge/ }).selectOption({ label: 'outside micrometer 0–25' });
      await row.getByRole('textbox', { name: /^Along/ }).fill('12');
      await row.getByRole('textbox', { name: /^Round/ }).fill('45');
      await row.getByRole('combobox', { name: /^Surface/ }).selectOption('worn');
      await expect
        .poll(async () => (await stored(id)).evidence?.readings.at(-1), { timeout: 15_000 })
        .toMatchObject({
          of: 'guide.diameter',
          value: '5,979',
          gauge: 'micrometer-25',
          along: '12',
          angle: 45,
          condition: 'worn',
        });
      await page
        .getByRole('tab', { name: /^Evidence/ })
        .getByText('13 readings')
        .waitFor();
      await row.getByRole('button', { name: /^Remove/ }).click();
      await page
        .getByRole('tab', { name: /^Evidence/ })
        .getByText('12 readings')
        .waitFor();
      await page.getByRole('tab', { name: /^Inspection/ }).click();
      await page.getByRole('button', { name: 'Add a reading' }).click();
      const measured = rows(page, 'Readings on the new part').first();
      await measured.getByRole('combobox', { name: /^Of/ }).selectOption('head.diameter');
      await measured.getByRole('textbox', { name: /^The gauge showed/ }).fill('20.02');
      await page
        .getByRole('tab', { name: /^Inspection/ })
        .getByText('1 of 35 measured')
        .waitFor();
      await expect.poll(async () => (await stored(id)).inspection?.readings.length, { timeout: 15_000 }).toBe(1);
    });
  });
});

describe('duty', () => {
  it('takes pressure and seals, and the checks follow', async () => {
    const id = await screens.copyOf('valve-guide-pin');
    await screens.look(`jobs/${id}/duty`, views.desktop, async (page) => {
      const before = await page.locator('#sheet').textContent();
      await page.getByLabel('Highest pressure').fill('12.5');
      await rows(page, 'Seals')
        .first()
        .getByRole('textbox', { name: /^Hardness/ })
        .fill('90');
      await expect
        .poll(async () => (await stored(id)).duty, { timeout: 15_000 })
        .toMatchObject({
          pressure: 12.5,
          seals: [{ hardness: 90 }, { hardness: 70 }],
        });
      expect(await page.locator('#sheet').textContent()).not.toBe(before);
      await rows(page, 'Seals')
        .first()
        .getByRole('textbox', { name: /^Hardness/ })
        .fill('hard');
      await page.locator('.field .refusal').waitFor();
      expect(await page.locator('.field .refusal').textContent()).toContain('a number from 30 to 95');
    });
  });
});

describe('for everyone', () => {
  it('the unfolded tables of a job have nothing that axe complains of', async () => {
    await screens.look('jobs/valve-guide-pin/part', views.tablet, async (page) => {
      for (const fold of await page.locator('.records summary').all()) await fold.click();
      expect(await complaintsOfAxe(page)).toEqual([]);
      const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      expect(over).toBeLessThanOrEqual(0);
    });
  });
});
