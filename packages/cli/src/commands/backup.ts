/** `backup` and `restore`: everything that was entered as one file, and back again. */
import { type ExitCode, exitCodes } from '../exit-codes.ts';
import { withProgress } from '../progress.ts';
import { plural } from '../show/plural.ts';
import type { Terminal } from '../terminal.ts';

export interface DataOptions {
  readonly data?: string;
}

export async function backupCommand(file: string, options: DataOptions, terminal: Terminal): Promise<ExitCode> {
  const { openStore } = await import('@sparewright/store/open-store');
  const store = openStore(options.data === undefined ? {} : { folder: options.data });
  try {
    const made = await withProgress(terminal, 'Making the backup', () => store.backup(file));
    const size = (made.bytes / 1e6).toFixed(1);
    await terminal.out(
      `Wrote ${made.path}: ${plural(made.jobs, 'job')}, ${plural(made.attachments, 'attachment')}, ${size} MB.\n`,
    );
    for (const problem of made.problems) terminal.err(`sparewright: not in the backup: ${problem}\n`);
    return made.problems.length === 0 ? exitCodes.fine : exitCodes.cannotWrite;
  } finally {
    store.close();
  }
}

export async function restoreCommand(file: string, options: DataOptions, terminal: Terminal): Promise<ExitCode> {
  const { defaultFolder } = await import('@sparewright/store/default-folder');
  const { restoreBackup } = await import('@sparewright/store/restore');
  const folder = options.data ?? defaultFolder();
  const { kept } = await withProgress(terminal, 'Looking through the backup', async () =>
    restoreBackup({ from: file, folder }),
  );
  const before = kept === undefined ? '' : ` What was there before is kept as ${kept}.`;
  await terminal.out(`Restored into ${folder}.${before}\n`);
  return exitCodes.fine;
}
