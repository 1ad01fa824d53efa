/**
 * Brings the readings of each dimension together: the best estimate from protected places, and what wear can be concluded.
 */
import type { Finding } from '../finding.ts';
import type { Dimension } from '../part/part-result.ts';
import type { Mm } from '../units/quantities.ts';
import type { EvidenceResult, Gathered, Weighed } from './evidence-result.ts';
import type { Touch } from './gauge-error.ts';
import { handsOf } from './repeatability.ts';
import type { Evidence, Gauge, Reading } from './schema.ts';
import { weigh } from './uncertainty.ts';

/** What a dimension's kind asks of the gauge. */
export function touchOf(kind: Dimension['kind'] | undefined): Touch {
  switch (kind) {
    case 'inside diameter':
    case 'width':
      return 'inside';
    case 'depth':
      return 'depth';
    case 'length':
      return 'length';
    default:
      return 'outside';
  }
}

/**
 * Mean of readings weighted by their uncertainty, widened when they scatter more than their uncertainties explain.
 *
 *     x̄ = Σ wᵢxᵢ / Σ wᵢ,  wᵢ = 1/uᵢ²;  u² = max(1, χ²/(n−1)) / Σ wᵢ
 *
 * @param values  readings and their standard uncertainties [mm]
 * @returns best estimate and its standard uncertainty [mm]
 * @source GUM clause 5
 * @valid independent readings; the common error of one gauge is not averaged away: `u` never falls below the smallest single gauge error / √3
 * @example weightedMean([{ value: 5, uncertainty: 0.01 }, { value: 5.02, uncertainty: 0.01 }]).value → 5.010
 */
export function weightedMean(values: readonly Pick<Weighed, 'value' | 'uncertainty'>[]): {
  value: Mm;
  uncertainty: Mm;
} {
  const weights = values.map((v) => 1 / v.uncertainty ** 2);
  const sum = weights.reduce((a, b) => a + b, 0);
  const value = values.reduce((total, v, i) => total + v.value * (weights[i] ?? 0), 0) / sum;
  const chiSquare = values.reduce((total, v, i) => total + (weights[i] ?? 0) * (v.value - value) ** 2, 0);
  const scatter = values.length > 1 ? Math.max(1, chiSquare / (values.length - 1)) : 1;
  return { value, uncertainty: Math.sqrt(scatter / sum) };
}

/** Pitch and crest of a thread are measured, though the part has no such dimension. */
const isOfThread = (of: string) => /\.(pitch|crest)$/.test(of);

/** Points of a curved section: `bowl.profile` its diameters at places along, `dome.depths` its depths at distances from the axis. */
export function curveReading(of: string): { feature: string; kind: 'profile' | 'depths' } | undefined {
  const [, feature = '', kind] = /^(.+)\.(profile|depths)$/.exec(of) ?? [];
  return kind === 'profile' || kind === 'depths' ? { feature, kind } : undefined;
}

/** Dimension ids whose larger value means more material: shafts and the like. A mate has an id of its own: `mate.size`. */
function wearsSmaller(kind: Dimension['kind'] | undefined): boolean {
  return kind !== 'inside diameter' && kind !== 'width';
}

/**
 * Evidence of a job: every reading with its uncertainty, gathered by dimension.
 *
 * @param evidence  specimens and readings
 * @param gauges  gauges of the workshop
 * @param dimensions  dimensions of the part as far as known, for what kind each one is and what was decided
 * @param mates  mates with their kind, so that readings of them are understood
 * @param expansion  expansion of the part's material [1/K]
 */
