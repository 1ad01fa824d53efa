/** Writes packages/core/src/drawing/face-widths.ts from the font files beside this script. */
import { readFileSync, writeFileSync } from 'node:fs';
import { widthsModule } from './widths-module.ts';

const read = (name: string) => readFileSync(new URL(`./${name}`, import.meta.url));
writeFileSync(
  new URL('../../core/src/drawing/face-widths.ts', import.meta.url),
  widthsModule(read('NationalPark-Regular.ttf'), read('NationalPark-Bold.ttf')),
);
