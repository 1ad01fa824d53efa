/** Why an operation stands where it does: the rules that put it after others, and where they leave a choice what the choice saves. */
import { type CostTerm, costOfBefore, costOfChange } from './order-cost.ts';
import type { Between, Ordered } from './precedence.ts';

/** The reasons at one place of an order. */
export function reasonsToStand(
  placed: readonly Ordered[],
  at: number,
  wished: readonly string[],
  between: Between,
): string[] {
  const own = placed[at];
  if (!own) return [];
  const direct = placed.slice(0, at).filter((a) => between(a, own).length > 0);
  // Only what stands directly before it is worth saying: that the end is faced first is said where it matters.
  const last = direct.filter((a, i) => !direct.slice(i + 1).some((b) => between(a, b).length > 0));
  const ruled = last.flatMap((a) => between(a, own).map((r) => r.why));
  const chosen = wished.includes(own.id) ? ['It stands here as wished.'] : chosenAfter(placed, at, between);
  return [...new Set([...ruled, ...chosen])];
}

/** What is saved by standing after the one before it and not the other way about, where the rules allow both. */
function chosenAfter(placed: readonly Ordered[], at: number, between: Between): string[] {
  const [own, before] = [placed[at], placed[at - 1]];
  if (!own || !before || between(before, own).length > 0) return [];
  const first = placed[at - 2];
  const after = placed[at + 1];
  const along = (...row: (Ordered | undefined)[]) =>
    row.reduce(
      (sum, b, i) => {
        const cost = i > 0 && b && row[i - 1] ? costOfChange(row[i - 1], b) : { cutter: 0, dials: 0 };
        return { cutter: sum.cutter + cost.cutter, dials: sum.dials + cost.dials };
      },
      { cutter: 0, dials: 0 },
    );
  const [now, swapped] = [along(first, before, own, after), along(first, own, before, after)];
  const [so, else_] = [costOfBefore(before, own), costOfBefore(own, before)];
  const saved: [CostTerm, number][] = [
    ['cutter', swapped.cutter - now.cutter],
    ['dials', swapped.dials - now.dials],
    ['lost', else_.lost - so.lost],
    ['harm', else_.harm - so.harm],
  ];
  const [term, most] = saved.toSorted((a, b) => b[1] - a[1])[0] ?? ['habit', 0];
  const words: Record<CostTerm, string | undefined> = {
    cutter: 'Standing here it saves a change of cutter.',
    dials: 'Standing here it saves setting the dials anew.',
    lost: 'What is likelier to go wrong was done before it, so that less work would be lost.',
    harm: 'The heavy work before it cannot harm this close surface.',
    habit: undefined,
  };
  const said = most > 1 ? words[term] : undefined;
  return said === undefined ? [] : [said];
}
