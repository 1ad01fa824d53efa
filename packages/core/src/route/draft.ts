/**
 * An operation as the planner first writes it down, before it has its place in the order and its cut.
 */
import type { Dimension, PartResult, PlacedThread } from '../part/part-result.ts';
import type { Micrometre, Mm } from '../units/quantities.ts';
import type { Holding } from './hold.ts';
import type { Ordered } from './precedence.ts';
import type { CurveFromFreeEnd } from './step-curve.ts';
import type { Cone } from './tables/cone-setting.ts';
import type { Removal } from './workpiece.ts';

/** What the operation does to the work, by which its cut and table are found. */
export type Task =
  | { readonly does: 'face'; readonly diameter: Mm }
  | { readonly does: 'part off' | 'saw'; readonly diameter: Mm }
  | { readonly does: 'centre' }
  | { readonly does: 'drill'; readonly diameter: Mm; readonly depth: Mm; readonly pointAngle: number }
  | {
      readonly does: 'turn';
      /** Largest diameter still there when it starts, known once the order is; the target it is turned to. */
      readonly target: Mm;
      readonly stage: 'rough' | 'finish';
      readonly where: 'outside' | 'bore';
      /** Diameter left by the drill or the rough cut before it; for the outside it is read off the work. */
      readonly startDiameter?: Mm | undefined;
      /** Between what stays on the shoulders beside it for facing; its passes begin at what stands here. */
      readonly clear?: { readonly from: Mm; readonly to: Mm } | undefined;
      /** Height of the cone that a drill left at the floor of the bore. */
      readonly cone?: Mm | undefined;
      /** How far a boring bar has to go in. */
      readonly reach?: Mm | undefined;
      readonly tolerance: Mm | undefined;
      readonly finish: Micrometre | undefined;
    }
  | { readonly does: 'groove'; readonly width: Mm; readonly floor: Mm; readonly outer: Mm; readonly internal: boolean }
  | { readonly does: 'thread'; readonly thread: PlacedThread }
  | {
      readonly does: 'cone';
      readonly cone: Cone;
      readonly startDiameter: Mm;
      readonly where: 'outside' | 'bore';
      /** Which end of the cone is the thin one, seen from the chuck. */
      readonly thinEnd: 'free' | 'chuck';
    }
  | { readonly does: 'curve'; readonly steps: CurveFromFreeEnd; readonly largest: Mm }
  | { readonly does: 'polish'; readonly from: Mm; readonly to: Mm; readonly finish: Micrometre }
  | { readonly does: 'plain' };

export interface Draft extends Ordered {
  readonly title: string;
  readonly from: Mm;
  readonly to: Mm;
  readonly task: Task;
  /** What is gone from the work after it. */
  readonly removes: Removal;
  readonly why: readonly string[];
  readonly cautions: readonly string[];
}

/** What drafts of one setup begin with. */
export function operation(
  holding: Holding,
  kind: Draft['kind'],
  id: string,
  features: readonly string[],
  diameter: Mm,
): Omit<Draft, 'title' | 'from' | 'to' | 'task'> {
  return {
    id: `${kind.replaceAll(' ', '-')}-${id}`,
    kind,
    setup: holding.setup.id,
    features,
    diameter,
    atFreeEnd: false,
    working: false,
    removes: { cuts: 'nothing' },
    cautions: [],
    why: [],
  };
}

/** `Ø12.5`, to three decimals without trailing noughts; titles are in millimetres and converted where shown. */
export function inWords(diameter: Mm): string {
  return `Ø${Number(diameter.toFixed(3))}`;
}

/** A length in words, to three decimals without trailing noughts. */
export function lengthInWords(length: Mm): string {
  return `${Number(length.toFixed(3))} mm`;
}

/** What the turner calls a feature. */
export function called(part: PartResult, id: string): string {
  const all = [...part.outside, ...part.inside, ...part.grooves].map((p) => p.feature);
  const name = (all.find((f) => f.id === id) ?? part.notTurned.find((f) => f.id === id))?.name;
  if (name === undefined) return `the ${id.replaceAll('-', ' ')}`;
  return /^(the|a|an) /i.test(name) ? name : `the ${name}`;
}

/** The dimension `feature.field`, if the part has it. */
export function dimensionOf(part: PartResult, feature: string, field: string): Dimension | undefined {
  return part.dimensions.find((d) => d.id === `${feature}.${field}`);
}

/** The size to aim at: the middle of the limits. */
export function middle(dimension: Dimension | undefined, otherwise: Mm): Mm {
  return dimension ? (dimension.max + dimension.min) / 2 : otherwise;
}

/** Width of the limits; undefined where none are stated, so that nothing is held against a band of nought. */
export function band(dimension: Dimension | undefined): Mm | undefined {
  return dimension && dimension.max > dimension.min ? dimension.max - dimension.min : undefined;
}
