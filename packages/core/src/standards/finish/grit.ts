/** Abrasive paper: grain size of the two grade systems, steps from coarse to fine, Ra they leave. */
import { DomainError } from '../../errors.ts';
import type { SourceKey } from '../../sources/register.ts';
import type { Micrometre } from '../../units/quantities.ts';

export type GritSystem = 'FEPA P' | 'CAMI';

export interface Grit {
  readonly grade: string;
  readonly system: GritSystem;
  /** Mean grain size. */
  readonly grain: Micrometre;
  /** Tolerance of the mean, where remembered. */
  readonly tolerance?: Micrometre;
}

const fepa: readonly (readonly [string, Micrometre, Micrometre?])[] = [
  ['P80', 201],
  ['P100', 162],
  ['P120', 125],
  ['P150', 100],
  ['P180', 82],
  ['P220', 68],
  ['P240', 58.5, 2],
  ['P280', 52.2, 2],
  ['P320', 46.2, 1.5],
  ['P360', 40.5, 1.5],
  ['P400', 35, 1.5],
  ['P500', 30.2, 1.5],
  ['P600', 25.8, 1],
  ['P800', 21.8, 1],
  ['P1000', 18.3, 1],
  ['P1200', 15.3, 1],
  ['P1500', 12.6, 1],
  ['P2000', 10.3, 0.8],
  ['P2500', 8.4, 0.5],
];

const cami: readonly (readonly [string, Micrometre])[] = [
  ['120', 115],
  ['150', 92],
  ['180', 82],
  ['220', 68],
  ['240', 53],
  ['320', 36],
  ['360', 28],
  ['400', 23],
  ['500', 20],
  ['600', 16],
  ['800', 12.6],
  ['1000', 10.3],
];

/** Grades from coarse to fine; sizes read [stusshed-grit], tolerances from memory [mem-iso6344]. */
export const grits: Readonly<Record<GritSystem, readonly Grit[]>> = {
  'FEPA P': fepa.map(([grade, grain, tolerance]) => ({
    grade,
    system: 'FEPA P',
    grain,
    ...(tolerance === undefined ? {} : { tolerance }),
  })),
  CAMI: cami.map(([grade, grain]) => ({ grade, system: 'CAMI', grain })),
};

/** A grade by its print: with P it is FEPA (Europe), without it CAMI (America), unless the system is told. */
export function findGrit(text: string, system?: GritSystem): Grit {
  const number = /^p?\s*(\d+)$/i.exec(text.trim())?.[1];
  const told = system ?? (/^p/i.test(text.trim()) ? 'FEPA P' : 'CAMI');
  const found = grits[told].find((g) => number !== undefined && g.grade.replace('P', '') === number);
  if (!found) throw new DomainError('grit', text, `a ${told} grade: ${grits[told].map((g) => g.grade).join(', ')}`);
  return found;
}

/** The grade of the other system whose grain is nearest in size. */
export function sameGrain(grit: Grit): Grit {
  const others = grits[grit.system === 'CAMI' ? 'FEPA P' : 'CAMI'];
  const away = (g: Grit) => Math.abs(Math.log(g.grain / grit.grain));
  return others.reduce((best, g) => (away(g) < away(best) ? g : best));
}

/**
 * Papers to go through from one grade to a finer one of the same system, taking the longest step at which the grain is still at
 * least half of the one before, so that each paper clears the scratches of the last in reasonable time. Common practice.
 */
export function gritSteps(from: Grit, to: Grit): Grit[] {
  if (from.system !== to.system) throw new DomainError('to', to.grade, `a ${from.system} grade, as the first one is`);
  if (to.grain > from.grain) throw new DomainError('to', to.grade, `a grade finer than ${from.grade}`);
  const steps = [from];
  for (let last = from; last.grain > to.grain; ) {
    const reach = grits[from.system].filter((g) => g.grain < last.grain && g.grain >= to.grain);
    const next = reach.findLast((g) => g.grain >= last.grain / 2) ?? reach[0];
    if (!next) break;
    steps.push(next);
    last = next;
  }
  return steps;
}

