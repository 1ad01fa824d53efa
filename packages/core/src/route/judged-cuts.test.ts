import { describe, expect, test } from 'vitest';
import { exampleJob, exampleNames, exampleWorkshop } from '../../test/examples.ts';
import { assess } from '../job/assess.ts';
import { chancesAtSpeeds } from '../lathe/chance-at-speeds.ts';
import { judgedCuts } from './judged-cuts.ts';
import { singingBorne } from './practice.ts';

const workshop = exampleWorkshop();

test('a cone in a bore is turned no faster than it keeps quiet at, or is said to sing, and gives way by more than nothing', () => {
  const route = assess(exampleJob('plunger'), workshop).route;
  const cone = route?.operations.find((o) => o.kind === 'turn cone');
  const sings = cone?.cut?.sings ?? Number.NaN;
  const warned = route?.findings.some((f) => f.id === 'route.limit-sings' && f.at === cone?.id);
  expect(sings <= singingBorne || (sings > singingBorne && warned)).toBe(true);
  expect(cone?.cut?.bending).toBeGreaterThan(0.001);
});

describe.each(exampleNames)('the cuts of the %s', (name) => {
  const { route, part } = assess(exampleJob(name), workshop);
  if (!route || !part) throw new Error(`${name} has no route`);
  const cuts = judgedCuts(route, part, workshop);

  test('are operations of the route, each with its own numbers, on work that reaches as far as the setup lets it', () => {
    expect(cuts.length).toBeGreaterThan(3);
    for (const cut of cuts) {
      const operation = route.operations.find((o) => o.id === cut.id);
      const setup = route.setups.find((s) => s.id === operation?.setup);
      expect(operation?.cut?.speed).toBe(cut.asked.speed);
      const end = cut.setup.work.sections.at(-1)?.to ?? 0;
      expect(end).toBeGreaterThan(0);
      expect(end).toBeLessThanOrEqual((setup?.out ?? 0) + 1);
    }
  });

  test('sing as likely as the route says, and are on the same side of what is borne', () => {
    for (const cut of cuts) {
      const said = route.operations.find((o) => o.id === cut.id)?.cut?.sings;
      expect(said, cut.id).toBeDefined();
      if (said === undefined) continue;
      const { chance } = chancesAtSpeeds(cut, workshop.lathe).own;
      // The route sums the work up in fewer stretches: of 32 draws one may fall on the other side.
      expect(Math.abs(chance - said), cut.id).toBeLessThan(1.5 / 33);
      if (Math.abs(chance - singingBorne) > 1 / 33) expect(chance > singingBorne, cut.id).toBe(said > singingBorne);
    }
  });
});
