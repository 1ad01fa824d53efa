/** Straight lines on a sheet, found by where they are: a crowded sheet asks for its neighbours some hundred thousand times. */
import type { Mm } from '../units/quantities.ts';
import type { Box, Stretch } from './box.ts';

const cell: Mm = 6;

export class Stretches {
  readonly all: Stretch[] = [];
  readonly #cells = new Map<number, number[]>();
  /** For each line the number of the last question it was an answer to, so that none is given twice. */
  readonly #asked: number[] = [];
  #question = 0;

  push(...stretches: readonly Stretch[]): void {
    for (const stretch of stretches) {
      const index = this.all.push(stretch) - 1;
      this.#asked.push(0);
      const box = boxOf(stretch);
      for (let column = cellOf(box.left); column <= cellOf(box.right); column++) {
        for (let row = cellOf(box.top); row <= cellOf(box.bottom); row++) {
          const key = keyOf(column, row);
          const there = this.#cells.get(key);
          if (there) there.push(index);
          else this.#cells.set(key, [index]);
        }
      }
    }
  }

  /** Those that may reach into a box. */
  near(box: Box): Stretch[] {
    const found: Stretch[] = [];
    this.some(box, (stretch) => found.push(stretch) < 0);
    return found;
  }

  /** Whether any of those that may reach into a box is so. */
  some(box: Box, isSo: (stretch: Stretch) => boolean): boolean {
    this.#question += 1;
    const right = cellOf(box.right);
    for (let column = cellOf(box.left); column <= right; column++)
      if (this.#someInColumn(column, box.top, box.bottom, isSo)) return true;
    return false;
  }

  /** Whether any of those that may come nearer to a line than this is so. */
  someAlong({ a, b }: Stretch, near: Mm, isSo: (stretch: Stretch) => boolean): boolean {
    this.#question += 1;
    const [from, to] = a.x <= b.x ? [a, b] : [b, a];
    const slope = to.x > from.x ? (to.y - from.y) / (to.x - from.x) : 0;
    const right = cellOf(to.x + near);
    for (let column = cellOf(from.x - near); column <= right; column++) {
      // How high the line is where it comes near to this column and where it leaves it; an upright one is so all along.
      const x0 = Math.min(Math.max(column * cell - near, from.x), to.x);
      const x1 = Math.min(Math.max((column + 1) * cell + near, from.x), to.x);
      const y0 = from.y + slope * (x0 - from.x);
      const y1 = slope === 0 ? to.y : from.y + slope * (x1 - from.x);
      if (this.#someInColumn(column, Math.min(y0, y1) - near, Math.max(y0, y1) + near, isSo)) return true;
    }
    return false;
  }

  #someInColumn(column: number, top: Mm, bottom: Mm, isSo: (stretch: Stretch) => boolean): boolean {
    const last = cellOf(bottom);
    for (let row = cellOf(top); row <= last; row++) {
      const there = this.#cells.get(keyOf(column, row));
      if (!there) continue;
      for (const index of there) {
        const stretch = this.all[index];
        if (this.#asked[index] === this.#question || !stretch) continue;
        this.#asked[index] = this.#question;
        if (isSo(stretch)) return true;
      }
    }
    return false;
  }
}

export function boxOf({ a, b }: Stretch): Box {
  return {
    left: Math.min(a.x, b.x),
    right: Math.max(a.x, b.x),
    top: Math.min(a.y, b.y),
    bottom: Math.max(a.y, b.y),
  };
}

function cellOf(at: Mm): number {
  return Math.floor(at / cell);
}

function keyOf(column: number, row: number): number {
  return (column + 5000) * 10_000 + row + 5000;
}
