import fc from 'fast-check';
import { expect, test } from 'vitest';
import { arbitraryPartIn } from '../../test/arbitrary-part.ts';
import { definePart } from './define-part.ts';
import { hexagonPrism } from './mass.ts';
import { acrossCentroid, bodyIntegrals, centroidOf } from './mass-properties.ts';
import { closedLoop, segmentPoints } from './outline-queries.ts';
import type { Point, Segment } from './outline-types.ts';
import { type PartDocument, partSchema } from './schema.ts';
import { arcLeaving, label, pointAt, tangentAt } from './segment.ts';

const none = label('test');
const body = (document: Omit<PartDocument, 'name'>) => {
  const { mass } = definePart(partSchema('mm').parse({ name: 'test', material: '303', ...document }));
  if (!mass) throw new Error('no mass');
  const density = (mass.mass ?? Number.NaN) / mass.volume;
  return {
    ...mass,
    polar: (mass.inertiaAxis ?? Number.NaN) / density,
    across: (mass.inertiaAcross ?? Number.NaN) / density,
  };
};
const near = (value: number, expected: number, relative = 1e-12) =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(relative * Math.abs(expected));

test('a cylinder: V = πr²l, A = 2πr(r + l), I = m r²/2 and m(3r² + l²)/12', () => {
  const [r, l] = [7, 31];
  const b = body({ outside: [{ kind: 'cylinder', id: 'a', diameter: 2 * r, length: l }] });
  near(b.volume, Math.PI * r ** 2 * l);
  near(b.area, 2 * Math.PI * r * (r + l));
  near(b.centroid, l / 2);
  near(b.polar, (b.volume * r ** 2) / 2);
  near(b.across, (b.volume * (3 * r ** 2 + l ** 2)) / 12);
});

test('a Ø10 × 100 pin of 303, 8030 kg/m³, weighs 63.07 g [by hand]', () => {
  const pin = body({ outside: [{ kind: 'cylinder', id: 'a', diameter: 10, length: 100 }] });
  expect(pin.mass).toBeCloseTo(0.06307, 5);
});

test('a tube: I = m(R² + r²)/2 about the axis', () => {
  const outside = [{ kind: 'cylinder', id: 'a', diameter: 30, length: 40 }] as const;
  const b = body({
    outside: [...outside],
    inside: { right: [{ kind: 'bored', id: 'b', diameter: 12, depth: 'through' }] },
  });
  near(b.volume, Math.PI * (15 ** 2 - 6 ** 2) * 40);
  near(b.area, 2 * Math.PI * (15 ** 2 - 6 ** 2) + 2 * Math.PI * (15 + 6) * 40);
  near(b.polar, (b.volume * (15 ** 2 + 6 ** 2)) / 2);
  near(b.across, (b.volume * (3 * (15 ** 2 + 6 ** 2) + 40 ** 2)) / 12);
});

test('a cone frustum: V = πh(R² + Rr + r²)/3, A with slant height, centroid h(R² + 2Rr + 3r²)/4(R² + Rr + r²)', () => {
  const [R, r, h] = [12, 5, 20];
  const b = body({ outside: [{ kind: 'cone', id: 'a', startDiameter: 2 * R, endDiameter: 2 * r, length: h }] });
  const q = R * R + R * r + r * r;
  near(b.volume, (Math.PI * h * q) / 3);
  near(b.area, Math.PI * (R * R + r * r + (R + r) * Math.hypot(h, R - r)));
  near(b.centroid, (h * (R * R + 2 * R * r + 3 * r * r)) / (4 * q));
  near(b.polar, (Math.PI * h * (R ** 5 - r ** 5)) / (10 * (R - r)));
});

test('a drilled point of 118° takes V = πr³/(3 tan 59°) away', () => {
  const solid = body({ outside: [{ kind: 'cylinder', id: 'a', diameter: 30, length: 40 }] });
  const drilled = body({
    outside: [{ kind: 'cylinder', id: 'a', diameter: 30, length: 40 }],
    inside: { left: [{ kind: 'drilled', id: 'b', diameter: 10, depth: 20 }] },
  });
  const point = (Math.PI * 5 ** 3) / (3 * Math.tan((59 * Math.PI) / 180));
  near(solid.volume - drilled.volume, Math.PI * 25 * 20 + point, 1e-11);
});

test('a crown is a spherical cap: V = πh²(3R − h)/3, curved surface 2πRh', () => {
  const [foot, h] = [20, 4];
  const R = (h * h + (foot / 2) ** 2) / (2 * h);
  const b = body({ outside: [{ kind: 'crown', id: 'a', diameter: foot, length: h }] });
  near(b.volume, (Math.PI * h * h * (3 * R - h)) / 3);
  near(b.area, 2 * Math.PI * R * h + (Math.PI * foot ** 2) / 4);
  // Centroid of a cap from the centre of the sphere: 3(2R − h)²/4(3R − h).
  near(b.centroid, h - R + (3 * (2 * R - h) ** 2) / (4 * (3 * R - h)));
});

test('a very shallow crown is a cap too, to 10 digits', () => {
  const [foot, h] = [20, 0.001];
  const R = (h * h + (foot / 2) ** 2) / (2 * h);
  const b = body({ outside: [{ kind: 'crown', id: 'a', diameter: foot, length: h }] });
  near(b.volume, (Math.PI * h * (3 * (foot / 2) ** 2 + h * h)) / 6, 1e-10);
  near(b.area, 2 * Math.PI * R * h + (Math.PI * foot ** 2) / 4, 1e-10);
});

