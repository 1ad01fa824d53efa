/** Turning, boring and facing: the cut of the lathe's own feeds, and the table of its passes. */
import type { Cutter } from '../cutting/cutter.ts';
import type { Finding } from '../finding.ts';
import type { Judge } from '../lathe/judge.ts';
import type { PartResult } from '../part/part-result.ts';
import type { Mm } from '../units/quantities.ts';
import { giveOfBar } from './boring-bar.ts';
import { choiceInWords } from './choice-in-words.ts';
import { boringCutter, turningCutter } from './choose-cutter.ts';
import type { CutWanted } from './cut-candidate.ts';
import { barTooShort, cutFindings, missingBar, missingCutter, noseTooLarge } from './cut-findings.ts';
import type { Draft, Task } from './draft.ts';
import { tightestFillet } from './draft-edges.ts';
import { betweenThicker } from './draft-outside.ts';
import { chooseJudged, judgeFor } from './fares.ts';
import { giveOver, type Holding } from './hold.ts';
import { largestFeed, speedRange } from './machining.ts';
import { noCuttingData, nothing, type Outcome, type Scene } from './outcome.ts';
import { fineInfeedFor, lastPass } from './perform-fine.ts';
import {
  bendingShare,
  boreBending,
  facingAllowance,
  finishForPaper,
  paperedBendingShare,
  roughBending,
  usualTolerance,
} from './practice.ts';
import { semiFinish } from './semi-finish.ts';
import { slidePerDivision } from './tables/dial.ts';
import { stretchFrom } from './tables/stretch.ts';
import { turningTable } from './tables/turning-table.ts';
import { after, holeAt, largestBetween, type Workpiece } from './workpiece.ts';

/** How much warmer than the gauge work easily is after roughing [K]; `common practice`. */
const warmth = 20;

type Turn = Extract<Task, { does: 'turn' }>;

export function performTurn(scene: Scene, draft: Draft, task: Turn, holding: Holding, work: Workpiece): Outcome {
  const { part, workshop, machining } = scene;
  const { cutters, lathe } = workshop;
  const inside = task.where === 'bore';
  const start = inside
    ? holeLeft(work, draft, task, 2 * slidePerDivision(lathe.dials.crossSlide))
    : (task.startDiameter ?? largestBetween(work, task.clear?.from ?? draft.from, task.clear?.to ?? draft.to));
  const total = Math.max(0, inside ? task.target - start : start - task.target) / 2;
  const cutter = inside ? boringCutter(cutters, start, task.reach ?? 0) : turningCutter(cutters, task.stage);
  if (!cutter)
    return {
      ...nothing(),
      findings: [inside ? missingBar(draft, start) : missingCutter(draft, 'a turning cutter')],
    };
  const reach = reachFindings(scene, draft, task, cutter);
  if (total < 1e-6) return { ...nothing(), cutter, findings: reach };
  const speeds = machining && speedRange(machining.data, cutter.material, task.stage);
  if (!machining?.cutData || !speeds)
    return { ...nothing(), cutter, cutting: 600, findings: [...reach, noCuttingData(draft)] };
  const judge = judgeFor(scene, {
    does: inside ? 'boring' : 'turning',
    cutter,
    holding,
    // At its last pass it is at its weakest.
    work: after(work, draft.removes),
    from: task.clear?.from ?? draft.from,
    to: task.clear?.to ?? draft.to,
    diameter: Math.max(start, task.target),
  });
  const yielding = judge ? 0 : inside ? giveOfBar(cutter) : giveOver(part, work, holding, draft.from, draft.to);
  const last = task.stage === 'finish';
  const papered = paperFollows(part, draft, task);
  const semi = last ? semiFinish(task.tolerance, draft.working) : undefined;
  // What a boring bar gives is the same all along the bore: it is measured and dialled away, it does not make the bore taper.
  const widest = task.stage === 'rough' ? roughBending : boreBending;
  const chosen = chooseJudged(
    {
      diameter: Math.max(start, task.target),
      length: draft.to - draft.from,
      total,
      division: slidePerDivision(lathe.dials.crossSlide),
      fewestPasses: semi?.fewestPasses ?? 1,
      yielding,
      fares: judge && onLathe(judge, last),
      bendingLimit:
        !last || (inside && !judge)
          ? widest
          : Math.max(0.002, (papered ? paperedBendingShare : bendingShare) * (task.tolerance ?? usualTolerance)),
      finish: last ? (papered ? finishForPaper : task.finish) : undefined,
      feedLimit: largestFeed(machining.data, cutter, task.stage),
      speeds,
      cutData: machining.cutData,
      where: task.where,
    },
    judge,
    cutter,
    lathe,
  );
  const fine = fineInfeedFor(scene, draft, task);
  const table = turningTable({
    id: `${draft.id}-table`,
    operation: draft.id,
    title: draft.title,
    from: start,
    to: task.target,
    along: stretchFrom(draft, part.outline.length, holding.setup.endOut),
    depth: chosen.numbers.depth,
    where: task.where,
    dial: lathe.dials.crossSlide,
    givesWay: chosen.numbers.bending,
    finishing: last && { grows: warmth * task.target * (part.material?.expansion ?? 0) },
    lastByTopSlide: fine.infeed !== undefined,
    cone: task.cone,
  });
  const before = Number(table.rows.at(-2)?.diameter ?? start);
  const ends = table.rows.at(-1)?.diameter;
  return {
    cutter,
    cut: chosen.numbers,
    cutting: chosen.time,
    tables: [
      ...(table.rows.length > 0 ? [table] : []),
      ...(fine.infeed ? [lastPass(scene, draft, task, fine.infeed, cutter, before)] : []),
    ],
    needs: task.cone ? ['drill ground flat, or a boring bar that reaches the middle, for the floor of the bore'] : [],
    endsAt: task.stage === 'rough' && typeof ends === 'number' ? ends : undefined,
    findings: [...reach, ...cutFindings(draft, chosen, cutter, machining.hardens), ...fine.findings],
    why: [...(semi ? [semi.why] : []), choiceInWords(chosen), ...fine.why],
  };
}

