/** What is known of a lathe, for a terminal: its elements, what each test taught, what to test next. */
import type { latheKnown } from '@sparewright/core/lathe/lathe-known';
import { presentNumber, presentShare } from '@sparewright/output/present/number';
import type { Terminal } from '../terminal.ts';
import { plainFinding } from './findings.ts';
import { plural } from './plural.ts';
import { paragraph } from './text.ts';
import { textTable } from './text-table.ts';

type Answer = ReturnType<typeof latheKnown.answer>;

const number = (value: number) => presentNumber(Number(value.toPrecision(3)), 'point');

export function latheLines(answer: Answer, terminal: Terminal): string[] {
  const { width, ink } = terminal;
  const heading = (text: string) => ['', ...paragraph(text, { width, ink: ink.bold })];
  const elements = answer.elements.map(({ what, unit, now, left, basis }) => [
    what,
    number(now.middle),
    `${number(now.low)} to ${number(now.high)}`,
    unit === '-' ? '' : unit,
    presentShare(left, 'point'),
    basis,
  ]);
  const next = answer.next.map(({ test, how, minutes, give, limit }) => [
    test,
    how,
    `${minutes} min`,
    presentShare(give, 'point'),
    presentShare(limit, 'point'),
  ]);
  return [
    ...paragraph(`${answer.class}; ${plural(answer.tests, 'test')} entered.`, { width }),
    ...heading('What is believed of it'),
    ...textTable(
      [
        { title: 'element', align: 'left' },
        { title: 'middle', align: 'right' },
        { title: 'nine in ten', align: 'right' },
        { title: 'unit', align: 'left' },
        { title: 'doubt left', align: 'right' },
        { title: 'rested on before tests', align: 'left' },
      ],
      elements,
      { width, indent: 2, ink: ink.dim },
    ),
    ...(answer.learnt.length === 0 ? [] : heading('What the tests taught')),
    ...answer.learnt.flatMap(({ test, what, changed }) => taught(test, what, changed, width)),
    ...(next.length === 0 ? [] : heading('Worth testing next, best first: doubt left afterwards')),
    ...(next.length === 0
      ? []
      : textTable(
          [
            { title: 'test', align: 'left' },
            { title: 'how', align: 'left' },
            { title: 'takes', align: 'right' },
            { title: 'in giving way', align: 'right' },
            { title: 'in singing', align: 'right' },
          ],
          next,
          { width, indent: 2, ink: ink.dim },
        )),
    ...(answer.findings.length === 0 ? [] : heading('Findings')),
    ...answer.findings.flatMap((f) => plainFinding({ ...f, says: `${f.at}: ${f.says}` }, terminal)),
  ];
}

function taught(test: string, what: string, changed: Answer['learnt'][number]['changed'], width: number): string[] {
  const words = changed.map((c) => {
    const unit = c.unit === '-' ? '' : ` ${c.unit}`;
    return `${c.what} from ${number(c.from.middle)} to ${number(c.to.middle)}${unit}`;
  });
  const said = words.length === 0 ? 'nothing that was not known' : words.join('; ');
  return paragraph(`${test} (${what}): ${said}`, { width, indent: 2, mark: '· ' });
}
