import { expect, test } from 'vitest';
import { cutterSchema, drillSchema } from './cutter.ts';

const turning = {
  id: 'finisher',
  name: 'ground finishing tool',
  kind: 'turning',
  hand: 'right',
  material: 'high-speed steel',
  noseRadius: '1/64',
  approachAngle: 93,
  rake: 12,
  edge: 'sharp',
  overhang: '3/4',
  maxDepth: '.040',
};

test('a cutter is read in the workshop’s unit, its sizes in millimetres', () => {
  const cutter = cutterSchema('in').parse(turning);
  expect(cutter.noseRadius).toBeCloseTo(0.396875, 9);
  expect(cutter.overhang).toBeCloseTo(19.05, 9);
  expect(cutter.maxDepth).toBeCloseTo(1.016, 9);
});

test('a sharp corner has a nose radius of 0', () => {
  expect(cutterSchema('mm').parse({ ...turning, noseRadius: 0 }).noseRadius).toBe(0);
});

test('a parting cutter must say its width, a boring bar its bore, a threading cutter its angle', () => {
  for (const [kind, missing] of [
    ['parting', ['width']],
    ['grooving', ['width']],
    ['boring', ['barDiameter', 'minBore']],
    ['threading', ['flankAngle']],
  ] as const) {
    const read = cutterSchema('mm').safeParse({ ...turning, kind });
    expect(read.success).toBe(false);
    expect(read.error?.issues.map((i) => i.path.join('.'))).toEqual(missing);
  }
});

test('what cannot be read is refused with an example', () => {
  const read = cutterSchema('mm').safeParse({ ...turning, noseRadius: 'small', edge: 'keen', colour: 'grey' });
  const messages = read.error?.issues.map((i) => i.message).join(' | ') ?? '';
  expect(messages).toContain('for example');
  expect(messages).toContain('"sharp", "honed" or "moulded"');
  expect(messages).toContain('colour');
});

test('a drill is read', () => {
  const drill = drillSchema('in').parse({
    id: 'tap-drill',
    diameter: '5/16',
    kind: 'twist',
    pointAngle: 118,
    material: 'high-speed steel',
  });
  expect(drill.diameter).toBeCloseTo(7.9375, 9);
  expect(drillSchema('mm').safeParse({ ...drill, kind: 'masonry' }).success).toBe(false);
});
