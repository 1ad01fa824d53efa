/** The table of a turning or boring operation: one row a pass, in dial numbers, with the size to expect. */
import type { Mm } from '../../units/quantities.ts';
import type { DialTable } from '../dial-table.ts';
import { type Dial, dialNote, slidePerDivision } from './dial.ts';
import { planPasses } from './pass-plan.ts';
import { type Stretch, stretchNote } from './stretch.ts';

export interface TurningTableInput {
  readonly id: string;
  readonly operation: string;
  readonly title: string;
  readonly from: Mm;
  readonly to: Mm;
  readonly along: Stretch;
  readonly depth: Mm;
  readonly where: 'outside' | 'bore';
  readonly dial: Dial;
  /** How far edge and work give way from each other at the softest place, on the diameter. */
  readonly givesWay: Mm;
  readonly finishing: boolean;
  /** The last pass is put on with the top slide, by a table of its own. */
  readonly lastByTopSlide?: boolean | undefined;
}

export function turningTable(input: TurningTableInput): DialTable {
  const passes = planPasses(input.from, input.to, Math.max(input.depth, slidePerDivision(input.dial)), input.dial);
  // What gives way in one pass is cut in the next of the same depth: the error that stays is that of the last pass.
  const give = input.givesWay * (input.where === 'outside' ? 1 : -1);
  const last = passes.at(-1);
  const left = last ? Math.abs(last.diameter - input.to) : 0;
  return {
    id: input.id,
    kind: input.where === 'bore' ? 'boring' : 'turning',
    title: input.title,
    operation: input.operation,
    columns: [
      { key: 'pass', title: 'pass', unit: '', decimals: 0 },
      { key: 'turns', title: 'turns', unit: '', decimals: 0 },
      { key: 'divisions', title: 'divisions', unit: '', decimals: 0 },
      { key: 'depth', title: 'depth', unit: 'mm', decimals: 3 },
      { key: 'diameter', title: 'diameter after', unit: 'mm', decimals: 3 },
      { key: 'expected', title: 'expect at the softest place', unit: 'mm', decimals: 3 },
      { key: 'measured', title: 'measured', unit: 'mm', blank: true },
    ],
    rows: passes.map((p, i) => ({
      pass: i + 1,
      turns: p.setting.turns,
      divisions: p.setting.divisions,
      depth: p.depth,
      diameter: p.diameter,
      expected: p.diameter + give,
    })),
    notes: [
      dialNote('Cross slide', input.dial),
      `Zero the dial with the cutter just touching at Ø${input.from.toFixed(3)} mm.`,
      stretchNote(input.along),
      ...(input.finishing
        ? ['Measure after the last pass but one; what it really took is what the last will take.']
        : []),
      ...(input.lastByTopSlide
        ? [
            'The limits are closer than this dial can serve: take all passes but the last by it, the last by the table of the fine infeed.',
          ]
        : []),
      ...(left > 1e-6 && !input.lastByTopSlide
        ? [
            `The dial cannot set the last ${left.toFixed(3)} mm of the diameter: measure, then set the slide between two divisions.`,
          ]
        : []),
    ],
  };
}
