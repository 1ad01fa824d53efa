/**
 * The duty stage: fits with the mates, seals over their tolerance range, bonded joints, pairs of materials.
 */
import { DomainError, InputError } from '../errors.ts';
import type { Finding } from '../finding.ts';
import { findMaterial } from '../materials/find.ts';
import type { Material } from '../materials/material.ts';
import { pairFindings } from '../materials/pairs.ts';
import type { Dimension, PartResult } from '../part/part-result.ts';
import { fit } from '../standards/fits/fit.ts';
import { sizeLimits } from '../standards/fits/toleranced-size.ts';
import { findORing } from '../standards/seals/o-ring.ts';
import type { Mm } from '../units/quantities.ts';
import type { BondMaterial } from './bond-factors.ts';
import { bondedForce, bondedTorque } from './bonded-joint.ts';
import type { DutyCheck, DutyFigure, DutyResult, FitCheck } from './duty-result.ts';
import type { GlandResult } from './gland.ts';
import { glandOverTolerance } from './gland.ts';
import type { Limits } from './gland-figures.ts';
import type { HeldLimit } from './gland-limits.ts';
import type { Bond, Duty, Mate, Seal } from './schema.ts';
import { type GlandWorked, workedBond, workedFit, workedGland } from './worked.ts';

/** Everything a duty check may lean on. */
interface Case {
  readonly part: PartResult;
  readonly mates: readonly Mate[];
  readonly duty: Duty | undefined;
}

/** What the part must do, and whether it will. */
export function assessDuty(part: PartResult, mates: readonly Mate[], duty: Duty | undefined): DutyResult {
  const situation = { part, mates, duty };
  const fits = mates.map((mate) => checkFit(situation, mate));
  const seals = (duty?.seals ?? []).map((seal) => guarded(seal.id, () => checkSeal(situation, seal)));
  const bonds = (duty?.bonds ?? []).map((bond) => guarded(bond.id, () => checkBond(situation, bond)));
  const pairs = mates.map((mate) => checkPair(situation, mate));
  const all = [...fits, ...seals, ...bonds, ...pairs];
  return {
    fits: fits.flatMap((f) => (f.fit ? [f.fit] : [])),
    checks: [...seals, ...bonds].flatMap((c) => (c.check ? [c.check] : [])),
    findings: all.flatMap((a) => a.findings),
  };
}

interface Answer {
  readonly check?: DutyCheck;
  readonly findings: readonly Finding[];
}

/** Outside a formula's range or with an unreadable name a check answers with a finding instead of figures. */
function guarded(at: string, check: () => Answer): Answer {
  try {
    return check();
  } catch (error) {
    if (!(error instanceof DomainError || error instanceof InputError)) throw error;
    return {
      findings: [
        {
          id: 'duty.cannot-check',
          level: 'caution',
          stage: 'duty',
          at,
          says: `This cannot be checked: ${error.message}.`,
          because: [],
          remedies: [],
        },
      ],
    };
  }
}

function missing(at: string, says: string): Answer {
  return { findings: [{ id: 'duty.missing', level: 'note', stage: 'duty', at, says, because: [], remedies: [] }] };
}

/** Limits of a mate; without stated limits its size is taken as it was measured. */
function mateLimits(mate: Mate): Limits | undefined {
  return mate.size && sizeLimits(mate.size, undefined);
}

function checkFit({ part }: Case, mate: Mate): Answer & { fit?: FitCheck } {
  const dimension = part.dimensions.find((d) => d.id === mate.with);
  const limits = mateLimits(mate);
  if (!dimension)
    return {
      findings: [
        {
          id: 'duty.mate-without-dimension',
          level: 'caution',
          stage: 'duty',
          at: mate.id,
          says: `The mate ${mate.name} meets ${mate.with}, which the part does not have.`,
          because: [],
          remedies: ['Enter that feature', 'Correct the name in the mate'],
        },
      ],
    };
  if (!limits) return missing(mate.id, `The size of the mate ${mate.name} is not entered: its fit cannot be checked.`);
  const own = { max: dimension.max, min: dimension.min };
  const [bore, shaft] = mate.kind === 'bore' ? [limits, own] : [own, limits];
  const result = fit(bore, shaft);
  const { least, most, kind } = { least: result.minClearance, most: result.maxClearance, kind: result.kind };
  const says = `${part.name} in ${mate.name}: ${kind}`;
  return {
    fit: { mate: mate.id, dimension: dimension.id, kind, least, most, says, worked: workedFit(bore, shaft) },
    findings: wantedFindings(mate, dimension, least, most),
  };
}

