/**
 * Gives every drafted operation its cutter, cut, table and time, in order, while the work shrinks under it.
 */
import type { Cutter } from '../cutting/cutter.ts';
import { chipLoadFloor } from '../cutting/drilling.ts';
import { groovingForce } from '../cutting/grooving.ts';
import { cuttingPower, motorPower } from '../cutting/power.ts';
import { cuttingSpeed, spindleSpeed } from '../cutting/speed.ts';
import type { Finding } from '../finding.ts';
import { drivePower, spindleSpeeds } from '../lathe/drive.ts';
import type { Workshop } from '../lathe/schema.ts';
import { drillFeed } from '../materials/cutting-data.ts';
import type { PartResult } from '../part/part-result.ts';
import { type Mm, type Rpm, radians, type Second } from '../units/quantities.ts';
import { type ChosenCut, chooseCut } from './choose-cut.ts';
import { boringCutter, groovingCutter, partingCutter, threadingCutter, turningCutter } from './choose-cutter.ts';
import { cutFindings, missingCutter, missingDrill } from './cut-findings.ts';
import type { DialTable } from './dial-table.ts';
import type { Draft, Task } from './draft.ts';
import { giveOver, type Holding } from './hold.ts';
import { type Machining, speedRange } from './machining.ts';
import { bendingShare, operationHandling, roughBending } from './practice.ts';
import type { CutNumbers, Operation } from './route-result.ts';
import { coneTable } from './tables/cone-table.ts';
import { curveTable } from './tables/curve-table.ts';
import { drillingTable } from './tables/drilling-table.ts';
import { grooveTable } from './tables/groove-table.ts';
import { threadTable } from './tables/thread-table.ts';
import { turningTable } from './tables/turning-table.ts';
import { largestBetween, turnedDown, type Workpiece } from './workpiece.ts';

/** What every operation is planned against. */
export interface Scene {
  readonly part: PartResult;
  readonly workshop: Workshop;
  readonly machining: Machining | undefined;
}

export interface Realised {
  readonly operation: Operation;
  readonly tables: readonly DialTable[];
  readonly findings: readonly Finding[];
  readonly work: Workpiece;
  /** What to lay out for it. */
  readonly needs: readonly string[];
}

/** What a task adds to its plain operation. */
interface Outcome {
  readonly cutter?: Cutter | undefined;
  readonly cut?: CutNumbers | undefined;
  readonly cutting: Second;
  readonly tables: readonly DialTable[];
  readonly findings: readonly Finding[];
  readonly work: Workpiece;
  readonly why?: readonly string[];
  readonly needs?: readonly string[];
}

/** Published ranges of cutting times on hand-worked lathes are wide; `common practice`. */
const quick = 0.7;
const slow = 1.8;

export function realise(
  scene: Scene,
  draft: Draft,
  number: number,
  reasons: readonly string[],
  holding: Holding,
  work: Workpiece,
): Realised {
  const outcome = perform(scene, draft, holding, work);
  const likely = operationHandling + outcome.cutting;
  return {
    operation: {
      id: draft.id,
      number,
      setup: draft.setup,
      kind: draft.kind,
      title: draft.title,
      features: draft.features,
      cutter: outcome.cutter?.name,
      cut: outcome.cut,
      from: draft.from,
      to: draft.to,
      time: { low: quick * likely, likely, high: slow * likely },
      why: [...draft.why, ...reasons, ...(outcome.why ?? [])],
      cautions: draft.cautions,
      tables: outcome.tables.map((t) => t.id),
    },
    tables: outcome.tables,
    findings: outcome.findings,
    work: outcome.work,
    needs: [...(outcome.cutter ? [outcome.cutter.name] : []), ...(outcome.needs ?? [])],
  };
}

function perform(scene: Scene, draft: Draft, holding: Holding, work: Workpiece): Outcome {
  const { task } = draft;
  switch (task.does) {
    case 'turn':
      return turn(scene, draft, task, holding, work);
    case 'drill':
      return drill(scene, draft, task, work);
    case 'groove':
      return groove(scene, draft, task, holding, work);
    case 'thread':
      return thread(scene, draft, task, work);
    case 'cone':
      return cone(scene, draft, task, work);
    case 'curve':
      return curve(scene, draft, task, holding, work);
    case 'face':
      return face(scene, draft, work);
    case 'centre':
      return { ...nothing(work), cutting: 60, needs: ['centre drill'] };
    case 'plain':
      return plain(scene, draft, work);
  }
}

