/** The part stage against a solid modeller that knows nothing of it: replicad over Open CASCADE. */
import {
  draw,
  isShape3D,
  makeCylinder,
  makeSphere,
  measureArea,
  measureShapeVolumeProperties,
  measureVolume,
  type Shape3D,
  setOC,
} from 'replicad';
import init, { type OpenCascadeInstance } from 'replicad-opencascadejs';
import { beforeAll, expect, test } from 'vitest';
import { definePart } from './define-part.ts';
import { closedLoop } from './outline-queries.ts';
import { type PartDocument, partSchema } from './schema.ts';
import { pointAt } from './segment.ts';

let oc: OpenCascadeInstance;
beforeAll(async () => {
  oc = await init();
  setOC(oc);
});

const part = (document: Omit<PartDocument, 'name'>) =>
  definePart(partSchema('mm').parse({ name: 'solid', material: '303', ...document }));
type Made = ReturnType<typeof part>;

/** The outline turned about the axis by the modeller; z of the part is z of the solid. */
function revolved(made: Made): Shape3D {
  const loop = closedLoop(made.outline);
  const start = loop[0]?.from ?? { z: 0, r: 0 };
  let pen = draw([start.r, start.z]);
  for (const [i, s] of loop.entries()) {
    const to = i === loop.length - 1 ? start : s.to;
    const middle = pointAt(s, 0.5);
    pen = s.kind === 'line' ? pen.lineTo([to.r, to.z]) : pen.threePointsArcTo([to.r, to.z], [middle.r, middle.z]);
  }
  return turnedSolid(pen);
}

function turnedSolid(pen: ReturnType<typeof draw>): Shape3D {
  const solid = pen.close().sketchOnPlane('XZ').revolve([0, 0, 1]);
  if (!isShape3D(solid)) throw new Error('the modeller made no solid');
  return solid;
}

function inertia(solid: Shape3D, at: number, direction: readonly [number, number, number]): number {
  const props = new oc.GProp_GProps();
  oc.BRepGProp.VolumeProperties(solid.wrapped, props, true, false, false);
  return props.MomentOfInertia(new oc.gp_Ax1(new oc.gp_Pnt(0, 0, at), new oc.gp_Dir(...direction)));
}

function compare(made: Made, solid: Shape3D, relative: number): void {
  const { mass } = made;
  if (!mass) throw new Error('no mass');
  const near = (ours: number, theirs: number) => expect(Math.abs(ours / theirs - 1)).toBeLessThan(relative);
  const density = (mass.mass ?? Number.NaN) / mass.volume;
  near(mass.volume, measureVolume(solid));
  near(mass.area, measureArea(solid));
  near(mass.centroid, measureShapeVolumeProperties(solid).centerOfMass[2]);
  near((mass.inertiaAxis ?? Number.NaN) / density, inertia(solid, 0, [0, 0, 1]));
  near((mass.inertiaAcross ?? Number.NaN) / density, inertia(solid, mass.centroid, [1, 0, 0]));
}

const bar = { kind: 'cylinder', id: 'bar', diameter: 20, length: 40 } as const;
const head = { kind: 'cylinder', id: 'head', diameter: 30, length: 10 } as const;

