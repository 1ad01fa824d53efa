/** The geometry of cutting a thread with a single point: how deep, what is left on the crest, in which steps. */
import { DomainError } from '../../errors.ts';
import type { SourceKey } from '../../sources/register.ts';
import type { Mm, Radian } from '../../units/quantities.ts';
import { forms } from './forms.ts';
import type { Side, Thread } from './record.ts';

/** The end of the tool between its two flanks. */
export type ToolTip =
  | { readonly kind: 'sharp' }
  | { readonly kind: 'flat'; readonly width: Mm }
  | { readonly kind: 'radius'; readonly radius: Mm };

/**
 * How far the end of a tool lies behind the point where its flanks would meet.
 *
 *     flat: w / (2 tan α)     radius: r (1/sin α − 1)     α half the included angle
 *
 * @param tip  the end of the tool
 * @param flankAngle  included angle [rad]
 * @returns the distance [mm]
 * @throws DomainError when the width or radius is negative
 * @source geometry
 * @valid symmetrical tools
 * @example tipTruncation({ kind: 'radius', radius: 0.2 }, Math.PI / 3) → 0.2
 */
export function tipTruncation(tip: ToolTip, flankAngle: Radian): Mm {
  const half = flankAngle / 2;
  if (tip.kind === 'sharp') return 0;
  const size = tip.kind === 'flat' ? tip.width : tip.radius;
  if (size < 0) throw new DomainError('tip', size, 'a flat or radius of 0 or more, mm');
  return tip.kind === 'flat' ? size / (2 * Math.tan(half)) : size * (1 / Math.sin(half) - 1);
}

/**
 * The tool tip that leaves the form's own root: rounded where the form has a root radius, else flat.
 *
 * @param thread  the thread
 * @param side  `external` for the bolt's root, `internal` for the nut's
 * @returns the tip, lengths [mm]
 * @source ISO68-1
 * @source MTECH-BSW
 * @source EN-ACAD-BA
 * @valid the forms held here; the nut of a flat form gets the flat of its major diameter (P/8 on ISO metric)
 * @example formTip(parseThread('M10x1'), 'internal') → { kind: 'flat', width: 0.125 }
 */
export function formTip(thread: Thread, side: Side): ToolTip {
  const form = forms[thread.form];
  if (form.rootRadius !== undefined && (side === 'external' || form.shape === 'rounded')) {
    return { kind: 'radius', radius: form.rootRadius * thread.pitch };
  }
  const truncation = (side === 'external' ? form.rootTruncation : form.crestTruncation) * thread.pitch;
  return { kind: 'flat', width: 2 * Math.tan(thread.flankAngle / 2) * truncation };
}

export interface InfeedChoice {
  /** End of the tool actually used; by default the form's own. */
  readonly tip?: ToolTip;
  /** Diameter that was turned or bored before; by default the basic one. */
  readonly crestDiameter?: Mm;
  /** Pitch diameter aimed at; by default the basic one. */
  readonly pitchDiameter?: Mm;
}

export interface InfeedDepth {
  /** Radial depth from touching the crest to the finished thread. */
  readonly depth: Mm;
  readonly tip: ToolTip;
  readonly crestDiameter: Mm;
  readonly pitchDiameter: Mm;
  /** Diameter at the bottom of the groove. */
  readonly rootDiameter: Mm;
}

/**
 * Radial depth, from touching the turned crest to the depth at which the pitch diameter is right.
 *
 *     bolt: t = (d_c − d2)/2 + H/2 − u     nut: t = (D2 − D_c)/2 + H/2 − u
 *
 * u is how far the tool's end lies behind its sharp point ({@link tipTruncation}). A blunter tool goes less deep.
 *
 * @param thread  the thread
 * @param side  `external` or `internal`
 * @param choice  tool tip, crest turned before and pitch diameter aimed at; by default form and basic sizes [mm]
 * @returns the depth and what it rests on [mm]
 * @throws DomainError when the tip is too blunt to reach the pitch diameter
 * @source geometry
 * @source ISO68-1
 * @valid tools whose included angle is that of the thread, fed square to the axis
 * @example infeedDepth(parseThread('M10'), 'external').depth → 0.92
 */
export function infeedDepth(thread: Thread, side: Side, choice: InfeedChoice = {}): InfeedDepth {
  const tip = choice.tip ?? formTip(thread, side);
  const outward = side === 'external' ? 1 : -1;
  const crestDiameter = choice.crestDiameter ?? (side === 'external' ? thread.majorDiameter : thread.minorDiameter);
  const pitchDiameter = choice.pitchDiameter ?? thread.pitchDiameter;
  const blunt = tipTruncation(tip, thread.flankAngle);
  const depth = (outward * (crestDiameter - pitchDiameter)) / 2 + thread.fundamentalHeight / 2 - blunt;
  if (depth <= 0 || blunt >= thread.fundamentalHeight / 2) {
    const widest = (thread.pitch / 2).toFixed(2);
    throw new DomainError('tip', describeTip(tip), `a point narrower than the groove at the pitch line, ${widest} mm`);
  }
  return { depth, tip, crestDiameter, pitchDiameter, rootDiameter: crestDiameter - 2 * outward * depth };
}

/** `flat of 0.188 mm`, `radius of 0.22 mm`, `sharp point`. */
export function describeTip(tip: ToolTip): string {
  if (tip.kind === 'sharp') return 'sharp point';
  return tip.kind === 'flat' ? `flat of ${tip.width.toFixed(3)} mm` : `radius of ${tip.radius.toFixed(3)} mm`;
}