function nothing(work: Workpiece): Outcome {
  return { cutting: 0, tables: [], findings: [], work };
}

function plain(scene: Scene, draft: Draft, work: Workpiece): Outcome {
  if (draft.kind === 'part off') {
    const cutter = partingCutter(scene.workshop.cutters);
    return {
      ...nothing(work),
      cutter,
      cutting: 300,
      needs: cutter ? ['hacksaw'] : ['hacksaw, no parting cutter entered'],
    };
  }
  const minutes: Partial<Record<Draft['kind'], number>> = {
    polish: 15,
    knurl: 10,
    chamfer: 4,
    'turn curve': 40,
    'off the lathe': 40,
  };
  return {
    ...nothing(work),
    cutting: 60 * (minutes[draft.kind] ?? 5),
    needs: draft.kind === 'polish' ? ['abrasive paper 240 to 600, oil'] : [],
  };
}

function face(scene: Scene, draft: Draft, work: Workpiece): Outcome {
  const cutter = turningCutter(scene.workshop.cutters, 'face');
  if (!cutter) return { ...nothing(work), findings: [missingCutter(draft, 'a turning or facing cutter')] };
  return { ...nothing(work), cutter, cutting: 120 };
}

type Turn = Extract<Task, { does: 'turn' }>;

function turn(scene: Scene, draft: Draft, task: Turn, holding: Holding, work: Workpiece): Outcome {
  const { part, workshop, machining } = scene;
  const start = task.startDiameter ?? largestBetween(work, draft.from, draft.to);
  const after = task.where === 'outside' ? turnedDown(work, draft.from, draft.to, task.target) : work;
  const total = Math.abs(start - task.target) / 2;
  const cutter =
    task.where === 'bore' ? boringCutter(workshop.cutters, start) : turningCutter(workshop.cutters, task.stage);
  if (!cutter)
    return {
      ...nothing(after),
      findings: [
        missingCutter(
          draft,
          task.where === 'bore' ? `a boring bar that goes into ${start.toFixed(1)} mm` : 'a turning cutter',
        ),
      ],
    };
  if (total < 1e-6) return { ...nothing(after), cutter };
  const speeds = machining && speedRange(machining.data, cutter.material, task.stage);
  if (!machining?.cutData || !speeds)
    return { ...nothing(after), cutter, cutting: 600, findings: [noCuttingData(draft)] };
  const yielding = task.where === 'bore' ? 0 : giveOver(part, work, holding, draft.from, draft.to);
  const chosen = chooseCut(
    {
      diameter: Math.max(start, task.target),
      length: draft.to - draft.from,
      total,
      fewestPasses: task.stage === 'finish' ? 3 : 1,
      yielding,
      bendingLimit: task.stage === 'rough' ? roughBending : Math.max(0.002, bendingShare * (task.tolerance ?? 0.1)),
      finish: task.stage === 'finish' ? paperFollows(part, draft, task) : undefined,
      speeds,
      cutData: machining.cutData,
      where: task.where,
    },
    cutter,
    workshop.lathe,
  );
  const { numbers } = chosen;
  const table = turningTable({
    id: `${draft.id}-table`,
    operation: draft.id,
    title: draft.title,
    from: start,
    to: task.target,
    depth: numbers.depth,
    where: task.where,
    dial: workshop.lathe.dials.crossSlide,
    radialForce: numbers.radialForce,
    yielding,
    finishing: task.stage === 'finish',
  });
  return {
    cutter,
    cut: numbers,
    cutting: chosen.time,
    tables: [table],
    findings: cutFindings(draft, chosen, cutter, machining.hardens),
    work: after,
    why: [choiceInWords(chosen)],
  };
}

/** Where abrasive paper follows, the cutter needs only a surface that the paper takes out quickly; `common practice`: Ra 1.6. */
function paperFollows(part: PartResult, draft: Draft, task: Turn): number | undefined {
  const polished =
    task.finish !== undefined && task.finish <= 0.8 && part.outside.some((s) => draft.features.includes(s.feature.id));
  return polished ? 1.6 : task.finish;
}

function choiceInWords(chosen: ChosenCut): string {
  const { numbers } = chosen;
  const feed = numbers.byHand ? `by hand, about ${numbers.feed} mm a turn` : `${numbers.feed} mm a turn`;
  return `${numbers.passes} ${numbers.passes === 1 ? 'pass' : 'passes'} of ${numbers.depth.toFixed(2)} mm at ${numbers.speed} rpm and ${feed}: the quickest of this lathe's speeds and feeds within power, bending and chip thickness.`;
}