const parts: Readonly<Record<string, Omit<PartDocument, 'name'>>> = {
  'a stepped pin with chamfers and shoulder radius': {
    outside: [
      { ...head, startEdge: { kind: 'chamfer', size: 1.5, angle: 30 }, endEdge: { kind: 'fillet', radius: 1 } },
      { ...bar, startEdge: { kind: 'fillet', radius: 2 }, endEdge: { kind: 'chamfer', size: 1 } },
    ],
  },
  'a plunger with a tapered blind cavity, seal groove and shallow crown': {
    outside: [
      { ...bar, diameter: 36 },
      { kind: 'crown', id: 'crown', diameter: 36, length: 2.5, startEdge: { kind: 'fillet', radius: 0.8 } },
    ],
    inside: {
      left: [
        { kind: 'bored', id: 'mouth', diameter: 26, depth: 8, startEdge: { kind: 'chamfer', size: 0.5 } },
        { kind: 'cone', id: 'taper', startDiameter: 26, endDiameter: 14, depth: 30 },
      ],
    },
    grooves: [
      {
        id: 'seal',
        on: 'bar',
        along: 25,
        width: 4.2,
        floorDiameter: 30.4,
        floorRadius: 0.4,
        edgeRadius: 0.2,
        purpose: 'o-ring',
      },
    ],
  },
  'a bush with counterbores at both ends and an inside groove': {
    outside: [bar],
    inside: {
      left: [
        { kind: 'bored', id: 'seat', diameter: 14, depth: 6 },
        { kind: 'drilled', id: 'way', diameter: 9, depth: 'through' },
      ],
      right: [{ kind: 'bored', id: 'counter', diameter: 16, depth: 8, endEdge: { kind: 'fillet', radius: 1 } }],
    },
    grooves: [{ id: 'ring', on: 'counter', along: 3, width: 1.3, floorDiameter: 17.4, purpose: 'retaining ring' }],
  },
  'a handle of arcs': {
    outside: [
      { kind: 'crown', id: 'tip', diameter: 18, length: 6 },
      { kind: 'arc', id: 'belly', startDiameter: 18, endDiameter: 16, length: 30, radius: 45, bulge: 'outward' },
      { kind: 'arc', id: 'waist', startDiameter: 16, endDiameter: 22, length: 18, radius: 25, bulge: 'inward' },
      { kind: 'cylinder', id: 'collar', diameter: 26, length: 6, startEdge: { kind: 'fillet', radius: 1.2 } },
    ],
  },
  'a knob of a free curve': {
    outside: [
      {
        kind: 'curve',
        id: 'knob',
        points: [
          { along: 0, diameter: 10 },
          { along: 4, diameter: 22 },
          { along: 10, diameter: 28 },
          { along: 18, diameter: 24 },
          { along: 26, diameter: 14 },
          { along: 32, diameter: 12 },
        ],
      },
      { kind: 'cylinder', id: 'stem', diameter: 12, length: 15 },
    ],
    inside: { right: [{ kind: 'drilled', id: 'hole', diameter: 6.8, depth: 20 }] },
  },
  'a spindle with relief, undercut and cone edges': {
    outside: [
      { ...bar, endEdge: { kind: 'relief', width: 2, depth: 0.4 } },
      {
        kind: 'cone',
        id: 'seat',
        startDiameter: 30,
        endDiameter: 22,
        length: 12,
        startEdge: { kind: 'chamfer', size: 0.8 },
        endEdge: { kind: 'fillet', radius: 3 },
      },
      { kind: 'cylinder', id: 'tail', diameter: 22, length: 16 },
    ],
    inside: {
      right: [
        { kind: 'bored', id: 'bore', diameter: 10, depth: 20 },
        { kind: 'undercut', id: 'under', diameter: 12, width: 3, depth: 22 },
      ],
    },
  },
  'a ball on a neck, drilled through': {
    outside: [
      { kind: 'crown', id: 'ball', diameter: 14, length: 17 },
      { kind: 'cylinder', id: 'neck', diameter: 14, length: 10 },
      head,
    ],
    inside: {
      right: [
        { kind: 'drilled', id: 'hole', diameter: 5, depth: 'through', startEdge: { kind: 'chamfer', size: 0.6 } },
      ],
    },
  },
};

test.each(Object.entries(parts))(
  '%s: the same outline turned by the modeller has the same volume, area, centroid and inertia',
  (_, document) => {
    const made = part(document);
    expect(made.findings.filter((f) => f.level !== 'note')).toEqual([]);
    compare(made, revolved(made), 1e-12);
  },
);

const cylinder = (radius: number, from: number, to: number) => makeCylinder(radius, to - from, [0, 0, from]);
const cone = (r0: number, r1: number, from: number, to: number) =>
  turnedSolid((r0 === 0 ? draw([0, from]) : draw([0, from]).lineTo([r0, from])).lineTo([r1, to]).lineTo([0, to]));
const ring = (inner: number, outer: number, from: number, to: number) =>
  cylinder(outer, from, to).cut(cylinder(inner, from, to));

