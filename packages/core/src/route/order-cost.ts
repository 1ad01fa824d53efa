/**
 * What an order of operations costs, in seconds: changes of cutter, dialling anew, and what is lost on average when something goes
 * wrong. All figures are `common practice`; only their proportions steer the order.
 */
import type { Second } from '../units/quantities.ts';
import { type OperationKind, operationKinds } from './operation-kinds.ts';
import type { Ordered } from './precedence.ts';

/** Taking a cutter out, putting another in at height, and touching the work with it. */
const cutterChange: Second = 120;
/** Setting dials to nought on another surface with the same cutter. */
const dialAnew: Second = 30;
/** How likely heavy work harms a close surface that is finished already, by shifting, marking or bending it. */
const harm = 0.02;
/** Dialling in and turning a harmed surface once more. */
const mending: Second = 1800;
/** Keeps the customary order where nothing else decides; for each place of difference. */
const habit: Second = 0.01;

interface Usual {
  /** How long it takes. */
  readonly lasts: Second;
  /** How likely it spoils the work beyond mending; three times that where limits are close. */
  readonly spoils: number;
  /** Pushes or shakes the work. */
  readonly heavy?: true;
}

const usual: Record<OperationKind, Usual> = {
  face: { lasts: 240, spoils: 0.001 },
  centre: { lasts: 90, spoils: 0.001 },
  drill: { lasts: 300, spoils: 0.01, heavy: true },
  'rough turn': { lasts: 600, spoils: 0.002, heavy: true },
  bore: { lasts: 600, spoils: 0.01 },
  knurl: { lasts: 600, spoils: 0.02, heavy: true },
  groove: { lasts: 400, spoils: 0.01, heavy: true },
  'finish turn': { lasts: 500, spoils: 0.01 },
  chamfer: { lasts: 240, spoils: 0.002 },
  thread: { lasts: 900, spoils: 0.03, heavy: true },
  'turn cone': { lasts: 900, spoils: 0.01 },
  'turn curve': { lasts: 1500, spoils: 0.01 },
  polish: { lasts: 900, spoils: 0.005 },
  'part off': { lasts: 300, spoils: 0.01, heavy: true },
  'off the lathe': { lasts: 2400, spoils: 0.01 },
};

/** As places in the customary order. */
const place = new Map(operationKinds.map((kind, i) => [kind, i]));

/** Why one order of two operations is dearer than the other. */
export type CostTerm = 'cutter' | 'dials' | 'lost' | 'harm' | 'habit';

export type Cost = Readonly<Record<CostTerm, Second>>;

/** What it costs that one follows directly on the other. */
export function costOfChange(a: Ordered | undefined, b: Ordered): Pick<Cost, 'cutter' | 'dials'> {
  if (!a) return { cutter: 0, dials: 0 };
  const same = a.tool !== undefined && a.tool === b.tool;
  return { cutter: same ? 0 : cutterChange, dials: same && a.features[0] !== b.features[0] ? dialAnew : 0 };
}

/** What it costs that one is done at any time before the other. */
export function costOfBefore(a: Ordered, b: Ordered): Pick<Cost, 'lost' | 'harm' | 'habit'> {
  const spoils = usual[b.kind].spoils * (b.close ? 3 : 1);
  const later = (place.get(a.kind) ?? 0) - (place.get(b.kind) ?? 0);
  const inKind = a.kind === 'drill' || a.kind === 'bore' ? a.diameter > b.diameter : a.diameter < b.diameter;
  return {
    lost: spoils * usual[a.kind].lasts,
    harm: (a.close || a.working) && usual[b.kind].heavy ? harm * mending : 0,
    habit: later > 0 ? habit * later : later === 0 && inKind ? habit / 2 : 0,
  };
}

export function totalCost(cost: Partial<Cost>): Second {
  return (cost.cutter ?? 0) + (cost.dials ?? 0) + (cost.lost ?? 0) + (cost.harm ?? 0) + (cost.habit ?? 0);
}
