/** Threads drawn at random and measured, for the accuracy of their recovery. */
import { DomainError } from '../src/errors.ts';
import type { PerHabit } from '../src/recover/hypotheses.ts';
import { matchesOf, threadAnswer } from '../src/recover/threads.ts';
import { standardThreads } from '../src/standards/threads/catalogue.ts';
import type { Measured } from '../src/standards/threads/find.ts';
import { threadLimits } from '../src/standards/threads/limits.ts';
import { parseThread, type Thread } from '../src/standards/threads/thread.ts';

export interface InventedThread {
  readonly thread: Thread;
  readonly crest: Measured;
  readonly pitch: Measured;
}

const wornBy = { light: 0.02, medium: 0.08, heavy: 0.2 } as const;
const commonSeries: Readonly<Record<string, number>> = { coarse: 4, fine: 1, UNC: 4, UNF: 3, BSW: 4, BSF: 4, BA: 2 };

/** A bolt of 3 to 40 mm, common series more often, its crest somewhere within its limits and worn. */
export function inventThread(random: () => number, isInch: boolean, wear: keyof typeof wornBy): InventedThread {
  const all = standardThreads().filter(
    (t) =>
      (t.family === 'metric') !== isInch &&
      t.majorDiameter > 3 &&
      t.majorDiameter < 40 &&
      (commonSeries[t.series] ?? 0) > 0,
  );
  const often = all.flatMap((t) => Array.from({ length: commonSeries[t.series] ?? 0 }, () => t));
  const thread = often[Math.floor(random() * often.length)];
  if (!thread) throw new Error('no threads');
  const { max, min } = crestLimits(thread);
  const noise = () => 0.012 * Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const crest = min + random() * (max - min) - random() * Math.min(wornBy[wear], 0.25 * thread.pitch) + noise();
  const pitch = thread.pitch + (Math.SQRT2 * noise()) / 10;
  return { thread, crest: { value: crest, uncertainty: 0.015 }, pitch: { value: pitch, uncertainty: 0.003 } };
}

function crestLimits(thread: Thread): { max: number; min: number } {
  try {
    return threadLimits(thread, 'external').major;
  } catch (error) {
    if (!(error instanceof DomainError)) throw error;
    return { max: thread.majorDiameter, min: thread.majorDiameter - 0.1 * thread.pitch };
  }
}

/** The thread recovered from crest and pitch, or from the crest alone. */
export function recoveredThread(t: InventedThread, habits: PerHabit, withPitch: boolean): Thread | undefined {
  const e = {
    of: 'thread',
    title: 'thread',
    side: 'external' as const,
    crest: t.crest,
    pitch: withPitch ? t.pitch : undefined,
  };
  const matches = matchesOf(e);
  if (matches.length === 0) return undefined;
  const first = threadAnswer(e, matches, habits).designs[0];
  return first && parseThread(first.designation);
}
