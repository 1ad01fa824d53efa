/** How a thread is set up, cut and measured: the notes under its table. */
import { describeTip } from '../../standards/threads/cutting-geometry.ts';
import { bestWire, readingOverWires } from '../../standards/threads/over-wires.ts';
import { degrees, type Mm } from '../../units/quantities.ts';
import { dialNote, slidePerDivision } from './dial.ts';
import { threadAim } from './thread-aim.ts';
import { leastCarbideInfeed, type ThreadInput, type ThreadPlan } from './thread-plan.ts';

export function threadNotes(input: ThreadInput, plan: ThreadPlan): string[] {
  const { thread, side } = input.placed;
  const { full } = plan;
  const aim = threadAim(thread, side);
  const outside = side === 'external';
  return [
    ...(plan.way.way === 'straight' ? straight(input, plan) : alongFlank(input, plan)),
    `Crest ${outside ? 'turned' : 'bored'} to Ø${aim.crest.toFixed(3)} mm, ends chamfered; ${plan.way.way === 'straight' ? 'zero the dial' : 'zero both dials'} with the threading cutter touching it. ${aim.why}`,
    `Cutter: ${Number(degrees(thread.flankAngle).toFixed(2))}° included, set square with a gauge, ${tipNote(full.own, describeTip(full.tip))}`,
    `Pitch ${Number(thread.pitch.toFixed(5))} mm${thread.threadsPerInch === undefined ? '' : ` (${thread.threadsPerInch} to the inch)`}${thread.starts > 1 ? `, ${thread.starts} starts` : ''}.`,
    ...(input.more ?? []),
    ...measuring(input, plan),
    plan.springs === 0
      ? `No spring passes: a carbide edge that takes less than ${leastCarbideInfeed} mm rubs and hardens the work.`
      : 'The spring passes go over it at the last setting, until hardly a chip comes.',
  ];
}

function straight({ crossSlide, placed }: ThreadInput, { way }: ThreadPlan): string[] {
  return [`${way.why} ${inward(placed.side)}`.trim(), dialNote('Cross slide', crossSlide)];
}

function inward(side: 'external' | 'internal'): string {
  return side === 'internal' ? 'Inside the depth goes outwards, away from the axis: count the dial that way.' : '';
}

function alongFlank({ topSlide, crossSlide, placed }: ThreadInput, { way, dial }: ThreadPlan): string[] {
  const angle = Number(degrees(way.angle).toFixed(1));
  const deeper = placed.side === 'external' ? 'towards the axis' : 'away from the axis';
  return [
    `${way.why} Set the top slide ${angle}° from the line of the cross slide, ${Number((90 - angle).toFixed(1))}° from the axis: scales begin at the one or the other. As it is wound deeper the cutter must go ${deeper} and ahead, the way the saddle travels.`,
    `Put the depth on with the top slide only. Draw out with the cross slide after each pass and bring it back to its nought. One division of the top slide takes ${Number((slidePerDivision(dial) * Math.cos(way.angle)).toFixed(4))} mm on the radius.`,
    ...(topSlide ? [dialNote('Top slide', topSlide)] : []),
    `Cross slide: ${Math.round(crossSlide.perTurn / crossSlide.division)} divisions a turn; only its nought is used.`,
  ];
}

function tipNote(own: boolean, tip: string): string {
  return own
    ? `its end taken as a ${tip}, as entered; a sharper one goes deeper, a blunter one less deep: the wires or the mate decide.`
    : `end with a ${tip}; a sharper one goes deeper, a blunter one less deep: the wires or the mate decide.`;
}

/** Measured first when no more than this is left on the radius; `common practice`. */
const leftAtFirst: Mm = 0.06;

function measuring(input: ThreadInput, plan: ThreadPlan): string[] {
  const { thread, side } = input.placed;
  const { passes, full, springs, dial, way } = plan;
  const numbered = passes.slice(0, passes.length - springs);
  // At the latest with one pass to go.
  const first =
    numbered.slice(0, -1).find((p) => full.depth - p.depth <= leftAtFirst) ?? numbered.at(-2) ?? numbered[0];
  const from = first ? `after pass ${first.name}` : 'before the last pass';
  if (side === 'internal')
    return [
      `Try the mate, or a plug of the size, ${from} and after every pass from there, bore and thread wiped clean.`,
    ];
  const aim = threadAim(thread, side);
  const wire = Number(bestWire(thread.pitch, thread.flankAngle).toFixed(2));
  const over = (pitchDiameter: Mm) =>
    readingOverWires(
      { pitchDiameter, pitch: thread.pitch, flankAngle: thread.flankAngle, starts: thread.starts },
      wire,
    );
  const limits = aim.pitchLimits;
  const per = 2 * slidePerDivision(dial) * Math.cos(way.angle);
  const left = first ? 2 * (full.depth - first.depth) : 0;
  return [
    `Over three wires of ${wire.toFixed(2)} mm the micrometer reads ${over(aim.pitch).toFixed(3)} mm when the thread is right${limits ? `, within ${over(limits.min).toFixed(3)} mm to ${over(limits.max).toFixed(3)} mm` : ''}. Other wires need another reading.`,
    `Measure ${from}: about ${(over(aim.pitch) + left).toFixed(3)} mm is to be expected. One division takes ${Number(per.toFixed(4))} mm off the reading. Go by the reading from there, not by the rows; once it is within its limits, stop.`,
  ];
}
