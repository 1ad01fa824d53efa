/** The abrasive stage: which papers, and what to leave for each of the finer ones. */
import { DomainError } from '../errors.ts';
import { findGrit, type Grit, gritSteps, paperFor } from '../standards/finish/grit.ts';
import type { Micrometre, Second } from '../units/quantities.ts';
import type { DialTable } from './dial-table.ts';
import type { Draft, Task } from './draft.ts';
import { nothing, type Outcome } from './outcome.ts';

/** First paper after a careful last cut; `common practice`. */
const firstPaper = 'P240';
/** Rubbing, wiping and measuring with one paper; `common practice`. */
const eachPaper: Second = 300;

export function performPolish(draft: Draft, task: Extract<Task, { does: 'polish' }>): Outcome {
  const papers = papersFor(task.finish);
  const oil = 'oil, cleaning rag';
  if (papers.length === 0)
    return {
      ...nothing(),
      cutting: 3 * eachPaper,
      needs: [oil],
      why: ['No printed paper reaches this roughness by hand: lap it.'],
    };
  return {
    ...nothing(),
    cutting: eachPaper * papers.length,
    tables: [table(draft, task, papers)],
    needs: [`abrasive paper ${papers.map((p) => p.grade).join(', ')}`, oil],
    why: ['Each paper takes out the scratches of the one before it; what is left for it goes by their grain.'],
  };
}

/** From the first paper to the coarsest that leaves the roughness wanted. */
function papersFor(ra: Micrometre): readonly Grit[] {
  try {
    const [coarse] = paperFor(ra).grades;
    const first = findGrit(firstPaper);
    const last = nearest(coarse);
    return last.grain >= first.grain ? [last] : gritSteps(first, last);
  } catch (error) {
    if (!(error instanceof DomainError)) throw error;
    return [];
  }
}

/** The European grade of a printed number, or the next finer there is. */
function nearest(number: number): Grit {
  const grades = [80, 100, 120, 150, 180, 220, 240, 280, 320, 360, 400, 500, 600, 800, 1000, 1200, 1500, 2000, 2500];
  return findGrit(`P${grades.find((g) => g >= number) ?? 2500}`);
}

function table(
  draft: Draft,
  { from, to, finish }: Extract<Task, { does: 'polish' }>,
  papers: readonly Grit[],
): DialTable {
  const total = Math.max(0, from - to);
  const grain = papers.reduce((sum, p) => sum + p.grain, 0);
  return {
    id: `${draft.id}-table`,
    kind: 'polish',
    title: draft.title,
    operation: draft.id,
    columns: [
      { key: 'paper', title: 'paper', unit: '' },
      { key: 'grain', title: 'grain', unit: 'µm', decimals: 0 },
      { key: 'until', title: 'down to diameter', unit: 'mm', decimals: 3 },
      { key: 'takes', title: 'takes off', unit: 'mm', decimals: 3 },
      { key: 'measured', title: 'measured', unit: 'mm', blank: true },
    ],
    rows: papers.map((paper, i) => {
      const later = papers.slice(i + 1).reduce((sum, p) => sum + p.grain, 0);
      return {
        paper: paper.grade,
        grain: paper.grain,
        until: to + ((to < from ? total : 0) * later) / grain,
        takes: (total * paper.grain) / grain,
      };
    }),
    notes: [
      `Ra ${finish} µm is wanted; what a paper leaves differs by a factor of three: look, compare, measure.`,
      'Measure cold and often: paper warms the work, and a few hundredths are gone in a minute.',
      'Move the strip along the work all the time; wipe every grain of a paper off before the next.',
    ],
  };
}
