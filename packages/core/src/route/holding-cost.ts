/**
 * What a way of holding costs beside the cutting itself: the time to set it up, and its risks as the time they cost on average. All
 * figures are `common practice`; only their proportions choose.
 */
import type { PartResult, Placed } from '../part/part-result.ts';
import type { OutsideSection } from '../part/schema.ts';
import type { Second } from '../units/quantities.ts';
import { dimensionOf } from './draft.ts';
import { closeBand, setupHandling } from './practice.ts';

export interface CostItem {
  readonly why: string;
  readonly cost: Second;
}

export interface Weighed {
  readonly cost: Second;
  readonly why: readonly string[];
}

/** Centre drilling, bringing up and oiling the tailstock. */
const tailstockTime: Second = 300;
/** Work that bends and sings is done in light cuts, or twice. */
const slenderRisk: Second = 3600;
/** Dialling so well that two close surfaces of different setups run true with each other, and what it costs where that fails. */
const apartRisk: Second = 900;
/** Facing and centring an end that stands out far: pushed back and let out again, or steadied. */
const farOutRisk: Second = 600;
/** Each millimetre of the outside left for another holding. */
const leftOver: Second = 10;
/** Aids that have to be made for one part. */
const aidTime = {
  'thin sheet': 60,
  'soft jaws': 1500,
  'split bush': 2400,
  'split threaded bush': 3000,
  mandrel: 2700,
  bar: 0,
} as const satisfies Record<string, Second>;

export type Aid = keyof typeof aidTime;

export function weighed(items: readonly CostItem[]): Weighed {
  const told = items.filter((i) => i.cost > 0).toSorted((a, b) => b.cost - a.cost);
  return {
    cost: told.reduce((sum, i) => sum + i.cost, 0),
    why: told.map((i) => `${i.why} (${inMinutes(i.cost)})`),
  };
}

function inMinutes(cost: Second): string {
  return cost < 60 ? 'under a minute' : `${Math.round(cost / 60)} min`;
}

/** The first setup: what it leaves for the second, whether it bends. */
export function firstItems(
  part: PartResult,
  here: readonly Placed<OutsideSection>[],
  end: 'left' | 'right',
  holds: { readonly tailstock: boolean; readonly slender: boolean; readonly farOut: boolean },
): CostItem[] {
  const rest = part.outside.filter((s) => !here.includes(s));
  const finishes = here.length > 0;
  // Where all of it waits for a mandrel, nothing is taken out of its place.
  const length = finishes ? rest.reduce((sum, s) => sum + (s.to - s.from), 0) : 0;
  const bored = part.inside.some((s) => s.side === `inside ${end}`) && finishes;
  return [
    { why: 'sets up the bar', cost: setupHandling / 3 },
    { why: `${Number(length.toFixed(1))} mm of the outside are left for the other setup`, cost: leftOver * length },
    { why: 'the tailstock is brought up, and a centre hole stays', cost: holds.tailstock ? tailstockTime : 0 },
    { why: 'an end is faced and centred far out of the jaws', cost: holds.tailstock && holds.farOut ? farOutRisk : 0 },
    {
      why: 'the work stands out slender, without support it bends and sings',
      cost: finishes ? slenderAlone(holds) : 0,
    },
    { why: 'roughed standing out slender, in light cuts', cost: finishes ? 0 : slenderAlone(holds) / 6 },
    { why: 'the bore is cut before the outside it should run true with can be dialled in', cost: bored ? 60 : 0 },
  ];
}

function slenderAlone({ tailstock, slender }: { readonly tailstock: boolean; readonly slender: boolean }): Second {
  return slender && !tailstock ? slenderRisk : 0;
}

