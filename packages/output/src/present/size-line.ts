/** The number line of a recovered size, with its words: on the screen and in the packet the same. */
import type { Weighed } from '@sparewright/core/evidence/evidence-result';
import type { MadeSize, RecoveredSize } from '@sparewright/core/recover/recover-result';
import type { ChartMark } from '../chart/chart.ts';
import type { NumberLine } from '../chart/number-line.ts';
import { presentLength, presentSize } from './length.ts';
import { presentShare } from './number.ts';
import type { RecoveredFrom } from './recovered-context.ts';
import type { PresentSettings } from './settings.ts';

/** Designs less likely than this are left out. */
export const leastShown = 0.03;
/** Of so many the limits are drawn. */
const mostDrawn = 3;
/** Readings beyond this many are told in the table only. */
const mostReadings = 16;

type From = Pick<RecoveredFrom, 'job' | 'assessment' | 'settings'>;

/** Of several specimens the one known best. */
function surest(made: readonly MadeSize[]): MadeSize | undefined {
  return made.toSorted((a, b) => a.wide.high - a.wide.low - (b.wide.high - b.wide.low))[0];
}

export function saysOf({ designs, nominals, made }: RecoveredSize, settings: PresentSettings): string[] {
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

/** A micrometre, or a tenth of a thou. */
export const decimalsOf = ({ units }: PresentSettings): number => (units === 'in' ? 4 : 3);

export function nameOfSpecimen(id: string, job: From['job']): string {
  return job.evidence?.specimens?.find((s) => s.id === id)?.name ?? id;
}

/** What a mark's shape says is also said in a word beside it. */
const shapes: Readonly<Record<string, ChartMark['shape']>> = { protected: 'dot', worn: 'ring', unsure: 'square' };

function readingOf({ reading, value, uncertainty }: Weighed): NumberLine['readings'][number] {
  const condition = reading.condition ?? 'unsure';
  return { value, half: 2 * uncertainty, shape: shapes[condition] ?? 'cross', says: `${reading.id} ${condition}` };
}

export function lineOf(size: RecoveredSize, title: string, { job, settings, assessment }: From): NumberLine {
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
