/** One recovered size in finished words and pictures. */
import type { Weighed } from '@sparewright/core/evidence/evidence-result';
import { asTyped } from '@sparewright/core/recover/as-typed';
import type { MadeSize, NewLimits, PlaceWear, RecoveredSize } from '@sparewright/core/recover/recover-result';
import type { Bar, ChartMark } from '../chart/chart.ts';
import { drawBars } from '../chart/draw-bars.ts';
import { drawNumberLine, type NumberLine } from '../chart/number-line.ts';
import { paintSvg } from '../svg/paint.ts';
import { valueAt } from './document-places.ts';
import type { DocumentPath, RecoveredFeatureView, TakeView } from './job-view.ts';
import { presentLength, presentLimits, presentSize } from './length.ts';
import { presentShare } from './number.ts';
import { presentProse } from './prose.ts';
import type { ViewContext } from './recovered-context.ts';
import { decisionAbout, isLeftOpen } from './recovered-decision.ts';
import type { PresentSettings } from './settings.ts';

/** Designs less likely than this are left out, and more than this many are never shown. */
const leastShown = 0.03;
const mostDesigns = 5;
/** Of these the limits are drawn. */
const mostDrawn = 3;
/** Readings beyond this many are told in the table only. */
const mostReadings = 16;
/** Width of a picture [mm]: readable on a phone, and beside the words on a desk. */
export const pictureWidth = 88;

export function sizeView(size: RecoveredSize, context: ViewContext): RecoveredFeatureView {
  const { settings, job } = context;
  const isMate = (job.mates ?? []).some((m) => `${m.id}.size` === size.of);
  const at = placeOf(size.of, context);
  const decision = decisionAbout(size.of, context);
  const title = isMate ? `${size.title}, as it was made` : size.title;
  const shown = size.designs.filter((d, i) => i === 0 || d.probability >= leastShown).slice(0, mostDesigns);
  return {
    of: size.of,
    title,
    says: saysOf(size, settings),
    line: paintSvg(drawNumberLine(lineOf(size, title, context), settings), { theme: 'screen' }),
    bars:
      shown.length === 0
        ? null
        : barsOf(
            shown.map((d) => ({ name: d.written, probability: d.probability })),
            title,
            settings,
          ),
    designs: shown.map((d) => ({ written: d.written, share: sureness(d.probability, settings) })),
    wear: wearBySpecimen(size, context),
    lookAlike: null,
    next: size.next.map((n) => presentProse(n.says, settings)),
    takes: isMate ? [] : size.limits.map((l) => takeOf(l, size, at, context)),
    ownAt: isMate ? null : at,
    entered: enteredAt(at, context),
    decision,
    openAs: size.of,
    isOpen: isLeftOpen(size.of, context),
    conflicts: [],
  };
}

/** Ranked designs as bars in pencil. */
export function barsOf(
  designs: readonly { readonly name: string; readonly probability: number }[],
  title: string,
  settings: PresentSettings,
): string {
  const bars = designs.map(
    ({ name, probability }): Bar => ({
      label: name,
      value: probability,
      written: sureness(probability, settings),
      meaning: 'inferred',
    }),
  );
  const description = bars.map((b) => `${b.label} ${b.written}`).join(', ');
  return paintSvg(
    drawBars(
      { title: `How likely each design is: ${title}`, description, bars, full: 1 },
      { ...settings, width: pictureWidth },
    ),
    { theme: 'screen' },
  );
}

/** Place of a size in the document; null when the part has no such feature. */
function placeOf(of: string, { places }: ViewContext): DocumentPath | null {
  const dot = of.lastIndexOf('.');
  const feature = places.get(of.slice(0, dot));
  return feature ? [...feature, of.slice(dot + 1)] : null;
}

export function enteredAt(at: DocumentPath | null, { document }: ViewContext): string | null {
  const value = at === null ? undefined : valueAt(document, at);
  return typeof value === 'string' || typeof value === 'number' ? String(value) : null;
}

/** Of several specimens the one known best. */
function surest(made: readonly MadeSize[]): MadeSize | undefined {
  return made.toSorted((a, b) => a.wide.high - a.wide.low - (b.wide.high - b.wide.low))[0];
}

function saysOf({ designs, nominals, made }: RecoveredSize, settings: PresentSettings): string[] {
  const best = surest(made);
  const [design] = designs;
  const [nominal] = nominals;
  const share = (p: number) => sureness(p, settings);
  const bare = (mm: number) => presentLength(mm, settings.units, settings.decimalSign, decimalsOf(settings));
  return [
    best
      ? `Made to ${presentSize(best.median, settings, decimalsOf(settings))}, with 95 % between ${bare(best.wide.low)} and ${bare(best.wide.high)}.`
      : 'No reading tells how it was made.',
    design
      ? `Likeliest design: ${design.written}, ${share(design.probability)}${nominal && nominal.probability > design.probability + 0.005 ? `; nominal size ${nominal.written}, ${share(nominal.probability)}` : ''}.`
      : '',
  ].filter((line) => line !== '');
}

/** Never quite certain. */
export function sureness(probability: number, { decimalSign }: PresentSettings): string {
  return probability > 0.995 ? 'over 99 %' : presentShare(probability, decimalSign);
}

const decimalsOf = ({ units }: PresentSettings): number => (units === 'in' ? 4 : 3);

