/** Threads cut with a single point: the passes, where the cutter stops, and the change gears that give the pitch. */
import type { Cutter } from '../cutting/cutter.ts';
import type { Finding } from '../finding.ts';
import { spindleSpeeds } from '../lathe/drive.ts';
import type { PlacedThread } from '../part/part-result.ts';
import { degrees, type Mm } from '../units/quantities.ts';
import { threadingCutter, worksInside } from './choose-cutter.ts';
import { insideCutter, missingCutter } from './cut-findings.ts';
import type { Draft, Task } from './draft.ts';
import type { Holding } from './hold.ts';
import { nothing, type Outcome, type Scene } from './outcome.ts';
import type { OperationWish } from './route-result.ts';
import { stretchFrom, stretchNote } from './tables/stretch.ts';
import { planThread } from './tables/thread-plan.ts';
import { threadTable } from './tables/thread-table.ts';
import { gearsForThread } from './thread-gears.ts';
import { runOutOf } from './thread-run-out.ts';
import type { Workpiece } from './workpiece.ts';

export function performThread(
  scene: Scene,
  draft: Draft,
  task: Extract<Task, { does: 'thread' }>,
  holding: Holding,
  work: Workpiece,
  wish: OperationWish | undefined,
): Outcome {
  const { lathe, cutters } = scene.workshop;
  const placed = task.thread;
  const { thread, side, from, to } = placed;
  const cutter = threadingCutter(cutters, placed);
  const slowest = spindleSpeeds(lathe)[0] ?? 100;
  const angle = Number(degrees(thread.flankAngle).toFixed(1));
  const { crossSlide, topSlide } = lathe.dials;
  const asked = { placed, crossSlide, topSlide, infeed: wish?.infeed, cutter };
  const plan = planThread(asked);
  const root = plan.full.rootDiameter;
  const gears = gearsForThread(draft.id, lathe, placed, plan.way.way === 'straight');
  const runOut = runOutOf(draft, placed, root, slowest, holding, work);
  const findings: Finding[] = [
    ...(cutter ? [] : [missingCutter(draft, `a threading cutter of ${angle}° included angle`)]),
    ...(cutter && side === 'internal' && !worksInside(cutter) ? [insideCutter(draft, thread.minorDiameter)] : []),
    ...(cutter ? noseFindings(draft, placed, cutter, plan.full.own, root) : []),
    ...runOut.findings,
    ...(isTapered(placed) ? [taperThread(draft, placed)] : []),
    ...gears.findings,
  ];
  const along = stretchNote(stretchFrom(draft, scene.part.outline.length, holding.setup.endOut));
  const more = [along, ...runOut.notes, ...gears.notes];
  const table = threadTable({ ...asked, id: `${draft.id}-table`, operation: draft.id, more });
  const lead = thread.pitch * thread.starts;
  return {
    ...nothing(),
    cutter,
    cutting: table.rows.length * thread.starts * ((60 * Math.abs(to - from)) / (lead * slowest) + 45),
    tables: [table],
    findings,
    needs: [
      gears.needed,
      'pitch gauge',
      ...(plan.way.way === 'straight' ? [] : [`angle gauge to set the top slide ${degrees(plan.way.angle)}° over`]),
    ],
    why: [`${slowest} rpm, the slowest: there must be time to draw out at the end.`, plan.way.why, ...gears.why],
  };
}

function isTapered({ thread }: PlacedThread): boolean {
  return thread.family === 'npt' || thread.family === 'pipe-taper';
}

/** The saddle runs parallel: without more the table cuts a parallel thread. */
function taperThread({ id }: Draft, { thread }: PlacedThread): Finding {
  return {
    id: 'route.thread-taper',
    level: 'caution',
    stage: 'route',
    at: id,
    says: `${thread.designation} tapers by 1 in 16; the saddle alone cuts it parallel. The depths and the reading over wires hold where its diameter is the basic one.`,
    because: [],
    remedies: [
      'Set the tailstock over and cut it between centres',
      'Use a taper turning attachment',
      'Cut it with a die, after turning the cone',
    ],
  };
}

/** A nose that is too round leaves metal at the root, on which the crest of the mate rides. */
function noseFindings(
  { id }: Draft,
  { thread, side }: PlacedThread,
  { noseRadius }: Cutter,
  own: boolean,
  root: Mm,
): Finding[] {
  const outside = side === 'external';
  const limit = outside ? thread.minorDiameter : thread.majorDiameter;
  const proud = outside ? root - limit : limit - root;
  if (own && proud <= 0.02 * thread.pitch) return [];
  return [
    {
      id: 'route.thread-nose-large',
      level: 'caution',
      stage: 'route',
      at: id,
      says: own
        ? `The nose of the threading cutter is too round for ${thread.designation}: at the right pitch diameter the root stands in the way of the mate.`
        : `The nose of the threading cutter is too round for the grooves of ${thread.designation}. The table is for one ground to the form.`,
      because: own
        ? [{ what: 'diameter at the root, against the mate’s crest', value: root, unit: 'mm', limit }]
        : [{ what: 'nose radius', value: noseRadius, unit: 'mm' }],
      remedies: ['Stone the nose down to the end that the table names', 'Use a cutter ground for this pitch'],
    },
  ];
}
