/** Grooving and parting: the whole width of the edge cuts at once, fed by hand. */
import type { Cutter } from '../cutting/cutter.ts';
import { groovingForce } from '../cutting/grooving.ts';
import type { Finding } from '../finding.ts';
import type { Judge } from '../lathe/judge.ts';
import { type Mm, radians } from '../units/quantities.ts';
import { handCutInWords } from './choice-in-words.ts';
import { groovingCutter, partingCutter, sawGrooveDepth, worksInside } from './choose-cutter.ts';
import { insideCutter, missingCutter, plungeFindings } from './cut-findings.ts';
import type { Draft, Task } from './draft.ts';
import { judgeFor } from './fares.ts';
import { handFedCut, slowestOf } from './hand-fed.ts';
import { giveOver, type Holding } from './hold.ts';
import { type Machining, speedRange } from './machining.ts';
import { handCut, noCuttingData, nothing, type Outcome, type Scene, speedBelow } from './outcome.ts';
import type { CutNumbers } from './route-result.ts';
import { grooveTable } from './tables/groove-table.ts';
import { stretchFrom } from './tables/stretch.ts';
import { after, largestBetween, type Workpiece } from './workpiece.ts';

/** Feed of a plunge by hand; `common practice`. */
const plungeFeed = 0.03;
/** A plunge goes at this share of the turning speed where none is published for it; `common practice`. */
const plungeShare = 0.5;

export function performGroove(
  scene: Scene,
  draft: Draft,
  task: Extract<Task, { does: 'groove' }>,
  holding: Holding,
  work: Workpiece,
): Outcome {
  const { part, workshop } = scene;
  const cutter = groovingCutter(workshop.cutters, task.width, task.internal);
  const inside = task.internal && !(cutter && worksInside(cutter)) ? [insideCutter(draft, task.outer)] : [];
  if (!cutter)
    return {
      ...nothing(),
      findings: [missingCutter(draft, `a grooving cutter of at most ${task.width.toFixed(2)} mm`)],
    };
  const outer = task.internal ? task.outer : Math.max(task.outer, largestBetween(work, draft.from, draft.to));
  const table = grooveTable({
    id: `${draft.id}-table`,
    operation: draft.id,
    title: draft.title,
    width: task.width,
    outer,
    floor: task.floor,
    cutterWidth: cutter.width ?? task.width,
    stretch: stretchFrom(draft, part.outline.length, holding.setup.endOut),
    across: workshop.lathe.dials.crossSlide,
    along: workshop.lathe.dials.topSlide ?? workshop.lathe.dials.saddle,
  });
  const depth = Math.abs(outer - task.floor) / 2;
  const stretch = { from: draft.from, to: draft.to, diameter: Math.max(outer, task.floor) };
  const held = { cutter, holding, work: after(work, draft.removes), ...stretch };
  const judge = task.internal ? undefined : judgeFor(scene, { does: 'grooving', ...held });
  const give = task.internal || judge ? 0 : giveOver(part, work, holding, draft.from, draft.to);
  const cut = plungeCut(scene, cutter, stretch.diameter, depth, table.rows.length, give, judge);
  const findings: Finding[] = [
    ...inside,
    ...(depth > cutter.maxDepth
      ? [missingCutter(draft, `a grooving cutter that goes ${depth.toFixed(1)} mm deep`)]
      : []),
  ];
  if (!cut)
    return { ...nothing(), cutter, cutting: 300, tables: [table], findings: [...findings, noCuttingData(draft)] };
  return {
    ...nothing(),
    cutter,
    cut,
    cutting: table.rows.length * ((60 * depth) / (cut.feed * cut.speed) + 20),
    tables: [table],
    findings: [
      ...findings,
      ...plungeFindings(draft, cut, slowestOf(scene.workshop.lathe)),
      ...ofBlade(judge, draft, cutter),
    ],
    why: plungeWhy(scene, cutter, cut),
  };
}

export function performPartOff(scene: Scene, draft: Draft, diameter: Mm, holding: Holding, work: Workpiece): Outcome {
  const cutter = partingCutter(scene.workshop.cutters);
  if (!cutter) return { ...nothing(), findings: [missingCutter(draft, 'a parting cutter')] };
  const depth = sawGrooveDepth(cutter, diameter);
  const judge = judgeFor(scene, { does: 'parting', cutter, holding, work, from: draft.from, to: draft.to, diameter });
  const give = judge ? 0 : giveOver(scene.part, work, holding, draft.from, draft.to);
  const cut = plungeCut(scene, cutter, diameter, depth, 1, give, judge);
  const cutting = cut ? (60 * depth) / (cut.feed * cut.speed) + 30 : 120;
  return {
    ...nothing(),
    cutter,
    cut,
    cutting,
    findings: cut
      ? [...plungeFindings(draft, cut, slowestOf(scene.workshop.lathe)), ...ofBlade(judge, draft, cutter)]
      : [],
    why: cut ? plungeWhy(scene, cutter, cut) : [],
  };
}

function ofBlade(judge: Judge | undefined, draft: Draft, cutter: Cutter): Finding[] {
  const said = judge?.ofBlade({ depth: cutter.width ?? 2, feed: plungeFeed }) ?? [];
  return said.map((finding) => ({ ...finding, at: draft.id }));
}

function plungeWhy({ machining }: Scene, cutter: Cutter, cut: CutNumbers): string[] {
  const published = machining && plungeSpeed(machining, cutter);
  return published === undefined ? [] : [handCutInWords(cut, published)];
}

function plungeCut(
  scene: Scene,
  cutter: Cutter,
  diameter: Mm,
  depth: Mm,
  passes: number,
  yielding: number,
  judge: Judge | undefined,
): CutNumbers | undefined {
  const cutData = scene.machining?.cutData;
  const fastest = scene.machining && plungeSpeed(scene.machining, cutter);
  if (!cutData || fastest === undefined) return undefined;
  const force = groovingForce({
    width: cutter.width ?? 2,
    feed: plungeFeed,
    rake: radians(cutter.rake),
    edge: cutter.edge,
    cutData,
  });
  const { specificForce } = cutData;
  const top = speedBelow(scene.workshop.lathe, fastest, diameter);
  return handFedCut({
    lathe: scene.workshop.lathe,
    top,
    at: (speed) => handCut(scene, { depth, feed: plungeFeed, speed, passes, diameter, force, yielding, specificForce }),
    judge,
    // A plunge cannot be made lighter than its width: where the drive is weak, slower is the only way.
    depth: cutter.width ?? 2,
    sides: 2,
  });
}

function plungeSpeed({ data }: Machining, cutter: Cutter): number | undefined {
  const printed = data.speeds.some((s) => s.operation === 'part' && s.cutter === cutter.material);
  const range = speedRange(data, cutter.material, printed ? 'part' : 'rough');
  return range && (printed ? range.high : plungeShare * range.high);
}