test('a ball: I = 2mr²/5 every way', () => {
  const b = body({
    outside: [
      { kind: 'crown', id: 'a', diameter: 20, length: 10 },
      { kind: 'crown', id: 'b', diameter: 20, length: 10 },
    ],
  });
  near(b.volume, (4 / 3) * Math.PI * 1000);
  near(b.area, 400 * Math.PI);
  near(b.polar, 0.4 * b.volume * 100);
  near(b.across, 0.4 * b.volume * 100, 1e-11);
  near(b.centroid, 10);
});

test('a torus: V = 2π²Ra², A = 4π²Ra, I = m(R² + 3a²/4) and m(R²/2 + 5a²/8)', () => {
  const [R, a] = [9, 4];
  const [west, east]: [Point, Point] = [
    { z: -a, r: R },
    { z: a, r: R },
  ];
  const loop: Segment[] = [arcLeaving(west, { z: 0, r: 1 }, east, none), arcLeaving(east, { z: 0, r: -1 }, west, none)];
  const torus = bodyIntegrals(loop);
  near(torus.volume, 2 * Math.PI ** 2 * R * a * a);
  near(torus.area, 4 * Math.PI ** 2 * R * a);
  near(torus.polar, torus.volume * (R * R + (3 / 4) * a * a));
  near(acrossCentroid(torus), torus.volume * ((R * R) / 2 + (5 / 8) * a * a));
  expect(Math.abs(centroidOf(torus))).toBeLessThan(1e-12);
});

test('a fillet of radius ρ on a shaft adds the corner less the quarter torus [Pappus]', () => {
  const [r, rho] = [8, 2];
  const outside = (startEdge?: { kind: 'fillet'; radius: number }): PartDocument['outside'] => [
    { kind: 'cylinder', id: 'head', diameter: 30, length: 10 },
    { kind: 'cylinder', id: 'pin', diameter: 2 * r, length: 30, ...(startEdge ? { startEdge } : {}) },
  ];
  const added =
    body({ outside: outside({ kind: 'fillet', radius: rho }) }).volume - body({ outside: outside() }).volume;
  const square = 2 * Math.PI * (r + rho / 2) * rho * rho;
  const quarter = 2 * Math.PI * (r + rho - (4 * rho) / (3 * Math.PI)) * ((Math.PI * rho * rho) / 4);
  near(added, square - quarter, 1e-10);
});

test('a hexagon socket takes exactly its prism away, whose second moment is that of six triangles', () => {
  const solid = body({ outside: [{ kind: 'cylinder', id: 'a', diameter: 30, length: 40 }] });
  const socket = body({
    outside: [{ kind: 'cylinder', id: 'a', diameter: 30, length: 40 }],
    notTurned: [{ kind: 'hexagon socket', id: 'hex', face: 'right', acrossFlats: 10, depth: 8 }],
  });
  near(solid.volume - socket.volume, (Math.sqrt(3) / 2) * 100 * 8, 1e-11);
  // Six triangles of base a and height s/2, by direct integration over one of them.
  const [s, n] = [10, 400];
  let polar = 0;
  for (let i = 0; i < n; i++) {
    const x = ((i + 0.5) / n) * (s / 2);
    const half = x / Math.sqrt(3);
    polar += 6 * (2 * half * x * x + (2 / 3) * half ** 3) * (s / 2 / n);
  }
  near(hexagonPrism(s, 0, 1).polar, polar, 1e-5);
});

/** The same integrals without Green and without closed forms: the body cut into thin tapered discs. */
function byDiscs(loop: readonly Segment[]) {
  let [volume, area, first, polar, across] = [0, 0, 0, 0, 0];
  for (const segment of loop) {
    const points =
      segment.kind === 'line'
        ? Array.from({ length: 201 }, (_, i) => pointAt(segment, i / 200))
        : segmentPoints(segment, 1e-7);
    for (const [i, b] of points.entries()) {
      const a = points[i - 1];
      if (!a) continue;
      const dz = b.z - a.z;
      const z = (a.z + b.z) / 2;
      const r = (a.r + b.r) / 2;
      const disc = Math.PI * r * r * dz;
      volume += disc;
      first += disc * z;
      polar += (disc * (r * r)) / 2;
      across += disc * (z * z + (r * r) / 4);
      area += 2 * Math.PI * r * Math.hypot(dz, b.r - a.r);
    }
  }
  return { volume, area, firstMoment: first, polar, across };
}

test('any part that can be made: the closed forms agree with thousands of thin discs', () => {
  fc.assert(
    fc.property(arbitraryPartIn({ kind: 'rich' }), ({ unit, document }) => {
      const loop = closedLoop(definePart(partSchema(unit).parse(document)).outline);
      const exact = bodyIntegrals(loop);
      const discs = byDiscs(loop);
      for (const key of ['volume', 'area', 'firstMoment', 'polar', 'across'] as const)
        near(exact[key], discs[key], 2e-5);
    }),
    { numRuns: 60 },
  );
});

test('each arc of any part leaves and arrives on its own circle, at its own tangent', () => {
  fc.assert(
    fc.property(arbitraryPartIn({ kind: 'rich' }), ({ unit, document }) => {
      for (const s of closedLoop(definePart(partSchema(unit).parse(document)).outline)) {
        if (s.kind !== 'arc') continue;
        for (const p of [s.from, s.to]) near(Math.hypot(p.z - s.centre.z, p.r - s.centre.r), s.radius, 1e-9);
        const end = pointAt(s, 1 - 1e-12);
        expect(Math.hypot(end.z - s.to.z, end.r - s.to.r)).toBeLessThan(1e-7);
        const t = tangentAt(s, 0.5);
        near(Math.hypot(t.z, t.r), 1);
      }
    }),
    { numRuns: 60 },
  );
});
