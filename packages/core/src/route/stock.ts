/**
 * The bar to start from: off the rack if one is thick and long enough, else a size that is sold; and the length to cut.
 */
import type { Finding } from '../finding.ts';
import type { Bar, Chuck, Workshop } from '../lathe/schema.ts';
import { findMaterial } from '../materials/find.ts';
import type { PartResult } from '../part/part-result.ts';
import { nextBars } from '../standards/stock/bars.ts';
import type { Mm } from '../units/quantities.ts';
import { cleanUp, facingAllowance, jawClearance, sawKerf } from './practice.ts';
import type { Stock } from './route-result.ts';
import type { RouteWishes } from './schema.ts';

export interface StockChoice {
  readonly stock: Stock;
  readonly findings: readonly Finding[];
}

/** Chooses bar and length for one part; a blank that is turned on both ends needs no length to grip beside it. */
export function chooseStock(
  part: PartResult,
  workshop: Workshop,
  chuck: Chuck,
  wishes: RouteWishes | undefined,
  blank: boolean,
): StockChoice {
  const needed = part.outline.largestDiameter + cleanUp;
  const kerf = partingWidth(workshop);
  const made = [
    { what: 'part', length: part.outline.length },
    { what: 'facing both ends', length: 2 * facingAllowance },
    { what: 'cutting off', length: kerf },
    ...(blank
      ? []
      : [
          { what: 'clear of the jaws', length: jawClearance },
          { what: 'grip', length: chuck.jawLength },
        ]),
  ];
  const length = made.reduce((sum, m) => sum + m.length, 0);
  const asked = wishes?.stockDiameter;
  const onRack = fromRack(part, workshop.bars, asked ?? needed, length, asked);
  const sold = nextBars(needed, 'either', 'drawn')[0]?.diameter;
  const diameter = asked ?? onRack?.diameter ?? sold ?? Math.ceil(needed);
  const density = part.material?.density;
  const findings = [
    ...(asked === undefined && !onRack && sold === undefined ? [notSold(needed)] : []),
    ...stockFindings(part, workshop, chuck, diameter, length, needed),
  ];
  return {
    stock: {
      material: part.material?.commonName ?? 'material not chosen',
      diameter,
      length: Math.ceil(length),
      from: onRack ? 'rack' : 'to buy',
      bar: onRack?.id,
      mass: density === undefined ? undefined : ((Math.PI * diameter ** 2) / 4) * length * density,
      made,
    },
    findings,
  };
}

/** Width of the cut that takes the part off the bar. */
export function partingWidth(workshop: Workshop): Mm {
  const cutter = workshop.cutters.find((c) => c.kind === 'parting');
  return cutter?.width ?? sawKerf;
}

/** The thinnest bar that will do, or the one of exactly the diameter asked for. */
function fromRack(
  part: PartResult,
  bars: readonly Bar[],
  needed: Mm,
  length: Mm,
  asked: Mm | undefined,
): Bar | undefined {
  const grade = part.material?.grade;
  if (grade === undefined) return undefined;
  return bars
    .filter((b) => (asked === undefined ? b.diameter >= needed : Math.abs(b.diameter - asked) < 0.01))
    .filter((b) => b.length >= length && gradeOf(b.material) === grade)
    .toSorted((a, b) => a.diameter - b.diameter)[0];
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
