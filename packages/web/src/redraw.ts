/**
 * The drawing on the page, renewed item by item where it can be: a keystroke changes few of them, and reading and laying out all
 * the others anew would take as long as everything else. What was chosen with the keyboard stays so.
 */
import type { SizeRow } from '@sparewright/output/present/job-view';
import { makeButton, makeNoButton, nameDrawing, readSvg, svgIn } from './svg.ts';

/** What is shown, and the text it was made from: each item of a sheet is one line of it, see output/src/svg/paint.ts. */
export interface Shown {
  readonly root: SVGElement;
  readonly lines: readonly string[];
  /** Names of the sizes, which the items are called by. */
  readonly names: string;
}

/** Lines before the first item and after the last. */
const head = 5;
const tail = 3;
/** Beyond this share of the items it is no longer quicker to pick them out. */
const most = 0.5;

/**
 * Shows a drawing in the place of what the host shows.
 *
 * @param shown  what was shown there by this before, if anything
 * @throws Error when the text is no SVG, which is never made
 */
export function redraw(host: Element, shown: Shown | undefined, text: string, sizes: readonly SizeRow[]): Shown {
  const lines = text.split('\n');
  const names = sizes.map(({ id, title }) => `${id} ${title}`).join('\n');
  if (shown?.root.parentNode === host && shown.names === names && renew(shown, lines, sizes))
    return { root: shown.root, lines, names };
  const root = readSvg(text, sizes);
  const of = host.contains(document.activeElement) ? document.activeElement?.getAttribute('data-of') : undefined;
  host.replaceChildren(root);
  const again = of && root.querySelector(`[data-of="${CSS.escape(of)}"][tabindex]`);
  if (again) focus(again);
  return { root, lines, names };
}

/** @returns false, having changed nothing, when the drawing is not the same but for some of its items */
function renew({ root, lines: before }: Shown, lines: readonly string[], sizes: readonly SizeRow[]): boolean {
  const items = root.querySelector(':scope > g');
  const end = lines.length - tail;
  if (!items || lines.length !== before.length || items.children.length !== end - head) return false;
  const changed = lines.flatMap((line, i) => (line === before[i] ? [] : [i]));
  const [title, description] = [1, 2];
  const places = changed.filter((i) => i !== title && i !== description);
  if (places.length > most * (end - head) || places.some((i) => i < head || i >= end)) return false;
  const text = [lines[title], lines[description], '<g>', ...places.map((i) => lines[i]), '</g>'].join('\n');
  const read = svgIn(`<svg xmlns="http://www.w3.org/2000/svg">${text}</svg>`);
  if (!read) return false;
  const fresh = [...(read.querySelector(':scope > g')?.children ?? [])];
  const old = places.map((i) => items.children[i - head]);
  if (fresh.length !== places.length || !fresh.every((item, i) => isAlike(item, old[i]))) return false;
  for (const [i, item] of fresh.entries()) takePlace(item, old[i], sizes);
  if (places.length < changed.length) nameDrawing(root, read);
  return true;
}

/** Of the same thing, and both a text or both a line. */
function isAlike(one: Element, other: Element | undefined): boolean {
  const kind = (item: Element): string => `${item.getAttribute('data-of')} ${item.querySelector('text') !== null}`;
  return other !== undefined && one.localName === other.localName && kind(one) === kind(other);
}

function takePlace(item: Element, old: Element | undefined, sizes: readonly SizeRow[]): void {
  const tabindex = old?.getAttribute('tabindex') ?? null;
  if (tabindex !== null) makeButton(item, tabindex, sizes);
  else makeNoButton(item);
  const isFocused = old !== undefined && old === document.activeElement;
  old?.replaceWith(item);
  if (isFocused) focus(item);
}

function focus(item: Element): void {
  if (item instanceof SVGElement) item.focus({ preventScroll: true });
}
