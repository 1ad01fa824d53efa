/** Whether it does its work: fits, seals, joints, with their limits and where the limits come from. */
import type { DutyCheck, DutyFigure, FitCheck } from '@sparewright/core/duty/duty-result';
import type { SourceKey } from '@sparewright/core/sources/register';
import { presentDeviation } from '../present/length.ts';
import { presentProse } from '../present/prose.ts';
import { presentFigure, presentQuantity, shownUnit } from '../present/quantity.ts';
import type { PresentSettings } from '../present/settings.ts';
import { presentSource } from '../present/source.ts';
import { type Block, capital, heading, lacking, type Sheet, section, type TableBlock, words } from './blocks.ts';
import type { PacketContext } from './context.ts';
import { workedRow } from './worked-row.ts';

export function dutySheet(context: PacketContext): Sheet {
  const { fits, checks } = context.assessment.duty;
  if (fits.length + checks.length === 0)
    return lacking(
      'Will it do its work',
      'No mate, seal, bond or load is entered: whether the part does its work is not checked.',
    );
  const cited = citations(checks);
  return {
    kind: 'text',
    heading: 'Will it do its work',
    blocks: [
      words(
        'Checked is only what stands here. Strength of the housing, fatigue, shock and corrosion are not calculated.',
        'pencil',
      ),
      ...section(
        'Fits',
        fits.length > 0 ? [fitTable(fits, context), fitsWorked(fits, context)] : [],
        'No mate with a size is entered: whether the part fits is not checked.',
      ),
      ...(checks.length > 0
        ? checks.flatMap((c) => checkBlocks(c, cited, context.settings))
        : section('Seals, joints, threads', [], 'No seal, bond or pressure is entered: nothing is checked here.')),
      ...(cited.length > 0
        ? [heading('Sources'), words(cited.map((key, i) => `[${i + 1}] ${presentSource(key)}`).join('   '), 'pencil')]
        : []),
    ],
  };
}

/** Every source that a check or a limit rests on, once, in the order they come up. */
function citations(checks: readonly DutyCheck[]): SourceKey[] {
  return [...new Set(checks.flatMap((c) => [...c.figures.flatMap((f) => f.limit?.source ?? []), ...c.sources]))];
}

const cite = (key: SourceKey, cited: readonly SourceKey[]): string => `[${cited.indexOf(key) + 1}]`;

function fitTable(fits: readonly FitCheck[], { job, assessment, settings }: PacketContext): TableBlock {
  const unit = settings.units;
  return {
    kind: 'table',
    size: 'desk',
    columns: [
      { title: 'against', align: 'left' },
      { title: 'size', align: 'left' },
      { title: 'least clearance', unit, align: 'right' },
      { title: 'most', unit, align: 'right' },
      { title: 'that is', align: 'left', wide: true },
    ],
    rows: fits.map((f) => [
      job.mates?.find((m) => m.id === f.mate)?.name ?? f.mate,
      assessment.part?.dimensions.find((d) => d.id === f.dimension)?.title ?? f.dimension,
      presentDeviation(f.least, settings, unit === 'in' ? 4 : 3),
      presentDeviation(f.most, settings, unit === 'in' ? 4 : 3),
      presentProse(f.says, settings),
    ]),
  };
}

function checkBlocks(check: DutyCheck, cited: readonly SourceKey[], settings: PresentSettings): Block[] {
  const rests = [...new Set(check.sources)]
    .toSorted((a, b) => cited.indexOf(a) - cited.indexOf(b))
    .map((key) => cite(key, cited));
  const notes = [
    ...check.notes.map((n) => presentProse(n, settings)),
    ...(rests.length > 0 ? [`Computed from ${rests.join(' ')}.`] : []),
  ];
  return [
    heading(capital(check.title)),
    figureTable(check.figures, cited, settings),
    ...figuresWorked(check.figures, settings),
    ...(notes.length > 0 ? [{ kind: 'list' as const, items: notes, mark: 'dash' as const }] : []),
  ];
}

function fitsWorked(fits: readonly FitCheck[], { job, settings }: PacketContext): Block {
  const decimals = settings.units === 'in' ? 4 : 3;
  return {
    kind: 'why',
    worked: fits.map(({ mate, least, most, worked }) => {
      const what = `clearance in the ${job.mates?.find((m) => m.id === mate)?.name ?? mate}`;
      const ends = [least, most].map((mm) => presentDeviation(mm, settings, decimals));
      return workedRow(worked, { what, gives: `${ends.join(' to ')} ${settings.units}` }, settings);
    }),
  };
}

function figuresWorked(figures: readonly DutyFigure[], settings: PresentSettings): Block[] {
  const worked = figures.flatMap((f) =>
    f.worked
      ? [workedRow(f.worked, { what: f.what, gives: presentQuantity(f.typical, f.unit, settings) }, settings)]
      : [],
  );
  return worked.length > 0 ? [{ kind: 'why', worked }] : [];
}

function figureTable(
  figures: readonly DutyFigure[],
  cited: readonly SourceKey[],
  settings: PresentSettings,
): TableBlock {
  return {
    kind: 'table',
    size: 'desk',
    columns: [
      { title: 'figure', align: 'left', wide: true },
      { title: 'unit', align: 'left' },
      { title: 'low', align: 'right' },
      { title: 'typical', align: 'right' },
      { title: 'high', align: 'right' },
      { title: 'limit', align: 'left' },
      { title: 'stands', align: 'left' },
    ],
    rows: figures.map((f) => [
      f.what,
      shownUnit(f.unit, settings),
      ...[f.low, f.typical, f.high].map((v) => presentFigure(v, f.unit, settings)),
      f.limit ? `${limitWords(f, settings)} ${cite(f.limit.source, cited)}` : '',
      f.verdict,
    ]),
  };
}

function limitWords({ limit, unit }: DutyFigure, settings: PresentSettings): string {
  if (!limit) return '';
  const { least, most } = limit;
  if (least !== undefined && most !== undefined)
    return `${presentFigure(least, unit, settings)} to ${presentQuantity(most, unit, settings)}`;
  if (least !== undefined) return `≥ ${presentQuantity(least, unit, settings)}`;
  return most === undefined ? '' : `≤ ${presentQuantity(most, unit, settings)}`;
}
