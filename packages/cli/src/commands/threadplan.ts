/** `threadplan`: everything for one thread on this lathe: sizes, passes, gears, half nuts, wires, cutter. */
import { DomainError, InputError } from '@sparewright/core/errors';
import { ask } from '@sparewright/core/questions/ask';
import { gearQuestions } from '@sparewright/core/route/questions-gears';
import { threadPasses } from '@sparewright/core/route/questions-threads';
import { reliefQuestion } from '@sparewright/core/standards/threads/questions-cutting';
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
  readonly straight?: true;
  readonly flank?: true;
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
  const angle = degrees(thread.flankAngle);
  const cutter = cutters.find(
    (c) =>
      c.kind === 'threading' &&
      Math.abs((c.flankAngle ?? 0) - angle) <= 0.5 &&
      (c.inside ?? false) === (side === 'internal'),
  );
  const { crossSlide: dial, topSlide } = lathe.dials;
  const passes = naming(() =>
    ask('thread-passes', {
      designation,
      side,
      dial,
      ...(topSlide ? { topSlide } : {}),
      ...infeedOf(options),
      ...(cutter ? { cutter: { material: cutter.material, noseRadius: cutter.noseRadius } } : {}),
    }),
  );
  const relief = reliefOf(designation, side);
  const gears =
    lathe.leadscrew && lathe.changeGears && lathe.changeGears.length > 1
      ? ask('change-gears', {
          designation,
          side,
          leadscrew: lathe.leadscrew,
          gears: lathe.changeGears,
          ...(lathe.threadDial ? { threadDial: lathe.threadDial } : {}),
          ...(options.engaged === undefined ? {} : { engagedLength: options.engaged }),
        })
      : undefined;
  const wheels = gears && changeGears.output.parse(gears.answer);
  const code = wheels && gearsStop(wheels) ? exitCodes.stop : exitCodes.fine;
  if (options.json) {
    await terminal.out(`${JSON.stringify({ passes, gears, relief }, undefined, 2)}\n`);
    return code;
  }
  const sources = [...passes.sources, ...(gears?.sources ?? []), ...(relief?.sources ?? [])];
  const once = sources.filter((s, i) => sources.findIndex((t) => t.key === s.key) === i);
  const lines = [
    ...threadLines(
      threadPasses.output.parse(passes.answer),
      relief && reliefQuestion.output.parse(relief.answer),
      { designation, side, cutter: cutter?.name, angle },
      terminal,
    ),
    ...(wheels ? gearLines(wheels, terminal) : noGears(terminal)),
    ...sourceLines(once, terminal),
  ];
  await terminal.out(`${lines.join('\n')}\n`);
  return code;
}

function infeedOf({ straight, flank }: ThreadplanOptions): { infeed?: 'straight' | 'along the flank' } {
  if (straight && flank)
    throw new InputError([{ path: '--flank', value: true, expected: 'one of --straight and --flank, or neither' }]);
  return straight ? { infeed: 'straight' } : flank ? { infeed: 'along the flank' } : {};
}

/** Undercut and run-out; nothing for pitches that the standard does not cover. */
function reliefOf(designation: string, side: 'external' | 'internal') {
  try {
    return ask('thread-relief', { designation, side });
  } catch (error) {
    if (!(error instanceof DomainError)) throw error;
    return undefined;
  }
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
