/** What the part was meant to be, by its readings: likeliest designs, size as made, limits to make it to, what to measure next. */

import type { Scene } from '@sparewright/core/drawing/scene';
import type { RecoveredSize, RecoverResult } from '@sparewright/core/recover/recover-result';
import { drawNumberLine } from '../chart/number-line.ts';
import { presentLimits } from '../present/length.ts';
import { presentShare } from '../present/number.ts';
import { presentProse } from '../present/prose.ts';
import type { PresentSettings } from '../present/settings.ts';
import { lineOf } from '../present/size-line.ts';
import { type Block, capital, heading, type TableBlock, words } from './blocks.ts';
import type { PacketContext } from './context.ts';

/** Designs less likely than this are left out, and more than three are never shown. */
const leastShown = 0.05;
const mostDesigns = 3;
/** Readings worth taking that are named. */
const mostNext = 3;

/** Takes a picture for a sheet of paper. */
export type PutPicture = (file: string, scene: Scene) => void;

/** @param put  takes the number lines; left out where they are shown in another way */
export function recoveredBlocks(context: PacketContext, put: PutPicture | undefined): Block[] {
  const { recovered, settings } = context;
  if (!recovered || recovered.sizes.length + recovered.threads.length === 0) return [];
  return [
    heading('What it was meant to be'),
    words(legend, 'pencil'),
    designTable(recovered, settings),
    ...(put ? numberLines(recovered, context, put) : []),
    ...nextReadings(recovered, settings),
  ];
}

/** One reading alone needs no picture. */
const fewest = 2;

function numberLines({ sizes }: RecoverResult, context: PacketContext, put: PutPicture): Block[] {
  const readings = (of: string) => context.assessment.evidence.gathered.find((g) => g.of === of)?.readings.length ?? 0;
  const drawn = sizes.filter((size) => readings(size.of) >= fewest);
  if (drawn.length === 0) return [];
  return [
    words(lineLegend, 'pencil'),
    ...drawn.flatMap((size, i): Block[] => {
      const file = `number-line-${i + 1}.svg`;
      const line = lineOf(size, size.title, context);
      const scene = drawNumberLine(line, { ...context.settings, width: lineWidth });
      put(file, scene);
      return [
        heading(capital(size.title)),
        { kind: 'picture', file, describes: line.description, height: scene.height },
      ];
    }),
  ];
}

const lineWidth = 120;
const lineLegend =
  'Below, in ink, the readings with their expanded uncertainty; in pencil over them the size as made with the 50 % (box) and 95 % (line) interval, the limits of the likeliest designs, and as uprights their nominal sizes.';

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