function wantedFindings(mate: Mate, dimension: Dimension, least: Mm, most: Mm): Finding[] {
  if (!mate.wanted) return [];
  const tight = least < mate.wanted.least - 1e-9;
  const loose = most > mate.wanted.most + 1e-9;
  if (!tight && !loose) return [];
  return [
    {
      id: 'duty.fit-not-as-wanted',
      level: 'caution',
      stage: 'duty',
      at: dimension.id,
      says: `The fit with ${mate.name} can come out ${tight ? 'tighter' : 'looser'} than wanted.`,
      because: [
        tight
          ? { what: 'least clearance', value: least, unit: 'mm', limit: mate.wanted.least }
          : { what: 'most clearance', value: most, unit: 'mm', limit: mate.wanted.most },
      ],
      remedies: [
        'Choose other limits for this size',
        'Match it to the mate as it is today and write that down as a decision',
      ],
    },
  ];
}

function checkSeal(situation: Case, seal: Seal): Answer {
  const { part, mates, duty } = situation;
  const groove = part.grooves.find((g) => g.feature.id === seal.groove);
  const mate = mates.find((m) => m.id === seal.mate);
  const mating = mate && mateLimits(mate);
  const floor = part.dimensions.find((d) => d.id === `${seal.groove}.floorDiameter`);
  const width = part.dimensions.find((d) => d.id === `${seal.groove}.width`);
  if (!groove || !floor || !width)
    return missing(seal.id, `The groove ${seal.groove} of this seal is not (fully) entered.`);
  if (!mate || !mating) return missing(seal.id, `What this seal runs against, ${seal.mate}, has no size yet.`);
  const carrier = part.dimensions.find((d) => d.id === `${groove.feature.on}.diameter`);
  if (!carrier) return missing(seal.id, `The diameter beside the groove ${seal.groove} is not entered.`);
  const kind = mate.kind === 'bore' ? 'piston' : 'rod';
  const ring = findORing(seal.ring);
  const worked = workedGland({ kind, ring, groove: floor, mating, carrier, width });
  const result = glandOverTolerance({
    ring,
    hardness: seal.hardness,
    kind,
    motion: seal.motion,
    grooveDiameter: floor,
    matingDiameter: mating,
    carrierDiameter: carrier,
    grooveWidth: width,
    grooveRadius: groove.feature.floorRadius,
    pressure: duty?.pressure ?? 0,
    temperature: duty?.temperature && { min: duty.temperature.from, max: duty.temperature.to },
    elastomer: seal.elastomer,
    medium: duty?.medium,
    at: seal.groove,
  });
  return {
    check: {
      id: seal.id,
      title: `${seal.ring} in ${groove.feature.name ?? seal.groove} against ${mate.name}`,
      kind: 'seal',
      figures: glandFigures(result, worked),
      notes: [`Rests on values ${standingInWords(result.standing)}.`],
      sources: result.sources,
    },
    findings: result.findings,
  };
}

function standingInWords(standing: string): string {
  return standing === 'read' ? 'that were read in print' : `of which the weakest is ${standing}`;
}

