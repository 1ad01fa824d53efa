/** Reading Unified, Whitworth, Fine, Cycle and Brass threads. */
import { mmPerInch } from '../../units/quantities.ts';
import { inchName, inchSize } from './basic-sizes.ts';
import { type InchSeries, inchDesignation, inchSeries, standardThread } from './catalogue.ts';
import type { Thread } from './record.ts';
import { type InchSpecial, nearestInch, refuse, specialInch } from './special.ts';

const names: Readonly<Record<string, string>> = {
  unc: 'UNC',
  unrc: 'UNC',
  nc: 'UNC',
  unf: 'UNF',
  unrf: 'UNF',
  nf: 'UNF',
  unef: 'UNEF',
  nef: 'UNEF',
  uns: 'UNS',
  un: 'UN',
  bsw: 'BSW',
  whit: 'BSW',
  whitworth: 'BSW',
  w: 'BSW',
  ww: 'BSW',
  bsf: 'BSF',
  bsc: 'BSC',
  cei: 'BSC',
  bscy: 'BSC',
  cycle: 'BSC',
  bsb: 'BSB',
  brass: 'BSB',
};
const word = Object.keys(names)
  .toSorted((a, b) => b.length - a.length)
  .join('|');
const size = String.raw`(?:#|no\.? ?) ?\d+|\d+ \d+\/\d+|\d+\/\d+|\d*\.\d+|\d+`;
const pitch = String.raw`\d+ 1\/2|\d+(?:\.\d+)?`;
const sizeFirst = new RegExp(
  String.raw`^(${size})(?: ?(?:-|x| ) ?(${pitch}))? ?-? ?(?:(?:4|6|8|12|16|20|28|32)-?(?=un\b))?(${word})?\.?$`,
  'i',
);
const seriesFirst = new RegExp(String.raw`^(${word})\.? ?(${size})(?: ?(?:-|x| ) ?(${pitch}))?$`, 'i');

/** `1/4-28 UNF`, `#10-32`, `3/8 BSF`, `3/8 x 26 cycle`, `W 1/4`, `.500-20 UNF`. */
export function readInch(text: string, rest: string): Thread | undefined {
  const plain = rest.replace(/\bb\.? ?s\.? ?([wfcb])\.?(?=\s|$)/i, 'bs$1');
  const first = sizeFirst.exec(plain);
  const second = first ? undefined : seriesFirst.exec(plain);
  const sizeText = first?.[1] ?? second?.[2];
  if (sizeText === undefined) return undefined;
  const tpiText = first?.[2] ?? second?.[3];
  const tpi = tpiText === undefined ? undefined : Number(tpiText.replace(' 1/2', '.5'));
  const written = names[(first?.[3] ?? second?.[1] ?? '').toLowerCase()];
  const name = sizeName(text, sizeText, tpi, written);
  if (written === undefined) return withoutSeries(text, name, tpi);
  return listed(name, tpi, written) ?? unlisted(text, name, tpi, written);
}