/** What a bore is cut from: where the dial really ended its opening, if that stands there, less than a division under what was asked. */
function holeLeft(work: Workpiece, draft: Draft, task: Turn, division: Mm): Mm {
  const asked = task.startDiameter ?? 0;
  const left = 2 * holeAt(work, (draft.from + draft.to) / 2);
  return left < asked && left > asked - division - 1e-6 ? left : asked;
}

/**
 * What the lathe makes of a cut. Of a last cut only the difference along the work counts, for what is alike all along is measured after
 * the cut before and dialled away; of a rough cut all that it leaves on.
 */
function onLathe(judge: Judge, last: boolean): NonNullable<CutWanted['fares']> {
  return ({ depth, feed, rpm }) => {
    const { size, chatter } = judge({ depth, feed, speed: rpm });
    const [most, taper] = [size.most.middle, size.taper.middle];
    return { error: last ? taper : most, most, taper, sings: chatter };
  };
}

function reachFindings({ part, workshop }: Scene, draft: Draft, task: Turn, cutter: Cutter): Finding[] {
  const findings: Finding[] = [];
  if (task.reach !== undefined && cutter.overhang < task.reach) findings.push(barTooShort(draft, cutter, task.reach));
  const fillet = task.stage === 'finish' && task.where === 'outside' ? tightestFillet(part, draft.features) : undefined;
  if (fillet !== undefined && cutter.noseRadius > fillet + 1e-9) findings.push(noseTooLarge(draft, cutter, fillet));
  const reaches = workshop.cutters.some((c) => (c.kind === 'turning' && c.hand !== 'right') || c.kind === 'grooving');
  if (draft.why.includes(betweenThicker) && !reaches)
    findings.push(missingCutter(draft, 'a left-hand or neutral turning cutter, or a grooving cutter to plunge with'));
  return findings;
}

/** Abrasive paper follows: the cutter need not leave the finish itself, and what taper it leaves is papered away. */
function paperFollows(part: PartResult, draft: Draft, { stage, finish }: Turn): boolean {
  return (
    stage === 'finish' &&
    finish !== undefined &&
    finish <= 0.8 &&
    part.outside.some((s) => draft.features.includes(s.feature.id))
  );
}

/** Smallest step set in facing, where the dial along the work has none finer; `common practice`. */
const faceStep: Mm = 0.1;

/** Faced in light cuts from the rim to the centre; the speed is the one for the rim. */
export function performFace(scene: Scene, draft: Draft, diameter: Mm, holding: Holding, work: Workpiece): Outcome {
  const { workshop, machining } = scene;
  const cutter = turningCutter(workshop.cutters, 'face');
  if (!cutter) return { ...nothing(), findings: [missingCutter(draft, 'a turning or facing cutter')] };
  const speeds = machining && speedRange(machining.data, cutter.material, 'finish');
  if (!machining?.cutData || !speeds) return { ...nothing(), cutter, cutting: 120, findings: [noCuttingData(draft)] };
  const along = workshop.lathe.dials.topSlide ?? workshop.lathe.dials.saddle;
  const judge = judgeFor(scene, {
    does: 'facing',
    cutter,
    holding,
    work: after(work, draft.removes),
    from: draft.from,
    to: draft.to,
    diameter,
  });
  const chosen = chooseJudged(
    {
      diameter,
      length: diameter / 2,
      total: facingAllowance,
      // A saddle's coarse dial is read between its divisions.
      division: Math.min(along ? slidePerDivision(along) : faceStep, faceStep),
      fewestPasses: 2,
      // What pushes away in facing goes along the spindle, where work alone is stiff.
      yielding: 0,
      fares: judge && onLathe(judge, false),
      bendingLimit: roughBending,
      finish: undefined,
      feedLimit: largestFeed(machining.data, cutter, 'face'),
      speeds,
      cutData: machining.cutData,
      where: 'outside',
    },
    judge,
    cutter,
    workshop.lathe,
  );
  return {
    ...nothing(),
    cutter,
    cut: chosen.numbers,
    cutting: chosen.time,
    findings: cutFindings(draft, chosen, cutter, machining.hardens),
    why: [choiceInWords(chosen)],
  };
}