export interface GritFinish {
  /** Grades as printed: one, or from and to. */
  readonly grades: readonly [coarse: number, fine: number];
  /** As printed: `FEPA`, `US (CAMI)`, or a bare number whose system the source does not say. */
  readonly system: string;
  readonly material: string;
  readonly process: string;
  /** 0 where only an upper value is printed. */
  readonly raMin: Micrometre;
  readonly raMax: Micrometre;
  readonly note?: string;
  readonly source: SourceKey;
}

type FinishRow = readonly [number, number, string, string, string, Micrometre, Micrometre, SourceKey, string?];
const finishRows: readonly FinishRow[] = [
  [80, 120, 'as printed', '304 stainless', 'belt', 3.2, 6.3, 'xinyida'],
  [150, 220, 'as printed', '304 stainless', 'belt', 1.6, 3.2, 'xinyida'],
  [240, 320, 'as printed', '304 stainless', 'belt', 0.8, 1.6, 'xinyida'],
  [400, 600, 'as printed', '304 stainless', 'belt', 0.4, 0.8, 'xinyida'],
  [800, 1000, 'as printed', '304 stainless', 'belt', 0.2, 0.4, 'xinyida'],
  [1200, 1500, 'as printed', '304 stainless', 'belt', 0.1, 0.2, 'xinyida'],
  [2000, 2000, 'as printed', '304 stainless', 'belt', 0, 0.1, 'xinyida'],
  [36, 36, 'FEPA', 'steel / stainless', 'belt dry', 3.6, 6, 'moosefos'],
  [40, 60, 'FEPA', 'steel / stainless', 'belt dry', 2.2, 3.6, 'moosefos'],
  [80, 80, 'FEPA', 'steel / stainless', 'belt dry', 1.8, 2.2, 'moosefos'],
  [180, 220, 'FEPA', 'steel / stainless', 'belt dry', 0.8, 0.8, 'moosefos', 'grade to reach 0.8'],
  [180, 180, 'as printed', 'stainless', 'dairy polish no. 4', 0.4, 0.7, 'engnews-nz'],
  [240, 240, 'as printed', 'stainless', 'sanitary no. 6', 0.3, 0.5, 'engnews-nz'],
  [240, 240, 'US (CAMI)', 'stainless', 'quoted example', 0.45, 0.45, 'moosefos'],
  [
    240,
    240,
    'UK',
    'stainless',
    'quoted example',
    1.5,
    1.5,
    'moosefos',
    'three times the US figure for the same number',
  ],
  [
    400,
    400,
    'FEPA',
    'steel',
    'hand paper with oil on a turning part',
    0.3,
    0.5,
    'common-practice',
    'order of magnitude',
  ],
  [
    800,
    800,
    'FEPA',
    'steel',
    'hand paper with oil on a turning part',
    0.15,
    0.3,
    'common-practice',
    'order of magnitude',
  ],
  [
    1200,
    1200,
    'FEPA',
    'steel',
    'hand paper with oil on a turning part',
    0.1,
    0.2,
    'common-practice',
    'order of magnitude',
  ],
  [
    2000,
    2000,
    'FEPA',
    'steel',
    'hand paper with oil on a turning part',
    0.05,
    0.1,
    'common-practice',
    'order of magnitude',
  ],
];

export const gritFinishes: readonly GritFinish[] = finishRows.map(
  ([coarse, fine, system, material, process, raMin, raMax, source, note]) => ({
    grades: [coarse, fine],
    system,
    material,
    process,
    raMin,
    raMax,
    ...(note === undefined ? {} : { note }),
    source,
  }),
);

/** Every printed Ra for a grade. They differ three- to fourfold: measure, do not predict. */
export function finishesOfGrit(grit: Grit): GritFinish[] {
  const number = Number(grit.grade.replace('P', ''));
  const others = grit.system === 'FEPA P' ? ['US (CAMI)'] : ['FEPA', 'UK'];
  return gritFinishes.filter((f) => f.grades[0] <= number && number <= f.grades[1] && !others.includes(f.system));
}

/** Hand paper with oil on a turning part that may reach a wanted Ra: the coarsest grade whose range lies within it. */
export function paperFor(ra: Micrometre): GritFinish {
  const byHand = gritFinishes.filter((f) => f.process.startsWith('hand paper'));
  const found = byHand.find((f) => f.raMax <= ra);
  if (!found) throw new DomainError('ra', ra, 'at least 0.1 µm; finer wants lapping');
  return found;
}
