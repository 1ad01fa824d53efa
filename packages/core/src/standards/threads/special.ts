/** Threads that no list pairs: their sizes follow from the form, as long as the pair makes sense. */
import { InputError } from '../../errors.ts';
import type { SourceKey } from '../../sources/register.ts';
import { type Mm, mmPerInch } from '../../units/quantities.ts';
import { inchName, threadOf } from './basic-sizes.ts';
import { inchDesignation, standardThreads } from './catalogue.ts';
import type { FormName } from './forms.ts';
import type { Thread, ThreadFamily } from './record.ts';
import { knownInchSpecials, knownMetricSpecials } from './tables/known-specials.ts';
import { metricSizes } from './tables/metric.ts';

/** A pitch coarser than this part of the diameter leaves too little core to be a screw. */
export const coarsestPitchOverDiameter = 1 / 3;
const finestPitch: Mm = 0.15;
const largest: Mm = 300;

/** Refuses with the text as typed. */
export function refuse(text: string, expected: string, example: string): never {
  throw new InputError([{ path: 'thread', value: text, expected, example }]);
}

/** A metric pair outside ISO 261, worked out on the ISO profile. */
export function specialMetric(text: string, diameter: Mm, pitch: Mm): Thread {
  checkPair(text, diameter, pitch, nearestMetric(diameter));
  const designation = `M${diameter}x${pitch}`;
  const known = knownMetricSpecials[designation];
  return threadOf({
    designation,
    family: 'metric',
    series: 'special',
    size: String(diameter),
    form: 'ISO metric',
    majorDiameter: diameter,
    pitch,
    status: 'special',
    ...(known ? { remark: known.says } : {}),
    sources: known ? [known.source] : ['ISO68-1'],
  });
}

/** How a special inch thread is written and worked out. */
export interface InchSpecial {
  readonly written: string;
  readonly family: ThreadFamily;
  readonly form: FormName;
  readonly sources: readonly SourceKey[];
}

/** An inch pair outside the lists, worked out on its form. */
export function specialInch(text: string, inches: number, tpi: number, how: InchSpecial): Thread {
  const size = inchName(inches);
  const majorDiameter = Number(((how.family === 'unified' ? tenThousandths(inches) : inches) * mmPerInch).toFixed(6));
  checkPair(text, majorDiameter, mmPerInch / tpi, nearestInch(majorDiameter, how.family));
  const known = how.family === 'unified' ? knownInchSpecials.find(([s, n]) => s === size && n === tpi) : undefined;
  return threadOf({
    designation: inchDesignation(how.written, size, tpi, true),
    family: how.family,
    series: 'special',
    size,
    form: how.form,
    majorDiameter,
    pitch: mmPerInch / tpi,
    threadsPerInch: tpi,
    status: 'special',
    ...(known ? { remark: known[2].says } : {}),
    sources: known ? [...how.sources, known[2].source] : how.sources,
  });
}

/** ASME B1.1 rounds a basic diameter to four places before it reckons, a half to the even: 19/64 is 0.2969, 9/32 is 0.2812. */
function tenThousandths(inches: number): number {
  const places = inches * 10_000;
  const down = Math.floor(places + 1e-7);
  const half = Math.abs(places - down - 0.5) < 1e-7;
  return (half ? down + (down % 2) : Math.round(places)) / 10_000;
}

function checkPair(text: string, diameter: Mm, pitch: Mm, nearest: readonly string[]): void {
  const near = nearest.length === 0 ? '' : `; listed nearby: ${nearest.join(', ')}`;
  const example = nearest[0] ?? 'M10x1.25';
  if (diameter < 0.25 || diameter > largest) refuse(text, `a diameter of 0.25 to ${largest} mm${near}`, example);
  const coarsest = diameter * coarsestPitchOverDiameter;
  if (pitch > coarsest || pitch < finestPitch) {
    refuse(
      text,
      `a pitch of ${finestPitch} to ${coarsest.toFixed(2)} mm on ⌀${Number(diameter.toFixed(3))} mm${near}`,
      example,
    );
  }
}

/** The designations of a metric diameter, or those of the two diameters around it. */
export function nearestMetric(diameter: Mm): string[] {
  const near = metricSizes.toSorted((a, b) => Math.abs(a[0] - diameter) - Math.abs(b[0] - diameter));
  const exact = near[0]?.[0] === diameter;
  return near
    .slice(0, exact ? 1 : 2)
    .flatMap(([d, , coarse, fine]) => [...(coarse === 0 ? [] : [`M${d}`]), ...fine.map((p) => `M${d}x${p}`)]);
}

/** The three listed designations of a family whose diameters come nearest. */
export function nearestInch(diameter: Mm, family: ThreadFamily, series?: string): string[] {
  return standardThreads()
    .filter((t) => t.family === family && (series === undefined || t.series === series))
    .toSorted((a, b) => Math.abs(a.majorDiameter - diameter) - Math.abs(b.majorDiameter - diameter))
    .slice(0, 3)
    .map((t) => t.designation);
}
