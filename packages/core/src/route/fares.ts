/**
 * How cuts of an operation fare on the owner's lathe: the work as it is then, the way it is held, the cutter, and what is known of the
 * lathe, judged together.
 *
 * What was judged once is remembered, so that after a change only operations whose work, holding or cutter changed are judged anew.
 */
import type { Cutter } from '../cutting/cutter.ts';
import { InputError } from '../errors.ts';
import type { Operation as LatheOperation, Setup as LatheSetup } from '../lathe/chain.ts';
import { type Judge, judgeOf, type KnownLathe, knownLathe } from '../lathe/judge.ts';
import type { Lathe, Workshop } from '../lathe/schema.ts';
import type { Mm } from '../units/quantities.ts';
import { type ChosenCut, chooseCut } from './choose-cut.ts';
import type { CutWanted, OnLathe, Setting } from './cut-candidate.ts';
import { heldBeam } from './held-beam.ts';
import type { Holding } from './hold.ts';
import type { Scene } from './outcome.ts';
import { singingBorne } from './practice.ts';
import type { Setup } from './route-result.ts';
import { simplified, type Workpiece } from './workpiece.ts';

/** What is cut, where along the part, and in work of which shape. */
export interface Judged {
  readonly does: LatheOperation;
  readonly cutter: Cutter;
  readonly holding: Holding;
  /** As it stands at the last pass, when it is weakest. */
  readonly work: Workpiece;
  readonly from: Mm;
  readonly to: Mm;
  readonly diameter: Mm;
}

/** Stretches of one thickness that the work is taken to be made of, at most. */
const stretches = 20;
/** Stations along a cut that are looked at. */
const stationCount = 9;
/** Setups that are kept in mind for a lathe; more than the operations of any route. */
const most = 400;

/** What is known of a workshop's lathe; without its tests where these do not fit the workshop. */
export function knownOf(workshop: Workshop): KnownLathe {
  try {
    return knownLathe(workshop);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    const { tests: _tests, ...lathe } = workshop.lathe;
    return knownLathe({ lathe: untested(workshop.lathe, lathe), cutters: workshop.cutters });
  }
}

/** One object for a lathe without its tests, so that it is worked out once too. */
const stripped = new WeakMap<Workshop['lathe'], Workshop['lathe']>();

function untested(lathe: Workshop['lathe'], without: Workshop['lathe']): Workshop['lathe'] {
  const known = stripped.get(lathe);
  if (known) return known;
  stripped.set(lathe, without);
  return without;
}

const judges = new WeakMap<KnownLathe, Map<string, Judge>>();

/** Judges the cuts of an operation; undefined where material, cutter or holding leave too much unknown. */
export function judgeFor({ part, workshop, machining }: Scene, judged: Judged): Judge | undefined {
  const { material } = part;
  if (!material || !machining?.cutData) return undefined;
  const setup = setupOf(material, judged, workshop.lathe.tests?.shank);
  if (!setup) return undefined;
  const known = knownOf(workshop);
  const before = judges.get(known) ?? new Map<string, Judge>();
  judges.set(known, before);
  const key = keyOf(setup, material.grade, judged.cutter);
  const remembered = before.get(key);
  if (remembered) return remembered;
  const judge = judgeOf(known, setup, { cutData: machining.cutData, hardens: machining.hardens });
  if (before.size >= most) before.delete(before.keys().next().value ?? '');
  before.set(key, judge);
  return judge;
}

const chosenBefore = new WeakMap<Judge, Map<string, ChosenCut>>();

/** {@link chooseCut}, remembered with the judge of the operation. */
export function chooseJudged(wanted: CutWanted, judge: Judge | undefined, cutter: Cutter, lathe: Lathe): ChosenCut {
  if (!judge) return chooseCut(wanted, cutter, lathe);
  const before = chosenBefore.get(judge) ?? new Map<string, ChosenCut>();
  chosenBefore.set(judge, before);
  const { diameter, length, total, division, fewestPasses, bendingLimit, finish, feedLimit, speeds } = wanted;
  const key = [
    diameter,
    length,
    total,
    division,
    fewestPasses,
    bendingLimit,
    finish,
    feedLimit,
    speeds.low,
    speeds.high,
  ].join();
  const known = before.get(key);
  if (known) return known;
  const chosen = chooseInFull(wanted, judge, cutter, lathe);
  before.set(key, chosen);
  return chosen;
}

