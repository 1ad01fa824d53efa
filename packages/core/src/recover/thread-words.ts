/** What is said of a thread: how it is told from its look-alikes, what does not fit, what to measure next. */
import type { Finding } from '../finding.ts';
import { apart, type Measured, type ThreadMatch } from '../standards/threads/find.ts';
import type { Thread } from '../standards/threads/thread.ts';
import { degrees } from '../units/quantities.ts';
import type { NextReading } from './recover-result.ts';

/** What was measured of one thread. */
export interface ThreadEvidence {
  readonly of: string;
  /** In words: `thread on the shank`. */
  readonly title: string;
  readonly side: 'external' | 'internal';
  readonly crest: Measured;
  readonly pitch?: Measured | undefined;
  /** [rad] */
  readonly flankAngle?: Measured | undefined;
}

/** The test that tells two threads apart, the surest one first. */
export function toldApart(a: Thread, b: Thread): string {
  const d = apart(a, b);
  const tests: { sureness: number; says: string }[] = [
    {
      sureness: Math.abs(d.tenPitches) / 0.03,
      says: `ten pitches measure ${(10 * a.pitch).toFixed(2)} mm on ${a.designation}, ${(10 * b.pitch).toFixed(2)} mm on ${b.designation}`,
    },
    {
      sureness: Math.abs(degrees(d.flankAngle)) / 1.5,
      says: `the flanks of ${a.designation} stand at ${nice(degrees(a.flankAngle))}°, those of ${b.designation} at ${nice(degrees(b.flankAngle))}°: see which gauge shuts out the light`,
    },
    {
      sureness: Math.abs(d.crestDiameter) / 0.05,
      says: `a sound crest of ${a.designation} measures up to ${a.majorDiameter.toFixed(2)} mm, of ${b.designation} up to ${b.majorDiameter.toFixed(2)} mm`,
    },
  ];
  const telling = tests.filter((t) => t.sureness > 1.5).toSorted((x, y) => y.sureness - x.sureness);
  if (telling.length === 0)
    return `${a.designation} and ${b.designation} can hardly be told apart by measuring: try a nut of each.`;
  return `${a.designation} and ${b.designation}: ${telling.map((t) => t.says).join('; ')}.`;
}

const nice = (angle: number) => Number(angle.toFixed(1));

export function threadFindings(e: ThreadEvidence, matches: readonly ThreadMatch[]): Finding[] {
  const [first, second] = matches;
  const base = { stage: 'evidence' as const, at: e.of };
  if (!first) {
    return [
      {
        ...base,
        id: 'evidence.no-such-thread',
        level: 'caution',
        says: 'No listed thread fits crest and pitch as measured.',
        because: [
          { what: 'crest diameter', value: e.crest.value, unit: 'mm' },
          ...(e.pitch ? [{ what: 'pitch', value: e.pitch.value, unit: 'mm' }] : []),
        ],
        remedies: [
          'Measure the pitch over ten crests',
          'Look whether the crest is worn or burred',
          'It may be a special: cut it to what was measured',
        ],
      },
    ];
  }
  if (!second || second.probability < 0.1) return [];
  return [
    {
      ...base,
      id: 'evidence.thread-look-alike',
      level: 'note',
      says: `Two threads look alike here. ${toldApart(first.thread, second.thread)}`,
      because: [
        { what: `probability of ${first.thread.designation}`, value: 100 * first.probability, unit: '%' },
        { what: `probability of ${second.thread.designation}`, value: 100 * second.probability, unit: '%' },
      ],
      remedies: ['Measure what tells them apart', 'Try a nut or a tap of each'],
    },
  ];
}

/** What is not measured yet, with what it would tell: the entropy of the classes it sorts the threads into. */
export function nextOfThread(e: ThreadEvidence, matches: readonly ThreadMatch[]): NextReading[] {
  const now = matches[0]?.probability ?? 0;
  const sorted = (key: (t: Thread) => string) => {
    const classes = new Map<string, { total: number; most: number }>();
    for (const m of matches) {
      const known = classes.get(key(m.thread)) ?? { total: 0, most: 0 };
      classes.set(key(m.thread), { total: known.total + m.probability, most: Math.max(known.most, m.probability) });
    }
    const all = [...classes.values()];
    return {
      gain: -all.reduce((sum, c) => sum + (c.total > 0 ? c.total * Math.log2(c.total) : 0), 0),
      surenessThen: Math.min(
        1,
        all.reduce((sum, c) => sum + c.most, 0),
      ),
    };
  };
  const made = (
    says: string,
    gauge: string | undefined,
    told: { gain: number; surenessThen: number },
  ): NextReading => ({
    of: e.of,
    says,
    gauge,
    specimen: undefined,
    surenessNow: now,
    ...told,
  });
  const found: NextReading[] = [];
  const roughPitch = e.pitch === undefined || e.pitch.uncertainty > 0.02;
  if (roughPitch)
    found.push(
      made(
        `Measure the pitch of the ${e.title} over ten crests, edge to edge, and divide by ten.`,
        undefined,
        sorted((t) => t.pitch.toFixed(2)),
      ),
    );
  if (!e.flankAngle)
    found.push(
      made(
        `Hold a 60° and a 55° thread gauge against the ${e.title} and see which shuts out the light.`,
        undefined,
        sorted((t) => degrees(t.flankAngle).toFixed(1)),
      ),
    );
  return found.filter((f) => f.gain > 0.02);
}
