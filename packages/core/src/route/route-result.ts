/** What the route stage answers. */
import type { Finding } from '../finding.ts';
import type { Segment } from '../part/outline-types.ts';
import type { Kilogram, MetrePerMinute, Mm, MmPerRev, MPa, Newton, Rpm, Second, Watt } from '../units/quantities.ts';
import type { DialTable } from './dial-table.ts';
import type { OperationKind } from './operation-kinds.ts';
import type { HoldingWish } from './schema.ts';
import type { infeedWays } from './tables/infeed-way.ts';
import type { WayHeld } from './ways-held.ts';

export interface Stock {
  readonly material: string;
  readonly diameter: Mm;
  /** Length to cut off, of all pieces together when several parts are wished for. */
  readonly length: Mm;
  readonly from: 'rack' | 'to buy';
  readonly bar?: string | undefined;
  readonly mass: Kilogram | undefined;
  /** What the length is made of: part, facing, saw kerf, grip. */
  readonly made: readonly { readonly what: string; readonly length: Mm }[];
  readonly cutting?: CuttingList | undefined;
}

/** A piece to saw off a bar. */
export interface SawnPiece {
  /** Bar on the rack; undefined when it is to be bought. */
  readonly bar: string | undefined;
  readonly parts: number;
  readonly length: Mm;
}

/** What to saw off for all the parts wished for. */
export interface CuttingList {
  readonly count: number;
  readonly pieces: readonly SawnPiece[];
  /** Of all pieces together. */
  readonly length: Mm;
  /** Width allowed for each cut. */
  readonly kerf: Mm;
  readonly mass: Kilogram | undefined;
  /** What is left over in the jaws at the end, of all pieces. */
  readonly stubs: Kilogram | undefined;
  /** What is turned, drilled and parted away. */
  readonly chips: Kilogram | undefined;
  /** Time with a hand hacksaw. */
  readonly sawing: { readonly low: Second; readonly high: Second };
}

/** Numbers of the hardest cut of an operation. */
export interface CutNumbers {
  readonly depth: Mm;
  readonly feed: MmPerRev;
  /** Fed by hand: the feed is what to aim for. */
  readonly byHand: boolean;
  readonly speed: Rpm;
  readonly cuttingSpeed: MetrePerMinute;
  readonly passes: number;
  readonly cuttingForce: Newton;
  readonly radialForce: Newton;
  readonly power: Watt;
  /** Share of what the drive gives at this speed. */
  readonly powerShare: number;
  /** How far edge and work give way from each other at the worst place, on the diameter; of a face or a curve by steps on the length. */
  readonly bending: Mm;
  /** Difference of size that this leaves along the work, on the diameter; undefined where the lathe is not judged. */
  readonly taper?: Mm | undefined;
  /** Probability that it sings; undefined where the lathe is not judged. */
  readonly sings?: number | undefined;
  readonly specificForce: MPa;
}

export interface Span {
  readonly low: Second;
  readonly likely: Second;
  readonly high: Second;
}

/** What a person wanted otherwise here, and which rules of order that breaks. */
export interface OperationWish {
  /** Its place in the order is the person's. */
  readonly placed: boolean;
  readonly skipped: boolean;
  /** How it is done instead. */
  readonly instead: string | undefined;
  readonly minutes: number | undefined;
  /** Id of the cutter asked for, whether or not it can do it. */
  readonly cutter: string | undefined;
  /** How a thread is to be fed in. */
  readonly infeed: (typeof infeedWays)[number] | undefined;
  readonly why: string | undefined;
  readonly breaks: readonly BrokenRule[];
}

/** A rule of order that a wish goes against: the other operation ought to have come first. */
export interface BrokenRule {
  readonly rule: string;
  readonly why: string;
  /** Operation that should stand before this one and does not. */
  readonly other: string;
}

