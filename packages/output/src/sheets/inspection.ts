/** The inspection sheet, the proof tests and the record. */
import type { InspectionRow } from '@sparewright/core/inspect/inspect-result';
import type { Mm } from '@sparewright/core/units/quantities';
import { presentLength, presentUncertainty } from '../present/length.ts';
import { presentShare } from '../present/number.ts';
import { presentProse } from '../present/prose.ts';
import type { PresentSettings } from '../present/settings.ts';
import { type Block, capital, heading, lacking, type Sheet, section, type TableBlock, words } from './blocks.ts';
import type { PacketContext } from './context.ts';
import { cautionNotices } from './summary.ts';
import { workedRow } from './worked-row.ts';

export function inspectionSheet(context: PacketContext): Sheet {
  const { rows } = context.assessment.inspection;
  if (rows.length === 0) return lacking('Inspection', 'The part has no sizes yet, so there is nothing to measure.');
  return {
    kind: 'text',
    heading: 'Inspection',
    landscape: true,
    blocks: [
      ...hazardNotices(context),
      words(legend, 'pencil'),
      sizeTable(rows, context.settings),
      acceptWorked(rows, context.settings),
    ],
  };
}

/** @param photographs  what is printed of them, made beforehand */
export function recordSheet(context: PacketContext, photographs: readonly Block[]): Sheet {
  const { proofTests } = context.assessment.inspection;
  return {
    kind: 'text',
    heading: 'Proof tests and record',
    blocks: [
      ...hazardNotices(context),
      ...section(
        'Proof tests',
        proofTests.map(
          (t): Block => ({
            kind: 'proof',
            title: t.title,
            how: presentProse(t.how, context.settings),
            acceptance: presentProse(t.acceptance, context.settings),
            why: presentProse(t.why, context.settings),
          }),
        ),
        'No proof test is planned.',
      ),
      heading('Record'),
      {
        kind: 'blanks',
        labels: ['Made by', 'Date', 'Material certificate or heat', 'Mass of the part', 'Inspected by', 'Fitted on'],
      },
      { kind: 'blanks', labels: ['What was done otherwise than planned, and why'] },
      ...photographs,
    ],
  };
}

/** What the part itself calls for; the cautions of the lathe are not needed any more. */
function hazardNotices(context: PacketContext): Block[] {
  const cautions = context.assessment.cautions.filter((c) => c.about !== 'lathe work');
  return cautionNotices({ ...context, assessment: { ...context.assessment, cautions } });
}

const legend =
  'Measure at 20 °C, clean and without burrs. A reading within “accept” conforms although the gauge is not perfect: the limits are drawn in by its uncertainty. U is the expanded uncertainty (k = 2) with that gauge.';

/** Limits less the guard band, size by size. */
function acceptWorked(rows: readonly InspectionRow[], settings: PresentSettings): Block {
  const decimals = settings.units === 'in' ? 4 : 3;
  const size = (mm: Mm) => presentLength(mm, settings.units, settings.decimalSign, decimals);
  return {
    kind: 'why',
    worked: rows.flatMap(({ title, min, max, expanded, acceptMin, acceptMax }) =>
      expanded === undefined || acceptMin === undefined || acceptMax === undefined
        ? []
        : [
            workedRow(
              {
                formula: 'from = least + g;  to = most − g;  g = 1.645 U / 2',
                put: [
                  { what: 'least', value: min, unit: 'mm' },
                  { what: 'most', value: max, unit: 'mm' },
                  { what: 'U', value: expanded, unit: 'mm' },
                ],
                source: 'ISO14253-1',
              },
              {
                what: title,
                gives: `${size(acceptMin)} to ${size(acceptMax)} ${settings.units}`,
              },
              settings,
            ),
          ],
    ),
  };
}

function sizeTable(rows: readonly InspectionRow[], settings: PresentSettings): TableBlock {
  const unit = settings.units;
  const size = (mm: Mm | undefined) =>
    mm === undefined ? '–' : presentLength(mm, unit, settings.decimalSign, unit === 'in' ? 4 : 3);
  return {
    kind: 'table',
    size: 'machine',
    columns: [
      { title: 'size', align: 'left', wide: true },
      { title: 'least', unit, align: 'right' },
      { title: 'most', unit, align: 'right' },
      { title: 'accept from', unit, align: 'right' },
      { title: 'to', unit, align: 'right' },
      { title: 'gauge', align: 'left', wide: true },
      { title: 'U', unit, align: 'right' },
      { title: 'measured', unit, align: 'right', blank: 'figure' },
      { title: 'conforms', align: 'left', blank: 'figure' },
    ],
    rows: rows.map((r) => [
      capital(r.title),
      size(r.min),
      size(r.max),
      ...acceptance(r, size),
      r.gauge ?? 'none on hand',
      r.expanded === undefined ? '–' : presentUncertainty(r.expanded, settings),
      r.value === undefined ? '' : size(r.value),
      decision(r, settings),
    ]),
  };
}

/** A gauge too coarse for the size leaves no reading to accept. */
function acceptance(row: InspectionRow, size: (mm: Mm | undefined) => string): [string, string] {
  const { acceptMin, acceptMax } = row;
  if (acceptMin === undefined || acceptMax === undefined || acceptMax <= acceptMin) return ['–', '–'];
  return [size(acceptMin), size(acceptMax)];
}

const decisionWords = {
  conforms: 'yes',
  'does not conform': 'NO',
  'cannot be decided': 'undecided',
  'not measured': '',
} as const;

function decision({ decision: d, probability }: InspectionRow, settings: PresentSettings): string {
  const chance = probability === undefined ? '' : ` (${presentShare(probability, settings.decimalSign)})`;
  return d === 'not measured' ? '' : `${decisionWords[d]}${chance}`;
}
