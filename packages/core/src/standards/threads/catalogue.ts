/** All threads that the tables list, built when first asked for. */
import type { SourceKey } from '../../sources/register.ts';
import { mmPerInch } from '../../units/quantities.ts';
import { inchSize, threadOf } from './basic-sizes.ts';
import type { FormName } from './forms.ts';
import type { Thread, ThreadFamily } from './record.ts';
import { baSizes } from './tables/ba.ts';
import { brass, cycle, rememberedSizes, whitworth, whitworthFine } from './tables/british.ts';
import { metricSizes } from './tables/metric.ts';
import { nptSizes, pipeSizes } from './tables/pipe.ts';
import * as unified from './tables/unified.ts';

/** A series of inch threads: how it is written and what it is. */
export interface InchSeries {
  /** In the designation: `UNC`, `BSF`. */
  readonly written: string;
  /** `8-UN` is written `UN`. */
  readonly series: string;
  readonly family: ThreadFamily;
  readonly form: FormName;
  readonly sizes: readonly unified.InchSize[];
  /** Whether the threads an inch are always written: `1/4-28 UNF` but `1/4 BSF`. */
  readonly pitchWritten: boolean;
  readonly sources: readonly SourceKey[];
}

const american = (written: string, series: string, sizes: readonly unified.InchSize[], key: SourceKey): InchSeries => ({
  written,
  series,
  family: 'unified',
  form: 'Unified',
  sizes,
  pitchWritten: true,
  sources: [key],
});

export const inchSeries: readonly InchSeries[] = [
  american('UNC', 'UNC', unified.coarse, 'MEDH-p301'),
  american('UNF', 'UNF', unified.fine, 'MEDH-p301'),
  american('UNEF', 'UNEF', unified.extraFine, 'ASME-B1.1'),
  american('UNS', 'UNS', unified.special, 'ASME-B1.1'),
  american('UN', '8-UN', unified.eightThread, 'ASME-B1.1'),
  american('UN', '12-UN', unified.twelveThread, 'ASME-B1.1'),
  american('UN', '16-UN', unified.sixteenThread, 'ASME-B1.1'),
  {
    written: 'BSW',
    series: 'BSW',
    family: 'whitworth',
    form: 'Whitworth',
    sizes: whitworth,
    pitchWritten: false,
    sources: ['OLDENGINE-W'],
  },
  {
    written: 'BSF',
    series: 'BSF',
    family: 'whitworth',
    form: 'Whitworth',
    sizes: whitworthFine,
    pitchWritten: false,
    sources: ['WP-BSF', 'TCB-threads'],
  },
  {
    written: 'BSC',
    series: 'BSC',
    family: 'cycle',
    form: 'British Standard Cycle',
    sizes: cycle,
    pitchWritten: true,
    sources: ['TCB-threads', 'ETB-2041'],
  },
  {
    written: 'BSB',
    series: 'BSB',
    family: 'brass',
    form: 'Whitworth',
    sizes: brass,
    pitchWritten: false,
    sources: ['UNIK'],
  },
];

/** `1/4-28 UNF`, `1/4 BSF`. */
export function inchDesignation(written: string, size: string, tpi: number, pitchWritten: boolean): string {
  return pitchWritten ? `${size}-${tpi} ${written}` : `${size} ${written}`;
}

function inchThreads(): Thread[] {
  return inchSeries.flatMap((series) =>
    series.sizes.map(([size, tpi]) => {
      return threadOf({
        designation: inchDesignation(series.written, size, tpi, series.pitchWritten),
        family: series.family,
        series: series.series,
        size,
        form: series.form,
        majorDiameter: Number(((inchSize(size) ?? 0) * mmPerInch).toFixed(6)),
        pitch: mmPerInch / tpi,
        threadsPerInch: tpi,
        status: 'standard',
        sources: sizeSources(series, size, tpi),
      });
    }),
  );
}

/** Sizes that were not read in print name the standard they are remembered from. */
function sizeSources(series: InchSeries, size: string, tpi: number): readonly SourceKey[] {
  if (rememberedSizes.has(`${size} ${series.written}`)) return ['BS84'];
  return series.series === 'UNC' && tpi <= 5 ? ['ASME-B1.1'] : series.sources;
}

