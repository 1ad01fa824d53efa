/** Assessments of stored jobs and of documents that are only looked at, in the workshop as it stands. */
import { isDeepStrictEqual } from 'node:util';
import { InputError } from '@sparewright/core/errors';
import { createAssessor } from '@sparewright/core/job/assess';
import { readJob, readWorkshop } from '@sparewright/core/job/read-document';
import { recoverJob } from '@sparewright/core/job/recover-job';
import type { Workshop } from '@sparewright/core/lathe/schema';
import type { Assessed } from '@sparewright/output/page/job-page';
import type { Summary } from '@sparewright/store/history';
import type { Store } from '@sparewright/store/open-store';
import { summaryOf } from './summary.ts';

export interface StoredJob extends Assessed {
  readonly id: string;
  readonly revision: number;
}

export interface Assessments {
  /** The latest revision of a job. @throws StoreError when there is no such job */
  ofJob(id: string): StoredJob;
  /** Any job document. @throws InputError when it is none */
  ofDocument(document: unknown): Assessed;
  /** What the list shows of a document; empty when the program fails at it, for that must not keep it from being saved. */
  summaryOf(document: unknown): Summary;
}

export interface AssessmentsOptions {
  readonly store: () => Store;
  readonly fault: (error: unknown) => void;
}

/** What its readings say the part was meant to be: worked out where it is shown, for it takes longer than all else. */
export function recoveredOf({ job, workshop, assessment }: Assessed): ReturnType<typeof recoverJob> {
  return recoverJob(job, workshop, assessment.part);
}

/** Jobs open at the same time. */
const mostKept = 30;

export function assessmentsOf({ store, fault }: AssessmentsOptions): Assessments {
  const assessor = createAssessor();
  const kept = new Map<string, StoredJob>();
  let workshop: { readonly key: string; readonly read: Workshop | undefined } = { key: 'none', read: undefined };

  /** Read anew only when it has changed. A restore may bring another one under the same number, hence `saved`. */
  function presentWorkshop(): typeof workshop {
    const stored = store().workshop.get();
    const key = stored ? `${stored.number} ${stored.saved}` : 'none';
    if (workshop.key !== key) workshop = { key, read: stored && readWorkshop(stored.document) };
    return workshop;
  }

  function ofDocument(document: unknown): Assessed {
    const job = readJob(document);
    const { read } = presentWorkshop();
    return { document, job, workshop: read, assessment: assessor(job, read) };
  }

  return {
    ofJob(id) {
      const { jobs } = store();
      const { number, saved, document, summary } = jobs.get(id);
      const key = `${id} ${number} ${saved} ${presentWorkshop().key}`;
      const found = kept.get(key) ?? { ...ofDocument(document), id, revision: number };
      // The workshop may have changed since the job was saved, or the program.
      const present = summaryOf(found.assessment);
      if (!kept.has(key) && !isDeepStrictEqual(present, summary)) jobs.summarise(id, number, present);
      kept.delete(key);
      kept.set(key, found);
      const [oldest] = kept.keys();
      if (kept.size > mostKept && oldest !== undefined) kept.delete(oldest);
      return found;
    },
    ofDocument,
    summaryOf(document) {
      try {
        return summaryOf(ofDocument(document).assessment);
      } catch (error) {
        if (error instanceof InputError) throw error;
        fault(error);
        return {};
      }
    },
  };
}
