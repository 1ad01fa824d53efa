/** The table of a drilled hole: depths at which to draw out, in turns of the tailstock wheel where its dial is known. */
import { chipLoadFloor, pecks } from '../../cutting/drilling.ts';
import type { Mm, MmPerRev, Rpm } from '../../units/quantities.ts';
import type { DialTable } from '../dial-table.ts';
import { type Dial, dialNote, dialSetting } from './dial.ts';

export interface DrillingTableInput {
  readonly id: string;
  readonly operation: string;
  readonly title: string;
  readonly diameter: Mm;
  /** To the full diameter. */
  readonly depth: Mm;
  readonly pointLength: Mm;
  readonly dial: Dial | undefined;
  readonly speed: Rpm;
  readonly feed: MmPerRev;
  readonly hardens: boolean;
}

export function drillingTable(input: DrillingTableInput): DialTable {
  const total = input.depth + input.pointLength;
  const floor = chipLoadFloor(input.diameter);
  return {
    id: input.id,
    kind: 'drilling',
    title: input.title,
    operation: input.operation,
    columns: [
      { key: 'peck', title: 'peck', unit: '', decimals: 0 },
      { key: 'depth', title: 'depth of the point', unit: 'mm', decimals: 1 },
      { key: 'turns', title: 'turns', unit: '', decimals: 0 },
      { key: 'divisions', title: 'divisions', unit: '', decimals: 0 },
      { key: 'done', title: 'done', unit: '', blank: true },
    ],
    rows: pecks(input.diameter, total).map((depth, i) => {
      const setting = input.dial && dialSetting(depth, input.dial);
      return { peck: i + 1, depth, turns: setting?.turns ?? '', divisions: setting?.divisions ?? '' };
    }),
    notes: [
      `Zero with the point touching the face. The point is ${input.pointLength.toFixed(1)} mm long: full diameter to ${input.depth.toFixed(1)} mm is reached at ${total.toFixed(1)} mm.`,
      `${input.speed} rpm, about ${input.feed.toFixed(2)} mm a turn of the spindle: ${(input.feed * input.speed).toFixed(0)} mm a minute.`,
      ...(input.hardens
        ? [
            `This material hardens: never less than ${floor.toFixed(2)} mm a turn, never dwell, keep feeding until you draw out.`,
          ]
        : []),
      ...(input.dial
        ? [dialNote('Tailstock', input.dial)]
        : ['No dial on the tailstock is entered: mark the depth on the drill or measure the quill.']),
    ],
  };
}
