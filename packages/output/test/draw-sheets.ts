/** Writes the kept pictures anew: `npx tsx packages/output/test/draw-sheets.ts`. Look at every one that changed. */
import { writeFileSync } from 'node:fs';
import { drawPart } from '@sparewright/core/drawing/part-sheet';
import { drawSetup } from '@sparewright/core/drawing/setup-sketch';
import { paintSvg } from '../src/svg/paint.ts';
import { setups, sheets } from './sheets.ts';

for (const [name, { part, settings }] of Object.entries(sheets)) {
  writeFileSync(new URL(`./sheets/${name}.svg`, import.meta.url), paintSvg(drawPart(part, settings)));
}
for (const [name, sketch] of Object.entries(setups)) {
  writeFileSync(new URL(`./sheets/${name}.svg`, import.meta.url), paintSvg(drawSetup(sketch)));
}
