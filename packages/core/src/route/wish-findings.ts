/** What follows when an operation is left out, or done with another cutter than the planner would take. */
import type { Finding } from '../finding.ts';
import type { Draft } from './draft.ts';
import { inWords } from './draft.ts';
import type { Outcome } from './outcome.ts';
import { largestBetween, type Workpiece } from './workpiece.ts';

export function leftOut(draft: Draft, work: Workpiece): Finding {
  return {
    id: 'route.left-out',
    level: 'caution',
    stage: 'route',
    at: draft.id,
    says: `Left out as wished: ${staysAs(draft, work)}`,
    because: [],
    remedies: ['Say in the wish how it is done instead', 'Take the wish back'],
  };
}

function staysAs(draft: Draft, work: Workpiece): string {
  const { task } = draft;
  if (task.does === 'turn' && task.where === 'outside') {
    const left = largestBetween(work, task.clear?.from ?? draft.from, task.clear?.to ?? draft.to);
    return left > task.target + 1e-6
      ? `it stays ${inWords(left)} where ${inWords(task.target)} was to come, and later operations meet that.`
      : 'nothing stays uncut, for other operations take it off.';
  }
  if (task.does === 'groove') return `the work stays ${inWords(task.outer)} there, without the groove.`;
  if (task.does === 'drill' || (task.does === 'turn' && task.where === 'bore'))
    return `the hole stays as it is before; ${inWords(task.does === 'drill' ? task.diameter : task.target)} was to come.`;
  return 'the surface stays as the operation before leaves it.';
}

export function doesNotServe(draft: Draft, wished: string, own: Outcome): Finding {
  return {
    id: 'route.cutter-does-not-serve',
    level: 'caution',
    stage: 'route',
    at: draft.id,
    says: `The cutter wished for, ${wished}, cannot do this; ${own.cutter ? `it is planned with the ${own.cutter.name}` : 'none on hand can'}.`,
    because: [],
    remedies: ['Choose a cutter of the right kind, hand and size', 'Leave the cutter to the planner'],
  };
}

export function otherCutter(draft: Draft, own: Outcome, wished: Outcome): Finding {
  const longer = (wished.cutting - own.cutting) / 60;
  const minutes = Math.abs(longer).toFixed(1);
  const time =
    Math.abs(longer) < 0.1 ? 'takes as long' : longer > 0 ? `takes ${minutes} min longer` : `is ${minutes} min quicker`;
  const than = own.cutter ? ` than with the ${own.cutter.name}` : '';
  return {
    id: 'route.other-cutter',
    level: 'note',
    stage: 'route',
    at: draft.id,
    says: `With the ${wished.cutter?.name} as wished it ${time}${Math.abs(longer) < 0.1 && own.cutter ? ` as with the ${own.cutter.name}` : than}.`,
    because: [
      ...(wished.cut ? [{ what: 'radial force with it', value: wished.cut.radialForce, unit: 'N' }] : []),
      ...(own.cut ? [{ what: 'radial force with the planner’s own', value: own.cut.radialForce, unit: 'N' }] : []),
    ],
    remedies: [],
  };
}
