/**
 * What would help a whole job: every remedy tried on all its cuts, and ranked by what it does for the worst of them and for all.
 */
import { DomainError } from '../errors.ts';
import type { CutMaterial } from './cut-forces.ts';
import { rank } from './cut-verdict.ts';
import { gainOf, labels, type Outcome, outcome } from './remedies.ts';
import { type Effort, remedies, type Trial } from './remedy-list.ts';
import type { Lathe } from './schema.ts';

/** A cut of the job. */
export interface JobCut extends Trial {
  readonly id: string;
  readonly material: CutMaterial;
}

export interface CutStands {
  readonly id: string;
  readonly outcome: Outcome;
}

export interface JobRemedy {
  readonly name: string;
  readonly effort: Effort;
  readonly assumes?: string | undefined;
  /** For the cut that stands worst without it; 0 when it does not apply there. */
  readonly worstGain: number;
  /** Over all cuts, those that it makes worse left as they are: nobody would take it there. */
  readonly sumGain: number;
  /** Cuts that go with it and do not without. */
  readonly settles: readonly string[];
  /** Cuts it applies to, as they stand with it. */
  readonly cuts: readonly CutStands[];
}

export interface JobRemedies {
  /** Worst first. */
  readonly asItStands: readonly CutStands[];
  /** Best first. */
  readonly remedies: readonly JobRemedy[];
}

/** Draws a job is tried with: there are many cuts. */
const jobDraws = 16;
/** Gains below this are not told from nothing. */
const nothing = 0.02;

/**
 * Tries every remedy on every cut of a job.
 *
 * A cut's `id` is what the caller knows it by. Remedies that change the lathe change it for all cuts; settings, cutters and set-ups
 * are taken only where they help.
 *
 * @throws DomainError when a cut cannot be, naming which
 */
export function whatWouldHelpJob(cuts: readonly JobCut[], lathe: Lathe): JobRemedies {
  if (cuts.length === 0) throw new DomainError('cuts', 0, 'at least one cut');
  const stands = cuts.map((cut) => ({ cut, before: named(cut.id, () => outcome(cut, cut.material, lathe, jobDraws)) }));
  const worst = stands.reduce((a, b) => (rank(b.before.decides) > rank(a.before.decides) ? b : a));
  const found = remedies.flatMap((remedy): JobRemedy[] => {
    const tried = stands.flatMap(({ cut, before }) => {
      const trial = remedy.apply(cut, lathe);
      if (!trial) return [];
      const after = named(cut.id, () => outcome(trial, cut.material, lathe, jobDraws));
      return [{ cut, before, after, gain: gainOf(before, after) }];
    });
    const everywhere = remedy.effort === 'an evening' || remedy.effort === 'a project';
    const taken = everywhere ? tried : tried.filter((t) => t.gain > nothing);
    if (taken.length === 0) return [];
    return [
      {
        ...labels(remedy),
        worstGain: taken.find((t) => t.cut === worst.cut)?.gain ?? 0,
        sumGain: taken.reduce((sum, t) => sum + t.gain, 0),
        settles: taken
          .filter((t) => t.before.decides.state !== 'good' && t.after.decides.state === 'good')
          .map((t) => t.cut.id),
        cuts: taken.map((t) => ({ id: t.cut.id, outcome: t.after })),
      },
    ];
  });
  return {
    asItStands: stands
      .toSorted((a, b) => rank(b.before.decides) - rank(a.before.decides))
      .map(({ cut, before }) => ({ id: cut.id, outcome: before })),
    remedies: found.toSorted((a, b) => worth(b, stands.length) - worth(a, stands.length)),
  };
}

/** The worst cut decides whether the job can be made, and counts as much as all others together. */
function worth({ worstGain, sumGain }: JobRemedy, count: number): number {
  return worstGain + sumGain / count;
}

/** A refusal names the cut it belongs to. */
function named<T>(id: string, work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (!(error instanceof DomainError)) throw error;
    throw new DomainError(`${id}: ${error.parameter}`, error.value, error.allowed);
  }
}
