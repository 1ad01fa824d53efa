/**
 * Gives every drafted operation its cutter, cut, table and time, in order, while the work shrinks under it.
 */
import { DomainError } from '../errors.ts';
import type { Finding } from '../finding.ts';
import type { DialTable } from './dial-table.ts';
import type { Draft } from './draft.ts';
import type { Holding } from './hold.ts';
import { nothing, type Outcome, type Scene } from './outcome.ts';
import { performDrill } from './perform-hole.ts';
import { performGroove, performPartOff } from './perform-plunge.ts';
import { performCone, performCurve } from './perform-slide.ts';
import { performThread } from './perform-thread.ts';
import { performFace, performTurn } from './perform-turn.ts';
import { operationHandling } from './practice.ts';
import type { Operation } from './route-result.ts';
import type { Workpiece } from './workpiece.ts';

export interface Realised {
  readonly operation: Operation;
  readonly tables: readonly DialTable[];
  readonly findings: readonly Finding[];
  readonly work: Workpiece;
  /** What to lay out for it. */
  readonly needs: readonly string[];
}

/** Published ranges of cutting times on hand-worked lathes are wide; `common practice`. */
const quick = 0.7;
const slow = 1.8;

export function realise(
  scene: Scene,
  draft: Draft,
  number: number,
  reasons: readonly string[],
  holding: Holding,
  work: Workpiece,
): Realised {
  const outcome = performSafely(scene, draft, holding, work);
  const likely = operationHandling + outcome.cutting;
  return {
    operation: {
      id: draft.id,
      number,
      setup: draft.setup,
      kind: draft.kind,
      title: draft.title,
      features: draft.features,
      cutter: outcome.cutter?.name,
      cut: outcome.cut,
      from: draft.from,
      to: draft.to,
      time: { low: quick * likely, likely, high: slow * likely },
      why: [...draft.why, ...reasons, ...(outcome.why ?? [])],
      cautions: draft.cautions,
      tables: outcome.tables.map((t) => t.id),
    },
    tables: outcome.tables,
    findings: outcome.findings,
    work: outcome.work,
    needs: [...(outcome.cutter ? [outcome.cutter.name] : []), ...(outcome.needs ?? [])],
  };
}

/** A size outside what a formula covers is said at the operation; the rest of the route is still planned. */
function performSafely(scene: Scene, draft: Draft, holding: Holding, work: Workpiece): Outcome {
  try {
    return perform(scene, draft, holding, work);
  } catch (error) {
    if (!(error instanceof DomainError)) throw error;
    return { ...nothing(work), cutting: 600, findings: [beyondFormulas(draft, error)] };
  }
}

function beyondFormulas(draft: Draft, error: DomainError): Finding {
  return {
    id: 'route.beyond-formulas',
    level: 'caution',
    stage: 'route',
    at: draft.id,
    says: `No cut or table can be worked out here: ${error.message}.`,
    because: [],
    remedies: [
      'Work by measuring and by eye here',
      'Change the feature or the cutter so that the value comes into range',
    ],
  };
}

function perform(scene: Scene, draft: Draft, holding: Holding, work: Workpiece): Outcome {
  const { task } = draft;
  switch (task.does) {
    case 'turn':
      return performTurn(scene, draft, task, holding, work);
    case 'drill':
      return performDrill(scene, draft, task, work);
    case 'groove':
      return performGroove(scene, draft, task, holding, work);
    case 'thread':
      return performThread(scene, draft, task, work);
    case 'cone':
      return performCone(scene, draft, task, holding, work);
    case 'curve':
      return performCurve(scene, draft, task, holding, work);
    case 'face':
      return performFace(scene, draft, task.diameter, work);
    case 'part off':
      return performPartOff(scene, draft, task.diameter, holding, work);
    case 'centre':
      return { ...nothing(work), cutting: 60, needs: ['centre drill'] };
    case 'plain':
      return plain(draft, work);
  }
}

/** Minutes of hand work; `common practice`. */
const byHand: Partial<Record<Draft['kind'], number>> = { polish: 15, knurl: 10, chamfer: 4, 'off the lathe': 40 };

function plain(draft: Draft, work: Workpiece): Outcome {
  return {
    ...nothing(work),
    cutting: 60 * (byHand[draft.kind] ?? 5),
    needs: draft.kind === 'polish' ? ['abrasive paper 240 to 600, oil'] : [],
  };
}
