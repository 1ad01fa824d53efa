/** How deep a cut may go at each speed, for a terminal. */
import type { CutChances } from '@sparewright/core/lathe/chance-at-speeds';
import type { depthAtSpeeds } from '@sparewright/core/lathe/depth-question';
import type { LengthUnit } from '@sparewright/core/units/length';
import type { MarkedCut } from '@sparewright/output/chart/depth-chart';
import { presentSize } from '@sparewright/output/present/length';
import { presentShare } from '@sparewright/output/present/number';
import type { Terminal } from '../terminal.ts';
import type { AskedInWords } from './cut.ts';
import { paragraph } from './text.ts';
import { textTable } from './text-table.ts';

type Answer = ReturnType<typeof depthAtSpeeds.answer>;

export function lobeLines(
  { speeds, thinnest, deepest }: Answer,
  asked: AskedInWords,
  marks: readonly MarkedCut[],
  file: string,
  units: LengthUnit,
  terminal: Terminal,
): string[] {
  const { width, ink } = terminal;
  const settings = { units, decimalSign: 'point' } as const;
  const size = (mm: number) => presentSize(Number(mm.toPrecision(2)), settings, units === 'in' ? 4 : 2);
  const upTo = (mm: number) => (mm >= deepest ? `over ${size(deepest)}` : mm <= shallowest ? 'at once' : size(mm));
  const rows = speeds.map(({ speed, sings, power }) => [
    `${speed}`,
    upTo(sings.good),
    upTo(sings.even),
    upTo(sings.bad),
    upTo(power),
  ]);
  return [
    ...paragraph('How deep before it sings, at each speed of this lathe', { width, ink: ink.bold }),
    ...paragraph(`${asked.work}; ${asked.held}; ${asked.cutter}.`, { width, ink: ink.dim }),
    '',
    ...textTable(
      [
        { title: 'rpm', align: 'right' },
        { title: 'may begin', align: 'right' },
        { title: 'as likely as not', align: 'right' },
        { title: 'mostly sings', align: 'right' },
        { title: 'motor at its end', align: 'right' },
      ],
      rows,
      { width, indent: 2, ink: ink.dim },
    ),
    '',
    ...paragraph(
      thinnest === null
        ? 'At this feed the chip rubs at every depth looked at: feed more.'
        : `Below ${size(thinnest)} the chip may rub at this feed.`,
      { width, indent: 2, mark: '· ' },
    ),
    ...marks.flatMap((m) => paragraph(`Marked: ${size(m.depth)} at ${m.speed} rpm.`, { width, indent: 2, mark: '· ' })),
    ...paragraph(`Wrote ${file}`, { width }),
  ];
}

/** The lightest cut looked at [mm]. */
const shallowest = 0.0101;

/** The cuts of a job, likeliest to sing first, with the speed at which each is quietest. */
export function jobLobeLines(cuts: readonly CutChances[], name: (id: string) => string, terminal: Terminal): string[] {
  const { width, ink } = terminal;
  const rows = cuts
    .toSorted((a, b) => b.own.chance - a.own.chance)
    .map(({ id, own, speeds }) => {
      const best = speeds.reduce((a, b) => (b.chance < a.chance ? b : a));
      return [
        name(id),
        `${own.speed}`,
        presentShare(own.chance, 'point'),
        `${best.speed}`,
        presentShare(best.chance, 'point'),
      ];
    });
  return [
    ...paragraph('Which cuts of the job may sing, likeliest first', { width, ink: ink.bold }),
    '',
    ...textTable(
      [
        { title: 'cut', align: 'left' },
        { title: 'rpm', align: 'right' },
        { title: 'sings', align: 'right' },
        { title: 'quietest at', align: 'right' },
        { title: 'sings', align: 'right' },
      ],
      rows,
      { width, indent: 2, ink: ink.dim },
    ),
    '',
  ];
}
