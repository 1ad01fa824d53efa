import { expect, test } from 'vitest';
import { judgeCut } from './cut-verdict.ts';
import { demoWorkshop } from './demo-workshop.ts';
import { depthsAtSpeeds } from './depth-at-speeds.ts';
import { latheKnowledge } from './knowledge.ts';
import { prepareSetup } from './prepare-setup.ts';
import { setupOf, workshopField } from './question-fields.ts';

const workshop = workshopField.parse(demoWorkshop({ noseRadius: 0.4 }));
const { setup, material } = setupOf({
  workshop,
  operation: 'turning',
  cutter: 'knife',
  material: '303',
  sections: [{ length: 30, outerDiameter: 10 }],
  grip: 18,
  tailstock: false,
  from: 0,
  depth: 1,
  feed: 0.1,
  speed: 1,
});
const prepared = prepareSetup(latheKnowledge(workshop).joint, setup, material);
const found = depthsAtSpeeds(prepared, workshop.lathe, 0.1);

test('there is one answer for each speed of the lathe, and its depths stand in order', () => {
  expect(found.speeds.map((s) => s.speed)).toEqual([200, 400, 800, 1600]);
  for (const { sings } of found.speeds) {
    expect(sings.good).toBeLessThanOrEqual(sings.even);
    expect(sings.even).toBeLessThanOrEqual(sings.bad);
  }
});

test('at the depth it names, the cut itself asks all the motor gives', () => {
  const { speed = 0, power = 0 } = found.speeds.at(-1) ?? {};
  expect(power).toBeLessThan(found.deepest);
  expect(judgeCut(prepared, workshop.lathe, { depth: power, feed: 0.1, speed }).powerShare).toBeCloseTo(1, 2);
});

test('a cut less deep than where singing becomes marginal is judged good, one beyond the worst is judged bad', () => {
  let looked = 0;
  for (const { speed, sings } of found.speeds) {
    const chance = (depth: number) =>
      judgeCut(prepared, workshop.lathe, { depth, feed: 0.1, speed }).chatter.probability;
    if (sings.good > 0.03) expect(chance(0.97 * sings.good)).toBeLessThanOrEqual(0.27);
    if (sings.bad < found.deepest) expect(chance(1.03 * sings.bad)).toBeGreaterThan(0.5);
    looked += sings.good > 0.03 || sings.bad < found.deepest ? 1 : 0;
  }
  expect(looked).toBeGreaterThan(0);
});
