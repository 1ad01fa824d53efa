/**
 * Curves to be turned by steps, seen from the free end: caps of spheres and ellipsoids, cones, and curves through points; standing out or
 * hollowed into the end.
 *
 * A hollow is the same curve with metal and air exchanged: measured inward from the rim, r′ = R_rim − r, it rises with the depth as a
 * dome does. Its steps are found on that curve and measured from the axis again.
 */
import { DomainError } from '../../errors.ts';
import { curveThrough } from '../../part/biarc.ts';
import type { Arc, Point, Segment } from '../../part/outline-types.ts';
import { line } from '../../part/segment.ts';
import type { Mm } from '../../units/quantities.ts';
import type { StepCurve } from './curve-steps.ts';

/** A generator: radius over depth from the free end, standing out. */
export type Generator =
  | { readonly shape: 'sphere'; readonly radius: Mm; readonly height: Mm }
  | { readonly shape: 'ellipse'; readonly along: Mm; readonly across: Mm; readonly height: Mm }
  | { readonly shape: 'cone'; readonly startDiameter: Mm; readonly endDiameter: Mm; readonly length: Mm }
  | { readonly shape: 'points'; readonly points: readonly { readonly along: Mm; readonly diameter: Mm }[] };

const feature = 'curve';
/** An ellipse is cut as so many tangents, which stand outside it by less than a thousandth. */
const tangents = 240;

/**
 * The curve of a generator, its pole or thin end at the free end.
 *
 * @throws DomainError when it is higher than it can be, or does not widen away from the free end
 */
export function curveOf(generator: Generator): StepCurve {
  switch (generator.shape) {
    case 'sphere':
      return { pieces: [capOf(generator.radius, generator.height)], depth: generator.height };
    case 'ellipse':
      return ellipseOf(generator.along, generator.across, generator.height);
    case 'cone': {
      const { startDiameter, endDiameter, length } = generator;
      if (endDiameter < startDiameter)
        throw new DomainError('endDiameter', endDiameter, `at least ${startDiameter} mm: the thin end is the free end`);
      const piece = line({ z: 0, r: startDiameter / 2 }, { z: length, r: endDiameter / 2 }, { feature });
      return { pieces: [piece], depth: length };
    }
    case 'points': {
      const points = generator.points.map((p): Point => ({ z: p.along, r: p.diameter / 2 }));
      checkPoints(points);
      return { pieces: widening(curveThrough(points, { feature }), points), depth: points.at(-1)?.z ?? 0 };
    }
  }
}

/** Height of a cap whose foot is so wide. */
export function capHeight(radius: Mm, chord: Mm): Mm {
  if (chord > 2 * radius) throw new DomainError('chord', chord, `at most ${2 * radius} mm, the whole sphere`);
  return radius - Math.sqrt(radius ** 2 - (chord / 2) ** 2);
}

function capOf(radius: Mm, height: Mm): Arc {
  if (height > radius) throw new DomainError('height', height, `at most the radius, ${radius} mm`);
  const foot = { z: height, r: Math.sqrt(2 * radius * height - height ** 2) };
  return {
    kind: 'arc',
    feature,
    from: { z: 0, r: 0 },
    to: foot,
    centre: { z: radius, r: 0 },
    radius,
    sweep: Math.atan2(foot.r, height - radius) - Math.PI,
  };
}

function ellipseOf(along: Mm, across: Mm, height: Mm): StepCurve {
  if (height > along) throw new DomainError('height', height, `at most the half length, ${along} mm`);
  const whole = Math.acos(1 - height / along);
  const half = whole / tangents / 2;
  // Corners of the tangents: outside the ellipse, so that no step cuts below it.
  const corner = (i: number): Point => {
    const t = (2 * i + 1) * half;
    return { z: along - (along * Math.cos(t)) / Math.cos(half), r: (across * Math.sin(t)) / Math.cos(half) };
  };
  const corners = Array.from({ length: tangents }, (_, i) => corner(i));
  const foot = { z: height, r: across * Math.sin(whole) };
  const points = [
    { z: 0, r: 0 },
    { z: 0, r: corners[0]?.r ?? 0 },
    ...corners.filter((p) => p.z > 0 && p.z < height),
    foot,
  ];
  const pieces = points.slice(1).map((p, i) => line(points[i] ?? p, p, { feature }));
  return { pieces: pieces.filter((s) => s.to.z - s.from.z > 1e-12 && s.to.r >= s.from.r), depth: height };
}

function checkPoints(points: readonly Point[]): void {
  for (const [i, p] of points.entries()) {
    const before = points[i - 1];
    if (!before) {
      if (Math.abs(p.z) > 1e-9) throw new DomainError('points[0].along', p.z, '0 mm: the free end');
    } else if (!(p.z > before.z)) throw new DomainError(`points[${i}].along`, p.z, `more than ${before.z} mm`);
    else if (p.r < before.r)
      throw new DomainError(
        `points[${i}].diameter`,
        2 * p.r,
        `at least ${2 * before.r} mm: steps from the free end do not reach behind a wider place`,
      );
  }
}

/** A smooth curve through rising points may still dip between them; then the points are joined straight. */
function widening(smooth: readonly Segment[], points: readonly Point[]): readonly Segment[] {
  const dips = smooth.some((s) => s.to.r < s.from.r - 1e-9 || (s.kind === 'arc' && turnsBack(s)));
  return dips ? points.slice(1).map((p, i) => line(points[i] ?? p, p, { feature })) : smooth;
}

function turnsBack(arc: Arc): boolean {
  return arc.centre.z > arc.from.z + 1e-9 && arc.centre.z < arc.to.z - 1e-9;
}

/** The same curve hollowed into an end, measured inward from its rim; the pole becomes the bottom. */
export function hollowed(curve: StepCurve): { readonly curve: StepCurve; readonly rim: Mm } {
  const rim = curve.pieces.at(-1)?.to.r ?? 0;
  const flip = <P extends Point>(p: P): P => ({ ...p, z: curve.depth - p.z, r: rim - p.r });
  // Turned end for end and inside out, each piece still runs from the mouth inward.
  const pieces = curve.pieces.toReversed().map((s): Segment => {
    const ends = { from: flip(s.to), to: flip(s.from) };
    if (s.kind === 'line') return { ...s, ...ends };
    return { ...s, ...ends, centre: { z: curve.depth - s.centre.z, r: rim - s.centre.r } };
  });
  return { curve: { pieces, depth: curve.depth }, rim };
}
