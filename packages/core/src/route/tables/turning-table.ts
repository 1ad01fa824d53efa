/** The table of a turning or boring operation: one row a pass, in dial numbers, with the size to expect. */
import type { Mm } from '../../units/quantities.ts';
import type { DialTable } from '../dial-table.ts';
import { type Dial, dialNote, slidePerDivision } from './dial.ts';
import { type PlannedPass, planPasses } from './pass-plan.ts';
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
  /** Of the last cuts; `grows`: how much too large the work reads when it is still warm. */
  readonly finishing: false | { readonly grows: Mm };
  /** Height of the cone that a drill left at the floor of a bore; 0 or left out where there is none. */
  readonly cone?: Mm | undefined;
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
      ...(input.finishing ? [{ key: 'stage', title: 'stage', unit: '' }] : []),
      { key: 'turns', title: 'turns', unit: '', decimals: 0 },
      { key: 'divisions', title: 'divisions', unit: '', decimals: 0 },
      { key: 'depth', title: 'depth', unit: 'mm', decimals: 3 },
      { key: 'diameter', title: 'diameter after', unit: 'mm', decimals: 3 },
      { key: 'expected', title: 'expect at the softest place', unit: 'mm', decimals: 3 },
      { key: 'measured', title: 'measured', unit: 'mm', blank: true },
    ],
    rows: passes.map((p, i) => ({
      pass: i + 1,
      ...(input.finishing ? { stage: stageOf(i, passes.length) } : {}),
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
      ...(input.cone ? [coneNote(input.cone)] : []),
      ...(input.finishing ? semiFinishNotes(input, passes, give, input.finishing.grows) : []),
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

function coneNote(cone: Mm): string {
  return `The drill left a cone ${cone.toFixed(1)} mm high at the floor. Before the first pass take it off with a drill ground flat, or with a bar that reaches the middle, in light cuts along.`;
}

/** The last two passes have names; what comes before only clears what roughing left. */
function stageOf(at: number, count: number): string {
  return at === count - 1 ? 'finish' : at === count - 2 ? 'semi-finish' : '';
}

/** What to measure after the pass before the last, and what the last is then set to. */
function semiFinishNotes(
  { where, lastByTopSlide }: TurningTableInput,
  passes: readonly PlannedPass[],
  give: Mm,
  grows: Mm,
): string[] {
  const semi = passes.at(-2);
  if (!semi) return [];
  const warm = grows >= 0.001 ? ` 20 K too warm it reads ${grows.toFixed(3)} mm too large.` : '';
  const last = passes.at(-1);
  const alike = last && Math.abs(last.depth - semi.depth) < 1e-9 ? 'of the same depth' : 'nearly as deep';
  const learn = `What it reads ${where === 'outside' ? 'above' : 'below'} the set size the last pass, ${alike}, leaves too: set it deeper by half of that.`;
  return [
    `After pass ${passes.length - 1}, semi-finish, let it cool and measure: Ø${semi.diameter.toFixed(3)} mm is set, Ø${(semi.diameter + give).toFixed(3)} mm to be expected at the softest place.${warm}${lastByTopSlide ? '' : ` ${learn}`}`,
  ];
}
