/**
 * Which part of lathe, work and cutter gives how much of what the edge gives way at a cut.
 *
 * Knowledge: the give of springs in chain and in parallel is homogeneous of degree −1 in all stiffnesses together. So the shares
 * −∂ ln c / ∂ ln k of all parts add up to one (Euler), also with a tailstock beside the chuck; for a plain chain each is
 * the part's own give over the whole.
 */
import type { MmPerNewton } from '../structure/stepped-beam.ts';
import { axialGive, type ClampedWork, clampedWork, type Setup, slides, toolSide, workSide } from './chain.ts';
import { type ElementId, springIds, type Values } from './elements.ts';

export const budgetDirections = ['radial', 'axial', 'tangential'] as const;
export type BudgetDirection = (typeof budgetDirections)[number];

export interface BudgetShare {
  readonly of: ElementId | 'work' | 'cutter';
  /** Of the give at the tool [-]. */
  readonly share: number;
}

/** Step of the derivative, in the logarithm of a stiffness. */
const step = 1e-3;
/** Smaller shares are left out [-]. */
const least = 1e-4;

/** A setup at the place that is cut last, its bending worked out. */
export interface BudgetPlace {
  readonly setup: Setup;
  readonly bending: ClampedWork;
}

export function budgetPlace(setup: Setup): BudgetPlace {
  const farthest = Math.max(...setup.stations);
  return { setup: { ...setup, stations: [farthest] }, bending: clampedWork(setup.work, [farthest]) };
}

/** Give between edge and work in one direction. */
export function giveAlong(values: Values, { setup, bending }: BudgetPlace, direction: BudgetDirection): MmPerNewton {
  const tool = toolSide(values, setup.cutter);
  if (direction === 'axial') {
    const radius = setup.operation === 'facing' ? setup.diameter / 2 : 0;
    return tool.axial + axialGive(values, setup.work.gripLength, radius);
  }
  return (workSide(values, setup.work, bending)[0] ?? 0) + tool[direction];
}

/** Shares of all parts, largest first. */
export function stiffnessBudget(values: Values, place: BudgetPlace, direction: BudgetDirection): BudgetShare[] {
  const whole = giveAlong(values, place, direction);
  const scaled = (id: ElementId, by: number) =>
    Math.log(giveAlong({ ...values, [id]: values[id] * Math.exp(by) }, place, direction));
  const ofLathe = springIds.map((of) => ({ of, share: (scaled(of, -step) - scaled(of, step)) / (2 * step) }));
  const cutter = cutterAlone(values, place, direction) / whole;
  const work = 1 - cutter - ofLathe.reduce((sum, { share }) => sum + share, 0);
  const all: BudgetShare[] = [...ofLathe, { of: 'cutter', share: cutter }, { of: 'work', share: work }];
  return all.filter(({ share }) => share > least).toSorted((a, b) => b.share - a.share);
}

/** Shank or boring bar. */
function cutterAlone(values: Values, { setup }: BudgetPlace, direction: BudgetDirection): MmPerNewton {
  const { toolAxialRatio, toolTangentialRatio } = values;
  const ratio = { radial: 1, axial: toolAxialRatio, tangential: toolTangentialRatio }[direction];
  return toolSide(values, setup.cutter)[direction] - slides(values) / ratio;
}