export function gatherEvidence(
  evidence: Evidence | undefined,
  gauges: readonly Gauge[],
  dimensions: readonly Dimension[],
  mates: readonly { readonly id: string; readonly kind: 'bore' | 'shaft' }[],
  expansion: number,
): EvidenceResult {
  const byDimension = new Map<string, Reading[]>();
  for (const r of evidence?.readings ?? []) byDimension.set(r.of, [...(byDimension.get(r.of) ?? []), r]);
  const findings: Finding[] = [];
  const hands = handsOf(evidence?.readings ?? []);
  const gathered = [...byDimension].map(([of, readings]) => {
    const dimension = dimensions.find((d) => d.id === of);
    const mate = mates.find((m) => `${m.id}.size` === of);
    if (!dimension && !mate && dimensions.length > 0 && !isOfThread(of) && !curveReading(of))
      findings.push(unknownDimension(of, readings));
    const kind = mate ? (mate.kind === 'bore' ? 'inside diameter' : 'outside diameter') : dimension?.kind;
    const touch = touchOf(kind);
    const weighed = readings.map((r) => {
      const gauge = gauges.find((g) => g.id === r.gauge);
      if (r.gauge !== undefined && !gauge) findings.push(unknownGauge(r));
      return weigh(r, gauge, touch, expansion, hands.get(r.gauge ?? ''));
    });
    // Sizes at different places are no readings of one size.
    if (curveReading(of)) return { of, readings: weighed };
    return gatherOne(of, weighed, wearsSmaller(kind), dimension, findings);
  });
  return { gathered, findings };
}

function gatherOne(
  of: string,
  readings: readonly Weighed[],
  smaller: boolean,
  dimension: Dimension | undefined,
  findings: Finding[],
): Gathered {
  const good = readings.filter((r) => r.reading.condition === 'protected');
  // Damage, corrosion and plating can add material: such readings bound nothing.
  const usable = readings.filter((r) => !['damaged', 'corroded', 'plated'].includes(r.reading.condition ?? 'unsure'));
  const values = usable.map((r) => (smaller ? r.value - 2 * r.uncertainty : r.value + 2 * r.uncertainty));
  const bound =
    values.length === 0
      ? undefined
      : smaller
        ? ({ kind: 'at least', value: Math.max(...values) } as const)
        : ({ kind: 'at most', value: Math.min(...values) } as const);
  const mean = good.length === 0 ? undefined : floored(weightedMean(good), good);
  const estimate = mean && { ...mean, expanded: 2 * mean.uncertainty };
  const worn = usable.filter((r) => r.reading.condition === 'worn').map((r) => r.value);
  const wear =
    estimate && worn.length > 0
      ? Math.max(0, smaller ? estimate.value - Math.min(...worn) : Math.max(...worn) - estimate.value)
      : undefined;
  if (estimate) findings.push(...scatterFindings(of, good), ...wornBeyond(of, estimate, usable, smaller));
  if (dimension && estimate) findings.push(...disagreements(dimension, estimate));
  if (dimension && !estimate && bound) findings.push(...boundFindings(dimension, bound));
  return { of, readings, estimate, bound, wear };
}

/** Readings with one gauge share its error: averaging does not remove it. */
function floored(mean: { value: Mm; uncertainty: Mm }, readings: readonly Weighed[]): { value: Mm; uncertainty: Mm } {
  const shared = readings.map((r) => r.budget.find((b) => b.from === 'error of the gauge')?.share ?? 0);
  return { value: mean.value, uncertainty: Math.max(mean.uncertainty, Math.min(...shared)) };
}

function scatterFindings(of: string, good: readonly Weighed[]): Finding[] {
  const spread = Math.max(...good.map((g) => g.value)) - Math.min(...good.map((g) => g.value));
  const expected = 4 * Math.hypot(...good.map((g) => g.uncertainty)) * Math.SQRT1_2;
  if (good.length < 2 || spread <= expected) return [];
  return [
    {
      id: 'evidence.protected-readings-disagree',
      level: 'caution',
      stage: 'evidence',
      at: of,
      says: 'Readings at protected places differ by more than the gauges explain: one place may be worn, or one reading wrong.',
      because: [{ what: 'spread of the readings', value: spread, unit: 'mm', limit: expected, source: 'GUM' }],
      remedies: ['Measure both places again with the better gauge', 'Mark the doubtful place as unsure or worn'],
    },
  ];
}

