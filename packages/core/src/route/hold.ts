/**
 * How the work is held from the bar or a sawn blank: which end stands out, on what it is gripped, whether the tailstock helps.
 */
import type { Chuck, Lathe, Workshop } from '../lathe/schema.ts';
import { radiusAt } from '../part/outline-queries.ts';
import type { PartResult, Placed } from '../part/part-result.ts';
import type { InsideSection, OutsideSection } from '../part/schema.ts';
import { deflectionUnderUnitLoad, type MmPerNewton } from '../structure/stepped-beam.ts';
import type { Mm, Second } from '../units/quantities.ts';
import { type HeldOn, heldBeam, steel } from './held-beam.ts';
import { facingAllowance, jawClearance, setupHandling, unsupportedRatio } from './practice.ts';
import type { Drive, Setup } from './route-result.ts';
import type { RouteWishes } from './schema.ts';
import { partingWidth } from './stock.ts';
import { bar, type Workpiece } from './workpiece.ts';

export type End = 'left' | 'right';

/** A centre that does not give: the lathe's own give is not in this account. */
const firmCentre = 1e9;

/** What is done to the ends of the work. */
export interface EndWork {
  /** The end that stands out is faced; its diameter then. */
  readonly face: { readonly to: 'clean' | 'length'; readonly diameter: Mm } | undefined;
  /** A centre hole is drilled in it. */
  readonly centred: boolean;
  /** The part is cut off the bar when all else is done. */
  readonly cutOff: boolean;
}

/** A setup being planned: the printed record and what the planner needs besides. */
export interface Holding extends HeldOn {
  readonly setup: Omit<Setup, 'work' | 'freeFrom' | 'drive'>;
  readonly ends: EndWork;
  /** Outside sections finished here. */
  readonly sections: readonly Placed<OutsideSection>[];
  /** Outside sections roughed here: the same, but for what is roughed in the chuck and finished on a mandrel. */
  readonly roughs: readonly Placed<OutsideSection>[];
  readonly chuck: Chuck;
  /** Held as a sawn blank on what the other setup turns, not at the end of a bar. */
  readonly blank: boolean;
  /** No surface can truly be held here; the rest is planned as if a bush were made. */
  readonly makeshift: boolean;
  /** A plain bore right through is made in the first setup, whichever end it was written from. */
  readonly boresFirst: boolean;
  /** What turns the work where jaws do not. */
  readonly drive?: Omit<Drive, 'asked'> | undefined;
  /** Time to set it up. */
  readonly handling: Second;
  /** What to lay out for it beside the chuck and a centre. */
  readonly needs: readonly string[];
}

/** The chuck for a diameter: the one wished for, else the first that opens to it. */
export function chuckFor(lathe: Lathe, diameter: Mm, wished: string | undefined): Chuck | undefined {
  return (
    lathe.chucks.find((c) => c.id === wished) ??
    lathe.chucks.find((c) => diameter >= c.from && diameter <= c.to) ??
    lathe.chucks[0]
  );
}

/**
 * The end that stands out first: the one from which more of the outside can be turned, towards the thickest section at the chuck.
 * When both serve alike the end away from the bores goes first, so that they are bored on a turned, dialled-in outside.
 */
export function firstEndOut(part: PartResult, wishes: RouteWishes | undefined): End {
  if (wishes?.firstEndOut) return wishes.firstEndOut;
  const reach = (end: End) => sectionsFrom(part, end).reduce((sum, s) => sum + (s.to - s.from), 0);
  const difference = reach('right') - reach('left');
  if (Math.abs(difference) > 1e-6) return difference > 0 ? 'right' : 'left';
  return part.inside.some((s) => s.side === 'inside right') ? 'left' : 'right';
}

/**
 * Sections from the free end up to and including the thickest nearest to the chuck; but what thins towards the chuck there (a crown, a
 * cone) is left for the other setup, in which it is the free end.
 */
export function sectionsFrom(part: PartResult, end: End): readonly Placed<OutsideSection>[] {
  const largest = Math.max(0, ...part.outside.map((s) => s.largest));
  const thick = part.outside.map((s) => s.largest >= largest - 1e-9);
  const reached =
    end === 'right' ? part.outside.slice(thick.indexOf(true)) : part.outside.slice(0, thick.lastIndexOf(true) + 1);
  const fromChuck = end === 'right' ? reached : reached.toReversed();
  const kept = fromChuck.slice(fromChuck.findIndex((s) => !thinsToChuck(part, s, end)));
  // Where all of it thins towards the chuck there is nothing better than to do all of it here.
  const sections = fromChuck.every((s) => thinsToChuck(part, s, end)) ? fromChuck : kept;
  return end === 'right' ? sections : sections.toReversed();
}

