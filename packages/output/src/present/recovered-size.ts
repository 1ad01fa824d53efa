/** One recovered size in finished words and pictures. */
import { asTyped } from '@sparewright/core/recover/as-typed';
import type { NewLimits, PlaceWear, RecoveredSize } from '@sparewright/core/recover/recover-result';
import type { Bar } from '../chart/chart.ts';
import { drawBars } from '../chart/draw-bars.ts';
import { drawNumberLine } from '../chart/number-line.ts';
import { paintSvg } from '../svg/paint.ts';
import { valueAt } from './document-places.ts';
import type { DocumentPath, RecoveredFeatureView, TakeView } from './job-view.ts';
import { presentLength, presentLimits, presentSize } from './length.ts';
import { presentProse } from './prose.ts';
import type { ViewContext } from './recovered-context.ts';
import { decisionAbout, isLeftOpen } from './recovered-decision.ts';
import type { PresentSettings } from './settings.ts';
import { decimalsOf, leastShown, lineOf, nameOfSpecimen, saysOf, sureness } from './size-line.ts';

/** More designs than this are never shown. */
const mostDesigns = 5;
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
