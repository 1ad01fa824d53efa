/** Steps of a curve for a terminal. */
import type { curveStepsQuestion } from '@sparewright/core/route/questions-curves';
import { presentNumber } from '@sparewright/output/present/number';
import type { Terminal } from '../terminal.ts';
import { paragraph } from './text.ts';
import { type TextColumn, textTable } from './text-table.ts';

/** What was asked, as far as it is shown. */
export interface StepsAsked {
  readonly sphere?: string;
  readonly ellipse?: string;
  readonly cone?: string;
  readonly hollow?: true;
  readonly nose?: string;
  readonly turn?: string;
  readonly workshop?: string;
  readonly turning?: true;
  readonly chamfers?: true;
}

export interface TwoDials {
  readonly along: AskedDial;
  readonly across: AskedDial;
}

interface AskedDial {
  readonly division: number | string;
  readonly perTurn: number | string;
  readonly reads: 'radius' | 'diameter' | 'travel';
}

type Answer = ReturnType<typeof curveStepsQuestion.answer>;
type Step = Answer['steps'][number];

const mm = (value: number, places = 2) => presentNumber(value, 'point', places);

interface Shown extends TextColumn {
  readonly of: (step: Step) => string;
}

export function stepLines(
  answer: Answer,
  options: StepsAsked,
  dials: TwoDials | undefined,
  { width, ink }: Terminal,
): string[] {
  const turning = options.turning ?? false;
  const counted = options.turn === undefined && options.workshop === undefined;
  const columns: readonly Shown[] = [
    { title: 'step', align: 'right', of: (s) => String(s.step) },
    ...(dials ? dialColumns('along', counted) : []),
    ...(dials ? dialColumns('across', counted) : []),
    { title: 'from the end mm', align: 'right', of: (s) => mm(s.depth) },
    { title: 'to diameter mm', align: 'right', of: (s) => mm(2 * s.radius) },
    { title: 'left to file mm', align: 'right', of: (s) => mm(s.corner) },
    ...(options.chamfers ? chamferColumns : []),
  ];
  return [
    ...paragraph(`${shapeWords(options)} in ${answer.steps.length} ${turning ? 'cuts along' : 'facing cuts'}`, {
      width,
      ink: ink.bold,
    }),
    ...paragraph(
      `Ø${mm(answer.footDiameter)} mm over ${mm(answer.depth, 3)} mm; the highest corner left is ${mm(answer.largestCorner, 3)} mm${answer.afterChamfers === undefined ? '' : `, ${mm(answer.afterChamfers, 3)} mm after the chamfer cuts`}.`,
      { width },
    ),
    ...notes(options, dials).flatMap((note, i) => paragraph(note, { width, mark: `${i + 1}. ` })),
    '',
    ...textTable(
      columns,
      answer.steps.map((s) => columns.map((c) => c.of(s))),
      { width, ink: ink.dim },
    ),
  ];
}

function dialColumns(slide: 'along' | 'across', counted: boolean): Shown[] {
  const setting = (s: Step) => s[slide];
  const divisions = { align: 'right', of: (s: Step) => String(setting(s)?.divisions ?? '') } as const;
  if (counted) return [{ title: `${slide}: divisions`, ...divisions }];
  return [
    { title: `${slide}: turns`, align: 'right', of: (s) => String(setting(s)?.turns ?? '') },
    { title: 'divisions', ...divisions },
  ];
}

const chamferColumns: readonly Shown[] = [
  { title: 'top slide °', align: 'right', of: (s) => String(s.chamfer?.angle ?? '') },
  { title: 'in from corner mm', align: 'right', of: (s) => (s.chamfer ? mm(s.chamfer.infeed) : '') },
  { title: 'by', align: 'left', of: (s) => s.chamfer?.by ?? '' },
  { title: 'then left mm', align: 'right', of: (s) => (s.chamfer ? mm(s.chamfer.left, 3) : '') },
];

function shapeWords({ sphere, ellipse, cone, hollow }: StepsAsked): string {
  const shape =
    sphere === undefined
      ? ellipse === undefined
        ? `Cone ${cone}`
        : `Ellipse of half axes ${ellipse}`
      : `Sphere of radius ${sphere}`;
  return hollow ? `${shape}, hollowed in,` : shape;
}

function notes({ nose, hollow, turning }: StepsAsked, dials: TwoDials | undefined): string[] {
  const fed = turning
    ? 'Each cut: set across, feed along to the stop, never past it.'
    : `Each cut: set along, feed ${hollow ? 'outward' : 'inward'} to the stop, never past it.`;
  return [
    `Nose radius of the cutter: ${nose ?? '0'} mm. With another cutter ask again: the stops change.`,
    ...(dials
      ? [
          `Nought along with the cutter touching the end; across ${hollow ? 'with the tip at the axis' : 'with the tip at the foot diameter'}.`,
        ]
      : []),
    `${fed} Blue the steps and file until the blue in the inner corners is just gone; a handle on the file, sleeves and arms clear of the chuck.`,
  ];
}
