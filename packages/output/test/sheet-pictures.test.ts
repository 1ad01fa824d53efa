/** Pictures kept beside the tests. When a change alters them on purpose, run this with `-u` and look at every one that changed. */
import { readdirSync } from 'node:fs';
import { drawPart } from '@sparewright/core/drawing/part-sheet';
import { drawSetup } from '@sparewright/core/drawing/setup-sketch';
import { expect, test } from 'vitest';
import { paintSvg } from '../src/svg/paint.ts';
import { setups, sheets } from './sheets.ts';

const pictures = new Map([
  ...Object.entries(sheets).map(([name, s]) => [name, () => drawPart(s.part, s.settings)] as const),
  ...Object.entries(setups).map(([name, s]) => [name, () => drawSetup(s)] as const),
]);

test.each([...pictures])('%s is drawn as it was when it was last looked at', async (name, draw) => {
  await expect(paintSvg(draw())).toMatchFileSnapshot(`./sheets/${name}.svg`);
});

test('every kept picture belongs to a sheet', () => {
  const kept = readdirSync(new URL('./sheets/', import.meta.url)).map((file) => file.replace('.svg', ''));
  expect(kept.toSorted()).toEqual([...pictures.keys()].toSorted());
});
