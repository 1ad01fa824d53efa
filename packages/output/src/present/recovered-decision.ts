/** What was decided about a recovered size or shape. */
import type { DecisionView } from './job-view.ts';
import type { ViewContext } from './recovered-context.ts';

export function decisionAbout(of: string, { job }: Pick<ViewContext, 'job'>): DecisionView | null {
  const found = job.decisions?.findLast((d) => d.about === of);
  return found ? { decided: found.decided, why: found.why } : null;
}

/** Sizes left open are drawn in pencil. */
export function isLeftOpen(of: string, { job }: Pick<ViewContext, 'job'>): boolean {
  return job.part?.leftOpen?.includes(of) ?? false;
}
