/**
 * Between centres: a sawn blank is faced and centred on both ends in the chuck, then turned from one end and, end for end, from the
 * other, driven by a dog. Everything turned so runs true with everything else. No holes at the ends, no facing to the axis, no cutting
 * off, and the dog needs its place. All figures are `common practice`.
 */
import type { Chuck, Workshop } from '../lathe/schema.ts';
import type { PartResult, Placed } from '../part/part-result.ts';
import type { OutsideSection } from '../part/schema.ts';
import type { MmPerNewton } from '../structure/stepped-beam.ts';
import type { Mm, Newton } from '../units/quantities.ts';
import { centreAsGrip } from './held-beam.ts';
import {
  type End,
  facedRatio,
  giveOver,
  type Holding,
  isFacedFarOut,
  nameOf,
  sectionsFrom,
  shortestBlankGrip,
  slender,
  takesCentre,
} from './hold.ts';
import { facingAllowance, finishingAllowance, jawClearance, setupHandling } from './practice.ts';
import { friction } from './squeeze.ts';
import { finishedWork } from './workpiece.ts';

/** Width of a small dog. */
const dogWidth: Mm = 8;
/** Beside it nothing is turned: the dog and room for the cutter to run out. */
const dogRoom: Mm = dogWidth + jawClearance;
/** Push of the screw of a dog, tightened by hand over sheet. */
const dogPush: Newton = 3000;
/** Shorter than this many diameters, slide and cutter have no room beside dog and tailstock. */
const stubbyRatio = 3;
/** An end stands out this far for facing and centring, where the work goes back into the spindle. */
const outForFacing: Mm = 12;

/** Setups that make a part between centres, with what tells them from others. */
export interface BetweenCentres {
  readonly holdings: readonly [Holding, ...Holding[]];
  readonly mark: 'working surface' | undefined;
  readonly farOut: boolean;
  readonly stubby: boolean;
  /** In the middle of what is turned, finished. */
  readonly give: MmPerNewton;
}

/**
 * The setups between centres that turn `end` first.
 *
 * @returns undefined where the part or the lathe does not allow it
 */
export function betweenCentres(
  part: PartResult,
  workshop: Workshop,
  chuck: Chuck,
  diameter: Mm,
  end: End,
): BetweenCentres | undefined {
  const { lathe } = workshop;
  const other: End = end === 'right' ? 'left' : 'right';
  const centred = lathe.tailstock !== undefined && lathe.tailstock.centre !== 'none';
  const solid = part.inside.length === 0 && takesCentre(part, 'left') && takesCentre(part, 'right');
  if (!centred || !solid || part.outline.length + 2 * facingAllowance > lathe.betweenCentres) return undefined;
  const sections = turnedFirst(part, end);
  const dogOn = end === 'right' ? part.outside.at(-1) : part.outside[0];
  if (!sections || !dogOn || !carriesDog(part, dogOn)) return undefined;
  const rest = part.outside.filter((s) => !sections.includes(s));
  if (!isReached(part, rest, other) || diameter < chuck.from || diameter > chuck.to) return undefined;
  const farOut = diameter > lathe.spindleBore;
  const blank = { part, chuck, diameter, farOut };
  const roughs = roughedInChuck(blank, rest, other);
  const blanks = [inChuck(blank, end, 1, []), inChuck(blank, other, 2, roughs)];
  const [dogFirst] = other === 'left' ? rest : rest.toReversed();
  const rough = roughs.length > 0 && dogFirst ? dogFirst.largest + finishingAllowance : diameter;
  const turned = [
    between(part, chuck, end, 3, { sections, roughs: sections }, undefined, rough),
    between(part, chuck, other, 4, { sections: rest, roughs: rest.filter((s) => !roughs.includes(s)) }, dogOn, rough),
  ];
  const [first, ...others] = [...blanks, ...turned];
  if (!first || blanks.some((b) => b.setup.grip.length < shortestBlankGrip)) return undefined;
  const work = finishedWork(part.outline);
  return {
    holdings: [first, ...others],
    mark: dogOn.feature.role === 'sliding' || dogOn.feature.role === 'sealing' ? 'working surface' : undefined,
    farOut: blanks.some((b) => isFacedFarOut(b.setup)),
    stubby: part.outline.length < stubbyRatio * part.outline.largestDiameter,
    give: Math.max(...turned.map((h) => giveOver(part, work, h, 0, part.outline.length))),
  };
}

