/**
 * What a ring in a groove sees over the whole tolerance range, at one temperature: every extreme of every size is tried.
 */
import { fillByArea, fillByVolume, sectionAfterStretch, squeeze, stretch } from '../standards/seals/groove-formulas.ts';
import type { Celsius, Mm } from '../units/quantities.ts';

export interface Limits {
  readonly max: Mm;
  readonly min: Mm;
}

/** Least, nominal and most of a figure over the tolerances. */
export interface Band {
  readonly min: number;
  readonly nominal: number;
  readonly max: number;
}

export interface GlandFigures {
  /** Groove bottom to mating face, parts centred [mm]. */
  readonly depth: Band;
  /** Squeeze of the free section, as published tables count it [%]. */
  readonly squeeze: Band;
  /** Squeeze of the section that stretch leaves [%]. */
  readonly squeezeStretched: Band;
  /** The same on the slack side, with the part lying against its mate and the groove off centre [mm]. */
  readonly slackSqueeze: Band;
  /** Stretch on the diameter it sits on: groove bottom of a piston, or the rod [%]; negative when loose. */
  readonly stretch: Band;
  /** Stretch while it passes over the land of a piston [%]; absent for a rod gland. */
  readonly assemblyStretch?: Band;
  /** Ring larger outside than the groove of a housing [%]; negative when smaller; absent for a piston gland. */
  readonly outsideInterference?: Band;
  /** Loss of section by stretch, volume kept [%]. */
  readonly sectionLoss: Band;
  /** Fill of the groove by area of the free section, as published limits count it [%]. */
  readonly fill: Band;
  /** Fill of the groove by volume [%]. */
  readonly fillByVolume: Band;
  readonly gap: {
    /** Mating part less land on the diameter [mm]. */
    readonly diametral: Band;
    /** Gap all round when the parts are centred [mm]. */
    readonly radial: Band;
    /** Gap on one side when the parts touch on the other [mm]. */
    readonly radialOneSided: Band;
  };
}

/** The sizes at one temperature. */
export interface GlandSizes {
  readonly kind: 'piston' | 'rod';
  readonly inside: Limits;
  readonly section: Limits;
  readonly groove: Limits;
  readonly mating: Limits;
  readonly carrier: Limits;
  readonly width: Limits;
  /** Offset of the groove from the land [mm]. */
  readonly eccentricity: Mm;
}

interface Corner {
  readonly inside: Mm;
  readonly section: Mm;
  readonly groove: Mm;
  readonly mating: Mm;
  readonly carrier: Mm;
  readonly width: Mm;
}

/** Figures of one combination of sizes. */
function atCorner(kind: 'piston' | 'rod', eccentricity: Mm, c: Corner) {
  const piston = kind === 'piston';
  const depth = piston ? (c.mating - c.groove) / 2 : (c.groove - c.mating) / 2;
  const clearance = piston ? c.mating - c.carrier : c.carrier - c.mating;
  const seat = piston ? c.groove : c.mating;
  const stretched = sectionAfterStretch(c.inside, c.section, seat);
  const outside = c.inside + 2 * c.section;
  return {
    depth,
    squeeze: squeeze(c.section, depth),
    squeezeStretched: squeeze(stretched, depth),
    slackSqueeze: stretched - depth - Math.max(0, clearance) / 2 - eccentricity,
    stretch: stretch(c.inside, seat),
    assemblyStretch: piston ? stretch(c.inside, c.carrier) : Number.NaN,
    outsideInterference: piston ? Number.NaN : (100 * (outside - c.groove)) / outside,
    sectionLoss: (100 * (c.section - stretched)) / c.section,
    fill: fillByArea(c.section, c.width, depth),
    fillByVolume: fillByVolume(
      c.inside,
      c.section,
      Math.min(c.groove, c.mating),
      Math.max(c.groove, c.mating),
      c.width,
    ),
    diametral: clearance,
    radial: clearance / 2,
    radialOneSided: clearance,
  };
}

type Figure = keyof ReturnType<typeof atCorner>;

const middle = (limits: Limits): Mm => (limits.min + limits.max) / 2;

/** Figures over all 64 combinations of extreme sizes; each figure rises or falls steadily with each size, so extremes suffice. */
export function figuresOver(sizes: GlandSizes): GlandFigures {
  const names = ['inside', 'section', 'groove', 'mating', 'carrier', 'width'] as const;
  const at = (pick: (limits: Limits, i: number) => Mm) => {
    const [inside = 0, section = 0, groove = 0, mating = 0, carrier = 0, width = 0] = names.map((name, i) =>
      pick(sizes[name], i),
    );
    return atCorner(sizes.kind, sizes.eccentricity, { inside, section, groove, mating, carrier, width });
  };
  const corners = Array.from({ length: 64 }, (_, bits) =>
    at((limits, i) => ((bits >> i) & 1 ? limits.max : limits.min)),
  );
  const nominal = at(middle);
  const band = (figure: Figure): Band => {
    const values = corners.map((corner) => corner[figure]);
    return { min: Math.min(...values), nominal: nominal[figure], max: Math.max(...values) };
  };
  return {
    depth: band('depth'),
    squeeze: band('squeeze'),
    squeezeStretched: band('squeezeStretched'),
    slackSqueeze: band('slackSqueeze'),
    stretch: band('stretch'),
    ...(sizes.kind === 'piston'
      ? { assemblyStretch: band('assemblyStretch') }
      : { outsideInterference: band('outsideInterference') }),
    sectionLoss: band('sectionLoss'),
    fill: band('fill'),
    fillByVolume: band('fillByVolume'),
    gap: { diametral: band('diametral'), radial: band('radial'), radialOneSided: band('radialOneSided') },
  };
}

/** One temperature and what the gland does at it. */
export interface GlandState extends GlandFigures {
  readonly temperature: Celsius;
}

/** The widest bands over several states; nominal is that of the first. */
export function envelope(states: readonly [GlandState, ...GlandState[]]): GlandFigures {
  const [first] = states;
  const over = (pick: (figures: GlandFigures) => Band | undefined): Band => {
    const bands = states.flatMap((state) => pick(state) ?? []);
    return {
      min: Math.min(...bands.map((band) => band.min)),
      nominal: pick(first)?.nominal ?? Number.NaN,
      max: Math.max(...bands.map((band) => band.max)),
    };
  };
  return {
    depth: over((s) => s.depth),
    squeeze: over((s) => s.squeeze),
    squeezeStretched: over((s) => s.squeezeStretched),
    slackSqueeze: over((s) => s.slackSqueeze),
    stretch: over((s) => s.stretch),
    ...(first.assemblyStretch && { assemblyStretch: over((s) => s.assemblyStretch) }),
    ...(first.outsideInterference && { outsideInterference: over((s) => s.outsideInterference) }),
    sectionLoss: over((s) => s.sectionLoss),
    fill: over((s) => s.fill),
    fillByVolume: over((s) => s.fillByVolume),
    gap: {
      diametral: over((s) => s.gap.diametral),
      radial: over((s) => s.gap.radial),
      radialOneSided: over((s) => s.gap.radialOneSided),
    },
  };
}
