/**
 * The inspection of the finished part: what to measure with which gauge, within which drawn-in limits, and what the readings say.
 */

import type { Duty } from '../duty/schema.ts';
import { touchOf, weightedMean } from '../evidence/gather.ts';
import { gaugeHabit, permissibleError, serves, type Touch } from '../evidence/gauge-error.ts';
import type { Gauge, Inspection } from '../evidence/schema.ts';
import { weigh } from '../evidence/uncertainty.ts';
import type { Finding } from '../finding.ts';
import type { Dimension, PartResult } from '../part/part-result.ts';
import type { Mm } from '../units/quantities.ts';
import { conformityProbability, decide, guardBand } from './decide.ts';
import type { InspectionResult, InspectionRow } from './inspect-result.ts';
import { proofTests } from './proof-tests.ts';

/** Expansion assumed where the material is not known: steel. */
const steel = 11.5e-6;

/**
 * @param part  the part with its limits
 * @param duty  duty as entered, for the proof tests
 * @param gauges  gauges of the workshop
 * @param inspection  readings taken on the new part, if any
 */
export function inspect(
  part: PartResult,
  duty: Duty | undefined,
  gauges: readonly Gauge[],
  inspection: Inspection | undefined,
): InspectionResult {
  const expansion = part.material?.expansion ?? steel;
  const rows = part.dimensions.map((d) => inspectOne(d, gauges, inspection, expansion));
  return { rows, proofTests: proofTests(part, duty), findings: rows.flatMap(findingsOf) };
}

/** The gauge on hand with the smallest uncertainty for this dimension. */
function bestGauge(gauges: readonly Gauge[], touch: Touch, size: Mm): Gauge | undefined {
  return gauges
    .filter((g) => serves(g, touch, size))
    .toSorted((a, b) => permissibleError(a, size, touch) - permissibleError(b, size, touch) || step(a) - step(b))[0];
}

function step(gauge: Gauge): Mm {
  return gauge.resolution ?? gaugeHabit(gauge.kind).resolution;
}

function inspectOne(
  dimension: Dimension,
  gauges: readonly Gauge[],
  inspection: Inspection | undefined,
  expansion: number,
): InspectionRow {
  const touch = touchOf(dimension.kind);
  // Radii and small edges are compared with a radius gauge or by eye; they have no number to weigh.
  const judged = dimension.kind !== 'radius' && dimension.kind !== 'edge' && dimension.max > dimension.min;
  const best = judged ? bestGauge(gauges, touch, dimension.nominal) : undefined;
  const planned =
    best && weigh({ id: 'planned', of: dimension.id, value: dimension.nominal }, best, touch, expansion).uncertainty;
  const band = planned === undefined ? undefined : guardBand(planned);
  const readings = (inspection?.readings ?? [])
    .filter((r) => r.of === dimension.id)
    .map((r) => weigh(r, gauges.find((g) => g.id === r.gauge) ?? best, touch, expansion));
  const measured = readings.map((r) => r.value);
  const plan = {
    dimension: dimension.id,
    title: dimension.title,
    nominal: dimension.nominal,
    max: dimension.max,
    min: dimension.min,
    gauge: judged ? best?.name : 'radius gauge or by eye',
    expanded: planned === undefined ? undefined : 2 * planned,
    acceptMax: band === undefined ? undefined : dimension.max - band,
    acceptMin: band === undefined ? undefined : dimension.min + band,
    measured,
  };
  if (readings.length === 0 || !judged)
    return { ...plan, value: undefined, probability: undefined, decision: 'not measured' };
  const { value, uncertainty } = worstOf(readings, dimension);
  return {
    ...plan,
    value,
    probability: conformityProbability(value, uncertainty, dimension.min, dimension.max),
    decision: decide(value, uncertainty, dimension.min, dimension.max),
  };
}

/**
 * Readings of one place are averaged; a surface is judged by its worst place, because it must conform everywhere.
 */
function worstOf(readings: readonly ReturnType<typeof weigh>[], dimension: Dimension): { value: Mm; uncertainty: Mm } {
  const places = new Map<string, ReturnType<typeof weigh>[]>();
  for (const r of readings) {
    const place = `${r.reading.along ?? ''}/${r.reading.angle ?? ''}`;
    places.set(place, [...(places.get(place) ?? []), r]);
  }
  const means = [...places.values()].map((place) => {
    const mean = weightedMean(place);
    const shared = Math.min(...place.map((r) => r.budget.find((b) => b.from === 'error of the gauge')?.share ?? 0));
    return { value: mean.value, uncertainty: Math.max(mean.uncertainty, shared) };
  });
  const chance = (m: { value: Mm; uncertainty: Mm }) =>
    conformityProbability(m.value, m.uncertainty, dimension.min, dimension.max);
  return means.reduce((worst, m) => (chance(m) < chance(worst) ? m : worst));
}

function findingsOf(row: InspectionRow): Finding[] {
  const at = row.dimension;
  const noRoom = row.acceptMax !== undefined && row.acceptMin !== undefined && row.acceptMax <= row.acceptMin;
  const findings: Finding[] = [];
  if (noRoom)
    findings.push({
      id: 'inspection.gauge-too-coarse',
      level: 'caution',
      stage: 'inspection',
      at,
      says: `With the ${row.gauge ?? 'gauge'} on hand no reading can prove that this size is within its limits.`,
      because: [
        {
          what: 'expanded uncertainty (k = 2)',
          value: row.expanded ?? 0,
          unit: 'mm',
          limit: (row.max - row.min) / 2,
          source: 'ISO14253-1',
        },
      ],
      remedies: [
        'Borrow a finer gauge for this one size',
        'Try it against the mate or a ring, plug or pin of known size',
      ],
    });
  if (row.gauge === undefined)
    findings.push({
      id: 'inspection.no-gauge',
      level: 'note',
      stage: 'inspection',
      at,
      says: 'No gauge entered in the workshop reaches this size.',
      because: [{ what: 'size', value: row.nominal, unit: 'mm' }],
      remedies: ['Enter the gauge in the workshop', 'Check it against the original or the mate'],
    });
  if (row.value !== undefined && row.decision === 'does not conform')
    findings.push({
      id: 'inspection.out-of-limits',
      level: 'stop',
      stage: 'inspection',
      at,
      says: 'The finished size is out of its limits.',
      because: [
        {
          what: 'measured',
          value: row.value,
          unit: 'mm',
          limit: row.value > row.max ? row.max : row.min,
          source: 'ISO14253-1',
        },
      ],
      remedies:
        row.value > row.max
          ? ['If it is an outside size, take off the rest', 'If it is a bore, the mate may be matched to it']
          : ['Consider whether the mate can be matched to it', 'Make it again'],
    });
  if (row.value !== undefined && row.decision === 'cannot be decided')
    findings.push({
      id: 'inspection.undecided',
      level: 'caution',
      stage: 'inspection',
      at,
      says: 'The reading is too near a limit to say whether the size conforms.',
      because: [
        {
          what: 'probability of being within the limits',
          value: row.probability ?? 0,
          unit: '',
          limit: 0.95,
          source: 'ISO14253-1',
        },
      ],
      remedies: ['Measure again at several places', 'Use the finer gauge'],
    });
  return findings;
}
