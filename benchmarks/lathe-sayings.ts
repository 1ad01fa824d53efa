/** Sayings of the trade held against the model, none of them used to set it. Rows of the plausibility page. */
import type { Operation, Setup } from '@sparewright/core/lathe/chain';
import { type CutVerdict, judgeCut } from '@sparewright/core/lathe/cut-verdict';
import type { CuttingTool } from '@sparewright/core/lathe/cutting-tool';
import { latheKnowledge } from '@sparewright/core/lathe/knowledge';
import { prepareSetup } from '@sparewright/core/lathe/prepare-setup';
import type { Workshop } from '@sparewright/core/lathe/schema';
import { heldBar, materialOf } from '@sparewright/core/lathe/workshop-known';

/** A cut in the plainest words. */
interface Plain {
  readonly operation?: Operation;
  readonly material?: string;
  readonly diameter?: number;
  readonly out?: number;
  readonly bore?: number;
  readonly cutter?: string;
  readonly changed?: Partial<CuttingTool>;
  readonly depth: number;
  readonly feed?: number;
  readonly speed: number;
  readonly tailstock?: boolean;
  readonly swing?: number;
}

export interface Held {
  readonly saying: string;
  readonly source: string;
  readonly shows: string;
  readonly agrees: boolean;
}

const percent = (share: number) => `${Math.round(100 * share)} %`;
/** Chances that differ by less are not told apart: one draw in 32, and a half for luck. */
const same = 0.045;
/** What is called going: as in the verdicts. */
const goes = 0.25;