/** Cuts that may turn out to sing too often once all draws are asked, and are chosen anew; the last stands with what it says. */
const looksAgain = 3;

/**
 * The choice by few draws, and the chosen cut judged by all of them. Where that says more than the few did, it is chosen again, with
 * the few put right by as much.
 */
function chooseInFull(wanted: CutWanted, judge: Judge, cutter: Cutter, lathe: Lathe): ChosenCut {
  const { fares } = wanted;
  if (!fares) return chooseCut(wanted, cutter, lathe);
  const inFull = new Map<string, number>();
  const keyOfCut = ({ depth, feed, rpm }: Setting) => [depth, feed, rpm].join();
  let more = 0;
  const asked = (cut: Setting): OnLathe => {
    const few = fares(cut);
    return { ...few, sings: inFull.get(keyOfCut(cut)) ?? Math.min(1, few.sings + more) };
  };
  for (let look = 0; ; look++) {
    const chosen = chooseCut({ ...wanted, fares: asked }, cutter, lathe);
    const { depth, feed, speed } = chosen.numbers;
    const cut = { depth, feed, rpm: speed };
    if (inFull.has(keyOfCut(cut))) return chosen;
    const chance = judge.chance({ depth, feed, speed });
    inFull.set(keyOfCut(cut), chance);
    more = Math.max(more, chance - fares(cut).sings);
    // On the right side either way, nothing else would be chosen: only the number is put right.
    const same = chance > singingBorne === chosen.broken.includes('sings');
    if (same || look === looksAgain) return withChance(chosen, chance);
  }
}

/** A choice with the chance put right. */
function withChance(chosen: ChosenCut, chance: number): ChosenCut {
  const others = chosen.passed.filter((m) => m.limit !== 'sings');
  const passed =
    chance > singingBorne ? [...others, { limit: 'sings' as const, value: chance, most: singingBorne }] : others;
  const broken = passed.map((m) => m.limit);
  return { ...chosen, numbers: { ...chosen.numbers, sings: chance }, passed, broken };
}

function keyOf(setup: LatheSetup, grade: string, cutter: Cutter): string {
  const { work } = setup;
  const shape = work.sections.map((s) => `${s.to.toFixed(5)},${s.outerDiameter.toFixed(5)},${s.innerDiameter ?? 0}`);
  const edge = [cutter.kind, cutter.noseRadius, cutter.approachAngle, cutter.rake, cutter.edge, cutter.overhang];
  const rest = [
    work.youngsModulus,
    cutter.maxDepth,
    cutter.width,
    cutter.barDiameter,
    cutter.bladeHeight,
    setup.diameter,
    work.gripLength,
    work.centreAt,
  ];
  return [setup.operation, grade, ...shape, '|', ...setup.stations.map((z) => z.toFixed(4)), ...edge, ...rest].join(
    ' ',
  );
}

/** An end is faced before the centre comes up to it, and the centre is drawn back before cutting off. */
export function centred({ tailstock }: Pick<Setup, 'tailstock'>, does: LatheOperation): boolean {
  return tailstock && does !== 'facing' && does !== 'parting';
}

function setupOf(
  material: NonNullable<Scene['part']['material']>,
  judged: Judged,
  shank: Mm | undefined,
): LatheSetup | undefined {
  const { cutter, holding, work, does } = judged;
  const { setup, jaw } = holding;
  const { sections: whole, solid = material } = heldBeam(work, holding);
  const sections = simplified(whole, stretches);
  const end = sections.at(-1)?.to ?? 0;
  const usable = end > 0.5 && setup.stiffOver > 0 && cutter.overhang > 0 && judged.diameter > 0;
  if (!usable || (does === 'boring' && !cutter.barDiameter)) return undefined;
  if ((does === 'grooving' || does === 'parting') && !cutter.width) return undefined;
  const place = (z: Mm) => Math.min(end, Math.max(0, setup.endOut === 'right' ? z - jaw : jaw - z));
  const places = Array.from({ length: stationCount }, (_, i) =>
    place(judged.from + ((judged.to - judged.from) * i) / (stationCount - 1)),
  );
  return {
    operation: does,
    work: {
      sections,
      youngsModulus: solid.youngsModulus,
      poissonRatio: solid.poisson,
      density: solid.density,
      gripLength: setup.stiffOver,
      centreAt: centred(setup, does) ? end : undefined,
    },
    cutter: { ...cutter, shank },
    stations: [...new Set(places)],
    diameter: judged.diameter,
  };
}
