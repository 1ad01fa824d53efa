/** Thread designations read, before their sections are placed. */
import { InputError } from '../errors.ts';
import type { Finding } from '../finding.ts';
import { parseThread, type Thread } from '../standards/threads/thread.ts';
import { called } from './gaps.ts';
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
