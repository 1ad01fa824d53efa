/** Cones with the top slide set over, and curves by steps. */
import type { Cutter } from '../cutting/cutter.ts';
import { turningForce } from '../cutting/turning-force.ts';
import type { Finding } from '../finding.ts';
import { type Mm, radians } from '../units/quantities.ts';
import { giveOfBar } from './boring-bar.ts';
import { handCutInWords } from './choice-in-words.ts';
import { boringCutter, turningCutter } from './choose-cutter.ts';
import { curveHidden, missingBar, missingCutter, strokeFindings } from './cut-findings.ts';
import type { Draft, Task } from './draft.ts';
import { judgeFor } from './fares.ts';
import { handFedCut, slowestOf } from './hand-fed.ts';
import { giveOver, type Holding } from './hold.ts';
import { speedRange } from './machining.ts';
import { handCut, nothing, type Outcome, type Scene, speedBelow } from './outcome.ts';
import type { CutNumbers } from './route-result.ts';
import { sideLength } from './tables/cone-setting.ts';
import { coneTable } from './tables/cone-table.ts';
import { curveChamferTable } from './tables/curve-chamfer-table.ts';
import { curveTable, stepsOf } from './tables/curve-table.ts';
import { stretchFrom } from './tables/stretch.ts';
import { after, largestBetween, type Workpiece } from './workpiece.ts';

/** Feed by hand along a side or across a step; `common practice`. */
const slideFeed = 0.05;
/** Depths of a stroke by hand along a cone, on the radius; `common practice`. */
const outsideStroke: Mm = 0.4;
const boreStroke: Mm = 0.2;

export function performCone(
  scene: Scene,
  draft: Draft,
  task: Extract<Task, { does: 'cone' }>,
  holding: Holding,
  work: Workpiece,
): Outcome {
  const { workshop } = scene;
  const outside = task.where === 'outside';
  const wide = Math.max(task.cone.startDiameter, task.cone.endDiameter);
  // An outside cone is cut from whatever stands there, never from less than its thick end.
  const start = outside ? Math.max(largestBetween(work, draft.from, draft.to), wide) : task.startDiameter;
  const back = outside && task.thinEnd === 'chuck';
  const cutter = outside
    ? turningCutter(workshop.cutters, 'finish', back ? 'left' : 'right')
    : boringCutter(workshop.cutters, start, 0);
  if (!cutter)
    return {
      ...nothing(),
      findings: [
        outside
          ? missingCutter(draft, back ? 'a left-hand turning cutter' : 'a turning cutter')
          : missingBar(draft, start),
      ],
    };
  const stroke = Math.min(outside ? outsideStroke : boreStroke, cutter.maxDepth);
  const table = coneTable({
    id: `${draft.id}-table`,
    operation: draft.id,
    title: draft.title,
    cone: task.cone,
    startDiameter: start,
    where: task.where,
    along: stretchFrom(draft, scene.part.outline.length, holding.setup.endOut),
    thinEnd: task.thinEnd,
    greatest: stroke,
    across: workshop.lathe.dials.crossSlide,
  });
  const side = sideLength(task.cone);
  const travel = workshop.lathe.dials.topSlideTravel;
  const cut = lightCut(scene, cutter, draft, holding, work, {
    diameter: Math.max(start, wide),
    depth: stroke,
    passes: table.rows.length,
    where: task.where,
    does: outside ? 'turning' : 'boring',
  });
  const time = cut ? (60 * side) / (cut.feed * cut.speed) : 40;
  return {
    ...nothing(),
    cutter,
    cut,
    cutting: table.rows.length * (time + 15) + 600,
    tables: [table],
    why: slideWhy(scene, cutter, cut, 'diameter'),
    findings: [
      ...(travel !== undefined && travel < side ? [longerThanSlide(draft, side, travel)] : []),
      ...(cut ? strokeFindings(draft, cut, slowestOf(workshop.lathe)) : []),
    ],
  };
}

function longerThanSlide(draft: Draft, side: Mm, travel: Mm): Finding {
  return {
    id: 'route.cone-longer-than-slide',
    level: 'stop',
    stage: 'route',
    at: draft.id,
    says: 'The side of the cone is longer than the top slide travels.',
    because: [{ what: 'length of the side', value: side, unit: 'mm', limit: travel }],
    remedies: [
      'Turn it in two settings of the saddle, joined with an indicator',
      'Set the tailstock over, if it is an outside cone between centres',
    ],
  };
}

