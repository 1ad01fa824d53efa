import fc from 'fast-check';
import { expect, test } from 'vitest';
import { crowdedPart } from '../../test/crowded-part.ts';
import { faults, letters, outsideFrame, overlappingTexts, texts, textsOverEdges } from '../../test/scene-checks.ts';
import { definePart } from '../part/define-part.ts';
import { type PartDocument, partSchema } from '../part/schema.ts';
import { frameOf } from './paper.ts';
import { drawPart } from './part-sheet.ts';
import type { Scene } from './scene.ts';
import { type DrawingSettings, plainSettings } from './settings.ts';

function sheet(document: PartDocument, settings: Partial<DrawingSettings> = {}): Scene {
  const part = definePart(partSchema(settings.units ?? 'mm').parse(document));
  return drawPart(part, { ...plainSettings, title: part.name, ...settings });
}

function said(scene: Scene): string[] {
  return texts(scene).map((t) => t.text);
}

const pin: PartDocument = {
  name: 'Pin',
  outside: [
    { kind: 'cylinder', id: 'head', diameter: 18, length: '5 ±0.1', startEdge: { kind: 'chamfer', size: 0.5 } },
    {
      kind: 'cylinder',
      id: 'guide',
      diameter: '12 f7',
      length: 40,
      finish: 0.8,
      startEdge: { kind: 'fillet', radius: 0.4 },
    },
  ],
};

test('a pin shows each size once, with its limits, and the length over all in brackets', () => {
  const all = said(sheet(pin));
  for (const text of ['Ø18', 'Ø12 f7 (−0.016/−0.034)', '5 ±0.1', '40', '0.5×45°', 'R0.4', 'Ra 0.8', '(45)']) {
    expect(all.filter((t) => t === text)).toEqual([text]);
  }
});

test('the decimal sign is the reader’s', () => {
  const all = said(sheet(pin, { decimalSign: 'comma' }));
  expect(all).toContain('Ø12 f7 (−0,016/−0,034)');
  expect(all).toContain('0,5×45°');
});

test('the largest preferred scale that fits is taken, and a wish for one that does not is answered', () => {
  expect(said(sheet(pin))).toContain('5:1');
  expect(said(sheet(pin, { scale: 2 }))).toContain('2:1');
  expect(said(sheet(pin, { scale: 10 }))).toContain('5:1 (10:1 does not fit)');
  expect(said(sheet({ name: 'bar', outside: [{ kind: 'cylinder', id: 'bar', diameter: 30, length: 900 }] }))).toContain(
    '1:5',
  );
});

test('the same part gives the same sheet', () => {
  expect(sheet(pin)).toEqual(sheet(pin));
});

test('a socket in the left face is shown at the right in first angle and at the left in third', () => {
  const socketed: PartDocument = {
    ...pin,
    notTurned: [{ kind: 'hexagon socket', id: 'drive', face: 'left', acrossFlats: '8', depth: '4' }],
  };
  const place = (projection: DrawingSettings['projection']) => {
    const scene = sheet(socketed, { projection });
    const flats = texts(scene).find((t) => t.text === '8 A/F');
    const guide = texts(scene).find((t) => t.of === 'guide.length');
    return Math.sign((flats?.at.x ?? Number.NaN) - (guide?.at.x ?? Number.NaN));
  };
  expect(place('first angle')).toBe(1);
  expect(place('third angle')).toBe(-1);
});

test('a groove too small to see is drawn enlarged, and two alike share one detail', () => {
  const groove = { on: 'guide', width: '1.1 H13', floorDiameter: '11 h11', purpose: 'retaining ring' } as const;
  const all = said(
    sheet(
      {
        ...pin,
        grooves: [
          { ...groove, id: 'one', along: 5 },
          { ...groove, id: 'two', along: 30 },
        ],
      },
      { scale: 1 },
    ),
  );
  expect(all).toContain('A (10:1), 2 grooves');
  expect(all.filter((t) => t.startsWith('1.1 H13'))).toHaveLength(1);
});

