/** The commands, what they take, and the help that teaches them. */
import { Command } from 'commander';
import type { AskOptions } from './commands/ask.ts';
import type { AssessOptions } from './commands/assess.ts';
import type { DataOptions } from './commands/backup.ts';
import type { CutOptions } from './commands/cut.ts';
import type { DrawingOptions } from './commands/drawing.ts';
import type { LatheOptions } from './commands/lathe.ts';
import type { LobesOptions } from './commands/lobes.ts';
import type { PacketOptions } from './commands/packet.ts';
import type { ServeOptions } from './commands/serve.ts';
import type { TablesOptions } from './commands/tables.ts';
import type { ExitCode } from './exit-codes.ts';
import { clean } from './show/text.ts';
import type { Terminal } from './terminal.ts';

export const version = '0.1.0';

const workshopOption = [
  '--workshop <file>',
  'lathe, cutters and gauges; left out, the only *.workshop.json beside the job is taken',
] as const;

const exitHelp = `
Exit codes
  0   done; assess and check: no finding of level stop
  1   assess and check: there is a finding of level stop; cut no metal before it is settled
  2   what was put in will not do: one line says where, what it was, what was expected
  3   a file could not be written; nothing of it is left
  70  a fault of this program; please report it

Begin here
  sparewright assess examples/valve-guide-pin.job.json
  sparewright ask limits --json '{"size":"40 f7"}'
  sparewright help packet`;

