/**
 * The gland a published table gives a ring, and the groove diameter that makes it.
 */
import { DomainError } from '../../errors.ts';
import type { Mm } from '../../units/quantities.ts';
import { type GlandRow, type GlandService, glandRows, type Span } from './gland-row.ts';
import { squeeze } from './groove-formulas.ts';
import { type LeadIn, leadIns } from './lead-in.ts';
import type { ORing } from './o-ring.ts';

export type GlandKind = 'piston' | 'rod' | 'face';
export type Motion = 'static' | 'moving';

export interface GlandAdvice {
  /** The row to work to: read before remembered, and with a printed depth tolerance before one without. */
  readonly chosen: GlandRow;
  /** Squeeze of this ring in it over the tolerances of section and depth [%]. */
  readonly squeeze: Span;
  /** Every other table's row for this section. */
  readonly others: readonly GlandRow[];
  /** Lead-in chamfers published for this section, longest first. */
  readonly leadIns: readonly LeadIn[];
  readonly notes: readonly string[];
}

const services: Record<Motion, readonly GlandService[]> = {
  static: ['static'],
  moving: ['moving', 'moving, liquid', 'moving, gas'],
};

/** A row serves a ring whose section differs by no more than this [mm]: 3.53 is printed as 3.531 too. */
const sameSection = 0.021;

/** Every published gland for a section. */
export function glandRowsFor(section: Mm, kind: GlandKind, motion: Motion): GlandRow[] {
  const wanted: readonly GlandService[] =
    kind === 'face' ? ['face', 'face, liquid', 'face, gas or vacuum'] : services[motion];
  return glandRows().filter((row) => wanted.includes(row.service) && Math.abs(row.section - section) <= sameSection);
}

/**
 * The published gland for a ring.
 *
 * @param ring  the ring
 * @param kind  groove in the piston, in the housing round a rod, or in a face
 * @param motion  whether the seal moves
 * @throws DomainError when no table has this section, naming the nearest sections; and for a moving face seal
 */
export function recommendGland(ring: ORing, kind: GlandKind, motion: Motion): GlandAdvice {
  if (kind === 'face' && motion === 'moving') throw new DomainError('motion', motion, 'static, for a seal on a face');
  const rows = glandRowsFor(ring.section, kind, motion).toSorted((a, b) => rank(a, ring) - rank(b, ring));
  const [chosen, ...others] = rows;
  if (!chosen)
    throw new DomainError(
      'section',
      ring.section,
      `a section in the tables, the nearest ${nearestSections(ring.section, kind, motion)} mm`,
    );
  const least = squeeze(ring.section - ring.sectionTolerance, chosen.depth.max);
  const most = squeeze(ring.section + ring.sectionTolerance, chosen.depth.min);
  const notes = chosen.note === undefined ? [] : [chosen.note];
  notes.push('groove walls square, at most 5° open [mem-parker-4-2, from memory]');
  if (motion === 'moving' && ring.section < 3.5) {
    notes.push(
      'one maker gives clearances for moving seals only from 3.53 mm section up: a thin ring rolls and spirals sooner',
    );
  }
  return {
    chosen,
    squeeze: { min: least, max: most },
    others,
    leadIns: ring.section <= 7 ? leadIns(ring.section).toSorted((a, b) => b.length - a.length) : [],
    notes,
  };
}

function rank(row: GlandRow, ring: ORing): number {
  const remembered = row.standing === 'read' ? 0 : 100;
  const untoleranced = row.depth.max > row.depth.min ? 0 : 10;
  const order = ['engineersedge-static', 'sealsupply', 'apple-gland', 'orings-uk'].indexOf(row.source);
  return remembered + untoleranced + (order < 0 ? 5 : order) + Math.abs(row.section - ring.section) * 100;
}

function nearestSections(section: Mm, kind: GlandKind, motion: Motion): string {
  const wanted: readonly GlandService[] = kind === 'face' ? ['face'] : services[motion];
  const sections = [
    ...new Set(
      glandRows()
        .filter((row) => wanted.includes(row.service))
        .map((row) => row.section),
    ),
  ];
  return sections
    .toSorted((a, b) => Math.abs(a - section) - Math.abs(b - section))
    .slice(0, 2)
    .join(' or ');
}

/**
 * Groove diameters that keep a gland within its depth, whatever the mating part measures.
 *
 *     piston:  G_min = bore_max − 2 L_max,  G_max = bore_min − 2 L_min
 *     rod:     G_min = rod_max + 2 L_min,   G_max = rod_min + 2 L_max
 *
 * @param kind  groove in the piston or in the housing
 * @param mating  bore or rod, smallest and largest
 * @param depth  gland depth, least and most
 * @returns groove diameter, smallest and largest [mm]
 * @throws DomainError when the mating part varies more than the depth may
 * @source usseal-2
 * @source usseal-4
 * @valid parts concentric
 * @example grooveDiameterFor('piston', { min: 40, max: 40.039 }, { min: 3.1, max: 3.1505 }) → { min: 33.738, max: 33.8 }
 */
export function grooveDiameterFor(kind: 'piston' | 'rod', mating: Span, depth: Span): Span {
  const groove =
    kind === 'piston'
      ? { min: mating.max - 2 * depth.max, max: mating.min - 2 * depth.min }
      : { min: mating.max + 2 * depth.min, max: mating.min + 2 * depth.max };
  if (groove.max <= groove.min) {
    const room = 2 * (depth.max - depth.min);
    throw new DomainError(
      'mating',
      mating.max - mating.min,
      `a tolerance under ${room.toFixed(3)} mm, twice what the depth may vary`,
    );
  }
  return groove;
}
