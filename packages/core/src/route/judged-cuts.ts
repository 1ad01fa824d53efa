/**
 * The cuts of a planned route as the lathe model takes them: each with the work as it stands after it, how it is held, and its cutter.
 */
import type { Operation as LatheOperation, Setup as LatheSetup } from '../lathe/chain.ts';
import type { JobCut } from '../lathe/job-remedies.ts';
import { latheKnowledge } from '../lathe/knowledge.ts';
import type { Workshop } from '../lathe/schema.ts';
import { materialOf } from '../lathe/workshop-known.ts';
import { radiusBetween } from '../part/grooves.ts';
import type { PartResult } from '../part/part-result.ts';
import type { BeamSection } from '../structure/beam-element.ts';
import type { Mm } from '../units/quantities.ts';
import { centred } from './fares.ts';
import { steel } from './held-beam.ts';
import type { OperationKind } from './operation-kinds.ts';
import type { Operation, RouteResult, Setup, WorkOutline } from './route-result.ts';

/** Kinds of operations that the lathe model judges. */
const cutAs: Partial<Record<OperationKind, LatheOperation>> = {
  face: 'facing',
  'rough turn': 'turning',
  'finish turn': 'turning',
  'turn cone': 'turning',
  bore: 'boring',
  groove: 'grooving',
  'part off': 'parting',
};

/** Slices that the work is taken in, and places looked at along a cut. */
const slices = 24;
const stationCount = 9;
/** A hole leaves at least this much wall, so that the slice stays a tube [mm]. */
const thinnestWall: Mm = 0.1;

/**
 * The cuts of a route that the lathe model can judge; those that it cannot (drilling, threads, work by hand, cutters whose bar or
 * width is not told) are left out. A cut is known by the id of its operation.
 *
 * @throws InputError when a test of the workshop names what is not there
 */
export function judgedCuts(
  { operations, setups }: Pick<RouteResult, 'operations' | 'setups'>,
  { material }: Pick<PartResult, 'material'>,
  workshop: Workshop,
): JobCut[] {
  if (!material) return [];
  const { joint } = latheKnowledge(workshop);
  return operations.flatMap((operation, i): JobCut[] => {
    const held = setups.find((s) => s.id === operation.setup);
    // A cut is weakest when it is done; but what parting leaves no longer holds together.
    const before = operations.slice(0, i).findLast((o) => o.setup === operation.setup && o.leaves);
    const work = (operation.kind === 'part off' ? before?.leaves : (operation.leaves ?? before?.leaves)) ?? held?.work;
    const setup = held && work && latheSetup(operation, held, work, material, workshop);
    const { cut } = operation;
    if (!setup || !cut || !(cut.depth > 0)) return [];
    const plunge = setup.operation === 'grooving' || setup.operation === 'parting';
    const depth = plunge ? (setup.cutter.width ?? cut.depth) : cut.depth;
    const asked = { depth, feed: cut.feed, speed: cut.speed };
    return [{ id: operation.id, setup, joint, material: materialOf(material.grade), asked }];
  });
}

function latheSetup(
  { kind, cutterId, cut, from, to, side }: Operation,
  held: Setup,
  work: WorkOutline,
  material: NonNullable<PartResult['material']>,
  workshop: Workshop,
): LatheSetup | undefined {
  const inHole = side === 'inside' && cutAs[kind] === 'turning';
  const operation = inHole ? 'boring' : cutAs[kind];
  const cutter = workshop.cutters.find((c) => c.id === cutterId);
  if (!operation || !cutter || !cut) return undefined;
  if (operation === 'boring' && !cutter.barDiameter) return undefined;
  if ((operation === 'grooving' || operation === 'parting') && !cutter.width) return undefined;
  const right = held.endOut === 'right';
  const jaw = held.freeFrom;
  const out = (z: Mm) => (right ? z - jaw : jaw - z);
  const { mandrel } = held;
  const sections = mandrel
    ? [{ from: 0, to: mandrel.length, outerDiameter: mandrel.diameter }]
    : sectionsOf(work, jaw, right);
  const { youngsModulus, poisson, density } = mandrel ? steel : material;
  const end = sections.at(-1)?.to ?? 0;
  if (!(end > 0.5 && held.stiffOver > 0 && cutter.overhang > 0)) return undefined;
  const single = operation !== 'turning' && operation !== 'boring';
  const places = Array.from({ length: single ? 1 : stationCount }, (_, i) =>
    Math.min(end, Math.max(0, out(from + ((to - from) * (single ? 0.5 : i)) / (single ? 1 : stationCount - 1)))),
  );
  return {
    operation,
    work: {
      sections,
      youngsModulus,
      poissonRatio: poisson,
      density,
      gripLength: held.stiffOver,
      centreAt: centred(held, operation) ? end : undefined,
    },
    cutter: { ...cutter, shank: workshop.lathe.tests?.shank },
    stations: [...new Set(places)],
    diameter: (1000 * cut.cuttingSpeed) / (Math.PI * cut.speed),
    axialFloat: operation === 'facing' ? workshop.lathe.tests?.axialFloat : undefined,
  };
}

/** What stands out of the jaws, slice by slice. */
function sectionsOf(work: WorkOutline, jaw: Mm, right: boolean): BeamSection[] {
  const length = right ? work.to - jaw : jaw - work.from;
  if (!(length > 0)) return [];
  const each = length / slices;
  return Array.from({ length: slices }, (_, i): BeamSection => {
    const [near, far] = right ? [jaw + i * each, jaw + (i + 1) * each] : [jaw - (i + 1) * each, jaw - i * each];
    const outer = radiusBetween(work.outside, near + 1e-4, far - 1e-4);
    const inner = radiusBetween(work.inside, near + 1e-4, far - 1e-4);
    const outerDiameter = Math.max(0.5, outer ? outer.min + outer.max : 0.5);
    const innerDiameter = Math.min(inner ? inner.min + inner.max : 0, outerDiameter - 2 * thinnestWall);
    return { from: i * each, to: (i + 1) * each, outerDiameter, innerDiameter: Math.max(0, innerDiameter) };
  });
}
