/** What to buy, cut and lay out before starting. */
import type { Stock } from '@sparewright/core/route/route-result';
import { presentSize } from '../present/length.ts';
import { presentNumber } from '../present/number.ts';
import { presentProse } from '../present/prose.ts';
import { learnedWords, presentTimes } from '../present/time.ts';
import { type Block, lacking, type Sheet, section, words } from './blocks.ts';
import type { PacketContext } from './context.ts';

export function stockSheet(context: PacketContext): Sheet {
  const { route } = context.assessment;
  if (!route && !context.job.duty) return lacking('What to buy, cut and lay out', noRoute(context));
  const rings = (context.job.duty?.seals ?? []).map((s) =>
    [s.ring, s.elastomer, `${presentNumber(s.hardness, context.settings.decimalSign)} Shore A`]
      .filter(Boolean)
      .join(', '),
  );
  const bonds = (context.job.duty?.bonds ?? []).map(
    (b) =>
      `Retaining compound of at least ${presentNumber(b.strength, context.settings.decimalSign)} MPa shear strength (ISO 10123), for ${b.feature.replaceAll('-', ' ')}`,
  );
  const bought = [...(route?.stock?.from === 'to buy' ? [stockWords(route.stock, context)] : []), ...rings, ...bonds];
  return {
    kind: 'text',
    heading: 'What to buy, cut and lay out',
    blocks: [
      ...section('Stock', route?.stock ? stockBlocks(route.stock, context) : [], noRoute(context)),
      ...section('To buy', bought.length > 0 ? [ticks(bought)] : [], 'Nothing that is entered has to be bought.'),
      ...section(
        'To lay out',
        route && route.needed.length > 0 ? [ticks(layOut(route.needed, context))] : [],
        noRoute(context),
      ),
      ...(route
        ? [
            words(
              `Time at the lathe, setting up included: ${presentTimes(route.time)}${route.learnedFrom > 0 ? `; ${learnedWords(route.learnedFrom)} timed before` : ''}.`,
            ),
          ]
        : []),
    ],
  };
}

const ticks = (items: readonly string[]): Block => ({ kind: 'list', items, mark: 'tick' });

/** Why there is no route, in a sentence. */
export function noRoute({ assessment, workshop }: PacketContext): string {
  if (!assessment.part) return 'No part is entered yet, so there is nothing to plan.';
  if (!workshop) return 'No workshop is entered yet: without a lathe and cutters no route can be planned.';
  return 'No route is planned: the findings on the first sheet say why.';
}

/** What the owner named stands as he named it; the rest speaks the job's unit. */
function layOut(needed: readonly string[], { workshop, settings }: PacketContext): string[] {
  const named = new Set([...(workshop?.cutters ?? []), ...(workshop?.lathe.chucks ?? [])].map((thing) => thing.name));
  return needed.map((thing) => (named.has(thing) ? thing : presentProse(thing, settings)));
}

function stockWords(stock: Stock, { settings }: PacketContext): string {
  return `Bar Ø${presentSize(stock.diameter, settings)}, ${stock.material}, at least ${presentSize(stock.length, settings)} long`;
}

function stockBlocks(stock: Stock, { settings }: PacketContext): Block[] {
  const { units } = settings;
  return [
    {
      kind: 'facts',
      columns: 2,
      rows: [
        { what: 'Material', is: stock.material },
        { what: 'Diameter', is: presentSize(stock.diameter, settings) },
        { what: 'Cut off', is: presentSize(stock.length, settings) },
        {
          what: 'From',
          is: stock.from === 'rack' ? `the rack${stock.bar === undefined ? '' : ` (${stock.bar})`}` : 'to buy',
        },
        ...(stock.mass === undefined
          ? []
          : [{ what: 'Mass', is: `${presentNumber(stock.mass, settings.decimalSign)} kg` }]),
      ],
    },
    {
      kind: 'table',
      size: 'desk',
      columns: [
        { title: 'what the length is made of', align: 'left' },
        { title: 'length', unit: units, align: 'right' },
      ],
      rows: [...stock.made, { what: 'together', length: stock.length }].map((m) => [
        m.what,
        presentSize(m.length, settings, units === 'in' ? 3 : 1).replace(` ${units}`, ''),
      ]),
    },
  ];
}
