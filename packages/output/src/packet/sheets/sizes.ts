/** How each size was arrived at: readings, what they say, what was decided. */
import type { Gathered, Weighed } from '@sparewright/core/evidence/evidence-result';
import type { Job } from '@sparewright/core/job/schema';
import type { Dimension } from '@sparewright/core/part/part-result';
import { presentLimits, presentSize, presentUncertainty } from '../../present/length.ts';
import type { PresentSettings } from '../../present/settings.ts';
import { type Block, type FactRow, heading, type Sheet, section, type TableBlock, words } from '../blocks.ts';
import type { PacketContext } from '../context.ts';

export function sizesSheet(context: PacketContext): Sheet {
  const { gathered } = context.assessment.evidence;
  return {
    kind: 'text',
    heading: 'How each size was arrived at',
    blocks: [
      ...(gathered.length > 0
        ? [words(legend, 'pencil'), ...gathered.flatMap((g) => measured(g, context))]
        : [words('No readings are entered: no size of the new part rests on a measurement of an original.', 'pencil')]),
      ...unmeasured(context),
      ...decisions(context.job),
    ],
  };
}

const legend =
  'Readings are corrected for the zero of the gauge and to 20 °C; u is the standard uncertainty, U the expanded one (k = 2). Only protected places tell the size as made; a worn place tells only that it once was at least as large (a shaft) or as small (a bore).';

function measured(g: Gathered, context: PacketContext): Block[] {
  const dimension = context.assessment.part?.dimensions.find((d) => d.id === g.of);
  return [
    heading(dimension?.title ?? g.of),
    readingTable(g.readings, context),
    { kind: 'facts', rows: conclusions(g, dimension, context.settings), columns: 2 },
  ];
}

function readingTable(readings: readonly Weighed[], { job, workshop, settings }: PacketContext): TableBlock {
  const specimen = (id: string | undefined) =>
    [...(job.evidence?.specimens ?? []), ...(job.mates ?? [])].find((s) => s.id === id)?.name ?? id ?? '';
  const gauge = (id: string | undefined) => workshop?.gauges.find((g) => g.id === id)?.name ?? id ?? 'not said';
  return {
    kind: 'table',
    size: 'desk',
    columns: [
      { title: 'reading', align: 'left' },
      { title: 'on', align: 'left', wide: true },
      { title: 'gauge', align: 'left', wide: true },
      { title: 'place', align: 'left' },
      { title: 'size', unit: settings.units, align: 'right' },
      { title: 'u', unit: settings.units, align: 'right' },
      { title: 'mostly from', align: 'left' },
    ],
    rows: readings.map(({ reading, value, uncertainty, budget }) => [
      reading.id,
      specimen(reading.specimen),
      gauge(reading.gauge),
      reading.condition ?? 'not said',
      presentSize(value, settings, settings.units === 'in' ? 5 : 4).replace(` ${settings.units}`, ''),
      presentUncertainty(uncertainty, settings),
      budget[0]?.from ?? '',
    ]),
  };
}

function conclusions(g: Gathered, dimension: Dimension | undefined, settings: PresentSettings): FactRow[] {
  const { estimate, bound, wear } = g;
  return [
    {
      what: 'As made',
      is: estimate
        ? `${presentSize(estimate.value, settings)}, U = ${presentUncertainty(estimate.expanded, settings)}`
        : 'not told by any protected place',
    },
    { what: 'Decided', is: dimension ? `${presentLimits(dimension, settings)} (${dimension.basis})` : 'no such size' },
    ...(bound ? [{ what: 'Bound', is: `${bound.kind} ${presentSize(bound.value, settings)}` }] : []),
    ...(wear === undefined ? [] : [{ what: 'Wear', is: `${presentSize(wear, settings)} on diameter` }]),
  ];
}

function unmeasured({ assessment, settings }: PacketContext): Block[] {
  const seen = new Set(assessment.evidence.gathered.map((g) => g.of));
  const rest = assessment.part?.dimensions.filter((d) => !seen.has(d.id)) ?? [];
  if (rest.length === 0) return [];
  return [
    heading('Sizes without a reading'),
    {
      kind: 'table',
      size: 'desk',
      columns: [
        { title: 'size', align: 'left', wide: true },
        { title: 'as entered', align: 'left' },
        { title: 'limits', unit: settings.units, align: 'right' },
        { title: 'by', align: 'left' },
      ],
      rows: rest.map((d) => [d.title, d.text, presentLimits(d, settings), d.basis]),
    },
  ];
}

function decisions(job: Job): Block[] {
  const rows = (job.decisions ?? []).map((d) => [d.about, d.decided, d.why]);
  const table: TableBlock = {
    kind: 'table',
    size: 'desk',
    columns: [
      { title: 'about', align: 'left' },
      { title: 'decided', align: 'left', wide: true },
      { title: 'why', align: 'left', wide: true },
    ],
    rows,
  };
  return section('Decisions', rows.length > 0 ? [table] : [], 'No decision is written down.');
}
