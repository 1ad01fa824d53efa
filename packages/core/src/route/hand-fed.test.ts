import { describe, expect, test } from 'vitest';
import { exampleJob, exampleNames, exampleWorkshop } from '../../test/examples.ts';
import { assess } from '../job/assess.ts';
import { cutForces } from '../lathe/cut-forces.ts';
import { judgeOf } from '../lathe/judge.ts';
import { prepareWith } from '../lathe/prepare-setup.ts';
import type { ForceLadder } from '../lathe/size-after.ts';
import { pushedOff, sizeAfter } from '../lathe/size-after.ts';
import { knownOf } from './fares.ts';
import { judgedCuts } from './judged-cuts.ts';
import { machiningOf } from './machining.ts';

const workshop = exampleWorkshop();
const assessed = exampleNames.map((name) => assess(exampleJob(name), workshop));
const cuts = assessed.flatMap(({ route, part }) => {
  if (!route || !part?.material) return [];
  const { material } = part;
  return judgedCuts(route, part, workshop).map((cut) => ({ cut, material, route }));
});

describe('how far a cut gives way is told on the diameter, of a plunge as of a turned size', () => {
  const plunges = cuts.filter(({ cut }) => cut.setup.operation === 'grooving');

  test('there are plunges to look at', () => {
    expect(plunges.length).toBeGreaterThan(2);
  });

  test('a plunge prints twice what the edge is pushed off on the radius, force times give', () => {
    for (const { cut, material, route } of plunges) {
      const { cutData, hardens } = machiningOf(material);
      if (!cutData) continue;
      const judge = judgeOf(knownOf(workshop), cut.setup, { cutData, hardens });
      const operation = route.operations.find((o) => o.id === cut.id);
      const printed = operation?.cut?.bending ?? Number.NaN;
      const { depth, feed, speed } = { ...cut.asked, depth: cut.setup.cutter.width ?? 0 };
      const radial = judge({ depth, feed, speed }).size.most.middle;
      // The sketch of the work is cut into slices here and into steps there: they agree within a tenth, a factor of two does not.
      expect(printed / radial, cut.id).toBeGreaterThan(1.8);
      expect(printed / radial, cut.id).toBeLessThan(2.2);
    }
  });

  test('for the same push a turned size is off by twice as much as a plunge: it is a diameter, the plunge’s a radius', () => {
    const turned = cuts.find(({ cut }) => cut.setup.operation === 'turning');
    if (!turned) throw new Error('nothing is turned');
    const { cutData, hardens } = machiningOf(turned.material);
    if (!cutData) throw new Error('no cutting data');
    const prepared = prepareWith(knownOf(workshop), turned.cut.setup, { cutData, hardens });
    const force = cutForces(turned.cut.setup, { cutData, hardens }, 0.2, 0.05).square;
    // A push that does not grow with the depth, so that nothing is shared between depth and push.
    const always: ForceLadder = { depths: Float64Array.of(0.001, 1), forces: Float64Array.of(force, force) };
    const size = sizeAfter(prepared, always, 1).error;
    const plunge = pushedOff(prepared, force).error;
    size.forEach((e, i) => {
      expect(e / (plunge[i] ?? Number.NaN)).toBeCloseTo(2, 6);
    });
  });
});
