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

  /** How many of those that may reach into a box are so. */
  count(box: Box, isSo: (stretch: Stretch) => boolean): number {
    let count = 0;
    this.some(box, (stretch) => {
      if (isSo(stretch)) count += 1;
      return false;
    });
    return count;
  }

  /** Whether any of those that may reach into a box is so. */
  some(box: Box, isSo: (stretch: Stretch) => boolean): boolean {
    this.#question += 1;
    const [right, top, bottom] = [cellOf(box.right), cellOf(box.top), cellOf(box.bottom)];
    for (let column = cellOf(box.left); column <= right; column++) {
      for (let row = top; row <= bottom; row++) {
        const there = this.#cells.get(keyOf(column, row));
        if (!there) continue;
        for (const index of there) {
          const stretch = this.all[index];
          if (this.#asked[index] === this.#question || !stretch) continue;
          this.#asked[index] = this.#question;
          if (isSo(stretch)) return true;
        }
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
