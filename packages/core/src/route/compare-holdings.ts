/** Weighs the ways to hold the work, all setups together, and takes the cheapest; of a wish as much is kept as can be. */
import type { Finding } from '../finding.ts';
import type { Chuck, Workshop } from '../lathe/schema.ts';
import type { PartResult } from '../part/part-result.ts';
import type { Second } from '../units/quantities.ts';
import { betweenCentres } from './between-centres.ts';
import {
  type End,
  firstEndOut,
  firstHolding,
  type Holding,
  isFacedFarOut,
  needsBlank,
  slender,
  takesCentre,
  throughBore,
} from './hold.ts';
import { betweenCentresItems, firstItems, splitClose, type Weighed, weighed } from './holding-cost.ts';
import { turnsAllFrom } from './mandrel.ts';
import type { HoldingChoice, Stock } from './route-result.ts';
import type { HoldingWish, RouteWishes } from './schema.ts';
import { againstGiving, type SecondChoice, secondHoldings } from './second-holding.ts';
import { chooseStock } from './stock.ts';
import type { WayHeld } from './ways-held.ts';

export interface Held {
  readonly stock: Stock;
  readonly findings: readonly Finding[];
  /** One for each setup, in order. */
  readonly holdings: readonly [Holding, ...Holding[]];
  readonly choices: readonly HoldingChoice[];
}

/** A way to hold the work through all setups. */
interface Way {
  readonly stock: Stock;
  readonly findings: readonly Finding[];
  readonly how: string;
  readonly wish: HoldingWish;
  readonly weighed: Weighed;
  readonly holdings: readonly [Holding, ...Holding[]];
  /** Ways to go on after the first setup, best first; none where that is settled with it. */
  readonly seconds: readonly SecondChoice[];
}

export function compareHoldings(
  part: PartResult,
  workshop: Workshop,
  chuck: Chuck,
  wishes: RouteWishes | undefined,
): Held {
  const usual = firstEndOut(part, wishes);
  const ends: readonly End[] = usual === 'right' ? ['right', 'left'] : ['left', 'right'];
  const ways = ends.flatMap((end) => waysFrom(part, workshop, chuck, { ...wishes, firstEndOut: end }, wishes));
  const ranked = ways
    .filter((w, i) => ways.findIndex((v) => v.how === w.how) === i)
    .toSorted((a, b) => besideWish(a, wishes) - besideWish(b, wishes) || total(a) - total(b));
  const [best] = ranked;
  if (!best) throw new Error('no way to hold the work was weighed');
  const [second] = best.seconds;
  const holdings: Held['holdings'] = second ? [best.holdings[0], second.holding] : best.holdings;
  return {
    stock: best.stock,
    findings: [...best.findings, ...notAsWished(unmet(best, wishes))],
    holdings: [withWhy(part, holdings), ...holdings.slice(1)],
    choices: [...ranked.map((w) => firstChoice(w, w === best)), ...laterChoices(best)],
  };
}

/** How far a way is from what is wished, to sort by; held just so comes before held so in part. */
function besideWish(way: Way, wishes: RouteWishes | undefined): number {
  return unmet(way, wishes).length + (wishes?.hold && wishes.hold !== way.wish.hold ? 0.5 : 0);
}

function firstChoice(way: Way, taken: boolean): HoldingChoice {
  const [second] = way.seconds;
  return {
    setup: 'setup-1',
    how: way.how,
    wish: way.wish,
    taken,
    cost: total(way),
    why: [...way.weighed.why, ...(second ? [`then ${second.how}: ${second.weighed.why.join(', ')}`] : [])],
  };
}

function laterChoices({ seconds, wish }: Way): HoldingChoice[] {
  return seconds.map((s, i) => ({
    setup: 'setup-2',
    how: s.how,
    wish: { ...wish, holdOn: s.holding.setup.grip.on },
    taken: i === 0,
    cost: s.weighed.cost,
    why: s.weighed.why,
  }));
}

function total({ weighed: own, seconds }: Way): Second {
  return own.cost + (seconds[0]?.weighed.cost ?? 0);
}

/** All ways that begin with one end; each of the seconds sorted by what is wished, then by cost. */
function waysFrom(
  part: PartResult,
  workshop: Workshop,
  chuck: Chuck,
  own: RouteWishes & { readonly firstEndOut: End },
  wishes: RouteWishes | undefined,
): Way[] {
  const end = own.firstEndOut;
  const other: End = end === 'right' ? 'left' : 'right';
  const supports = takesCentre(part, end) ? [true, false] : [undefined];
  const chucked = supports.map((tailstock) => inChuck(part, workshop, chuck, { ...own, tailstock }, wishes, false));
  const boreFirst =
    throughBore(part) && turnsAllFrom(part, other) ? [inChuck(part, workshop, chuck, own, wishes, true)] : [];
  const centres = onCentres(part, workshop, chuck, own);
  return [...chucked, ...boreFirst.filter((w) => w.seconds.length > 0), ...(centres ? [centres] : [])];
}

