/**
 * The second setup: on which finished surface the work is held when it is turned round, with what between, and how far that lets it
 * give. Every way there is gets its cost; the cheapest comes first.
 */
import type { Chuck, Lathe, Workshop } from '../lathe/schema.ts';
import { innerRadiusAt } from '../part/outline-queries.ts';
import type { PartResult, Placed } from '../part/part-result.ts';
import type { OutsideSection } from '../part/schema.ts';
import { clamped, deflectionUnderUnitLoad, type MmPerNewton } from '../structure/stepped-beam.ts';
import type { Mm, Newton } from '../units/quantities.ts';
import { steel } from './held-beam.ts';
import { chuckFor, type End, type Holding, nameOf, sectionsFrom, wantsTailstock } from './hold.ts';
import { type Aid, secondItems, splitClose, type Weighed, weighed } from './holding-cost.ts';
import { boreForMandrel, faceDiameter, onMandrel } from './mandrel.ts';
import { facingAllowance, setupHandling } from './practice.ts';
import { gripNeeded, squeezedOutOfRound } from './squeeze.ts';
import { beamOut, finishedWork, type Workpiece } from './workpiece.ts';

/** A second setup with what it costs and how it is told. */
export interface SecondChoice {
  readonly holding: Holding;
  readonly how: string;
  readonly weighed: Weighed;
}

/** Cutting force of a usual cut on a light lathe, for weighing one holding against another; `common practice`. */
const usualCut: Newton = 150;
/** Push of a last cut, and what of the diameter it may lose to giving way; `common practice`. */
const usualPush: Newton = 30;
const mayGive: Mm = 0.02;
/** How far it gives under the push of a last cut, against what of the diameter that may lose. */
export function againstGiving(give: MmPerNewton): number {
  return (2 * usualPush * give) / mayGive;
}

/** Share of its give that work keeps when a centre carries its end; `common practice`. */
const supported = 0.1;
/** Out of round by less than this is not felt; `common practice`. */
export const roundEnough: Mm = 0.005;

/** The ways to hold the work turned round, the cheapest first; never none. With `mandrelOnly` the outside waits for a mandrel. */
export function secondHoldings(
  part: PartResult,
  workshop: Workshop,
  first: Holding,
  mandrelOnly = false,
): readonly SecondChoice[] {
  const end: End = first.setup.endOut === 'right' ? 'left' : 'right';
  const apart = splitClose(part, first.sections, first.setup.endOut, first.boresFirst);
  const grips = mandrelOnly ? [] : gripChoices(part, workshop.lathe, first, end);
  const gripped = grips.map((grip): SecondChoice => {
    const { aid, mark, squeezed } = protection(part, grip);
    const name = nameOf(grip.section.feature);
    const holding = heldOn(part, workshop, first, end, { ...grip, aid, makeshift: false });
    return {
      holding,
      how: `on ${name}, with ${aid === 'thin sheet' ? 'thin sheet between' : aid}`,
      weighed: weighed(
        secondItems({
          aid,
          mark,
          apart,
          tailstock: holding.setup.tailstock,
          squeezed: squeezed && aid === 'thin sheet',
          shortness: Math.max(1, grip.section.largest / grip.length),
          gives: (holding.setup.tailstock ? supported : 1) * againstGiving(grip.give),
        }),
      ),
    };
  });
  const mandrel = mandrelChoice(part, workshop, first, end);
  const all = [...gripped, ...(mandrel ? [mandrel] : [])].toSorted((a, b) => a.weighed.cost - b.weighed.cost);
  return all.length > 0 || mandrelOnly ? all : [inBush(part, workshop, first, end, apart)];
}

interface Grip {
  readonly section: Placed<OutsideSection>;
  readonly jaw: Mm;
  readonly length: Mm;
  readonly chuck: Chuck;
}

