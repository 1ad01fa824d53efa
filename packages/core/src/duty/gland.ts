/**
 * A ring in its groove, over the tolerances of every size and over temperature, held against the published limits.
 *
 * Knowledge: rings are squeezed between the groove bottom and the mating part, stretched over what they sit on, and must have
 * room to be displaced into; the gap beside the groove must be too small for the pressure to push the ring into.
 * Not reckoned: swelling in the medium, compression set, pressure growth of the bore, roughness.
 */
import { DomainError } from '../errors.ts';
import { type Finding, worstFirst } from '../finding.ts';
import type { SourceKey } from '../sources/register.ts';
import { elastomerExpansion } from '../standards/seals/elastomer.ts';
import { makerSectionLoss } from '../standards/seals/groove-formulas.ts';
import { type Standing, weakest } from '../standards/small-parts/standing.ts';
import type { Celsius, Mm } from '../units/quantities.ts';
import { envelope, figuresOver, type GlandFigures, type GlandState, type Limits } from './gland-figures.ts';
import { glandFindings } from './gland-findings.ts';
import type { GlandInput } from './gland-input.ts';
import { heldLimits } from './gland-limits.ts';
import type { HeldLimit } from './gland-rule.ts';

/** Bands are the widest over all temperatures given; nominal is at 20 °C. */
export interface GlandResult extends GlandFigures {
  /** At 20 °C, then at the coldest and the hottest if given. */
  readonly states: readonly GlandState[];
  /** Loss of section as a ring maker's polynomial has it, at nominal stretch [%]; absent above 25 % stretch. */
  readonly makerSectionLoss?: number;
  readonly limits: readonly HeldLimit[];
  readonly findings: readonly Finding[];
  readonly sources: readonly SourceKey[];
  /** The least trusted value the answer rests on. */
  readonly standing: Standing;
}

const reference: Celsius = 20;
/** Where the expansion of rubber comes from. */
const warmedBy: readonly SourceKey[] = ['mem-elastomers'];
/** Linear expansion of plain steel [1/K], from memory. */
const steel = 11.5e-6;
/** Linear expansion where the rubber is not named or not remembered [1/K]: the largest of the common ones. */
const rubber = 1.8e-4;

const scaled = (limits: Limits, factor: number): Limits => ({ min: limits.min * factor, max: limits.max * factor });
const around = (value: Mm, tolerance: Mm): Limits => ({ min: value - tolerance, max: value + tolerance });

/** Figures of the gland at one temperature; rubber and metal grow from 20 °C. */
export function glandAt(input: GlandInput, temperature: Celsius): GlandState {
  const rise = temperature - reference;
  const ring = 1 + rise * ((input.elastomer === undefined ? undefined : elastomerExpansion(input.elastomer)) ?? rubber);
  const carrier = 1 + rise * (input.expansion?.carrier ?? steel);
  const mating = 1 + rise * (input.expansion?.mating ?? steel);
  const figures = figuresOver({
    kind: input.kind,
    inside: scaled(around(input.ring.insideDiameter, input.ring.insideTolerance), ring),
    section: scaled(around(input.ring.section, input.ring.sectionTolerance), ring),
    groove: scaled(input.grooveDiameter, carrier),
    mating: scaled(input.matingDiameter, mating),
    carrier: scaled(input.carrierDiameter, carrier),
    width: scaled(input.grooveWidth, carrier),
    eccentricity: input.eccentricity ?? 0,
  });
  return { temperature, ...figures };
}

/**
 * Squeeze, stretch, fill and gap of a ring in its groove over all tolerances and temperatures, and what is wrong with them.
 *
 *     L = |mating − groove| / 2;  s = (W − L) / W;  x = (D − ID) / ID;  fill = (π/4) W² / (B L);  gap = mating − land
 *
 * @param input  ring, groove, mating part, pressure and medium; lengths in mm, pressure in MPa, temperatures in °C
 * @returns bands of every figure, the limits they are held against, and findings
 * @throws DomainError when a size is impossible: the groove leaves no depth, a least size is above a greatest
 * Sources: [usseal-2], [usseal-4] and [seals-physics] for the formulas; each limit names its own.
 * @valid round ring in a rectangular groove, parts round
 */
export function glandOverTolerance(input: GlandInput): GlandResult {
  refuseImpossible(input);
  const temperatures = input.temperature ? [input.temperature.min, input.temperature.max] : [];
  const states: [GlandState, ...GlandState[]] = [
    glandAt(input, reference),
    ...temperatures.map((t) => glandAt(input, t)),
  ];
  const figures = envelope(states);
  const warmed = temperatures.some((t) => t !== reference);
  const limits = heldLimits(input, states[0], figures);
  return {
    ...figures,
    states,
    ...(figures.stretch.nominal <= 25 && { makerSectionLoss: makerSectionLoss(figures.stretch.nominal) }),
    limits,
    findings: worstFirst(glandFindings(input, figures, limits)),
    sources: [...new Set([...input.ring.sources, ...(warmed ? warmedBy : []), ...limits.map((limit) => limit.source)])],
    standing: weakest([
      input.ring.status,
      ...(warmed ? (['from memory'] as const) : []),
      ...limits.map((limit) => limit.standing),
    ]),
  };
}

function refuseImpossible(input: GlandInput): void {
  const named = {
    grooveDiameter: input.grooveDiameter,
    matingDiameter: input.matingDiameter,
    carrierDiameter: input.carrierDiameter,
    grooveWidth: input.grooveWidth,
  };
  for (const [name, limits] of Object.entries(named)) {
    if (!(limits.min > 0 && Number.isFinite(limits.max)))
      throw new DomainError(`${name}.min`, limits.min, 'more than 0 mm');
    if (limits.max < limits.min)
      throw new DomainError(`${name}.max`, limits.max, `at least the smallest, ${limits.min} mm`);
  }
  const { grooveDiameter: groove, matingDiameter: mating } = input;
  if (input.kind === 'piston' && groove.max >= mating.min) {
    throw new DomainError('grooveDiameter.max', groove.max, `less than the bore, ${mating.min} mm`);
  }
  if (input.kind === 'rod' && groove.min <= mating.max) {
    throw new DomainError('grooveDiameter.min', groove.min, `more than the rod, ${mating.max} mm`);
  }
  if (!(input.pressure >= 0)) throw new DomainError('pressure', input.pressure, 'at least 0 MPa');
  if (input.temperature && input.temperature.max < input.temperature.min) {
    throw new DomainError(
      'temperature.max',
      input.temperature.max,
      `at least the coldest, ${input.temperature.min} °C`,
    );
  }
}
