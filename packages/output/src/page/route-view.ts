/** Puts the route into the words and figures that the screens show. */
import type { Operation, RouteResult, Setup } from '@sparewright/core/route/route-result';
import type { Second } from '@sparewright/core/units/quantities';
import type { HoldingsView, NoticeView, OperationView, RouteView, SetupView, WishView } from '../present/job-view.ts';
import { presentProse } from '../present/prose.ts';
import type { PresentSettings } from '../present/settings.ts';
import { learnedWords, presentLearned, presentTime, presentTimes } from '../present/time.ts';
import type { Block, FindingBlock } from '../sheets/blocks.ts';
import type { PacketContext } from '../sheets/context.ts';
import { setupSheet } from '../sheets/setup.ts';
import { cutAsked } from './cut-asked.ts';
import { printed, shownBlock, tableView } from './shown-blocks.ts';

/** @returns null while there is no route: no part yet, or no workshop */
export function routeView(context: PacketContext): RouteView | null {
  const { workshop, assessment, settings } = context;
  const { route } = assessment;
  if (!route) return null;
  const printedSetups = route.setups.map((setup) => ({ setup, blocks: printed(setupSheet(setup, noSketch, context)) }));
  return {
    settings,
    time: `${presentTimes(route.time)}${route.learnedFrom > 0 ? `, ${learnedWords(route.learnedFrom)}` : ''}`,
    compared: comparedView(route),
    holdings: route.setups.flatMap(({ id, number }) => holdingsView(id, number, route, settings)),
    setups: printedSetups.map(({ setup, blocks }) => setupView(setup, blocks, context)),
    operations: printedSetups.flatMap(({ setup, blocks }) => operationViews(setup, blocks, route, context)),
    chucks: (workshop?.lathe.chucks ?? []).map(choiceOf),
    cutters: (workshop?.cutters ?? []).map(choiceOf),
  };
}

/** The ways of a setup, where there is a choice. */
function holdingsView(id: string, number: number, route: RouteResult, settings: PresentSettings): HoldingsView[] {
  const own = route.holdings.filter((h) => h.setup === id);
  const taken = own.find((h) => h.taken)?.cost ?? 0;
  if (own.length < 2) return [];
  const ways = own.map(({ how, taken: isTaken, cost, why, wish }) => ({
    how: presentProse(how, settings),
    taken: isTaken,
    cost: `${presentTime(cost)} in time and risk${isTaken ? '' : againstTaken(wholeMinutes(cost) - wholeMinutes(taken))}`,
    why: why.map((w) => presentProse(w, settings)),
    wish,
  }));
  return [{ setup: number, ways }];
}

/** As the costs are shown, so that their difference is that of the figures one reads. */
const wholeMinutes = (time: Second): Second => 60 * Math.round(time / 60);

function againstTaken(more: Second): string {
  if (Math.abs(more) < 60) return ', as much as the way taken';
  return `, ${presentTime(Math.abs(more))} ${more > 0 ? 'more' : 'less'} than the way taken`;
}

const choiceOf = ({ id, name }: { readonly id: string; readonly name: string }) => ({ value: id, words: name });

function comparedView({ compared }: RouteResult): RouteView['compared'] {
  if (!compared) return null;
  const longer = compared.this.likely - compared.planner.likely;
  // Less than a minute between two guesses is no difference.
  const says =
    Math.abs(longer) < 60
      ? 'As long as the planner’s own order.'
      : `${presentTime(Math.abs(longer))} ${longer > 0 ? 'longer' : 'shorter'} than the planner’s own order.`;
  return { planner: presentTimes(compared.planner), own: presentTimes(compared.this), says };
}

/** Nothing of a sketch is shown with the words of a setup. */
const noSketch = { file: '', describes: '' };

type OperationBlock = Extract<Block, { kind: 'operation' }>;

function setupView(setup: Setup, blocks: readonly Block[], context: PacketContext): SetupView {
  const { settings } = context;
  return {
    id: setup.id,
    number: setup.number,
    title: presentProse(setup.title, settings),
    chuck: setup.chuck,
    endOut: setup.endOut,
    tailstock: setup.tailstock,
    gripFrom: setup.gripFrom,
    gripTo: setup.gripTo,
    held: setup.held,
    freeFrom: setup.freeFrom,
    mandrel: setup.mandrel,
    work: setup.work,
    facts: blocks.flatMap(shownBlock).flatMap((b) => (b.kind === 'facts' ? b.rows : [])),
    cautions: setup.cautions.map((c) => presentProse(c, settings)),
    why: setup.why.map((w) => presentProse(w, settings)),
    notices: blocks.flatMap((b) => (b.kind === 'finding' ? [noticeView(b)] : [])),
  };
}

function operationViews(
  setup: Setup,
  blocks: readonly Block[],
  route: RouteResult,
  context: PacketContext,
): OperationView[] {
  const words = blocks.filter((b) => b.kind === 'operation');
  const operations = route.operations.filter((o) => o.setup === setup.id);
  let work = setup.work;
  return operations.map((operation, i) => {
    const before = work;
    work = operation.leaves ?? work;
    return {
      ...wordsOf(operation, words[i]),
      id: operation.id,
      number: operation.number,
      setup: setup.id,
      kind: operation.kind,
      title: presentProse(operation.title, context.settings),
      time: operation.wish?.skipped
        ? 'left out'
        : presentLearned(presentTimes(operation.time), operation.planned, operation.learnedFrom),
      planned: operation.planned,
      cutter: operation.cutter ?? '',
      marks: operation.features,
      wish: wishView(operation, route),
      from: operation.from,
      to: operation.to,
      side: operation.side,
      leaves: operation.leaves ?? null,
      cut: cutAsked(operation, setup, before, context) ?? null,
    };
  });
}

function wordsOf(operation: Operation, block: OperationBlock | undefined) {
  return {
    numbers: block?.numbers ?? [],
    cautions: block?.cautions ?? [],
    why: block ? (block.aim === '' ? block.why : [block.aim, ...block.why]) : [],
    notices: (block?.findings ?? []).map(noticeView),
    tables: (block?.tables ?? []).map((t) => ({
      kind: 'dial' as const,
      operation: String(operation.number),
      name: t.name,
      title: t.title,
      notes: t.notes,
      table: tableView(t.table),
    })),
  };
}

function wishView({ wish }: Operation, route: RouteResult): WishView | null {
  if (!wish) return null;
  const titleOf = (id: string) => route.operations.find((o) => o.id === id)?.title ?? id;
  return {
    placed: wish.placed,
    skipped: wish.skipped,
    instead: wish.instead ?? '',
    cutter: wish.cutter ?? '',
    infeed: wish.infeed ?? '',
    breaks: wish.breaks.map((b) => `${titleOf(b.other)}: ${b.why}`),
  };
}

function noticeView({ level, headline, because, helps }: FindingBlock): NoticeView {
  return { level, says: headline, because, helps };
}
