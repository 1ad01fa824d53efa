/**
 * Drafts all operations of one setup: facing, the centre for the tailstock, outside, inside, cutting off, and the bench work after it.
 */
import type { Workshop } from '../lathe/schema.ts';
import type { PartResult } from '../part/part-result.ts';
import { partingCutter, sawGrooveDepth } from './choose-cutter.ts';
import { called, type Draft, lengthInWords } from './draft.ts';
import { draftInside } from './draft-inside.ts';
import { draftOutside } from './draft-outside.ts';
import type { Holding } from './hold.ts';
import { facingAllowance, sawKerf } from './practice.ts';
import { flat } from './profile.ts';
import type { Removal } from './workpiece.ts';

export function draftSetup(part: PartResult, holding: Holding, workshop: Workshop, last: boolean): Draft[] {
  const { setup, ends } = holding;
  const end = setup.endOut === 'right' ? part.outline.length : 0;
  const common = {
    setup: setup.id,
    atFreeEnd: false,
    working: false,
    removes: { cuts: 'nothing' } as Removal,
    why: [] as string[],
    cautions: [] as string[],
  };
  const drafts: Draft[] = [];
  if (ends.face)
    drafts.push({
      ...common,
      id: `face-${setup.endOut}`,
      kind: 'face',
      features: [],
      diameter: part.outline.largestDiameter,
      title:
        ends.face.to === 'clean'
          ? `Face the ${setup.endOut} end clean`
          : `Face the ${setup.endOut} end to length, ${lengthInWords(part.outline.length)}`,
      from: end,
      to: end,
      task: { does: 'face', diameter: ends.face.diameter },
      removes: { cuts: 'end', end: setup.endOut, at: end },
    });
  if (ends.centred)
    drafts.push({
      ...common,
      id: `centre-${setup.endOut}`,
      kind: 'centre',
      features: [],
      diameter: 0,
      title: setup.tailstock ? 'Centre the free end and bring up the tailstock' : `Centre the ${setup.endOut} end`,
      from: end,
      to: end,
      task: { does: 'centre' },
      why: [
        setup.tailstock
          ? 'The work stands out further than three times its thickness.'
          : 'It is turned between centres later, and runs true with what is turned there as far as this hole is true and clean.',
      ],
    });
  drafts.push(...draftInside(part, holding, workshop), ...draftOutside(part, holding, workshop));
  if (ends.cutOff) drafts.push(...cuttingOff(part, holding, workshop));
  if (last) drafts.push(...benchWork(part, setup.id));
  return drafts;
}

/** A light lathe cuts a groove to lead the saw, and the rest is sawn by hand; without a parting cutter all of it is sawn. */
function cuttingOff(part: PartResult, { setup }: Holding, workshop: Workshop): Draft[] {
  const { largestDiameter, length } = part.outline;
  const right = setup.endOut === 'right';
  const face = right ? 0 : length;
  const end = right
    ? ({ end: 'left', at: -facingAllowance } as const)
    : ({ end: 'right', at: length + facingAllowance } as const);
  const common = {
    setup: setup.id,
    kind: 'part off' as const,
    features: [],
    diameter: largestDiameter,
    atFreeEnd: false,
    working: false,
    from: face,
    to: face,
    why: [],
  };
  const cutter = partingCutter(workshop.cutters);
  const back = setup.tailstock ? 'Draw back the tailstock; ' : '';
  const saw: Draft = {
    ...common,
    id: 'part-off',
    title: sentence(
      `${cutter ? '' : back}saw ${cutter ? 'through in the groove' : 'off by hand'}, leaving a little to face`,
    ),
    task: { does: 'saw', diameter: largestDiameter },
    removes: { cuts: 'end', ...end },
    cautions: ['Spindle stopped, gear engaged so that it cannot turn; a board on the bed under the saw.'],
  };
  if (!cutter) return [saw];
  const depth = sawGrooveDepth(cutter, largestDiameter);
  const width = cutter.width ?? sawKerf;
  const [from, to] = right ? [end.at - width, end.at] : [end.at, end.at + width];
  return [
    {
      ...common,
      id: 'saw-groove',
      title: sentence(`${back}cut a groove ${lengthInWords(depth)} deep to lead the saw`),
      task: { does: 'part off', diameter: largestDiameter },
      removes: { cuts: 'outside', to: flat(from, to, largestDiameter / 2 - depth, 'bar') },
      cautions: [
        'Parting: saddle locked, at centre height, shortest overhang; never between centres, never catch the piece by hand.',
      ],
    },
    saw,
  ];
}

function sentence(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}

/** What is made off the lathe, and how without special machines. */
function benchWork(part: PartResult, setup: string): Draft[] {
  return part.notTurned.flatMap((f): Draft[] => {
    if (f.kind === 'knurl') return [];
    const ways: Record<typeof f.kind, string> = {
      'hexagon socket':
        f.kind === 'hexagon socket' && f.made === 'bonded insert'
          ? 'Turn the insert from a socket screw head to the bore less the bond gap, degrease both, bond, let it cure fully, then test the torque'
          : 'Have it broached, or bond or pin in an insert with a hexagon',
      hexagon: 'File with a guide of two hardened rollers, or mill on a dividing plate',
      flats: 'File with a guide of two hardened rollers set to the height of the flat',
      'cross hole': 'Drill in a vee block from a centre punch mark set with the lathe tool at centre height',
      slot: 'Saw and file between two guide plates',
    };
    return [
      {
        setup,
        atFreeEnd: false,
        working: false,
        id: `off-the-lathe-${f.id}`,
        kind: 'off the lathe',
        features: [f.id],
        diameter: 0,
        title: `Make ${called(part, f.id)}: ${ways[f.kind]}`,
        from: 0,
        to: 0,
        task: { does: 'plain' },
        removes: { cuts: 'nothing' },
        why: ['Not lathe work.'],
        cautions:
          f.kind === 'hexagon socket' ? ['Retaining compound: nitrile gloves, fresh air, no flame near cleaners.'] : [],
      },
    ];
  });
}
