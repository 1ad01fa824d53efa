import { expect, test } from 'vitest';
import { bladeBending, deepestPlunge, groovingForce } from './grooving.ts';
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

test('a blade bends as a flat cantilever: F L³/(3 E I), σ = M/W [roark-8.1 case 1a]', () => {
  const { stress, deflection } = bladeBending({ thickness: 2, height: 12, overhang: 20, youngsModulus: 210_000 }, 500);
  const inertia = (2 * 12 ** 3) / 12;
  expect(deflection).toBeCloseTo((500 * 20 ** 3) / (3 * 210_000 * inertia), 12);
  expect(stress).toBeCloseTo((500 * 20 * 6) / inertia, 9);
});

test('a 3 mm edge parts a 30 mm bar and no 60 mm one [ING]', () => {
  expect(deepestPlunge(3)).toBeGreaterThanOrEqual(15);
  expect(deepestPlunge(3)).toBeLessThan(30);
});
