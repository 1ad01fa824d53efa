/** Features of more than one size: cones, crowns, grooves and drives, from the sizes already recovered. */
import { capRadius, capRadiusUncertainty } from '../evidence/gauging.ts';
import type { Finding } from '../finding.ts';
import type { PartResult } from '../part/part-result.ts';
import { externals, keys } from '../standards/drives/hexagon-table.ts';
import type { Mm } from '../units/quantities.ts';
import { mmPerInch } from '../units/quantities.ts';
import type { RecoveredRing, RecoveredSize, RecoveredTaper, RecoverResult } from './recover-result.ts';
import { matchRings } from './rings.ts';
import { matchTapers, taperHalfAngle, taperUncertainty } from './tapers.ts';

type Shapes = Pick<RecoverResult, 'tapers' | 'crowns' | 'rings' | 'drives' | 'findings'>;

interface Estimate {
  readonly value: Mm;
  readonly uncertainty: Mm;
}

/** Size as made from the surest specimen: median, and a quarter of the 95 % interval for its standard uncertainty. */
function estimateOf(sizes: readonly RecoveredSize[], id: string): Estimate | undefined {
  const made = sizes.find((s) => s.of === id)?.made ?? [];
  const [best] = made.toSorted((a, b) => a.wide.high - a.wide.low - (b.wide.high - b.wide.low));
  return best && { value: best.median, uncertainty: Math.max(1e-4, (best.wide.high - best.wide.low) / 4) };
}

export function recoverShapes(part: PartResult | undefined, sizes: readonly RecoveredSize[]): Shapes {
  const of = (feature: string, field: string) => estimateOf(sizes, `${feature}.${field}`);
  const findings: Finding[] = [];
  const tapers: RecoveredTaper[] = [];
  const crowns: RecoverResult['crowns'][number][] = [];
  for (const { feature } of [...(part?.outside ?? []), ...(part?.inside ?? [])]) {
    if (feature.kind === 'cone') {
      const taper = taperOf(
        feature.id,
        of(feature.id, 'startDiameter'),
        of(feature.id, 'endDiameter'),
        of(feature.id, 'length') ?? of(feature.id, 'depth'),
      );
      if (taper) tapers.push(taper);
    }
    if (feature.kind === 'crown') {
      const [foot, height] = [of(feature.id, 'diameter'), of(feature.id, 'length')];
      if (foot && height && height.value > 0)
        crowns.push({
          of: feature.id,
          radius: capRadius(foot.value / 2, height.value),
          uncertainty: capRadiusUncertainty(foot.value / 2, height.value, foot.uncertainty / 2, height.uncertainty),
        });
    }
  }
  return {
    tapers,
    crowns,
    rings: part ? ringsOf(part, of) : [],
    drives: part ? drivesOf(part, of, findings) : [],
    findings,
  };
}

function taperOf(of: string, start?: Estimate, end?: Estimate, length?: Estimate): RecoveredTaper | undefined {
  if (!start || !end || !length || !(length.value > 0)) return undefined;
  const halfAngle = taperHalfAngle(start.value, end.value, length.value);
  const uncertainty = taperUncertainty(
    halfAngle,
    length.value,
    Math.hypot(start.uncertainty, end.uncertainty),
    length.uncertainty,
  );
  return { of, halfAngle, uncertainty, ratio: 2 * Math.tan(halfAngle), matches: matchTapers(halfAngle, uncertainty) };
}

function ringsOf(part: PartResult, of: (feature: string, field: string) => Estimate | undefined): RecoveredRing[] {
  return part.grooves.flatMap(({ feature, side }) => {
    const width = of(feature.id, 'width');
    const floor = of(feature.id, 'floorDiameter');
    const surface = of(feature.on, 'diameter');
    if (!width || !floor || !surface) return [];
    return matchRings({ place: side === 'outside' ? 'outside' : 'inside', width, floor, surface }).map((m) => ({
      of: feature.id,
      ...m,
    }));
  });
}

/** Keys and heads in inches, by the sixteenth and thirty-second: `common practice`. */
const inchFlats = [
  1 / 16,
  5 / 64,
  3 / 32,
  1 / 8,
  5 / 32,
  3 / 16,
  7 / 32,
  1 / 4,
  5 / 16,
  3 / 8,
  7 / 16,
  1 / 2,
  9 / 16,
  5 / 8,
  11 / 16,
  3 / 4,
];

function drivesOf(
  part: PartResult,
  of: (feature: string, field: string) => Estimate | undefined,
  findings: Finding[],
): { of: string; written: string; probability: number }[] {
  return part.notTurned.flatMap((feature) => {
    if (feature.kind !== 'hexagon' && feature.kind !== 'hexagon socket') return [];
    const across = of(feature.id, 'acrossFlats');
    if (!across) return [];
    const isSocket = feature.kind === 'hexagon socket';
    const metric = (isSocket ? keys : externals).map(([size]) => ({ size, written: `${size} mm across flats` }));
    const inch = inchFlats.map((f) => ({ size: f * mmPerInch, written: `${nameOf(f)} in across flats` }));
    // A rounded socket reads large, a rounded head small; what spanner fits is wanted, not what is left of the corners.
    const spread = Math.hypot(across.uncertainty, 0.06, 0.004 * across.value);
    const weighed = [...metric, ...inch].map((c) => ({
      ...c,
      w: Math.exp(-0.5 * ((across.value - c.size) / spread) ** 2),
    }));
    const total = weighed.reduce((sum, c) => sum + c.w, 0.02);
    const likely = weighed
      .map(({ written, w }) => ({ of: feature.id, written, probability: w / total }))
      .filter((d) => d.probability > 0.02)
      .toSorted((a, b) => b.probability - a.probability)
      .slice(0, 4);
    if (likely.length === 0) findings.push(noDrive(feature.id, across));
    return likely;
  });
}

function nameOf(inches: number): string {
  const under = [2, 4, 8, 16, 32, 64].find((n) => Number.isInteger(inches * n)) ?? 64;
  return `${inches * under}/${under}`;
}

function noDrive(at: string, across: Estimate): Finding {
  return {
    id: 'evidence.no-such-drive',
    level: 'note',
    stage: 'evidence',
    at,
    says: 'No listed spanner or key fits these flats.',
    because: [{ what: 'across flats', value: across.value, unit: 'mm' }],
    remedies: ['Measure across another pair of flats', 'Try spanners of both systems on it'],
  };
}