test('a thread over a whole section tells its diameter; an end that meets a neighbour of the same size is not told again', () => {
  const all = said(
    sheet({
      name: 'screw',
      outside: [
        { kind: 'cylinder', id: 'body', diameter: 20, length: 20 },
        { kind: 'cone', id: 'taper', startDiameter: 20, endDiameter: 14, length: 10 },
        { kind: 'cylinder', id: 'screw', diameter: 10, length: 15 },
      ],
      threads: [{ id: 'thread', on: 'screw', designation: 'M10x1.25-6g' }],
    }),
  );
  expect(all.filter((t) => t === 'Ø20')).toHaveLength(1);
  expect(all).toContain('M10×1.25-6g');
  expect(all).toContain('(33.4°)');
});

test('what is assumed is drawn in pencil and said to be so, and no size is made up for it', () => {
  const scene = sheet({ name: 'half', outside: [{ kind: 'cylinder', id: 'one', diameter: 10 }] });
  expect(scene.items.some((item) => item.item === 'path' && item.stroke === 'assumed')).toBe(true);
  expect(said(scene)).toContain('NOT COMPLETE: dashed sizes are assumed');
  expect(texts(scene).filter((t) => t.of === 'one.length')).toEqual([]);
});

test('a size left open has its lines and its figure in pencil, and no other size has', () => {
  const open = sheet({ ...pin, leftOpen: ['guide.diameter'] });
  const figures = texts(open).filter((t) => t.of !== undefined && t.tone === 'pencil');
  expect(new Set(figures.map((t) => t.of))).toEqual(new Set(['guide.diameter']));
  const assumed = open.items.filter((i) => i.item === 'path' && i.stroke === 'assumed');
  expect(assumed.length).toBeGreaterThan(0);
  expect(new Set(assumed.map((i) => i.of))).toEqual(new Set(['guide']));
});

test('hazard, invented figures and the general tolerance stand in the title block', () => {
  const all = said(sheet(pin, { hazard: 'pressure', invented: true, generalTolerance: 'm' }));
  expect(all).toContain('HAZARD CLASS: pressure · FIGURES INVENTED');
  expect(all).toContain('ISO 2768-m (medium)');
  expect(said(sheet(pin, { hazard: 'ordinary' })).join()).not.toContain('HAZARD');
});

test('a part of which nothing is known yet still has its sheet', () => {
  expect(said(sheet({ name: 'Nothing yet', outside: [] }))).toContain('Nothing yet');
});

test('on crowded parts no text overlaps another, none stands on a line, and all is inside the frame', () => {
  fc.assert(
    fc.property(crowdedPart(), fc.constantFrom('A4' as const, 'Letter' as const), (document, paper) => {
      const scene = sheet(document, { paper });
      expect(faults(scene, frameOf(scene))).toEqual([]);
    }),
    { numRuns: 4 },
  );
}, 30_000);

test('a planted overlap, a text on a line and one off the sheet are noticed', () => {
  const text = { item: 'text', text: 'Ø12', height: 2.5, anchor: 'start', turn: 0 } as const;
  const line = {
    item: 'path',
    stroke: 'outline',
    parts: [
      { to: 'start', x: 0, y: 9 },
      { to: 'line', x: 50, y: 9 },
    ],
  } as const;
  const scene: Scene = {
    width: 100,
    height: 50,
    title: '',
    description: '',
    items: [
      { ...text, at: { x: 10, y: 10 } },
      { ...text, at: { x: 12, y: 10 } },
      { ...text, at: { x: 95, y: 30 } },
      line,
    ],
  };
  expect(overlappingTexts(scene)).toHaveLength(1);
  expect(textsOverEdges(scene)).toHaveLength(2);
  expect(outsideFrame(scene, { left: 0, top: 0, right: 100, bottom: 50 })).toEqual(['Ø12']);
  expect(letters({ ...text, at: { x: 0, y: 0 } }).right).toBeGreaterThan(4);
});
