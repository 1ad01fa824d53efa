/**
 * The design of a worn part from everything measured on it: every size with its mates, all of them under one habit of
 * design (inches or millimetres, hole or shaft basis), and the threads, tapers, crowns, grooves and drives.
 */
import { curveReading } from '../evidence/gather.ts';
import { handsOf } from '../evidence/repeatability.ts';
import type { Reading } from '../evidence/schema.ts';
import { type Finding, worstFirst } from '../finding.ts';
import { recoverCurves } from './curves.ts';
import { describeSize, mateToday } from './describe-size.ts';
import { featuresOf } from './features.ts';
import { habitPrior, type PerHabit } from './hypotheses.ts';
import { joinMates, pooled, samePieces } from './mates.ts';
import { enteredMates, measure } from './measure.ts';
import { nextReadings } from './next-reading.ts';
import type { Measured, RecoverInput } from './recover-input.ts';
import type { RecoveredSize, RecoverResult } from './recover-result.ts';
import { recoverShapes } from './shapes.ts';
import { heard, recoverThreads } from './threads.ts';

/** The whole part. Never throws for what was measured, however little or contradictory: it says so in its findings. */
export function recover(input: RecoverInput): RecoverResult {
  const findings: Finding[] = [];
  const mates = input.mates ?? [];
  const features = [...(input.part ? featuresOf(input.part) : []), ...(input.features ?? [])];
  const threaded = new Set((input.part?.threads ?? []).map((t) => `${t.on}.diameter`));
  const written = input.evidence?.readings ?? [];
  const entered = enteredMates(mates, new Set(written.map((r) => r.of)));
  const context = {
    input: { ...input, gauges: [...input.gauges, ...entered.gauges] },
    features,
    mates,
    hands: handsOf(written),
  };
  const pieces = samePieces(mates);
  const readingsOf = pooled(group([...written, ...entered.readings]), pieces);
  const measured = [...readingsOf].flatMap(([of, readings]) => {
    if (threaded.has(of) || isOfThread(of) || curveReading(of)) return [];
    const found = measure(of, readings, context, findings);
    return found ? [found] : [];
  });
  const { joined, groups } = withMates(measured, pieces);
  const threads = recoverThreads(input, readingsOf);
  const habits = [...groups, ...threads.byHabit].reduce(heard, habitPrior(input.machine));
  const sizes: RecoveredSize[] = joined.map((m) => {
    const size = describeSize(m, habits);
    const today = m.mate ? undefined : mateToday(m, joined, habits);
    return today ? describeSize(m, habits, today) : size;
  });
  const next = nextReadings(joined, sizes, habits, input);
  const shapes = recoverShapes(input.part, sizes);
  const curves = recoverCurves(input, readingsOf);
  findings.push(...threads.findings, ...shapes.findings, ...curves.findings, ...otherSystem(input.machine, habits));
  return {
    sizes: sizes.map((s) => ({ ...s, next: next.filter((n) => n.of === s.of) })),
    threads: threads.found(habits),
    tapers: shapes.tapers,
    crowns: shapes.crowns,
    curves: curves.curves,
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

/** Features with their mates' evidence worked in; and what each group says of the habit. */
function withMates(
  measured: readonly Measured[],
  pieces: readonly (readonly string[])[],
): { joined: Measured[]; groups: PerHabit[] } {
  const joined: Measured[] = [];
  const groups: PerHabit[] = [];
  const taken = new Set<Measured>();
  const partnersOf = (m: Measured) => measured.filter((p) => p.mate?.with === m.feature.id && p.turn !== m.turn);
  for (const ids of pieces) {
    const sides = measured.filter((p) => p.mate && ids.includes(p.mate.id));
    const features = measured.filter((m) => !m.mate && sides.some((p) => p.mate?.with === m.feature.id));
    const [piece] = sides;
    // A feature that works against another piece besides is heard with its own mates alone.
    if (!piece || features.length < 2 || features.some((f) => !partnersOf(f).every((p) => sides.includes(p)))) continue;
    const result = joinMates(
      piece.evidence,
      features.map((f) => f.evidence),
    );
    groups.push(result.feature.byHabit);
    features.forEach((f, i) => {
      joined.push({ ...f, evidence: result.mates[i] ?? f.evidence });
    });
    for (const side of sides) joined.push({ ...side, evidence: result.feature });
    for (const one of [...features, ...sides]) taken.add(one);
  }
  for (const m of measured.filter((one) => !one.mate && !taken.has(one))) {
    const partners = partnersOf(m).filter((p) => !taken.has(p));
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

/** The readings speak for the other system of units than the machine's country does. */
function otherSystem(machine: RecoverInput['machine'], habits: PerHabit): Finding[] {
  const [, , hole, shaft] = habitPrior(machine);
  const [before, after] = [hole + shaft, habits[2] + habits[3]];
  if (!(before < 0.2 && after > 0.8) && !(before > 0.8 && after < 0.2)) return [];
  return [
    {
      id: 'evidence.other-system',
      level: 'note',
      stage: 'evidence',
      at: 'machine',
      says: `Sizes and threads speak for ${after > 0.5 ? 'inches' : 'millimetres'}, which is not to be expected of a machine from ${machine?.country ?? 'there'}${machine?.decade ? ` of the ${machine.decade}s` : ''}.`,
      because: [
        {
          what: 'probability of inches before the readings',
          value: Number((100 * before).toFixed(1)),
          unit: '%',
          source: 'recover-priors',
        },
        { what: 'probability of inches after them', value: Number((100 * after).toFixed(1)), unit: '%' },
      ],
      remedies: [
        'Look whether the part was bought in, or made elsewhere under licence',
        'Check that the readings are in the unit they were taken in',
      ],
    },
  ];
}
