/**
 * The bar to start from: off the rack if one is thick and long enough, else a size that is sold; and the length to cut.
 */
import type { Finding } from '../finding.ts';
import type { Bar, Chuck, Workshop } from '../lathe/schema.ts';
import { findMaterial } from '../materials/find.ts';
import type { PartResult } from '../part/part-result.ts';
import { nextBars } from '../standards/stock/bars.ts';
import type { Mm } from '../units/quantities.ts';
import { cuttingList, type PartsFromBar, piecesFromRack, piecesToBuy } from './cutting-list.ts';
import { cleanUp, facingAllowance, jawClearance, sawKerf } from './practice.ts';
import type { SawnPiece, Stock } from './route-result.ts';
import type { RouteWishes } from './schema.ts';

export interface StockChoice {
  readonly stock: Stock;
  readonly findings: readonly Finding[];
}

/** Chooses bar and length for the parts; a blank that is turned on both ends needs no length to grip beside it. */
export function chooseStock(
  part: PartResult,
  workshop: Workshop,
  chuck: Chuck,
  wishes: RouteWishes | undefined,
  blank: boolean,
): StockChoice {
  const needed = part.outline.largestDiameter + cleanUp;
  const kerf = partingWidth(workshop);
  const stub = blank ? 0 : jawClearance + chuck.jawLength;
  const each = part.outline.length + 2 * facingAllowance + kerf;
  const count = wishes?.count ?? 1;
  const asked = wishes?.stockDiameter;
  const wantedAt = (diameter: Mm): PartsFromBar => ({
    count,
    each,
    stub,
    mostInPiece: blank ? 1 : mostInPiece(workshop.lathe, diameter, each, stub),
  });
  const onRack = fromRack(part, workshop.bars, asked ?? needed, wantedAt, asked);
  const sold = nextBars(needed, 'either', 'drawn')[0]?.diameter;
  const diameter = asked ?? onRack?.diameter ?? sold ?? Math.ceil(needed);
  const wanted = wantedAt(diameter);
  const pieces = onRack?.pieces ?? piecesToBuy(wanted);
  const cutting = cuttingList({
    wanted,
    pieces,
    diameter,
    density: part.material?.density,
    machinability: againstSteel(part.material?.machinability),
    partMass: part.mass?.mass,
  });
  const held = pieces.length;
  const times = (what: string, n: number) => (n === 1 ? what : `${what}, ${n} times`);
  const longest = Math.max(...pieces.map((p) => p.length));
  const findings = [
    ...(asked === undefined && !onRack && sold === undefined ? [notSold(needed)] : []),
    ...(count > 1 ? [severalParts(count, pieces)] : []),
    ...stockFindings(part, workshop, chuck, diameter, longest, needed),
  ];
  return {
    stock: {
      material: part.material?.commonName ?? 'material not chosen',
      diameter,
      length: Math.ceil(cutting.length),
      from: onRack ? 'rack' : 'to buy',
      bar: onRack && [...new Set(onRack.pieces.map((p) => p.bar))].join(', '),
      mass: cutting.mass,
      made: [
        { what: times('part', count), length: count * part.outline.length },
        { what: times('facing both ends', count), length: count * 2 * facingAllowance },
        { what: times('cutting off', count), length: count * kerf },
        ...(blank
          ? []
          : [
              { what: times('clear of the jaws', held), length: held * jawClearance },
              { what: times('grip', held), length: held * chuck.jawLength },
            ]),
      ],
      cutting,
    },
    findings,
  };
}

/** Ratings against free-cutting steel only; brass and aluminium are rated among themselves. */
function againstSteel(rated: { readonly percent: number; readonly base: string } | undefined): number | undefined {
  return rated && /1112/.test(rated.base) ? rated.percent : undefined;
}

/** Parts from one piece of bar: as many as go through the spindle, or stand between the centres; one at least. */
function mostInPiece(lathe: Workshop['lathe'], diameter: Mm, each: Mm, stub: Mm): number {
  if (diameter <= lathe.spindleBore) return Number.POSITIVE_INFINITY;
  return Math.max(1, Math.floor((lathe.betweenCentres - stub) / each));
}

function severalParts(count: number, pieces: readonly SawnPiece[]): Finding {
  return {
    id: 'route.several-parts',
    level: 'note',
    stage: 'route',
    at: 'stock',
    says: `${count} parts are made from ${pieces.length === 1 ? 'one piece' : `${pieces.length} pieces`} of bar. Operations, tables and times are those of one part.`,
    because: [],
    remedies: [
      'Do each operation on every part before the dials are set for the next, where the work can be put back true',
    ],
  };
}

