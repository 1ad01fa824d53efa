/** What must be true of every route, whatever the part and the workshop. Each returns the words of what is wrong. */
import { innerRadiusAt, radiusAt } from '../src/part/outline-queries.ts';
import type { Segment } from '../src/part/outline-types.ts';
import type { PartResult } from '../src/part/part-result.ts';
import { fractionsAtZ, isVertical, pointAt } from '../src/part/segment.ts';
import { applies, rules } from '../src/route/precedence.ts';
import type { Operation, RouteResult, WorkOutline } from '../src/route/route-result.ts';

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
  const once = (id: string, kinds: readonly Operation['kind'][]): string[] => {
    const made = route.operations.filter((o) => kinds.includes(o.kind) && o.features[0] === id && !preparing(o));
    // A pilot hole and the hole itself are one making.
    const times = kinds.includes('drill') ? Math.min(1, made.length) : made.length;
    return times === 1 ? [] : [`${id} is made ${times} times by ${kinds.join(' or ')}`];
  };
  return [
    ...part.outside.flatMap(({ feature }) => once(feature.id, making[feature.kind] ?? [])),
    ...part.grooves.flatMap(({ feature }) => once(feature.id, ['groove'])),
    ...part.threads.flatMap((t) => once(t.id, ['thread'])),
    ...part.inside.flatMap(({ feature }) => once(feature.id, makingInside[feature.kind] ?? [])),
  ];
}

/** Opening a bore before its last cuts does not make it. */
function preparing(o: Operation): boolean {
  return o.kind === 'bore' && o.title.startsWith('Open ');
}

/** Tables that end past their target, or short of it by a division or more; the target is the size in the title of the operation. */
export function offTarget(route: RouteResult, division: number): string[] {
  return route.tables.flatMap((table) => {
    if (table.kind !== 'turning' && table.kind !== 'boring') return [];
    const wanted = Number(/Ø([\d.]+)/.exec(table.title)?.[1]);
    const end = Number(table.rows.at(-1)?.diameter);
    const left = table.kind === 'turning' ? end - wanted : wanted - end;
    // The title is rounded to a thousandth.
    return left >= -0.0006 && left < 2 * division + 0.0006 ? [] : [`${table.title} ends at ${end}`];
  });
}

/** Operations of setups, and tables of operations, that are not there. */
export function dangling(route: RouteResult): string[] {
  const setups = new Set(route.setups.map((s) => s.id));
  const tables = new Set(route.tables.map((t) => t.id));
  const operations = new Set(route.operations.map((o) => o.id));
  const places = new Set([...operations, ...setups, 'stock']);
  return [
    ...route.operations.filter((o) => !setups.has(o.setup)).map((o) => `${o.id} is in no setup`),
    ...route.operations.flatMap((o) => o.tables.filter((t) => !tables.has(t)).map((t) => `${o.id} has no table ${t}`)),
    ...route.tables.filter((t) => !operations.has(t.operation)).map((t) => `${t.id} belongs to no operation`),
    ...route.findings.filter((f) => !places.has(f.at)).map((f) => `${f.id} is at ${f.at}`),
    ...(operations.size === route.operations.length ? [] : ['two operations share an id']),
    ...(tables.size === route.tables.length ? [] : ['two tables share an id']),
    ...route.operations.filter((o, i) => o.number !== i + 1).map((o) => `${o.id} has number ${o.number}`),
  ];
}

/** Pairs of operations that stand the wrong way round by plain sense, told apart from the planner's own rules. */
export function outOfOrder(route: RouteResult): string[] {
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
  if (then === 'part off' && first !== 'part off' && first !== 'off the lathe') return 'cut off last';
  return undefined;
}

/** Are there rules that an order breaks? For orders made by hand in tests. */
export function breaksRules(order: Parameters<typeof applies>[1][]): boolean {
  return order.some((later, i) =>
    order.slice(i + 1).some((earlier) => rules.some((rule) => applies(rule, earlier, later))),
  );
}

/** Nearer than this, two surfaces are one. */
const close = 1e-5;

/**
 * Surfaces of the part that come out wrong: cut into by an operation, not there after the last one, or brought to their final
 * shape more than once or by none. The work is looked at by sampling what each operation leaves against the part's own outline.
 */
export function wrongShapes(part: PartResult, route: RouteResult): string[] {
  const wrong: string[] = [];
  const { outline } = part;
  const inside = [...outline.insideLeft, ...outline.insideRight];
  const spots = [
    ...places(outline.outside).map((s) => ({ ...s, chain: 'outside' as const, is: radiusAt(outline, s.z) })),
    ...places(inside).map((s) => ({ ...s, chain: 'inside' as const, is: innerRadiusAt(outline, s.z) })),
  ];
  const made = new Map(spots.map((s) => [s, 0]));
  let work: WorkOutline | undefined = route.setups[0]?.work;
  for (const setup of route.setups) {
    if (work && JSON.stringify(work) !== JSON.stringify(setup.work)) wrong.push(`${setup.id} begins with other work`);
    for (const operation of route.operations.filter((o) => o.setup === setup.id)) {
      if (!operation.leaves) continue;
      for (const spot of spots) {
        const before = work && heightAt(work[spot.chain], spot.z);
        const after = heightAt(operation.leaves[spot.chain], spot.z);
        const left = spot.chain === 'outside' ? after - spot.is : spot.is - after;
        if (left < -close)
          wrong.push(`${operation.id} cuts into ${spot.feature} at ${spot.z}: ${after}, not ${spot.is}`);
        const wasMade = before !== undefined && Math.abs(before - spot.is) <= close;
        if (!wasMade && Math.abs(left) <= close) made.set(spot, (made.get(spot) ?? 0) + 1);
      }
      work = operation.leaves;
    }
  }
  for (const [spot, times] of made)
    if (times !== 1) wrong.push(`${spot.feature} at ${spot.z} ${spot.chain} gets its shape ${times} times`);
  if (work && (Math.abs(work.from) > close || Math.abs(work.to - outline.length) > close))
    wrong.push(`the work ends up from ${work.from} to ${work.to}`);
  return [...new Set(wrong)];
}

/** Four places in every surface. */
function places(chain: readonly Segment[]): { z: number; feature: string }[] {
  return chain
    .filter((s) => !isVertical(s) && Math.abs(s.to.z - s.from.z) > 1e-3)
    .flatMap((s) => [0.03, 0.3, 0.7, 0.97].map((t) => ({ z: s.from.z + (s.to.z - s.from.z) * t, feature: s.feature })));
}

function heightAt(chain: readonly Segment[], z: number): number {
  return Math.max(
    0,
    ...chain
      .filter((s) => !isVertical(s) && z >= Math.min(s.from.z, s.to.z) - 1e-9 && z <= Math.max(s.from.z, s.to.z) + 1e-9)
      .flatMap((s) => fractionsAtZ(s, z).map((t) => pointAt(s, t).r)),
  );
}
