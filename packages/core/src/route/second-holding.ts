/**
 * The second setup: on which finished surface the work is held when it is turned round, and how far that lets it give.
 */
import type { Chuck, Lathe, Workshop } from '../lathe/schema.ts';
import type { PartResult, Placed } from '../part/part-result.ts';
import type { OutsideSection } from '../part/schema.ts';
import { clamped, deflectionUnderUnitLoad, type MmPerNewton } from '../structure/stepped-beam.ts';
import type { Mm } from '../units/quantities.ts';
import { chuckFor, type End, type Holding, steel, wantsTailstock } from './hold.ts';
import { facingAllowance } from './practice.ts';
import type { RouteWishes } from './schema.ts';
import { beamOut, finishedWork, type Workpiece } from './workpiece.ts';

/** The second setup: turned round and held on a surface finished in the first, or in a bush made for it when nothing can be gripped. */
export function secondHolding(
  part: PartResult,
  workshop: Workshop,
  first: Holding,
  wishes: RouteWishes | undefined,
): Holding {
  const end: End = first.setup.endOut === 'right' ? 'left' : 'right';
  const found = gripSections(part, workshop.lathe, first, end)[0];
  const { section, jaw, length, chuck } = found ?? inBush(first, end);
  const rest = part.outside.filter((s) => !first.sections.includes(s));
  const runout = tightestBand(part);
  const marked = section.feature.role === 'sliding' || section.feature.role === 'sealing';
  const partEnd = end === 'left' ? 0 : part.outline.length;
  return {
    jaw,
    sections: rest,
    chuck,
    blank: false,
    makeshift: found === undefined,
    setup: {
      id: 'setup-2',
      number: 2,
      title: `Turned round, ${end} end out, held ${found ? 'on' : 'in a bush made for'} ${nameOf(section)}`,
      chuck: chuck.name,
      endOut: end,
      grip: { diameter: section.smallest, length, on: section.feature.id, protected: true },
      tailstock: rest.length > 0 && wantsTailstock(part, workshop.lathe, rest, end, jaw, wishes?.tailstock),
      out: Math.abs(jaw - partEnd) + facingAllowance,
      gripFrom: end === 'left' ? jaw : jaw - length,
      gripTo: end === 'left' ? jaw + length : jaw,
      dialIn: runout / 2,
      why: [
        found
          ? `Held on ${nameOf(section)}, finished in the first setup: of the surfaces the jaws can reach it gives way least under the cut.`
          : `Nothing can be gripped as it is: a split bush or soft jaws bored for ${nameOf(section)} would hold it.`,
        `Dial in until the indicator moves less than half the closest tolerance${marked ? '; this is a working surface, so protect it' : ''}.`,
      ],
      cautions: [
        'Protect the finished surface with soft jaws, a split bush or thin sheet. After turning round spin the chuck once by hand.',
      ],
    },
  };
}

function nameOf(section: Placed<OutsideSection>): string {
  const { name, id } = section.feature;
  if (name === undefined) return `the ${id.replaceAll('-', ' ')}`;
  return /^(the|a|an) /i.test(name) ? name : `the ${name}`;
}

/** Where a bush would bear: on the longest section of the first setup. */
function inBush(first: Holding, end: End): GripChoice {
  const section = first.sections.reduce((a, b) => (b.to - b.from > a.to - a.from ? b : a));
  return {
    section,
    jaw: end === 'left' ? section.from : section.to,
    length: Math.min(first.chuck.jawLength, section.to - section.from),
    chuck: first.chuck,
  };
}

interface GripChoice {
  readonly section: Placed<OutsideSection>;
  readonly jaw: Mm;
  readonly length: Mm;
  readonly chuck: Chuck;
}

/** By this much the work behind the grip may be thicker without keeping the jaws off. */
const jawPlay: Mm = 0.02;

/** What goes into the chuck beyond a section when that is gripped. */
function deeperInChuck(part: PartResult, section: Placed<OutsideSection>, end: End): readonly Placed<OutsideSection>[] {
  const at = part.outside.indexOf(section);
  return end === 'left' ? part.outside.slice(at + 1) : part.outside.slice(0, at);
}

/** Cylinders that the jaws can hold, behind which nothing is thicker, the one that gives way least first. Working surfaces count as three times as soft, threads as ten times, short grips by the square of how short they are. */
function gripSections(part: PartResult, lathe: Lathe, first: Holding, end: End): GripChoice[] {
  const finished = finishedWork(part.outline);
  const candidates = first.sections.flatMap((section): (GripChoice & { readonly give: number })[] => {
    if (section.feature.kind !== 'cylinder') return [];
    const chuck = chuckFor(lathe, section.smallest, undefined);
    if (!chuck || section.largest > chuck.to || section.largest < chuck.from) return [];
    const atFace = end === 'left' ? part.outside[0] === section : part.outside.at(-1) === section;
    const clear = atFace ? 2 : 0.5;
    const room = section.to - section.from - clear;
    const length = Math.min(chuck.jawLength, room);
    if (length < Math.min(4, section.largest / 2)) return [];
    if (deeperInChuck(part, section, end).some((s) => s.largest > section.smallest + jawPlay)) return [];
    const jaw = end === 'left' ? section.from + clear : section.to - clear;
    const give = giveAtEnd(part, finished, jaw, end);
    const { role } = section.feature;
    const working = role === 'sliding' || role === 'sealing';
    const threaded = part.threads.some((t) => t.on === section.feature.id);
    const short = Math.max(1, section.largest / length) ** 2;
    return [{ section, jaw, length, chuck, give: give * (working ? 3 : 1) * (threaded ? 10 : 1) * short }];
  });
  return candidates.toSorted((a, b) => a.give - b.give);
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
