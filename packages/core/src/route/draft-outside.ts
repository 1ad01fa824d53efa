/**
 * Drafts the outside work of a setup: roughing from thick to thin, finishing, cones, curves, grooves, threads, chamfers, polishing.
 */

import type { Workshop } from '../lathe/schema.ts';
import { radiusAt } from '../part/outline-queries.ts';
import type { Dimension, PartResult, Placed, PlacedThread } from '../part/part-result.ts';
import type { OutsideSection } from '../part/schema.ts';
import type { Mm } from '../units/quantities.ts';
import { band, called, type Draft, dimensionOf, inWords, lengthInWords, middle, operation } from './draft.ts';
import { draftEdges } from './draft-edges.ts';
import { draftRunOuts } from './draft-run-out.ts';
import type { End, Holding } from './hold.ts';
import { lastCutAim, lastCutSpread } from './last-cut.ts';
import { finishingAllowance, shoulderAllowance } from './practice.ts';
import { flat } from './profile.ts';
import { stepCurveOf } from './step-curve.ts';
import { clearTo, piecesOf, sectionOutside } from './surfaces.ts';
import { crestAim } from './tables/thread-aim.ts';

/** Surfaces smoother than this are finished with abrasive paper on a light lathe; `common practice`. */
const paperBelow = 0.8;

const abrasiveCaution =
  'Abrasive paper: strip backed by a file or held at both ends, never round the work or the fingers; slow speed, arms clear of the chuck, bed covered, tool post back.';

/** Said of a roughing cut that has to go down between thicker sections. */
export const betweenThicker =
  'It lies between thicker sections: cut with a right-hand and a left-hand cutter, or plunge and widen.';

export function draftOutside(part: PartResult, holding: Holding, workshop: Workshop): Draft[] {
  const { sections } = holding;
  return [
    ...roughing(part, holding),
    ...sections.flatMap((s) => finishing(part, holding, s, workshop)),
    ...grooves(part, holding),
    ...draftRunOuts(part, holding, workshop),
    ...threads(part, holding),
    ...knurls(part, holding),
    ...draftEdges(part, holding, workshop),
  ];
}

/** The diameter to which a section can be roughed on the way from the free end: what lies nearer the free end must fit through. */
function roughing(part: PartResult, holding: Holding): Draft[] {
  const fromFree = holding.setup.endOut === 'right' ? holding.roughs.toReversed() : holding.roughs;
  const drafts: Draft[] = [];
  let envelope = 0;
  for (const s of fromFree) {
    const own = roughTarget(s);
    const stepsDown = own < envelope - 1e-9;
    envelope = Math.max(envelope, own);
    // Of neighbours with one diameter only the one nearest the chuck gets the operation: it covers them all.
    const next = fromFree[fromFree.indexOf(s) + 1];
    if (!stepsDown && next && Math.abs(roughTarget(next) - own) < 0.02) continue;
    const [far, near] = roughedBetween(part, holding, s, stepsDown, own);
    drafts.push({
      ...operation(holding, 'rough turn', s.feature.id, [s.feature.id], own),
      title: `Rough ${called(part, s.feature.id)} to ${inWords(own)}`,
      from: Math.min(far, near),
      to: Math.max(far, near),
      task: { does: 'turn', target: own, stage: 'rough', where: 'outside', tolerance: undefined, finish: undefined },
      removes: { cuts: 'outside', to: flat(Math.min(far, near), Math.max(far, near), own / 2, s.feature.id) },
      why: stepsDown ? [betweenThicker] : [],
    });
  }
  return drafts;
}

/**
 * From where to where a section is roughed, the end towards the chuck first: through to the free end, or down between shoulders; a
 * little is left on a shoulder for the finishing cut, and a fillet is kept clear of.
 */
function roughedBetween(
  part: PartResult,
  holding: Holding,
  s: Placed<OutsideSection>,
  stepsDown: boolean,
  diameter: Mm,
): readonly [Mm, Mm] {
  const right = holding.setup.endOut === 'right';
  const middle = (s.from + s.to) / 2;
  const at = part.outside.indexOf(s);
  const upTo = (end: Mm, neighbour: Placed<OutsideSection> | undefined) => {
    const shoulder = neighbour !== undefined && neighbour.largest > diameter + 1e-9;
    const left = shoulder ? Math.min(shoulderAllowance, Math.abs(end - middle)) : 0;
    return clearTo(part, diameter / 2, middle, end + Math.sign(middle - end) * left);
  };
  const [far, near] = right ? [s.from, s.to] : [s.to, s.from];
  const [behind, before] = right
    ? [part.outside[at - 1], part.outside[at + 1]]
    : [part.outside[at + 1], part.outside[at - 1]];
  return [upTo(far, behind), stepsDown ? upTo(near, before) : right ? part.outline.length : 0];
}

