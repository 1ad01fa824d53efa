/** `lathe --for`: what would help a job on this lathe. */
import { InputError } from '@sparewright/core/errors';
import { whatWouldHelpJob } from '@sparewright/core/lathe/job-remedies';
import { judgedCuts } from '@sparewright/core/route/judged-cuts';
import { assessFile } from '../assess-file.ts';
import { type ExitCode, exitCodes } from '../exit-codes.ts';
import { withProgress } from '../progress.ts';
import { jobRemedyLines } from '../show/job-remedies.ts';
import { paragraph } from '../show/text.ts';
import type { Terminal } from '../terminal.ts';

export async function latheForJob(workshop: string, job: string, terminal: Terminal): Promise<ExitCode> {
  const { assessment, chosen, read } = await assessFile(job, workshop, terminal);
  const { route, part } = assessment;
  const shop = chosen.workshop;
  const cuts = route && part && shop ? judgedCuts(route, part, shop) : [];
  if (!shop || cuts.length === 0) {
    const expected = 'a job with a material and at least one turned, faced, bored or grooved surface';
    throw new InputError([{ path: job, value: undefined, expected }]);
  }
  const found = await withProgress(terminal, 'Trying every remedy', () => whatWouldHelpJob(cuts, shop.lathe));
  const name = (id: string) => {
    const operation = route?.operations.find((o) => o.id === id);
    return operation ? `${operation.number} ${operation.title}` : id;
  };
  const { width, ink } = terminal;
  const lines = [
    ...paragraph(`${read.job.title} on the ${shop.lathe.name}`, { width, ink: ink.bold }),
    ...jobRemedyLines(found, name, terminal),
  ];
  await terminal.out(`${lines.join('\n')}\n`);
  return exitCodes.fine;
}
