/** Drafts grooves for a threading cutter to run out into, where the metal beside the thread only comes off in the other setup. */
import { DomainError } from '../errors.ts';
import type { Workshop } from '../lathe/schema.ts';
import type { PartResult, PlacedThread } from '../part/part-result.ts';
import { reliefGroove } from '../standards/threads/relief.ts';
import type { Mm } from '../units/quantities.ts';
import { groovingCutter, threadingCutter } from './choose-cutter.ts';
import { called, type Draft, inWords, lengthInWords, operation } from './draft.ts';
import type { Holding } from './hold.ts';
import { finishingAllowance } from './practice.ts';
import { flat } from './profile.ts';
import { rootOf } from './tables/thread-aim.ts';
import { finishedWork, largestBetween } from './workpiece.ts';

/** From the jaws to the nearest side of a groove; `common practice`. */
const fromJaws: Mm = 1;

export function draftRunOuts(part: PartResult, holding: Holding, workshop: Workshop): Draft[] {
  if (holding.setup.number !== 1) return [];
  return part.threads
    .filter((t) => t.side === 'external' && holding.sections.some((s) => s.feature.id === t.on))
    .flatMap((t) => runOut(part, holding, workshop, t));
}

function runOut(part: PartResult, holding: Holding, workshop: Workshop, placed: PlacedThread): Draft[] {
  const { setup, jaw, sections } = holding;
  const at = part.outside.findIndex((s) => s.feature.id === placed.on);
  const section = part.outside[at];
  if (!section) return [];
  const right = setup.endOut === 'right';
  const [edge, end] = right ? [placed.from, section.from] : [placed.to, section.to];
  const beside = part.outside[right ? at - 1 : at + 1];
  const turnedHere = beside !== undefined && sections.includes(beside);
  const relieved =
    section.feature[right ? 'startEdge' : 'endEdge']?.kind === 'relief' ||
    part.grooves.some((g) => g.feature.on === placed.on && Math.min(Math.abs(g.from - end), Math.abs(g.to - end)) < 1);
  if (turnedHere || relieved || Math.abs(edge - end) > placed.thread.pitch) return [];
  const size = sizeOf(part, placed, workshop, end, right, Math.abs(end - jaw) - fromJaws);
  if (!size) return [];
  const { width, floor } = size;
  const [from, to] = right ? [end - width, end] : [end, end + width];
  const cutter = groovingCutter(workshop.cutters, width, false);
  if (!cutter || cutter.maxDepth < (setup.grip.diameter - floor) / 2) return [];
  return [
    {
      ...operation(holding, 'groove', `run-out-${placed.id}`, [placed.id, placed.on], section.largest),
      title: `Cut a run-out for the thread beside ${called(part, placed.on)}, ${lengthInWords(width)} wide, to ${inWords(floor)}`,
      from,
      to,
      task: { does: 'groove', width, floor, outer: setup.grip.diameter, internal: false },
      removes: { cuts: 'outside', to: flat(from, to, floor / 2, placed.on) },
      why: [
        'The metal here comes off in the other setup: the threading cutter runs out into it, and stops clear of the jaws.',
      ],
      cautions: ['Close to the jaws: turn the chuck once by hand with the cutter at its depth.'],
    },
  ];
}

/** Width and floor of the groove: by the standard as far as there is room, clear of the part below; nothing where neither allows it. */
function sizeOf(
  part: PartResult,
  placed: PlacedThread,
  { cutters }: Workshop,
  end: Mm,
  right: boolean,
  room: Mm,
): { width: Mm; floor: Mm } | undefined {
  try {
    const normal = reliefGroove(placed.thread, 'external', 'normal');
    const short = reliefGroove(placed.thread, 'external', 'short');
    const width = Number(Math.min(normal.leastLength, room).toFixed(3));
    if (width < short.leastLength) return undefined;
    const [from, to] = right ? [end - width, end] : [end, end + width];
    const below = largestBetween(finishedWork(part.outline), from, to);
    const floor = Number(Math.max(normal.diameter, below + finishingAllowance).toFixed(3));
    const root = rootOf(placed.thread, 'external', threadingCutter(cutters, placed)?.noseRadius);
    // A sharp cutter goes deeper than the standard's groove clears.
    const clear = Math.min(floor, Math.max(below + finishingAllowance, Math.floor(10 * (root - 0.1)) / 10));
    return clear <= root ? { width, floor: clear } : undefined;
  } catch (error) {
    if (!(error instanceof DomainError)) throw error;
    return undefined;
  }
}
