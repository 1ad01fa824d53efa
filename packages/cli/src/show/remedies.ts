/** What would help one cut, for a terminal. */
import type { remediesOnLathe } from '@sparewright/core/lathe/what-would-help';
import type { LengthUnit } from '@sparewright/core/units/length';
import { presentSize } from '@sparewright/output/present/length';
import { presentShare } from '@sparewright/output/present/number';
import type { Terminal } from '../terminal.ts';
import { paragraph } from './text.ts';
import { textTable } from './text-table.ts';

type Answer = ReturnType<typeof remediesOnLathe.answer>;

/** Remedies shown. */
const most = 8;

export function remedyLines({ asItStands, remedies }: Answer, units: LengthUnit, terminal: Terminal): string[] {
  const { width, ink } = terminal;
  const settings = { units, decimalSign: 'point' } as const;
  const deep = (mm: number) => (mm === 0 ? 'none' : presentSize(mm, settings, units === 'in' ? 4 : 2));
  const size = (mm: number) => presentSize(mm, settings, units === 'in' ? 4 : 3);
  const row = (name: string, effort: string, o: Answer['asItStands']) => [
    name,
    effort,
    deep(o.safeDepth),
    presentShare(o.chatter, 'point'),
    size(o.sizeError),
  ];
  const shown = remedies.filter((r) => r.gain > 0).slice(0, most);
  return [
    '',
    ...paragraph('What would help, best first', { width, ink: ink.bold }),
    ...textTable(
      [
        { title: 'remedy', align: 'left' },
        { title: 'effort', align: 'left' },
        { title: 'good to', align: 'right' },
        { title: 'sings', align: 'right' },
        { title: 'left on', align: 'right' },
      ],
      [row('as it stands', '', asItStands), ...shown.map((r) => row(r.name, r.effort, r))],
      { width, indent: 2, ink: ink.dim },
    ),
    ...shown.flatMap((r) =>
      r.assumes === undefined
        ? []
        : paragraph(`${r.name}: ${r.assumes}`, { width, indent: 2, mark: '· ', ink: ink.dim }),
    ),
  ];
}
