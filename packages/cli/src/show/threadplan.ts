/** The passes of a thread for a terminal. */
import type { threadPasses } from '@sparewright/core/route/questions-threads';
import type { reliefQuestion } from '@sparewright/core/standards/threads/questions-cutting';
import { presentNumber } from '@sparewright/output/present/number';
import type { Terminal } from '../terminal.ts';
import { paragraph } from './text.ts';
import { textTable } from './text-table.ts';

type Relief = ReturnType<typeof reliefQuestion.answer>;
type Answer = ReturnType<typeof threadPasses.answer>;

const mm = (value: number) => presentNumber(value, 'point', 3);

export function threadLines(
  answer: Answer,
  relief: Relief | undefined,
  about: { designation: string; side: 'external' | 'internal'; cutter: string | undefined; angle: number },
  { width, ink }: Terminal,
): string[] {
  const { crest, chamfer, passes, notes } = answer;
  const outside = about.side === 'external';
  const angle = Number(about.angle.toFixed(1));
  return [
    ...paragraph(`Thread ${about.designation}, ${outside ? 'outside' : 'inside'}`, { width, ink: ink.bold }),
    ...(crest
      ? paragraph(
          `${outside ? 'Turn' : 'Bore'} to Ø${mm(crest.aim)} mm first (limits ${mm(crest.min)} to ${mm(crest.max)}).`,
          { width },
        )
      : []),
    ...paragraph(
      `Chamfer both ends 45° to Ø${mm(chamfer.diameter)} mm, ${presentNumber(chamfer.length, 'point', 2)} mm along, just ${outside ? 'below' : 'past'} the root.`,
      { width },
    ),
    ...(relief ? paragraph(reliefWords(relief), { width }) : []),
    ...(about.cutter === undefined
      ? paragraph(`No ${outside ? '' : 'inside '}threading cutter of ${angle}° is entered in the workshop.`, {
          width,
          mark: '! ',
          ink: ink.yellow,
        })
      : paragraph(`Cutter on hand: ${about.cutter}.`, { width })),
    ...notes.flatMap((note, i) => paragraph(note, { width, mark: `${i + 1}. ` })),
    '',
    ...textTable(
      [
        { title: 'pass', align: 'left' },
        { title: 'turns', align: 'right' },
        { title: 'divisions', align: 'right' },
        { title: 'depth so far mm', align: 'right' },
      ],
      passes.map((p) => [p.pass, String(p.turns), String(p.divisions), mm(p.depth)]),
      { width, ink: ink.dim },
    ),
  ];
}

function reliefWords({ diameter, leastLength, greatestLength, runOut, shoulderDistance, remark }: Relief): string {
  const shoulder =
    shoulderDistance === undefined ? '' : `, last full turn at most ${mm(shoulderDistance)} mm from the shoulder`;
  return `Relief: Ø${mm(diameter)} mm, ${mm(leastLength)} mm wide at its floor, ${mm(greatestLength)} mm over all at most. Without one: run-out at most ${mm(runOut)} mm${shoulder}${remark === undefined ? '' : ` (${remark})`}.`;
}