/** No cylinder, and thinner at its end towards the chuck than at the one towards the free end. */
function thinsToChuck(part: PartResult, { feature, from, to }: Placed<OutsideSection>, end: End): boolean {
  if (feature.kind === 'cylinder') return false;
  const inset = 0.02 * (to - from);
  const [left, right] = [radiusAt(part.outline, from + inset), radiusAt(part.outline, to - inset)];
  return end === 'right' ? left < right - 1e-6 : right < left - 1e-6;
}

/** The first setup, from the bar; with `boreOnly` the outside is only roughed, and finished on a mandrel in the bore. */
export function firstHolding(
  part: PartResult,
  workshop: Workshop,
  chuck: Chuck,
  diameter: Mm,
  wishes: RouteWishes | undefined,
  boreOnly = false,
): Holding {
  const end = firstEndOut(part, wishes);
  const { length } = part.outline;
  const roughs = sectionsFrom(part, end);
  const sections = boreOnly ? [] : roughs;
  const blank = !boreOnly && needsBlank(part, wishes);
  const beyond = facingAllowance + partingWidth(workshop) + jawClearance;
  const near = Math.min(...sections.map((s) => s.from));
  const far = Math.max(...sections.map((s) => s.to));
  // A blank too thick for the spindle stands on the floor of the chuck.
  const deepest = diameter > workshop.lathe.spindleBore ? chuck.jawLength - facingAllowance : Number.POSITIVE_INFINITY;
  const jaw =
    end === 'right'
      ? blank
        ? Math.min(near - jawClearance, deepest)
        : -beyond
      : blank
        ? Math.max(far + jawClearance, length - deepest)
        : length + beyond;
  const heldLength = blank
    ? Math.min(chuck.jawLength, end === 'right' ? jaw + facingAllowance : length + facingAllowance - jaw)
    : chuck.jawLength;
  const tailstock = wantsTailstock(part, workshop.lathe, sections, end, jaw, wishes?.tailstock);
  return {
    jaw,
    sections,
    roughs,
    chuck,
    blank,
    makeshift: false,
    boresFirst: throughBore(part) !== undefined && (boreOnly || sections.length === part.outside.length),
    ends: { face: { to: 'clean', diameter }, centred: tailstock, cutOff: !blank },
    handling: setupHandling,
    needs: [],
    setup: {
      id: 'setup-1',
      number: 1,
      title: blank ? `Sawn blank, ${end} end out` : `From the bar, ${end} end out`,
      chuck: chuck.name,
      endOut: end,
      grip: { diameter, length: Math.max(0, heldLength), on: blank ? 'blank' : 'bar', protected: false },
      held: 'in the chuck',
      stiffOver: Math.max(0, heldLength),
      tailstock,
      out: end === 'right' ? length + facingAllowance - jaw : jaw + facingAllowance,
      gripFrom: end === 'right' ? jaw - heldLength : jaw,
      gripTo: end === 'right' ? jaw : jaw + heldLength,
      dialIn: undefined,
      why: boreOnly
        ? ['The bore is made first: the outside is turned on a mandrel in it, and so runs true with it all over.']
        : [
            blank
              ? 'The part is thinner on both sides of its thickest section: each side is turned with the other in the chuck, so that little stands out.'
              : 'Most of the part is turned in this one setup.',
            'The thickest section is next to the chuck, so the work is stiffest where it is cut hardest.',
          ],
      cautions:
        blank || diameter > workshop.lathe.spindleBore
          ? []
          : ['Bar that stands out behind the spindle whips: keep it inside or guide it.'],
    },
  };
}

/** A sawn blank is held on no less than this. */
export const shortestBlankGrip: Mm = 8;

/** The outside cannot all be turned from one end, and what is left is long enough to hold: a sawn blank is turned on both. */
export function needsBlank(part: PartResult, wishes: RouteWishes | undefined): boolean {
  const turned = sectionsFrom(part, firstEndOut(part, wishes));
  const left = part.outside.filter((s) => !turned.includes(s)).reduce((sum, s) => sum + (s.to - s.from), 0);
  // Held on less than half its thickness it would be safer at the end of a bar.
  return left + facingAllowance >= jawClearance + Math.max(shortestBlankGrip, part.outline.largestDiameter / 2);
}

