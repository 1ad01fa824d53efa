/**
 * Sentences made in core speak of millimetres and use a point. Here their lengths and decimal signs are brought into the job's manner.
 * Text typed by people is never passed through this.
 */
import { mmPerInch } from '@sparewright/core/units/quantities';
import { presentNumber } from './number.ts';
import { type PresentSettings, signOf } from './settings.ts';

const figure = String.raw`[−-]?\d+(?:\.\d+)?`;
/** A hyphen that stands for a minus: before a figure, behind a space. */
const hyphenMinus = /(?<=^|[\s(])-(?=\d)/g;
/** `12.5 mm`, `Ø12.5 mm`; not `mm²`, `mm/rev`. */
const length = new RegExp(String.raw`(?<![\w.,/])(Ø?)(${figure}) mm(?![\w/²³^])`, 'g');
/** `Ø12.5` with no unit, as the titles of operations write it; not `Ø1/2`. */
const diameter = /Ø(\d+(?:\.\d+)?)(?! ?mm|[\d./"”]| ?in\b)/g;
const width = new RegExp(String.raw`(?<![\w.,/])(${figure}) wide\b`, 'g');
/** A decimal number with a unit, a diameter, or a roughness: never part of a name like `1.4305` or `M10x1.25`. */
const decimal =
  /(?<![\w.])((?:Ø|Ra |[−-])?\d+)\.(\d+)(?= ?(?:mm|in|µm|°|%|N|MPa|kg|W|rpm|m\/min|ft|wide|times)(?![A-Za-z]))/g;
const marked = /((?:Ø|Ra )\d+)\.(\d+)/g;

export function presentProse(text: string, settings: PresentSettings): string {
  const typographic = text.replace(hyphenMinus, '−');
  const inUnit = settings.units === 'in' ? inInches(typographic) : typographic;
  const sign = signOf(settings.decimalSign);
  if (sign === '.') return inUnit;
  return inUnit.replace(decimal, `$1${sign}$2`).replace(marked, `$1${sign}$2`);
}

function inInches(text: string): string {
  const convert = (mm: string) => presentNumber(Number(mm.replace('−', '-')) / mmPerInch, 'point', 4);
  return text
    .replace(diameter, (_, mm: string) => `Ø${convert(mm)} in`)
    .replace(width, (_, mm: string) => `${convert(mm)} in wide`)
    .replace(length, (all, mark: string, mm: string) => `${mark}${convert(mm)} in (${all.slice(mark.length)})`);
}
