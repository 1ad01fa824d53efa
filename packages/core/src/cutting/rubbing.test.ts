import { expect, test } from 'vitest';
import { countOutside, referenceRows } from '../../test/reference.ts';
import { edgeForce, edgeRadius } from './edge.ts';
import { minimumChip, rubbing, rubbingFinding } from './rubbing.ts';

test('edge radii and the share of them that can be cut are those of the reference [LIT rows of minimum-cut]', ({
  task,
}) => {
  const rows = referenceRows('cutting', 'minimum-cut');
  const radius = (condition: string) =>
    rows.find((r) => r.item === 'edge radius' && r.condition?.startsWith(condition));
  for (const [edge, condition] of [
    ['sharp', 'freshly stoned HSS'],
    ['honed', 'ground and lightly honed'],
    ['moulded', 'moulded coated'],
  ] as const) {
    expect(1000 * edgeRadius(edge).low).toBeCloseTo(Number(radius(condition)?.low), 9);
    expect(1000 * edgeRadius(edge).high).toBeCloseTo(Number(radius(condition)?.high), 9);
  }
  const share = rows.find(
    (r) => r.item === 'minimum chip thickness / edge radius' && r.condition === 'metals, general',
  );
  const steel = rows.find(
    (r) => r.item === 'minimum chip thickness / edge radius' && r.condition === 'steel C45, carbide',
  );
  expect(minimumChip('sharp').low).toBeCloseTo(Number(share?.low) * 0.003, 12);
  expect(minimumChip('moulded').high).toBeCloseTo(Number(steel?.high) * 0.06, 12);
  countOutside(task, 8);
});

test('titanium pushes back 43 N on each millimetre of a usual edge, and drags with half [budak-1996]', () => {
  // kc1.1 1400 MPa and an edge of 30 µm, the upper end of a honed one: 42 N/mm.
  const { push, drag } = edgeForce(1400, 'honed');
  expect((push * 0.03) / edgeRadius('honed').usual).toBeCloseTo(42, 9);
  expect(Math.abs((push * 0.03) / edgeRadius('honed').usual / 43 - 1)).toBeLessThan(0.05);
  expect(Math.abs(drag / push / (24 / 43) - 1)).toBeLessThan(0.12);
});

test('a hundredth of chip rubs under a moulded edge and is cut by a sharp one', () => {
  expect(rubbing(0.01, 'moulded')).toBe('rubs');
  expect(rubbing(0.01, 'sharp')).toBe('cuts');
  expect(rubbing(0.008, 'honed')).toBe('may rub');
});

test('rubbing stops the job in work that hardens, and only warns elsewhere', () => {
  expect(rubbingFinding('finish', 0.005, 'moulded', true)?.level).toBe('stop');
  expect(rubbingFinding('finish', 0.005, 'moulded', false)?.level).toBe('caution');
  expect(rubbingFinding('finish', 0.008, 'honed', true)?.level).toBe('caution');
  expect(rubbingFinding('finish', 0.05, 'honed', true)).toBeUndefined();
  expect(rubbingFinding('finish', 0.005, 'moulded', true)?.says).toContain('hardens');
});
