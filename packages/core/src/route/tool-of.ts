/** What is in the tool post or the tailstock for an operation, as far as its order depends on it. */
import type { Workshop } from '../lathe/schema.ts';
import { boringCutter, groovingCutter, partingCutter, threadingCutter, turningCutter } from './choose-cutter.ts';
import type { Draft, Task } from './draft.ts';
import { closeBand } from './practice.ts';
import type { OperationChange } from './schema.ts';

/** The draft with what the order depends on: its cutter and whether its limits are close. */
export function withTool(draft: Draft, workshop: Workshop, change: OperationChange | undefined): Draft {
  const { task } = draft;
  const close = task.does === 'turn' && task.stage === 'finish' && (task.tolerance ?? closeBand) < closeBand;
  return { ...draft, tool: change?.cutter ?? toolOf(task, draft, workshop), close };
}

function toolOf(task: Task, draft: Draft, { cutters }: Workshop): string | undefined {
  switch (task.does) {
    case 'face':
      return turningCutter(cutters, 'face')?.id;
    case 'turn':
      return task.where === 'bore'
        ? boringCutter(cutters, task.startDiameter ?? 0, task.reach ?? 0)?.id
        : turningCutter(cutters, task.stage)?.id;
    case 'groove':
      return groovingCutter(cutters, task.width, task.internal)?.id ?? `${draft.id} cutter`;
    case 'thread':
      return threadingCutter(cutters, task.thread)?.id ?? `${draft.id} cutter`;
    case 'part off':
      return partingCutter(cutters)?.id ?? 'saw';
    case 'saw':
      return 'saw';
    case 'drill':
      return `drill ${task.diameter}`;
    case 'centre':
      return 'centre drill';
    case 'cone':
    case 'curve':
      return task.does === 'cone' && task.where === 'bore' ? 'boring bar' : turningCutter(cutters, 'finish')?.id;
    case 'polish':
      return 'abrasive paper';
    case 'plain':
      return draft.kind === 'chamfer' ? 'chamfering cutter' : draft.kind;
  }
}
