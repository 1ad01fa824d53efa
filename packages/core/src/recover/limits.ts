/** Limits for the new part: as the old one was made, or matched to its mate as that is today. */
import { generalDeviation } from '../standards/fits/general-tolerances.ts';
import { toleranceGrade } from '../standards/fits/tolerance-grades.ts';
import type { Mm } from '../units/quantities.ts';
import type { Design, MadeSize, NewLimits, RecoveredSize } from './recover-result.ts';

/** The mate as it is today. */
export interface MateToday {
  readonly name: string;
  /** Tightest place of a bore, fattest of a shaft; and the loosest. */
  readonly tightest: Mm;
  readonly loosest: Mm;
  /** Clearance wanted by the owner. */
  readonly wanted?: { readonly least: Mm; readonly most: Mm } | undefined;
  /** Clearance the two designs gave each other when new. */
  readonly designed?: { readonly least: Mm; readonly most: Mm } | undefined;
}

/** Below this probability the first-ranked nominal size is not taken as the answer. */
const taken = 0.5;
const micrometre = (mm: Mm) => Math.round(mm * 1000) / 1000;
const shown = (mm: Mm) => mm.toFixed(3);

export interface Known {
  readonly designs: readonly Design[];
  readonly nominals: RecoveredSize['nominals'];
  readonly made: readonly MadeSize[];
  readonly isShaft: boolean;
  readonly isDiameter: boolean;
}

/** Limits to choose from, the recommended first. */
export function newLimits(known: Known, mate?: MateToday): NewLimits[] {
  const best = known.made.toSorted((a, b) => a.wide.high - a.wide.low - (b.wide.high - b.wide.low))[0];
  if (!best) return [];
  const own = ownLimits(best, known.isDiameter);
  const asMade = asDesigned(known);
  const first = asMade?.isSure ? [asMade.limits, own] : [own, ...(asMade ? [asMade.limits] : [])];
  const matched = mate && matchedLimits(first[0] ?? own, known.isShaft, mate);
  if (!matched) return first;
  return matched.isNeeded ? [matched.limits, ...first] : [...first, matched.limits];
}

/** The likeliest design of the likeliest nominal size; sure when that nominal size is. */
function asDesigned({ designs, nominals }: Known): { limits: NewLimits; isSure: boolean } | undefined {
  const [nominal] = nominals;
  const design = nominal && designs.find((d) => d.nominal === nominal.size);
  if (!design) return undefined;
  const others = designs
    .filter((d) => d !== design && d.nominal === design.nominal && d.probability > 0.1)
    .map((d) => d.toleranceClass);
  const also = others.length === 0 ? '' : `; ${others.slice(0, 3).join(', ')} would fit too`;
  return {
    limits: {
      kind: 'as made',
      min: micrometre(design.min),
      max: micrometre(design.max),
      written: design.written,
      why: `nominal ${nominal.written} is ${percent(nominal.probability)} sure, ${design.toleranceClass ?? 'its limits'} ${percent(design.probability)}${also}`,
    },
    isSure: nominal.probability >= taken,
  };
}

const percent = (p: number) => (p > 0.995 ? 'over 99 %' : `${Math.round(100 * p)} %`);

/** A size of its own gets the measured size with the tolerance of grade 8 about it, a length with the general tolerance. */
function ownLimits({ median, wide }: MadeSize, isDiameter: boolean): NewLimits {
  const half = isDiameter
    ? gradeWidth(median, 8) / 2
    : median >= 0.5 && median <= 2000
      ? generalDeviation(median, 'm')
      : 0.1;
  return {
    kind: 'own size',
    min: micrometre(median - half),
    max: micrometre(median + half),
    written: `${shown(median)} ±${shown(half)}`,
    why: `what was measured, whatever the drawing said: 95 % sure between ${shown(wide.low)} mm and ${shown(wide.high)} mm`,
  };
}

function gradeWidth(size: Mm, grade: number): Mm {
  return size > 0 && size <= 500 ? toleranceGrade(size, grade) : 0.05;
}

function matchedLimits(
  start: NewLimits,
  isShaft: boolean,
  mate: MateToday,
): { limits: NewLimits; isNeeded: boolean } | undefined {
  const wanted = mate.wanted ?? mate.designed;
  if (!wanted) return undefined;
  const width = Math.min(gradeWidth(mate.tightest, 8), Math.max(0.004, (wanted.most - wanted.least) / 2));
  // The tightest place of the mate must still leave the least clearance.
  const edge = isShaft ? mate.tightest - wanted.least : mate.tightest + wanted.least;
  const [min, max] = isShaft ? [edge - width, edge] : [edge, edge + width];
  const loosest = isShaft ? mate.loosest - start.min : start.max - mate.loosest;
  const tightest = isShaft ? mate.tightest - start.max : start.min - mate.tightest;
  const isLoose = loosest > wanted.most + 5e-4;
  const isTight = tightest < wanted.least - 5e-4;
  const why = isLoose
    ? `as made, the new part would have up to ${shown(loosest)} mm of clearance in the ${mate.name} as it is today, more than the ${shown(wanted.most)} wanted`
    : isTight
      ? `as made, the new part would have only ${shown(tightest)} mm of clearance in the ${mate.name} as it is today, less than the ${shown(wanted.least)} wanted`
      : `gives ${shown(wanted.least)} mm at the tightest place of the ${mate.name} as it is today`;
  return {
    limits: {
      kind: 'matched to the mate',
      min: micrometre(min),
      max: micrometre(max),
      written: `${shown(min)} to ${shown(max)}`,
      why,
    },
    isNeeded: isLoose || isTight,
  };
}