/** Sections turned first: up to the thickest, but never so far that the dog has no place at the other end. */
function turnedFirst(part: PartResult, end: End): readonly Placed<OutsideSection>[] | undefined {
  const fromFree = end === 'right' ? part.outside.toReversed() : part.outside;
  const reached = sectionsFrom(part, end);
  const taken = fromFree.filter((s) => reached.includes(s));
  const roomLeft = () => {
    const last = taken.at(-1);
    return last ? (end === 'right' ? last.from : part.outline.length - last.to) : 0;
  };
  while (taken.length > 0 && roomLeft() < dogRoom) taken.pop();
  if (taken.length === 0) return undefined;
  return part.outside.filter((s) => taken.includes(s));
}

/** Nothing but cylinders thins towards the dog, where a cutter from the free end could not follow it. */
function isReached(part: PartResult, rest: readonly Placed<OutsideSection>[], end: End): boolean {
  const reached = sectionsFrom(part, end);
  return rest.every((s) => s.feature.kind === 'cylinder' || reached.includes(s));
}

/** A plain cylinder without a thread, long enough for the dog. */
function carriesDog(part: PartResult, { feature, from, to }: Placed<OutsideSection>): boolean {
  const threaded = part.threads.some((t) => t.on === feature.id);
  const grooved = part.grooves.some((g) => g.side === 'outside' && g.feature.on === feature.id);
  return feature.kind === 'cylinder' && !threaded && !grooved && to - from >= dogWidth;
}

interface Blank {
  readonly part: PartResult;
  readonly chuck: Chuck;
  readonly diameter: Mm;
  /** Too thick for the spindle: all of it but the grip stands out. */
  readonly farOut: boolean;
}

/**
 * What is turned last between the centres is roughed before in the chuck, so that nothing heavy is left when the dog sits on a finished
 * surface; not where that would stand out too far to be faced.
 */
function roughedInChuck({ part, diameter, farOut }: Blank, rest: readonly Placed<OutsideSection>[], end: End) {
  const far = end === 'left' ? Math.max(...rest.map((s) => s.to)) : Math.min(...rest.map((s) => s.from));
  const out = (end === 'left' ? far : part.outline.length - far) + jawClearance;
  return farOut || out + facingAllowance <= facedRatio * diameter ? rest : [];
}

/** A blank in the chuck, one end faced and centred: pushed back into the spindle as far as what is roughed there lets it. */
function inChuck(
  { part, chuck, diameter, farOut }: Blank,
  end: End,
  number: number,
  roughs: readonly Placed<OutsideSection>[],
): Holding {
  const { length } = part.outline;
  // Of the sawn blank the end in the chuck may still carry its facing allowance.
  const behind = length + (number === 1 ? facingAllowance : 0);
  const roughed = Math.max(0, ...roughs.map((s) => (end === 'left' ? s.to : length - s.from) + jawClearance));
  const out = farOut
    ? Math.max(behind - chuck.jawLength, roughed, jawClearance)
    : Math.max(outForFacing, diameter, roughed);
  const held = Math.min(chuck.jawLength, behind - out);
  const jaw = end === 'right' ? length - out : out;
  const tailstock = slender(roughs, end, jaw);
  return {
    jaw,
    sections: [],
    roughs,
    chuck,
    blank: true,
    makeshift: false,
    boresFirst: false,
    ends: { face: { to: number === 1 ? 'clean' : 'length', diameter }, centred: true, cutOff: false },
    handling: setupHandling / 3,
    needs: [],
    setup: {
      id: `setup-${number}`,
      number,
      title: `${number === 1 ? 'Sawn blank' : 'Turned round'} in the chuck, ${end} end out, to be centred${roughs.length > 0 ? ' and roughed' : ''}`,
      chuck: chuck.name,
      endOut: end,
      grip: { diameter, length: Math.max(0, held), on: 'blank', protected: false },
      held: 'in the chuck',
      stiffOver: Math.max(0, held),
      tailstock,
      out: out + facingAllowance,
      gripFrom: end === 'right' ? jaw - held : jaw,
      gripTo: end === 'right' ? jaw : jaw + held,
      dialIn: undefined,
      why: [
        'Both ends are faced and centred before anything is turned: from then on the two centre holes are what the part runs true to.',
        ...(farOut || roughs.length > 0 ? [] : ['Pushed back into the spindle, so that the end stands out stoutly.']),
        ...(roughs.length > 0
          ? ['This side is roughed here, where jaws drive it: between the centres only light cuts are left for it.']
          : []),
      ],
      cautions: [],
    },
  };
}

