/** Runs one command line and answers its exit code; nothing escapes. */
import { type ExitCode, exitCodes } from './exit-codes.ts';
import { createProgram } from './program.ts';
import { report } from './report.ts';
import type { Terminal } from './terminal.ts';

export async function run(args: readonly string[], terminal: Terminal): Promise<ExitCode> {
  let code: ExitCode = exitCodes.fine;
  const program = createProgram(terminal, (answered) => {
    code = answered;
  });
  try {
    if (args.length === 0) program.outputHelp();
    else await program.parseAsync([...args], { from: 'user' });
    return code;
  } catch (error) {
    return report(error, terminal);
  }
}
