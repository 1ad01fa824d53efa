/** One recovered size in the words and figures of the answer. */

import { sizeLimits } from '../standards/fits/toleranced-size.ts';
import type { Mm } from '../units/quantities.ts';
import { isDiameter } from './features.ts';
import type { Hypothesis, PerHabit } from './hypotheses.ts';
import { type MateToday, newLimits } from './limits.ts';
import { isEntered } from './measure.ts';
import { written } from './nominals.ts';
import { quantile, sizeDensities, summary } from './posterior.ts';
import type { Measured } from './recover-input.ts';
import type { Design, MadeSize, RecoveredSize } from './recover-result.ts';
import { priorWeights, probabilities, ranked } from './size.ts';
import { wearOf } from './wear.ts';

/** Designs beyond this many, or less likely than this, are not worth a line. */
const most = 8;
const least = 0.002;
/** Places of a density that is drawn. */
const drawn = 80;

/**
 * Habits as the prior of one size: those of the whole machine with this size's own word taken out, for it is heard again here.
 */
export function habitsFor(m: Measured, habits: PerHabit): PerHabit {
  const own = m.evidence.byHabit;
  const [a = 0, b = 0, c = 0, d = 0] = habits.map((h, i) => ((own[i] ?? 0) > 0 ? h / (own[i] ?? 1) : 0));
  return [a, b, c, d];
}

export interface Designs {
  readonly designs: readonly Design[];
  readonly nominals: RecoveredSize['nominals'];
  readonly chances: readonly number[];
}

export function designsOf(m: Measured, habits: PerHabit): Designs {
  const { hypotheses } = probabilities(m.evidence.weighed, m.evidence.byHabit, habitsFor(m, habits));
  const all = ranked(m.evidence.weighed, hypotheses);
  const designs = all
    .slice(0, most)
    .filter((d, i) => i === 0 || d.probability > least)
    .map(({ hypothesis, probability }) => designOf(hypothesis, probability));
  return { designs, nominals: byNominal(all), chances: hypotheses };
}

function byNominal(all: readonly { hypothesis: Hypothesis; probability: number }[]): RecoveredSize['nominals'] {
  const sums = new Map<string, { written: string; size: Mm; probability: number }>();
  for (const { hypothesis: h, probability } of all) {
    if (h.nominal === undefined || h.system === undefined) continue;
    const name = written(h.nominal, h.system);
    sums.set(name, { written: name, size: h.nominal, probability: probability + (sums.get(name)?.probability ?? 0) });
  }
  return [...sums.values()]
    .filter((n) => n.probability > least)
    .toSorted((a, b) => b.probability - a.probability)
    .slice(0, 4);
}

function designOf(h: Hypothesis, probability: number): Design {
  return {
    written: h.written,
    nominal: h.nominal,
    toleranceClass: h.toleranceClass,
    system: h.system,
    min: h.min,
    max: h.max,
    probability,
  };
}

export function describeSize(m: Measured, habits: PerHabit, today?: MateToday): RecoveredSize {
  const { feature, evidence, turn, kept } = m;
  const { designs, nominals } = designsOf(m, habits);
  const densities = sizeDensities(
    evidence.weighed,
    priorWeights(evidence.weighed, habitsFor(m, habits)),
    evidence.likelihood,
    turn,
  );
  const made: MadeSize[] = densities.map((density) => ({
    specimen: density.specimen,
    ...summary(density),
    density: thinned(density),
  }));
  return {
    of: feature.id,
    title: feature.title,
    role: feature.role,
    isShaft: turn === 1,
    designs,
    nominals,
    made,
    wear: wearOf(kept, densities, turn),
    limits: newLimits({ designs, nominals, made, isShaft: turn === 1, isDiameter: isDiameter(feature.kind) }, today),
    next: [],
  };
}

/** As many places as a picture needs, over the stretch that holds all but 0.2 % of the probability. */
function thinned(density: {
  from: number;
  step: number;
  density: Float64Array;
  specimen: string;
}): MadeSize['density'] {
  const [from, to] = [quantile(density, 0.001), quantile(density, 0.999)];
  const step = Math.max((to - from) / drawn, 1e-6);
  const values = Array.from({ length: drawn + 1 }, (_, i) => {
    const at = (from + i * step - density.from) / density.step;
    const k = Math.floor(at);
    const [a, b] = [density.density[k] ?? 0, density.density[k + 1] ?? 0];
    return Number((a + (at - k) * (b - a)).toPrecision(4));
  });
  return { from, step, values };
}

/** The mate of a size as it is today: from its own readings where there are any, else as its size was entered. */
export function mateToday(m: Measured, all: readonly Measured[], habits: PerHabit): MateToday | undefined {
  const partner = all.find((p) => p.mate?.with === m.feature.id && p.turn !== m.turn);
  if (!partner?.mate) return undefined;
  const sound = partner.kept
    .filter((w) => w.reading.condition !== 'damaged')
    .flatMap((w) => (isEntered(w.reading) ? enteredEnds(partner.mate, w.value) : [w.value]));
  if (sound.length === 0) return undefined;
  const isBore = partner.turn === -1;
  const [small, large] = [Math.min(...sound), Math.max(...sound)];
  const [own] = designsOf(m, habits).designs;
  const [its] = designsOf(partner, habits).designs;
  const designed =
    own && its && own.nominal !== undefined && its.nominal === own.nominal
      ? isBore
        ? { least: its.min - own.max, most: its.max - own.min }
        : { least: own.min - its.max, most: own.max - its.min }
      : undefined;
  return {
    name: partner.mate.name,
    tightest: isBore ? small : large,
    loosest: isBore ? large : small,
    wanted: partner.mate.wanted,
    designed,
  };
}

/** A size as entered may lie anywhere within its limits. */
function enteredEnds(mate: Measured['mate'], value: Mm): Mm[] {
  if (!mate?.size) return [value];
  const { min, max } = sizeLimits(mate.size, undefined);
  return [min, max];
}