function heldOn(
  part: PartResult,
  workshop: Workshop,
  first: Holding,
  end: End,
  { section, jaw, length, chuck, aid, makeshift }: Grip & { readonly aid: Aid; readonly makeshift: boolean },
): Holding {
  const rest = part.outside.filter((s) => !first.sections.includes(s));
  const marked = section.feature.role === 'sliding' || section.feature.role === 'sealing';
  const name = nameOf(section.feature);
  const tailstock = rest.length > 0 && wantsTailstock(part, workshop.lathe, rest, end, jaw, undefined);
  return {
    jaw,
    sections: rest,
    roughs: rest,
    chuck,
    blank: false,
    makeshift,
    boresFirst: first.boresFirst,
    ends: { face: { to: 'length', diameter: faceDiameter(part, first, end) }, centred: tailstock, cutOff: false },
    handling: setupHandling,
    needs: [],
    setup: {
      id: 'setup-2',
      number: 2,
      title: `Turned round, ${end} end out, held ${makeshift ? 'in a bush made for' : 'on'} ${name}`,
      chuck: chuck.name,
      endOut: end,
      grip: {
        diameter: makeshift ? section.largest : section.smallest,
        length,
        on: section.feature.id,
        protected: true,
        with: aid,
      },
      held: 'in the chuck',
      stiffOver: length,
      tailstock,
      out: Math.abs(jaw - faceAt(part, end)) + facingAllowance,
      gripFrom: end === 'left' ? jaw : jaw - length,
      gripTo: end === 'left' ? jaw + length : jaw,
      dialIn: tightestBand(part) / 2,
      why: [
        makeshift
          ? `Nothing can be gripped as it is: a split bush or soft jaws bored for ${name} would hold it.`
          : `Held on ${name}, finished in the first setup: of the ways to hold it this costs least in time and risk.`,
        ...(aid === 'thin sheet' || makeshift ? [] : [`With ${aid}: ${becauseOf(part, section)}`]),
        `Dial in until the indicator moves less than half the closest tolerance${marked ? '; this is a working surface, so protect it' : ''}.`,
      ],
      cautions: [
        'Protect the finished surface with soft jaws, a split bush or thin sheet. After turning round spin the chuck once by hand.',
      ],
    },
  };
}

function becauseOf(part: PartResult, section: Placed<OutsideSection>): string {
  if (part.threads.some((t) => t.on === section.feature.id)) return 'jaws would spoil the crests of the thread.';
  const { role } = section.feature;
  if (role === 'sliding' || role === 'sealing') return 'it bears all round on a working surface and leaves no marks.';
  return 'it bears all round and does not squeeze the wall out of round.';
}

/** What goes between jaws and work, and why. */
function protection(
  part: PartResult,
  grip: Grip,
): { aid: Aid; mark: 'working surface' | 'thread' | undefined; squeezed: boolean } {
  const { feature } = grip.section;
  if (part.threads.some((t) => t.on === feature.id))
    return { aid: 'split threaded bush', mark: 'thread', squeezed: false };
  const squeezed = squeezeOf(part, grip.section, grip.length, grip.chuck.jaws, usualCut) > roundEnough;
  const marked = feature.role === 'sliding' || feature.role === 'sealing';
  if (squeezed) return { aid: 'soft jaws', mark: marked ? 'working surface' : undefined, squeezed };
  return { aid: 'thin sheet', mark: marked ? 'working surface' : undefined, squeezed };
}

/**
 * How far jaws squeeze a section out of round when they hold it against a cut at its own diameter; 0 where it is solid.
 */
function squeezeOf(part: PartResult, section: Placed<OutsideSection>, length: Mm, jaws: number, cut: Newton): Mm {
  const bore = Math.max(
    ...[0.1, 0.5, 0.9].map((t) => innerRadiusAt(part.outline, section.from + t * (section.to - section.from))),
  );
  return squeezeOfWall(
    part,
    section.smallest / 2,
    bore,
    length,
    jaws,
    gripNeeded(cut, section.smallest, section.smallest),
  );
}

/** The same for a wall between two radii and the grip of all jaws together; thick walls are not squeezed. */
export function squeezeOfWall(part: PartResult, outer: Mm, bore: Mm, length: Mm, jaws: number, grip: Newton): Mm {
  const wall = outer - bore;
  if (bore <= 0 || wall <= 0 || wall > 0.4 * outer || length <= 0) return 0;
  const modulus = part.material?.youngsModulus ?? steel.youngsModulus;
  return squeezedOutOfRound(grip / jaws, (outer + bore) / 2, wall, length, modulus, jaws);
}

function faceAt(part: PartResult, end: End): Mm {
  return end === 'left' ? 0 : part.outline.length;
}

/** Where a bush would bear: on the longest section of the first setup. */
function inBush(
  part: PartResult,
  workshop: Workshop,
  first: Holding,
  end: End,
  apart: readonly string[],
): SecondChoice {
  const section = first.sections.reduce((a, b) => (b.to - b.from > a.to - a.from ? b : a));
  const grip = {
    section,
    jaw: end === 'left' ? section.from : section.to,
    length: Math.min(first.chuck.jawLength, section.to - section.from),
    chuck: first.chuck,
  };
  return {
    holding: heldOn(part, workshop, first, end, { ...grip, aid: 'split bush', makeshift: true }),
    how: `in a bush made for ${nameOf(section.feature)}`,
    weighed: weighed(
      secondItems({
        aid: 'split bush',
        mark: undefined,
        apart,
        tailstock: false,
        shortness: 1,
        gives: 0,
        squeezed: false,
      }),
    ),
  };
}

