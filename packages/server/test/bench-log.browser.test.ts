/** The log at the machine: with one thumb, with a gauge that types, without a network, and on two devices at once. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { complaintsOfAxe, openScreens, type Screens, views } from './open-screens.ts';

const patiently = { timeout: 15_000 };

let screens: Screens;
beforeAll(async () => {
  screens = await openScreens();
});
afterAll(async () => {
  await screens.close();
});

const logged = (page: Page) => page.locator('.logged li');
async function begin(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Write at the machine' }).click();
  // The order of operations is the planner's; the tests need one that is turned.
  await page.getByLabel('Operation', { exact: true }).selectOption('rough-turn-body');
}

async function inStore(job: string): Promise<{ kind: string; read?: string; asked?: string; of?: string }[]> {
  const answer = await fetch(`${screens.address}/api/jobs/${job}/bench-log`);
  return (await answer.json()).entries;
}

describe('the log of the bench', () => {
  it('takes a pass from the thumb, with what the table asked for, and goes on to the next', async () => {
    const job = await screens.copyOf('plunger');
    await screens.look(`jobs/${job}/bench`, views.tablet, async (page) => {
      await begin(page);
      const asked = await page.getByLabel('Asked, mm').inputValue();
      expect(await page.locator('.to-come-to dd').textContent()).toBe(asked);
      for (const key of ['3', '4', '.', '2', '5', '5'])
        await page.getByRole('button', { name: key, exact: true }).click();
      await page.getByRole('button', { name: 'Take the last digit away' }).click();
      expect(await page.getByLabel('Read, mm').inputValue()).toBe('34.25');
      // The drawing of the example asks for roughing from Ø35 in cuts of 0.4 mm.
      expect(await page.locator('.difference').textContent()).toContain('+0.050 mm');
      await page.getByRole('button', { name: 'Keep this reading' }).click();
      await logged(page)
        .filter({ hasText: `34.25 read, ${asked} asked` })
        .waitFor();
      await expect
        .poll(() => inStore(job), patiently)
        .toMatchObject([{ kind: 'pass', read: '34.25', asked, of: 'rough-turn-body' }]);
      expect(await page.locator('.which').textContent()).toContain('2 of 3');
      expect(await page.getByLabel('Asked, mm').inputValue()).not.toBe(asked);
      await page.locator('.lesson', { hasText: '+0.050 mm on average over one pass' }).waitFor();
    });
  });

  it('takes the value and Enter of a gauge that types, wherever the hand was before', async () => {
    const job = await screens.copyOf('plunger');
    await screens.look(`jobs/${job}/bench`, views.tablet, async (page) => {
      await begin(page);
      await page.getByRole('button', { name: 'It was quiet' }).click();
      await page.keyboard.type('34.21');
      await page.keyboard.press('Enter');
      await page.keyboard.type('33,42');
      await page.keyboard.press('Enter');
      await expect
        .poll(async () => (await inStore(job)).map((e) => e.read ?? e.kind), patiently)
        .toEqual(['sound', '34.21', '33,42']);
      await page.keyboard.type('about 32');
      await page.keyboard.press('Enter');
      expect(await page.locator('.typing .refusal').textContent()).toContain('Type the size');
      expect(await inStore(job)).toHaveLength(3);
    });
  });

  it('tells how long operations took, leaves out what it cannot know, and plans by them when asked', async () => {
    const job = await screens.copyOf('plunger');
    const morning = Date.parse('2026-03-02T08:00:00Z');
    const entries = [
      [0, 'face-left'],
      [20, 'rough-turn-body'],
      [45, 'rough-turn-body'],
      [100, 'finish-turn-body'],
      [900, 'turn-cone-cavity'],
    ].map(([minute, of], i) => ({
      id: `timed-${i}`,
      job,
      at: new Date(morning + 60_000 * Number(minute)).toISOString(),
      kind: 'sound',
      sound: 'quiet',
      of,
      operation: '',
      title: String(of),
    }));
    const sent = await fetch(`${screens.address}/api/bench-log`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ entries }),
    });
    expect(sent.status).toBe(200);
    await screens.look(`jobs/${job}/bench`, views.tablet, async (page) => {
      await page.getByText('Times by this log: 2 operations').click();
      const row = page.locator('.times-taken tr', { hasText: 'Rough the body' });
      // Nothing was written while drilling: 45 minutes since the facing.
      await row.getByText('45 min').waitFor();
      expect(await row.textContent()).toContain('with');
      const out = await page.locator('.times-taken').textContent();
      expect(out).toContain('nothing tells when it began');
      expect(out).toContain('a pause lies in it');
      await page.getByRole('button', { name: 'Plan by these times' }).click();
      await page.getByText('2 operations, planned by them').waitFor();
      await page.getByRole('tab', { name: /Route/ }).click();
      await page
        .getByText(/learned from 2 operations/)
        .first()
        .waitFor(patiently);
      await page
        .getByText(/\(learned from one operation\)/)
        .first()
        .waitFor(patiently);
    });
  });

  it('goes on without the network, through a reload, and delivers everything once when it is back', async () => {
    const job = await screens.copyOf('plunger');
    const page = await screens.open(views.phone, `jobs/${job}/bench`);
    await begin(page);
    await screens.stop();
    for (const size of ['34.22', '33.41']) {
      await page.getByLabel('Read, mm').fill(size);
      await page.keyboard.press('Enter');
    }
    await page.getByRole('button', { name: 'It sang' }).click();
    await page.getByText('3 entries wait for the network').waitFor();
    await page.getByText('what you write is kept here').waitFor();
    expect(await logged(page).filter({ hasText: 'waits for the network' }).count()).toBe(3);
    await screens.start();
    await page.reload();
    await page.locator('.logged').waitFor();
    await expect.poll(async () => (await inStore(job)).length, patiently).toBe(3);
    await page.getByText('for the network').first().waitFor({ state: 'detached' });
    expect(await logged(page).count()).toBe(3);
    expect((await inStore(job)).map((e) => e.read ?? e.kind)).toEqual(['34.22', '33.41', 'sound']);
    await page.context().close();
  });

  it('delivers what was written without the network from whatever screen is open when it is back', async () => {
    const job = await screens.copyOf('plunger');
    const page = await screens.open(views.tablet, `jobs/${job}/bench`);
    await begin(page);
    await page.context().setOffline(true);
    await page.getByRole('button', { name: 'It sang' }).click();
    await page.getByText('One entry waits for the network').waitFor();
    await page.getByRole('link', { name: 'Workshop' }).click();
    await page.locator('.bench-log').waitFor({ state: 'detached' });
    expect(await inStore(job)).toHaveLength(0);
    await page.context().setOffline(false);
    await expect.poll(() => inStore(job), patiently).toMatchObject([{ kind: 'sound', sound: 'sang' }]);
    await page.context().close();
  });

  it('shows on another device at once, and strikes out without taking away', async () => {
    const job = await screens.copyOf('plunger');
    const laptop = await screens.open(views.desktop, `jobs/${job}/bench`);
    await screens.look(`jobs/${job}/bench`, views.phone, async (phone) => {
      await begin(phone);
      await phone.getByLabel('Note').fill('belt slips at 860');
      await phone.getByRole('button', { name: 'Keep the note' }).click();
      await logged(laptop).filter({ hasText: 'belt slips at 860' }).waitFor();
      await laptop.getByRole('button', { name: 'Strike out: belt slips at 860' }).click();
      await phone.locator('.logged .struck', { hasText: 'belt slips at 860' }).waitFor();
      expect(await inStore(job)).toHaveLength(2);
    });
    await laptop.context().close();
  });

  it('is wide enough for a thumb, reachable with the keyboard, and clean for screen readers', async () => {
    const job = await screens.copyOf('valve-guide-pin');
    await screens.look(`jobs/${job}/bench`, views.phone, async (page) => {
      await page.locator('#stage-bench').focus();
      for (let i = 0; i < 40 && (await page.locator(':focus').textContent()) !== 'Write at the machine'; i++)
        await page.keyboard.press('Tab');
      await page.keyboard.press('Enter');
      const targets = page.locator('.at-the-machine :is(button, input, select)');
      for (const box of await targets.evaluateAll((all) => all.map((e) => e.getBoundingClientRect().toJSON()))) {
        expect(box.height).toBeGreaterThanOrEqual(48);
        expect(box.width).toBeGreaterThanOrEqual(48);
      }
      expect(await complaintsOfAxe(page)).toEqual([]);
    });
  });
});
