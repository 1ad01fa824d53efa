/** The commands, what they take, and the help that teaches them. */
import { Command } from 'commander';
import type { AskOptions } from './commands/ask.ts';
import type { AssessOptions } from './commands/assess.ts';
import type { DataOptions } from './commands/backup.ts';
import type { CutOptions } from './commands/cut.ts';
import type { DrawingOptions } from './commands/drawing.ts';
import type { GearsOptions } from './commands/gears.ts';
import type { LatheOptions } from './commands/lathe.ts';
import type { LobesOptions } from './commands/lobes.ts';
import type { PacketOptions } from './commands/packet.ts';
import type { RouteOptions } from './commands/route.ts';
import type { ServeOptions } from './commands/serve.ts';
import type { StepsOptions } from './commands/steps.ts';
import type { TablesOptions } from './commands/tables.ts';
import type { ThreadplanOptions } from './commands/threadplan.ts';
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
  0   done; assess, check, route, gears, threadplan: no finding of level stop
  1   of the same: there is a finding of level stop; cut no metal before it is settled
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
    'route <job>',
    'Shows the way from bar to part: stock, how it is held, operations with their cuts, times, what to lay out.',
    'sparewright route examples/plunger.job.json --why',
  )
    .option(...workshopOption)
    .option('--why', 'with the reasons of every choice, and the other ways to hold the work')
    .option('--remedies', 'try on this lathe what would help the cuts that pass a limit, best first')
    .option('--json', 'the figures as JSON, for other programs')
    .action(async (job: string, options: RouteOptions) => {
      const { routeCommand } = await import('./commands/route.ts');
      done(await routeCommand(job, options, terminal));
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
    .option('--for <job>', 'say instead what would help the cuts of this job on it')
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
    .option('--remedies', 'tell also what would help, best first')
    .option('--state <name>', 'state of the lathe; left out, its present one')
    .option('--json', 'the figures as JSON, for other programs')
    .action(async (options: CutOptions) => {
      const { cutCommand } = await import('./commands/cut.ts');
      done(await cutCommand(options, terminal));
    });

  command(
    'lobes [job]',
    'Draws over the lathe’s own speeds how deep a cut may go before it sings, or how likely each cut of a job sings.',
    [
      'sparewright lobes --workshop examples/bench-lathe.workshop.json --material 303',
      '    --diameter 8 --out 80 --feed 0.05 --depth 0.2 --speed 800 -o limit.svg',
    ]
      .join(' \\\n  ')
      .concat('\n  sparewright lobes examples/plunger.job.json -o cuts.svg'),
  )
    .requiredOption('-o, --output <file>', 'file to write, ending in .svg')
    .option('--workshop <file>', 'lathe and cutters')
    .option('--material <name>', 'what is cut, by any name')
    .option('--diameter <length>', 'of the bar; bare numbers in the unit of the workshop')
    .option('--out <length>', 'how far the bar stands out of the jaws')
    .option('--feed <length>', 'for each turn')
    .option('--depth <length>', 'of a cut to mark, on the radius')
    .option('--speed <rpm>', 'of a cut to mark')
    .option('--tailstock', 'the end is held by the tailstock centre')
    .option(
      '--grip <length>',
      'held in the jaws; left out, the length of the jaws of the first chuck that takes the bar',
    )
    .option('--cutter <id>', 'as listed in the workshop; left out, its first turning cutter')
    .option('--state <name>', 'state of the lathe; left out, its present one')
    .action(async (job: string | undefined, options: LobesOptions) => {
      const { lobesCommand } = await import('./commands/lobes.ts');
      done(await lobesCommand(job, options, terminal));
    });

  program.commandsGroup('A table for the dials');
  command(
    'steps',
    'Turns a dome, an ellipse, a cone or a hollow by steps: where to stop each cut, and what is left to file.',
    'sparewright steps --sphere 60 --chord 32 --cuts 13 --nose 0.4 --dial 0.02',
  )
    .option('--sphere <length>', 'radius of a sphere')
    .option('--chord <length>', 'diameter at its foot')
    .option('--height <length>', 'height of the dome, instead of the chord')
    .option('--ellipse <along x across>', 'half axes of an ellipse, with --height')
    .option('--cone <thin x thick x length>', 'diameters and length of a cone')
    .option('--hollow', 'hollowed into the end')
    .option('--cuts <number>', 'number of cuts')
    .option('--corner <length>', 'height of the corners that may be left, instead of a number of cuts')
    .option('--nose <length>', 'nose radius of the cutter; left out, a pointed one')
    .option('--dial <length>', 'one division of both dials')
    .option('--turn <length>', 'one turn of both dials; left out, divisions are counted through')
    .option('--workshop <file>', 'dials of this lathe, instead of --dial')
    .option('--turning', 'cuts along the work instead of facing cuts')
    .option('--equal', 'equal steps instead of the lowest corners')
    .option('--chamfers', 'with cuts of the top slide that take the corners off')
    .option('--json', 'the figures as JSON, for other programs')
    .action(async (options: StepsOptions) => {
      const { stepsCommand } = await import('./commands/steps.ts');
      done(await stepsCommand(options, terminal));
    });

  command(
    'threadplan <thread>',
    'Plans one thread on this lathe: size before it, passes, change gears, half nuts, reading over wires.',
    'sparewright threadplan M14x1.5 --workshop examples/bench-lathe.workshop.json',
  )
    .option('--workshop <file>', 'lathe and cutters')
    .option('--internal', 'the thread of the nut')
    .option('--straight', 'fed straight in; left out, by the pitch')
    .option('--flank', 'fed along the flank with the top slide; left out, by the pitch')
    .option('--engaged <length>', 'length over which thread and mate are engaged; left out, 10 mm')
    .option('--json', 'the figures as JSON, for other programs')
    .action(async (thread: string, options: ThreadplanOptions) => {
      const { threadplanCommand } = await import('./commands/threadplan.ts');
      done(await threadplanCommand(thread, options, terminal));
    });

  command(
    'gears',
    'Finds the change gears of this lathe for a pitch, and what they are off.',
    'sparewright gears --pitch 1.25 --workshop examples/bench-lathe.workshop.json',
  )
    .option('--workshop <file>', 'lathe and its wheels')
    .option('--pitch <length>', 'pitch, or the lead of a thread of several starts: 1.25, "1/11 in"')
    .option('--thread <name>', 'thread as it is written, instead of a pitch')
    .option('--engaged <length>', 'length over which thread and mate are engaged; left out, 10 mm')
    .option('--json', 'the figures as JSON, for other programs')
    .action(async (options: GearsOptions) => {
      const { gearsCommand } = await import('./commands/gears.ts');
      done(await gearsCommand(options, terminal));
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
