/** The last pass to limits that the cross slide's dial cannot serve: put on with the top slide set over. */
import type { Cutter } from '../cutting/cutter.ts';
import { minimumChip } from '../cutting/rubbing.ts';
import type { Finding } from '../finding.ts';
import type { Mm } from '../units/quantities.ts';
import type { DialTable } from './dial-table.ts';
import type { Draft, Task } from './draft.ts';
import type { Scene } from './outcome.ts';
import { degreesMinutes } from './tables/cone-setting.ts';
import { slidePerDivision } from './tables/dial.ts';
import { dialServes, type FineInfeed, fineInfeed, fineTable } from './tables/fine-infeed.ts';

type Turn = Extract<Task, { does: 'turn' }>;

interface FineChoice {
  readonly infeed: FineInfeed | undefined;
  readonly why: readonly string[];
  readonly findings: readonly Finding[];
}

/** Whether a finishing cut wants the top slide set over, and how far; a finding where it is wanted and there is none. */
export function fineInfeedFor({ workshop }: Scene, draft: Draft, task: Turn): FineChoice {
  const { crossSlide, topSlide } = workshop.lathe.dials;
  const { tolerance } = task;
  if (task.stage !== 'finish' || tolerance === undefined || dialServes(crossSlide, tolerance))
    return { infeed: undefined, why: [], findings: [] };
  const division = 2 * slidePerDivision(crossSlide);
  const infeed = topSlide && fineInfeed(topSlide, tolerance);
  if (!infeed) return { infeed, why: [], findings: [dialTooCoarse(draft, division, tolerance)] };
  return {
    infeed,
    why: [
      `One division of the cross slide takes ${Number(division.toFixed(4))} mm off the diameter, and the limits lie ${Number(tolerance.toFixed(4))} mm apart: the last pass is put on with the top slide set over ${degreesMinutes(infeed.angle)}.`,
    ],
    findings: [],
  };
}

export function lastPass(
  { workshop }: Scene,
  draft: Draft,
  task: Turn,
  fine: FineInfeed,
  cutter: Cutter,
  expected: Mm,
): DialTable {
  const { crossSlide, topSlide } = workshop.lathe.dials;
  return fineTable({
    id: `${draft.id}-fine-table`,
    operation: draft.id,
    title: `${draft.title}: last pass with the top slide`,
    expected,
    target: task.target,
    tolerance: task.tolerance ?? 0,
    where: task.where,
    topSlide: topSlide ?? crossSlide,
    fine,
    leastDepth: minimumChip(cutter.edge).usual,
  });
}

function dialTooCoarse(draft: Draft, division: Mm, tolerance: Mm): Finding {
  return {
    id: 'route.dial-too-coarse',
    level: 'caution',
    stage: 'route',
    at: draft.id,
    says: 'The dials cannot be set finely enough for these limits, not even with the top slide set over.',
    because: [
      {
        what: 'taken off the diameter by one division of the cross slide',
        value: division,
        unit: 'mm',
        limit: tolerance / 2,
        source: 'common-practice',
      },
    ],
    remedies: [
      'Set a dial indicator against the cross slide and go by that',
      'Leave a few hundredths and bring it to size with abrasive paper, measuring often',
      'Enter the dial of the top slide, if it has one',
    ],
  };
}
