/** The table of a groove: plunges side by side, a little proud, then the floor in one pass across. */
import type { Mm } from '../../units/quantities.ts';
import type { DialTable } from '../dial-table.ts';
import { type Dial, dialNote, dialSetting } from './dial.ts';
import { inMm, type Stretch } from './stretch.ts';

/** Left on the floor for the last pass, on the radius; `common practice`. */
const floorAllowance: Mm = 0.05;

export interface GrooveTableInput {
  readonly id: string;
  readonly operation: string;
  readonly title: string;
  readonly width: Mm;
  /** Diameter it is cut from and diameter of its floor; inside grooves have the larger floor. */
  readonly outer: Mm;
  readonly floor: Mm;
  readonly cutterWidth: Mm;
  readonly stretch: Stretch;
  readonly across: Dial;
  readonly along: Dial | undefined;
}

/** Places of the cutter's left corner from the groove's left wall: both walls exactly, the rest overlapping. */
export function plungePlaces(width: Mm, cutterWidth: Mm): Mm[] {
  const spare = width - cutterWidth;
  if (spare <= 1e-9) return [0];
  const between = Math.max(1, Math.ceil(spare / (0.8 * cutterWidth)));
  return Array.from({ length: between + 1 }, (_, i) => (spare * i) / between);
}

/** Seen from the right end the left wall is the far one. */
function leftWall({ end, near, far }: Stretch): Mm {
  return end === 'right' ? far : near;
}

export function grooveTable(input: GrooveTableInput): DialTable {
  const depth = Math.abs(input.outer - input.floor) / 2;
  const rough = dialSetting(Math.max(0, depth - floorAllowance), input.across);
  const full = dialSetting(depth, input.across);
  const places = plungePlaces(input.width, input.cutterWidth);
  const along = (place: Mm) => (input.along ? dialSetting(place, input.along) : undefined);
  const end = places.at(-1) ?? 0;
  const short = end - (along(end)?.travel ?? end);
  const row = (name: string, place: Mm, setting: typeof full) => ({
    plunge: name,
    place,
    alongTurns: along(place)?.turns ?? '',
    alongDivisions: along(place)?.divisions ?? '',
    turns: setting.turns,
    divisions: setting.divisions,
    diameter: input.outer + (input.outer > input.floor ? -2 : 2) * setting.travel,
  });
  return {
    id: input.id,
    kind: 'groove',
    title: input.title,
    operation: input.operation,
    columns: [
      { key: 'plunge', title: 'plunge', unit: '' },
      { key: 'place', title: 'from the left wall', unit: 'mm', decimals: 2 },
      { key: 'alongTurns', title: 'along: turns', unit: '', decimals: 0 },
      { key: 'alongDivisions', title: 'divisions', unit: '', decimals: 0 },
      { key: 'turns', title: 'across: turns', unit: '', decimals: 0 },
      { key: 'divisions', title: 'divisions', unit: '', decimals: 0 },
      { key: 'diameter', title: 'to diameter', unit: 'mm', decimals: 3 },
      { key: 'done', title: 'done', unit: '', blank: true },
    ],
    rows: [
      ...places.map((place, i) => row(String(i + 1), place, rough)),
      row('floor, from', 0, full),
      ...(places.length > 1 ? [row('floor, to', places.at(-1) ?? 0, full)] : []),
    ],
    notes: [
      `Cutter ${input.cutterWidth} mm wide: measure it and correct the places if it differs. Groove ${input.width.toFixed(3)} mm wide.`,
      `Zero across with the cutter touching Ø${input.outer.toFixed(3)} mm, along with its left corner at the left wall, ${inMm(leftWall(input.stretch))} from the ${input.stretch.end} end of the part.`,
      dialNote('Cross slide', input.across),
      ...(input.along
        ? [dialNote('Along', input.along)]
        : ['No dial along the work is entered: set the places with an indicator or a gauge block.']),
      ...(short > 5e-4
        ? [
            `The dial along stops ${short.toFixed(3)} mm before the right wall: measure the groove, then set it between two divisions.`,
          ]
        : []),
      'Break both edges with a fine stone or file while it turns slowly: a ring drawn over a sharp edge is cut.',
    ],
  };
}