test('a shoulder radius and a chamfer are the ones the modeller makes on fused cylinders', () => {
  const solid = cylinder(15, 0, 10)
    .fuse(cylinder(10, 10, 50))
    .fillet(2, (e) => e.inPlane('XY', 10).containsPoint([10, 0, 10]))
    .fillet(1, (e) => e.inPlane('XY', 10).containsPoint([15, 0, 10]))
    .chamfer(1, (e) => e.inPlane('XY', 50));
  compare(
    part({
      outside: [
        { ...head, endEdge: { kind: 'fillet', radius: 1 } },
        { ...bar, startEdge: { kind: 'fillet', radius: 2 }, endEdge: { kind: 'chamfer', size: 1 } },
      ],
    }),
    solid,
    1e-8,
  );
});

test('a radius between cone and cylinder is the one the modeller rolls in', () => {
  const solid = cone(8, 12, 0, 10)
    .fuse(cylinder(12, 10, 30))
    .fillet(5, (e) => e.inPlane('XY', 10).containsPoint([12, 0, 10]));
  const outside: PartDocument['outside'] = [
    { kind: 'cone', id: 'cone', startDiameter: 16, endDiameter: 24, length: 10 },
    { kind: 'cylinder', id: 'body', diameter: 24, length: 20, startEdge: { kind: 'fillet', radius: 5 } },
  ];
  compare(part({ outside }), solid, 1e-8);
});

test('grooves with floor radii, a drilled hole with its point and a counterbore are those cut from a solid bar', () => {
  const grooved = cylinder(10, 0, 40)
    .cut(ring(7, 11, 12, 16))
    .fillet(0.5, (e) => e.inPlane('XY', 12).containsPoint([7, 0, 12]))
    .fillet(0.5, (e) => e.inPlane('XY', 16).containsPoint([7, 0, 16]));
  const point = 3 / Math.tan((59 * Math.PI) / 180);
  const solid = grooved
    .cut(cylinder(3, 15, 40))
    .cut(cone(0, 3, 15 - point, 15))
    .cut(cylinder(5, 34, 40));
  compare(
    part({
      outside: [bar],
      inside: {
        right: [
          { kind: 'bored', id: 'counter', diameter: 10, depth: 6 },
          { kind: 'drilled', id: 'hole', diameter: 6, depth: 25 },
        ],
      },
      grooves: [{ id: 'g', on: 'bar', along: 12, width: 4, floorDiameter: 14, floorRadius: 0.5, purpose: 'o-ring' }],
    }),
    solid,
    1e-8,
  );
});

test('a crown is what a sphere leaves of a bar, bored through its tip', () => {
  const [foot, height] = [10, 3];
  const radius = (foot * foot + height * height) / (2 * height);
  const cap = makeSphere(radius)
    .translate([0, 0, 43 - radius])
    .intersect(cylinder(11, 40, 44));
  const solid = cylinder(foot, 0, 40)
    .fuse(cap)
    .cut(cylinder(4, 0, 43));
  compare(
    part({
      outside: [bar, { kind: 'crown', id: 'crown', diameter: 20, length: 3 }],
      inside: { left: [{ kind: 'bored', id: 'way', diameter: 8, depth: 'through' }] },
    }),
    solid,
    1e-8,
  );
});

test('a hexagon socket is the prism the modeller cuts', () => {
  const corner = 8 / Math.sqrt(3);
  const hexagon = Array.from({ length: 6 }, (_, i): [number, number] => [
    corner * Math.cos((i * Math.PI) / 3),
    corner * Math.sin((i * Math.PI) / 3),
  ]);
  const pen = hexagon.slice(1).reduce((p, corner) => p.lineTo(corner), draw(hexagon[0] ?? [0, 0]));
  const prism = pen.close().sketchOnPlane('XY').extrude(7);
  if (!isShape3D(prism)) throw new Error('the modeller made no solid');
  const solid = cylinder(10, 0, 40).cut(prism);
  compare(
    part({
      outside: [bar],
      notTurned: [{ kind: 'hexagon socket', id: 'hex', face: 'left', acrossFlats: 8, depth: 7 }],
    }),
    solid,
    1e-9,
  );
});