const kindWords: Readonly<Record<NewLimits['kind'], string>> = {
  'as made': 'As it was designed',
  'matched to the mate': 'Matched to the mate as it is today',
  'own size': 'As it was measured, a size of its own',
};

function takeOf(limits: NewLimits, size: RecoveredSize, at: DocumentPath | null, context: ViewContext): TakeView {
  const { job, settings } = context;
  const write = asTyped(limits, job.units, job.part?.generalTolerance);
  return {
    name: kindWords[limits.kind],
    write,
    means: `${presentLimits(limits, settings)} ${settings.units}`,
    why: presentProse(limits.why, settings),
    puts: at ? [{ at, value: write }] : newSection(size, write, context),
  };
}

/** A size of a feature that the part does not have yet begins that feature: a plain section, or a bore from the left. */
function newSection({ of, isShaft }: RecoveredSize, write: string, { job }: ViewContext): TakeView['puts'] {
  const [, id = '', field = ''] = /^([a-z][a-z0-9-]*)\.(diameter|length|depth)$/.exec(of) ?? [];
  const inside = field === 'depth' || (field === 'diameter' && !isShaft);
  if (id === '') return [];
  const name = id.replaceAll('-', ' ');
  const record = { id, name, kind: inside ? 'bored' : 'cylinder', [field]: write };
  const list = inside ? ['part', 'inside', 'left'] : ['part', 'outside'];
  const count = (inside ? job.part?.inside?.left : job.part?.outside)?.length ?? 0;
  const start = job.part
    ? []
    : [{ at: ['part'], value: { name: job.title.slice(0, 120), generalTolerance: 'm', outside: [] } }];
  return [...start, { at: [...list, count], value: record }];
}

function wearBySpecimen({ wear }: RecoveredSize, context: ViewContext): RecoveredFeatureView['wear'] {
  const specimens = [...new Set(wear.map((w) => w.specimen))];
  return specimens.map((specimen) => ({
    on: specimens.length > 1 ? nameOfSpecimen(specimen, context.job) : '',
    places: wear.filter((w) => w.specimen === specimen).map((w) => wearWords(w, context)),
  }));
}

function wearWords(wear: PlaceWear, { settings }: ViewContext): string {
  const { likely, range, condition, along, angle, reading } = wear;
  const where = [
    along === undefined ? '' : `${presentSize(along, settings)} along`,
    angle === undefined ? '' : `${angle}° round`,
  ].filter((w) => w !== '');
  // Less than a micrometer tells.
  const micron = 0.0015;
  const mm = (v: number) => presentLength(v, settings.units, settings.decimalSign, decimalsOf(settings));
  const lost =
    Math.abs(likely) < micron
      ? `hardly any gone, at most ${mm(Math.max(0, range.high))} ${settings.units}`
      : likely < 0
        ? `${mm(-likely)} ${settings.units} gained`
        : `${mm(likely)} ${settings.units} gone, at most ${mm(range.high)}`;
  return `${reading}, ${[condition, ...where].join(', ')}: ${lost}.`;
}

function nameOfSpecimen(id: string, job: ViewContext['job']): string {
  return job.evidence?.specimens?.find((s) => s.id === id)?.name ?? id;
}

/** What a mark's shape says is also said in a word beside it. */
const shapes: Readonly<Record<string, ChartMark['shape']>> = { protected: 'dot', worn: 'ring', unsure: 'square' };

function readingOf({ reading, value, uncertainty }: Weighed): NumberLine['readings'][number] {
  const condition = reading.condition ?? 'unsure';
  return { value, half: 2 * uncertainty, shape: shapes[condition] ?? 'cross', says: `${reading.id} ${condition}` };
}

function lineOf(size: RecoveredSize, title: string, context: ViewContext): NumberLine {
  const { job, settings, assessment } = context;
  const weighed = assessment.evidence.gathered.find((g) => g.of === size.of)?.readings ?? [];
  const kept = weighed.slice(0, mostReadings);
  const used = new Set(size.wear.map((w) => w.reading));
  const readings = kept.map((w) => {
    const shown = readingOf(w);
    return used.has(w.reading.id) || w.reading.condition === 'damaged'
      ? shown
      : { ...shown, says: `${shown.says}, left out` };
  });
  const share = (p: number) => sureness(p, settings);
  const says = saysOf(size, settings);
  return {
    title,
    description: [
      ...says,
      `Readings with their expanded uncertainty: ${weighed.map((w) => `${w.reading.id} ${presentLength(w.value, settings.units, settings.decimalSign)} ${w.reading.condition ?? 'unsure'}`).join(', ')}.`,
    ].join(' '),
    units: settings.units,
    readings,
    more: weighed.length > kept.length ? `and ${weighed.length - kept.length} more in the table` : undefined,
    made: size.made.map((m) => ({
      ...m,
      name: size.made.length > 1 ? nameOfSpecimen(m.specimen, job).slice(0, 40) : '',
    })),
    designs: size.designs
      .filter((d, i) => d.nominal !== undefined && (i === 0 || d.probability >= leastShown))
      .slice(0, mostDrawn)
      .map((d) => ({ says: `${d.written}, ${share(d.probability)}`, min: d.min, max: d.max })),
    nominals: size.nominals
      .filter((n, i) => i === 0 || n.probability >= leastShown)
      .slice(0, mostDrawn)
      .map((n) => ({ size: n.size, says: n.written })),
  };
}
