/**
 * On a mandrel: turned in the chuck to the bore, the work pressed on it; so ends and outside come true with the bore, and no jaw
 * squeezes the wall. All figures are `common practice`.
 */
import type { Lathe, Workshop } from '../lathe/schema.ts';
import type { PartResult, Placed } from '../part/part-result.ts';
import type { InsideSection } from '../part/schema.ts';
import type { Mm } from '../units/quantities.ts';
import { steel } from './held-beam.ts';
import { chuckFor, type End, type Holding, nameOf, sectionsFrom, throughBore } from './hold.ts';
import { outsideGrowth, pressedPressure, slipMoment } from './mandrel-fit.ts';
import { facingAllowance, setupHandling, unsupportedRatio } from './practice.ts';
import { friction } from './squeeze.ts';

/** Shorter than this, or thinner, a mandrel is not worth making. */
const leastMandrel: Mm = 6;
/** Into a thinner bore the point of a centre does not reach. */
const leastForCentre: Mm = 10;
/** Between the jaws and the work, for the cutter to run out. */
const clearOfJaws: Mm = 6;
/** It ends inside the work by this much, so that the whole end can be faced and the mouth of the bore broken. */
const shortOfFace: Mm = 1;
/** What a firm push leaves of interference where it is tight, on the diameter. */
const pushedOn: Mm = 0.005;

/** The bore that a mandrel can go into: right through, plain, made in the first setup, and nothing left to be made in it. */
export function boreForMandrel(part: PartResult, first: Holding): Placed<InsideSection> | undefined {
  if (!part.outline.through) return undefined;
  const through = first.boresFirst ? throughBore(part) : undefined;
  const here = part.inside.every((s) => s === through || s.side === `inside ${first.setup.endOut}`);
  if (!here) return undefined;
  const [bore] = part.inside
    .filter((s) => s.feature.kind === 'bored' && s.to - s.from >= leastMandrel && s.smallest >= leastMandrel)
    .filter((s) => !part.threads.some((t) => t.on === s.feature.id))
    .toSorted((a, b) => b.to - b.from - (a.to - a.from));
  return bore;
}

/** Everything outside can be turned from one end, towards the chuck. */
export function turnsAllFrom(part: PartResult, end: End): boolean {
  return sectionsFrom(part, end).length === part.outside.length;
}

/** The work turned round on a mandrel, with all of the outside that the first setup left. */
export function onMandrel(part: PartResult, workshop: Workshop, first: Holding, bore: Placed<InsideSection>): Holding {
  const end: End = first.setup.endOut === 'right' ? 'left' : 'right';
  const { length } = part.outline;
  const jaw = end === 'left' ? length + clearOfJaws : -clearOfJaws;
  const sections = part.outside.filter((s) => !first.sections.includes(s));
  const chuck = chuckFor(workshop.lathe, bore.smallest, undefined) ?? first.chuck;
  const reach = (end === 'left' ? jaw - bore.from : bore.to - jaw) - shortOfFace;
  const tailstock = sections.length > 0 && carriesCentre(workshop.lathe, bore, reach);
  const { pressure, outer } = pushFit(part, bore);
  const grows = outer > bore.smallest ? outsideGrowth(pressure, bore.smallest, outer, modulusOf(part)) : 0;
  // Eased towards its end, it is tight over no more than about a diameter.
  const tight = Math.min(bore.to - bore.from, bore.smallest);
  const holds = slipMoment(pressure, bore.smallest, tight, friction);
  const name = nameOf(bore.feature);
  return {
    jaw,
    sections,
    roughs: sections.filter((s) => !first.roughs.includes(s)),
    chuck,
    blank: false,
    makeshift: false,
    boresFirst: first.boresFirst,
    ends: { face: { to: 'length', diameter: faceDiameter(part, first, end) }, centred: false, cutOff: false },
    handling: setupHandling,
    drive: { by: 'the fit on the mandrel', holds },
    needs: [`bar to turn a mandrel of Ø${Number(bore.smallest.toFixed(2))} mm`],
    setup: {
      id: 'setup-2',
      number: 2,
      title: `Turned round, ${end} end out, on a mandrel in ${name}`,
      chuck: chuck.name,
      endOut: end,
      grip: {
        diameter: bore.smallest,
        length: bore.to - bore.from,
        on: bore.feature.id,
        protected: true,
        with: 'mandrel',
      },
      held: 'on a mandrel',
      mandrel: { diameter: bore.smallest, length: reach },
      stiffOver: chuck.jawLength,
      tailstock,
      out: Math.abs(jaw - (end === 'left' ? 0 : length)) + facingAllowance,
      gripFrom: bore.from,
      gripTo: bore.to,
      dialIn: undefined,
      why: [
        sections.length > 0
          ? 'Held from inside: ends and outside come true with the bore all over, and no jaw squeezes the wall.'
          : 'Held from inside: the ends come square to the bore, and no jaw squeezes the wall.',
        'Turn the mandrel in the chuck to a push fit and leave it there: it runs true only until it is taken out.',
        'Leave it a few thousandths of a millimetre thicker towards the chuck, oil it, and push the work on with the tailstock until it drives.',
        ...(grows >= 0.0005
          ? [
              `The push spreads the wall: measured on the mandrel, the outside is about ${grows.toFixed(3)} mm too large.`,
            ]
          : []),
        ...(tailstock
          ? ['Centre the mandrel before the work goes on; bring the tailstock up into it for all turning.']
          : []),
      ],
      cautions: [
        'Light cuts: the mandrel drives by its fit alone. If the work slips, stop; clean both and push it on further, or clamp it with a screw and washer once the end is faced.',
      ],
    },
  };
}

/** A lathe with a centre, a bore that lets it in, and a mandrel that stands out slender enough to need it. */
function carriesCentre(lathe: Lathe, bore: Placed<InsideSection>, reach: Mm): boolean {
  const centre = lathe.tailstock !== undefined && lathe.tailstock.centre !== 'none';
  return centre && bore.smallest >= leastForCentre && reach > unsupportedRatio * 0.5 * bore.smallest;
}

/** What is left unturned at that end is still as thick as the bar. */
export function faceDiameter(part: PartResult, first: Holding, end: End): Mm {
  const last = end === 'left' ? part.outside[0] : part.outside.at(-1);
  return last && first.sections.includes(last)
    ? last.largest
    : (first.ends.face?.diameter ?? part.outline.largestDiameter);
}

/** Pressure of the push fit where the wall round the bore is thinnest, and how thick the ring is there. */
function pushFit(part: PartResult, bore: Placed<InsideSection>): { readonly pressure: number; readonly outer: Mm } {
  const over = part.outside.filter((s) => s.from < bore.to && s.to > bore.from).map((s) => s.smallest);
  const outer = Math.min(...over);
  if (!(outer > bore.largest)) return { pressure: 0, outer };
  const ring = { youngsModulus: modulusOf(part), poisson: part.material?.poisson ?? steel.poisson };
  return {
    pressure: pressedPressure({ bore: bore.largest, outer, interference: pushedOn, ring, plug: steel }),
    outer,
  };
}

function modulusOf({ material }: PartResult): number {
  return material?.youngsModulus ?? steel.youngsModulus;
}