/** On a mandrel, where a bore lets one in and what is left of the outside can be turned from this end. */
function mandrelChoice(part: PartResult, workshop: Workshop, first: Holding, end: End): SecondChoice | undefined {
  const bore = boreForMandrel(part, first);
  if (!bore) return undefined;
  const holding = onMandrel(part, workshop, first, bore);
  const reached = sectionsFrom(part, end);
  if (!holding.sections.every((s) => reached.includes(s))) return undefined;
  const length = bore.to - bore.from;
  const { mandrel, tailstock } = holding.setup;
  // Ends alone push along the mandrel, where it does not bend.
  const give =
    mandrel && holding.sections.length > 0
      ? mandrel.length ** 3 / (3 * steel.youngsModulus * inertia(mandrel.diameter))
      : 0;
  return {
    holding,
    how: `on a mandrel in ${nameOf(bore.feature)}`,
    weighed: weighed(
      secondItems({
        aid: 'mandrel',
        mark: undefined,
        // Outside and bore run true with each other through the mandrel.
        apart: [],
        tailstock: false,
        squeezed: false,
        lightly: holding.roughs.length > 0,
        shortness: Math.max(1, bore.smallest / length),
        gives: (tailstock ? supported : 1) * againstGiving(give),
      }),
    ),
  };
}

function inertia(diameter: Mm): number {
  return (Math.PI * diameter ** 4) / 64;
}

/** By this much the work behind the grip may be thicker without keeping the jaws off. */
const jawPlay: Mm = 0.02;

/** What goes into the chuck beyond a section when that is gripped. */
function deeperInChuck(part: PartResult, section: Placed<OutsideSection>, end: End): readonly Placed<OutsideSection>[] {
  const at = part.outside.indexOf(section);
  return end === 'left' ? part.outside.slice(at + 1) : part.outside.slice(0, at);
}

/** Where the work stands on the floor of the chuck: the far end of what is too thick to go on into the spindle. */
function floorAt(part: PartResult, lathe: Lathe, end: End): Mm {
  const thick = part.outside.filter((s) => s.largest > lathe.spindleBore);
  return end === 'left'
    ? Math.max(Number.NEGATIVE_INFINITY, ...thick.map((s) => s.to))
    : Math.min(Number.POSITIVE_INFINITY, ...thick.map((s) => s.from));
}

/** Cylinders that the jaws can hold, behind which nothing is thicker, with the give of the free end. */
function gripChoices(
  part: PartResult,
  lathe: Lathe,
  first: Holding,
  end: End,
): (Grip & { readonly give: MmPerNewton })[] {
  const finished = finishedWork(part.outline);
  return first.sections.flatMap((section) => {
    if (section.feature.kind !== 'cylinder') return [];
    const chuck = chuckFor(lathe, section.smallest, undefined);
    if (!chuck || section.largest > chuck.to || section.largest < chuck.from) return [];
    const atFace = end === 'left' ? part.outside[0] === section : part.outside.at(-1) === section;
    const clear = atFace ? 2 : 0.5;
    const deepest = floorAt(part, lathe, end);
    const jaw =
      end === 'left'
        ? Math.max(section.from + clear, deepest - chuck.jawLength)
        : Math.min(section.to - clear, deepest + chuck.jawLength);
    const length = Math.min(chuck.jawLength, end === 'left' ? section.to - jaw : jaw - section.from);
    if (length < Math.min(4, section.largest / 2)) return [];
    if (deeperInChuck(part, section, end).some((s) => s.largest > section.smallest + jawPlay)) return [];
    return [{ section, jaw, length, chuck, give: giveAtEnd(part, finished, jaw, end) }];
  });
}

/** Give of the finished part at its free end when the jaws end at a place. */
function giveAtEnd(part: PartResult, work: Workpiece, jaw: Mm, end: End): MmPerNewton {
  const beam = beamOut(work, jaw, end);
  const out = beam.at(-1)?.to ?? 0;
  if (out <= 0.1) return 0;
  const modulus = part.material?.youngsModulus ?? steel.youngsModulus;
  const poissonRatio = part.material?.poisson ?? steel.poisson;
  return (
    deflectionUnderUnitLoad({ sections: beam, youngsModulus: modulus, poissonRatio, chuck: clamped }, [out])[0] ?? 0
  );
}

/** The closest diameter tolerance of the part: what run-out is measured against. */
function tightestBand(part: PartResult): Mm {
  const bands = part.dimensions
    .filter((d) => d.kind === 'outside diameter' || d.kind === 'inside diameter')
    .map((d) => d.max - d.min)
    .filter((band) => band > 0);
  return bands.length > 0 ? Math.min(...bands) : 0.05;
}
