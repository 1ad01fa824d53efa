/** Weighs the ways to hold the work, first and second setup together, and takes the cheapest; a wish leaves only what it allows. */
import type { Finding } from '../finding.ts';
import type { Chuck, Workshop } from '../lathe/schema.ts';
import type { PartResult } from '../part/part-result.ts';
import { type End, firstEndOut, firstHolding, type Holding, needsBlank, slender, takesCentre } from './hold.ts';
import { firstItems, splitClose, type Weighed, weighed } from './holding-cost.ts';
import type { HoldingChoice, Stock } from './route-result.ts';
import type { RouteWishes } from './schema.ts';
import { type SecondChoice, secondHoldings } from './second-holding.ts';
import { chooseStock } from './stock.ts';

export interface Held {
  readonly stock: Stock;
  readonly findings: readonly Finding[];
  readonly first: Holding;
  readonly second: Holding;
  readonly choices: readonly HoldingChoice[];
}

interface FirstChoice {
  readonly stock: Stock;
  readonly findings: readonly Finding[];
  readonly holding: Holding;
  readonly how: string;
  readonly weighed: Weighed;
  readonly seconds: readonly [SecondChoice, ...SecondChoice[]];
}

export function compareHoldings(
  part: PartResult,
  workshop: Workshop,
  chuck: Chuck,
  wishes: RouteWishes | undefined,
): Held {
  const usual = firstEndOut(part, wishes);
  const other: End = usual === 'right' ? 'left' : 'right';
  const ends: readonly End[] = wishes?.firstEndOut ? [wishes.firstEndOut] : [usual, other];
  const firsts = ends.flatMap((end) =>
    (wishes?.tailstock === undefined && takesCentre(part, end) ? [true, false] : [wishes?.tailstock]).map((tailstock) =>
      firstChoice(part, workshop, chuck, { ...wishes, firstEndOut: end, tailstock }),
    ),
  );
  const total = (f: FirstChoice) => f.weighed.cost + f.seconds[0].weighed.cost;
  const ranked = firsts
    .filter((f, i) => firsts.findIndex((g) => g.how === f.how) === i)
    .toSorted((a, b) => total(a) - total(b));
  const best = ranked[0] ?? firstChoice(part, workshop, chuck, wishes);
  const second = best.seconds[0];
  return {
    stock: best.stock,
    findings: best.findings,
    first: best.holding,
    second: second.holding,
    choices: [
      ...ranked.map((f) => ({
        setup: 'setup-1',
        how: f.how,
        taken: f === best,
        cost: total(f),
        why: [...f.weighed.why, `then ${f.seconds[0].how}: ${f.seconds[0].weighed.why.join(', ')}`],
      })),
      ...best.seconds.map((s) => ({
        setup: 'setup-2',
        how: s.how,
        taken: s === second,
        cost: s.weighed.cost,
        why: s.weighed.why,
      })),
    ],
  };
}

function firstChoice(part: PartResult, workshop: Workshop, chuck: Chuck, wishes: RouteWishes | undefined): FirstChoice {
  const { stock, findings } = chooseStock(part, workshop, chuck, wishes, needsBlank(part, wishes));
  const held = firstHolding(part, workshop, chuck, stock.diameter, wishes);
  const holding = { ...held, setup: { ...held.setup, why: [togetherWords(part, held), ...held.setup.why] } };
  const { endOut, tailstock } = holding.setup;
  const isSlender = slender(holding.sections, endOut, holding.jaw);
  return {
    stock,
    findings,
    holding,
    how: `${endOut} end out of ${holding.blank ? 'a sawn blank' : 'the bar'}${tailstock ? ', tailstock up' : ''}`,
    weighed: weighed(firstItems(part, holding.sections, endOut, { tailstock, slender: isSlender })),
    seconds: secondHoldings(part, workshop, holding, wishes),
  };
}

/** Whether what must run true with each other is turned in one setup. */
function togetherWords(part: PartResult, { sections, setup }: Holding): string {
  const apart = splitClose(part, sections, setup.endOut);
  if (apart.length === 0) return 'All close diameters are turned in one setup, so that they run true with each other.';
  return `Close diameters come apart: ${apart.join(', ')} ${apart.length === 1 ? 'is' : 'are'} left for the other setup and must be dialled in well.`;
}
