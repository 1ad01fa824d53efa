/** What the part stage answers. */
import type { Finding } from '../finding.ts';
import type { Material } from '../materials/material.ts';
import type { Thread } from '../standards/threads/thread.ts';
import type { Kilogram, Mm, Mm2, Mm3 } from '../units/quantities.ts';
import type { Outline } from './outline-types.ts';
import type { Groove, InsideSection, NotTurned, OutsideSection } from './schema.ts';

/** One size of the part with its limits worked out. */
export interface Dimension {
  /** `guide.diameter`, `seal-groove.width`: how readings, mates and inspection refer to it. */
  readonly id: string;
  readonly feature: string;
  /** In words: `diameter of the guide`. */
  readonly title: string;
  readonly kind:
    | 'outside diameter'
    | 'inside diameter'
    | 'length'
    | 'depth'
    | 'width'
    | 'radius'
    | 'across flats'
    | 'edge';
  readonly nominal: Mm;
  readonly max: Mm;
  readonly min: Mm;
  /** Deviations from nominal. */
  readonly upper: Mm;
  readonly lower: Mm;
  /** `f7`, `stated`, `ISO 2768-m`, `no tolerance stated`. */
  readonly basis: string;
  /** As it was typed. */
  readonly text: string;
  /** Left open: not settled yet, and drawn in pencil. */
  readonly open?: true | undefined;
}

/** A section or groove put in its place along the part. */
export interface Placed<T> {
  readonly feature: T;
  /** Left end. */
  readonly from: Mm;
  /** Right end. */
  readonly to: Mm;
  /** Largest and smallest diameter over its length. */
  readonly largest: Mm;
  readonly smallest: Mm;
  readonly side: 'outside' | 'inside left' | 'inside right';
}

export interface PlacedThread {
  readonly id: string;
  readonly on: string;
  readonly thread: Thread;
  readonly side: 'external' | 'internal';
  readonly from: Mm;
  readonly to: Mm;
  /** The end at which the cutter enters (the free end). */
  readonly entersAt: 'left' | 'right';
}

export interface MassProperties {
  readonly volume: Mm3;
  /** Whole surface, bores and faces included. */
  readonly area: Mm2;
  readonly mass: Kilogram | undefined;
  /** Centre of mass from the left face. */
  readonly centroid: Mm;
  /** Moment of inertia about the axis [kg·mm²]. */
  readonly inertiaAxis: number | undefined;
  /** Moment of inertia about a diameter through the centre of mass [kg·mm²]. */
  readonly inertiaAcross: number | undefined;
}

export interface PartResult {
  readonly name: string;
  readonly material: Material | undefined;
  readonly outline: Outline;
  readonly dimensions: readonly Dimension[];
  readonly outside: readonly Placed<OutsideSection>[];
  readonly inside: readonly Placed<InsideSection>[];
  readonly grooves: readonly Placed<Groove>[];
  readonly threads: readonly PlacedThread[];
  readonly notTurned: readonly NotTurned[];
  readonly mass: MassProperties | undefined;
  /** Every size is known; nothing in the outline was assumed. */
  readonly complete: boolean;
  readonly findings: readonly Finding[];
}
