/**
 * The page of a job in headless Chromium on this machine: what is loaded, when it can be used, and how soon a keystroke shows.
 * Needs the built screens: `npm run build && npx tsx benchmarks/page.ts`. The peer is the browser reading and placing a drawing
 * that was made before.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { availableParallelism, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { startServer } from '@sparewright/server/start';
import { chromium, type Page } from 'playwright-core';
import { figure, report } from './measure.ts';

const path = (name: string) => fileURLToPath(new URL(`../${name}`, import.meta.url));
const data = mkdtempSync(join(tmpdir(), 'sparewright-bench-'));
const server = await startServer({ examples: path('examples'), web: path('packages/web/dist'), data, port: 0 });
const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox', '--disable-gpu'] });
const view = { width: 1440, height: 900 };

async function freshPage(): Promise<Page> {
  const context = await browser.newContext({ viewport: view });
  await context.addInitScript(() => localStorage.setItem('sparewright.opened', 'yes'));
  // Functions handed to the page are compiled here, with calls of a helper that is not there.
  await context.addInitScript('globalThis.__name = (named) => named');
  return context.newPage();
}

interface Loaded {
  readonly name: string;
  readonly kilobytes: number;
}

/** Scripts and styles as they come, compressed here, for the server may or may not compress them. */
async function loaded(job: string): Promise<{ scripts: Loaded[]; drawn: number; usable: number }> {
  const page = await freshPage();
  const scripts: Loaded[] = [];
  const reading: Promise<void>[] = [];
  page.on('response', (response) => {
    const name = new URL(response.url()).pathname.split('/').at(-1) ?? '';
    if (!name.endsWith('.js')) return;
    const read = async (): Promise<void> => {
      scripts.push({ name, kilobytes: gzipSync(await response.body(), { level: 9 }).length / 1000 });
    };
    reading.push(read().catch(() => undefined));
  });
  await page.addInitScript(() => {
    const times: Record<string, number> = {};
    Reflect.set(window, 'times', times);
    new MutationObserver(() => {
      if (document.querySelector('.drawing svg')) times.drawn ??= performance.now();
      const field = document.querySelector('.sizes input');
      if (field && !Reflect.has(times, 'usable'))
        requestAnimationFrame(() => {
          times.usable ??= performance.now();
        });
    }).observe(document, { subtree: true, childList: true });
  });
  await page.goto(`${server.address}/jobs/${job}/part`);
  await page.locator('.drawing svg').waitFor();
  await page.waitForTimeout(1500);
  const times = await page.evaluate<{ drawn: number; usable: number }>('window.times');
  await Promise.all(reading);
  await page.context().close();
  return { scripts, ...times };
}

/**
 * Types values into one field in turn; answers for each how long until the drawing was redrawn on the page, until that was on the
 * screen, which waits for the next frame of the screen and its painting, and until the findings had followed [ms].
 */
async function keystrokes(
  job: string,
  field: string,
  values: readonly string[],
): Promise<{ drawing: number[]; screen: number[]; findings: number[]; plain: number[] }> {
  const page = await freshPage();
  await page.goto(`${server.address}/jobs/${job}/part`);
  await page.locator('.drawing svg').waitFor();
  await page.waitForTimeout(1000);
  const taken = await page.evaluate(
    async ({ field, values }) => {
      const input = [...document.querySelectorAll('input')].find((i) => i.getAttribute('aria-label') === field);
      const drawing = document.querySelector('.drawing');
      const findings = document.querySelector('.findings');
      if (!input || !drawing || !findings) throw new Error('the page is not as it was when this was written');
      const setValue = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')?.set;
      const type = (value: string): void => {
        setValue?.call(input, value);
        input.dispatchEvent(new Event('input', { bubbles: true }));
      };
      const until = (where: Element, differs: () => boolean): Promise<number> =>
        new Promise((resolve) => {
          const observer = new MutationObserver(() => {
            if (!differs()) return;
            observer.disconnect();
            resolve(performance.now());
          });
          observer.observe(where, { subtree: true, childList: true, characterData: true });
        });
      /** A message sent as a frame begins is heard when it has been painted. */
      const painted = (): Promise<number> =>
        new Promise((resolve) => {
          const { port1, port2 } = new MessageChannel();
          port1.onmessage = () => resolve(performance.now());
          requestAnimationFrame(() => port2.postMessage(undefined));
        });
      const times = {
        drawing: [] as number[],
        screen: [] as number[],
        findings: [] as number[],
        plain: [] as number[],
      };
      for (const value of values) {
        const before = findings.textContent;
        const drawn = until(drawing, () => (drawing.querySelector('svg')?.textContent ?? '').includes(value));
        const found = until(findings, () => findings.textContent !== before);
        const start = performance.now();
        type(value);
        times.drawing.push((await drawn) - start);
        times.screen.push((await painted()) - start);
        times.findings.push((await found) - start);
        await new Promise((resolve) => setTimeout(resolve, 120));
      }
      const written = drawing.querySelector('svg')?.outerHTML ?? '';
      const place = document.createElement('div');
      document.body.append(place);
      for (let i = 0; i < values.length; i++) {
        const start = performance.now();
        const read = new DOMParser().parseFromString(written, 'image/svg+xml');
        place.replaceChildren(document.adoptNode(read.documentElement));
        times.plain.push(performance.now() - start);
      }
      return times;
    },
    { field, values },
  );
  await page.context().close();
  return taken;
}

const loads: Awaited<ReturnType<typeof loaded>>[] = [];
for (let i = 0; i < 5; i++) loads.push(await loaded('plunger'));
console.log(`\nload of this machine: ${loadavg()[0]?.toFixed(1)} on ${availableParallelism()} cores`);
console.log('\nscripts of the job screen, compressed [kB] (wanted: < 250 for the page itself)');
for (const { name, kilobytes } of loads[0]?.scripts ?? []) console.log(`  ${name.padEnd(40)} ${kilobytes.toFixed(1)}`);

// So small that its seal fails, each by another figure: every keystroke changes the findings, too.
const diameters = Array.from({ length: 40 }, (_, i) => `31.${10 + i}1 f7`);
const typed = await keystrokes('plunger', 'diameter of the body, as typed', diameters);
const settled = <T>(list: readonly T[]) => list.slice(8);
report(
  'job screen of the plunger',
  [
    figure(
      'first visit until the drawing is there',
      loads.map((l) => l.drawn),
    ),
    figure(
      'first visit until a size can be typed (wanted: < 1000)',
      loads.map((l) => l.usable),
    ),
    figure('keystroke until the drawing is redrawn (wanted: < 16)', settled(typed.drawing)),
    figure('keystroke until the screen shows it', settled(typed.screen)),
    figure('keystroke until the findings are fresh (wanted: < 150)', settled(typed.findings)),
  ],
  figure('a drawing that is there already, read and put in place', settled(typed.plain)),
);

await browser.close();
await server.close();
rmSync(data, { recursive: true });
