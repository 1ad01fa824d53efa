/** Ways to hold the work, chosen on the page as a person would, and taken back. */
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

const poll: typeof expect.poll = (ask) => expect.poll(ask, { timeout: 15_000 });
const titles = (page: Page) => page.locator('.setup h3').allTextContents();

async function storedRoute(id: string): Promise<Record<string, unknown> | undefined> {
  return (await (await fetch(`${screens.address}/api/jobs/${id}?only=document`)).json()).document.route;
}

it('a way to hold the work is chosen with its reasons before one, shown in the setups, and undone', async () => {
  const id = await screens.copyOf('plunger');
  await screens.look(`jobs/${id}/route`, views.desktop, async (page) => {
    await page.getByText(/^Ways to hold the work: left end out of the bar/).click();
    const first = page.getByRole('region', { name: 'Ways to hold the work in setup 1' });
    expect(await first.locator('.taken').textContent()).toContain('left end out of the bar');
    expect(await first.textContent()).toContain('more than the way taken');
    const before = await titles(page);
    await first.getByRole('button', { name: 'Hold it so: right end out of the bar' }).click();
    await poll(() => titles(page)).not.toEqual(before);
    expect((await titles(page))[0]).toContain('right end out');
    await poll(() => storedRoute(id)).toMatchObject({ firstEndOut: 'right', hold: 'in the chuck' });
    expect(await first.locator('.taken').textContent()).toContain('right end out of the bar');
    expect(await page.getByRole('status').allTextContents()).toContain(
      'Setup 1 is wanted so: right end out of the bar. Undo takes it back.',
    );
    await page.getByRole('button', { name: 'Undo' }).click();
    await poll(() => titles(page)).toEqual(before);
    await page.getByRole('button', { name: 'Redo' }).click();
    await poll(async () => (await titles(page))[0]).toContain('right end out');
    await page.getByRole('button', { name: 'Leave the holding to the planner' }).click();
    await poll(() => titles(page)).toEqual(before);
    expect(await complaintsOfAxe(page)).toEqual([]);
  });
});
