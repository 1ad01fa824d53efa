/** Threads: crest, pitch and flank angle to ranked designations, heard together with the habit of the whole machine. */
import type { Reading } from '../evidence/schema.ts';
import { weigh } from '../evidence/uncertainty.ts';
import type { Finding } from '../finding.ts';
import { findThread, type Measured, type ThreadMatch } from '../standards/threads/find.ts';
import type { Thread } from '../standards/threads/thread.ts';
import { radians } from '../units/quantities.ts';
import type { PerHabit } from './hypotheses.ts';
import type { RecoverInput } from './recover-input.ts';
import type { NextReading, RecoveredThread, ThreadDesign } from './recover-result.ts';
import { nextOfThread, type ThreadEvidence, threadFindings, toldApart } from './thread-words.ts';

export interface ThreadsAnswer {
  readonly byHabit: readonly PerHabit[];
  readonly found: (habits: PerHabit) => RecoveredThread[];
  readonly next: readonly NextReading[];
  readonly findings: readonly Finding[];
}

/** An unknown pitch is any pitch. */
const anyPitch: Measured = { value: 1.5, uncertainty: 100 };
/** A metric thread on an inch machine, or the other way. `common practice` */
const stranger = 0.08;

export function recoverThreads(
  input: RecoverInput,
  readingsOf: ReadonlyMap<string, readonly Reading[]>,
): ThreadsAnswer {
  const evidence = evidenceOf(input, readingsOf);
  const matched = evidence.map((e) => ({ e, matches: matchesOf(e) }));
  const byHabit = matched.filter((m) => m.matches.length > 0).map((m) => habitOf(m.matches));
  return {
    byHabit,
    // A thread's own word is taken out of the habits: it is heard again in its answer.
    found: (habits) => matched.map(({ e, matches }) => threadAnswer(e, matches, unheard(habits, habitOf(matches)))),
    next: matched.flatMap(({ e, matches }) => nextOfThread(e, matches)),
    findings: matched.flatMap(({ e, matches }) => threadFindings(e, matches)),
  };
}

export function matchesOf(e: ThreadEvidence): readonly ThreadMatch[] {
  if (!(e.crest.value > 0)) return [];
  const readings = { side: e.side, crestDiameter: e.crest, pitch: e.pitch ?? anyPitch };
  return findThread(e.flankAngle ? { ...readings, flankAngle: e.flankAngle } : readings, 12);
}

function evidenceOf(input: RecoverInput, readingsOf: ReadonlyMap<string, readonly Reading[]>): ThreadEvidence[] {
  const placed = input.part?.threads ?? [];
  const names = new Map<string, { ids: string[]; side: 'external' | 'internal' }>();
  for (const t of placed) names.set(t.id, { ids: [t.id, t.on], side: t.side });
  for (const of of readingsOf.keys()) {
    const id = /^(.+)\.(?:pitch|crest)$/.exec(of)?.[1];
    if (id !== undefined && ![...names.values()].some((n) => n.ids.includes(id)))
      names.set(id, { ids: [id], side: 'external' });
  }
  return [...names].flatMap(([of, { ids, side }]) => {
    const take = (ends: readonly string[]) =>
      ids.flatMap((id) => ends.flatMap((end) => readingsOf.get(`${id}.${end}`) ?? []));
    const isKnownThread = placed.some((t) => t.id === of);
    const crest = crestOf(take(isKnownThread ? ['crest', 'diameter'] : ['crest']), side, input);
    if (!crest) return [];
    const flank = input.evidence?.flankAngles?.find((f) => ids.includes(f.of));
    return [
      {
        of,
        title: titleOf(of, input),
        side,
        crest,
        pitch: pitchOf(take(['pitch']), input),
        flankAngle: flank && { value: radians(flank.angle), uncertainty: radians(flank.uncertainty ?? 1.5) },
      },
    ];
  });
}

function titleOf(of: string, { part }: RecoverInput): string {
  const on = part?.threads.find((t) => t.id === of)?.on;
  const section = [...(part?.outside ?? []), ...(part?.inside ?? [])].find((s) => s.feature.id === on)?.feature;
  if (section) return `thread on the ${section.name ?? section.id.replaceAll('-', ' ')}`;
  const name = of.replaceAll('-', ' ');
  return /thread$/.test(name) ? name : `${name} thread`;
}

