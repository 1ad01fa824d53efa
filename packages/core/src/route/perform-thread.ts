/** Threads cut with a single point: the passes, and the change gears that give the pitch. */
import type { Finding } from '../finding.ts';
import { spindleSpeeds } from '../lathe/drive.ts';
import { degrees } from '../units/quantities.ts';
import { threadingCutter, worksInside } from './choose-cutter.ts';
import { insideCutter, missingCutter } from './cut-findings.ts';
import type { Draft, Task } from './draft.ts';
import { nothing, type Outcome, type Scene } from './outcome.ts';
import { threadTable } from './tables/thread-table.ts';
import { gearsForThread } from './thread-gears.ts';

export function performThread(scene: Scene, draft: Draft, task: Extract<Task, { does: 'thread' }>): Outcome {
  const { lathe, cutters } = scene.workshop;
  const { thread, side, from, to } = task.thread;
  const cutter = threadingCutter(cutters, task.thread);
  const slowest = spindleSpeeds(lathe)[0] ?? 100;
  const angle = Number(degrees(thread.flankAngle).toFixed(1));
  const gears = gearsForThread(draft.id, lathe, task.thread);
  const findings: Finding[] = [
    ...(cutter ? [] : [missingCutter(draft, `a threading cutter of ${angle}° included angle`)]),
    ...(cutter && side === 'internal' && !worksInside(cutter) ? [insideCutter(draft, thread.minorDiameter)] : []),
    ...gears.findings,
  ];
  const table = threadTable(`${draft.id}-table`, draft.id, task.thread, lathe.dials.crossSlide, gears.notes);
  const lead = thread.pitch * thread.starts;
  return {
    ...nothing(),
    cutter,
    cutting: table.rows.length * thread.starts * ((60 * Math.abs(to - from)) / (lead * slowest) + 45),
    tables: [table],
    findings,
    needs: [gears.needed, 'pitch gauge'],
    why: [`${slowest} rpm, the slowest: there must be time to draw out at the end.`, ...gears.why],
  };
}
