import { reportFault } from './report.ts';
import { run } from './run.ts';
import { processTerminal } from './terminal.ts';

const terminal = processTerminal();
// A reader that has seen enough, such as `head`, closes the pipe: that is no fault.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  process.exit(error.code === 'EPIPE' ? 0 : reportFault(error, terminal));
});
process.on('uncaughtException', (error) => {
  process.exit(reportFault(error, terminal));
});

process.exitCode = await run(process.argv.slice(2), terminal);