/** The size in canonical writing. A bare whole number is a gauge number if such a thread is listed, else inches. */
function sizeName(text: string, typed: string, tpi: number | undefined, written: string | undefined): string {
  const gauge = /^(?:#|no\.? ?) ?(\d+)$/i.exec(typed);
  if (gauge) return `#${gauge[1]}`;
  if (/^\d+$/.test(typed) && (written === undefined || written.startsWith('UN'))) {
    const asGauge = seriesWritten(written).some((s) =>
      s.sizes.some(([z, n]) => z === `#${typed}` && (tpi === undefined || n === tpi)),
    );
    const asInches = seriesWritten(written).some((s) =>
      s.sizes.some(([z, n]) => z === typed && (tpi === undefined || n === tpi)),
    );
    if (asGauge && asInches)
      refuse(
        text,
        `#${typed} for the gauge number, or the threads an inch with ${typed} inches`,
        `#${typed} ${written ?? 'UNC'}`,
      );
    if (asGauge) return `#${typed}`;
  }
  const inches = inchSize(typed);
  if (inches === undefined || inches === 0) refuseSize(text, typed, written ?? 'UNC');
  return inchName(inches);
}

function refuseSize(text: string, typed: string, written: string): never {
  const over = `${typed.split('/')[0]}/`;
  const near = seriesWritten(written).flatMap((s) =>
    s.sizes.filter(([z]) => z.startsWith(over)).map(([z]) => `${z} ${written}`),
  );
  const like = near.length === 0 ? '' : `; ${written} has ${near.slice(0, 4).join(', ')}`;
  refuse(
    text,
    `a size in inches (a fraction, a decimal or a gauge number), which ${typed} is not${like}`,
    near[0] ?? '3/8 BSF',
  );
}

function seriesWritten(written: string | undefined): readonly InchSeries[] {
  return written === undefined
    ? inchSeries.filter((s) => s.family === 'unified')
    : inchSeries.filter((s) => s.written === written);
}

function listed(size: string, tpi: number | undefined, written: string): Thread | undefined {
  for (const series of seriesWritten(written)) {
    const row = series.sizes.find(([z, n]) => sameSize(z, size) && (tpi === undefined || n === tpi));
    if (row && (tpi !== undefined || !several(series, size))) {
      return standardThread(inchDesignation(written, row[0], row[1], series.pitchWritten));
    }
  }
  return undefined;
}

function sameSize(a: string, b: string): boolean {
  return a === b || inchSize(a) === inchSize(b);
}

function several(series: InchSeries, size: string): boolean {
  return series.sizes.filter(([z]) => sameSize(z, size)).length > 1;
}

const specials: Readonly<Record<string, InchSpecial>> = {
  UNS: { written: 'UNS', family: 'unified', form: 'Unified', sources: ['ASME-B1.1'] },
  UN: { written: 'UN', family: 'unified', form: 'Unified', sources: ['ASME-B1.1'] },
  BSW: { written: 'Whit', family: 'whitworth', form: 'Whitworth', sources: ['BS84'] },
};
const constantPitches = [4, 6, 8, 12, 16, 20, 28, 32];

/** A pair outside the series: special in UN, UNS and Whit; refused where the series fixes the pitch. */
function unlisted(text: string, size: string, tpi: number | undefined, written: string): Thread {
  const inches = inchSize(size) ?? 0;
  const same = seriesWritten(written).flatMap((s) => s.sizes.filter(([z]) => sameSize(z, size)).map(([, n]) => n));
  const family = seriesWritten(written)[0]?.family ?? 'unified';
  const special = specials[written];
  if (special && tpi !== undefined && (written !== 'UN' || constantPitches.includes(tpi)))
    return specialInch(text, inches, tpi, special);
  const near = nearestInch(inches * mmPerInch, family, written === 'UN' ? undefined : written);
  if (tpi === undefined && same.length > 1)
    refuse(text, `the threads an inch: ${size} ${written} has ${same.join(' or ')}`, `${size}-${same[0]} ${written}`);
  if (tpi === undefined && special)
    refuse(
      text,
      `the threads an inch of ${size} ${written}; listed nearby: ${near.join(', ')}`,
      near[0] ?? '1/4-24 UNS',
    );
  if (same.length > 0)
    refuse(text, `${same.join(' or ')} threads an inch on ${size} ${written}`, `${size}-${same[0]} ${written}`);
  refuse(text, `a size of the ${written} series; listed nearby: ${near.join(', ')}`, near[0] ?? '1/4 BSW');
}

/** A size and threads an inch alone: read as Unified where that is listed, and said so. */
function withoutSeries(text: string, size: string, tpi: number | undefined): Thread | undefined {
  const series = inchSeries.find((s) => tpi !== undefined && s.sizes.some(([z, n]) => sameSize(z, size) && n === tpi));
  if (!series || tpi === undefined) {
    const near = nearestInch((inchSize(size) ?? 0.25) * mmPerInch, 'unified');
    refuse(
      text,
      `a series after the size (UNC, UNF, BSW, BSF, BSC, BA, G, R …); Unified nearby: ${near.join(', ')}`,
      near[0] ?? '1/4-20 UNC',
    );
  }
  const thread = listed(size, tpi, series.written);
  return (
    thread && {
      ...thread,
      remark: `No series was written: read as ${series.written}; British threads can have the same size and pitch`,
    }
  );
}
