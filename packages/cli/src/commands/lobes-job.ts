/** `lobes` of a job: every cut of its route over the speeds of the lathe. */
import { InputError } from '@sparewright/core/errors';
import { type CutChances, chancesAtSpeeds } from '@sparewright/core/lathe/chance-at-speeds';
import { judgedCuts } from '@sparewright/core/route/judged-cuts';
import { drawChart } from '@sparewright/output/chart/draw-chart';
import { jobChart } from '@sparewright/output/chart/job-chart';
import { presentSettings } from '@sparewright/output/present/settings';
import { paintSvg } from '@sparewright/output/svg/paint';
import { assessFile } from '../assess-file.ts';
import { type ExitCode, exitCodes } from '../exit-codes.ts';
import { withProgress } from '../progress.ts';
import { jobLobeLines } from '../show/lobes.ts';
import { writtenLines } from '../show/written.ts';
import type { Terminal } from '../terminal.ts';
import { writeWhole } from '../write-file.ts';

export async function lobesOfJob(
  file: string,
  { workshop, output }: { readonly workshop?: string; readonly output: string },
  terminal: Terminal,
): Promise<ExitCode> {
  const assessed = await assessFile(file, workshop, terminal);
  const { route, part } = assessed.assessment;
  const shop = assessed.chosen.workshop;
  const cuts = route && part && shop ? judgedCuts(route, part, shop) : [];
  if (!shop || cuts.length === 0) {
    const expected = 'a job with a material, a workshop, and at least one turned, faced, bored or grooved surface';
    throw new InputError([{ path: file, value: undefined, expected }]);
  }
  const found = await withProgress(terminal, 'Looking at every speed', () =>
    cuts.map((cut): CutChances => chancesAtSpeeds(cut, shop.lathe)),
  );
  const operations = route?.operations ?? [];
  const of = (id: string) => operations.find((o) => o.id === id);
  const name = (id: string) => String(of(id)?.number ?? id);
  const title = (id: string) => `${name(id)}  ${of(id)?.title ?? ''}`;
  const { decimalSign } = presentSettings(assessed.read.job);
  const named = (id: string) => [of(id)?.number ?? id, of(id)?.kind].filter((w) => w !== undefined).join(' ');
  const chart = jobChart(found, {
    decimalSign,
    title: 'The cuts of the job over the speeds of the lathe',
    name: named,
  });
  writeWhole(output, paintSvg(drawChart(chart, { decimalSign }), { theme: 'paper' }));
  await terminal.out(`${jobLobeLines(found, title, terminal).join('\n')}\n`);
  await terminal.out(writtenLines([output], assessed, terminal));
  return exitCodes.fine;
}