function metricThreads(): Thread[] {
  return metricSizes.flatMap(([d, choice, coarse, fine]) =>
    (coarse === 0 ? fine : [coarse, ...fine]).map((pitch) =>
      threadOf({
        designation: pitch === coarse ? `M${d}` : `M${d}x${pitch}`,
        family: 'metric',
        series: pitch === coarse ? 'coarse' : 'fine',
        size: String(d),
        form: 'ISO metric',
        majorDiameter: d,
        pitch,
        status: 'standard',
        sources: choice === 1 && pitch === coarse ? ['MEDH-p299', 'ISO261'] : ['ISO261'],
        ...metricRemark(d, pitch),
      }),
    ),
  );
}

function metricRemark(d: number, pitch: number): { remark?: string } {
  if (d === 14 && pitch === 1.25) return { remark: 'ISO 261 keeps M14x1.25 for spark plugs' };
  if (d === 35) return { remark: 'ISO 261 keeps M35x1.5 for locknuts of bearings' };
  return {};
}

function baThreads(): Thread[] {
  return baSizes.map(([number, pitch, major, pitchDiameter, minorDiameter]) =>
    threadOf({
      designation: `${number} BA`,
      family: 'ba',
      series: 'BA',
      size: String(number),
      form: 'BA',
      majorDiameter: major,
      pitch,
      status: 'standard',
      published: { pitchDiameter, minorDiameter },
      sources: number <= 4 || number === 12 ? ['MH31-p2115', 'EMGS'] : ['MH31-p2115'],
    }),
  );
}

function pipeThreads(): Thread[] {
  const parallel = pipeSizes.map((row) => pipeThread('G', row));
  const taper = pipeSizes.filter((row) => row[7] !== undefined).map((row) => pipeThread('R', row));
  return [...parallel, ...taper];
}

function pipeThread(letter: 'G' | 'R', row: (typeof pipeSizes)[number]): Thread {
  const [size, threadsPerInch, majorDiameter, pitchDiameter, minorDiameter] = row;
  return threadOf({
    designation: `${letter} ${size}`,
    family: letter === 'G' ? 'pipe-parallel' : 'pipe-taper',
    series: letter,
    size,
    form: 'Whitworth',
    majorDiameter,
    pitch: mmPerInch / threadsPerInch,
    threadsPerInch,
    status: 'standard',
    published: { pitchDiameter, minorDiameter },
    sources: letter === 'G' ? ['EH-G', 'MEDH-p301', 'ISO228-1'] : ['EH-G', 'MEDH-p301', 'ISO7-1'],
    ...(letter === 'R'
      ? { taper: 1 / 16, remark: 'Taper 1 in 16 on diameter; sizes are those in the gauge plane' }
      : {}),
  });
}

function nptThreads(): Thread[] {
  return nptSizes.map(([size, tpi, , , e1]) => {
    const pitch = mmPerInch / tpi;
    const pitchDiameter = Number((e1 * mmPerInch).toFixed(4));
    return threadOf({
      designation: `${size}-${tpi} NPT`,
      family: 'npt',
      series: 'NPT',
      size,
      form: 'American pipe',
      majorDiameter: Number((pitchDiameter + 0.8 * pitch).toFixed(4)),
      pitch,
      threadsPerInch: tpi,
      taper: 1 / 16,
      status: 'standard',
      remark: 'Taper 1 in 16 on diameter; sizes are those at hand-tight engagement (E1)',
      published: { pitchDiameter, minorDiameter: Number((pitchDiameter - 0.8 * pitch).toFixed(4)) },
      sources: ['UA-NPT', 'BOOK1-NPT'],
    });
  });
}

let all: readonly Thread[] | undefined;
let byName: ReadonlyMap<string, Thread> | undefined;

/** Every thread that the tables list, right-hand, single-start, without a class. */
export function standardThreads(): readonly Thread[] {
  all ??= [...metricThreads(), ...inchThreads(), ...baThreads(), ...pipeThreads(), ...nptThreads()];
  return all;
}

/** A listed thread by its canonical designation, without class and hand. */
export function standardThread(designation: string): Thread | undefined {
  byName ??= new Map(standardThreads().map((thread) => [thread.designation, thread]));
  return byName.get(designation);
}
