/** Edges of sections: chamfers, radii and reliefs put at the corners of a chain. */
import type { Finding } from '../finding.ts';
import { type Mm, radians } from '../units/quantities.ts';
import { chamfered, rounded, turnAt } from './corner.ts';
import type { Point, Segment } from './outline-types.ts';
import type { Edge } from './schema.ts';
import { fractionsAtZ, isVertical, label, lengthOf, line, pointAt, reversedChain, stretch, tidy } from './segment.ts';

/** Which end of which section, and on which side of the running direction the material lies. */
export interface EdgePlace {
  readonly section: string;
  readonly called: string;
  /** As entered. */
  readonly end: 'start' | 'end';
  /** At which end of the section's segments in this chain; differs from `end` where the chain runs against the section. */
  readonly at: 'first' | 'last';
  readonly side: 'outside' | 'inside';
}

type Outcome = { readonly chain: Segment[] } | { readonly finding: Finding };

/** The chain with the edge made, or why it cannot be. */
export function makeEdge(chain: readonly Segment[], place: EdgePlace, edge: Edge): Outcome {
  const isOwn = (s: Segment) => s.feature === place.section && s.face !== true;
  const own = place.at === 'first' ? chain.findIndex(isOwn) : chain.findLastIndex(isOwn);
  const i = place.at === 'first' ? own - 1 : own;
  const [a, b] = [chain[i], chain[i + 1]];
  if (own < 0 || !a || !b) return { finding: noCorner(place) };
  const other = place.at === 'first' ? a : b;
  if (/\.(start|end)Edge$/.test(other.feature)) return { finding: twice(place, other.feature) };
  const turn = turnAt(a, b);
  if (turn === 0) return { finding: noCorner(place) };
  const made = shaped(a, b, place, edge, turn);
  if (made === 'outer') return { finding: reliefOutside(place) };
  if (!made) return { finding: tooLarge(place, edge, a, b) };
  return { chain: [...chain.slice(0, i), ...tidy(made), ...chain.slice(i + 2)] };
}

function shaped(a: Segment, b: Segment, place: EdgePlace, edge: Edge, turn: number): Segment[] | 'outer' | undefined {
  const labels = label(`${place.section}.${place.end}Edge`, a.assumed === true || b.assumed === true);
  switch (edge.kind) {
    case 'fillet':
      return rounded(a, b, edge.radius, labels);
    case 'chamfer':
      return chamfered(a, b, edge.size, edge.size * Math.tan(radians(edge.angle ?? 45)), labels);
    case 'relief': {
      const isInner = place.side === 'outside' ? turn > 0 : turn < 0;
      const into = place.side === 'outside' ? -edge.depth : edge.depth;
      if (!isInner || !isVertical(place.at === 'first' ? a : b)) return 'outer';
      if (place.at === 'first') return relieved(a, b, edge.width, into, labels);
      const back = relieved(...flipped(a, b), edge.width, into, labels);
      return back && reversedChain(back);
    }
  }
}

function flipped(a: Segment, b: Segment): [Segment, Segment] {
  const [first, second] = reversedChain([a, b]);
  return [first ?? b, second ?? a];
}

/** The face run on below the surface, the floor of the undercut, its far wall, and what is left of the surface. */
function relieved(face: Segment, surface: Segment, width: Mm, into: Mm, labels: ReturnType<typeof label>) {
  const corner = surface.from;
  const direction = Math.sign(surface.to.z - surface.from.z);
  const t = fractionsAtZ(surface, corner.z + direction * width)[0];
  const floor = corner.r + into;
  if (t === undefined || floor <= 0) return undefined;
  const low: Point = { z: corner.z, r: floor };
  const far: Point = { z: corner.z + direction * width, r: floor };
  const rest = stretch(surface, t, 1);
  return [face, line(corner, low, labels), line(low, far, labels), line(far, pointAt(surface, t), labels), rest];
}

const sizeOf = (edge: Edge): Mm =>
  edge.kind === 'fillet' ? edge.radius : edge.kind === 'chamfer' ? edge.size : edge.width;
const word = { fillet: 'radius', chamfer: 'chamfer', relief: 'relief' } as const;

function tooLarge(place: EdgePlace, edge: Edge, a: Segment, b: Segment): Finding {
  const room = Math.min(lengthOf(a), lengthOf(b));
  return {
    id: 'part.edge-larger-than-section',
    level: 'stop',
    stage: 'part',
    at: `${place.section}.${place.end}Edge`,
    says: `The ${word[edge.kind]} at the ${place.end} of the ${place.called} does not fit between the surfaces that meet there; it is left out of the drawing.`,
    because: [
      { what: `size of the ${word[edge.kind]}`, value: sizeOf(edge), unit: 'mm' },
      { what: 'length of the shorter of the two surfaces', value: Math.round(room * 1e4) / 1e4, unit: 'mm' },
    ],
    remedies: [`make the ${word[edge.kind]} smaller`, 'give the surfaces more room'],
  };
}

function noCorner(place: EdgePlace): Finding {
  return {
    id: 'part.edge-without-corner',
    level: 'caution',
    stage: 'part',
    at: `${place.section}.${place.end}Edge`,
    says: `The ${place.called} runs on smoothly at its ${place.end}: there is no corner for an edge, and none is drawn.`,
    because: [],
    remedies: ['take the edge away', 'check the diameters on both sides'],
  };
}

function twice(place: EdgePlace, other: string): Finding {
  return {
    id: 'part.edge-given-twice',
    level: 'caution',
    stage: 'part',
    at: `${place.section}.${place.end}Edge`,
    says: `The corner at the ${place.end} of the ${place.called} already has an edge (${other}); this one is not drawn.`,
    because: [],
    remedies: ['take one of the two away'],
  };
}

function reliefOutside(place: EdgePlace): Finding {
  return {
    id: 'part.relief-without-inner-corner',
    level: 'caution',
    stage: 'part',
    at: `${place.section}.${place.end}Edge`,
    says: `A relief needs an inner corner with a shoulder face; at the ${place.end} of the ${place.called} there is none, and it is not drawn.`,
    because: [],
    remedies: ['give the relief to the smaller of the two sections', 'use a chamfer or a radius'],
  };
}