/** Every command answers with its exit code through `done`. */
export function createProgram(terminal: Terminal, done: (code: ExitCode) => void): Command {
  const program = new Command('sparewright')
    .description('Remake worn, discontinued turned parts on a light lathe.')
    .version(version, '--version', 'show the version')
    .helpOption('-h, --help', 'show help')
    .exitOverride()
    .showSuggestionAfterError()
    .configureOutput({
      writeOut: (text) => void terminal.out(text),
      writeErr: (text) => terminal.err(text),
      outputError: (text, write) => write(`sparewright: ${clean(text.replace(/^error: /, '').trim())}\n`),
      getOutHelpWidth: () => terminal.width,
      getErrHelpWidth: () => terminal.width,
    })
    .addHelpText('after', exitHelp);

  const command = (usage: string, sentence: string, example: string): Command =>
    program.command(usage).description(sentence).addHelpText('after', `\nExample\n  ${example}`);

  program.commandsGroup('A job');
  command(
    'assess <job>',
    'Says how a whole job stands: what was found, how it is made, what to beware of.',
    'sparewright assess examples/valve-guide-pin.job.json',
  )
    .option(...workshopOption)
    .option('--json', 'the figures as JSON, for other programs')
    .action(async (job: string, options: AssessOptions) => {
      const { assessCommand } = await import('./commands/assess.ts');
      done(await assessCommand(job, options, terminal));
    });

  command(
    'check <job>',
    'Says whether a job file reads and what was found in it; the exit code tells scripts.',
    'sparewright check examples/plunger.job.json && echo no stops',
  )
    .option(...workshopOption)
    .action(async (job: string, options: { workshop?: string }) => {
      const { checkCommand } = await import('./commands/check.ts');
      done(await checkCommand(job, options, terminal));
    });

  command(
    'recover <job>',
    'Says what the worn part was meant to be, how sure that is, and what to measure next.',
    'sparewright recover examples/plunger.job.json',
  )
    .option(...workshopOption)
    .option('--json', 'the figures as JSON, for other programs')
    .action(async (job: string, options: AssessOptions) => {
      const { recoverCommand } = await import('./commands/recover.ts');
      done(await recoverCommand(job, options, terminal));
    });

  command(
    'tables <job>',
    'Shows what to dial in, pass by pass, in the numbers of this lathe’s own dials.',
    'sparewright tables examples/valve-guide-pin.job.json --csv tables',
  )
    .option(...workshopOption)
    .option('--csv <folder>', 'write each table as a CSV file into a folder')
    .action(async (job: string, options: TablesOptions) => {
      const { tablesCommand } = await import('./commands/tables.ts');
      done(await tablesCommand(job, options, terminal));
    });

  command(
    'drawing <job>',
    'Draws the dimensioned sheet of the part as SVG.',
    'sparewright drawing examples/plunger.job.json -o plunger.svg',
  )
    .requiredOption('-o, --output <file>', 'file to write, ending in .svg')
    .option(...workshopOption)
    .action(async (job: string, options: DrawingOptions) => {
      const { drawingCommand } = await import('./commands/drawing.ts');
      done(await drawingCommand(job, options, terminal));
    });

  command(
    'packet <job>',
    'Writes the printable set for the workshop: drawing, setups, tables, inspection, cautions.',
    'sparewright packet examples/gland-spindle.job.json -o spindle.pdf --paper Letter',
  )
    .requiredOption('-o, --output <file>', 'PDF file to write')
    .option(...workshopOption)
    .option('--paper <size>', 'A4 or Letter; left out, what the job says')
    .action(async (job: string, options: PacketOptions) => {
      const { packetCommand } = await import('./commands/packet.ts');
      done(await packetCommand(job, options, terminal));
    });

  program.commandsGroup('The lathe');
  command(
    'lathe <workshop>',
    'Says how stiff this lathe is as far as is known, what its tests taught, and which test is worth doing next.',
    'sparewright lathe examples/bench-lathe.workshop.json',
  )
    .option('--state <name>', 'state of the lathe; left out, its present one')
    .option('--json', 'the figures as JSON, for other programs')
    .action(async (workshop: string, options: LatheOptions) => {
      const { latheCommand } = await import('./commands/lathe.ts');
      done(await latheCommand(workshop, options, terminal));
    });

  command(
    'cut',
    'Judges one cut along a bar: force, power, what it leaves on, whether it sings, and whether it goes.',
    [
      'sparewright cut --workshop examples/bench-lathe.workshop.json --material 303',
      '    --diameter 10 --out 40 --depth 0.1 --feed 0.05 --speed 400',
    ].join(' \\\n  '),
  )
    .requiredOption('--workshop <file>', 'lathe and cutters')
    .requiredOption('--material <name>', 'what is cut, by any name')
    .requiredOption('--diameter <length>', 'of the bar; bare numbers in the unit of the workshop')
    .requiredOption('--out <length>', 'how far the bar stands out of the jaws')
    .requiredOption('--depth <length>', 'of cut, on the radius')
    .requiredOption('--feed <length>', 'for each turn')
    .requiredOption('--speed <rpm>', 'of the spindle')
    .option('--tailstock', 'the end is held by the tailstock centre')
    .option(
      '--grip <length>',
      'held in the jaws; left out, the length of the jaws of the first chuck that takes the bar',
    )
    .option('--cutter <id>', 'as listed in the workshop; left out, its first turning cutter')
    .option('--limit <length>', 'greatest difference of diameter along the work that will do')
    .option('--state <name>', 'state of the lathe; left out, its present one')
    .option('--json', 'the figures as JSON, for other programs')
    .action(async (options: CutOptions) => {
      const { cutCommand } = await import('./commands/cut.ts');
      done(await cutCommand(options, terminal));
    });

  command(
    'lobes',
    'Draws how deep a cut may go at each of the lathe’s own speeds before it sings.',
    [
      'sparewright lobes --workshop examples/bench-lathe.workshop.json --material 303',
      '    --diameter 8 --out 80 --feed 0.05 --depth 0.2 --speed 800 -o limit.svg',
    ].join(' \\\n  '),
  )
    .requiredOption('-o, --output <file>', 'file to write, ending in .svg')
    .requiredOption('--workshop <file>', 'lathe and cutters')
    .requiredOption('--material <name>', 'what is cut, by any name')
    .requiredOption('--diameter <length>', 'of the bar; bare numbers in the unit of the workshop')
    .requiredOption('--out <length>', 'how far the bar stands out of the jaws')
    .requiredOption('--feed <length>', 'for each turn')
    .option('--depth <length>', 'of a cut to mark, on the radius')
    .option('--speed <rpm>', 'of a cut to mark')
    .option('--tailstock', 'the end is held by the tailstock centre')
    .option(
      '--grip <length>',
      'held in the jaws; left out, the length of the jaws of the first chuck that takes the bar',
    )
    .option('--cutter <id>', 'as listed in the workshop; left out, its first turning cutter')
    .option('--state <name>', 'state of the lathe; left out, its present one')
    .action(async (options: LobesOptions) => {
      const { lobesCommand } = await import('./commands/lobes.ts');
      done(await lobesCommand(options, terminal));
    });

  program.commandsGroup('A question');
  command(
    'ask [name]',
    'Answers one question of the trade with its sources: limits, threads, seals, forces and more.',
    [
      `sparewright ask limits --json '{"size":"40 f7"}'`,
      'sparewright ask limits                 what the question takes',
      'sparewright ask --list                 all questions',
      `echo '{"ask":"limits","size":"40 f7"}' | sparewright ask --lines`,
    ].join('\n  '),
  )
    .option('--json <input>', 'what is put in, as a JSON object')
    .option('--list', 'list the questions')
    .option('--lines', 'read one JSON request a line, write one JSON answer a line')
    .action(async (name: string | undefined, options: AskOptions) => {
      const { askCommand } = await import('./commands/ask.ts');
      done(await askCommand(name, options, terminal));
    });

  program.commandsGroup('The workbench');
  command('serve', 'Opens the workbench for a browser on this computer.', 'sparewright serve --port 4180')
    .option('--port <number>', 'port to listen on; left out, 4180 or the next free one')
    .option('--host <address>', 'address to listen on; left out, this computer only; 0.0.0.0 is the network too')
    .option('--data <folder>', 'folder that keeps jobs and workshop; left out, your own data folder')
    .option('--log', 'write a line of JSON for every request')
    .action(async (options: ServeOptions) => {
      const { serveCommand } = await import('./commands/serve.ts');
      done(await serveCommand(options, terminal));
    });

  program.commandsGroup('Your data');
  const dataOption = ['--data <folder>', 'folder the data lies in; left out, the one of this user'] as const;
  command('backup <file>', 'Writes everything that was entered into one file.', 'sparewright backup workshop.backup')
    .option(...dataOption)
    .action(async (file: string, options: DataOptions) => {
      const { backupCommand } = await import('./commands/backup.ts');
      done(await backupCommand(file, options, terminal));
    });

  command(
    'restore <file>',
    'Puts a backup in the place of what is there, after looking it through; what was there is kept.',
    'sparewright restore workshop.backup',
  )
    .option(...dataOption)
    .action(async (file: string, options: DataOptions) => {
      const { restoreCommand } = await import('./commands/backup.ts');
      done(await restoreCommand(file, options, terminal));
    });

  return program;
}