/** Width of the cut that takes the part off the bar. */
export function partingWidth(workshop: Workshop): Mm {
  const cutter = workshop.cutters.find((c) => c.kind === 'parting');
  return cutter?.width ?? sawKerf;
}

/** The thinnest bars that will do, or those of exactly the diameter asked for. */
function fromRack(
  part: PartResult,
  bars: readonly Bar[],
  needed: Mm,
  wantedAt: (diameter: Mm) => PartsFromBar,
  asked: Mm | undefined,
): { readonly diameter: Mm; readonly pieces: SawnPiece[] } | undefined {
  const grade = part.material?.grade;
  if (grade === undefined) return undefined;
  const fit = bars
    .filter((b) => (asked === undefined ? b.diameter >= needed : Math.abs(b.diameter - asked) < 0.01))
    .filter((b) => gradeOf(b.material) === grade);
  for (const diameter of [...new Set(fit.map((b) => b.diameter))].toSorted((a, b) => a - b)) {
    const pieces = piecesFromRack(
      fit.filter((b) => b.diameter === diameter),
      wantedAt(diameter),
    );
    if (pieces) return { diameter, pieces };
  }
  return undefined;
}

function notSold(needed: Mm): Finding {
  return {
    id: 'route.no-listed-bar',
    level: 'stop',
    stage: 'route',
    at: 'stock',
    says: 'No bar of this thickness is among the sizes that are listed.',
    because: [{ what: 'diameter needed', value: needed, unit: 'mm' }],
    remedies: ['Ask for a forging, a casting or a disc sawn from plate', 'Enter the bar you have'],
  };
}

function gradeOf(name: string): string | undefined {
  try {
    return findMaterial(name).grade;
  } catch {
    // A bar whose name is not understood is simply not a candidate; the workshop's own check reports the name.
    return undefined;
  }
}

function stockFindings(
  part: PartResult,
  workshop: Workshop,
  chuck: Chuck,
  diameter: Mm,
  length: Mm,
  needed: Mm,
): Finding[] {
  const { lathe } = workshop;
  const findings: Finding[] = [];
  const stop = (id: string, says: string, what: string, value: Mm, limit: Mm, remedies: string[]) =>
    findings.push({
      id,
      level: 'stop',
      stage: 'route',
      at: 'stock',
      says,
      because: [{ what, value, unit: 'mm', limit }],
      remedies,
    });
  if (diameter < part.outline.largestDiameter)
    stop('route.bar-too-thin', 'The bar is thinner than the part.', 'diameter of the bar', diameter, needed, [
      `Use a bar of at least ${needed.toFixed(1)} mm`,
    ]);
  else if (diameter < needed - 0.3)
    findings.push({
      id: 'route.bar-barely-cleans-up',
      level: 'caution',
      stage: 'route',
      at: 'stock',
      says: 'The bar is hardly thicker than the part: it may not clean up all round unless it runs true.',
      because: [{ what: 'diameter of the bar', value: diameter, unit: 'mm', limit: needed, source: 'common-practice' }],
      remedies: ['Dial the bar in before the first cut', `Use a bar of at least ${needed.toFixed(1)} mm`],
    });
  if (lathe.swingOverSlide !== undefined && diameter > lathe.swingOverSlide)
    stop(
      'route.swing-over-slide',
      'The work does not pass over the cross slide.',
      'diameter of the bar',
      diameter,
      lathe.swingOverSlide,
      ['Turn it in front of the slide only, with the cutter far out', 'Have it turned on a larger lathe'],
    );
  if (diameter > lathe.swing)
    stop('route.swing', 'The bar does not swing over the bed.', 'diameter of the bar', diameter, lathe.swing, [
      'Have it turned on a larger lathe',
    ]);
  if (diameter > chuck.to)
    stop(
      'route.chuck-too-small',
      `The ${chuck.name} does not open to this bar.`,
      'diameter of the bar',
      diameter,
      chuck.to,
      ['Use reversed jaws or another chuck, and enter its range'],
    );
  const outOfChuck = part.outline.length + facingAllowance;
  if (outOfChuck > lathe.betweenCentres)
    stop(
      'route.too-long',
      'The part is longer than the lathe.',
      'length that stands out',
      outOfChuck,
      lathe.betweenCentres,
      ['Make it in two pieces and join them', 'Have it turned on a longer lathe'],
    );
  else if (diameter > lathe.spindleBore && length > lathe.betweenCentres)
    stop(
      'route.too-long',
      'The bar is longer than the lathe and too thick for its spindle bore.',
      'length',
      length,
      lathe.betweenCentres,
      ['Saw the blank shorter and hold less of it', 'Make it in two pieces and join them'],
    );
  return findings;
}
