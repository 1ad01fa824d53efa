import { expect, test } from 'vitest';
import { overlappingTexts } from '../../test/scene-checks.ts';
import { definePart } from '../part/define-part.ts';
import { partSchema } from '../part/schema.ts';
import { mirrored } from './between.ts';
import type { Item, Scene } from './scene.ts';
import { drawSetup, type SetupSketch } from './setup-sketch.ts';

const { outline } = definePart(
  partSchema('mm').parse({
    name: 'pin',
    outside: [
      { kind: 'cylinder', id: 'head', diameter: 18, length: 6 },
      { kind: 'cylinder', id: 'shank', diameter: 12, length: 40, endEdge: { kind: 'fillet', radius: 2 } },
    ],
  }),
);

const sketch: SetupSketch = {
  outline,
  gripFrom: -14,
  gripTo: -2,
  endOut: 'right',
  tailstock: true,
  stockDiameter: 20,
  stockFrom: -30,
  stockTo: 47,
  chuckLabel: 'Three-jaw chuck',
  cutFrom: 6,
  cutTo: 46,
  labels: [{ at: 20, text: 'turn Ø12' }],
};

function xs(scene: Scene, stroke: string): number[] {
  return scene.items.flatMap((item: Item) =>
    item.item === 'path' && item.stroke === stroke ? item.parts.flatMap((p) => (p.to === 'close' ? [] : [p.x])) : [],
  );
}

test('the free end points away from the chuck, whichever end it is', () => {
  for (const endOut of ['left', 'right'] as const) {
    const grip = endOut === 'right' ? { gripFrom: -14, gripTo: -2 } : { gripFrom: 48, gripTo: 60 };
    const stock = endOut === 'right' ? { stockFrom: -30, stockTo: 47 } : { stockFrom: -1, stockTo: 76 };
    const scene = drawSetup({ ...sketch, endOut, ...grip, ...stock });
    expect(Math.min(...xs(scene, 'cut'))).toBeGreaterThan(Math.min(...xs(scene, 'hatch')));
    expect(Math.max(...xs(scene, 'holding'))).toBeGreaterThan(Math.max(...xs(scene, 'cut')));
  }
});

test('a setup seen with the left end out is that of the part turned end for end', () => {
  const turned = drawSetup({
    ...sketch,
    outline: mirrored(outline),
    endOut: 'left',
    gripFrom: 14,
    gripTo: 2,
    stockFrom: 30,
    stockTo: -47,
    cutFrom: -6,
    cutTo: -46,
    labels: [{ at: -20, text: 'turn Ø12' }],
  });
  const straight = drawSetup(sketch);
  expect(turned.items.length).toBe(straight.items.length);
  expect(xs(turned, 'cut').map((x) => x.toFixed(6))).toEqual(xs(straight, 'cut').map((x) => x.toFixed(6)));
});

test('the overhang is measured from the jaws to the end of the bar', () => {
  const texts = drawSetup(sketch).items.flatMap((item) => (item.item === 'text' ? [item.text] : []));
  expect(texts).toContain('49 out');
  expect(drawSetup(sketch).description).toContain('stands 49 mm out of the jaws and carried by the tailstock centre');
});

test('only the stretch being cut is drawn as cut', () => {
  const scene = drawSetup(sketch);
  const scale = (Math.max(...xs(scene, 'cut')) - Math.min(...xs(scene, 'cut'))) / 40;
  const work = xs(scene, 'outline');
  expect((Math.max(...work) - Math.min(...work)) / scale).toBeCloseTo(46, 6);
  const none = drawSetup({ ...sketch, cutFrom: undefined, cutTo: undefined });
  expect(xs(none, 'cut')).toEqual([]);
});

test('its texts do not overlap', () => {
  expect(overlappingTexts(drawSetup(sketch))).toEqual([]);
});

test('labels that find no room at their place are said at the foot', () => {
  const labels = Array.from({ length: 40 }, (_, i) => ({ at: 20, text: `mark ${i + 1}` }));
  const texts = drawSetup({ ...sketch, labels }).items.flatMap((item) => (item.item === 'text' ? [item.text] : []));
  for (const { text } of labels)
    expect(texts.some((t) => t.split(' · ').some((each) => each === text)) || texts.some((t) => t.endsWith('…'))).toBe(
      true,
    );
  expect(texts.some((t) => t.includes(' · '))).toBe(true);
});

test('between centres a dog drives it, the point of a centre stands in either end, and nothing is said to stand out', () => {
  const scene = drawSetup({
    ...sketch,
    gripFrom: 0,
    gripTo: 8,
    stockFrom: 46,
    stockTo: 46,
    holder: { by: 'dog', freeFrom: 0 },
  });
  const texts = scene.items.flatMap((item) => (item.item === 'text' ? [item.text] : []));
  expect(texts).toContain('46 between centres');
  expect(scene.description).toContain('between centres 46 mm apart, the right end at the tailstock, a dog on 8 mm');
  const [left, right] = [Math.min(...xs(scene, 'outline')), Math.max(...xs(scene, 'outline'))];
  // Both points lie inside the ends, the dog and its lines beside the left end, not past it.
  expect(xs(scene, 'holding').filter((x) => x > left && x < left + 3).length).toBeGreaterThan(0);
  expect(xs(scene, 'holding').filter((x) => x < right && x > right - 3).length).toBeGreaterThan(0);
  expect(Math.min(...xs(scene, 'hatch'))).toBeGreaterThanOrEqual(left - 1e-6);
  expect(overlappingTexts(scene)).toEqual([]);
});

test('a mandrel runs from the jaws into the work, and ends where it is said to', () => {
  const scene = drawSetup({
    ...sketch,
    gripFrom: 0,
    gripTo: 46,
    stockFrom: 46,
    stockTo: 46,
    holder: { by: 'mandrel', diameter: 6, length: 51, freeFrom: -6 },
  });
  const scale = (Math.max(...xs(scene, 'outline')) - Math.min(...xs(scene, 'outline'))) / 46;
  const jaws = Math.min(...xs(scene, 'outline')) - 6 * scale;
  expect(xs(scene, 'holding').some((x) => Math.abs(x - (jaws + 51 * scale)) < 1e-6)).toBe(true);
  expect(scene.description).toContain('held over 46 mm on the mandrel');
});