function noCuttingData(draft: Draft): Finding {
  return {
    id: 'route.no-cutting-data',
    level: 'note',
    stage: 'route',
    at: draft.id,
    says: 'No published cutting force or speed for this material and cutter: depth, feed and speed are left to you.',
    because: [],
    remedies: ['Choose a material by a name that the tables hold', 'Start with light cuts and log what goes well'],
  };
}

type Drilling = Extract<Task, { does: 'drill' }>;

function drill(scene: Scene, draft: Draft, task: Drilling, work: Workpiece): Outcome {
  const { workshop, machining } = scene;
  const owned = workshop.drills.find((d) => Math.abs(d.diameter - task.diameter) <= 0.06 && d.kind !== 'centre');
  const range = machining && speedRange(machining.data, owned?.material ?? 'high-speed steel', 'drill');
  const printed = drillFeed(Math.min(task.diameter, 25));
  const feed = Math.max(printed.low, chipLoadFloor(task.diameter));
  const speed = speedBelow(workshop.lathe, range?.high ?? 15, task.diameter);
  const pointLength = task.pointAngle >= 180 ? 0 : task.diameter / 2 / Math.tan(radians(task.pointAngle) / 2);
  const table = drillingTable({
    id: `${draft.id}-table`,
    operation: draft.id,
    title: draft.title,
    diameter: task.diameter,
    depth: task.depth,
    pointLength,
    dial: workshop.lathe.dials.tailstock,
    speed,
    feed,
    hardens: machining?.hardens ?? false,
  });
  return {
    ...nothing(work),
    cutting: (60 * (task.depth + pointLength)) / (feed * speed) + 30 * table.rows.length,
    tables: [table],
    findings: owned ? [] : [missingDrill(draft, task.diameter)],
    needs: [`drill ${task.diameter} mm`],
  };
}

/** The lathe's fastest speed that does not exceed a cutting speed; its slowest when all do. */
function speedBelow(lathe: Workshop['lathe'], cutting: number, diameter: Mm): Rpm {
  const all = spindleSpeeds(lathe);
  const most = spindleSpeed(cutting, diameter);
  return all.findLast((rpm) => rpm <= most) ?? all[0] ?? most;
}

type Grooving = Extract<Task, { does: 'groove' }>;

function groove(scene: Scene, draft: Draft, task: Grooving, holding: Holding, work: Workpiece): Outcome {
  const { part, workshop, machining } = scene;
  const after = task.internal ? work : turnedDown(work, draft.from, draft.to, task.floor);
  const cutter = groovingCutter(workshop.cutters, task.width);
  if (!cutter)
    return {
      ...nothing(after),
      findings: [missingCutter(draft, `a grooving cutter of at most ${task.width.toFixed(2)} mm`)],
    };
  const width = cutter.width ?? task.width;
  const outer = task.internal ? task.outer : Math.max(task.outer, largestBetween(work, draft.from, draft.to));
  const table = grooveTable({
    id: `${draft.id}-table`,
    operation: draft.id,
    title: draft.title,
    width: task.width,
    outer,
    floor: task.floor,
    cutterWidth: width,
    across: workshop.lathe.dials.crossSlide,
    along: workshop.lathe.dials.topSlide ?? workshop.lathe.dials.saddle,
  });
  const range =
    machining &&
    (speedRange(machining.data, cutter.material, 'part') ?? speedRange(machining.data, cutter.material, 'rough'));
  if (!machining?.cutData || !range)
    return { ...nothing(after), cutter, cutting: 300, tables: [table], findings: [noCuttingData(draft)] };
  const feed = 0.03;
  const speed = speedBelow(workshop.lathe, range.high, outer);
  const force = groovingForce({
    width,
    feed,
    rake: radians(cutter.rake),
    edge: cutter.edge,
    cutData: machining.cutData,
  });
  const surface = cuttingSpeed(outer, speed);
  const power = motorPower(cuttingPower(force.cutting, surface), workshop.lathe.drive.efficiency ?? 0.75);
  const depth = Math.abs(outer - task.floor) / 2;
  const cut: CutNumbers = {
    depth,
    feed,
    byHand: true,
    speed,
    cuttingSpeed: surface,
    passes: table.rows.length,
    cuttingForce: force.cutting,
    radialForce: force.radial,
    power,
    powerShare: power / drivePower(workshop.lathe, speed),
    bending: task.internal ? 0 : 2 * force.radial * giveOver(part, work, holding, draft.from, draft.to),
    specificForce: machining.cutData.specificForce,
  };
  return {
    ...nothing(after),
    cutter,
    cut,
    cutting: table.rows.length * ((60 * depth) / (feed * speed) + 20),
    tables: [table],
  };
}