function glandFigures(result: GlandResult, worked: GlandWorked): DutyFigure[] {
  const held = (id: string) => result.limits.filter((l) => l.id.startsWith(id));
  const figure = (
    what: string,
    unit: string,
    band: { min: number; nominal: number; max: number },
    id: keyof GlandWorked,
  ): DutyFigure => {
    const limits = held(id);
    return {
      what,
      unit,
      low: band.min,
      typical: band.nominal,
      high: band.max,
      limit: asLimit(limits),
      verdict: verdictOf(limits),
      worked: worked[id],
    };
  };
  return [
    figure('squeeze', '%', result.squeeze, 'squeeze'),
    figure('stretch', '%', result.stretch, 'stretch'),
    figure('fill of the groove', '%', result.fill, 'fill'),
    figure('gap on the diameter', 'mm', result.gap.diametral, 'gap'),
  ];
}

function asLimit(limits: readonly HeldLimit[]): DutyFigure['limit'] {
  const worst = limits.find((l) => !l.holds && l.level !== 'note') ?? limits.find((l) => l.holds) ?? limits[0];
  return worst && { least: worst.least, most: worst.most, source: worst.source };
}

/** A limit of level `note` is good advice, not a judgement. */
function verdictOf(limits: readonly HeldLimit[]): DutyFigure['verdict'] {
  if (limits.length === 0) return 'not judged';
  const broken = limits.filter((l) => !l.holds && l.level !== 'note');
  if (broken.length === 0) return 'good';
  return broken.some((l) => l.level === 'stop') ? 'bad' : 'marginal';
}

function checkBond({ part, duty }: Case, bond: Bond): Answer {
  const input = {
    diameter: bond.diameter,
    length: bond.length,
    strength: bond.strength,
    gap: bond.gap,
    materials: bondMaterials(part.material),
    temperature: duty?.temperature?.to,
    conditions: 'unproved' as const,
    at: bond.feature,
  };
  const results = [
    ...(bond.torque !== undefined || bond.force === undefined ? [bondedTorque(input, bond.torque)] : []),
    ...(bond.force === undefined ? [] : [bondedForce(input, bond.force)]),
  ];
  return {
    check: {
      id: bond.id,
      title: `Bonded joint of ${bond.feature.replaceAll('-', ' ')}`,
      kind: 'bond',
      figures: results.flatMap((r): DutyFigure[] => [
        {
          what: r.unit === 'N' ? 'force it carries' : 'torque it carries',
          unit: r.unit,
          ...r.capacity,
          verdict: 'not judged',
          worked: workedBond(bond, r),
        },
        ...(r.safety
          ? [
              {
                what: 'safety against the duty',
                unit: '',
                ...r.safety,
                limit: { least: r.safetyWanted.typical, source: 'bond-MEM' as const },
                verdict:
                  r.safety.low >= r.safetyWanted.typical
                    ? ('good' as const)
                    : r.safety.low >= 1
                      ? ('marginal' as const)
                      : ('bad' as const),
              },
            ]
          : []),
      ]),
      notes: [...new Set(results.flatMap((r) => [...r.advice]))],
      sources: [...new Set(results.flatMap((r) => [...r.sources]))],
    },
    findings: results.flatMap((r) => [...r.findings]),
  };
}

/** The class of surface a retaining compound sees on a material; undefined where no factor is held. */
function bondMaterials(material: Material | undefined): BondMaterial[] | undefined {
  const family = material?.family ?? '';
  const found: readonly (readonly [RegExp, BondMaterial])[] = [
    [/stainless/, 'stainless steel'],
    [/cast iron/, 'cast iron'],
    [/brass|bronze|copper|gunmetal/, 'brass, bronze, copper'],
    [/aluminium/, 'aluminium'],
    [/steel/, 'steel'],
  ];
  const match = found.find(([pattern]) => pattern.test(family));
  return match && [match[1]];
}

function checkPair({ part, duty }: Case, mate: Mate): Answer {
  if (!part.material || mate.material === undefined) return { findings: [] };
  const { material } = part;
  return guarded(mate.id, () => ({
    findings: pairFindings(material, findMaterial(mate.material ?? ''), {
      surroundings: duty?.medium === undefined ? 'normal' : 'harsh',
      at: mate.id,
      stage: 'duty',
    }),
  }));
}
