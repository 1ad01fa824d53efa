/**
 * The second setup: on which finished surface the work is held when it is turned round, with what between, and how far that lets it
 * give. Every way there is gets its cost; the cheapest comes first.
 */
import type { Chuck, Lathe, Workshop } from '../lathe/schema.ts';
import { innerRadiusAt } from '../part/outline-queries.ts';
import type { PartResult, Placed } from '../part/part-result.ts';
import type { InsideSection, OutsideSection } from '../part/schema.ts';
import { clamped, deflectionUnderUnitLoad, type MmPerNewton } from '../structure/stepped-beam.ts';
import type { Mm, Newton } from '../units/quantities.ts';
import { throughBore } from './draft-inside.ts';
import { chuckFor, type End, type Holding, steel, wantsTailstock } from './hold.ts';
import { type Aid, secondItems, type Weighed, weighed } from './holding-cost.ts';
import { facingAllowance } from './practice.ts';
import type { RouteWishes } from './schema.ts';
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
/** Share of its give that work keeps when a centre carries its end; `common practice`. */
const supported = 0.1;
/** Out of round by less than this is not felt; `common practice`. */
export const roundEnough: Mm = 0.005;

/** The ways to hold the work turned round, the cheapest first; never none. */
export function secondHoldings(
  part: PartResult,
  workshop: Workshop,
  first: Holding,
  wishes: RouteWishes | undefined,
): readonly [SecondChoice, ...SecondChoice[]] {
  const end: End = first.setup.endOut === 'right' ? 'left' : 'right';
  const grips = gripChoices(part, workshop.lathe, first, end).map((grip): SecondChoice => {
    const { aid, mark, squeezed } = protection(part, grip);
    const name = nameOf(grip.section.feature);
    const holding = heldOn(part, workshop, first, end, { ...grip, aid, makeshift: false }, wishes);
    return {
      holding,
      how: `on ${name}, with ${aid === 'thin sheet' ? 'thin sheet between' : aid}`,
      weighed: weighed(
        secondItems({
          aid,
          mark,
          squeezed: squeezed && aid === 'thin sheet',
          shortness: Math.max(1, grip.section.largest / grip.length),
          gives: ((holding.setup.tailstock ? supported : 1) * (2 * usualPush * grip.give)) / mayGive,
        }),
      ),
    };
  });
  const mandrel = mandrelChoice(part, first, end);
  const all = [...grips, ...(mandrel ? [mandrel] : [])].toSorted((a, b) => a.weighed.cost - b.weighed.cost);
  const [cheapest, ...others] = all;
  return cheapest ? [cheapest, ...others] : [inBush(part, workshop, first, end, wishes)];
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
  wishes: RouteWishes | undefined,
): Holding {
  const rest = part.outside.filter((s) => !first.sections.includes(s));
  const marked = section.feature.role === 'sliding' || section.feature.role === 'sealing';
  const name = nameOf(section.feature);
  return {
    jaw,
    sections: rest,
    chuck,
    blank: false,
    makeshift,
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
      tailstock: rest.length > 0 && wantsTailstock(part, workshop.lathe, rest, end, jaw, wishes?.tailstock),
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

function nameOf({ name, id }: { readonly name?: string | undefined; readonly id: string }): string {
  if (name === undefined) return `the ${id.replaceAll('-', ' ')}`;
  return /^(the|a|an) /i.test(name) ? name : `the ${name}`;
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
  wishes: RouteWishes | undefined,
): SecondChoice {
  const section = first.sections.reduce((a, b) => (b.to - b.from > a.to - a.from ? b : a));
  const grip = {
    section,
    jaw: end === 'left' ? section.from : section.to,
    length: Math.min(first.chuck.jawLength, section.to - section.from),
    chuck: first.chuck,
  };
  return {
    holding: heldOn(part, workshop, first, end, { ...grip, aid: 'split bush', makeshift: true }, wishes),
    how: `in a bush made for ${nameOf(section.feature)}`,
    weighed: weighed(secondItems({ aid: 'split bush', mark: undefined, shortness: 1, gives: 0, squeezed: false })),
  };
}

/** Shorter than this, or thinner, a mandrel is not worth making. */
const leastMandrel: Mm = 6;

/** On a mandrel: where a bore goes right through, nothing outside is left for this setup, and its own section is long enough. */
function mandrelChoice(part: PartResult, first: Holding, end: End): SecondChoice | undefined {
  if (!part.outline.through || part.outside.some((s) => !first.sections.includes(s))) return undefined;
  const [bore] = part.inside
    .filter((s) => s.feature.kind === 'bored' && s.to - s.from >= leastMandrel && s.smallest >= leastMandrel)
    .filter((s) => s === throughBore(part) || s.side === `inside ${first.setup.endOut}`)
    .filter((s) => !part.threads.some((t) => t.on === s.feature.id))
    .toSorted((a, b) => b.to - b.from - (a.to - a.from));
  if (!bore) return undefined;
  const length = bore.to - bore.from;
  const name = nameOf(bore.feature);
  return {
    holding: onMandrel(part, first, end, bore),
    how: `on a mandrel in ${name}`,
    weighed: weighed(
      secondItems({
        aid: 'mandrel',
        mark: undefined,
        squeezed: false,
        shortness: Math.max(1, bore.smallest / length),
        gives: 0,
      }),
    ),
  };
}

function onMandrel(part: PartResult, first: Holding, end: End, bore: Placed<InsideSection>): Holding {
  const jaw = end === 'left' ? bore.from : bore.to;
  return {
    jaw,
    sections: [],
    chuck: first.chuck,
    blank: false,
    makeshift: false,
    setup: {
      id: 'setup-2',
      number: 2,
      title: `Turned round, ${end} end out, on a mandrel in ${nameOf(bore.feature)}`,
      chuck: first.chuck.name,
      endOut: end,
      grip: {
        diameter: bore.smallest,
        length: bore.to - bore.from,
        on: bore.feature.id,
        protected: true,
        with: 'mandrel',
      },
      held: 'on a mandrel',
      tailstock: false,
      out: Math.abs(jaw - faceAt(part, end)) + facingAllowance,
      gripFrom: bore.from,
      gripTo: bore.to,
      dialIn: tightestBand(part) / 2,
      why: [
        'Held from inside: the ends come square to the bore, and no jaw squeezes the wall.',
        'Turn the mandrel in the chuck to a push fit and leave it there: it runs true only until it is taken out.',
      ],
      cautions: ['Light facing cuts: the mandrel drives by its fit alone, or by a screw and washer at its end.'],
    },
  };
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