/** Between the centres, one end at the tailstock and the dog on the other. */
function between(
  part: PartResult,
  chuck: Chuck,
  end: End,
  number: number,
  turned: Pick<Holding, 'sections' | 'roughs'>,
  dogOn: Placed<OutsideSection> | undefined,
  diameter: Mm,
): Holding {
  const { length } = part.outline;
  const [gripFrom, gripTo] = end === 'right' ? [0, dogWidth] : [length - dogWidth, length];
  const dog = dogOn?.smallest ?? diameter;
  const name = dogOn && nameOf(dogOn.feature);
  return {
    jaw: end === 'right' ? 0 : length,
    ...turned,
    chuck,
    blank: true,
    makeshift: false,
    boresFirst: false,
    ends: { face: undefined, centred: false, cutOff: false },
    drive: dogOn && { by: 'the dog, over thin sheet', holds: dogHolds(dogOn.smallest) },
    handling: number === 3 ? setupHandling : setupHandling / 3,
    needs: ['centre for the spindle nose', `dog for Ø${Number(dog.toFixed(2))} mm`],
    setup: {
      id: `setup-${number}`,
      number,
      title: name
        ? `Turned end for end between centres, ${end} end at the tailstock, dog on ${name}`
        : `Between centres, ${end} end at the tailstock`,
      chuck: 'driving plate',
      endOut: end,
      grip: {
        diameter: dog,
        length: dogWidth,
        on: dogOn?.feature.id ?? 'blank',
        protected: dogOn !== undefined,
        with: dogOn ? 'thin sheet' : undefined,
      },
      held: 'between centres',
      stiffOver: centreAsGrip,
      tailstock: true,
      out: length,
      gripFrom,
      gripTo,
      dialIn: undefined,
      why: dogOn
        ? [
            'The same two centres carry it again: what is turned now runs true with what was turned before, without dialling in.',
            `The dog sits on ${name}, finished before, with thin sheet between.`,
          ]
        : [
            'Everything turned between the same two centres runs true with everything else.',
            'The dog sits on the end that is finished later: what its screw marks comes off there. File it a small flat.',
            'Try the centre in the spindle nose with the indicator, or turn its point true where it is soft.',
            'Line up the tailstock first: a light cut over the length must leave both ends of one diameter.',
          ],
      cautions: [
        'The dog throws sleeves and fingers: turn the spindle once by hand with the cutter at its nearest, and keep clear of the driving plate.',
        'Work that warms grows longer and tightens between the centres: slacken and set the tailstock again, and grease a dead centre.',
      ],
    },
  };
}

/**
 * Moment at which a dog slips: its screw presses the work into a notch of a right angle, so that three places rub.
 *
 *     T = μ F d/2 (1 + √2)
 */
function dogHolds(diameter: Mm): number {
  return ((friction * dogPush * diameter) / 2) * (1 + Math.SQRT2);
}
