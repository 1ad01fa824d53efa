/**
 * Gives every drafted operation its cutter, cut, table and time, in order, while the work shrinks under it.
 */
import { DomainError } from '../errors.ts';
import type { Finding } from '../finding.ts';
import type { Mm } from '../units/quantities.ts';
import { partingCutter, sawGrooveDepth } from './choose-cutter.ts';
import type { DialTable } from './dial-table.ts';
import type { Draft } from './draft.ts';
import type { Holding } from './hold.ts';
import { type Pace, spanAt } from './learned-times.ts';
import type { InOrder } from './order.ts';
import { nothing, type Outcome, type Scene } from './outcome.ts';
import { performDrill } from './perform-hole.ts';
import { performGroove, performPartOff } from './perform-plunge.ts';
import { performPolish } from './perform-polish.ts';
import { performCone, performCurve } from './perform-slide.ts';
import { performThread } from './perform-thread.ts';
import { performFace, performTurn } from './perform-turn.ts';
import { hacksawRate, operationHandling } from './practice.ts';
import type { Operation, OperationWish, Span } from './route-result.ts';
import { doesNotServe, leftOut, otherCutter } from './wish-findings.ts';
import { after, endedAt, outlineOf, type Workpiece } from './workpiece.ts';

export interface Realised {
  readonly operation: Operation;
  readonly tables: readonly DialTable[];
  readonly findings: readonly Finding[];
  readonly work: Workpiece;
  /** What to lay out for it. */
  readonly needs: readonly string[];
}

export function realise(
  scene: Scene,
  { operation: draft, reasons }: InOrder<Draft>,
  number: number,
  wish: OperationWish | undefined,
  holding: Holding,
  work: Workpiece,
): Realised {
  const outcome = asWished(scene, draft, holding, work, wish);
  const pace = scene.pace(draft.kind);
  const left = wish?.skipped ? work : after(work, endedAt(draft.removes, outcome.endsAt));
  return {
    operation: {
      id: draft.id,
      number,
      setup: draft.setup,
      kind: draft.kind,
      title: draft.title,
      features: draft.features,
      cutter: outcome.cutter?.name,
      cutterId: outcome.cutter?.id,
      cut: outcome.cut,
      from: draft.from,
      to: draft.to,
      side: draft.removes.cuts === 'inside' ? 'inside' : 'outside',
      leaves: left === work ? undefined : outlineOf(left),
      time: timeOf(outcome, wish, pace),
      planned: wish?.skipped ? 0 : operationHandling + outcome.cutting,
      learnedFrom: isLearned(wish) ? pace.entries : 0,
      wish,
      why: [...draft.why, ...reasons, ...(outcome.why ?? []), ...(isLearned(wish) ? paceInWords(pace) : [])],
      cautions: draft.cautions,
      tables: outcome.tables.map((t) => t.id),
    },
    tables: outcome.tables,
    findings: outcome.findings,
    work: left,
    needs: [...(outcome.cutter ? [outcome.cutter.name] : []), ...(outcome.needs ?? [])],
  };
}

/** What the person says it takes is not learned, and what is left out takes nothing. */
function isLearned(wish: OperationWish | undefined): boolean {
  return !wish?.skipped && wish?.minutes === undefined;
}

function paceInWords({ factor, entries, all }: Pace): string[] {
  if (all === 0) return [];
  if (entries === 0)
    return [
      `None of this kind is timed yet; by the ${all === 1 ? 'one' : all} of other kinds it is planned at ${factor.toFixed(2)} of the usual time.`,
    ];
  const times = entries === 1 ? 'once' : `${entries} times`;
  return [`Timed ${times} before, and so planned at ${factor.toFixed(2)} of the usual time.`];
}

function timeOf({ cutting }: Outcome, wish: OperationWish | undefined, pace: Pace): Span {
  if (wish?.skipped) return { low: 0, likely: 0, high: 0 };
  if (wish?.minutes !== undefined) {
    const likely = 60 * wish.minutes;
    return { low: likely, likely, high: likely };
  }
  return spanAt(operationHandling + cutting, pace);
}

/** The operation as the person wants it, with what follows from that. */
function asWished(
  scene: Scene,
  draft: Draft,
  holding: Holding,
  work: Workpiece,
  wish: OperationWish | undefined,
): Outcome {
  if (wish?.skipped) return { ...nothing(), findings: [leftOut(draft, work)] };
  const own = performSafely(scene, draft, holding, work, wish);
  if (wish?.instead !== undefined)
    return { ...nothing(), cutting: own.cutting, why: [`Done in another way: ${wish.instead}`] };
  if (wish?.cutter === undefined || wish.cutter === own.cutter?.id) return own;
  const cutters = scene.workshop.cutters.filter((c) => c.id === wish.cutter);
  const other = { ...scene, workshop: { ...scene.workshop, cutters } };
  const wished = performSafely(other, draft, holding, work, wish);
  if (!wished.cutter) return { ...own, findings: [...own.findings, doesNotServe(draft, wish.cutter, own)] };
  return { ...wished, findings: [...wished.findings, otherCutter(draft, own, wished)] };
}

/** A size outside what a formula covers is said at the operation; the rest of the route is still planned. */
function performSafely(
  scene: Scene,
  draft: Draft,
  holding: Holding,
  work: Workpiece,
  wish: OperationWish | undefined,
): Outcome {
  try {
    return perform(scene, draft, holding, work, wish);
  } catch (error) {
    if (!(error instanceof DomainError)) throw error;
    return { ...nothing(), cutting: 600, findings: [beyondFormulas(draft, error)] };
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

function perform(
  scene: Scene,
  draft: Draft,
  holding: Holding,
  work: Workpiece,
  wish: OperationWish | undefined,
): Outcome {
  const { task } = draft;
  switch (task.does) {
    case 'turn':
      return performTurn(scene, draft, task, holding, work);
    case 'drill':
      return performDrill(scene, draft, task);
    case 'groove':
      return performGroove(scene, draft, task, holding, work);
    case 'thread':
      return performThread(scene, draft, task, holding, work, wish);
    case 'cone':
      return performCone(scene, draft, task, holding, work);
    case 'curve':
      return performCurve(scene, draft, task, holding, work);
    case 'face':
      return performFace(scene, draft, task.diameter, holding, work);
    case 'part off':
      return performPartOff(scene, draft, task.diameter, holding, work);
    case 'saw':
      return performSaw(scene, task.diameter);
    case 'centre':
      return { ...nothing(), cutting: 60, needs: ['centre drill'] };
    case 'polish':
      return performPolish(draft, task);
    case 'plain':
      return plain(draft);
  }
}

/** Minutes of hand work; `common practice`. */
const byHand: Partial<Record<Draft['kind'], number>> = { knurl: 10, chamfer: 4, 'off the lathe': 40 };

/** What the groove leaves is sawn by hand, through the middle of the usual range. */
function performSaw({ workshop }: Scene, diameter: Mm): Outcome {
  const cutter = partingCutter(workshop.cutters);
  const left = diameter - 2 * (cutter ? sawGrooveDepth(cutter, diameter) : 0);
  const rate = (hacksawRate.quick + hacksawRate.slow) / 2;
  return {
    ...nothing(),
    cutting: (60 * Math.PI * left ** 2) / 4 / rate,
    needs: ['hacksaw'],
    why: [cutter ? 'The groove keeps the saw square to the work.' : 'No parting cutter is entered: saw it off.'],
  };
}

function plain(draft: Draft): Outcome {
  return {
    ...nothing(),
    cutting: 60 * (byHand[draft.kind] ?? 5),
  };
}
