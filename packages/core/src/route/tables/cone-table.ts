/** The setting sheet of a cone: the angle of the top slide, the strokes, and the test that proves the angle. */
import { degrees, type Mm } from '../../units/quantities.ts';
import type { DialTable } from '../dial-table.ts';
import { angleTolerance, type Cone, degreesMinutes, setOverAngle, sideLength } from './cone-setting.ts';
import { type Dial, dialNote, dialSetting } from './dial.ts';
import { type Stretch, stretchNote } from './stretch.ts';

/** Depth of each of the last two strokes, on the radius; `common practice`. */
const lastStroke: Mm = 0.1;

export interface ConeTableInput {
  readonly id: string;
  readonly operation: string;
  readonly title: string;
  readonly cone: Cone;
  /** Diameter from which it is cut: the rough outside, or the hole. */
  readonly startDiameter: Mm;
  readonly where: 'outside' | 'bore';
  readonly along: Stretch;
  /** Which end is the thin one, seen from the chuck. */
  readonly thinEnd: 'free' | 'chuck';
  /** Greatest depth of a stroke by hand, on the radius. */
  readonly greatest: Mm;
  readonly across: Dial;
}

/** Depths reached stroke by stroke: as deep as may be, the last two light and alike. */
function strokeDepths(depth: Mm, greatest: Mm): Mm[] {
  const light = depth > 4 * lastStroke ? 2 : 0;
  const heavy = depth - light * lastStroke;
  const count = Math.max(1, Math.ceil(heavy / greatest - 1e-9));
  const first = Array.from({ length: count }, (_, i) => (heavy * (i + 1)) / count);
  return [...first, ...(light > 0 ? [depth - lastStroke, depth] : [])];
}

export function coneTable(input: ConeTableInput): DialTable {
  const { cone } = input;
  const angle = setOverAngle(cone);
  const thin = Math.min(cone.startDiameter, cone.endDiameter);
  const wide = Math.max(cone.startDiameter, cone.endDiameter);
  const depth = input.where === 'outside' ? (input.startDiameter - thin) / 2 : (wide - input.startDiameter) / 2;
  return {
    id: input.id,
    kind: 'cone',
    title: input.title,
    operation: input.operation,
    columns: [
      { key: 'stroke', title: 'stroke', unit: '', decimals: 0 },
      { key: 'turns', title: 'turns', unit: '', decimals: 0 },
      { key: 'divisions', title: 'divisions', unit: '', decimals: 0 },
      { key: 'diameter', title: input.where === 'outside' ? 'thin end' : 'wide end', unit: 'mm', decimals: 3 },
      { key: 'done', title: 'done', unit: '', blank: true },
    ],
    rows: strokeDepths(Math.max(0, depth), input.greatest).map((reached, i) => {
      const setting = dialSetting(reached, input.across);
      const sign = input.where === 'outside' ? -2 : 2;
      return {
        stroke: i + 1,
        turns: setting.turns,
        divisions: setting.divisions,
        diameter: input.startDiameter + sign * setting.travel,
      };
    }),
    notes: [
      `Set the top slide ${degreesMinutes(angle)} (${degrees(angle).toFixed(3)}°) from the axis: half the included angle of ${degrees(2 * angle).toFixed(2)}°.`,
      `The thin end is the one ${input.thinEnd === 'free' ? 'away from the chuck' : 'towards the chuck'}: the top slide, fed ${input.thinEnd === 'free' ? 'towards the chuck, must move away from the axis' : 'towards the chuck, must move in towards the axis'}.`,
      `Test: over ${cone.length.toFixed(2)} mm along the axis the diameters must differ by ${(wide - thin).toFixed(3)} mm. A difference off by 0.01 mm means ${degreesMinutes(angleTolerance(cone, 0.01))} too much or too little.`,
      `The top slide travels ${sideLength(cone).toFixed(1)} mm along the side; start it well back. Lock the saddle.`,
      `Zero the cross slide with the cutter touching ${input.where === 'outside' ? 'at the thin end' : 'in the mouth'} at Ø${input.startDiameter.toFixed(3)} mm. The cutter must stand at centre height, or the side is not straight.`,
      stretchNote(input.along),
      dialNote('Cross slide', input.across),
    ],
  };
}
