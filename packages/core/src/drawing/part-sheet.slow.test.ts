import fc from 'fast-check';
import { expect, test } from 'vitest';
import { arbitraryPartIn } from '../../test/arbitrary-part.ts';
import { crowdedPart } from '../../test/crowded-part.ts';
import { faults, texts } from '../../test/scene-checks.ts';
import { definePart } from '../part/define-part.ts';
import type { PartResult } from '../part/part-result.ts';
import { type PartDocument, partSchema } from '../part/schema.ts';
import { sizeText } from './numbers.ts';
import { frameOf } from './paper.ts';
import { drawPartSheets } from './part-sheet.ts';
import { type DrawingSettings, plainSettings } from './settings.ts';

const settings: fc.Arbitrary<DrawingSettings> = fc.record({
  paper: fc.constantFrom('A4' as const, 'Letter' as const),
  projection: fc.constantFrom('first angle' as const, 'third angle' as const),
  decimalSign: fc.constantFrom('point' as const, 'comma' as const),
  units: fc.constantFrom('mm' as const, 'in' as const),
  title: fc.constant('A part'),
});

function sheetFaults(part: PartResult, wish: DrawingSettings): string[] {
  return drawPartSheets(part, wish).flatMap((scene) => faults(scene, frameOf(scene)));
}

test('on many crowded parts no text overlaps another, none stands on a line, and all is inside the frame', () => {
  fc.assert(
    fc.property(crowdedPart(), settings, (document, wish) => {
      expect(sheetFaults(definePart(partSchema('mm').parse(document)), wish)).toEqual([]);
    }),
    { numRuns: 250 },
  );
});

test('what the first sheet cannot hold goes on further ones, each with its frame and number', () => {
  const many = Array.from({ length: 40 }, (_, i) => ({
    kind: 'curve' as const,
    id: `curve-${i}`,
    points: Array.from({ length: 6 }, (_p, k) => ({ along: 2 * k, diameter: 20 + ((i + k) % 3) })),
  }));
  const part = definePart(partSchema('mm').parse({ name: 'Many curves', outside: many }));
  const sheets = drawPartSheets(part, { ...plainSettings, title: part.name });
  expect(sheets.length).toBeGreaterThan(1);
  const written = sheets.flatMap(texts).map((t) => t.text);
  for (let i = 0; i < 40; i++) expect(written).toContain(`curve-${i}, point 6`.replace('-', ' '));
  sheets.forEach((scene, i) => {
    expect(faults(scene, frameOf(scene))).toEqual([]);
    expect(texts(scene).map((t) => t.text)).toContain(`${i + 1}/${sheets.length}`);
  });
});

test('the same of parts as the part stage tries them', () => {
  fc.assert(
    fc.property(arbitraryPartIn(), settings, ({ unit, document }, wish) => {
      expect(sheetFaults(definePart(partSchema(unit).parse(document)), { ...wish, units: unit })).toEqual([]);
    }),
    { numRuns: 150 },
  );
});

test('no size of a crowded part is lost: each is written on a view, in a detail or in the table', () => {
  fc.assert(
    fc.property(crowdedPart(), (document: PartDocument) => {
      const part = definePart(partSchema('mm').parse(document));
      const written = drawPartSheets(part, { ...plainSettings, title: 'A part' }).flatMap(texts);
      const told = (id: string) => part.threads.some((t) => id === `${t.on}.diameter`);
      const lost = part.dimensions.filter(
        (d) => !told(d.id) && !written.some((t) => t.text.includes(sizeText(d.nominal, plainSettings))),
      );
      expect(lost.map((d) => d.id)).toEqual([]);
    }),
    { numRuns: 150 },
  );
});
