/** Coming to size: where to stop cutting, and what to do from there. */
import type { StopPoint } from '@sparewright/core/bench/bench-result';
import { presentLimits, presentSize } from '../present/length.ts';
import { presentNumber, presentShare } from '../present/number.ts';
import { presentProse } from '../present/prose.ts';
import { type Block, capital, heading, lacking, type Sheet } from './blocks.ts';
import type { PacketContext } from './context.ts';
import { workedRow } from './worked-row.ts';

export function stopPointSheet(context: PacketContext): Sheet {
  const { stopPoints } = context.assessment.bench;
  if (stopPoints.length === 0)
    return lacking(
      'Coming to size',
      context.assessment.route
        ? 'No turned size is so close that it needs a stop point.'
        : 'Stop points come with the route, and none is planned yet.',
    );
  return { kind: 'text', heading: 'Coming to size', blocks: stopPoints.flatMap((s) => stopPoint(s, context)) };
}

function stopPoint(stop: StopPoint, { assessment, settings }: PacketContext): Block[] {
  const decimals = settings.units === 'in' ? 4 : 3;
  const title = assessment.part?.dimensions.find((d) => d.id === stop.dimension)?.title ?? stop.dimension;
  const operation = assessment.route?.operations.find((o) => o.id === stop.operation);
  return [
    heading(`${capital(title)}${operation ? `, operation ${operation.number}` : ''}`),
    {
      kind: 'facts',
      columns: 2,
      rows: [
        { what: 'Limits', is: `${presentLimits(stop, settings)} ${settings.units}` },
        { what: 'Aim the last cut at', is: presentSize(stop.stopAt, settings, decimals) },
        {
          what: 'Leave for paper',
          is:
            stop.leave === 0
              ? 'nothing: the cutter finishes'
              : `${presentSize(stop.leave, settings, decimals)} on dia.`,
        },
        { what: 'Chance to end inside', is: presentShare(stop.chance, settings.decimalSign) },
        ...(stop.finishRa === undefined
          ? []
          : [{ what: 'Finish', is: `Ra ${presentNumber(stop.finishRa, settings.decimalSign)} µm` }]),
      ],
    },
    {
      kind: 'why',
      worked: [
        workedRow(
          stop.worked,
          { what: 'chance to end inside', gives: presentShare(stop.chance, settings.decimalSign) },
          settings,
        ),
      ],
    },
    { kind: 'list', items: stop.steps.map((s) => presentProse(s, settings)), mark: 'number' },
    { kind: 'blanks', labels: ['Last pass but one', 'after it measured', 'Last pass', 'after it measured'] },
  ];
}
