/**
 * A shaft and its bore were designed together: the same nominal size, classes of one basis. Each hears what the other's
 * readings say through that joint prior; the habit hears the pair once.
 *
 *     P(h, g) = P(h) · (κ [same nominal] P(class of g) + (1 − κ) P(g))
 */
import type { Reading } from '../evidence/schema.ts';
import type { Mm } from '../units/quantities.ts';
import type { RecoverMate } from './features.ts';
import type { Hypothesis, PerHabit } from './hypotheses.ts';
import { isEntered } from './measure.ts';
import { evidenceByHabit, type Weighed } from './posterior.ts';
import type { SizeEvidence } from './size.ts';

/** Share of pairs that were designed on one nominal size: `common practice`. */
const together = 0.9;

const four = (value: (i: 0 | 1 | 2 | 3) => number): PerHabit => [value(0), value(1), value(2), value(3)];

const times = (a: PerHabit, b: PerHabit): PerHabit => four((i) => a[i] * b[i]);

/** Sums by nominal size under each habit. */
function byNominal(weighed: readonly Weighed[], share: (h: Hypothesis) => PerHabit): Map<number, PerHabit> {
  const sums = new Map<number, PerHabit>();
  for (const { hypothesis, evidence } of weighed) {
    const key = nominalKey(hypothesis.nominal);
    if (key === undefined || evidence === 0) continue;
    const s = share(hypothesis);
    const known = sums.get(key) ?? [0, 0, 0, 0];
    sums.set(
      key,
      four((i) => known[i] + evidence * s[i]),
    );
  }
  return sums;
}

const nominalKey = (size: Mm | undefined) => (size === undefined ? undefined : Math.round(size * 1e4));
const none: PerHabit = [0, 0, 0, 0];

function withPriors(weighed: readonly Weighed[], prior: (h: Hypothesis, i: number) => PerHabit): Weighed[] {
  return weighed.map(({ hypothesis, evidence }, i) => ({
    evidence,
    hypothesis: { ...hypothesis, prior: prior(hypothesis, i) },
  }));
}

/**
 * A feature with all mates that work against it, each heard by the others.
 *
 * @param feature  evidence of the feature of the part
 * @param mates  evidence of its mates
 * @returns the same with the joint prior worked in; `byHabit` of the feature is that of the whole group
 */
export function joinMates(
  feature: SizeEvidence,
  mates: readonly SizeEvidence[],
): { feature: SizeEvidence; mates: readonly SizeEvidence[] } {
  if (mates.length === 0) return { feature, mates };
  const views = mates.map((mate) => {
    const alike = byNominal(mate.weighed, (h) => h.ofClass);
    const alone = evidenceByHabit(mate.weighed);
    return (h: Hypothesis): PerHabit => {
      const same = alike.get(nominalKey(h.nominal) ?? -1) ?? none;
      return four((i) => together * same[i] + (1 - together) * alone[i]);
    };
  });
  const seen = feature.weighed.map(({ hypothesis }) => views.map((view) => view(hypothesis)));
  const except = (skipped: number) =>
    withPriors(feature.weighed, (h, k) =>
      (seen[k] ?? []).reduce((prior, v, j) => (j === skipped ? prior : times(prior, v)), h.prior),
    );
  const joined = except(-1);
  return {
    feature: { ...feature, weighed: joined, byHabit: evidenceByHabit(joined) },
    mates: mates.map((mate, m) => {
      const others = except(m);
      const sizes = byNominal(others, (h) => h.prior);
      const alone = evidenceByHabit(others);
      const weighed = withPriors(mate.weighed, (g) => {
        const same = sizes.get(nominalKey(g.nominal) ?? -1) ?? none;
        return four((i) => together * g.ofClass[i] * same[i] + (1 - together) * g.prior[i] * alone[i]);
      });
      return { ...mate, weighed, byHabit: evidenceByHabit(weighed) };
    }),
  };
}

/** Entries of one and the same piece: a bore in which two sections run, entered for each of them. */
export function samePieces(mates: readonly RecoverMate[]): string[][] {
  const groups = new Map<string, string[]>();
  for (const { id, kind, sameAs } of mates) {
    const first = mates.find((m) => m.id === sameAs && m.kind === kind && m.sameAs === undefined)?.id ?? id;
    groups.set(first, [...(groups.get(first) ?? []), id]);
  }
  return [...groups.values()].filter((ids) => ids.length > 1);
}

/** Readings of one piece count for it whichever of its entries they were written under; what was measured goes before what was entered. */
export function pooled(
  readingsOf: ReadonlyMap<string, readonly Reading[]>,
  pieces: readonly (readonly string[])[],
): ReadonlyMap<string, readonly Reading[]> {
  const found = new Map(readingsOf);
  for (const ids of pieces) {
    const names = ids.map((id) => `${id}.size`);
    const all = names.flatMap((name) => readingsOf.get(name) ?? []);
    const measured = all.filter((r) => !isEntered(r));
    const [first] = all;
    const counted = measured.length > 0 ? measured : first ? [first] : [];
    if (counted.length > 0) for (const name of names) found.set(name, counted);
  }
  return found;
}
