/** `threadplan`: everything for one thread on this lathe: sizes, passes, gears, half nuts, wires, cutter. */
import { InputError } from '@sparewright/core/errors';
import { ask } from '@sparewright/core/questions/ask';
import { threadPasses } from '@sparewright/core/route/questions';
import { gearQuestions } from '@sparewright/core/route/questions-gears';
import { parseThread } from '@sparewright/core/standards/threads/thread';
import { degrees } from '@sparewright/core/units/quantities';
import { type ExitCode, exitCodes } from '../exit-codes.ts';
import { readWorkshopFile } from '../read-file.ts';
import { gearLines, gearsStop } from '../show/gears.ts';
import { sourceLines } from '../show/sources.ts';
import { threadLines } from '../show/threadplan.ts';
import type { Terminal } from '../terminal.ts';

export interface ThreadplanOptions {
  readonly workshop: string;
  readonly internal?: true;
  readonly engaged?: string;
  readonly json?: true;
}

const [changeGears] = gearQuestions;

export async function threadplanCommand(
  designation: string,
  options: ThreadplanOptions,
  terminal: Terminal,
): Promise<ExitCode> {
  const { workshop } = readWorkshopFile(options.workshop);
  const { lathe, cutters } = workshop;
  const thread = naming(() => parseThread(designation));
  const side = options.internal ? 'internal' : 'external';
  const passes = naming(() => ask('thread-passes', { designation, side, dial: lathe.dials.crossSlide }));
  const gears =
    lathe.leadscrew && lathe.changeGears && lathe.changeGears.length > 1
      ? ask('change-gears', {
          designation,
          side,
          leadscrew: lathe.leadscrew,
          gears: lathe.changeGears,
          ...(options.engaged === undefined ? {} : { engagedLength: options.engaged }),
        })
      : undefined;
  const wheels = gears && changeGears.output.parse(gears.answer);
  const code = wheels && gearsStop(wheels) ? exitCodes.stop : exitCodes.fine;
  if (options.json) {
    await terminal.out(`${JSON.stringify({ passes, gears }, undefined, 2)}\n`);
    return code;
  }
  const angle = degrees(thread.flankAngle);
  const cutter = cutters.find(
    (c) =>
      c.kind === 'threading' &&
      Math.abs((c.flankAngle ?? 0) - angle) <= 0.5 &&
      (c.inside ?? false) === (side === 'internal'),
  );
  const sources = [...passes.sources, ...(gears?.sources ?? [])];
  const once = sources.filter((s, i) => sources.findIndex((t) => t.key === s.key) === i);
  const lines = [
    ...threadLines(
      threadPasses.output.parse(passes.answer),
      { designation, side, cutter: cutter?.name, angle },
      terminal,
    ),
    ...(wheels ? gearLines(wheels, terminal) : noGears(terminal)),
    ...sourceLines(once, terminal),
  ];
  await terminal.out(`${lines.join('\n')}\n`);
  return code;
}

function noGears({ ink }: Terminal): string[] {
  return ['', ink.yellow('No leadscrew or change gears are entered for this lathe: set the pitch by its plate.')];
}

function naming<T>(answer: () => T): T {
  try {
    return answer();
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    throw new InputError(error.issues.map((issue) => ({ ...issue, path: 'thread' })));
  }
}