function thread(scene: Scene, draft: Draft, task: Extract<Task, { does: 'thread' }>, work: Workpiece): Outcome {
  const cutter = threadingCutter(scene.workshop.cutters, task.thread);
  const table = threadTable(`${draft.id}-table`, draft.id, task.thread, scene.workshop.lathe.dials.crossSlide);
  const slowest = spindleSpeeds(scene.workshop.lathe)[0] ?? 100;
  const length = Math.abs(task.thread.to - task.thread.from);
  const angle = ((task.thread.thread.flankAngle * 180) / Math.PI).toFixed(1).replace('.0', '');
  return {
    ...nothing(work),
    cutter,
    cutting: table.rows.length * ((60 * length) / (task.thread.thread.pitch * slowest) + 45),
    tables: [table],
    findings: cutter ? [] : [missingCutter(draft, `a threading cutter of ${angle}° included angle`)],
    needs: [`change gears for a pitch of ${Number(task.thread.thread.pitch.toFixed(4))} mm`, 'pitch gauge'],
  };
}

function cone(scene: Scene, draft: Draft, task: Extract<Task, { does: 'cone' }>, work: Workpiece): Outcome {
  const { workshop } = scene;
  const cutter =
    task.where === 'bore'
      ? boringCutter(workshop.cutters, task.startDiameter)
      : turningCutter(workshop.cutters, 'finish');
  const table = coneTable({
    id: `${draft.id}-table`,
    operation: draft.id,
    title: draft.title,
    cone: task.cone,
    startDiameter: task.startDiameter,
    where: task.where,
    across: workshop.lathe.dials.crossSlide,
  });
  const travel = workshop.lathe.dials.topSlideTravel;
  const short = travel !== undefined && travel < task.cone.length;
  const findings: Finding[] = cutter
    ? []
    : [
        missingCutter(
          draft,
          task.where === 'bore'
            ? `a boring bar that goes into ${task.startDiameter.toFixed(1)} mm`
            : 'a turning cutter',
        ),
      ];
  if (short)
    findings.push({
      id: 'route.cone-longer-than-slide',
      level: 'stop',
      stage: 'route',
      at: draft.id,
      says: 'The cone is longer than the top slide travels.',
      because: [{ what: 'length of the cone', value: task.cone.length, unit: 'mm', limit: travel }],
      remedies: [
        'Cut it in two overlapping settings against a stop',
        'Set the tailstock over, if it is an outside cone between centres',
      ],
    });
  const after =
    task.where === 'outside'
      ? turnedDown(work, draft.from, draft.to, (task.cone.startDiameter + task.cone.endDiameter) / 2)
      : work;
  return { ...nothing(after), cutter, cutting: 40 * table.rows.length + 600, tables: [table], findings };
}

function curve(
  scene: Scene,
  draft: Draft,
  task: Extract<Task, { does: 'curve' }>,
  holding: Holding,
  work: Workpiece,
): Outcome {
  const { workshop } = scene;
  const cutter = turningCutter(workshop.cutters, 'finish');
  const after = turnedDown(work, draft.from, draft.to, task.largest);
  if (!cutter) return { ...nothing(after), findings: [missingCutter(draft, 'a turning cutter')] };
  const { topSlide, saddle, crossSlide } = workshop.lathe.dials;
  const along = topSlide ?? saddle;
  if (!along)
    return {
      ...nothing(after),
      cutter,
      findings: [
        {
          id: 'route.no-dial-along',
          level: 'caution',
          stage: 'route',
          at: draft.id,
          says: 'A curve by steps needs a dial along the work; neither top slide nor saddle has one entered.',
          because: [],
          remedies: ['Enter the dial of the top slide', 'Turn it by eye to a template'],
        },
      ],
    };
  const table = curveTable({
    id: `${draft.id}-table`,
    operation: draft.id,
    title: draft.title,
    curve: task.curve,
    noseRadius: cutter.noseRadius,
    touch: Math.max(task.largest, largestBetween(work, draft.from, draft.to)),
    along,
    alongName: topSlide ? 'Top slide, parallel to the work' : 'Saddle',
    across: crossSlide,
    freeEnd: holding.setup.endOut,
  });
  return { ...nothing(after), cutter, cutting: 45 * table.rows.length + 900, tables: [table] };
}
