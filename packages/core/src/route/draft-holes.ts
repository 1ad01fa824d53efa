/**
 * Drafts the drilling of a bore: which drills, how deep, and the hole they leave for the boring bar.
 */
import type { Drill } from '../cutting/cutter.ts';
import type { Lathe } from '../lathe/schema.ts';
import type { PartResult, Placed } from '../part/part-result.ts';
import type { InsideSection } from '../part/schema.ts';
import type { Mm } from '../units/quantities.ts';
import { called, type Draft, lengthInWords } from './draft.ts';
import { boringAllowance } from './practice.ts';
import { cutOpen, type Profile, sloping } from './profile.ts';
import { piecesOf } from './surfaces.ts';

/** A first drill above this diameter is led by a smaller one; `common practice`. */
const pilotAbove: Mm = 8;
/** A drill that comes out on the far side goes on by this much, so that the whole diameter is through; `common practice`. */
const breakThrough: Mm = 1;
/** Smallest drill worth planning with. */
const smallestDrill: Mm = 0.8;
/** Point of a drill whose angle is not entered, in degrees. */
const usualPoint = 118;

/** A bore of the end that stands out, with its depth from that face. */
export interface Hole {
  readonly section: Placed<InsideSection>;
  readonly depth: Mm;
  readonly through: boolean;
  /** Entered from the left face. */
  readonly fromLeft: boolean;
}

/** What the drills leave. */
export interface Drilled {
  readonly drafts: readonly Draft[];
  /** Diameter of the hole at a section, 0 where no drill reaches. */
  readonly holeAt: (section: string) => Mm;
  /** Height of the cone that the point of the drill leaves at the flat floor of a bored section; 0 where none is left. */
  readonly coneAt: (section: string) => Mm;
}

type Common = Pick<Draft, 'setup' | 'atFreeEnd' | 'working' | 'removes' | 'why' | 'cautions'>;

/** The drills for all bores of one end: each section asks for its own, and a drill that only repeats another is left out. */
export function drillHoles(
  part: PartResult,
  holes: readonly Hole[],
  drills: readonly Drill[],
  lathe: Lathe,
  common: Common,
): Drilled {
  const largest = lathe.tailstock?.largestDrill ?? Number.POSITIVE_INFINITY;
  const twist = drills
    .filter((d) => d.kind === 'twist' && d.diameter <= largest)
    .toSorted((a, b) => a.diameter - b.diameter);
  const deepest = Math.max(0, ...holes.map((h) => h.depth));
  const wanted = holes.flatMap((hole) => {
    const { feature } = hole.section;
    if (feature.kind === 'undercut') return [];
    const drill = drillFor(hole, twist, hole.depth >= deepest - 1e-9);
    return drill === undefined ? [] : [{ hole, ...drill }];
  });
  const drafts = wanted.flatMap(({ hole, diameter, pointAngle }) =>
    ladder(diameter, twist).map((d) => draftOf(part, hole, d, diameter, pointAngle, common)),
  );
  return {
    drafts: drafts.filter((d, i) => !drafts.some((other, j) => j !== i && coveredBy(d, other, i > j))),
    holeAt: (section) => {
      const own = holes.find((h) => h.section.feature.id === section);
      const reaching = wanted.filter(({ hole }) => own && hole.depth >= own.depth - 1e-9);
      return Math.max(0, ...reaching.map((w) => w.diameter));
    },
    coneAt: (section) => {
      const own = wanted.find(({ hole }) => hole.section.feature.id === section);
      if (!own || own.hole.through || own.hole.section.feature.kind !== 'bored') return 0;
      const deeper = wanted.filter(({ hole }) => hole.depth > own.hole.depth + 1e-9);
      const open = Math.max(0, ...deeper.map((w) => w.diameter));
      return Math.max(0, pointLength(own.diameter - open, own.pointAngle));
    },
  };
}

