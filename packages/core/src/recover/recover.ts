/**
 * The design of a worn part from everything measured on it: every size with its mates, all of them under one habit of
 * design (inches or millimetres, hole or shaft basis), and the threads, tapers, crowns, grooves and drives.
 */
import { touchOf } from '../evidence/gather.ts';
import { handsOf } from '../evidence/repeatability.ts';
import type { Reading } from '../evidence/schema.ts';
import { weigh } from '../evidence/uncertainty.ts';
import { type Finding, worstFirst } from '../finding.ts';
import type { Mm } from '../units/quantities.ts';
import { screen } from './conflicts.ts';
import { describeSize, mateToday } from './describe-size.ts';
import {
  featuresOf,
  isDiameter,
  isShaftLike,
  type RecoverFeature,
  type RecoverMate,
  statedOf,
  unnamedFeature,
} from './features.ts';
import { habitPrior, type PerHabit } from './hypotheses.ts';
import { joinMates } from './mates.ts';
import { nextReadings } from './next-reading.ts';
import type { Turn } from './posterior.ts';
import { ready } from './prepare.ts';
import type { Measured, RecoverInput } from './recover-input.ts';
import type { RecoveredSize, RecoverResult } from './recover-result.ts';
import { recoverShapes } from './shapes.ts';
import { sizeEvidence } from './size.ts';
import { heard, recoverThreads } from './threads.ts';

/** Expansion taken where the material is not known: steel, per kelvin. */
const steelExpansion = 11.5e-6;

/** The whole part. Never throws for what was measured, however little or contradictory: it says so in its findings. */
export function recover(input: RecoverInput): RecoverResult {
  const findings: Finding[] = [];
  const mates = input.mates ?? [];
  const features = [...(input.part ? featuresOf(input.part) : []), ...(input.features ?? [])];
  const threaded = new Set((input.part?.threads ?? []).map((t) => `${t.on}.diameter`));
  const hands = handsOf(input.evidence?.readings ?? []);
  const readingsOf = group(input.evidence?.readings ?? []);
  const measured = [...readingsOf].flatMap(([of, readings]) => {
    if (threaded.has(of) || isOfThread(of)) return [];
    const found = measure(of, readings, { input, features, mates, hands }, findings);
    return found ? [found] : [];
  });
  const { joined, groups } = withMates(measured);
  const threads = recoverThreads(input, readingsOf);
  const habits = [...groups, ...threads.byHabit].reduce(heard, habitPrior(input.machine));
  const sizes: RecoveredSize[] = joined.map((m) => {
    const size = describeSize(m, habits);
    const today = m.mate ? undefined : mateToday(m, joined, habits);
    return today ? describeSize(m, habits, today) : size;
  });
  const next = nextReadings(joined, sizes, habits, input);
  const shapes = recoverShapes(input.part, sizes);
  findings.push(...threads.findings, ...shapes.findings);
  return {
    sizes: sizes.map((s) => ({ ...s, next: next.filter((n) => n.of === s.of) })),
    threads: threads.found(habits),
    tapers: shapes.tapers,
    crowns: shapes.crowns,
    rings: shapes.rings,
    drives: shapes.drives,
    inches: habits[2] + habits[3],
    shaftBasis: habits[1] + habits[3],
    next: [...threads.next, ...next].toSorted((a, b) => b.gain - a.gain).slice(0, 8),
    findings: worstFirst(findings),
  };
}

const isOfThread = (of: string) => /\.(pitch|crest)$/.test(of);

function group(readings: readonly Reading[]): Map<string, Reading[]> {
  const found = new Map<string, Reading[]>();
  for (const r of readings) {
    const known = found.get(r.of);
    if (known) known.push(r);
    else found.set(r.of, [r]);
  }
  return found;
}

interface Context {
  readonly input: RecoverInput;
  readonly features: readonly RecoverFeature[];
  readonly mates: readonly RecoverMate[];
  readonly hands: ReadonlyMap<string, Mm>;
}