function inChuck(
  part: PartResult,
  workshop: Workshop,
  chuck: Chuck,
  own: RouteWishes & { readonly firstEndOut: End },
  wishes: RouteWishes | undefined,
  boreOnly: boolean,
): Way {
  const { stock, findings } = chooseStock(part, workshop, chuck, own, !boreOnly && needsBlank(part, own));
  const holding = firstHolding(part, workshop, chuck, stock.diameter, own, boreOnly);
  const { endOut, tailstock } = holding.setup;
  const isSlender = slender(holding.roughs, endOut, holding.jaw);
  const from = `${endOut} end out of ${holding.blank ? 'a sawn blank' : 'the bar'}`;
  return {
    stock,
    findings,
    how: boreOnly
      ? `${from}, roughed and bored first, all of the outside finished on a mandrel`
      : `${from}${tailstock ? ', tailstock up' : ''}`,
    wish: { firstEndOut: endOut, tailstock, hold: boreOnly ? 'on a mandrel' : 'in the chuck' },
    weighed: weighed(
      firstItems(part, holding.sections, endOut, {
        tailstock,
        slender: isSlender,
        farOut: isFacedFarOut(holding.setup),
      }),
    ),
    holdings: [holding],
    seconds: secondHoldings(part, workshop, holding, boreOnly).toSorted(
      (a, b) => besides(a, wishes) - besides(b, wishes) || a.weighed.cost - b.weighed.cost,
    ),
  };
}

function onCentres(
  part: PartResult,
  workshop: Workshop,
  chuck: Chuck,
  own: RouteWishes & { readonly firstEndOut: End },
): Way | undefined {
  const { stock, findings } = chooseStock(part, workshop, chuck, own, true);
  const held = betweenCentres(part, workshop, chuck, stock.diameter, own.firstEndOut);
  if (!held) return undefined;
  return {
    stock,
    findings,
    how: `a sawn blank between centres, ${own.firstEndOut} end at the tailstock first`,
    wish: { firstEndOut: own.firstEndOut, hold: 'between centres' },
    weighed: weighed(betweenCentresItems({ ...held, gives: againstGiving(held.give) })),
    holdings: held.holdings,
    seconds: [],
  };
}

/** What of a wish a way does not give, in words. */
function unmet(way: Way, wishes: RouteWishes | undefined): string[] {
  if (!wishes) return [];
  const [{ setup }] = way.holdings;
  const [second] = way.seconds;
  const { firstEndOut: end, tailstock, hold, holdOn } = wishes;
  const last = second?.holding ?? way.holdings.at(-1);
  return [
    ...(end && end !== setup.endOut ? [`${end} end out first`] : []),
    ...(tailstock !== undefined && way.wish.hold !== 'between centres' && tailstock !== setup.tailstock
      ? [tailstock ? 'the tailstock up' : 'no tailstock']
      : []),
    ...(hold && !isHeldSo(way, hold) ? [hold] : []),
    ...(holdOn !== undefined && holdOn !== last?.setup.grip.on ? [`on ${holdOn.replaceAll('-', ' ')}`] : []),
  ];
}

/** A mandrel counts too where it carries only what the first setup left. */
function isHeldSo({ wish, seconds }: Way, hold: WayHeld): boolean {
  return hold === wish.hold || (hold === 'on a mandrel' && seconds[0]?.holding.setup.held === hold);
}

/** How far a second setup is from what is wished, to sort by. */
function besides({ holding: { setup } }: SecondChoice, wishes: RouteWishes | undefined): number {
  const { hold, holdOn } = wishes ?? {};
  return (
    Number(holdOn !== undefined && holdOn !== setup.grip.on) + Number(hold === 'on a mandrel' && setup.held !== hold)
  );
}

function notAsWished(missed: readonly string[]): Finding[] {
  if (missed.length === 0) return [];
  return [
    {
      id: 'route.not-held-as-wished',
      level: 'caution',
      stage: 'route',
      at: 'setup-1',
      says: `The work cannot be held as wished: ${missed.join(', ')}. It is planned without.`,
      because: [],
      remedies: [
        'Wish for one of the ways that were weighed',
        'Change the part so that it can be held so: a stub with a centre, a longer section',
      ],
    },
  ];
}

/** The first setup, with whether what must run true with each other is turned together. */
function withWhy(part: PartResult, holdings: Held['holdings']): Holding {
  const [first, second] = holdings;
  const { setup, sections, boresFirst } = first;
  const through = second?.setup.held === 'on a mandrel' || holdings.some((h) => h.setup.held === 'between centres');
  if (through) return first;
  const apart = splitClose(part, sections, setup.endOut, boresFirst);
  const words =
    apart.length === 0
      ? 'All close diameters are turned in one setup, so that they run true with each other.'
      : `Close diameters come apart: ${apart.join(', ')} ${apart.length === 1 ? 'is' : 'are'} left for the other setup and must be dialled in well.`;
  return { ...first, setup: { ...setup, why: [words, ...setup.why] } };
}
