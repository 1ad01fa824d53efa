import type { Item, Scene } from '@sparewright/core/drawing/scene';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { paintSvg, pathData } from './paint.ts';

function scene(...items: Item[]): Scene {
  return { width: 100, height: 50, title: 'Title', description: 'Description', items };
}

const text = { item: 'text', at: { x: 10, y: 20 }, text: 'Ø12', height: 2.1, anchor: 'start', turn: 0 } as const;
const line: Item = {
  item: 'path',
  parts: [
    { to: 'start', x: 0, y: 0 },
    { to: 'line', x: 10, y: 0 },
    { to: 'arc', x: 20, y: 10, radius: 10, largeArc: false, clockwise: true },
    { to: 'close' },
  ],
  stroke: 'outline',
  of: 'guide',
};

/** Whether tags are balanced and text is escaped, which is what XML asks of such a plain document. */
function isWellFormed(svg: string): boolean {
  const open: string[] = [];
  const rest = svg.replace(/<(\/?)([a-z]+)((?:\s[a-z-]+="[^"<]*")*)\s*(\/?)>/gi, (_, close, name, __, self) => {
    if (close) return open.pop() === name ? '' : '<mismatch>';
    if (!self) open.push(name);
    return '';
  });
  return open.length === 0 && !/[<>]/.test(rest) && !/&(?!(?:amp|lt|gt|quot|#39);)/.test(svg);
}

test('any text at all comes out as text', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary' }), (wild) => {
      const svg = paintSvg({ ...scene({ ...text, text: wild, of: wild }), title: wild, description: wild });
      expect(isWellFormed(svg)).toBe(true);
    }),
    { numRuns: 300 },
  );
  expect(paintSvg(scene({ ...text, text: '</text><script>alert(1)</script>' }))).not.toContain('<script');
});

test('the check for well-formedness notices a tag left open and a bare ampersand', () => {
  expect(isWellFormed('<svg><g></svg>')).toBe(false);
  expect(isWellFormed('<svg>a & b</svg>')).toBe(false);
});

test('thick lines are twice as broad as thin ones, and 2.1 mm capitals are set in 3 mm type', () => {
  const svg = paintSvg(scene(line, { ...line, stroke: 'thin' }, text));
  expect(svg).toContain('class="outline" stroke="#000" stroke-width="0.5"');
  expect(svg).toContain('class="thin" stroke="#000" stroke-width="0.25"');
  expect(svg).toContain('font-size="3"');
});

test('an arc is written with SVG’s own flags', () => {
  expect(pathData(line.item === 'path' ? line.parts : [])).toBe('M0 0L10 0A10 10 0 0 1 20 10Z');
});

test('on paper all is black, grey or white; on screen the palette names the colours', () => {
  const paper = paintSvg(scene(line, { ...line, stroke: 'cut' }, { ...line, stroke: 'assumed' }));
  expect(new Set(paper.match(/#[0-9a-f]{3,6}/g))).toEqual(new Set(['#000', '#555', '#fff']));
  const screen = paintSvg(scene(line, { ...line, stroke: 'cut' }), { theme: 'screen' });
  expect(screen).toContain('var(--ink, ');
  expect(screen).toContain('var(--marking-blue, ');
});

test('what stands for something says so, and can be reached when the picture is interactive', () => {
  expect(paintSvg(scene(line))).toContain('<g data-of="guide">');
  const svg = paintSvg(scene(line, { ...text, of: 'guide.diameter' }), { interactive: true });
  expect(svg).toContain('role="group"');
  expect(paintSvg(scene(line))).toContain('role="img"');
  expect(svg).toContain('class="reach"');
  expect(svg).toContain('<g data-of="guide.diameter" tabindex="0" role="button">');
});

test('title and description are there for who does not see it', () => {
  const svg = paintSvg(scene());
  expect(svg).toContain('<title>Title</title>');
  expect(svg).toContain('<desc>Description</desc>');
});

test('it uses no marker, pattern, style sheet or script, which some readers of SVG drop', () => {
  expect(paintSvg(scene(line, text))).not.toMatch(/<(marker|pattern|style|script|use|image)/);
});