/** The drill for a section: the size itself for a drilled one, else the largest on hand that leaves something to bore. */
function drillFor(
  hole: Hole,
  twist: readonly Drill[],
  atBottom: boolean,
): { diameter: Mm; pointAngle: number } | undefined {
  const { section, depth, through } = hole;
  const { feature } = section;
  if (feature.kind === 'drilled') {
    const owned = twist.findLast((d) => Math.abs(d.diameter - section.largest) <= 0.1);
    return {
      diameter: owned?.diameter ?? section.largest,
      pointAngle: feature.pointAngle ?? owned?.pointAngle ?? usualPoint,
    };
  }
  const most = section.smallest - boringAllowance;
  // The bottom of the bore must not be pierced by the point of the drill.
  const room = atBottom && !through ? depth - 0.1 : Number.POSITIVE_INFINITY;
  const fits = (d: Mm, pointAngle: number) => d <= most && d >= smallestDrill && pointLength(d, pointAngle) <= room;
  const owned = twist.findLast((d) => fits(d.diameter, d.pointAngle));
  if (owned) return { diameter: owned.diameter, pointAngle: owned.pointAngle };
  // No drill on hand: ask for the next half millimetre down.
  for (let d = Math.floor(2 * most) / 2; d >= 1; d -= 0.5) {
    if (fits(d, usualPoint)) return { diameter: d, pointAngle: usualPoint };
  }
  return undefined;
}

function pointLength(diameter: Mm, pointAngle: number): Mm {
  return pointAngle >= 180 ? 0 : diameter / 2 / Math.tan((pointAngle * Math.PI) / 360);
}

/** A small drill leads a large one: it takes the chisel edge out of the cut. */
function ladder(diameter: Mm, twist: readonly Drill[]): Mm[] {
  const pilot = diameter > pilotAbove ? twist.findLast((d) => d.diameter <= diameter * 0.45) : undefined;
  return pilot ? [pilot.diameter, diameter] : [diameter];
}

function draftOf(
  part: PartResult,
  { section, depth, through, fromLeft }: Hole,
  diameter: Mm,
  last: Mm,
  pointAngle: number,
  common: Common,
): Draft {
  const { feature } = section;
  const toDiameter = feature.kind === 'drilled' || through;
  // Before boring the point may just reach the depth of the bore; a drilled hole has its depth to the full diameter.
  const full = toDiameter ? depth + (through ? breakThrough : 0) : depth - pointLength(diameter, pointAngle);
  return {
    ...common,
    id: `drill-${feature.id}${diameter === last ? '' : '.pilot'}`,
    kind: 'drill',
    features: [feature.id],
    diameter,
    title: `Drill ${lengthInWords(diameter)} for ${called(part, feature.id)}${through ? ', right through' : ''}`,
    from: fromLeft ? 0 : part.outline.length - Math.min(depth, part.outline.length),
    to: fromLeft ? Math.min(depth, part.outline.length) : part.outline.length,
    removes: {
      cuts: 'inside',
      to: drilled(part, { section, fromLeft }, diameter === last, { diameter, full, pointAngle }),
    },
    task: { does: 'drill', diameter, depth: Math.max(0, full), pointAngle },
    why:
      diameter === last
        ? []
        : ['A pilot hole takes the chisel edge of the large drill out of the cut: a fraction of the thrust.'],
    cautions: ['Clear the chips often; a drill that squeals is hardening the hole: stop, sharpen, feed firmly.'],
  };
}

/** The hole a drill leaves, its point included; the last drill of a drilled section leaves the section itself. */
function drilled(
  part: PartResult,
  { section, fromLeft }: Pick<Hole, 'section' | 'fromLeft'>,
  last: boolean,
  drill: { readonly diameter: Mm; readonly full: Mm; readonly pointAngle: number },
): Profile {
  const { id, kind } = section.feature;
  const place = (depth: Mm) => (fromLeft ? depth : part.outline.length - depth);
  const itself = kind === 'drilled' && last;
  const radius = (itself ? section.largest : drill.diameter) / 2;
  const between = (a: Mm, b: Mm, ra: Mm, rb: Mm) =>
    fromLeft ? sloping(place(a), place(b), ra, rb, id) : sloping(place(b), place(a), rb, ra, id);
  const wall = between(0, drill.full, radius, radius);
  const point = between(drill.full, drill.full + pointLength(2 * radius, drill.pointAngle), radius, 0);
  if (itself) return cutOpen(wall, piecesOf(part, 'inside', [id]));
  return fromLeft ? [...wall, ...point] : [...point, ...wall];
}

/** The same drill goes deeper for another section of the bore (or as deep, and was named first). */
function coveredBy(hole: Draft, other: Draft, later: boolean): boolean {
  if (hole.task.does !== 'drill' || other.task.does !== 'drill' || hole.task.diameter !== other.task.diameter)
    return false;
  return other.task.depth > hole.task.depth || (other.task.depth === hole.task.depth && later);
}
