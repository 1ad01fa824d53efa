/**
 * Where to stop cutting a close size, what to leave for abrasive paper, and the chance of ending within the limits.
 */
import type { Worked } from '../duty/duty-result.ts';
import type { Finding } from '../finding.ts';
import type { Workshop } from '../lathe/schema.ts';
import { normalCdf } from '../numerics/normal.ts';
import type { PartResult } from '../part/part-result.ts';
import { lastCutAim, lastCutSpread, paperWork } from '../route/last-cut.ts';
import { closeBand } from '../route/practice.ts';
import type { Operation, RouteResult } from '../route/route-result.ts';
import type { Mm } from '../units/quantities.ts';
import type { BenchResult, StopPoint } from './bench-result.ts';

/** Stop points for every close diameter that the route finishes. */
export function stopPoints(part: PartResult, route: RouteResult, workshop: Workshop): BenchResult {
  const turned = route.operations.filter((o) => o.kind === 'finish turn' || o.kind === 'bore');
  // A bore that was opened first comes to size with its last operation.
  const finishing = turned.filter((o, i) => !turned.slice(i + 1).some((later) => later.features[0] === o.features[0]));
  const points = finishing.flatMap((operation) => pointFor(part, route, workshop, operation));
  return { stopPoints: points, findings: points.flatMap(findingsOf) };
}

function pointFor(part: PartResult, route: RouteResult, workshop: Workshop, operation: Operation): StopPoint[] {
  const feature = operation.features[0];
  const dimension = part.dimensions.find((d) => d.id === `${feature}.diameter`);
  const threaded = part.threads.some((t) => t.on === feature);
  // Where no limits are stated there is nothing to stop for.
  if (!dimension || threaded || dimension.max <= dimension.min || dimension.max - dimension.min > closeBand) return [];
  const outside = dimension.kind === 'outside diameter';
  const polished = route.operations.some((o) => o.kind === 'polish' && o.features.includes(feature ?? ''));
  const papered = polished && outside;
  const spread = lastCutSpread(workshop, dimension.nominal, outside);
  const stopAt = lastCutAim(dimension, papered, spread);
  const low = dimension.min + paperWork;
  // With paper to follow the size may stay above the upper limit: the paper brings it down. Without, both limits count.
  const chance = papered
    ? 1 - normalCdf((low - stopAt) / spread)
    : normalCdf((dimension.max - stopAt) / spread) - normalCdf((dimension.min - stopAt) / spread);
  return [
    {
      dimension: dimension.id,
      operation: operation.id,
      max: dimension.max,
      min: dimension.min,
      stopAt,
      leave: !papered ? 0 : stopAt - (dimension.max + dimension.min) / 2,
      finishRa: part.outside.find((s) => s.feature.id === feature)?.feature.finish,
      chance,
      worked: workedChance({ ...dimension, stopAt, spread, papered }),
      steps: steps(dimension, stopAt, papered, outside),
    },
  ];
}

interface LastCut {
  readonly min: Mm;
  readonly max: Mm;
  readonly stopAt: Mm;
  readonly spread: Mm;
  readonly papered: boolean;
}

function workedChance({ min, max, stopAt, spread, papered }: LastCut): Worked {
  const mm = (what: string, value: Mm) => ({ what, value, unit: 'mm' });
  const aim = [mm('a, aim', stopAt), mm('s, how a last cut scatters', spread)];
  return papered
    ? {
        source: 'common-practice',
        formula: 'chance = 1 − Φ((least + p − a) / s)',
        put: [mm('least', min), mm('p, what paper needs to clean up', paperWork), ...aim],
      }
    : {
        source: 'common-practice',
        formula: 'chance = Φ((most − a) / s) − Φ((least − a) / s)',
        put: [mm('most', max), mm('least', min), ...aim],
      };
}

function steps(dimension: { max: Mm; min: Mm }, stopAt: Mm, polished: boolean, outside: boolean): string[] {
  const size = (value: Mm) => `Ø${value.toFixed(3)} mm`;
  const dialled = [
    'Let the work cool to the warmth of the hand, stop, wipe, measure at both ends and the middle.',
    `Dial the last cut for ${size(stopAt)}, with the depth and feed of the cut before it.`,
  ];
  if (!polished)
    return [
      ...dialled,
      `Stop between ${size(dimension.min)} and ${size(dimension.max)}${outside ? '' : '; a bore that is small can still be opened, one that is large cannot be closed'}.`,
    ];
  return [
    ...dialled,
    `Leave it at about ${size(stopAt)}: the paper takes off the last ${(1000 * (stopAt - (dimension.max + dimension.min) / 2)).toFixed(0)} µm, tool marks and all.`,
    'Paper from 240 to 600 with oil, a few strokes, wipe, cool, measure; go on finer as the limit comes near.',
    `Stop at once below ${size(dimension.max)}; below ${size(dimension.min)} it is spoiled.`,
  ];
}

function findingsOf(point: StopPoint): Finding[] {
  if (point.chance >= 0.9) return [];
  return [
    {
      id: 'bench.chancy-size',
      level: 'caution',
      stage: 'bench',
      at: point.dimension,
      says: 'With this dial and gauge the last cut may well miss the limits.',
      because: [
        { what: 'chance of ending within the limits', value: point.chance, unit: '', limit: 0.9 },
        { what: 'width of the limits', value: point.max - point.min, unit: 'mm' },
      ],
      remedies: [
        'Stop above the upper limit and bring it down with abrasive paper, measuring often',
        'Set the top slide over by 5.7°: one division of it is then a tenth on the radius',
        'Use a finer gauge',
      ],
    },
  ];
}
