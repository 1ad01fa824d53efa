/** `packet`: the printable set for the workshop. */
import { InputError } from '@sparewright/core/errors';
import { recoverJob } from '@sparewright/core/job/recover-job';
import type { Job } from '@sparewright/core/job/schema';
import type { PacketInput } from '@sparewright/output/packet/packet';
import { defaultFolder } from '@sparewright/store/default-folder';
import { assessFile } from '../assess-file.ts';
import { type ExitCode, exitCodes } from '../exit-codes.ts';
import { withProgress } from '../progress.ts';
import { writtenLines } from '../show/written.ts';
import type { Terminal } from '../terminal.ts';
import { writeWhole } from '../write-file.ts';

export interface PacketOptions {
  readonly output: string;
  readonly workshop?: string;
  readonly paper?: string;
}

export async function packetCommand(file: string, options: PacketOptions, terminal: Terminal): Promise<ExitCode> {
  const paper = paperOf(options.paper);
  const assessed = await assessFile(file, options.workshop, terminal);
  const { read, chosen, assessment } = assessed;
  const job = paper === undefined ? read.job : { ...read.job, sheet: { ...read.job.sheet, paper } };
  const pdf = await withProgress(terminal, 'Setting the packet', async () => {
    // The typesetter is heavy: only this command pays for it.
    const { makePacket } = await import('@sparewright/output/packet/packet');
    const recovered = recoverJob(job, chosen.workshop, assessment.part);
    return makePacket({ job, workshop: chosen.workshop, assessment, recovered, picture: await picturesOf(job) });
  });
  writeWhole(options.output, pdf);
  await terminal.out(writtenLines([options.output], assessed, terminal));
  return exitCodes.fine;
}

/** A job file names its photographs only; where this computer's own data holds them, they are printed. */
async function picturesOf({ photographs = [] }: Job): Promise<PacketInput['picture']> {
  if (photographs.length === 0) return undefined;
  const { attachmentReader } = await import('@sparewright/store/attachments');
  const picture = attachmentReader(defaultFolder());
  return photographs.some(({ file }) => picture(file)) ? picture : undefined;
}

function paperOf(typed: string | undefined): 'A4' | 'Letter' | undefined {
  const known = (['A4', 'Letter'] as const).find((paper) => paper.toLowerCase() === typed?.toLowerCase());
  if (typed === undefined || known) return known;
  throw new InputError([{ path: '--paper', value: typed, expected: 'A4 or Letter', example: 'A4' }]);
}
