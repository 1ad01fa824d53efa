import { expect, test } from 'vitest';
import { deepestPlunge, groovingForce } from './grooving.ts';
import { kienzleForce } from './turning-force.ts';

const plunge = {
  width: 2,
  feed: 0.05,
  rake: 0,
  edge: 'sharp',
  cutData: { specificForce: 2150, exponent: 0.2 },
} as const;

test('a grooving edge cuts its whole width, with the chip squeezed by 1.3 [KOE]', () => {
  const { cutting } = groovingForce(plunge);
  const edgeDrag = 0.5 * 2150 * 0.0065 * 2;
  expect((cutting - edgeDrag) / kienzleForce(2, 0.05, plunge.cutData)).toBeCloseTo(1.3, 9);
});

test('twice the width pushes twice as hard', () => {
  expect(groovingForce({ ...plunge, width: 4 }).radial / groovingForce(plunge).radial).toBeCloseTo(2, 9);
});

test('a 3 mm edge parts a 30 mm bar and no 60 mm one [ING]', () => {
  expect(deepestPlunge(3)).toBeGreaterThanOrEqual(15);
  expect(deepestPlunge(3)).toBeLessThan(30);
});
