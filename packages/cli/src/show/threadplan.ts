/** The passes of a thread for a terminal. */
import type { threadPasses } from '@sparewright/core/route/questions';
import { presentNumber } from '@sparewright/output/present/number';
import type { Terminal } from '../terminal.ts';
import { paragraph } from './text.ts';
import { textTable } from './text-table.ts';

type Answer = ReturnType<typeof threadPasses.answer>;

const mm = (value: number) => presentNumber(value, 'point', 3);

export function threadLines(
  answer: Answer,
  about: { designation: string; side: 'external' | 'internal'; cutter: string | undefined; angle: number },
  { width, ink }: Terminal,
): string[] {
  const { crest, passes, notes } = answer;
  const outside = about.side === 'external';
  const angle = Number(about.angle.toFixed(1));
  return [
    ...paragraph(`Thread ${about.designation}, ${outside ? 'outside' : 'inside'}`, { width, ink: ink.bold }),
    ...(crest
      ? paragraph(
          `${outside ? 'Turn' : 'Bore'} to Ø${mm(crest.aim)} mm first (limits ${mm(crest.min)} to ${mm(crest.max)}), chamfer both ends below the root.`,
          { width },
        )
      : []),
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
