/** A sheet in the making: what has been drawn, and what a further text or line must keep clear of. */
import type { Mm, Radian } from '../units/quantities.ts';
import {
  around,
  type Box,
  boxAt,
  cross,
  grown,
  moved,
  overlap,
  passesThrough,
  runsAlong,
  type Stretch,
} from './box.ts';
import type { At, Item, PathPart, Stroke, TextItem } from './scene.ts';
import { lineThrough, shifted } from './shapes.ts';
import { boxOf, Stretches } from './stretches.ts';
import { textWidth, type Weight } from './text-width.ts';

/** Height of the capitals of a dimension, of a note's title, of the small print. */
export const textHeight = { dimension: 2.5, title: 3.5, small: 1.8 } as const;

/** Below the base line some letters and the brackets reach this share of the capitals' height. */
const descent = 0.3;
/** White left between a text and a line that runs past it. */
const margin: Mm = 0.3;
/** White left about every text. */
const clearance: Mm = 0.6;

export interface TextStyle {
  readonly height?: Mm | undefined;
  readonly anchor?: TextItem['anchor'] | undefined;
  /** A quarter turn anticlockwise: read from the right. */
  readonly upright?: boolean | undefined;
  readonly weight?: Weight | undefined;
  readonly tone?: TextItem['tone'];
  readonly of?: string | undefined;
}

export class Board {
  readonly items: Item[] = [];
  /** Where text stands. */
  readonly texts: Box[] = [];
  /** Visible edges of the part: no text over them. */
  readonly edges = new Stretches();
  /** Dimension, extension and leader lines: no text over them either. */
  readonly lines = new Stretches();
  /** Regions taken as a whole: the title block, a detail view, lined sections. */
  readonly taken: Box[] = [];
  /** Where along the sheet leaders will start that are not drawn yet. */
  waiting: readonly Mm[] = [];

  /** Draws a straight line that text must keep clear of. */
  line(a: At, b: At, stroke: Stroke, of?: string): void {
    this.items.push(lineThrough([a, b], stroke, of));
    this.lines.push({ a, b });
  }

  path(parts: readonly PathPart[], stroke: Stroke | undefined, of?: string): void {
    if (parts.length > 0) this.items.push({ item: 'path', parts, stroke, of });
  }

  text(at: At, text: string, style: TextStyle = {}): void {
    const { height = textHeight.dimension, anchor = 'start', upright = false, weight, tone, of } = style;
    const turn: Radian = upright ? Math.PI / 2 : 0;
    this.items.push({ item: 'text', at, text, height, anchor, turn, weight, tone, of });
    this.texts.push(textBox(at, text, style));
  }

  /** Whether a text may stand in a box. */
  isFree(box: Box): boolean {
    const wide = grown(box, clearance);
    for (const text of this.texts) if (overlap(text, wide)) return false;
    return (
      !this.taken.some((t) => overlap(t, wide)) &&
      !this.edges.some(wide, (e) => passesThrough(e, wide)) &&
      !this.lines.some(wide, (l) => passesThrough(l, wide))
    );
  }

  /** Whether a line may run from a to b without passing through a text. */
  isClearOfText(line: Stretch): boolean {
    const { left, top, right, bottom } = grown(boxOf(line), margin);
    return !this.texts.some(
      (t) =>
        t.left < right && t.right > left && t.top < bottom && t.bottom > top && passesThrough(line, grown(t, margin)),
    );
  }

  /**
   * What a further line would cost: so much for each edge or drawn line it would be lost in, so much for each it would cross; no
   * longer counted once it has come to `enough`.
   */
  trouble(
    what: 'edges' | 'lines',
    line: Stretch,
    price: { readonly lost: number; readonly crossed: number },
    enough: number,
  ): number {
    let cost = 0;
    if (cost >= enough) return cost;
    this[what].someAlong(line, 1, (other) => {
      if (runsAlong(line, other)) cost += price.lost;
      if (cross(other, line)) cost += price.crossed;
      return cost >= enough;
    });
    return cost;
  }