function measure(
  of: string,
  readings: readonly Reading[],
  { input, features, mates, hands }: Context,
  findings: Finding[],
): Measured | undefined {
  const mate = mates.find((m) => `${m.id}.size` === of);
  const feature = mate ? featureOfMate(mate, features) : (features.find((f) => f.id === of) ?? unnamedFeature(of));
  const turn: Turn = isShaftLike(feature.kind) ? 1 : -1;
  const expansion = input.part?.material?.expansion ?? steelExpansion;
  const weighed = readings.map((r) =>
    weigh(
      r,
      input.gauges.find((g) => g.id === r.gauge),
      touchOf(feature.kind),
      mate ? steelExpansion : expansion,
      hands.get(r.gauge ?? ''),
    ),
  );
  const screened = screen(of, weighed, feature.entered, turn);
  findings.push(...screened.findings);
  const { readings: prepared, joined } = ready(screened.kept, turn);
  if (joined.length > 0) findings.push(repeated(of, joined));
  const manual = input.evidence?.manual?.find((m) => m.of === of)?.size;
  const ofMate = mate?.size?.tolerance.kind === 'class' ? mate.size : undefined;
  const evidence = sizeEvidence(prepared, {
    role: feature.role,
    isShaft: turn === 1,
    isDiameter: isDiameter(feature.kind),
    stated: statedOf(manual ?? ofMate),
  });
  if (!evidence) {
    findings.push(nothingToGoBy(of, readings.length));
    return undefined;
  }
  return { feature, turn, kept: screened.kept, evidence, mate };
}

function featureOfMate(mate: RecoverMate, features: readonly RecoverFeature[]): RecoverFeature {
  const partner = features.find((f) => f.id === mate.with);
  return {
    id: `${mate.id}.size`,
    title: mate.name,
    kind: mate.kind === 'bore' ? 'inside diameter' : 'outside diameter',
    role: partner?.role ?? 'free',
    entered: mate.size?.nominal,
  };
}

/** Features with their mates' evidence worked in; and what each group says of the habit. */
function withMates(measured: readonly Measured[]): { joined: Measured[]; groups: PerHabit[] } {
  const joined: Measured[] = [];
  const groups: PerHabit[] = [];
  const taken = new Set<Measured>();
  for (const m of measured.filter((one) => !one.mate)) {
    const partners = measured.filter((p) => p.mate?.with === m.feature.id && p.turn !== m.turn);
    const result = joinMates(
      m.evidence,
      partners.map((p) => p.evidence),
    );
    groups.push(result.feature.byHabit);
    joined.push({ ...m, evidence: result.feature });
    partners.forEach((p, i) => {
      taken.add(p);
      joined.push({ ...p, evidence: result.mates[i] ?? p.evidence });
    });
  }
  for (const m of measured.filter((one) => one.mate && !taken.has(one))) {
    groups.push(m.evidence.byHabit);
    joined.push(m);
  }
  return { joined, groups };
}

function repeated(of: string, joined: readonly (readonly string[])[]): Finding {
  return {
    id: 'evidence.same-place-twice',
    level: 'note',
    stage: 'evidence',
    at: of,
    says: `Readings ${joined.map((ids) => ids.join(' and ')).join('; ')} of ${of} are of one place: together they count as one reading, better repeated.`,
    because: [],
    remedies: ['Measure a further place: that tells more about wear'],
  };
}

function nothingToGoBy(of: string, count: number): Finding {
  return {
    id: 'evidence.nothing-to-go-by',
    level: 'note',
    stage: 'evidence',
    at: of,
    says: `${count === 1 ? 'The one reading' : `None of the ${count} readings`} of ${of} can be used: damaged, or set aside.`,
    because: [],
    remedies: ['Measure a place that is not damaged'],
  };
}
