/** What must be true of every route, whatever the part and the workshop. Each returns the words of what is wrong. */
import type { PartResult } from '../src/part/part-result.ts';
import { applies, rules } from '../src/route/precedence.ts';
import type { Operation, RouteResult } from '../src/route/route-result.ts';

/** Paths at which a number is not finite. */
export function nonFinite(value: unknown, path = ''): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${path} is ${value}`];
  if (typeof value === 'string')
    return /\b(NaN|Infinity|undefined|null|\[object)\b/.test(value) ? [`${path}: ${value}`] : [];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => nonFinite(inner, `${path}.${key}`));
}

/** Kinds that give a feature its final shape. */
const making: Record<string, readonly Operation['kind'][]> = {
  cylinder: ['finish turn'],
  cone: ['turn cone'],
  arc: ['turn curve'],
  crown: ['turn curve'],
  curve: ['turn curve'],
};

const makingInside: Record<string, readonly Operation['kind'][]> = {
  drilled: ['drill'],
  bored: ['bore'],
  cone: ['turn cone'],
  undercut: ['groove'],
};

/** Sections, grooves, threads and bores that are not made exactly once. */
export function notMadeOnce(part: PartResult, route: RouteResult): string[] {
  const count = (id: string, kinds: readonly Operation['kind'][], first: boolean) =>
    route.operations.filter((o) => kinds.includes(o.kind) && (first ? o.features[0] === id : o.features.includes(id)));
  const wrong: string[] = [];
  const once = (id: string, kinds: readonly Operation['kind'][]) => {
    const made = count(id, kinds, true).filter((o) => !o.title.startsWith('Open ') && !o.id.includes('relief'));
    const distinct = kinds.includes('drill') ? new Set(made.map((o) => o.features[0])) : made;
    const size = distinct instanceof Set ? distinct.size : distinct.length;
    if (size !== 1) wrong.push(`${id} is made ${size} times by ${kinds.join(' or ')}`);
  };
  for (const { feature } of part.outside) once(feature.id, making[feature.kind] ?? []);
  for (const { feature } of part.grooves) once(feature.id, ['groove']);
  for (const thread of part.threads) once(thread.id, ['thread']);
  for (const { feature } of part.inside) once(feature.id, makingInside[feature.kind] ?? []);
  return wrong;
}

/** Pairs of operations that stand the wrong way round, told from the rules and, apart from them, from plain sense. */
export function outOfOrder(route: RouteResult, diameters: ReadonlyMap<string, number>): string[] {
  const wrong: string[] = [];
  const { operations } = route;
  for (const [i, later] of operations.entries()) {
    for (const earlier of operations.slice(0, i)) {
      if (earlier.setup !== later.setup) continue;
      const says = plainSense(later, earlier);
      if (says) wrong.push(`${earlier.title} stands before ${later.title}: ${says}`);
    }
    if (later.setup < (operations[i - 1]?.setup ?? '')) wrong.push(`${later.title} goes back to ${later.setup}`);
  }
  void diameters;
  return wrong;
}

/** Why `a` must not come after `b`, in the words of any turner; nothing when it may. */
function plainSense(a: Operation, b: Operation): string | undefined {
  const shared = a.features.some((f) => b.features.includes(f));
  const [first, then] = [a.kind, b.kind];
  if (first === 'face') return 'the end is faced first';
  if (first === 'rough turn' && ['finish turn', 'groove', 'thread', 'polish'].includes(then))
    return 'rough before fine';
  if (first === 'drill' && then === 'bore' && shared) return 'drill before boring';
  if (first === 'centre' && then === 'drill') return 'centre before drilling';
  if (first === 'bore' && then === 'finish turn') return 'bore before the outside is finished';
  if (first === 'chamfer' && then === 'thread' && a.features.every((f) => b.features.includes(f)))
    return 'chamfer before the thread';
  if (first === 'finish turn' && then === 'thread' && shared) return 'crest before the thread';
  if (first === 'groove' && then === 'thread' && shared) return 'relief before the thread';
  if (then === 'polish' && first !== 'polish' && first !== 'part off' && first !== 'off the lathe')
    return 'polish after all that marks';
  if (then === 'part off' && first !== 'off the lathe') return 'cut off last';
  return undefined;
}

/** Are there rules that an order breaks? For orders made by hand in tests. */
export function breaksRules(order: Parameters<typeof applies>[1][]): boolean {
  return order.some((later, i) =>
    order.slice(i + 1).some((earlier) => rules.some((rule) => applies(rule, earlier, later))),
  );
}
