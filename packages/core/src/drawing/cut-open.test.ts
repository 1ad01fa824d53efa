import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { crowdedPart } from '../../test/crowded-part.ts';
import { definePart } from '../part/define-part.ts';
import { partSchema } from '../part/schema.ts';
import { breakEdge } from './break-line.ts';
import { isOpen, openings } from './cut-open.ts';
import { hatchParts } from './hatch.ts';

function pin(holes: object, extra: object = {}) {
  return definePart(
    partSchema('mm').parse({
      name: 'pin',
      outside: [
        { id: 'head', kind: 'cylinder', diameter: '20', length: '10' },
        { id: 'shank', kind: 'cylinder', diameter: '10', length: '70' },
      ],
      inside: holes,
      ...extra,
    }),
  );
}

const hole = (depth: string) => [{ id: 'hole', kind: 'bored', diameter: '6', depth }];

describe('the view is cut open', () => {
  test('nowhere without a hole', () => {
    expect(openings(pin({}))).toEqual([]);
  });

  test('a little past the floor of a short hole, and not along the solid shank', () => {
    const opened = openings(pin({ left: hole('8') }));
    expect(opened).toEqual([{ from: 0, to: 8 + 0.12 * 20, breaks: [8 + 0.12 * 20] }]);
    expect(isOpen(opened, 5)).toBe(true);
    expect(isOpen(opened, 60)).toBe(false);
  });

  test('at both ends, each for itself', () => {
    const opened = openings(pin({ left: hole('8'), right: hole('9') }));
    expect(opened.map(({ from, to }) => [from, to])).toEqual([
      [0, 10.4],
      [80 - 9 - 2.4, 80],
    ]);
  });

  test('from end to end where a hole goes through or nearly', () => {
    for (const depth of ['through', '60'])
      expect(openings(pin({ left: hole(depth) }))).toEqual([{ from: 0, to: 80, breaks: [] }]);
  });

  test('past a thread that the break would cross', () => {
    const threads = [{ id: 'thread', on: 'shank', designation: 'M10', from: 'start', length: '15' }];
    const [opening] = openings(pin({ left: hole('14') }, { threads }));
    expect(opening?.to).toBeGreaterThan(25);
    expect(opening?.to).toBeLessThan(27);
  });

  test('and every hole lies wholly in what is open', () => {
    fc.assert(
      fc.property(crowdedPart(), (document) => {
        const part = definePart(partSchema('mm').parse(document));
        fc.pre(!part.findings.some((f) => f.level === 'stop'));
        const opened = openings(part);
        for (const s of [...part.outline.insideLeft, ...part.outline.insideRight])
          for (const { z } of [s.from, s.to]) expect(isOpen(opened, z)).toBe(true);
      }),
      { numRuns: 60 },
    );
  });
});

test('the lining of a strip keeps to it, along the freehand line too, and covers its area', () => {
  const view = { x: 0, y: 0, scale: 2 };
  const corners = [
    { z: 0, r: 0 },
    { z: 0, r: 10 },
    { z: 50, r: 10 },
    { z: 50, r: 0 },
  ] as const;
  const loop = corners.map((from, i) => {
    const to = corners[(i + 1) % 4] ?? from;
    return { kind: 'line', from, to, feature: 'bar' } as const;
  });
  const end = (r: number) => breakEdge(20, r, view.scale);
  const parts = hatchParts(loop, view, 0.05, { from: () => 5, to: end });
  let length = 0;
  let start = { x: 0, y: 0 };
  for (const part of parts) {
    if (part.to === 'close') continue;
    const [z, r] = [part.x / 2, -part.y / 2];
    expect(z).toBeGreaterThan(5 - 1e-9);
    expect(z).toBeLessThan(end(r) + 1e-3);
    if (part.to === 'line') length += Math.hypot(part.x - start.x, part.y - start.y);
    start = part;
  }
  // 15 mm by 10 mm at twice its size; the wave takes away as much as it adds, near enough.
  expect((length * 0.05) / (4 * 150)).toBeCloseTo(1, 1.5);
});
