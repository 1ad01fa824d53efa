/** The wishes of a person for single operations: looked up, put into words, and what follows from them. */
import type { Finding } from '../finding.ts';
import type { Draft } from './draft.ts';
import type { BrokenRule, OperationWish } from './route-result.ts';
import type { OperationChange, RouteWishes } from './schema.ts';

/** What is wanted otherwise with one operation; of several entries for it the last one counts. */
export function changeFor(wishes: RouteWishes | undefined, operation: string): OperationChange | undefined {
  return wishes?.changes?.findLast((c) => c.operation === operation);
}

/** The wish as it is shown with its operation; undefined where nothing was wished. */
export function wishOf(
  wishes: RouteWishes | undefined,
  operation: string,
  breaks: readonly BrokenRule[],
): OperationWish | undefined {
  const change = changeFor(wishes, operation);
  const placed = wishes?.order?.includes(operation) ?? false;
  if (!change && !placed && breaks.length === 0) return undefined;
  return {
    placed,
    skipped: change?.skip ?? false,
    instead: change?.instead,
    minutes: change?.minutes,
    cutter: change?.cutter,
    infeed: change?.infeed,
    why: change?.why,
    breaks,
  };
}

/** Whether a person wants an order or operations otherwise than the planner. */
export function wishesOtherwise(wishes: RouteWishes | undefined): boolean {
  return (wishes?.order?.length ?? 0) > 0 || (wishes?.changes?.length ?? 0) > 0;
}

/** Wishes for operations that this route does not have, and an order that goes from one setup back to another. */
export function wishFindings(wishes: RouteWishes | undefined, drafts: readonly Draft[]): Finding[] {
  const known = new Map(drafts.map((d) => [d.id, d]));
  const named = [...(wishes?.order ?? []), ...(wishes?.changes ?? []).map((c) => c.operation)];
  const order = (wishes?.order ?? []).flatMap((id) => known.get(id) ?? []);
  const back = order.find((d, i) => i > 0 && d.setup < (order[i - 1]?.setup ?? ''));
  return [
    ...[...new Set(named)].filter((id) => !known.has(id)).map(unknownOperation),
    ...(wishes?.changes ?? []).flatMap((c) => {
      const draft = known.get(c.operation);
      return c.infeed !== undefined && draft && draft.kind !== 'thread' ? [noThread(draft)] : [];
    }),
    ...(back ? [backToSetup(back)] : []),
  ];
}

function unknownOperation(id: string): Finding {
  return {
    id: 'route.unknown-operation',
    level: 'note',
    stage: 'route',
    at: 'stock',
    says: `A wish names the operation ${id}, which this route does not have; it is passed over.`,
    because: [],
    remedies: ['Take the wish away', 'See whether its feature was renamed or is turned in another way now'],
  };
}

function noThread(draft: Draft): Finding {
  return {
    id: 'route.infeed-of-no-thread',
    level: 'note',
    stage: 'route',
    at: draft.id,
    says: `${draft.title}: a wish says how a thread is fed in, but this cuts none; it is passed over.`,
    because: [],
    remedies: ['Put the wish to the operation that cuts the thread'],
  };
}

function backToSetup(draft: Draft): Finding {
  return {
    id: 'route.order-across-setups',
    level: 'note',
    stage: 'route',
    at: draft.id,
    says: `${draft.title}: wanted after work of a later setup. Each setup is done whole, so it keeps to its own.`,
    because: [],
    remedies: ['Choose the other end to stand out first'],
  };
}

/** At an operation that a wish puts before another that ought to come first. */
export function outOfOrder(draft: Draft, breaks: readonly BrokenRule[], titleOf: (id: string) => string): Finding[] {
  return breaks.map((b) => ({
    id: 'route.out-of-order',
    level: 'caution',
    stage: 'route',
    at: draft.id,
    says: `As wished it stands before “${titleOf(b.other)}”, which should come first: ${b.why}`,
    because: [],
    remedies: ['Put it after that operation', 'Leave its place to the planner'],
  }));
}
