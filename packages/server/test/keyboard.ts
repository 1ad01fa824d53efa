/** A person without a mouse, for tests. */
import type { Page } from 'playwright-core';

/** What the control that has the focus is called by whoever reads it aloud. */
export function focusedName(page: Page): Promise<string> {
  return page.evaluate(() => {
    const e = document.activeElement;
    if (!e || e === document.body) return '';
    const labels = 'labels' in e && e.labels instanceof NodeList ? [...e.labels].map((l) => l.textContent) : [];
    return (e.getAttribute('aria-label') ?? ([...labels].join(' ') || e.textContent || '')).trim();
  });
}

/** Goes on with Tab until the control of that name has the focus; round the page once at most. */
export async function tabTo(page: Page, name: RegExp): Promise<void> {
  const passed: string[] = [];
  for (let i = 0; i < 600; i++) {
    await page.keyboard.press('Tab');
    const at = await focusedName(page);
    if (name.test(at)) return;
    passed.push(at);
  }
  throw new Error(`no key leads to ${name}; passed were ${[...new Set(passed)].join(' | ').slice(0, 3000)}`);
}

/** Goes to a field and types anew what stands in it. */
export async function fill(page: Page, name: RegExp, value: string): Promise<void> {
  await tabTo(page, name);
  await page.keyboard.press('Control+a');
  await page.keyboard.type(value);
}

/** Goes to the strip of stages with Tab and along it with the arrows. */
export async function goToStage(page: Page, stage: string): Promise<void> {
  await tabTo(page, /^(Evidence|Part|Duty|Route|Bench|Inspection|Record)/);
  await page.keyboard.press('Home');
  for (let i = 0; i < 7 && !(await focusedName(page)).startsWith(stage); i++) await page.keyboard.press('ArrowRight');
}