function roughTarget(s: Placed<OutsideSection>): Mm {
  return Number((s.largest + finishingAllowance).toFixed(3));
}

function finishing(part: PartResult, holding: Holding, s: Placed<OutsideSection>, workshop: Workshop): Draft[] {
  const { feature } = s;
  const id = feature.id;
  const freeEnd = holding.setup.endOut === 'right' ? part.outside.at(-1) === s : part.outside[0] === s;
  const working = feature.role === 'sliding' || feature.role === 'sealing';
  switch (feature.kind) {
    case 'cylinder': {
      const dimension = dimensionOf(part, id, 'diameter');
      const thread = part.threads.find((t) => t.on === id);
      const limits = dimension ?? { max: s.largest, min: s.largest };
      const apart = thread !== undefined && isCrestApart(part, s, thread, limits);
      const crest = thread && !apart ? crestAim(thread.thread, 'external') : undefined;
      const fine = feature.finish !== undefined && feature.finish <= paperBelow && !crest;
      const spread = lastCutSpread(workshop, s.largest, true);
      const target = crest?.aim ?? Number(lastCutAim(limits, fine, spread).toFixed(3));
      const tolerance = crest ? crest.max - crest.min : band(dimension);
      const clear = roughedBetween(part, holding, s, true, roughTarget(s));
      const turn: Draft = {
        ...operation(holding, 'finish turn', id, [id, ...featuresOn(part, id)], s.largest),
        working,
        title: `Finish ${called(part, id)} to ${inWords(target)}${fine ? ', the rest with abrasive paper' : ''}`,
        from: s.from,
        to: s.to,
        task: {
          does: 'turn',
          target,
          stage: 'finish',
          where: 'outside',
          tolerance,
          finish: feature.finish,
          clear: { from: Math.min(...clear), to: Math.max(...clear) },
        },
        removes: { cuts: 'outside', to: sectionOutside(part, s) },
      };
      const turned = apart ? [turn, ...turnCrest(part, holding, s, thread, limits)] : [turn];
      if (!fine) return turned;
      return [
        ...turned,
        {
          ...operation(holding, 'polish', id, [id], s.largest),
          working,
          title: `Polish ${called(part, id)} to ${inWords(middle(dimension, s.largest))}, Ra ${feature.finish}`,
          from: s.from,
          to: s.to,
          task: {
            does: 'polish',
            from: target,
            to: middle(dimension, s.largest),
            finish: feature.finish ?? paperBelow,
          },
          cautions: [abrasiveCaution],
        },
      ];
    }
    case 'cone':
      return [
        {
          ...operation(holding, 'turn cone', id, [id], s.largest),
          atFreeEnd: freeEnd,
          working,
          title: `Turn ${called(part, id)} with the top slide set over`,
          from: s.from,
          to: s.to,
          task: {
            does: 'cone',
            where: 'outside',
            startDiameter: roughTarget(s),
            cone: { startDiameter: s.largest, endDiameter: s.smallest, length: s.to - s.from },
            thinEnd: thinEnd(part, s) === holding.setup.endOut ? 'free' : 'chuck',
          },
          removes: { cuts: 'outside', to: sectionOutside(part, s) },
        },
      ];
    case 'arc':
    case 'crown':
    case 'curve': {
      const steps = stepCurveOf(part, s, holding.setup.endOut);
      return [
        {
          ...operation(holding, 'turn curve', id, [id], s.largest),
          atFreeEnd: freeEnd,
          working,
          title: `Turn ${called(part, id)} by steps, then file to the steps`,
          from: s.from,
          to: s.to,
          task: { does: 'curve', steps, largest: s.largest },
          removes: { cuts: 'outside', to: sectionOutside(part, s) },
          cautions: ['File with a handle on it, held left-handed so that no arm crosses the chuck.'],
        },
      ];
    }
  }
}

type Limits = Pick<Dimension, 'max' | 'min'>;

/** Plain metal of a section that is left beside a thread and its relief, longer than this, is a surface with limits of its own. */
const leastPlain: Mm = 1;

/** Whether only part of a section is threaded and the rest must not be turned down to the crests. */
function isCrestApart(
  part: PartResult,
  s: Placed<OutsideSection>,
  thread: PlacedThread,
  { max, min }: Limits,
): boolean {
  const crest = crestAim(thread.thread, 'external');
  if (!crest || (crest.aim >= min && crest.aim <= max)) return false;
  const grooved = part.grooves.filter((g) => g.feature.on === s.feature.id);
  const covered = [thread, ...grooved].reduce((sum, c) => sum + Math.min(c.to, s.to) - Math.max(c.from, s.from), 0);
  return s.to - s.from - covered > leastPlain;
}

