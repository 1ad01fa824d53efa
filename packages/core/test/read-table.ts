/** Reads a dial table as it is printed: what it says of its dials, its zeros and its places, and how far its numbers move a slide. */
import type { DialTable } from '../src/route/dial-table.ts';

export type Row = DialTable['rows'][number];

/** Movement of a slide for one division, and divisions to a turn. */
export interface ReadDial {
  readonly step: number;
  readonly perTurn: number;
}

/** A dial as the notes describe it; undefined when they do not. */
export function dialIn(table: DialTable, name: RegExp): ReadDial | undefined {
  for (const note of table.notes) {
    const read =
      /^(.+): one division is ([\d.e-]+) mm (on the diameter|on the radius|of travel), (\d+) divisions a turn/.exec(
        note,
      );
    if (!read || !name.test(read[1] ?? '')) continue;
    return { step: Number(read[2]) / (read[3] === 'on the diameter' ? 2 : 1), perTurn: Number(read[4]) };
  }
  return undefined;
}

/** How far turns and divisions of a row move the slide from its zero. */
export function moved(row: Row, dial: ReadDial, turns = 'turns', divisions = 'divisions'): number {
  return (Number(row[turns]) * dial.perTurn + Number(row[divisions])) * dial.step;
}

/** The first number that follows these words in the notes. */
export function told(table: DialTable, words: RegExp): number {
  const found = table.notes
    .map((n) => new RegExp(`${words.source}([\\d.]+)`).exec(n)?.[1])
    .find((n) => n !== undefined);
  return found === undefined ? Number.NaN : Number(found);
}

/** Where along the part it cuts, from the left face, by its own words. */
export function stretchTold(table: DialTable, length: number): { from: number; to: number } | undefined {
  const text = table.notes.join(' ');
  const whole = /Along: from the (left|right) end of the part to ([\d.]+) mm from it/.exec(text);
  const part = /Along: from ([\d.]+) mm to ([\d.]+) mm, measured from the (left|right) end/.exec(text);
  const [near, far, end] = whole ? [0, Number(whole[2]), whole[1]] : [Number(part?.[1]), Number(part?.[2]), part?.[3]];
  if (end === undefined) return undefined;
  return end === 'left' ? { from: near, to: far } : { from: length - far, to: length - near };
}

/** The size in the title: `to Ø12.345`. */
export function titleSize(table: DialTable): number {
  return Number(/Ø([\d.]+)/.exec(table.title)?.[1]);
}
