/** Drilling from the tailstock. */
import { chipLoadFloor } from '../cutting/drilling.ts';
import type { Finding } from '../finding.ts';
import { drillFeed } from '../materials/cutting-data.ts';
import { radians } from '../units/quantities.ts';
import { missingCutter, missingDrill, noTailstock } from './cut-findings.ts';
import type { Draft, Task } from './draft.ts';
import { speedRange } from './machining.ts';
import { nothing, type Outcome, type Scene, speedBelow } from './outcome.ts';
import { drillingTable } from './tables/drilling-table.ts';

/** Drilling speed where none is published, in m/min; `common practice`, slow enough for anything. */
const carefulDrilling = 12;
/** Largest drill for which a feed is printed. */
const largestPrinted = 25;

export function performDrill(scene: Scene, draft: Draft, task: Extract<Task, { does: 'drill' }>): Outcome {
  const { workshop, machining } = scene;
  const { lathe } = workshop;
  const owned = workshop.drills.find((d) => Math.abs(d.diameter - task.diameter) <= 0.06 && d.kind === 'twist');
  const range = machining && speedRange(machining.data, owned?.material ?? 'high-speed steel', 'drill');
  const printed = drillFeed(Math.min(task.diameter, largestPrinted));
  const feed = Math.max(printed.low, chipLoadFloor(task.diameter));
  const speed = speedBelow(lathe, range?.high ?? carefulDrilling, task.diameter);
  const pointLength = task.pointAngle >= 180 ? 0 : task.diameter / 2 / Math.tan(radians(task.pointAngle) / 2);
  const table = drillingTable({
    id: `${draft.id}-table`,
    operation: draft.id,
    title: draft.title,
    diameter: task.diameter,
    depth: task.depth,
    pointLength,
    dial: lathe.dials.tailstock,
    speed,
    feed,
    hardens: machining?.hardens ?? false,
  });
  const holds = lathe.tailstock?.largestDrill;
  const findings: Finding[] = [
    ...(owned ? [] : [missingDrill(draft, task.diameter)]),
    ...(lathe.tailstock ? [] : [noTailstock(draft)]),
    ...(holds !== undefined && task.diameter > holds + 1e-9
      ? [missingCutter(draft, `a drill chuck or sleeve for Ø${task.diameter} mm; the tailstock holds Ø${holds} mm`)]
      : []),
  ];
  return {
    ...nothing(),
    cutting: (60 * (task.depth + pointLength)) / (feed * speed) + 30 * table.rows.length,
    tables: [table],
    findings,
    needs: [`drill ${task.diameter} mm`],
    why: [`${speed} rpm, about ${feed.toFixed(2)} mm a turn by hand.`],
  };
}