/** Close surfaces, bores as well, that the first setup does not cut while it cuts others that are close. */
export function splitClose(
  part: PartResult,
  here: readonly Placed<OutsideSection>[],
  end: 'left' | 'right',
  boresFirst: boolean,
): string[] {
  const close = [
    ...part.outside.map((s) => ({ feature: s.feature, isHere: here.includes(s) })),
    ...part.inside.map((s) => ({ feature: s.feature, isHere: boresFirst || s.side === `inside ${end}` })),
  ].filter(({ feature }) => isClose(part, feature.id));
  const elsewhere = close.filter((c) => !c.isHere).map(({ feature }) => feature.name ?? feature.id);
  return elsewhere.length < close.length ? elsewhere : [];
}

function isClose(part: PartResult, id: string): boolean {
  const limits = dimensionOf(part, id, 'diameter');
  return limits !== undefined && limits.max > limits.min && limits.max - limits.min < closeBand;
}

/** The second setup, held on something. */
export function secondItems(held: {
  readonly aid: Aid;
  readonly mark: 'working surface' | 'thread' | undefined;
  readonly shortness: number;
  /** A centre comes into the work itself. */
  readonly tailstock: boolean;
  /** Roughed on a mandrel, which slips under a heavy cut. */
  readonly lightly?: boolean;
  /** How far the free end gives under a usual push, against what a last cut may lose. */
  readonly gives: number;
  readonly squeezed: boolean;
  /** Close surfaces that this setup finishes while the first finished others. */
  readonly apart: readonly string[];
}): CostItem[] {
  return [
    {
      why: `close surfaces are finished in different setups: ${held.apart.join(', ')}`,
      cost: apartRisk * held.apart.length,
    },
    { why: 'turns the work round and dials it in', cost: setupHandling },
    { why: 'the tailstock is brought up, and a centre hole stays', cost: held.tailstock ? tailstockTime : 0 },
    { why: `${aidInWords[held.aid]}`, cost: aidTime[held.aid] },
    { why: `a ${held.mark ?? 'surface'} may be marked`, cost: held.mark === 'thread' ? 3600 : held.mark ? 900 : 0 },
    { why: 'the grip is short for its thickness', cost: 600 * (held.shortness ** 2 - 1) },
    { why: 'the free end gives way under the cut', cost: Math.min(7200, 1800 * held.gives) },
    { why: 'only light cuts are taken: the mandrel drives by its fit', cost: held.lightly ? 900 : 0 },
    { why: 'jaws squeeze the thin wall out of round', cost: held.squeezed ? 3600 : 0 },
  ];
}

const aidInWords: Record<Aid, string> = {
  'thin sheet': 'thin sheet between jaws and work',
  'soft jaws': 'soft jaws bored to the diameter',
  'split bush': 'a split bush bored to the diameter',
  'split threaded bush': 'a split threaded bush or a sawn nut',
  mandrel: 'a mandrel turned to the bore',
  bar: 'nothing between',
};

/** Both ends faced and centred, then turned between the centres end for end. */
export function betweenCentresItems(held: {
  /** The dog sits on this in the end. */
  readonly mark: 'working surface' | undefined;
  /** Faced and centred with the whole blank standing out, since it does not go into the spindle. */
  readonly farOut: boolean;
  /** Too short for its thickness to be worth it. */
  readonly stubby: boolean;
  /** How far it gives in the middle under a usual push, against what a last cut may lose. */
  readonly gives: number;
}): CostItem[] {
  return [
    { why: 'the chuck comes off, driving plate and centre go on, and the tailstock is lined up', cost: 1500 },
    { why: 'both ends are faced and centred in the chuck first', cost: 900 },
    { why: 'turned end for end between the centres', cost: setupHandling / 3 },
    { why: 'the dog is in the way, and only light cuts are taken', cost: 300 },
    { why: 'an end is faced and centred far out of the jaws', cost: held.farOut ? farOutRisk : 0 },
    { why: 'stubby work leaves the slide no room between dog and tailstock', cost: held.stubby ? 2400 : 0 },
    { why: `the dog may mark a ${held.mark ?? 'surface'}`, cost: held.mark ? 600 : 0 },
    { why: 'held by points it gives way under the cut', cost: Math.min(3600, 180 * held.gives) },
  ];
}
