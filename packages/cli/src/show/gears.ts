/** Change gears for a terminal: the best train and the next best, with what they are off. */
import type { gearQuestions } from '@sparewright/core/route/questions-gears';
import { presentNumber } from '@sparewright/output/present/number';
import type { Terminal } from '../terminal.ts';
import { paragraph } from './text.ts';
import { textTable } from './text-table.ts';

type Answer = ReturnType<(typeof gearQuestions)[0]['answer']>;
type Train = Answer['best'];

const number = (value: number, places: number) => presentNumber(value, 'point', places);

export function gearLines({ best, others, setUp, halfNutsSay }: Answer, { width, ink }: Terminal): string[] {
  return [
    '',
    ...paragraph('Change gears', { width, ink: ink.bold }),
    ...paragraph(setUp, { width, mark: '· ' }),
    ...paragraph(halfNutsSay, { width, mark: '· ' }),
    '',
    ...textTable(
      [
        { title: 'driving : driven', align: 'left' },
        { title: 'gives mm', align: 'right' },
        { title: 'off by, in a million', align: 'right' },
        { title: 'over the engaged length mm', align: 'right' },
      ],
      [best, ...others].map((t) => [
        trainWords(t),
        number(t.pitch, 5),
        t.errorPpm === 0 ? 'exact' : number(t.errorPpm, 1),
        number(t.drift, 4),
      ]),
      { width, ink: ink.dim },
    ),
  ];
}

function trainWords({ drivers, driven }: Train): string {
  return drivers.map((d, i) => `${d} : ${driven[i]}`).join(' × ');
}
