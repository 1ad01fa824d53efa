import { expect, test } from 'vitest';
import { definePart } from './define-part.ts';
import { type PartDocument, partSchema } from './schema.ts';

type Twin = Omit<PartDocument, 'name'>;
const judge = (twin: Twin) => definePart(partSchema('mm').parse({ name: 'twin', ...twin }));
const bar = { kind: 'cylinder', id: 'body', diameter: 20, length: 40 } as const;
const head = { kind: 'cylinder', id: 'head', diameter: 30, length: 10 } as const;
const dot = (along: number, diameter: number) => ({ along, diameter });

/** What is wrong, a part with it, and the same part mended. */
const cases: readonly (readonly [id: string, impossible: Twin, mended: Twin])[] = [
  [
    'part.bore-through-outside',
    { outside: [bar], inside: { left: [{ kind: 'bored', id: 'bore', diameter: 22, depth: 10 }] } },
    { outside: [bar], inside: { left: [{ kind: 'bored', id: 'bore', diameter: 16, depth: 10 }] } },
  ],
  [
    'part.bore-through-outside',
    {
      outside: [head, { kind: 'cylinder', id: 'neck', diameter: 11, length: 5 }, bar],
      inside: { left: [{ kind: 'bored', id: 'bore', diameter: 12, depth: 30 }] },
    },
    {
      outside: [head, { kind: 'cylinder', id: 'neck', diameter: 14, length: 5 }, bar],
      inside: { left: [{ kind: 'bored', id: 'bore', diameter: 12, depth: 30 }] },
    },
  ],
  [
    'part.groove-wider-than-section',
    { outside: [bar], grooves: [{ id: 'g', on: 'body', along: 38, width: 3, floorDiameter: 17, purpose: 'other' }] },
    { outside: [bar], grooves: [{ id: 'g', on: 'body', along: 37, width: 3, floorDiameter: 17, purpose: 'other' }] },
  ],
  [
    'part.groove-without-depth',
    { outside: [bar], grooves: [{ id: 'g', on: 'body', along: 8, width: 3, floorDiameter: 20, purpose: 'other' }] },
    { outside: [bar], grooves: [{ id: 'g', on: 'body', along: 8, width: 3, floorDiameter: 19, purpose: 'other' }] },
  ],
  [
    'part.grooves-overlap',
    {
      outside: [bar],
      grooves: [
        { id: 'a', on: 'body', along: 8, width: 3, floorDiameter: 17, purpose: 'o-ring' },
        { id: 'b', on: 'body', along: 10, width: 3, floorDiameter: 17, purpose: 'o-ring' },
      ],
    },
    {
      outside: [bar],
      grooves: [
        { id: 'a', on: 'body', along: 8, width: 3, floorDiameter: 17, purpose: 'o-ring' },
        { id: 'b', on: 'body', along: 12, width: 3, floorDiameter: 17, purpose: 'o-ring' },
      ],
    },
  ],
  [
    'part.groove-open-to-face',
    {
      outside: [bar],
      inside: { right: [{ kind: 'bored', id: 'bore', diameter: 10, depth: 20 }] },
      grooves: [{ id: 'g', on: 'bore', along: 0, width: 2, floorDiameter: 12, purpose: 'other' }],
    },
    {
      outside: [bar],
      inside: { right: [{ kind: 'bored', id: 'bore', diameter: 10, depth: 20 }] },
      grooves: [{ id: 'g', on: 'bore', along: 1, width: 2, floorDiameter: 12, purpose: 'other' }],
    },
  ],
  [
    'part.groove-deeper-than-wall',
    {
      outside: [bar],
      inside: { left: [{ kind: 'bored', id: 'bore', diameter: 14, depth: 'through' }] },
      grooves: [{ id: 'g', on: 'body', along: 8, width: 3, floorDiameter: 13.9, purpose: 'other' }],
    },
    {
      outside: [bar],
      inside: { left: [{ kind: 'bored', id: 'bore', diameter: 12, depth: 'through' }] },
      grooves: [{ id: 'g', on: 'body', along: 8, width: 3, floorDiameter: 13.9, purpose: 'other' }],
    },
  ],
  [
    'part.groove-deeper-than-wall',
    {
      outside: [bar],
      inside: { left: [{ kind: 'bored', id: 'bore', diameter: 14, depth: 20 }] },
      grooves: [{ id: 'g', on: 'bore', along: 8, width: 3, floorDiameter: 20.5, purpose: 'other' }],
    },
    {
      outside: [bar],
      inside: { left: [{ kind: 'bored', id: 'bore', diameter: 14, depth: 20 }] },
      grooves: [{ id: 'g', on: 'bore', along: 8, width: 3, floorDiameter: 16, purpose: 'other' }],
    },
  ],
  [
    'part.thread-deeper-than-wall',
    {
      outside: [{ kind: 'cylinder', id: 'body', length: 40 }],
      inside: { left: [{ kind: 'bored', id: 'bore', diameter: 16.95, depth: 'through' }] },
      threads: [{ id: 'thread', on: 'body', designation: 'M20' }],
    },
    {
      outside: [{ kind: 'cylinder', id: 'body', length: 40 }],
      inside: { left: [{ kind: 'bored', id: 'bore', diameter: 14, depth: 'through' }] },
      threads: [{ id: 'thread', on: 'body', designation: 'M20' }],
    },
  ],
  [
    'part.wall-too-thin',
    { outside: [bar], minimumWall: 2, inside: { left: [{ kind: 'bored', id: 'bore', diameter: 17, depth: 20 }] } },
    { outside: [bar], minimumWall: 2, inside: { left: [{ kind: 'bored', id: 'bore', diameter: 16, depth: 20 }] } },
  ],
  [
    'part.wall-too-thin',
    { outside: [bar], minimumWall: 2, inside: { left: [{ kind: 'bored', id: 'bore', diameter: 8, depth: 39 }] } },
    { outside: [bar], minimumWall: 2, inside: { left: [{ kind: 'bored', id: 'bore', diameter: 8, depth: 38 }] } },
  ],
  [
    'part.wall-too-thin',
    {
      outside: [bar],
      inside: {
        left: [{ kind: 'bored', id: 'a', diameter: 8, depth: 20 }],
        right: [{ kind: 'bored', id: 'b', diameter: 8, depth: 19.6 }],
      },
    },
    {
      outside: [bar],
      inside: {
        left: [{ kind: 'bored', id: 'a', diameter: 8, depth: 20 }],
        right: [{ kind: 'bored', id: 'b', diameter: 8, depth: 19.5 }],
      },
    },
  ],
  [
    'part.bores-meet',
    {
      outside: [bar],
      inside: {
        left: [{ kind: 'drilled', id: 'a', diameter: 8, depth: 18 }],
        right: [{ kind: 'drilled', id: 'b', diameter: 8, depth: 18 }],
      },
    },
    {
      outside: [bar],
      inside: {
        left: [{ kind: 'drilled', id: 'a', diameter: 8, depth: 17 }],
        right: [{ kind: 'drilled', id: 'b', diameter: 8, depth: 17 }],
      },
    },
  ],
  [
    'part.bores-meet',
    { outside: [bar], inside: { left: [{ kind: 'drilled', id: 'a', diameter: 8, depth: 38.5 }] } },
    { outside: [bar], inside: { left: [{ kind: 'drilled', id: 'a', diameter: 8, depth: 36 }] } },
  ],
  [
    'part.bore-deeper-than-part',
    { outside: [bar], inside: { left: [{ kind: 'bored', id: 'a', diameter: 8, depth: 41 }] } },
    { outside: [bar], inside: { left: [{ kind: 'bored', id: 'a', diameter: 8, depth: 'through' }] } },
  ],
  [
    'part.bore-section-without-length',
    {
      outside: [bar],
      inside: {
        left: [
          { kind: 'bored', id: 'a', diameter: 10, depth: 12 },
          { kind: 'bored', id: 'b', diameter: 8, depth: 12 },
        ],
      },
    },
    {
      outside: [bar],
      inside: {
        left: [
          { kind: 'bored', id: 'a', diameter: 10, depth: 12 },
          { kind: 'bored', id: 'b', diameter: 8, depth: 13 },
        ],
      },
    },
  ],
  [
    'part.undercut-not-reached',
    {
      outside: [bar],
      inside: {
        left: [
          { kind: 'bored', id: 'a', diameter: 10, depth: 12 },
          { kind: 'undercut', id: 'u', diameter: 12, width: 2, depth: 16 },
        ],
      },
    },
    {
      outside: [bar],
      inside: {
        left: [
          { kind: 'bored', id: 'a', diameter: 10, depth: 12 },
          { kind: 'undercut', id: 'u', diameter: 12, width: 4, depth: 16 },
        ],
      },
    },
  ],
  [
    'part.edge-larger-than-section',
    { outside: [head, { ...bar, startEdge: { kind: 'fillet', radius: 5.1 } }] },
    { outside: [head, { ...bar, startEdge: { kind: 'fillet', radius: 5 } }] },
  ],
  [
    'part.edge-larger-than-section',
    {
      outside: [
        { ...bar, length: 2, startEdge: { kind: 'chamfer', size: 1.2 }, endEdge: { kind: 'chamfer', size: 1 } },
      ],
    },
    {
      outside: [{ ...bar, length: 2, startEdge: { kind: 'chamfer', size: 1 }, endEdge: { kind: 'chamfer', size: 1 } }],
    },
  ],
  [
    'part.edge-larger-than-section',
    {
      outside: [bar],
      grooves: [{ id: 'g', on: 'body', along: 8, width: 3, floorDiameter: 16, floorRadius: 1.6, purpose: 'other' }],
    },
    {
      outside: [bar],
      grooves: [{ id: 'g', on: 'body', along: 8, width: 3, floorDiameter: 16, floorRadius: 1.5, purpose: 'other' }],
    },
  ],
  [
    'part.edge-without-corner',
    { outside: [bar, { ...bar, id: 'next', startEdge: { kind: 'fillet', radius: 1 } }] },
    { outside: [bar, { ...bar, id: 'next', diameter: 24, startEdge: { kind: 'fillet', radius: 1 } }] },
  ],
  [
    'part.edge-given-twice',
    {
      outside: [
        { ...bar, endEdge: { kind: 'fillet', radius: 1 } },
        {
          kind: 'cone',
          id: 'cone',
          startDiameter: 20,
          endDiameter: 10,
          length: 5,
          startEdge: { kind: 'fillet', radius: 1 },
        },
      ],
    },
    {
      outside: [
        { ...bar, endEdge: { kind: 'fillet', radius: 1 } },
        { kind: 'cone', id: 'cone', startDiameter: 20, endDiameter: 10, length: 5 },
      ],
    },
  ],
  [
    'part.relief-without-inner-corner',
    { outside: [{ ...head, endEdge: { kind: 'relief', width: 2, depth: 0.3 } }, bar] },
    { outside: [head, { ...bar, startEdge: { kind: 'relief', width: 2, depth: 0.3 } }] },
  ],
  [
    'part.arc-impossible',
    {
      outside: [
        bar,
        { kind: 'arc', id: 'arc', startDiameter: 20, endDiameter: 20, length: 20, radius: 9.9, bulge: 'outward' },
      ],
    },
    {
      outside: [
        bar,
        { kind: 'arc', id: 'arc', startDiameter: 20, endDiameter: 20, length: 20, radius: 10, bulge: 'outward' },
      ],
    },
  ],
  [
    'part.arc-impossible',
    {
      outside: [
        bar,
        { kind: 'arc', id: 'arc', startDiameter: 20, endDiameter: 40, length: 5, radius: 10, bulge: 'outward' },
      ],
    },
    {
      outside: [
        bar,
        { kind: 'arc', id: 'arc', startDiameter: 20, endDiameter: 40, length: 5, radius: 13, bulge: 'outward' },
      ],
    },
  ],
  [
    'part.arc-impossible',
    {
      outside: [
        bar,
        { kind: 'arc', id: 'arc', startDiameter: 20, endDiameter: 20, length: 30, radius: 15.5, bulge: 'inward' },
      ],
    },
    {
      outside: [
        bar,
        { kind: 'arc', id: 'arc', startDiameter: 20, endDiameter: 20, length: 30, radius: 18, bulge: 'inward' },
      ],
    },
  ],
  [
    'part.outline-crosses-itself',
    { outside: [{ kind: 'curve', id: 'c', points: [dot(0, 40), dot(10, 38), dot(10.2, 10), dot(20, 9)] }] },
    { outside: [{ kind: 'curve', id: 'c', points: [dot(0, 40), dot(7, 34), dot(13, 16), dot(20, 9)] }] },
  ],
  [
    'part.curve-points-out-of-order',
    { outside: [{ kind: 'curve', id: 'c', points: [dot(0, 20), dot(10, 24), dot(5, 22), dot(20, 20)] }] },
    { outside: [{ kind: 'curve', id: 'c', points: [dot(0, 20), dot(5, 22), dot(10, 24), dot(20, 20)] }] },
  ],
  [
    'part.curve-longer-than-section',
    { outside: [{ kind: 'curve', id: 'c', length: 18, points: [dot(0, 20), dot(10, 24), dot(20, 20)] }] },
    { outside: [{ kind: 'curve', id: 'c', length: 20, points: [dot(0, 20), dot(10, 24), dot(20, 20)] }] },
  ],
  [
    'part.crown-not-at-an-end',
    { outside: [head, { kind: 'crown', id: 'crown', diameter: 20, length: 3 }, bar] },
    { outside: [head, bar, { kind: 'crown', id: 'crown', diameter: 20, length: 3 }] },
  ],
  [
    'part.thread-major-differs',
    { outside: [{ ...bar, diameter: 19 }], threads: [{ id: 'thread', on: 'body', designation: 'M20' }] },
    { outside: [{ ...bar, diameter: 19.9 }], threads: [{ id: 'thread', on: 'body', designation: 'M20' }] },
  ],
  [
    'part.thread-major-differs',
    {
      outside: [bar],
      inside: { left: [{ kind: 'bored', id: 'bore', diameter: 10, depth: 20 }] },
      threads: [{ id: 'thread', on: 'bore', designation: 'M10' }],
    },
    {
      outside: [bar],
      inside: { left: [{ kind: 'bored', id: 'bore', diameter: 8.5, depth: 20 }] },
      threads: [{ id: 'thread', on: 'bore', designation: 'M10' }],
    },
  ],
  [
    'part.thread-longer-than-section',
    { outside: [bar], threads: [{ id: 'thread', on: 'body', designation: 'M20', length: 41 }] },
    { outside: [bar], threads: [{ id: 'thread', on: 'body', designation: 'M20', length: 39 }] },
  ],
  [
    'part.thread-on-uneven-section',
    {
      outside: [{ kind: 'cone', id: 'body', startDiameter: 20, endDiameter: 19, length: 40 }],
      threads: [{ id: 'thread', on: 'body', designation: 'M20' }],
    },
    { outside: [bar], threads: [{ id: 'thread', on: 'body', designation: 'M20' }] },
  ],
  [
    'part.thread-unknown',
    { outside: [bar], threads: [{ id: 'thread', on: 'body', designation: 'left-over bolt' }] },
    { outside: [bar], threads: [{ id: 'thread', on: 'body', designation: 'M20' }] },
  ],
  [
    'part.unknown-feature',
    { outside: [bar], grooves: [{ id: 'g', on: 'bodi', along: 8, width: 3, floorDiameter: 17, purpose: 'other' }] },
    { outside: [bar], grooves: [{ id: 'g', on: 'body', along: 8, width: 3, floorDiameter: 17, purpose: 'other' }] },
  ],
  ['part.id-used-twice', { outside: [bar, bar] }, { outside: [bar, { ...bar, id: 'other' }] }],
  [
    'part.hexagon-larger-than-section',
    { outside: [bar], notTurned: [{ kind: 'hexagon socket', id: 'hex', face: 'left', acrossFlats: 17.5, depth: 8 }] },
    { outside: [bar], notTurned: [{ kind: 'hexagon socket', id: 'hex', face: 'left', acrossFlats: 12, depth: 8 }] },
  ],
  [
    'part.hexagon-larger-than-section',
    { outside: [bar], notTurned: [{ kind: 'hexagon', id: 'hex', on: 'body', acrossFlats: 20 }] },
    { outside: [bar], notTurned: [{ kind: 'hexagon', id: 'hex', on: 'body', acrossFlats: 17 }] },
  ],
  [
    'part.bores-meet',
    {
      outside: [bar],
      inside: { right: [{ kind: 'bored', id: 'bore', diameter: 8, depth: 30 }] },
      notTurned: [{ kind: 'hexagon socket', id: 'hex', face: 'left', acrossFlats: 10, depth: 11 }],
    },
    {
      outside: [bar],
      inside: { right: [{ kind: 'bored', id: 'bore', diameter: 8, depth: 30 }] },
      notTurned: [{ kind: 'hexagon socket', id: 'hex', face: 'left', acrossFlats: 10, depth: 9 }],
    },
  ],
  [
    'part.flats-larger-than-section',
    {
      outside: [bar],
      notTurned: [{ kind: 'flats', id: 'flats', on: 'body', count: 2, acrossFlats: 20, along: 5, length: 8 }],
    },
    {
      outside: [bar],
      notTurned: [{ kind: 'flats', id: 'flats', on: 'body', count: 2, acrossFlats: 17, along: 5, length: 8 }],
    },
  ],
  [
    'part.flats-into-bore',
    {
      outside: [bar],
      inside: { left: [{ kind: 'bored', id: 'bore', diameter: 12, depth: 'through' }] },
      notTurned: [{ kind: 'flats', id: 'flats', on: 'body', count: 1, acrossFlats: 15, along: 5, length: 8 }],
    },
    {
      outside: [bar],
      inside: { left: [{ kind: 'bored', id: 'bore', diameter: 12, depth: 'through' }] },
      notTurned: [{ kind: 'flats', id: 'flats', on: 'body', count: 1, acrossFlats: 17, along: 5, length: 8 }],
    },
  ],
  [
    'part.feature-off-section',
    {
      outside: [bar],
      notTurned: [{ kind: 'cross hole', id: 'pin-hole', on: 'body', diameter: 4, along: 39, through: true }],
    },
    {
      outside: [bar],
      notTurned: [{ kind: 'cross hole', id: 'pin-hole', on: 'body', diameter: 4, along: 37, through: true }],
    },
  ],
  [
    'part.cross-hole-larger-than-section',
    {
      outside: [bar],
      notTurned: [{ kind: 'cross hole', id: 'pin-hole', on: 'body', diameter: 20, along: 20, through: true }],
    },
    {
      outside: [bar],
      notTurned: [{ kind: 'cross hole', id: 'pin-hole', on: 'body', diameter: 6, along: 20, through: true }],
    },
  ],
  [
    'part.slot-wider-than-face',
    { outside: [bar], notTurned: [{ kind: 'slot', id: 'slot', face: 'right', width: 20, depth: 3 }] },
    { outside: [bar], notTurned: [{ kind: 'slot', id: 'slot', face: 'right', width: 3, depth: 3 }] },
  ],
  [
    'part.feature-deeper-than-part',
    { outside: [bar], notTurned: [{ kind: 'slot', id: 'slot', face: 'right', width: 3, depth: 40 }] },
    { outside: [bar], notTurned: [{ kind: 'slot', id: 'slot', face: 'right', width: 3, depth: 4 }] },
  ],
  ['part.material-unknown', { outside: [bar], material: 'unobtainium' }, { outside: [bar], material: '303' }],
];

test.each(cases)('%s: the impossible part is named, its mended twin is not', (id, impossible, mended) => {
  const found = judge(impossible).findings.find((f) => f.id === id);
  expect(found).toBeDefined();
  expect(found?.remedies.length).toBeGreaterThan(0);
  for (const { value, limit } of found?.because ?? []) {
    expect(Number.isFinite(value)).toBe(true);
    if (limit !== undefined) expect(Number.isFinite(limit)).toBe(true);
  }
  const twin = judge(mended).findings;
  expect(twin.filter((f) => f.id === id || f.level === 'stop')).toEqual([]);
});
