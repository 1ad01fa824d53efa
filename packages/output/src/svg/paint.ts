/** Paints a sheet as SVG text. The same sheet gives the same bytes, in node and in the browser. */
import type { Item, PathItem, PathPart, Scene, Stroke, TextItem } from '@sparewright/core/drawing/scene';
import { capitalsPerEm } from '@sparewright/core/drawing/text-width';
import { faceName } from '../face-name.ts';
import { attribute, number, xmlText } from './escape.ts';
import { colour, pens, type Theme } from './theme.ts';

export interface PaintOptions {
  /** `paper`: black on white. `screen`: the palette's colours as CSS variables. */
  readonly theme?: Theme | undefined;
  /** Items that stand for something can be reached with the keyboard and are wide enough to hit. */
  readonly interactive?: boolean | undefined;
}

export function paintSvg(scene: Scene, options: PaintOptions = {}): string {
  const theme = options.theme ?? 'paper';
  const [width, height] = [number(scene.width), number(scene.height)];
  const size = theme === 'paper' ? ` width="${width}mm" height="${height}mm"` : '';
  // What is inside an image cannot be reached; a group can hold buttons.
  const role = options.interactive ? 'group' : 'img';
  const view = options.interactive ? viewAttributes(scene) : '';
  return [
    `<svg xmlns="http://www.w3.org/2000/svg"${size} viewBox="0 0 ${width} ${height}" role="${role}"${view}>`,
    `<title>${xmlText(scene.title)}</title>`,
    `<desc>${xmlText(scene.description)}</desc>`,
    `<rect class="sheet" width="${width}" height="${height}" fill="${colour(theme, 'paper')}"/>`,
    `<g font-family="'${faceName}', sans-serif" stroke-linecap="round" stroke-linejoin="round" fill="none">`,
    ...scene.items.map((item) => paintItem(item, theme, options.interactive === true)),
    '</g>',
    '</svg>',
    '',
  ].join('\n');
}

/** Where the left face of the part is and how large it is drawn, for whoever points at it. */
function viewAttributes({ view }: Scene): string {
  return view ? ` data-left="${number(view.x)}" data-scale="${view.scale}"` : '';
}

function paintItem(item: Item, theme: Theme, interactive: boolean): string {
  const painted = item.item === 'text' ? paintText(item, theme) : paintPath(item, theme);
  if (item.of === undefined) return painted;
  const reach = interactive ? hitArea(item) : '';
  const focus = interactive && item.item === 'text' ? ' tabindex="0" role="button"' : '';
  return `<g data-of="${attribute(item.of)}"${focus}>${reach}${painted}</g>`;
}

function paintPath(item: PathItem, theme: Theme): string {
  const d = pathData(item.parts);
  const fill = item.fill === undefined ? '' : ` fill="${colour(theme, item.fill)}"`;
  return `<path d="${d}"${fill}${item.stroke === undefined ? '' : strokeAttributes(item.stroke, theme)}/>`;
}

function strokeAttributes(stroke: Stroke, theme: Theme): string {
  const pen = pens[stroke];
  const dashes = pen.dashes === undefined ? '' : ` stroke-dasharray="${pen.dashes}"`;
  return ` class="${stroke}" stroke="${colour(theme, pen.colour)}" stroke-width="${pen.breadth}"${dashes}`;
}

/** An unseen broad line under a thin one, so that a finger can hit it. */
function hitArea(item: Item): string {
  if (item.item === 'text' || item.stroke === undefined) return '';
  return `<path d="${pathData(item.parts)}" class="reach" stroke="transparent" stroke-width="4" pointer-events="stroke"/>`;
}

function paintText(item: TextItem, theme: Theme): string {
  const { x, y } = item.at;
  const turn =
    item.turn === 0 ? '' : ` transform="rotate(${number((-item.turn * 180) / Math.PI)} ${number(x)} ${number(y)})"`;
  const anchor = item.anchor === 'start' ? '' : ` text-anchor="${item.anchor}"`;
  const weight = item.weight === 'bold' ? ' font-weight="700"' : '';
  const size = number(item.height / capitalsPerEm);
  const ink = colour(theme, item.tone ?? 'ink');
  return `<text x="${number(x)}" y="${number(y)}" font-size="${size}"${anchor}${weight} fill="${ink}"${turn}>${xmlText(item.text)}</text>`;
}

export function pathData(parts: readonly PathPart[]): string {
  return parts
    .map((part) => {
      if (part.to === 'close') return 'Z';
      const end = `${number(part.x)} ${number(part.y)}`;
      if (part.to === 'start') return `M${end}`;
      if (part.to !== 'arc') return `L${end}`;
      const radius = number(part.radius);
      return `A${radius} ${radius} 0 ${part.largeArc ? 1 : 0} ${part.clockwise ? 1 : 0} ${end}`;
    })
    .join('');
}
