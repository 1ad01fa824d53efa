/** The table of a thread in dial numbers, with the land left on the crest to see each depth by. */
import { crestWidthAtDepth } from '../../standards/threads/cutting-geometry.ts';
import type { DialTable } from '../dial-table.ts';
import { threadNotes } from './thread-notes.ts';
import { planThread, type ThreadInput } from './thread-plan.ts';

export function threadTable(input: ThreadInput & { readonly id: string; readonly operation: string }): DialTable {
  const { thread, side } = input.placed;
  const plan = planThread(input);
  return {
    id: input.id,
    kind: 'thread',
    title: `Thread ${thread.designation}${plan.way.way === 'straight' ? '' : ', by the top slide'}`,
    operation: input.operation,
    columns: [
      { key: 'pass', title: 'pass', unit: '' },
      { key: 'turns', title: 'turns', unit: '', decimals: 0 },
      { key: 'divisions', title: 'divisions', unit: '', decimals: 0 },
      { key: 'depth', title: 'depth so far', unit: 'mm', decimals: 3 },
      { key: 'crest', title: 'crest left', unit: 'mm', decimals: 2 },
      { key: 'done', title: 'done', unit: '', blank: true },
    ],
    rows: plan.passes.map(({ name, setting, depth }) => ({
      // Narrow columns have no room for which of the spring passes it is.
      pass: name.replace(/ \d+$/, ''),
      turns: setting.turns,
      divisions: setting.divisions,
      depth,
      crest: side === 'external' ? crestWidthAtDepth(thread, depth, plan.full.tip) : '',
    })),
    notes: threadNotes(input, plan),
  };
}
