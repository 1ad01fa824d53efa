/** Stock, setups, operations and time for a terminal. */
import type { Job } from '@sparewright/core/job/schema';
import type { Operation, RouteResult, Setup, Stock } from '@sparewright/core/route/route-result';
import { presentSize } from '@sparewright/output/present/length';
import { presentNumber } from '@sparewright/output/present/number';
import { presentProse } from '@sparewright/output/present/prose';
import { presentFigure, shownUnit } from '@sparewright/output/present/quantity';
import { type PresentSettings, presentSettings } from '@sparewright/output/present/settings';
import { learnedWords, presentTime, presentTimes } from '@sparewright/output/present/time';
import type { Terminal } from '../terminal.ts';
import { paragraph } from './text.ts';
import { textTable } from './text-table.ts';

export function stockWords(stock: Stock, job: Job): string {
  const settings = presentSettings(job);
  const mass = stock.mass === undefined ? '' : `, ${presentNumber(stock.mass, settings.decimalSign)} kg`;
  const from = stock.from === 'rack' ? `on the rack${stock.bar === undefined ? '' : ` (${stock.bar})`}` : 'to buy';
  const made = stock.made.map((m) => `${m.what} ${presentSize(m.length, settings, settings.units === 'in' ? 3 : 1)}`);
  return `Ø${presentSize(stock.diameter, settings)} × ${presentSize(stock.length, settings)} of ${stock.material}, ${from}${mass}. Length: ${made.join(', ')}.`;
}

/** Each setup with its operations; the cautions stand beneath the operation they belong to. */
export function routeLines(route: RouteResult, job: Job, terminal: Terminal): string[] {
  const settings = presentSettings(job);
  return route.setups.flatMap((setup) => [
    ...setupLines(setup, settings, terminal),
    ...operationLines(
      route.operations.filter((o) => o.setup === setup.id),
      settings,
      terminal,
    ),
    '',
  ]);
}

export function timeWords(route: RouteResult): string {
  const learned = route.learnedFrom > 0 ? `; ${learnedWords(route.learnedFrom)} timed before` : '';
  return `${presentTimes(route.time)} at the lathe, setting up included${learned}`;
}

function setupLines(setup: Setup, settings: PresentSettings, { width, ink }: Terminal): string[] {
  const { grip } = setup;
  const over = `Ø${presentSize(grip.diameter, settings)} over ${presentSize(grip.length, settings)}`;
  const out = presentSize(setup.out, settings);
  const how = {
    'in the chuck': [`grips ${over}`, `${out} out of the jaws`],
    'on a mandrel': [`mandrel in ${over}`, `${out} out of the jaws`],
    'between centres': [`dog on ${over}`, `${out} between centres`],
  } as const;
  const held = [
    setup.chuck,
    ...how[setup.held],
    ...(setup.tailstock ? ['tailstock up'] : []),
    ...(setup.dialIn === undefined ? [] : [`dial in to ${presentSize(setup.dialIn, settings)} total`]),
  ];
  return [
    ...paragraph(`Setup ${setup.number}: ${presentProse(setup.title, settings)}`, { width, ink: ink.bold }),
    ...paragraph(held.join('; '), { width, indent: 2 }),
    ...setup.cautions.flatMap((c) => cautionLines(presentProse(c, settings), { width, ink })),
  ];
}

function operationLines(operations: readonly Operation[], settings: PresentSettings, terminal: Terminal): string[] {
  const { width, ink } = terminal;
  const unit = (name: string) => shownUnit(name, settings);
  const table = textTable(
    [
      { title: 'op', align: 'right' },
      { title: 'operation', align: 'left' },
      { title: 'cutter', align: 'left' },
      { title: 'rpm', align: 'right' },
      { title: `feed ${unit('mm/rev')}`, align: 'right' },
      { title: `depth ${unit('mm')}`, align: 'right' },
      { title: 'passes', align: 'right' },
      { title: `bends ${unit('mm')}`, align: 'right' },
      { title: 'time', align: 'right' },
    ],
    operations.map((o) => [
      String(o.number),
      presentProse(o.title, settings),
      o.cutter ?? '',
      ...cutCells(o, settings),
      presentTime(o.time.likely),
    ]),
    { width, indent: 2, ink: ink.dim },
  );
  const byHand = operations.some((o) => o.cut?.byHand) ? paragraph(fedByHand, { width, indent: 2, ink: ink.dim }) : [];
  return [...table, ...byHand, ...operationCautions(operations, settings, terminal)];
}

const fedByHand = '* fed by hand: what to aim for';

/** Each caution once, before it the operations it belongs to. */
function operationCautions(operations: readonly Operation[], settings: PresentSettings, terminal: Terminal): string[] {
  const said = [...new Set(operations.flatMap((o) => o.cautions))];
  return said.flatMap((caution) => {
    const numbers = operations.filter((o) => o.cautions.includes(caution)).map((o) => o.number);
    const place = numbers.length === 1 ? `op ${numbers[0]}` : `ops ${numbers.join(', ')}`;
    return cautionLines(`${place}: ${presentProse(caution, settings)}`, terminal);
  });
}

function cutCells({ cut }: Operation, settings: PresentSettings): string[] {
  if (!cut) return ['', '', '', '', ''];
  return [
    presentNumber(cut.speed, settings.decimalSign, 0),
    `${presentFigure(cut.feed, 'mm/rev', settings)}${cut.byHand ? '*' : ''}`,
    presentFigure(cut.depth, 'mm', settings, settings.units === 'in' ? 4 : 2),
    String(cut.passes),
    presentFigure(cut.bending, 'mm', settings, settings.units === 'in' ? 4 : 3),
  ];
}

function cautionLines(text: string, { width, ink }: Pick<Terminal, 'width' | 'ink'>): string[] {
  return paragraph(text, { width, indent: 2, mark: '! ', ink: ink.yellow });
}