/** What the turner calls a section. */
export function nameOf({ name, id }: { readonly name?: string | undefined; readonly id: string }): string {
  if (name === undefined) return `the ${id.replaceAll('-', ' ')}`;
  return /^(the|a|an) /i.test(name) ? name : `the ${name}`;
}

/** The plain bore of a part that has one right through it and nothing else inside: it can be entered from either end. */
export function throughBore(part: PartResult): Placed<InsideSection> | undefined {
  const [only, ...others] = part.inside;
  const plain = only?.feature.kind === 'bored' && !part.threads.some((t) => t.on === only.feature.id);
  return part.outline.through && plain && others.length === 0 ? only : undefined;
}

/** Whether the free end is held by a centre. */
export function wantsTailstock(
  part: PartResult,
  lathe: Lathe,
  sections: readonly Placed<OutsideSection>[],
  end: End,
  jaw: Mm,
  wished: boolean | undefined,
): boolean {
  const able = lathe.tailstock !== undefined && lathe.tailstock.centre !== 'none' && takesCentre(part, end);
  if (wished !== undefined) return wished && able;
  return able && slender(sections, end, jaw);
}

/** Stands out further than three times the thickness it has on average. */
export function slender(sections: readonly Placed<OutsideSection>[], end: End, jaw: Mm): boolean {
  return sections.some((s) => {
    const far = Math.abs((end === 'right' ? s.to : s.from) - jaw);
    return far > unsupportedRatio * s.largest && s.to - s.from > s.largest;
  });
}

/** Unsupported further out than this many diameters an end is not faced without care; `common practice`. */
export const facedRatio = 5;

export function isFacedFarOut({ out, grip }: Pick<Setup, 'out' | 'grip'>): boolean {
  return out > facedRatio * grip.diameter;
}

/** A flat end of at least 4 mm without a bore takes a centre hole that may stay in the part. */
export function takesCentre(part: PartResult, end: End): boolean {
  const last = end === 'right' ? part.outside.at(-1) : part.outside[0];
  const bored = part.inside.some((s) => s.side === (end === 'right' ? 'inside right' : 'inside left'));
  return (
    last !== undefined && last.feature.kind === 'cylinder' && last.smallest >= 4 && !bored && !part.outline.through
  );
}

type OnTailstock = HeldOn & { readonly setup: Pick<Setup, 'tailstock'> };

/**
 * Give of the work under a unit radial load over a stretch, the largest of the stations.
 */
export function giveOver(part: PartResult, work: Workpiece, holding: OnTailstock, from: Mm, to: Mm): MmPerNewton {
  const { sections, solid, nearEnd } = heldBeam(work, holding);
  const end = sections.at(-1)?.to ?? 0;
  if (end <= 0.1) return 0;
  const place = (z: Mm) =>
    Math.min(end, Math.max(0, holding.setup.endOut === 'right' ? z - holding.jaw : holding.jaw - z));
  const stations = Array.from({ length: 9 }, (_, i) => place(from + ((to - from) * i) / 8)).filter((x) => x > 0);
  if (stations.length === 0) return 0;
  const gives = deflectionUnderUnitLoad(
    {
      sections,
      youngsModulus: solid?.youngsModulus ?? part.material?.youngsModulus ?? steel.youngsModulus,
      poissonRatio: solid?.poisson ?? part.material?.poisson ?? steel.poisson,
      chuck: nearEnd,
      tailstock: holding.setup.tailstock ? { at: end, stiffness: firmCentre } : undefined,
    },
    stations,
  );
  return Math.max(...gives);
}

/** The bar as it goes into the first setup. */
export function barFor(part: PartResult, first: Holding): Workpiece {
  const right = first.setup.endOut === 'right';
  const free = right ? part.outline.length + facingAllowance : -facingAllowance;
  const sawn = right ? -facingAllowance : part.outline.length + facingAllowance;
  const held = first.blank ? sawn : right ? first.setup.gripFrom : first.setup.gripTo;
  return bar(Math.min(free, held), Math.max(free, held), first.setup.grip.diameter);
}