export function sayingsHeld(workshop: Workshop): Held[] {
  const judged = (plain: Plain): CutVerdict => judge(workshop, plain);
  const sings = (plain: Plain) => judged(plain).chatter.probability;
  const pin = { diameter: 10, out: 40, cutter: 'rough' } as const;

  const quieter = (saying: string, source: string, what: readonly [string, string], from: Plain, to: Plain): Held => {
    const [before, after] = [sings(from), sings(to)];
    const shows = `${what[0]} ${percent(before)}, ${what[1]} ${percent(after)}`;
    return { saying, source, shows, agrees: after < before - same };
  };
  const range = (saying: string, source: string, cuts: readonly Plain[], name: (cut: Plain) => string): Held => {
    const chances = cuts.map(sings);
    const shows = cuts.map((cut, i) => `${name(cut)} ${percent(chances[i] ?? 1)}`).join(', ');
    return { saying, source, shows, agrees: chances.every((c) => c <= goes) };
  };
  const mm = (cut: Plain) => `${cut.depth} mm`;
  const bar = (cut: Plain) => `${(cut.out ?? 0) / (cut.diameter ?? 1)} diameters`;
  const deep = { ...pin, depth: 0.3, speed: 2000 } as const;
  const typicals = 'machine-typicals.csv';
  const remedies = 'methods.md §10';
  const bored = (material: 'steel' | 'carbide', diameters: number): Plain => ({
    operation: 'boring',
    diameter: 12,
    bore: 12,
    out: 25,
    cutter: 'rough',
    depth: 0.1,
    speed: 500,
    changed: {
      kind: 'boring',
      barDiameter: 8,
      overhang: 8 * diameters,
      noseRadius: 0.2,
      edge: 'sharp',
      ...(material === 'carbide' ? { barModulus: 600_000, barDensity: 14.5e-6 } : {}),
    },
  });
  return [
    quieter('a lower speed is quieter', remedies, ['2000 rpm', '200 rpm'], deep, { ...deep, speed: 200 }),
    quieter(
      'the same on a long pin',
      remedies,
      ['1250 rpm', '200 rpm'],
      { ...deep, out: 70, speed: 1250 },
      { ...deep, out: 70, speed: 200 },
    ),
    quieter(
      'a smaller nose radius is quieter',
      remedies,
      ['0.8 mm', '0.2 mm'],
      { ...deep, changed: { noseRadius: 0.8 } },
      { ...deep, changed: { noseRadius: 0.2 } },
    ),
    quieter(
      'an edge square to the axis is quieter than one at 45°',
      remedies,
      ['45°', '90°'],
      { ...deep, depth: 0.5, changed: { approachAngle: 45, noseRadius: 0.1 } },
      { ...deep, depth: 0.5, changed: { approachAngle: 90, noseRadius: 0.1 } },
    ),
    quieter(
      'more feed is quieter, as the chip’s force grows less',
      remedies,
      ['0.03 mm a turn', '0.12 mm a turn'],
      { ...deep, feed: 0.03 },
      { ...deep, feed: 0.12 },
    ),
    quieter(
      'less depth is quieter',
      remedies,
      ['0.5 mm', '0.05 mm'],
      { ...deep, depth: 0.5 },
      { ...deep, depth: 0.05 },
    ),
    quieter(
      'a supported bar is quieter',
      remedies,
      ['free', 'on the centre'],
      { ...deep, out: 60, depth: 0.1, speed: 800 },
      { ...deep, out: 60, depth: 0.1, speed: 800, tailstock: true },
    ),
    range(
      'mild steel, steel cutter: 0.2 to 0.75 mm on a 180 mm lathe',
      typicals,
      [0.2, 0.75].map((depth) => ({
        ...pin,
        diameter: 20,
        cutter: 'finish',
        material: 'S275JR',
        depth,
        feed: 0.1,
        speed: 400,
      })),
      mm,
    ),
    range(
      'brass: 0.5 to 1.5 mm',
      typicals,
      [0.5, 1.5].map((depth) => ({
        ...pin,
        diameter: 20,
        cutter: 'finish',
        material: 'CuZn39Pb3',
        depth,
        feed: 0.1,
        speed: 800,
        changed: { maxDepth: 2, rake: 0 },
      })),
      mm,
    ),
    range(
      'aluminium: 0.5 to 1.5 mm',
      typicals,
      [0.5, 1.5].map((depth) => ({
        ...pin,
        diameter: 20,
        cutter: 'finish',
        material: '6082',
        depth,
        feed: 0.1,
        speed: 800,
        changed: { maxDepth: 2 },
      })),
      mm,
    ),
    range(
      'mild steel: 0.5 to 1.5 mm on a 250 mm lathe',
      typicals,
      [0.5, 1.5].map((depth) => ({
        ...pin,
        diameter: 25,
        cutter: 'rough',
        material: 'S275JR',
        swing: 250,
        depth,
        feed: 0.1,
        speed: 315,
        changed: { maxDepth: 2 },
      })),
      mm,
    ),
    range(
      'work out by 3 to 5 diameters goes with light cuts',
      typicals,
      [30, 40, 50].map((out) => ({ ...pin, out, cutter: 'finish', depth: 0.1, speed: 800 })),
      bar,
    ),
    range(
      'steel boring bars go to 3 to 4 diameters',
      typicals,
      [3, 4].map((d) => bored('steel', d)),
      (c) => `${(c.changed?.overhang ?? 0) / 8} diameters`,
    ),
    quieter(
      'a carbide bar goes further than a steel one',
      typicals,
      ['steel, 6 diameters', 'carbide, 6 diameters'],
      bored('steel', 6),
      bored('carbide', 6),
    ),
    range(
      'parting blades of 1 to 2 mm, slowly',
      typicals,
      [1, 2].map((depth) => ({
        ...pin,
        operation: 'parting',
        diameter: 12,
        out: 12,
        cutter: 'part',
        depth,
        feed: 0.03,
        speed: 125,
      })),
      mm,
    ),
  ];
}

function judge(workshop: Workshop, plain: Plain): CutVerdict {
  const { diameter = 10, out = 40, material = '303', operation = 'turning', bore, swing } = plain;
  const lathe = swing === undefined ? workshop.lathe : { ...workshop.lathe, swing };
  const { joint } = latheKnowledge({ ...workshop, lathe });
  const base = workshop.cutters.find((c) => c.id === plain.cutter);
  if (!base) throw new Error(`no cutter ${plain.cutter}`);
  const outer = bore ? 2 * bore : diameter;
  const held = heldBar({ diameter: outer, length: out, grip: 18, material, tailstock: plain.tailstock ?? false }, 300);
  const plunge = operation === 'parting' || operation === 'grooving';
  const setup: Setup = {
    operation,
    work: bore ? { ...held, sections: held.sections.map((s) => ({ ...s, innerDiameter: bore })) } : held,
    cutter: { ...base, ...plain.changed },
    stations: plunge ? [out / 2] : Array.from({ length: 40 }, (_, i) => 1 + (i * (out - 1)) / 39),
    diameter,
  };
  const { depth, feed = 0.05, speed } = plain;
  return judgeCut(prepareSetup(joint, setup, materialOf(material)), lathe, { depth, feed, speed });
}
