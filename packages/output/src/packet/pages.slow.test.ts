/** The packet as pictures: as many as the PDF has pages, as large, and each whole in itself. */
import { expect, test } from 'vitest';
import { barelyBegun, exampleJob, packetInput } from '../../test/jobs.ts';
import { pageSizes } from '../../test/poppler.ts';
import { makePacket, packetPages } from './packet.ts';
import { splitPages } from './pages.ts';

test.each(['plunger', 'gland-spindle'] as const)('of %s are those that poppler counts in the PDF', (name) => {
  for (const paper of ['A4', 'Letter'] as const) {
    const input = packetInput(exampleJob(name, { sheet: { paper } }));
    const sizes = packetPages(input).map((page) => /viewBox="0 0 (\S+) (\S+)"/.exec(page)?.slice(1).map(Number) ?? []);
    const expected = pageSizes(makePacket(input));
    expect(sizes).toHaveLength(expected.length);
    sizes.forEach(([a = 0, b = 0], i) => {
      const [short = 0, long = 0] = expected[i] ?? [];
      expect(Math.abs(Math.min(a, b) - short)).toBeLessThan(0.1);
      expect(Math.abs(Math.max(a, b) - long)).toBeLessThan(0.1);
    });
  }
});

test('refer to nothing that is not within them, and fetch nothing', () => {
  for (const page of packetPages(packetInput(exampleJob('plunger')))) {
    const wanted = [...page.matchAll(/href="([^"]*)"|url\(#([^)]*)\)/g)].map(([, href, clip]) => href ?? `#${clip}`);
    expect(wanted.length).toBeGreaterThan(50);
    for (const place of new Set(wanted)) expect(page, place).toContain(`id="${place.slice(1)}"`);
    expect(page.replaceAll(/xmlns(:\w+)?="[^"]*"/g, '')).not.toMatch(/https?:|<script|<image/);
  }
});

test('are there for a job that has barely begun, and a picture that has none is refused', () => {
  expect(packetPages(packetInput(barelyBegun)).length).toBeGreaterThan(0);
  expect(() => splitPages('<svg></svg>')).toThrow('no pages');
});