function wornBeyond(
  of: string,
  estimate: { value: Mm; uncertainty: Mm },
  usable: readonly Weighed[],
  smaller: boolean,
): Finding[] {
  return usable
    .filter((r) => r.reading.condition !== 'protected')
    .filter((r) => {
      const beyond = smaller ? r.value - estimate.value : estimate.value - r.value;
      return beyond > 2 * Math.hypot(r.uncertainty, estimate.uncertainty);
    })
    .map((r) => ({
      id: 'evidence.worn-place-is-fuller',
      level: 'caution' as const,
      stage: 'evidence' as const,
      at: of,
      says: `Reading ${r.reading.id} at a place not marked protected has more material than the protected places. Wear only takes off.`,
      because: [
        { what: `reading ${r.reading.id}`, value: r.value, unit: 'mm', limit: estimate.value },
        { what: 'its expanded uncertainty', value: 2 * r.uncertainty, unit: 'mm', source: 'GUM' as const },
      ],
      remedies: ['Look for a burr, plating or corrosion there', 'Check whether the protected place is really unworn'],
    }));
}

function disagreements(dimension: Dimension, estimate: { value: Mm; uncertainty: Mm }): Finding[] {
  const above = estimate.value - dimension.max;
  const below = dimension.min - estimate.value;
  const off = Math.max(above, below);
  if (off <= 2 * estimate.uncertainty) return [];
  return [
    {
      id: 'evidence.size-differs-from-original',
      level: 'caution',
      stage: 'evidence',
      at: dimension.id,
      says: `The protected places of the original measure ${above > below ? 'more' : 'less'} than the limits chosen for the new part.`,
      because: [
        {
          what: 'best estimate of the original',
          value: estimate.value,
          unit: 'mm',
          limit: above > below ? dimension.max : dimension.min,
        },
        { what: 'expanded uncertainty (k = 2)', value: 2 * estimate.uncertainty, unit: 'mm', source: 'GUM' },
      ],
      remedies: [
        'Choose limits that hold the measured size',
        'Write down as a decision why the new part is to differ (honed bore, matched mate)',
      ],
    },
  ];
}

function boundFindings(dimension: Dimension, bound: NonNullable<Gathered['bound']>): Finding[] {
  const broken = bound.kind === 'at least' ? bound.value > dimension.max : bound.value < dimension.min;
  if (!broken) return [];
  return [
    {
      id: 'evidence.size-against-wear',
      level: 'caution',
      stage: 'evidence',
      at: dimension.id,
      says: `The original must have been ${bound.kind} this size before it wore, which the limits chosen do not allow.`,
      because: [
        {
          what: `as-made size ${bound.kind}`,
          value: bound.value,
          unit: 'mm',
          limit: bound.kind === 'at least' ? dimension.max : dimension.min,
        },
      ],
      remedies: ['Choose other limits', 'Look for a burr or dirt where it was measured'],
    },
  ];
}

function unknownDimension(of: string, readings: readonly Reading[]): Finding {
  return {
    id: 'evidence.unknown-dimension',
    level: 'note',
    stage: 'evidence',
    at: readings[0]?.id ?? of,
    says: `${readings.length === 1 ? 'A reading is' : `${readings.length} readings are`} of ${of}, which the part does not have (yet).`,
    because: [],
    remedies: ['Enter that feature', 'Correct the name of the dimension in the reading'],
  };
}

function unknownGauge(reading: Reading): Finding {
  return {
    id: 'evidence.unknown-gauge',
    level: 'caution',
    stage: 'evidence',
    at: reading.id,
    says: `Gauge ${reading.gauge ?? ''} is not in the workshop; the reading is weighed as from a calliper.`,
    because: [],
    remedies: ['Enter the gauge in the workshop', 'Correct the name of the gauge in the reading'],
  };
}
