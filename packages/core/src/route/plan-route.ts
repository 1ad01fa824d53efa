/**
 * From bar to part: stock, setups, operations in a legal order, each with its cut and its table.
 */
import type { Workshop } from '../lathe/schema.ts';
import type { PartResult } from '../part/part-result.ts';
import type { Second } from '../units/quantities.ts';
import { compareHoldings } from './compare-holdings.ts';
import { cuttingListInWords } from './cutting-list.ts';
import { draftSetup } from './draft-setup.ts';
import { driveFor, gripFor } from './grip-findings.ts';
import { barFor, chuckFor, type Holding } from './hold.ts';
import { holdingFindings } from './hold-findings.ts';
import { paceFrom } from './learned-times.ts';
import { machiningOf } from './machining.ts';
import { inOrder } from './order.ts';
import { type Realised, realise } from './realise.ts';
import type { RouteResult, WorkOutline } from './route-result.ts';
import type { RouteWishes } from './schema.ts';
import { withTool } from './tool-of.ts';
import { changeFor, outOfOrder, wishesOtherwise, wishFindings, wishOf } from './wishes.ts';
import { outlineOf } from './workpiece.ts';

/** A route for a part that has at least one section; undefined for an empty one. */
export function planRoute(
  part: PartResult,
  workshop: Workshop,
  wishes: RouteWishes | undefined,
): RouteResult | undefined {
  const route = planAsWished(part, workshop, wishes);
  if (!route || !wishes || !wishesOtherwise(wishes)) return route;
  const { order: _order, changes: _changes, ...rest } = wishes;
  const planner = planAsWished(part, workshop, rest);
  return { ...route, compared: planner && { planner: planner.time, this: route.time } };
}

function planAsWished(part: PartResult, workshop: Workshop, wishes: RouteWishes | undefined): RouteResult | undefined {
  if (part.outside.length === 0 || part.outline.length <= 0) return undefined;
  const chuck = chuckFor(workshop.lathe, part.outline.largestDiameter, wishes?.chuck);
  if (!chuck) return undefined;
  const { stock, findings, holdings, choices } = compareHoldings(part, workshop, chuck, wishes);
  const [first] = holdings;
  const drafts = holdings.flatMap((h, i) =>
    draftSetup(part, h, workshop, i === holdings.length - 1).map((d) => withTool(d, workshop, changeFor(wishes, d.id))),
  );
  const ordered = inOrder(
    drafts,
    holdings.map((h) => h.setup.id),
    wishes?.order,
  );
  const scene = {
    part,
    workshop,
    machining: part.material && machiningOf(part.material),
    pace: paceFrom((wishes?.taken ?? []).map((t) => ({ kind: t.kind, planned: 60 * t.planned, taken: 60 * t.taken }))),
  };
  const titleOf = (id: string) => drafts.find((d) => d.id === id)?.title ?? id;
  const realised: Realised[] = [];
  const asItGoesIn = new Map<string, WorkOutline>();
  let work = barFor(part, first);
  for (const place of ordered) {
    const { operation, breaks } = place;
    const holding = holdings.find((h) => h.setup.id === operation.setup) ?? first;
    if (operation.setup !== realised.at(-1)?.operation.setup) asItGoesIn.set(operation.setup, outlineOf(work));
    const wish = wishOf(wishes, operation.id, breaks);
    const done = realise(scene, place, realised.length + 1, wish, holding, work);
    realised.push({ ...done, findings: [...outOfOrder(operation, breaks, titleOf), ...done.findings] });
    work = done.work;
  }
  const times = realised.map((r) => r.operation.time);
  const total = (key: 'low' | 'likely' | 'high'): Second =>
    times.reduce((sum, t) => sum + t[key], 0) + holdings.reduce((sum, h) => sum + h.handling, 0);
  return {
    stock,
    holdings: choices,
    setups: holdings.map((h) => ({
      ...h.setup,
      freeFrom: h.jaw,
      drive: driveFor(h, realised),
      gripNeeded: gripFor(h, realised),
      work: asItGoesIn.get(h.setup.id) ?? outlineOf(work),
    })),
    operations: realised.map((r) => r.operation),
    tables: realised.flatMap((r) => r.tables),
    time: { low: total('low'), likely: total('likely'), high: total('high') },
    learnedFrom: scene.pace('face').all,
    needed: [
      ...(stock.cutting ? cuttingListInWords(stock.cutting, stock.diameter) : []),
      ...layOut(realised, workshop, holdings),
    ],
    findings: [
      ...findings,
      ...wishFindings(wishes, drafts),
      ...holdings.flatMap((h) => holdingFindings(part, workshop.lathe, h, realised)),
      ...realised.flatMap((r) => r.findings),
    ],
  };
}

function protections(holdings: readonly Holding[]): string[] {
  return holdings.flatMap(({ setup: { grip } }) =>
    grip.with === undefined ? [] : [`${grip.with} to hold Ø${Number(grip.diameter.toFixed(2))} mm`],
  );
}

function layOut(realised: readonly Realised[], workshop: Workshop, holdings: readonly Holding[]): string[] {
  return [
    ...new Set([
      ...holdings.map((h) => h.setup.chuck),
      ...(holdings.some((h) => h.setup.grip.protected) ? [...protections(holdings), 'dial indicator on a stand'] : []),
      ...(holdings.some((h) => h.setup.tailstock) ? [`${workshop.lathe.tailstock?.centre ?? 'dead'} centre`] : []),
      ...holdings.flatMap((h) => h.needs),
      ...realised.flatMap((r) => r.needs),
    ]),
  ];
}
