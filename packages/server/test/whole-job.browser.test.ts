/** A whole job as a person does it, from an empty page to the printed packet, with the keyboard alone. */
import { execFileSync } from 'node:child_process';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { fill, focusedName, goToStage, tabTo } from './keyboard.ts';
import { openScreens, type Screens, views } from './open-screens.ts';

/** Of poppler: a reader of its own. */
const reader = 'pdftotext';

let screens: Screens;
beforeAll(async () => {
  screens = await openScreens();
});
afterAll(async () => {
  await screens.close();
});

const sheet = (page: Page) => page.locator('#sheet');

it('leads from five questions to a packet that says what was measured, decided, planned, made and found', async () => {
  await screens.look('new', views.desktop, async (page) => {
    const { keyboard } = page;
    await fill(page, /^Name of the job/, 'Gate hinge pin, invented');
    await fill(page, /^Machine/, 'Orchard gate, invented');
    await fill(page, /^Longest size/, '60');
    await fill(page, /^Thickest diameter/, '16');
    await keyboard.press('Enter');
    await page.locator('.drawing svg').waitFor();
    const id = /jobs\/([^/]+)/.exec(page.url())?.[1] ?? '';
    const kept = async () => (await (await fetch(`${screens.address}/api/jobs/${id}?only=document`)).json()).document;

    // Evidence: two protected readings on the shank, and what they speak for is accepted.
    await goToStage(page, 'Evidence');
    await tabTo(page, /^Reading of/);
    await keyboard.type('diameter of the shank');
    await tabTo(page, /^Gauge/);
    await keyboard.type('outside micrometer 0');
    await tabTo(page, /^Surface there/);
    await keyboard.type('protected');
    await tabTo(page, /^The gauge showed/);
    for (const value of ['9.972', '9.974']) {
      await keyboard.type(value);
      await keyboard.press('Enter');
    }
    await tabTo(page, /^Take it: .* for the diameter of the shank$/);
    const taken = /^Take it: (.*) for the/.exec(await focusedName(page))?.[1] ?? '';
    expect(taken).toMatch(/^10 [a-z]+\d+$/);
    await keyboard.press('Enter');
    await page
      .locator('.drawing svg text', { hasText: `Ø${taken}` })
      .first()
      .waitFor();

    // Part: the sizes nobody measured are typed, with limits of their own and the general ones.
    await goToStage(page, 'Part');
    await fill(page, /^diameter of the head, as typed/i, '16 h11');
    await fill(page, /^length of the head, as typed/i, '8');
    await fill(page, /^length of the shank, as typed/i, '52 ±0.2');
    await fill(page, /^Material, as you name it/, '303');
    await tabTo(page, /^Sizes without limits/);
    await keyboard.type('ISO 2768 m');
    await page.locator('.drawing svg text', { hasText: 'Ø16 h11' }).first().waitFor();

    // Duty: the bracket it turns in, and the clearance that comes of it.
    await goToStage(page, 'Duty');
    await tabTo(page, /^Add a mate/);
    await keyboard.press('Enter');
    await expect.poll(() => focusedName(page), { timeout: 5000 }).toMatch(/^What it is/);
    await keyboard.press('Control+a');
    await keyboard.type('hinge bracket');
    await tabTo(page, /^Meets/);
    await keyboard.type('diameter of the shank');
    await fill(page, /^Its size today/, '10 H8');
    const fit = sheet(page).locator('table', { hasText: 'least clearance' }).first();
    await fit.getByText('hinge bracket', { exact: true }).waitFor();
    // ISO 286: H8 of 10 mm is +22/0 µm.
    const bounds: Record<string, [string, string]> = {
      f7: ['+0.013', '+0.050'],
      f8: ['+0.013', '+0.057'],
      e8: ['+0.025', '+0.069'],
      h9: ['0.000', '+0.058'],
    };
    const expected = bounds[taken.split(' ')[1] ?? ''];
    if (!expected) throw new Error(`no bounds by hand for ${taken}`);
    for (const bound of expected) await expect.poll(() => fit.textContent(), { timeout: 8000 }).toContain(bound);

    // Route: operations in their order, on the demonstration lathe.
    await goToStage(page, 'Route');
    await sheet(page)
      .getByRole('heading', { name: /^Setup 1: / })
      .waitFor();

    // Bench: the first pass is written down as it came out.
    await goToStage(page, 'Bench');
    await tabTo(page, /^Write at the machine/);
    await keyboard.press('Enter');
    await fill(page, /^Read, mm/, '15.98');
    await keyboard.press('Enter');
    await page.locator('.logged li', { hasText: '15.98 read' }).waitFor();

    // Inspection: the new shank lies well inside, and is found to conform.
    await expect.poll(async () => (await kept()).part.outside[1].diameter, { timeout: 8000 }).toBe(taken);
    await goToStage(page, 'Inspection');
    await tabTo(page, /^Add a reading/);
    await keyboard.press('Enter');
    await tabTo(page, /^Of, /);
    await keyboard.type('diameter of the shank');
    const middle = await middleOf(page, id);
    await fill(page, /^The gauge showed, /, middle);
    await tabTo(page, /^Gauge, /);
    await keyboard.type('outside micrometer 0');
    const row = sheet(page).locator('tr', { hasText: 'Diameter of the shank' }).filter({ hasText: 'yes (' });
    await row.first().waitFor();

    // Record: looked at, then downloaded, and what poppler reads in it.
    await goToStage(page, 'Record');
    await page.getByText('Every change is kept').waitFor();
    await expect.poll(async () => (await kept()).inspection?.readings?.[0]?.value, { timeout: 15_000 }).toBe(middle);
    await tabTo(page, /^Look at the pages/);
    await keyboard.press('Enter');
    await page.locator('.packet-pages img').first().waitFor();
    await tabTo(page, /^Packet to print, A4/);
    const wait = page.waitForEvent('download');
    await keyboard.press('Enter');
    const path = await (await wait).path();
    const text = execFileSync(reader, ['-layout', path, '-'], {
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'ignore'],
    });
    const said = [
      'Gate hinge pin, invented',
      'Orchard gate, invented',
      'outside micrometer 0',
      '9.9720',
      taken,
      'hinge bracket',
      'Setup 1',
      '16 h11',
      middle,
      'conforms',
    ];
    for (const words of said) expect(text, words).toContain(words);
    expect(text).not.toMatch(/undefined|NaN|\[object/);
  });
}, 180_000);

/** Half way between the limits of the shank, as the page shows them. */
async function middleOf(page: Page, id: string): Promise<string> {
  const { sizes } = await (await page.request.get(`${screens.address}/api/jobs/${id}`)).json();
  const shank = sizes.find((size: { id: string }) => size.id === 'shank.diameter');
  return ((Number(shank.least) + Number(shank.most)) / 2).toFixed(3);
}
