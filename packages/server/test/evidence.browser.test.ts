/** From readings to a settled size: typed, recovered, accepted, overridden, left open; with keys alone and with a pointer. */
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

interface Stored {
  readonly part: { readonly leftOpen?: string[]; readonly outside: { id: string; diameter?: string }[] };
  readonly evidence: { readonly readings: { of: string; value: string; along?: string; condition?: string }[] };
  readonly decisions?: { about: string; decided: string; why: string }[];
}

async function stored(id: string): Promise<Stored> {
  return (await (await fetch(`${screens.address}/api/jobs/${id}`)).json()).document;
}

/** Waits until the job as kept is as it should be. */
async function kept(id: string, what: (document: Stored) => unknown, expected: unknown): Promise<void> {
  await expect.poll(async () => what(await stored(id)), { timeout: 8000 }).toEqual(expected);
}

/** Goes on with Tab until the control of that name has the focus. */
async function tabTo(page: Page, name: RegExp): Promise<void> {
  for (let i = 0; i < 400; i++) {
    await page.keyboard.press('Tab');
    const at = await page.evaluate(() => {
      const e = document.activeElement;
      if (!e) return '';
      const labels = 'labels' in e && e.labels instanceof NodeList ? [...e.labels].map((l) => l.textContent) : [];
      return e.getAttribute('aria-label') ?? ([...labels].join(' ') || e.textContent || '');
    });
    if (name.test(at.trim())) return;
  }
  throw new Error(`no key leads to ${name}`);
}

const feature = (page: Page, title: string) =>
  page.locator('.recovered-feature', { has: page.getByRole('heading', { name: title }) });
const pencil = (page: Page, of: string) => page.locator(`.drawing g[data-of="${of}"] path.assumed`);
const ink = (page: Page, of: string) => page.locator(`.drawing g[data-of="${of}"] path.outline`);

describe('with keys alone', () => {
  it('a new job is measured, its design recovered and accepted, and the drawing goes from pencil to ink', async () => {
    await screens.look('new', views.desktop, async (page) => {
      const { keyboard } = page;
      await tabTo(page, /^Name of the job/);
      await keyboard.type('Gate pin, invented');
      await tabTo(page, /^Longest size/);
      await keyboard.type('60');
      await tabTo(page, /^Thickest diameter/);
      await keyboard.type('16');
      await keyboard.press('Enter');
      await page.locator('.drawing svg').waitFor();
      const id = /jobs\/([^/]+)/.exec(page.url())?.[1] ?? '';
      // Nobody gave the sizes of the shank: it is drawn in pencil.
      await pencil(page, 'shank').first().waitFor({ state: 'attached' });

      // The stages are reached once with Tab and from there with arrows.
      await tabTo(page, /^Part/);
      await keyboard.press('ArrowLeft');
      await tabTo(page, /^Reading of/);
      await keyboard.type('diameter of the shank');
      await tabTo(page, /^Surface there/);
      await keyboard.type('protected');
      await tabTo(page, /^The gauge showed/);
      for (const value of ['9.97', '9,98']) {
        await keyboard.type(value);
        await keyboard.press('Enter');
      }
      await kept(id, (d) => d.evidence.readings.map((r) => [r.of, r.value, r.condition]), [
        ['shank.diameter', '9.97', 'protected'],
        ['shank.diameter', '9,98', 'protected'],
      ]);
      // Nominal size 10 is what two readings a little below it speak for.
      const shank = feature(page, 'Diameter of the shank');
      await shank.getByText('nominal size 10,').waitFor();
      expect(await shank.locator('.plot svg').count()).toBe(2);
      await tabTo(page, /^Take it: .* for the diameter of the shank$/);
      const name = await page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? '');
      const taken = /^Take it: (.*) for the/.exec(name)?.[1] ?? '';
      expect(taken).toMatch(/^10 [a-z]\w+$/);
      await keyboard.press('Enter');
      await shank.getByText(`In the part now: ${taken}.`).waitFor();
      await kept(id, (d) => [d.part.outside[1]?.diameter, d.part.leftOpen, d.decisions?.[0]?.about], [
        taken,
        ['head.length', 'shank.length'],
        'shank.diameter',
      ]);
      await page
        .locator('.drawing svg text', { hasText: `Ø${taken}` })
        .first()
        .waitFor();

      // Its length next: then all of the shank is in ink, and the head still in pencil.
      await tabTo(page, /^Reading of/);
      await keyboard.type('length of the shank');
      await tabTo(page, /^The gauge showed/);
      await keyboard.type('51,02');
      await keyboard.press('Enter');
      // What is not decided yet is unfolded.
      await feature(page, 'Length of the shank').getByRole('button').first().waitFor();
      await tabTo(page, /^Take it: .* for the length of the shank$/);
      await keyboard.press('Enter');
      await expect.poll(() => pencil(page, 'shank').count()).toBe(0);
      expect(await ink(page, 'shank').count()).toBeGreaterThan(0);
      expect(await pencil(page, 'head').count()).toBeGreaterThan(0);
      await kept(id, (d) => d.part.leftOpen, ['head.length']);

      // One step back takes the value, the decision and the ink with it.
      await keyboard.press('Control+z');
      await kept(id, (d) => [d.part.leftOpen?.includes('shank.length'), d.decisions?.length], [true, 1]);
      await expect.poll(() => pencil(page, 'shank').count()).toBeGreaterThan(0);
      expect(await complaintsOfAxe(page)).toEqual([]);
    });
  }, 90_000);
});

