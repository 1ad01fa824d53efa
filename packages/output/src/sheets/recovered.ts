/** What the part was meant to be, by its readings: likeliest designs, size as made, limits to make it to, what to measure next. */
import type { RecoveredSize, RecoverResult } from '@sparewright/core/recover/recover-result';
import { presentLimits } from '../present/length.ts';
import { presentShare } from '../present/number.ts';
import { presentProse } from '../present/prose.ts';
import type { PresentSettings } from '../present/settings.ts';
import { type Block, capital, heading, type TableBlock, words } from './blocks.ts';
import type { PacketContext } from './context.ts';

/** Designs less likely than this are left out, and more than three are never shown. */
const leastShown = 0.05;
const mostDesigns = 3;
/** Readings worth taking that are named. */
const mostNext = 3;

export function recoveredBlocks({ recovered, settings }: PacketContext): Block[] {
  if (!recovered || recovered.sizes.length + recovered.threads.length === 0) return [];
  return [
    heading('What it was meant to be'),
    words(legend, 'pencil'),
    designTable(recovered, settings),
    ...nextReadings(recovered, settings),
  ];
}

const legend =
  'Reckoned from all readings together, with the wear unknown: how likely each design is, and between which sizes the original was made with 95 %. How common sizes and limits are is workshop judgement.';

function designTable({ sizes, threads }: RecoverResult, settings: PresentSettings): TableBlock {
  return {
    kind: 'table',
    size: 'desk',
    columns: [
      { title: 'size', align: 'left', wide: true },
      { title: 'designed as', align: 'left', wide: true },
      { title: 'as made, 95 %', unit: settings.units, align: 'right' },
      { title: 'make the new one', unit: settings.units, align: 'right' },
    ],
    rows: [
      ...sizes.map((size) => [
        capital(size.title),
        ranked(
          size.designs.map((d) => ({ name: d.written, probability: d.probability })),
          settings,
        ),
        asMade(size, settings),
        size.limits[0] ? presentLimits(size.limits[0], settings) : '–',
      ]),
      ...threads.map((thread) => [
        `Thread ${thread.of.replaceAll('-', ' ')}`,
        ranked(
          thread.designs.map((d) => ({ name: d.designation, probability: d.probability })),
          settings,
        ),
        '–',
        '–',
      ]),
    ],
  };
}

function ranked(
  designs: readonly { readonly name: string; readonly probability: number }[],
  { decimalSign }: PresentSettings,
): string {
  return designs
    .filter((d, i) => i === 0 || d.probability >= leastShown)
    .slice(0, mostDesigns)
    .map((d) => `${d.name} ${presentShare(d.probability, decimalSign)}`)
    .join(', ');
}

/** Of several specimens the one known best. */
function asMade({ made }: RecoveredSize, settings: PresentSettings): string {
  const best = made.toSorted((a, b) => a.wide.high - a.wide.low - (b.wide.high - b.wide.low))[0];
  return best ? presentLimits({ max: best.wide.high, min: best.wide.low }, settings) : '–';
}

function nextReadings({ next }: RecoverResult, settings: PresentSettings): Block[] {
  if (next.length === 0) return [];
  const items = next.slice(0, mostNext).map((n) => presentProse(n.says, settings));
  return [heading('Worth measuring next'), { kind: 'list', mark: 'dash', items }];
}