/** The crest that has lost least: the largest on a bolt, the smallest in a nut. */
function crestOf(
  readings: readonly Reading[],
  side: 'external' | 'internal',
  input: RecoverInput,
): Measured | undefined {
  const weighed = readings
    .filter((r) => r.condition !== 'damaged' && r.value > 0)
    .map((r) =>
      weigh(
        r,
        input.gauges.find((g) => g.id === r.gauge),
        side === 'external' ? 'outside' : 'inside',
        11.5e-6,
      ),
    );
  const best = weighed.toSorted((a, b) => (side === 'external' ? b.value - a.value : a.value - b.value))[0];
  return best && { value: best.value, uncertainty: best.uncertainty };
}

/** Over N crests both edges are read once: u = √2 u(reading) / N. */
function pitchOf(readings: readonly Reading[], input: RecoverInput): Measured | undefined {
  const each = readings
    .filter((r) => r.value > 0)
    .map((r) => {
      const gauge = input.gauges.find((g) => g.id === r.gauge);
      const { value, uncertainty } = weigh(r, gauge, 'outside', 11.5e-6);
      const over = r.crests ?? 1;
      const edges = gauge?.kind === 'thread pitch gauge' ? 1 : Math.SQRT2;
      return { value: value / over, uncertainty: (edges * uncertainty) / over };
    });
  return each.toSorted((a, b) => a.uncertainty - b.uncertainty)[0];
}

/** Pipe threads are the same on machines of both kinds. */
export function systemOf(thread: Thread): ThreadDesign['system'] {
  if (thread.family === 'metric') return 'metric';
  return thread.family === 'pipe-parallel' || thread.family === 'pipe-taper' ? 'either' : 'inch';
}

/** What a thread says of the habit of the machine. */
export function habitOf(matches: readonly ThreadMatch[]): PerHabit {
  const share = (system: ThreadDesign['system']) =>
    matches.reduce((sum, m) => sum + (systemOf(m.thread) === system ? m.probability : 0), 0);
  const [metric, inch, either] = [share('metric'), share('inch'), share('either')];
  const onMetric = (1 - stranger) * metric + stranger * inch + either / 2;
  const onInch = (1 - stranger) * inch + stranger * metric + either / 2;
  return [onMetric, onMetric, onInch, onInch];
}

function unheard(habits: PerHabit, word: PerHabit): PerHabit {
  const without = (i: 0 | 1 | 2 | 3) => (word[i] > 0 ? habits[i] / word[i] : 0);
  return heard([1, 1, 1, 1], [without(0), without(1), without(2), without(3)]);
}

/** Habits after a word on them. */
export function heard(prior: PerHabit, word: PerHabit): PerHabit {
  const [a, b, c, d] = [prior[0] * word[0], prior[1] * word[1], prior[2] * word[2], prior[3] * word[3]];
  const total = a + b + c + d;
  return total > 0 ? [a / total, b / total, c / total, d / total] : prior;
}

/**
 * @param e  what was measured
 * @param matches  threads it may be
 * @param before  habits by everything but this thread
 */
export function threadAnswer(e: ThreadEvidence, matches: readonly ThreadMatch[], before: PerHabit): RecoveredThread {
  const inches = before[2] + before[3];
  const factor = {
    metric: (1 - inches) * (1 - stranger) + inches * stranger,
    inch: inches * (1 - stranger) + (1 - inches) * stranger,
    either: 0.5,
  };
  const weighed = matches.map((m) => ({ m, w: m.probability * factor[systemOf(m.thread)] }));
  const total = weighed.reduce((sum, { w }) => sum + w, 0) || 1;
  const ranked = weighed.toSorted((a, b) => b.w - a.w);
  const [first, second] = ranked;
  return {
    of: e.of,
    side: e.side,
    crestDiameter: e.crest.value,
    pitch: e.pitch?.value,
    designs: ranked
      .filter(({ w }, i) => i === 0 || w / total > 0.002)
      .slice(0, 8)
      .map(({ m, w }) => ({
        designation: m.thread.designation,
        probability: w / total,
        system: systemOf(m.thread),
        use: m.use,
      })),
    lookAlike: first && second && second.w / total > 0.02 ? toldApart(first.m.thread, second.m.thread) : undefined,
  };
}
