/** Threads put on their sections. */
import { InputError } from '../errors.ts';
import type { Finding } from '../finding.ts';
import { parseThread, type Thread } from '../standards/threads/thread.ts';
import { called } from './gaps.ts';
import type { PlacedThread } from './part-result.ts';
import type { PlacedSection } from './place-sections.ts';
import type { Part, ThreadFeature } from './schema.ts';

/** A thread as entered and, where its designation could be read, what it is. */
export interface ReadThread {
  readonly feature: ThreadFeature;
  readonly thread: Thread | undefined;
}

export function readThreads(part: Part): { threads: ReadThread[]; findings: Finding[] } {
  const findings: Finding[] = [];
  const threads = (part.threads ?? []).map((feature): ReadThread => {
    if (feature.designation === undefined) {
      findings.push(
        unreadable(feature, 'note', 'part.size-missing', 'has no designation yet', [
          'enter it, for example M10x1.25-6g',
        ]),
      );
      return { feature, thread: undefined };
    }
    try {
      return { feature, thread: parseThread(feature.designation) };
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      const issue = error.issues[0];
      findings.push(
        unreadable(
          feature,
          'stop',
          'part.thread-unknown',
          `is written “${feature.designation}”, which cannot be read as a thread`,
          [
            `write ${issue?.expected ?? 'a thread'}${issue?.example === undefined ? '' : `, for example ${issue.example}`}`,
          ],
        ),
      );
      return { feature, thread: undefined };
    }
  });
  return { threads, findings };
}

function unreadable(
  feature: ThreadFeature,
  level: 'note' | 'stop',
  id: string,
  says: string,
  remedies: readonly string[],
): Finding {
  return {
    id,
    level,
    stage: 'part',
    at: `${feature.id}.designation`,
    says: `The thread ${called(feature)} ${says}.`,
    because: [],
    remedies,
  };
}

/** The threads whose designation and section are known, with the stretch they cover. */
export function placeThreads(
  threads: readonly ReadThread[],
  outside: readonly PlacedSection[],
  inside: readonly PlacedSection[],
): PlacedThread[] {
  return threads.flatMap(({ feature, thread }): PlacedThread[] => {
    if (!thread) return [];
    const external = outside.find((s) => s.feature.id === feature.on);
    const section = external ?? inside.find((s) => s.feature.id === feature.on);
    if (!section) return [];
    const side = external ? 'external' : 'internal';
    const entersAt = freeEnd(feature, section, external ? outside : undefined);
    const whole = section.to - section.from;
    const length = Math.min(feature.length?.nominal ?? whole, whole);
    const from = entersAt === 'left' ? section.from : section.to - length;
    return [{ id: feature.id, on: feature.on, thread, side, from, to: from + length, entersAt }];
  });
}

/** Where a thread begins: as entered, else the smaller neighbour's side outside, the mouth inside. */
function freeEnd(
  feature: ThreadFeature,
  section: PlacedSection,
  outside: readonly PlacedSection[] | undefined,
): 'left' | 'right' {
  const mirrored = section.side === 'inside right';
  if (feature.from !== undefined) return (feature.from === 'start') !== mirrored ? 'left' : 'right';
  if (!outside) return mirrored ? 'right' : 'left';
  const i = outside.indexOf(section);
  const left = outside[i - 1]?.endRadius ?? 0;
  const right = outside[i + 1]?.startRadius ?? 0;
  return right < left ? 'right' : 'left';
}