/**
 * Nominal depth of the groove, crest to root, cut with the form's own tool from the basic crest.
 *
 * @param thread  the thread
 * @param side  `external` or `internal`
 * @returns the radial depth [mm]
 * @source ISO68-1
 * @valid the forms held here
 * @example depthOfCut(parseThread('1/4 BSW'), 'external') → 0.813
 */
export function depthOfCut(thread: Thread, side: Side): Mm {
  return infeedDepth(thread, side).depth;
}

/**
 * Width of the land left on the crest when the tool has gone in a given depth: what is seen and measured while cutting.
 *
 *     b = P − w,  w = 2 (t + u) tan α  once the flanks cut;  w = 2 √(2 r t − t²) while only a round nose does
 *
 * @param thread  the thread
 * @param depth  radial depth below the turned crest [mm]
 * @param tip  end of the tool; by default the form's own for the bolt [mm]
 * @returns width of the land, 0 once the crest is sharp [mm]
 * @throws DomainError when the depth is negative
 * @source geometry
 * @valid symmetrical tools of the thread's angle, all starts cut
 * @example crestWidthAtDepth(parseThread('M10'), 0.92) → 0.1877
 */
export function crestWidthAtDepth(thread: Thread, depth: Mm, tip: ToolTip = formTip(thread, 'external')): Mm {
  if (depth < 0) throw new DomainError('depth', depth, '0 mm or more');
  if (depth === 0) return thread.pitch;
  const half = thread.flankAngle / 2;
  const nose = tip.kind === 'radius' ? tip.radius : 0;
  const noseOnly = depth < nose * (1 - Math.sin(half));
  const groove = noseOnly
    ? 2 * Math.sqrt(2 * nose * depth - depth * depth)
    : 2 * (depth + tipTruncation(tip, thread.flankAngle)) * Math.tan(half);
  return Math.max(0, thread.pitch - groove);
}

/**
 * Movement of the top slide that gives a radial depth.
 *
 *     s = t / cos θ     θ from the cross-slide's line of travel
 *
 * @param radialDepth  depth square to the axis [mm]
 * @param slideAngle  angle between top slide and cross-slide travel [rad]
 * @returns movement along the top slide [mm]
 * @throws DomainError when the angle is not from 0 to under 90°
 * @source geometry
 * @valid 0 ≤ θ < 90°
 * @example depthAlongSlide(0.6134, 29.5 * Math.PI / 180) → 0.7048
 */
export function depthAlongSlide(radialDepth: Mm, slideAngle: Radian): Mm {
  if (slideAngle < 0 || slideAngle >= Math.PI / 2)
    throw new DomainError('slideAngle', slideAngle, '0 to under π/2 rad');
  return radialDepth / Math.cos(slideAngle);
}

export interface InfeedPass {
  readonly pass: number;
  /** Radial infeed of this pass. */
  readonly infeed: Mm;
  /** Radial depth reached after it. */
  readonly cumulative: Mm;
}

/** `constant area`: every pass cuts the same section. `gentle first`: the first pass is eased. */
export type InfeedRule = 'constant area' | 'gentle first';

/**
 * Depths of the passes that make up a depth, so that each cuts about the same section of chip.
 *
 *     constant area: t_i = t √(i/n)     gentle first: t_i = t √(φ/(n − 1)), φ = 0.3, 1, 2, 3 … n − 1
 *
 * @param depth  full radial depth [mm]
 * @param passes  number of passes, 1 to 60 [-]
 * @param rule  which of the two
 * @returns one entry a pass [mm]
 * @throws DomainError when there is no whole number of passes
 * @source common-practice
 * @source SANDVIK-OM114
 * @valid radial infeed of a V; the gentle rule needs 2 passes
 * @example infeedSteps(0.94, 6, 'gentle first')[0].cumulative → 0.23
 */
export function infeedSteps(depth: Mm, passes: number, rule: InfeedRule = 'constant area'): InfeedPass[] {
  if (!Number.isInteger(passes) || passes < 1 || passes > 60)
    throw new DomainError('passes', passes, 'a whole number, 1 to 60');
  if (rule === 'gentle first' && passes < 2)
    throw new DomainError('passes', passes, '2 or more with an eased first pass');
  const share = (i: number) =>
    i === 0 ? 0 : rule === 'constant area' ? Math.sqrt(i / passes) : Math.sqrt((i === 1 ? 0.3 : i - 1) / (passes - 1));
  return Array.from({ length: passes }, (_, i) => ({
    pass: i + 1,
    infeed: depth * (share(i + 1) - share(i)),
    cumulative: depth * share(i + 1),
  }));
}

/**
 * Infeeds of equal chip section for a thread, from its turned crest to full depth.
 *
 *     t_i = t √(i/n)
 *
 * @param thread  the thread
 * @param passes  number of passes, 1 to 60 [-]
 * @param side  `external` or `internal`
 * @param choice  tool tip, crest turned before and pitch diameter aimed at [mm]
 * @returns one entry a pass [mm]
 * @throws DomainError when there is no whole number of passes or the tip is too blunt
 * @source common-practice
 * @valid radial infeed of a V
 * @example constantAreaInfeeds(parseThread('M10'), 4)[0].cumulative → 0.46
 */
export function constantAreaInfeeds(
  thread: Thread,
  passes: number,
  side: Side = 'external',
  choice: InfeedChoice = {},
): InfeedPass[] {
  return infeedSteps(infeedDepth(thread, side, choice).depth, passes);
}

/** Keys behind the depths of a thread. */
export function depthSources(thread: Thread): readonly SourceKey[] {
  return ['geometry', ...forms[thread.form].sources];
}
