/** Reads the server's SVG as a tree, never as markup of the page, and marks what is chosen or has something found on it. */
import type { FindingView, SizeRow } from '@sparewright/output/present/job-view';
import { belongsTo } from './marks.ts';

/**
 * A picture that only is looked at: its title and description are its name, and no tip of the mouse.
 *
 * @throws Error when the text is no SVG, which is never made
 */
export function readPicture(text: string): SVGElement {
  const root = parsed(text);
  const title = root.querySelector('title');
  const description = root.querySelector('desc');
  root.setAttribute('role', 'img');
  root.setAttribute('aria-label', [title?.textContent, description?.textContent].join('. '));
  title?.remove();
  description?.remove();
  return root;
}

function parsed(text: string): SVGElement {
  const root = svgIn(text);
  if (!root) throw new Error('the drawing is no SVG');
  return root;
}

/** The tree of a text; undefined when it is no SVG. */
export function svgIn(text: string): SVGElement | undefined {
  const read = new DOMParser().parseFromString(text, 'image/svg+xml');
  const root = document.adoptNode(read.documentElement);
  return root instanceof SVGElement && !read.querySelector('parsererror') ? root : undefined;
}

/** @throws Error when the text is no SVG, which is never made */
export function readSvg(text: string, sizes: readonly SizeRow[]): SVGElement {
  const root = parsed(text);
  // A picture may not hold buttons; a group may.
  root.setAttribute('role', 'group');
  nameDrawing(root, root);
  nameButtons(root, sizes);
  trim(root);
  return root;
}

/** Names a drawing by the title and the description of a text; as a title in it they would show as a tip wherever the mouse rests. */
export function nameDrawing(root: Element, from: Element): void {
  const title = from.querySelector('title');
  root.setAttribute('aria-label', [title?.textContent, from.querySelector('desc')?.textContent].join('. '));
  title?.remove();
}

/** On a screen the margin outside the frame is room lost to the drawing. Sheets keep 10 mm of it, 20 mm where they are bound. */
function trim(root: SVGElement): void {
  const [left, top, width, height] = (root.getAttribute('viewBox') ?? '').split(' ').map(Number);
  if (left === undefined || top === undefined || width === undefined || height === undefined) return;
  root.setAttribute('viewBox', `${left + 14} ${top + 4} ${width - 18} ${height - 8}`);
}

/** Every mark is reached once: by Tab the first, by arrow keys the others. */
function nameButtons(root: SVGElement, sizes: readonly SizeRow[]): void {
  const seen = new Set<string>();
  for (const item of root.querySelectorAll<SVGElement>('[data-of][tabindex]')) {
    const of = item.getAttribute('data-of') ?? '';
    if (seen.has(of)) makeNoButton(item);
    else makeButton(item, seen.size === 0 ? '0' : '-1', sizes);
    seen.add(of);
  }
}

export function makeButton(item: Element, tabindex: string, sizes: readonly SizeRow[]): void {
  const of = item.getAttribute('data-of') ?? '';
  const title = sizes.find((row) => row.id === of)?.title ?? of.replaceAll('-', ' ').replace('.', ', ');
  item.setAttribute('tabindex', tabindex);
  item.setAttribute('aria-label', `${title}: ${item.textContent}`);
}

export function makeNoButton(item: Element): void {
  item.removeAttribute('tabindex');
  item.removeAttribute('role');
}

export function markSvg(host: Element, marks: readonly string[], findings: readonly FindingView[]): void {
  const items = [...host.querySelectorAll('[data-of]')];
  const drawn = items.map((item) => item.getAttribute('data-of') ?? '');
  const shown = marks.map((mark) => nearestDrawn(mark, drawn));
  for (const item of items) {
    const of = item.getAttribute('data-of') ?? '';
    const level = findings.find((f) => f.level !== 'note' && f.marks.includes(of))?.level;
    item.classList.toggle(
      'chosen',
      shown.some((mark) => belongsTo(of, mark)),
    );
    item.classList.toggle('found-stop', level === 'stop');
    item.classList.toggle('found-caution', level === 'caution');
  }
}

/** Sizes that share one note on the drawing, as those of a groove do, are found at their feature. */
function nearestDrawn(mark: string, drawn: readonly string[]): string {
  return drawn.some((of) => belongsTo(of, mark)) ? mark : mark.replace(/\.[^.]*$/, '');
}

/**
 * Calls back with the mark that was clicked or chosen with the keyboard, and how far from the left face of the part an outline
 * was clicked [mm]; arrow keys go from mark to mark. Answers how to stop.
 */
export function whenChosen(host: Element, choose: (mark: string, fromLeft?: number) => void): () => void {
  const stop = new AbortController();
  host.addEventListener(
    'click',
    (event) => {
      const mark = markOf(event.target);
      if (mark !== undefined) choose(mark, fromLeftFace(event));
    },
    { signal: stop.signal },
  );
  host.addEventListener(
    'keydown',
    (event) => {
      if (event instanceof KeyboardEvent && onKey(host, event, choose)) event.preventDefault();
    },
    { signal: stop.signal },
  );
  return () => stop.abort();
}

/** Words and figures stand beside the part: only lines of the part itself are places on it. */
function fromLeftFace({
  target,
  clientX,
  clientY,
}: Event & { clientX?: number; clientY?: number }): number | undefined {
  if (!(target instanceof SVGPathElement) || clientX === undefined || clientY === undefined) return undefined;
  const root = target.ownerSVGElement;
  const [left, scale] = [Number(root?.dataset.left ?? NaN), Number(root?.dataset.scale ?? NaN)];
  const onSheet = root?.getScreenCTM()?.inverse();
  if (!onSheet || !Number.isFinite(left) || !(scale > 0)) return undefined;
  return (new DOMPoint(clientX, clientY).matrixTransform(onSheet).x - left) / scale;
}

function onKey(host: Element, { key, target }: KeyboardEvent, choose: (mark: string) => void): boolean {
  const mark = markOf(target);
  if (mark !== undefined && (key === 'Enter' || key === ' ')) {
    choose(mark);
    return true;
  }
  const step = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[key];
  if (step === undefined || !(target instanceof SVGElement)) return false;
  const items = [...host.querySelectorAll<SVGElement>('[data-of][tabindex]')];
  const next = items[(items.indexOf(target) + step + items.length) % items.length];
  for (const item of items) item.setAttribute('tabindex', item === next ? '0' : '-1');
  next?.focus();
  return true;
}

function markOf(target: EventTarget | null): string | undefined {
  if (!(target instanceof Element)) return undefined;
  return target.closest('[data-of]')?.getAttribute('data-of') ?? undefined;
}
