/** Turns whatever stopped a command into lines on the error stream and an exit code. */
import { DomainError, InputError, sentence } from '@sparewright/core/errors';
import { StoreError } from '@sparewright/store/store-error';
import { CommanderError } from 'commander';
import { type ExitCode, exitCodes } from './exit-codes.ts';
import { plural } from './show/plural.ts';
import { clean } from './show/text.ts';
import type { Terminal } from './terminal.ts';
import { CannotWrite } from './write-file.ts';

/** More would scroll the first, which matters most, out of sight. */
const mostLines = 8;

export function report(error: unknown, terminal: Terminal): ExitCode {
  if (error instanceof CommanderError) return error.exitCode === 0 ? exitCodes.fine : exitCodes.badInput;
  if (error instanceof CannotWrite) {
    say(error.message, terminal);
    return exitCodes.cannotWrite;
  }
  if (error instanceof InputError) {
    for (const issue of error.issues.slice(0, mostLines)) say(sentence(issue), terminal);
    const more = error.issues.length - mostLines;
    if (more > 0) say(`and ${plural(more, 'more fault')} like these`, terminal);
    return exitCodes.badInput;
  }
  if (error instanceof DomainError) {
    say(error.message, terminal);
    return exitCodes.badInput;
  }
  if (error instanceof StoreError) {
    say(error.message, terminal);
    return error.reason === 'disk' ? exitCodes.cannotWrite : exitCodes.badInput;
  }
  return reportFault(error, terminal);
}

/** The program's own mistake: one line, and where it happened only for those who ask. */
export function reportFault(error: unknown, terminal: Terminal): ExitCode {
  say(faultWords(error), terminal);
  if (terminal.debug && error instanceof Error) terminal.err(`${error.stack ?? ''}\n`);
  else terminal.err('SPAREWRIGHT_DEBUG=1 before the command shows where it happened.\n');
  return exitCodes.fault;
}

export function faultWords(error: unknown): string {
  const what = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
  return `internal fault, please report it together with what was asked: ${clean(what).slice(0, 300)}`;
}

function say(line: string, terminal: Terminal): void {
  terminal.err(`sparewright: ${clean(line)}\n`);
}