export interface Operation {
  /** Of what it does and to which feature, so that it stays the same when something else changes. */
  readonly id: string;
  readonly number: number;
  readonly setup: string;
  readonly kind: OperationKind;
  /** `Rough the guide to Ø12.5`. */
  readonly title: string;
  readonly features: readonly string[];
  readonly cutter?: string | undefined;
  readonly cutterId?: string | undefined;
  readonly cut?: CutNumbers | undefined;
  /** Stretch of the part that is cut, from its left face. */
  readonly from: Mm;
  readonly to: Mm;
  /** Where it cuts: on the outside, ends included, or in a hole. */
  readonly side: 'outside' | 'inside';
  /** The work after it; undefined where it takes nothing off that a drawing shows. */
  readonly leaves?: WorkOutline | undefined;
  readonly time: Span;
  /** Time by the plan alone, before anything was learned from a log; 0 for one left out. */
  readonly planned: Second;
  /** Operations timed before, of its kind, that its time rests on. */
  readonly learnedFrom: number;
  /** What the person wanted otherwise; undefined where the planner had its way. */
  readonly wish?: OperationWish | undefined;
  /** Why it stands here and is done like this. */
  readonly why: readonly string[];
  readonly cautions: readonly string[];
  readonly tables: readonly string[];
}

/** The work at a moment, stock included; places along the part from its finished left face, as in the part's own outline. */
export interface WorkOutline {
  readonly from: Mm;
  readonly to: Mm;
  /** From the axis at the left end round to the axis at the right end. */
  readonly outside: readonly Segment[];
  /** Holes, from left to right. */
  readonly inside: readonly Segment[];
}

export interface Setup {
  readonly id: string;
  readonly number: number;
  readonly title: string;
  readonly chuck: string;
  /** Which end of the part stands out of the chuck. */
  readonly endOut: 'left' | 'right';
  readonly grip: {
    readonly diameter: Mm;
    readonly length: Mm;
    readonly on: string;
    readonly protected: boolean;
    /** What goes between jaws and work: `thin sheet`, `soft jaws`; undefined for nothing. */
    readonly with?: string | undefined;
  };
  readonly tailstock: boolean;
  /** From the jaw faces to the free end. */
  readonly out: Mm;
  /** Where the jaws hold, from the part's left face (stock beyond the part is negative or past its length). */
  readonly gripFrom: Mm;
  readonly gripTo: Mm;
  /** How the work is held: by jaws on its outside, on a mandrel in its bore, or between centres and driven by a dog. */
  readonly held: WayHeld;
  /** Where what holds it ends and the work, or the mandrel, stands free: the jaw faces, or the point of the driving centre. */
  readonly freeFrom: Mm;
  /** Length of grip as the stiffness of the lathe is reckoned with; next to none on a centre, which lets the work tilt. */
  readonly stiffOver: Mm;
  /** A steel mandrel in the bore, plain from the jaw faces to its end. */
  readonly mandrel?: { readonly diameter: Mm; readonly length: Mm } | undefined;
  /** What turns the work where no jaws hold it, and the moment it gives before it slips. */
  readonly drive?: Drive | undefined;
  /** Push of all jaws together that the hardest cut of the setup needs; undefined where no cut is reckoned. */
  readonly gripNeeded?: Newton | undefined;
  /** Total run-out to dial in to, from the tightest feature. */
  readonly dialIn: Mm | undefined;
  /** The work as it goes in. */
  readonly work: WorkOutline;
  readonly why: readonly string[];
  readonly cautions: readonly string[];
}

/** What turns the work: how, the moment it holds against slipping, and what the hardest cut asks of it with safety [N·mm]. */
export interface Drive {
  readonly by: string;
  readonly holds: number;
  readonly asked?: number | undefined;
}

/** A way to hold the work that was weighed against others. */
export interface HoldingChoice {
  /** Setup it is for. */
  readonly setup: string;
  /** `right end out of the bar, tailstock up`. */
  readonly how: string;
  /** What to wish for to have it so. */
  readonly wish: HoldingWish;
  readonly taken: boolean;
  /** What it costs beside the cutting: time to set up, and what its risks come to; for comparison only. */
  readonly cost: Second;
  /** What makes up the cost, the dearest first. */
  readonly why: readonly string[];
}

export interface RouteResult {
  readonly stock: Stock | undefined;
  /** Ways to hold the work, the best first; only of setups where there is a choice: the others go with the first. */
  readonly holdings: readonly HoldingChoice[];
  readonly setups: readonly Setup[];
  readonly operations: readonly Operation[];
  readonly tables: readonly DialTable[];
  readonly time: Span;
  /** Operations timed before, of all kinds, that the times rest on. */
  readonly learnedFrom: number;
  /** Where the person wanted an order or operations otherwise: what the planner's own route takes against this one. */
  readonly compared?: { readonly planner: Span; readonly this: Span } | undefined;
  /** What to lay out before starting. */
  readonly needed: readonly string[];
  readonly findings: readonly Finding[];
}