export function performCurve(
  scene: Scene,
  draft: Draft,
  task: Extract<Task, { does: 'curve' }>,
  holding: Holding,
  work: Workpiece,
): Outcome {
  const { workshop } = scene;
  const cutter = turningCutter(workshop.cutters, 'finish');
  if (!cutter) return { ...nothing(), findings: [missingCutter(draft, 'a turning cutter')] };
  const { curve, hidden } = task.steps;
  const findings = hidden ? [curveHidden(draft, curve?.depth ?? 0, draft.to - draft.from)] : [];
  const touch = Math.max(task.largest, largestBetween(work, draft.from, draft.to));
  const { topSlide, saddle, crossSlide } = workshop.lathe.dials;
  const along = topSlide ?? saddle;
  if (!curve) return { ...nothing(), cutter, cutting: 2400, findings };
  if (!along) return { ...nothing(), cutter, cutting: 2400, findings: [...findings, noDialAlong(draft)] };
  const asked = { curve, noseRadius: cutter.noseRadius, touch, along, across: crossSlide };
  const steps = stepsOf(asked);
  const table = curveTable(
    {
      ...asked,
      id: `${draft.id}-table`,
      operation: draft.id,
      title: draft.title,
      alongName: topSlide ? 'Top slide, parallel to the work' : 'Saddle',
      stretch: stretchFrom(draft, scene.part.outline.length, holding.setup.endOut),
    },
    steps,
  );
  const corners = topSlide
    ? curveChamferTable(
        { id: `${draft.id}-corners-table`, operation: draft.id, title: draft.title },
        curve,
        steps,
        cutter.noseRadius,
        {
          crossSlide,
          saddle,
        },
      )
    : undefined;
  const cut = lightCut(scene, cutter, draft, holding, work, {
    diameter: touch,
    depth: Math.min(0.5, cutter.maxDepth),
    passes: table.rows.length,
    where: 'outside',
    // Each step is cut like a face: the slide feeds inward to its stop.
    does: 'facing',
  });
  return {
    ...nothing(),
    cutter,
    cut,
    cutting: 45 * table.rows.length + 900,
    tables: [table, ...(corners ? [corners.table] : [])],
    findings: [...findings, ...(cut ? strokeFindings(draft, cut, slowestOf(workshop.lathe)) : [])],
    why: [
      ...slideWhy(scene, cutter, cut, 'length'),
      ...(corners
        ? [
            `The second table, if wanted, takes the corners off with the top slide: ${corners.after.toFixed(2)} mm is then left to file instead of ${corners.before.toFixed(2)} mm.`,
          ]
        : []),
    ],
  };
}

function noDialAlong(draft: Draft): Finding {
  return {
    id: 'route.no-dial-along',
    level: 'caution',
    stage: 'route',
    at: draft.id,
    says: 'A curve by steps needs a dial along the work; neither top slide nor saddle has one entered.',
    because: [],
    remedies: ['Enter the dial of the top slide', 'Turn it by eye to a template'],
  };
}

function slideWhy(
  { machining }: Scene,
  cutter: Cutter,
  cut: CutNumbers | undefined,
  on: 'diameter' | 'length',
): string[] {
  const published = machining && speedRange(machining.data, cutter.material, 'finish');
  return cut && published ? [handCutInWords(cut, published.high, on)] : [];
}

interface Stroke {
  readonly diameter: Mm;
  readonly depth: Mm;
  readonly passes: number;
  readonly where: 'outside' | 'bore';
  readonly does: 'turning' | 'boring' | 'facing';
}

/** A cut by hand, no faster than published for finishing and slower where that sings; nothing where none is published. */
function lightCut(
  scene: Scene,
  cutter: Cutter,
  draft: Draft,
  holding: Holding,
  work: Workpiece,
  { diameter, depth, passes, where, does }: Stroke,
): CutNumbers | undefined {
  const { machining, workshop, part } = scene;
  const range = machining && speedRange(machining.data, cutter.material, 'finish');
  if (!machining?.cutData || !range) return undefined;
  const force = turningForce({
    depth,
    feed: slideFeed,
    noseRadius: cutter.noseRadius,
    approachAngle: radians(cutter.approachAngle),
    rake: radians(cutter.rake),
    edge: cutter.edge,
    cutData: machining.cutData,
    where,
  });
  const { specificForce } = machining.cutData;
  // At its last stroke the work is at its weakest.
  const left = after(work, draft.removes);
  const { from, to } = draft;
  const judge = judgeFor(scene, { does, cutter, holding, work: left, from, to, diameter });
  const yielding = judge ? 0 : where === 'bore' ? giveOfBar(cutter) : giveOver(part, work, holding, from, to);
  return handFedCut({
    lathe: workshop.lathe,
    top: speedBelow(workshop.lathe, range.high, diameter),
    at: (speed) => handCut(scene, { depth, feed: slideFeed, speed, passes, diameter, force, yielding, specificForce }),
    judge,
    depth,
    sides: 1,
  });
}
