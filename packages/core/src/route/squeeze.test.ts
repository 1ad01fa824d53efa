import { expect, test } from 'vitest';
import { countOutside, referenceRows } from '../../test/reference.ts';
import { gripNeeded, squeezedOutOfRound } from './squeeze.ts';

test('a ring between two opposite pushes closes by 0.149 and widens by 0.137 of W R³/EI (Timoshenko, Roark: from memory)', ({
  task,
}) => {
  // Both on the diameter, so half of their sum on the radius; E I = 1 with b = 12, t = 1 and E = 1.
  expect(squeezedOutOfRound(1, 1, 1, 12, 1, 2)).toBeCloseTo((0.149 + 0.137) / 2, 3);
  countOutside(task, 1);
});

/** Out of round under the jaws from the energy of bending, for which only equilibrium is used. */
function byEnergy(jaws: number): number {
  const half = Math.PI / jaws;
  const hoop = 1 / (2 * Math.sin(half));
  const steps = 4000;
  const angles = Array.from({ length: steps }, (_, i) => ((i + 0.5) * half) / steps);
  const bare = angles.map((a) => hoop * (1 - Math.cos(a)));
  const mean = bare.reduce((sum, m) => sum + m, 0) / steps;
  const moments = bare.map((m) => m - mean);
  // Castigliano: at a jaw from the energy; between two jaws with a vanishing push there, of all n of them.
  const square = moments.reduce((sum, m) => sum + m * m, 0) * (half / steps);
  const atJaw = 2 * square;
  // A unit push outward between the jaws: hoop force and moment of the same ring turned by half its spacing.
  const turned = moments.toReversed().map((m) => -m);
  const between = 2 * moments.reduce((sum, m, i) => sum + m * (turned[i] ?? 0), 0) * (half / steps);
  return atJaw + between;
}

test.each([2, 3, 4, 6])('%i jaws: as the energy of bending has it', (jaws) => {
  expect(squeezedOutOfRound(1, 1, 1, 12, 1, jaws)).toBeCloseTo(byEnergy(jaws), 4);
});

test('three jaws squeeze a ring far less than two, and a wall half as thick eight times as far', () => {
  expect(squeezedOutOfRound(1, 10, 1, 12, 200_000, 2) / squeezedOutOfRound(1, 10, 1, 12, 200_000, 3)).toBeGreaterThan(
    4,
  );
  const thick = squeezedOutOfRound(1, 10, 1, 12, 200_000, 3);
  expect(squeezedOutOfRound(1, 10, 0.5, 12, 200_000, 3)).toBeCloseTo(8 * thick, 9);
});

test('grip of the printed and computed rows with the friction and safety used here', ({ task }) => {
  const row = referenceRows('cutting', 'clamping-worked-examples').find((r) => r.id === 'C07');
  // The row has friction 0.2: with 0.1 it takes twice as much.
  expect(gripNeeded(150, 30, 20)).toBeCloseTo(2 * Number(row?.recomputed), 6);
  countOutside(task, 1);
});
