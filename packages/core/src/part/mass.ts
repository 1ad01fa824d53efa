/** Mass properties of the part: the turned body, less what is not turned where that is exact. */
import type { Finding } from '../finding.ts';
import type { Material } from '../materials/material.ts';
import type { Mm } from '../units/quantities.ts';
import { called } from './gaps.ts';
import { acrossCentroid, type BodyIntegrals, bodyIntegrals, centroidOf } from './mass-properties.ts';
import { closedLoop, innerRadiusAt, radiusAt } from './outline-queries.ts';
import type { Outline } from './outline-types.ts';
import type { MassProperties } from './part-result.ts';
import type { NotTurned, Part } from './schema.ts';

export function massOf(
  part: Part,
  outline: Outline,
  material: Material | undefined,
): { properties: MassProperties; findings: Finding[] } | undefined {
  const turned = bodyIntegrals(closedLoop(outline));
  if (!(turned.volume > 0)) return undefined;
  const sockets = (part.notTurned ?? []).map((feature) => ({ feature, prism: socketPrism(feature, outline) }));
  const body = sockets.reduce((rest, { prism }) => (prism ? less(rest, prism) : rest), turned);
  const left = [...sockets.filter((s) => !s.prism).map((s) => s.feature), ...(part.threads ?? [])];
  const density = material?.density;
  const properties: MassProperties = {
    volume: body.volume,
    area: body.area,
    mass: density === undefined ? undefined : density * body.volume,
    centroid: centroidOf(body),
    inertiaAxis: density === undefined ? undefined : density * body.polar,
    inertiaAcross: density === undefined ? undefined : density * acrossCentroid(body),
  };
  return { properties, findings: left.length === 0 ? [] : [leftOut(left.map(called))] };
}

/** A hexagon socket in a flat, solid end, with what it takes away (and adds to the surface); undefined when it is not so simple. */
function socketPrism(feature: NotTurned, outline: Outline): BodyIntegrals | undefined {
  if (feature.kind !== 'hexagon socket' || !feature.acrossFlats || !feature.depth) return undefined;
  const flats = feature.acrossFlats.nominal;
  const depth = feature.depth.nominal;
  const { length } = outline;
  const end = feature.face === 'left' ? outline.outside[0] : outline.outside.at(-1);
  const land = end?.face === true ? Math.max(end.from.r, end.to.r) : 0;
  const [from, to] = feature.face === 'left' ? [0, depth] : [length - depth, length];
  const places = Array.from({ length: 33 }, (_, i) => from + (depth * i) / 32);
  const corner = flats / Math.sqrt(3);
  const isSolid =
    depth < length &&
    corner < land &&
    places.every((z) => innerRadiusAt(outline, z) === 0 && radiusAt(outline, z) > corner);
  return isSolid ? hexagonPrism(flats, from, to) : undefined;
}

/**
 * Integrals of a hexagonal prism along the axis; its area is that of the six flanks.
 *
 *     A = √3/2 s²,  polar second moment of the section = 5√3/8 a⁴ with a = s/√3, half of it about any diameter
 */
export function hexagonPrism(flats: Mm, from: Mm, to: Mm): BodyIntegrals {
  const section = (Math.sqrt(3) / 2) * flats ** 2;
  const polar = ((5 * Math.sqrt(3)) / 8) * (flats / Math.sqrt(3)) ** 4;
  const depth = to - from;
  return {
    volume: section * depth,
    area: 2 * Math.sqrt(3) * flats * depth,
    firstMoment: (section * (to ** 2 - from ** 2)) / 2,
    polar: polar * depth,
    across: (section * (to ** 3 - from ** 3)) / 3 + (polar / 2) * depth,
  };
}

function less(body: BodyIntegrals, hole: BodyIntegrals): BodyIntegrals {
  return {
    volume: body.volume - hole.volume,
    // The opening leaves the face, the bottom takes its place: only the flanks are new.
    area: body.area + hole.area,
    firstMoment: body.firstMoment - hole.firstMoment,
    polar: body.polar - hole.polar,
    across: body.across - hole.across,
  };
}

function leftOut(names: readonly string[]): Finding {
  return {
    id: 'part.mass-leaves-out',
    level: 'note',
    stage: 'part',
    at: 'part',
    says: `Volume and mass count the turned body; left out of account: ${names.join(', ')} (threads count as cylinders of the drawn diameter).`,
    because: [],
    remedies: [],
  };
}
