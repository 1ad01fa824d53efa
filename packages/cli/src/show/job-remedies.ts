/** What would help a job on a lathe, for a terminal. */
import type { JobRemedies } from '@sparewright/core/lathe/job-remedies';
import { presentNumber } from '@sparewright/output/present/number';
import type { Terminal } from '../terminal.ts';
import { paragraph } from './text.ts';
import { textTable } from './text-table.ts';

/** Remedies and cuts shown. */
const most = 8;
const states = { good: 'goes', marginal: 'marginal', bad: 'not as it stands' } as const;

function decides({ criterion, what }: JobRemedies['asItStands'][number]['outcome']['decides']): string {
  return criterion === 'rubbing' ? 'chip thin for the edge' : what;
}

/** @param name  number and title of an operation */
export function jobRemedyLines(
  { asItStands, remedies }: JobRemedies,
  name: (id: string) => string,
  terminal: Terminal,
): string[] {
  const { width, ink } = terminal;
  const heading = (text: string) => ['', ...paragraph(text, { width, ink: ink.bold })];
  const gain = (value: number) => presentNumber(Number(value.toFixed(1)), 'point');
  const cuts = asItStands
    .slice(0, most)
    .map(({ id, outcome }) => [name(id), states[outcome.decides.state], decides(outcome.decides)]);
  const rows = remedies
    .filter((r) => r.sumGain > 0)
    .slice(0, most)
    .map((r) => [
      r.name,
      r.effort,
      gain(r.worstGain),
      gain(r.sumGain),
      r.settles.map((id) => name(id).split(' ')[0] ?? id).join(', '),
    ]);
  const assumed = remedies.slice(0, most).flatMap((r) => (r.assumes === undefined ? [] : [`${r.name}: ${r.assumes}`]));
  return [
    ...heading('Its cuts, worst first'),
    ...textTable(
      [
        { title: 'cut', align: 'left' },
        { title: 'stands', align: 'left' },
        { title: 'what decides', align: 'left' },
      ],
      cuts,
      { width, indent: 2, ink: ink.dim },
    ),
    ...heading('What would help, best first'),
    ...(rows.length === 0
      ? paragraph('Nothing that is tried here.', { width, indent: 2 })
      : textTable(
          [
            { title: 'remedy', align: 'left' },
            { title: 'effort', align: 'left' },
            { title: 'worst cut', align: 'right' },
            { title: 'all cuts', align: 'right' },
            { title: 'settles', align: 'left' },
          ],
          rows,
          { width, indent: 2, ink: ink.dim },
        )),
    ...paragraph('Gain counts room before it sings, size, depth and time as logarithms: 0.7 is twice as good.', {
      width,
      indent: 2,
      ink: ink.dim,
    }),
    ...(assumed.length === 0 ? [] : heading('Taken for granted')),
    ...assumed.flatMap((text) => paragraph(text, { width, indent: 2, mark: '· ' })),
  ];
}
