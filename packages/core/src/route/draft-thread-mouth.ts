/** Drafts the chamfer at the mouth of an inside thread where none is drawn. */
import type { Workshop } from '../lathe/schema.ts';
import type { PartResult } from '../part/part-result.ts';
import type { Mm } from '../units/quantities.ts';
import { threadingCutter } from './choose-cutter.ts';
import { called, type Draft, inWords, lengthInWords } from './draft.ts';
import type { Hole } from './draft-holes.ts';
import { rootOf, threadAim } from './tables/thread-aim.ts';
import { threadChamfer } from './tables/thread-chamfer.ts';

type Common = Pick<Draft, 'setup' | 'atFreeEnd' | 'working' | 'removes' | 'why' | 'cautions'>;

/** Of the holes that are threaded from this face; one deeper in has no mouth to reach. */
export function draftThreadMouths(
  part: PartResult,
  holes: readonly Hole[],
  common: Common,
  face: Mm,
  { cutters }: Workshop,
): Draft[] {
  return part.threads.flatMap((placed): Draft[] => {
    const section = holes.find((h) => h.section.feature.id === placed.on)?.section;
    if (!section || placed.side !== 'internal') return [];
    if (Math.min(Math.abs(section.from - face), Math.abs(section.to - face)) > 1e-6) return [];
    const { startEdge, endEdge } = section.feature;
    if (startEdge?.kind === 'chamfer' || endEdge?.kind === 'chamfer') return [];
    const crest = threadAim(placed.thread, 'internal').crest;
    const root = rootOf(placed.thread, 'internal', threadingCutter(cutters, placed)?.noseRadius);
    if (root <= crest) return [];
    const { diameter, length } = threadChamfer(crest, root);
    return [
      {
        ...common,
        id: `chamfer-thread-${placed.id}`,
        kind: 'chamfer',
        features: [placed.on],
        diameter: section.largest,
        title: `Chamfer the mouth of ${called(part, placed.on)}, 45° to ${inWords(diameter)}, ${lengthInWords(Number(length.toFixed(2)))} deep, to past the root of the thread`,
        from: face,
        to: face,
        task: { does: 'plain' },
        why: ['None is drawn, but a thread wants one: without it the first turn is a burr, and the mate starts askew.'],
      },
    ];
  });
}
