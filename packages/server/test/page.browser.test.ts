/** The page as a person meets it: with mouse, keyboard and screen reader, on a desk, a tablet and a phone. */
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import axe from 'axe-core';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openScreens, type Screens, views } from './open-screens.ts';

const stages = ['evidence', 'part', 'duty', 'route', 'bench', 'inspection', 'record'] as const;
/** What the tools remark on standard error is of no use here. */
const told = (program: string, args: string[]): string =>
  execFileSync(program, args, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] });

/** What comes right after the drawing. */
const soon = { timeout: 8000 };

let screens: Screens;
beforeAll(async () => {
  screens = await openScreens();
});
afterAll(async () => {
  await screens.close();
});

function onPage(
  at: string,
  see: (page: Page) => Promise<void>,
  view: keyof typeof views = 'desktop',
  colours: 'light' | 'dark' = 'light',
): Promise<void> {
  return screens.look(at, views[view], see, colours);
}

const shown = (page: Page, text: string) => page.locator('.drawing svg text', { hasText: text });
const sizeRow = (page: Page, title: string) =>
  page.locator('.sizes tbody tr', { has: page.getByRole('rowheader', { name: title, exact: true }) });

describe('the page of a job', () => {
  it('shows the drawing, how the stages stand, findings and cautions, and that all is invented', async () => {
    await onPage('jobs/valve-guide-pin/part', async (page) => {
      expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe(
        'Valve guide pin of an orchard sprayer pump',
      );
      expect(await shown(page, 'Ø6 f7').count()).toBe(1);
      expect(await page.getByRole('tab').count()).toBe(7);
      expect(await page.getByText('All figures invented').count()).toBe(1);
      expect(await page.locator('.cautions').getByText('can burst').isVisible()).toBe(true);
      const levels = await page.locator('.findings .level').allTextContents();
      const weights = levels.map((l) => ['Stop', 'Caution', 'Note'].findIndex((word) => l.includes(word)));
      expect(weights.length).toBeGreaterThan(0);
      expect(weights).toEqual(weights.toSorted());
    });
  });

  it('has something to read on the sheet of every stage of every job', async () => {
    for (const job of ['gland-spindle', 'plunger', 'valve-guide-pin']) {
      await onPage(`jobs/${job}/evidence`, async (page) => {
        for (const stage of stages) {
          await page.locator(`#stage-${stage}`).click();
          const words = (await page.locator('#sheet').textContent()) ?? '';
          expect(words.length, `${job}, ${stage}`).toBeGreaterThan(120);
          expect(words, `${job}, ${stage}`).not.toMatch(/undefined|NaN|\[object/);
        }
      });
    }
  });

  it('keeps job and stage through a reload, and changes jobs', async () => {
    await onPage('jobs/plunger/duty', async (page) => {
      await page.reload();
      expect(await page.getByRole('tab', { selected: true }).textContent()).toContain('Duty');
      await page.getByRole('link', { name: 'All jobs' }).click();
      await page.getByRole('link', { name: 'Gland spindle of a stationary engine', exact: true }).click();
      await shown(page, '1/2 BSF').waitFor();
      expect(await page.getByRole('heading', { level: 1 }).textContent()).toContain('Gland spindle');
    });
  });

  it('gives packets on both papers, with the job in them', async () => {
    await onPage('jobs/plunger/record', async (page) => {
      for (const paper of ['A4', 'Letter']) {
        const wait = page.waitForEvent('download');
        await page.getByRole('link', { name: `Packet to print, ${paper}` }).click();
        const download = await wait;
        const path = await download.path();
        const text = told('pdftotext', ['-layout', path, '-']);
        expect(text).toContain('Plunger of an orchard sprayer pump');
        expect(text.toLowerCase()).toContain('all figures invented');
        expect(text).toContain('32 f7');
        const size = told('pdfinfo', [path]);
        expect(size).toMatch(paper === 'A4' ? /595.* x 84[12]|84[12].* x 595/ : /612 x 792|792 x 612/);
      }
      const wait = page.waitForEvent('download');
      await page.getByRole('link', { name: 'Drawing (SVG)' }).click();
      expect(readFileSync(await (await wait).path(), 'utf8')).toContain('Ø32 f7');
    });
  });
});

describe('a value typed anew', () => {
  it('is understood, and drawing, limits, findings and tables follow', async () => {
    await onPage(`jobs/${await screens.copyOf('valve-guide-pin')}/part`, async (page) => {
      const before = await page.locator('.findings ol').textContent();
      await sizeRow(page, 'diameter of the guide').getByRole('textbox').fill('6,5 h6');
      await shown(page, 'Ø6.5 h6').waitFor();
      expect(await shown(page, 'Ø6 f7').count()).toBe(0);
      // ISO 286-2: h6 over 6 to 10 mm is 0/−9 µm.
      expect(await sizeRow(page, 'diameter of the guide').locator('.figure').allTextContents()).toEqual([
        '6.491',
        '6.500',
      ]);
      // Sheet and findings follow the drawing.
      const findings = () => page.locator('.findings ol').textContent();
      await expect.poll(findings, soon).not.toBe(before);
      await page.getByRole('tab', { name: /^Inspection/ }).click();
      await expect.poll(() => page.locator('#sheet').textContent(), soon).toContain('6.491');
      await page.getByRole('button', { name: 'Undo' }).click();
      await shown(page, 'Ø6 f7').waitFor();
      await expect.poll(findings, soon).toBe(before);
    });
  });

  it('is refused in words when it is no size, and the drawing stays', async () => {
    await onPage('jobs/valve-guide-pin/part', async (page) => {
      const field = sizeRow(page, 'diameter of the guide').getByRole('textbox');
      await field.fill('about six');
      const refusal = sizeRow(page, 'diameter of the guide').locator('.refusal');
      await refusal.waitFor();
      expect(await refusal.textContent()).toMatch(/Not taken: "about six".*Expected .*for example/);
      expect(await field.getAttribute('aria-invalid')).toBe('true');
      expect(await shown(page, 'Ø6 f7').count()).toBe(1);
      await field.fill('');
      await page
        .getByText(/Type a value to go on/)
        .first()
        .waitFor();
      await field.fill('6 f7');
      await refusal.waitFor({ state: 'detached' });
    });
  });

  it('can be typed beside the drawing after a dimension was clicked', async () => {
    await onPage(`jobs/${await screens.copyOf('plunger')}/route`, async (page) => {
      await shown(page, 'Ø32 f7').click();
      const field = page.getByRole('textbox', { name: 'diameter of the body' });
      expect(await field.inputValue()).toBe('32 f7');
      expect(await field.evaluate((f) => f === document.activeElement)).toBe(true);
      expect(await page.locator('.drawing .chosen text').allTextContents()).toEqual([
        expect.stringContaining('Ø32 f7'),
      ]);
      await field.fill('31.5');
      await shown(page, 'Ø31.5').first().waitFor();
    });
  });
});

describe('a finding', () => {
  it('is shown where it belongs when it is clicked', async () => {
    await onPage('jobs/valve-guide-pin/record', async (page) => {
      await page.locator('.findings li', { hasText: 'diameter of the guide' }).first().getByRole('button').click();
      expect(await page.locator('.drawing .chosen text').allTextContents()).toEqual([expect.stringContaining('Ø6 f7')]);
    });
  });
});

describe('the keyboard alone', () => {
  it('reaches drawing, stages, sizes and findings', async () => {
    await onPage(`jobs/${await screens.copyOf('plunger')}/duty`, async (page) => {
      const focused = () =>
        page.evaluate(() => document.activeElement?.getAttribute('data-of') ?? document.activeElement?.id ?? '');
      const tabTo = async (wanted: (at: string) => boolean): Promise<string> => {
        for (let i = 0; i < 40; i++) {
          await page.keyboard.press('Tab');
          const at = await focused();
          if (wanted(at)) return at;
        }
        throw new Error('Tab does not get there');
      };
      const first = await tabTo((at) => at.includes('.'));
      await page.keyboard.press('ArrowRight');
      expect(await focused()).not.toBe(first);
      for (let i = 0; i < 60 && (await focused()) !== 'body.diameter'; i++) await page.keyboard.press('ArrowRight');
      await page.keyboard.press('Enter');
      await page.keyboard.press('Control+a');
      await page.keyboard.type('31 f7');
      await shown(page, 'Ø31 f7').waitFor();
      await tabTo((at) => at === 'stage-duty');
      await page.keyboard.press('ArrowLeft');
      expect(await focused()).toBe('stage-part');
      expect(await page.locator('.sizes').isVisible()).toBe(true);
      await page.keyboard.press('End');
      expect(await page.getByRole('tab', { selected: true }).textContent()).toContain('Record');
    });
  });

  it('can skip the drawing', async () => {
    await onPage('jobs/plunger/duty', async (page) => {
      await page.keyboard.press('Tab');
      await page.keyboard.press('Enter');
      expect(await page.evaluate(() => document.activeElement?.id)).toBe('sheet');
    });
  });
});

describe('on every size of screen', () => {
  it.each(['desktop', 'tablet', 'phone'] as const)('nothing sticks out sideways: %s', async (view) => {
    for (const job of ['gland-spindle', 'plunger', 'valve-guide-pin']) {
      await onPage(
        `jobs/${job}/evidence`,
        async (page) => {
          for (const stage of stages) {
            await page.locator(`#stage-${stage}`).click();
            const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
            expect(over, `${job}, ${stage}`).toBeLessThanOrEqual(0);
          }
        },
        view,
      );
    }
  });

  it('on a phone the drawing is a strip until it is opened', async () => {
    await onPage(
      'jobs/plunger/part',
      async (page) => {
        const height = () => page.locator('.sheet-of-paper').evaluate((e) => e.getBoundingClientRect().height);
        expect(await height()).toBeLessThan(160);
        await page.getByRole('button', { name: 'Open the drawing' }).click();
        expect(await height()).toBeGreaterThan(300);
        expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
      },
      'phone',
    );
  });
});

describe('for everyone', () => {
  it.each([
    ['desktop', 'light'],
    ['desktop', 'dark'],
    ['phone', 'light'],
  ] as const)('nothing that axe knows to complain of: %s, %s', async (view, colours) => {
    await onPage(
      'jobs/valve-guide-pin/evidence',
      async (page) => {
        await page.evaluate(axe.source);
        for (const stage of stages) {
          await page.locator(`#stage-${stage}`).click();
          const found = await page.evaluate<{ violations: { id: string; nodes: { html: string }[] }[] }>(
            'axe.run(document, { resultTypes: ["violations"] })',
          );
          expect(found.violations.map((v) => `${stage}: ${v.id} ${v.nodes[0]?.html.slice(0, 200)}`)).toEqual([]);
        }
      },
      view,
      colours,
    );
  });

  it('axe does look: it finds a planted button without a name', async () => {
    await onPage('jobs/plunger/part', async (page) => {
      await page.evaluate(axe.source);
      await page.evaluate(() => document.querySelector('main')?.append(document.createElement('button')));
      const found = await page.evaluate<{ violations: { id: string }[] }>('axe.run(document)');
      expect(found.violations.map((v) => v.id)).toContain('button-name');
    });
  });

  it('the drawing is there as a table too', async () => {
    await onPage('jobs/plunger/duty', async (page) => {
      const row = page
        .getByRole('table', { name: /All sizes on the drawing/ })
        .getByRole('row', { name: /diameter of the body/ });
      // ISO 286-2: f7 at 32 mm is −25/−50 µm.
      expect(await row.first().textContent()).toMatch(/32\s*31\.950\s*31\.975/);
    });
  });

  it('the first load is small', async () => {
    const html = await (await fetch(`${screens.address}/`)).text();
    const script = /src="([^"]+\.js)"/.exec(html)?.[1] ?? '';
    const { gzipSync } = await import('node:zlib');
    const bytes = Buffer.from(await (await fetch(new URL(script, `${screens.address}/`))).arrayBuffer());
    expect(bytes.length).toBeGreaterThan(10_000);
    expect(gzipSync(bytes).length).toBeLessThan(120_000);
  });
});
