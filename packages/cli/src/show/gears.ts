/** Change gears for a terminal: the best train and the next best, with what they are off. */
import type { gearQuestions } from '@sparewright/core/route/questions-gears';
import { presentNumber } from '@sparewright/output/present/number';
import type { Terminal } from '../terminal.ts';
import { plainFinding } from './findings.ts';
import { paragraph } from './text.ts';
import { textTable } from './text-table.ts';

type Answer = ReturnType<(typeof gearQuestions)[0]['answer']>;
type Train = Answer['best'];

const number = (value: number, places: number) => presentNumber(value, 'point', places);

export function gearLines(answer: Answer, terminal: Terminal): string[] {
  const { best, others, setUp, halfNutsSay, findings } = answer;
  const { width, ink } = terminal;
  const stopped = gearsStop(answer);
  return [
    '',
    ...paragraph(stopped ? 'Change gears: not good enough' : 'Change gears', { width, ink: ink.bold }),
    ...paragraph(setUp, { width, mark: '· ' }),
    ...(stopped ? [] : paragraph(halfNutsSay, { width, mark: '· ' })),
    ...findings.flatMap((f) => plainFinding(f, terminal)),
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

/** The wheels on hand do not give the pitch. */
export function gearsStop({ findings }: Pick<Answer, 'findings'>): boolean {
  return findings.some((f) => f.level === 'stop');
}

function trainWords({ drivers, driven }: Train): string {
  return drivers.map((d, i) => `${d} : ${driven[i]}`).join(' × ');
}
