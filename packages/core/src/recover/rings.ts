/** Grooves: which seal ring or retaining ring one was cut for, from its width, its floor and the surface it stands in. */

import { type RingPlace, retainingRing } from '../standards/rings/retaining-ring.ts';
import { boreRings, shaftRings } from '../standards/rings/retaining-ring-table.ts';
import { glandRows } from '../standards/seals/gland-row.ts';
import { listedORings, type ORing } from '../standards/seals/o-ring.ts';
import type { Mm } from '../units/quantities.ts';

/** A groove as measured, each with its standard uncertainty [mm]. */
export interface MeasuredGroove {
  readonly place: 'outside' | 'inside';
  readonly width: { readonly value: Mm; readonly uncertainty: Mm };
  readonly floor: { readonly value: Mm; readonly uncertainty: Mm };
  /** Diameter of the surface the groove is cut into. */
  readonly surface: { readonly value: Mm; readonly uncertainty: Mm };
}

export interface RingMatch {
  readonly ring: string;
  readonly why: string;
  readonly probability: number;
}

/** How far grooves of old makers stray from the tables, one standard deviation: `common practice`. */
const strayWidth: Mm = 0.15;
const strayDepth: Mm = 0.08;
/** An O-ring sits stretched on a floor outside by this many per cent, one standard deviation; in a bore it is pressed small. */
const usualStretch = 2;
const strayStretch = 2.5;
/** No listed ring: density per mm of width and depth that stands against the list. `common practice` */
const unlisted = 0.02;

/** Rings a groove may have been cut for, likeliest first; what is left of the probability is a ring not listed. */
export function matchRings(groove: MeasuredGroove): RingMatch[] {
  const weighed = [...seals(groove), ...retaining(groove)];
  const total = weighed.reduce((sum, m) => sum + m.weight, unlisted);
  return weighed
    .map(({ ring, why, weight }) => ({ ring, why, probability: weight / total }))
    .filter((m) => m.probability > 0.01)
    .toSorted((a, b) => b.probability - a.probability)
    .slice(0, 6);
}

interface Weighed {
  readonly ring: string;
  readonly why: string;
  readonly weight: number;
}

const bell = (off: number, spread: number) => Math.exp(-0.5 * (off / spread) ** 2) / (spread * Math.sqrt(2 * Math.PI));
const outside = (value: number, { min, max }: { min: number; max: number }) =>
  value < min ? value - min : value > max ? value - max : 0;

function seals(g: MeasuredGroove): Weighed[] {
  const depth = Math.abs(g.surface.value - g.floor.value) / 2;
  const ofDepth = Math.hypot(g.surface.uncertainty, g.floor.uncertainty) / 2;
  const bySection = new Map<number, number>();
  for (const row of glandRows()) {
    if (row.service.startsWith('face')) continue;
    const weight =
      bell(outside(g.width.value, row.width), Math.hypot(g.width.uncertainty, strayWidth)) *
      bell(outside(depth, row.depth), Math.hypot(ofDepth, strayDepth));
    bySection.set(row.section, Math.max(bySection.get(row.section) ?? 0, weight));
  }
  const sections = [...bySection].filter(([, w]) => w > 1e-4);
  if (sections.length === 0) return [];
  return listedORings().flatMap((ring) => {
    const fit = sections.filter(([s]) => Math.abs(s - ring.section) < 0.03).reduce((m, [, w]) => Math.max(m, w), 0);
    return fit === 0 ? [] : [weighRing(ring, fit, g)];
  });
}

/** The ring on its seat: stretched over a floor outside, its outside pressed against the floor of a bore. */
function weighRing(ring: ORing, fit: number, g: MeasuredGroove): Weighed {
  const seat = g.place === 'outside' ? g.floor.value : g.floor.value - 2 * ring.section;
  const stretch = (100 * (seat - ring.insideDiameter)) / ring.insideDiameter;
  const wanted = g.place === 'outside' ? usualStretch : -usualStretch / 2;
  return {
    ring: ring.designation,
    why: `section ${ring.section} mm fits width and depth; ${stretch >= 0 ? 'stretched' : 'pressed small'} by ${Math.abs(stretch).toFixed(1)} % on its seat`,
    weight: (fit * bell(stretch - wanted, strayStretch)) / 20,
  };
}

function retaining(g: MeasuredGroove): Weighed[] {
  const place: RingPlace = g.place === 'outside' ? 'shaft' : 'bore';
  const table = place === 'shaft' ? shaftRings : boreRings;
  const sizes = table.filter((_, i) => i % 3 === 0).filter((d) => Math.abs(d - g.surface.value) < 0.6);
  return sizes.map((size) => {
    const ring = retainingRing(place, size);
    const weight =
      bell(outside(g.floor.value, ring.groove), Math.hypot(g.floor.uncertainty, 0.06)) *
      bell(outside(g.width.value, ring.grooveWidth), Math.hypot(g.width.uncertainty, 0.06)) *
      bell(g.surface.value - size, Math.hypot(g.surface.uncertainty, 0.1));
    return {
      ring: `retaining ring for a ${place} of ${size} mm (DIN ${place === 'shaft' ? 471 : 472})`,
      why: `floor ${ring.groove.min} to ${ring.groove.max} mm and width from ${ring.grooveWidth.min} mm`,
      weight: weight / 10,
    };
  });
}
