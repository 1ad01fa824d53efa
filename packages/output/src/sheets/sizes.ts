/** How each size was arrived at: readings, what they say, what was decided. */
import type { Gathered, Weighed } from '@sparewright/core/evidence/evidence-result';
import { curveReading } from '@sparewright/core/evidence/gather';
import type { Dimension } from '@sparewright/core/part/part-result';
import { presentLength, presentLimits, presentSize, presentUncertainty } from '../present/length.ts';
import { presentPlace } from '../present/place.ts';
import { presentProse } from '../present/prose.ts';
import type { PresentSettings } from '../present/settings.ts';
import { type Block, capital, heading, lacking, type Sheet, section, type TableBlock, words } from './blocks.ts';
import type { PacketContext } from './context.ts';
import { type PutPicture, recoveredBlocks } from './recovered.ts';

/** @param put  takes the pictures; left out where they are shown in another way */
export function sizesSheet(context: PacketContext, put?: PutPicture): Sheet {
  const { gathered } = context.assessment.evidence;
  if (gathered.length === 0 && !context.assessment.part)
    return lacking('How each size was arrived at', 'No reading and no size is entered yet.');
  return {
    kind: 'text',
    heading: 'How each size was arrived at',
    blocks: [
      ...(gathered.length > 0
        ? [words(legend, 'pencil'), readingTable(gathered, context)]
        : [words('No readings are entered: no size of the new part rests on a measurement of an original.', 'pencil')]),
      ...recoveredBlocks(context, put),
      ...unmeasured(context),
      ...decisions(context),
    ],
  };
}

const legend =
  'Readings are corrected for the zero of the gauge and to 20 °C; u is the standard uncertainty, U the expanded one (k = 2). Only protected places tell the size as made; a worn place tells only that it once was at least as large (a shaft) or as small (a bore).';

function readingTable(gathered: readonly Gathered[], context: PacketContext): TableBlock {
  const { units } = context.settings;
  return {
    kind: 'table',
    size: 'desk',
    columns: [
      { title: 'reading', align: 'left' },
      { title: 'on', align: 'left', wide: true },
      { title: 'gauge', align: 'left', wide: true },
      { title: 'place', align: 'left' },
      { title: 'size', unit: units, align: 'right' },
      { title: 'u', unit: units, align: 'right' },
      { title: 'mostly from', align: 'left' },
    ],
    rows: gathered.flatMap((g) => [
      { title: capital(presentPlace(g.of, context.job, context.assessment)), says: conclusion(g, context) },
      ...g.readings.map((r) => readingRow(r, context)),
    ]),
  };
}

function readingRow(
  { reading, value, uncertainty, budget }: Weighed,
  { job, workshop, settings }: PacketContext,
): string[] {
  const specimen = (job.evidence?.specimens ?? []).find((s) => s.id === reading.specimen)?.name;
  const gauge = workshop?.gauges.find((g) => g.id === reading.gauge)?.name;
  const { units, decimalSign } = settings;
  return [
    reading.id,
    specimen ?? reading.specimen ?? '–',
    gauge ?? reading.gauge ?? 'not said',
    reading.condition ?? 'not said',
    presentLength(value, units, decimalSign, units === 'in' ? 5 : 4),
    presentUncertainty(uncertainty, settings),
    budget[0]?.from ?? '',
  ];
}

/** What the readings of one size say, and what was decided. */
function conclusion({ of, estimate, bound, wear }: Gathered, { job, assessment, settings }: PacketContext): string {
  const dimension = assessment.part?.dimensions.find((d) => d.id === of);
  if (curveReading(of)) return ['points of its curve', decisionWords(of, job)].filter(Boolean).join(' · ');
  const said = [
    estimate
      ? `as made ${presentSize(estimate.value, settings)} (U = ${presentUncertainty(estimate.expanded, settings)})`
      : 'no protected place tells the size as made',
    bound && `${bound.kind} ${presentSize(bound.value, settings)}`,
    wear !== undefined && `worn by ${presentSize(wear, settings)}`,
    dimension && `in the part: ${limitsOf(dimension, settings)} (${presentProse(dimension.basis, settings)})`,
    decisionWords(of, job),
  ];
  return said.filter(Boolean).join(' · ');
}

/** The decision taken about a size, with its reason; a size nobody decided on stands as it was typed. */
function decisionWords(of: string, { decisions, part }: PacketContext['job']): string | undefined {
  const found = decisions?.findLast((d) => d.about === of);
  if (found) return `decided: ${found.decided}, because: ${found.why.replace(/\.$/, '')}`;
  return part?.leftOpen?.includes(of) ? 'left open' : undefined;
}

function limitsOf(dimension: Dimension, settings: PresentSettings): string {
  return dimension.max > dimension.min
    ? presentLimits(dimension, settings)
    : presentLength(dimension.nominal, settings.units, settings.decimalSign);
}

function unmeasured({ job, assessment, settings }: PacketContext): Block[] {
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
        { title: 'by', align: 'left', wide: true },
      ],
      rows: rest.map((d) => [
        capital(d.title),
        job.part?.leftOpen?.includes(d.id) ? `${d.text}, left open` : d.text,
        limitsOf(d, settings),
        presentProse(d.basis, settings),
      ]),
    },
  ];
}

function decisions({ job, assessment }: PacketContext): Block[] {
  const rows = (job.decisions ?? []).map((d) => [presentPlace(d.about, job, assessment), d.decided, d.why]);
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