describe('with a pointer', () => {
  it('a place on the drawing becomes the place of the next reading', async () => {
    const id = await screens.copyOf('plunger');
    await screens.look(`jobs/${id}/evidence`, views.desktop, async (page) => {
      // The body is 46 mm long, from the left face on: halfway along its outline is 23 mm.
      const boxes = await ink(page, 'body').evaluateAll((paths) =>
        paths.map((p) => p.getBoundingClientRect().toJSON()),
      );
      const left = Math.min(...boxes.map((b) => b.left));
      const right = Math.max(...boxes.map((b) => b.right));
      const top = Math.min(...boxes.map((b) => b.top));
      await page.mouse.click((left + right) / 2, top + 1);
      const along = page.locator('.new-reading').getByLabel(/^Along/);
      await expect.poll(async () => Math.abs(Number(await along.inputValue()) - 23)).toBeLessThan(0.6);
      expect(await page.locator('.new-reading').getByLabel('Reading of').inputValue()).toBe('body.diameter');
      // The focus is where the value is typed, as from a gauge that types by itself.
      await page.keyboard.type('31.915');
      await page.keyboard.press('Enter');
      await kept(id, (d) => d.evidence.readings.at(-1)?.value, '31.915');
      expect(Math.abs(Number((await stored(id)).evidence.readings.at(-1)?.along) - 23)).toBeLessThan(0.6);
    });
  });

  it('a size is overridden with its reason, and another left open in pencil', async () => {
    const id = await screens.copyOf('plunger');
    await screens.look(`jobs/${id}/evidence`, views.desktop, async (page) => {
      const body = feature(page, 'Diameter of the body');
      await body.getByText('Another value').click();
      await body.getByRole('button', { name: 'Use it' }).click();
      await body.getByText('A size is needed.').waitFor();
      await body.getByLabel('As you would type it').fill('32 e8');
      await body.getByLabel('Why').fill('The liner was honed');
      await body.getByRole('button', { name: 'Use it' }).click();
      await body.getByText('Decided: 32 e8, chosen by hand. The liner was honed.').waitFor();
      await kept(id, (d) => d.part.outside[0]?.diameter, '32 e8');
      expect(await pencil(page, 'body').count()).toBe(0);

      await body.getByRole('button', { name: /^Leave it open/ }).click();
      await pencil(page, 'body').first().waitFor({ state: 'attached' });
      await kept(id, (d) => [d.part.leftOpen, d.decisions?.at(-1)?.decided], [['body.diameter'], 'left open']);
      await body.getByText('○ left open').waitFor();
      // The packet and the history keep the same words; taking the recommendation settles it again.
      await body.getByRole('button', { name: /^Take it: 32 f7/ }).click();
      await kept(id, (d) => [d.part.outside[0]?.diameter, d.part.leftOpen], ['32 f7', undefined]);
      await expect.poll(() => pencil(page, 'body').count()).toBe(0);
    });
  });

  it('a size that the part does not have is measured, and taken into the part as a section', async () => {
    const id = await screens.copyOf('plunger');
    await screens.look(`jobs/${id}/evidence`, views.desktop, async (page) => {
      const form = page.locator('.new-reading');
      await form.getByLabel('Reading of').selectOption('something the part does not have yet');
      await form.getByLabel('What you call it').fill('Tail');
      await form.getByLabel('The gauge showed').fill('nine');
      await form.getByRole('button', { name: 'Add the reading' }).click();
      await form.getByText('Type what the gauge showed').waitFor();
      await form.getByLabel('The gauge showed').fill('9.99');
      await form.getByRole('button', { name: 'Add the reading' }).click();
      const tail = page.locator('.recovered-feature', { hasText: 'tail' });
      await tail.locator('summary').click();
      await tail
        .getByRole('button', { name: /^Take / })
        .first()
        .click();
      await kept(id, (d) => d.part.outside.map((s) => s.id), ['body', 'crown', 'tail']);
    });
  });

  it('a reading in inches among millimetres is named where it is', async () => {
    const id = await screens.copyOf('plunger');
    await screens.look(`jobs/${id}/evidence`, views.desktop, async (page) => {
      const form = page.locator('.new-reading');
      await form.getByLabel('Reading of').selectOption('diameter of the body');
      await form.getByLabel('The gauge showed').fill('1.258');
      await page.keyboard.press('Enter');
      await feature(page, 'Diameter of the body').getByText(/25\.4/).first().waitFor();
    });
  });
});

describe('on every screen', () => {
  it.each(Object.entries(views))('%s: nothing is wider than the screen, and axe has no complaint', async (_, view) => {
    for (const [job, colours] of [
      ['plunger', 'light'],
      ['gland-spindle', 'dark'],
    ] as const)
      await screens.look(
        `jobs/${job}/evidence`,
        view,
        async (page) => {
          await page.locator('.recovered .plot svg').first().waitFor();
          const folded = page.locator('.recovered-feature:not([open]) > summary');
          for (let left = await folded.count(); left > 0; left--) await folded.first().click();
          expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
          expect(await complaintsOfAxe(page)).toEqual([]);
        },
        colours,
      );
  });
});
