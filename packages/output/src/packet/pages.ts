/** The packet page by page, as pictures for a screen: each an SVG that needs nothing beside itself. */
import { readFileSync } from 'node:fs';
import { faceName } from '../face-name.ts';
import { fontFiles } from '../fonts.ts';

const pageStart =
  /^ {4}<path class="typst-shape" fill="#ffffff" fill-rule="nonzero" d="M 0 0v (\S+) h (\S+) v -\S+ Z "\/>$/;
const pictureInside =
  /<image( transform="[^"]*")? xlink:href="data:image\/svg\+xml;base64,([^"]*)" width="([^"]*)" height="([^"]*)"[^>]*\/>/g;

/**
 * Parts the typesetter's one long picture into its pages, each with the glyphs and clips that it uses.
 *
 * @throws Error when the picture is not built as this typesetter builds it
 */
export function splitPages(svg: string): string[] {
  const lines = svg.split('\n');
  const starts = lines.flatMap((line, i) => (pageStart.test(line) ? [i] : []));
  const end = lines.findIndex((line) => line.startsWith('    <defs'));
  if (starts.length === 0 || end < 0) throw new Error('the typesetter gave no pages');
  const shared = definitions(lines.slice(end));
  return starts.map((start, i) => {
    const [, height = '', width = ''] = pageStart.exec(lines[start] ?? '') ?? [];
    const body = lines
      .slice(start, starts[i + 1] ?? end)
      .map((line) => line.trim())
      .join('')
      // Pages stand one below another there; here each stands alone.
      .replace(/(\/>)<g transform="matrix\(1 0 0 1 0 [\d.]+\)">/, '$1<g>');
    return page(body, Number(width), Number(height), shared);
  });
}

function page(body: string, width: number, height: number, shared: ReadonlyMap<string, string>): string {
  const used = new Set([...body.matchAll(/(?:href="#|url\(#)([^")]+)/g)].map(([, id = '']) => id));
  const defs = [...used].map((id) => shared.get(id) ?? '').join('');
  const inside = body.replace(pictureInside, (_, turn: string | undefined, data: string, w: string, h: string) =>
    drawn(Buffer.from(data, 'base64').toString('utf8'), turn ?? '', w, h),
  );
  const face = inside === body ? '' : `<style>${faces()}</style>`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}">`,
    `${face}<defs>${defs}</defs>${inside}</svg>`,
  ].join('');
}

/** A drawing within a page in the page's own tree, so that the face of the page is its face too. */
function drawn(svg: string, transform: string, width: string, height: string): string {
  const plain = svg
    .replace(/ (?:width|height)="[\d.]+mm"/g, '')
    .replace('<svg ', `<svg width="${width}" height="${height}" `);
  return transform === '' ? plain : `<g${transform}>${plain}</g>`;
}

/** Everything that pages refer to, by its id. */
function definitions(lines: readonly string[]): Map<string, string> {
  const text = lines.map((line) => line.trim()).join('');
  const found = [...text.matchAll(/<(symbol|clipPath|linearGradient|radialGradient|pattern) id="([^"]+)".*?<\/\1>/g)];
  return new Map(found.map(([whole, , id = '']) => [id, whole]));
}

let kept: string | undefined;

/** A picture may fetch nothing, so the face comes with it. */
function faces(): string {
  kept ??= fontFiles
    .map(({ url, weight }) => {
      const data = readFileSync(url).toString('base64');
      return `@font-face{font-family:'${faceName}';font-weight:${weight};src:url(data:font/ttf;base64,${data}) format('truetype')}`;
    })
    .join('');
  return kept;
}
