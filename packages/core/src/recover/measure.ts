/** One size from its readings as written to evidence for every design: weighed, screened, made ready. */
import { touchOf } from '../evidence/gather.ts';
import type { Gauge, Reading } from '../evidence/schema.ts';
import { weigh } from '../evidence/uncertainty.ts';
import type { Finding } from '../finding.ts';
import { sizeLimits } from '../standards/fits/toleranced-size.ts';
import type { Mm } from '../units/quantities.ts';
import { screen } from './conflicts.ts';
import {
  isDiameter,
  isShaftLike,
  type RecoverFeature,
  type RecoverMate,
  statedOf,
  unnamedFeature,
} from './features.ts';
import type { Turn } from './posterior.ts';
import { ready } from './prepare.ts';
import type { Measured, RecoverInput } from './recover-input.ts';
import { sizeEvidence } from './size.ts';

/** Expansion taken where the material is not known: steel, per kelvin. */
const steelExpansion = 11.5e-6;

export interface Context {
  readonly input: RecoverInput;
  readonly features: readonly RecoverFeature[];
  readonly mates: readonly RecoverMate[];
  readonly hands: ReadonlyMap<string, Mm>;
}

export function measure(
  of: string,
  readings: readonly Reading[],
  { input, features, mates, hands }: Context,
  findings: Finding[],
): Measured | undefined {
  const mate = mates.find((m) => `${m.id}.size` === of);
  const feature = mate ? featureOfMate(mate, features) : (features.find((f) => f.id === of) ?? unnamedFeature(of));
  const turn: Turn = isShaftLike(feature.kind) ? 1 : -1;
  const expansion = input.part?.material?.expansion ?? steelExpansion;
  const weighed = readings.map((r) =>
    weigh(
      r,
      input.gauges.find((g) => g.id === r.gauge),
      touchOf(feature.kind),
      mate ? steelExpansion : expansion,
      hands.get(r.gauge ?? ''),
    ),
  );
  const screened = screen(of, weighed, feature.entered, turn);
  findings.push(...screened.findings);
  const { readings: prepared, joined } = ready(screened.kept, turn);
  if (joined.length > 0) findings.push(repeated(of, joined));
  const manual = input.evidence?.manual?.find((m) => m.of === of)?.size;
  const ofMate = mate?.size?.tolerance.kind === 'class' ? mate.size : undefined;
  const evidence = sizeEvidence(prepared, {
    role: feature.role,
    isShaft: turn === 1,
    isDiameter: isDiameter(feature.kind),
    stated: statedOf(manual ?? ofMate),
  });
  if (!evidence) {
    findings.push(nothingToGoBy(of, readings.length));
    return undefined;
  }
  return { feature, turn, kept: screened.kept, evidence, mate };
}

function featureOfMate(mate: RecoverMate, features: readonly RecoverFeature[]): RecoverFeature {
  const partner = features.find((f) => f.id === mate.with);
  return {
    id: `${mate.id}.size`,
    title: mate.name,
    kind: mate.kind === 'bore' ? 'inside diameter' : 'outside diameter',
    role: partner?.role ?? 'free',
    entered: mate.size?.nominal,
  };
}

function repeated(of: string, joined: readonly (readonly string[])[]): Finding {
  return {
    id: 'evidence.same-place-twice',
    level: 'note',
    stage: 'evidence',
    at: of,
    says: `Readings ${joined.map((ids) => ids.join(' and ')).join('; ')} of ${of} are of one place: together they count as one reading, better repeated.`,
    because: [],
    remedies: ['Measure a further place: that tells more about wear'],
  };
}

function nothingToGoBy(of: string, count: number): Finding {
  return {
    id: 'evidence.nothing-to-go-by',
    level: 'note',
    stage: 'evidence',
    at: of,
    says: `${count === 1 ? 'The one reading' : `None of the ${count} readings`} of ${of} can be used: damaged, or set aside.`,
    because: [],
    remedies: ['Measure a place that is not damaged'],
  };
}

/** Without limits a size as entered is taken for one by calliper. */
const enteredError: Mm = 0.02;
const enteredGauge = 'as-entered-';

/**
 * Mates that nobody measured in this job but whose size is entered: as a reading of today in the middle of the limits, good to their half.
 */
export function enteredMates(
  mates: readonly RecoverMate[],
  measured: ReadonlySet<string>,
): { readings: Reading[]; gauges: Gauge[] } {
  const readings: Reading[] = [];
  const gauges: Gauge[] = [];
  for (const { id, size } of mates) {
    if (!size || measured.has(`${id}.size`)) continue;
    const { min, max } = sizeLimits(size, undefined);
    const half = (max - min) / 2;
    const gauge = `${enteredGauge}${id}`;
    gauges.push({
      id: gauge,
      name: 'size as entered',
      kind: 'calliper',
      resolution: 0.001,
      permissibleError: half > 0 ? half : enteredError,
    });
    readings.push({ id: `${id}-as-entered`, of: `${id}.size`, value: (min + max) / 2, gauge, condition: 'unsure' });
  }
  return { readings, gauges };
}

/** Whether a reading stands for a size that was entered, not measured. */
export function isEntered(reading: Reading): boolean {
  return reading.gauge?.startsWith(enteredGauge) === true;
}
