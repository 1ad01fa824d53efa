/** `drawing`: the dimensioned sheet of the part as SVG. */
import { InputError } from '@sparewright/core/errors';
import { assessFile } from '../assess-file.ts';
import { type ExitCode, exitCodes } from '../exit-codes.ts';
import { withProgress } from '../progress.ts';
import { writtenLines } from '../show/written.ts';
import type { Terminal } from '../terminal.ts';
import { writeWhole } from '../write-file.ts';

export interface DrawingOptions {
  readonly output: string;
  readonly workshop?: string;
}

export async function drawingCommand(file: string, options: DrawingOptions, terminal: Terminal): Promise<ExitCode> {
  if (!/\.svg$/i.test(options.output)) {
    throw new InputError([
      { path: '--output', value: options.output, expected: 'a name that ends in .svg', example: 'pin.svg' },
    ]);
  }
  const assessed = await assessFile(file, options.workshop, terminal);
  const { part } = assessed.assessment;
  if (!part || part.outside.length === 0) {
    throw new InputError([
      {
        path: `${file}: part`,
        value: undefined,
        expected: 'a part with outside sections: there is nothing to draw yet',
      },
    ]);
  }
  const sheets = await withProgress(terminal, 'Drawing', async () => {
    const { drawPartSheets } = await import('@sparewright/core/drawing/part-sheet');
    const { drawingSettings } = await import('@sparewright/output/present/drawing-settings');
    const { paintSvg } = await import('@sparewright/output/svg/paint');
    return drawPartSheets(part, drawingSettings(assessed.read.job)).map((scene) => paintSvg(scene, { theme: 'paper' }));
  });
  const written = sheets.map((svg, i) => {
    const path = i === 0 ? options.output : options.output.replace(/\.svg$/i, `-${i + 1}.svg`);
    writeWhole(path, svg);
    return path;
  });
  await terminal.out(writtenLines(written, assessed, terminal));
  return exitCodes.fine;
}
