import { expect, test } from 'vitest';
import { fullWorkshop } from '../../test/arbitrary-workshop.ts';
import { workshopSchema } from '../lathe/schema.ts';
import { definePart } from '../part/define-part.ts';
import { partSchema } from '../part/schema.ts';
import { planRoute } from './plan-route.ts';

const workshop = workshopSchema('mm').parse(fullWorkshop);

function route(length: number, diameter: string) {
  const part = definePart(
    partSchema('mm').parse({
      name: 'stud',
      material: '303',
      outside: [
        { id: 'stem', kind: 'cylinder', diameter, length: 90 },
        { id: 'head', kind: 'cylinder', diameter: '20', length: 8 },
      ],
      threads: [{ id: 'screw', on: 'stem', designation: 'M8', length, from: 'start' }],
    }),
  );
  const planned = planRoute(part, workshop, undefined);
  if (!planned) throw new Error('no route');
  return planned.operations;
}

/** The last diameter of an operation's table [mm]. */
const aimed = (title: string | undefined): number => Number(/Ø([\d.]+)/.exec(title ?? '')?.[1]);

test('a section with close limits that is threaded in part keeps them outside the thread', () => {
  const operations = route(30, '8 h9');
  const own = operations.find((o) => o.id === 'finish-turn-stem');
  const crest = operations.find((o) => o.id === 'finish-turn-screw');
  // 8 h9 is 8.000 to 7.964 (ISO 286-2); crests of M8-6g are 7.972 to 7.760 (ISO 965-1).
  expect(aimed(own?.title)).toBeLessThanOrEqual(8);
  expect(aimed(own?.title)).toBeGreaterThanOrEqual(7.964);
  expect(own && [own.from, own.to]).toEqual([0, 90]);
  expect(aimed(crest?.title)).toBeLessThanOrEqual(7.972);
  expect(aimed(crest?.title)).toBeGreaterThanOrEqual(7.76);
  expect(crest && [crest.from, crest.to]).toEqual([0, 30]);
  const at = (id: string) => operations.findIndex((o) => o.id === id);
  expect(at('finish-turn-stem')).toBeLessThan(at('finish-turn-screw'));
  expect(at('finish-turn-screw')).toBeLessThan(at('thread-screw'));
});

test('one that is threaded from end to end is turned to its crests once', () => {
  const ids = route(90, '8 h9').map((o) => o.id);
  expect(ids).toContain('finish-turn-stem');
  expect(ids).not.toContain('finish-turn-screw');
});