/** The crests of a thread that covers only part of its section, turned after the section has its own size. */
function turnCrest(
  part: PartResult,
  holding: Holding,
  s: Placed<OutsideSection>,
  thread: PlacedThread,
  { max, min }: Limits,
): Draft[] {
  const crest = crestAim(thread.thread, 'external');
  if (!crest) return [];
  const { aim } = crest;
  const turn: Draft = {
    ...operation(holding, 'finish turn', thread.id, [s.feature.id, thread.id], aim),
    title: `Turn ${called(part, s.feature.id)} down to ${inWords(aim)} where the thread comes`,
    from: thread.from,
    to: thread.to,
    task: {
      does: 'turn',
      target: aim,
      stage: 'finish',
      where: 'outside',
      startDiameter: (max + min) / 2,
      tolerance: crest.max - crest.min,
      finish: undefined,
    },
    why: ['The crests are smaller than the rest of the section, which keeps the limits of its own.'],
  };
  return [turn];
}

function thinEnd(part: PartResult, s: Placed<OutsideSection>): End {
  const inset = 0.02 * (s.to - s.from);
  return radiusAt(part.outline, s.from + inset) < radiusAt(part.outline, s.to - inset) ? 'left' : 'right';
}

function featuresOn(part: PartResult, section: string): string[] {
  return [
    ...part.grooves.filter((g) => g.feature.on === section).map((g) => g.feature.id),
    ...part.threads.filter((t) => t.on === section).map((t) => t.id),
  ];
}

function here(holding: Holding, section: string): boolean {
  return holding.sections.some((s) => s.feature.id === section);
}

function grooves(part: PartResult, holding: Holding): Draft[] {
  return part.grooves
    .filter((g) => g.side === 'outside' && here(holding, g.feature.on))
    .map((g) => {
      const width = dimensionOf(part, g.feature.id, 'width');
      const floor = dimensionOf(part, g.feature.id, 'floorDiameter');
      return {
        ...operation(holding, 'groove' as const, g.feature.id, [g.feature.id, g.feature.on], g.largest),
        title: `Cut ${called(part, g.feature.id)}, ${lengthInWords(middle(width, g.to - g.from))} wide, to ${inWords(middle(floor, g.smallest))}`,
        from: g.from,
        to: g.to,
        task: {
          does: 'groove' as const,
          width: middle(width, g.to - g.from),
          floor: middle(floor, g.smallest),
          outer: g.largest,
          internal: false,
        },
        removes: { cuts: 'outside' as const, to: piecesOf(part, 'outside', [g.feature.id]) },
        cautions: ['Lock the saddle, cutter at centre height, short overhang; if it sings, slower and feed firmly.'],
      };
    });
}

function threads(part: PartResult, holding: Holding): Draft[] {
  return part.threads
    .filter((t) => t.side === 'external' && here(holding, t.on))
    .map((t) => ({
      // Ordered by the size of its section: a thread larger than what it is cut on must not come before that is turned.
      ...operation(holding, 'thread' as const, t.id, [t.id, t.on], sectionOf(part, t.on)?.largest ?? 0),
      // A taper thread belongs to its cone, which may be shaped late.
      atFreeEnd: sectionOf(part, t.on)?.feature.kind !== 'cylinder',
      title: `Cut the thread ${t.thread.designation}`,
      from: t.from,
      to: t.to,
      task: { does: 'thread' as const, thread: t },
      cautions: [
        'Slowest speed; know where the stop is before the half-nuts close. Turn the first pass by hand over the whole length.',
      ],
    }));
}

function sectionOf(part: PartResult, id: string): Placed<OutsideSection> | undefined {
  return part.outside.find((s) => s.feature.id === id);
}

function knurls(part: PartResult, holding: Holding): Draft[] {
  return part.notTurned.flatMap((f) => {
    if (f.kind !== 'knurl' || !here(holding, f.on)) return [];
    const on = sectionOf(part, f.on);
    return [
      {
        ...operation(holding, 'knurl' as const, f.id, [f.id, f.on], on?.largest ?? 0),
        title: `Knurl ${called(part, f.on)}`,
        from: on?.from ?? 0,
        to: on?.to ?? 0,
        task: { does: 'plain' as const },
        cautions: [
          'Knurling pushes hard on a light lathe: use a knurl that squeezes from both sides, slowest speed, plenty of oil.',
        ],
      },
    ];
  });
}