  /** How many places lie under these boxes from which leaders have still to come. */
  waitingUnder(boxes: readonly Box[]): number {
    if (this.waiting.length === 0) return 0;
    return boxes.reduce((sum, box) => sum + this.waiting.filter((x) => x > box.left && x < box.right).length, 0);
  }

  /** Takes over another board's drawing, shifted. */
  merge(other: Board, by: At): void {
    const shift = (s: Stretch): Stretch => ({
      a: { x: s.a.x + by.x, y: s.a.y + by.y },
      b: { x: s.b.x + by.x, y: s.b.y + by.y },
    });
    this.items.push(...other.items.map((item) => shifted(item, by)));
    this.texts.push(...other.texts.map((box) => moved(box, by)));
    this.taken.push(...other.taken.map((box) => moved(box, by)));
    this.edges.push(...other.edges.all.map(shift));
    this.lines.push(...other.lines.all.map(shift));
  }

  /** The room of every single item. */
  boxes(): Box[] {
    return [...this.items.map(itemBox), ...this.taken];
  }

  /** The box around everything drawn so far. */
  extent(): Box | undefined {
    return around(this.boxes());
  }
}

/** The room a text takes, descenders included. */
export function textBox(at: At, text: string, style: TextStyle = {}): Box {
  const { height = textHeight.dimension, anchor = 'start', upright = false, weight = 'normal' } = style;
  const width = textWidth(text, height, weight);
  const before = anchor === 'start' ? 0 : anchor === 'middle' ? width / 2 : width;
  if (!upright) return lineBox(at.x - before, at.y, width, height);
  return boxAt(at.x - height, at.y + before - width, height * (1 + descent), width);
}

/** The room of a line of text of known width on its base line. */
export function lineBox(left: Mm, base: Mm, width: Mm, height: Mm): Box {
  return boxAt(left, base - height, width, height * (1 + descent));
}

/** The room an item takes; of an arc, that of its whole circle where the ends do not tell. */
export function itemBox(item: Item): Box {
  if (item.item === 'text') {
    return textBox(item.at, item.text, {
      height: item.height,
      anchor: item.anchor,
      upright: item.turn !== 0,
      weight: item.weight,
    });
  }
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  const take = ({ x, y }: At): void => {
    left = Math.min(left, x);
    right = Math.max(right, x);
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  };
  item.parts.forEach((part, i) => {
    if (part.to === 'close') return;
    take(part);
    const before = item.parts[i - 1];
    if (part.to === 'arc' && before && before.to !== 'close') bulge(before, part).forEach(take);
  });
  return left <= right ? { left, top, right, bottom } : boxAt(0, 0, 0, 0);
}

/** The outermost points of an arc to the left, right, top and bottom, where it reaches them. */
function bulge(from: At, arc: Extract<PathPart, { to: 'arc' }>): At[] {
  const half = Math.hypot(arc.x - from.x, arc.y - from.y) / 2;
  if (half === 0) return [];
  const radius = Math.max(arc.radius, half);
  const side = arc.largeArc === arc.clockwise ? -1 : 1;
  const away = (side * Math.sqrt(radius ** 2 - half ** 2)) / (2 * half);
  const centre = {
    x: (from.x + arc.x) / 2 - away * (arc.y - from.y),
    y: (from.y + arc.y) / 2 + away * (arc.x - from.x),
  };
  const turn = 2 * Math.PI;
  const start = Math.atan2(from.y - centre.y, from.x - centre.x);
  const way = arc.clockwise ? 1 : -1;
  const turned = (angle: number) => (((way * (angle - start)) % turn) + turn) % turn;
  const whole = turned(Math.atan2(arc.y - centre.y, arc.x - centre.x));
  return [0, 1, 2, 3]
    .map((k) => (k * Math.PI) / 2)
    .filter((angle) => turned(angle) < whole)
    .map((angle) => ({ x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) }));
}
