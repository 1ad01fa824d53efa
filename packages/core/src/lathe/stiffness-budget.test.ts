import { expect, test } from 'vitest';
import { demoWorkshop } from './demo-workshop.ts';
import { latheKnowledge } from './knowledge.ts';
import { setupOf, workshopField } from './question-fields.ts';
import { middle } from './sampling.ts';
import { budgetDirections, budgetPlace, giveAlong, stiffnessBudget } from './stiffness-budget.ts';

const workshop = workshopField.parse(demoWorkshop());
const values = middle(latheKnowledge(workshop).joint);
const place = (length: number, tailstock: boolean) =>
  budgetPlace(
    setupOf({
      workshop,
      operation: 'turning',
      cutter: 'knife',
      material: '303',
      sections: [{ length, outerDiameter: 10 }],
      grip: 18,
      tailstock,
      from: 0,
      depth: 0.1,
      feed: 0.05,
      speed: 800,
    }).setup,
  );

test('each spring of a plain chain has its own give over the whole', () => {
  const pin = place(40, false);
  const share = (of: string) => stiffnessBudget(values, pin, 'radial').find((s) => s.of === of)?.share;
  const whole = giveAlong(values, pin, 'radial');
  expect(share('topSlide')).toBeCloseTo(1 / (1000 * values.topSlide) / whole, 5);
  expect(share('spindleRadial')).toBeCloseTo(1 / (1000 * values.spindleRadial) / whole, 5);
  // A bar held fast bends by L³/3EI at its end, and shears by L/κGA with it (Timoshenko); 303: 193 to 200 GPa by its data sheets.
  const bends = 40 ** 3 / (3 * 195_000 * ((Math.PI * 10 ** 4) / 64));
  expect(((share('work') ?? 0) * whole) / bends).toBeGreaterThan(0.97);
  expect(((share('work') ?? 0) * whole) / bends).toBeLessThan(1.08);
});

test.each([
  ['held in the chuck alone', 40, false],
  ['with the tailstock beside the chuck', 120, true],
])('all shares make the whole: %s', (_, length, tailstock) => {
  for (const direction of budgetDirections) {
    const shares = stiffnessBudget(values, place(length, tailstock), direction);
    expect(shares.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 3);
    expect(shares.every(({ share }) => share > 0)).toBe(true);
  }
});

test('at the tailstock centre its own spring is most of what the work side gives', () => {
  const shares = stiffnessBudget(values, place(120, true), 'radial');
  const of = (id: string) => shares.find((s) => s.of === id)?.share ?? 0;
  expect(of('tailstock')).toBeGreaterThan(10 * (of('work') + of('grip') + of('spindleRadial')));
});
