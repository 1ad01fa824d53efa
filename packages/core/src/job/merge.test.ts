import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { exampleDocument } from '../../test/examples.ts';
import { differingPaths, type Json, type JsonObject, merge, same } from './merge.ts';

const leaf = fc.oneof(fc.string({ maxLength: 4 }), fc.integer({ min: 0, max: 9 }), fc.boolean(), fc.constant(null));
const key = fc.constantFrom('a', 'b', 'c', 'd', '__proto__', 'constructor');
const id = fc.constantFrom('k', 'l', 'm', 'n', 'o', 'p');

/** Documents of the shapes that jobs are made of: objects, lists of records, plain lists, leaves. */
const { document } = fc.letrec<{ document: Json; object: Json; records: Json }>((tie) => ({
  document: fc.oneof({ maxDepth: 3 }, leaf, tie('object'), tie('records'), fc.array(leaf, { maxLength: 3 })),
  object: fc
    .uniqueArray(fc.tuple(key, tie('document')), { maxLength: 4, selector: ([name]) => name })
    .map((entries): Json => Object.fromEntries(entries)),
  records: fc
    .uniqueArray(fc.tuple(id, tie('document')), { maxLength: 4, selector: ([name]) => name })
    .map((entries): Json => entries.map(([name, value]) => ({ id: name, value }))),
}));

/** A copy of a document with some things changed, added and removed: what two people do to the same job. */
function changed(base: Json): fc.Arbitrary<Json> {
  return fc.infiniteStream(fc.nat(99)).chain((stream) =>
    fc.infiniteStream(document).map((values) => {
      const dice = () => stream.next().value ?? 0;
      const fresh = (): Json => values.next().value ?? null;
      return disturb(base, dice, fresh);
    }),
  );
}

function disturb(value: Json, dice: () => number, fresh: () => Json): Json {
  if (dice() < 8) return fresh();
  if (Array.isArray(value)) {
    const kept = value.filter(() => dice() >= 10).map((entry) => disturbRecord(entry, dice, fresh));
    return dice() < 20 ? kept.toReversed() : kept;
  }
  if (typeof value !== 'object' || value === null) return dice() < 15 ? fresh() : value;
  const entries = Object.entries(value).filter(() => dice() >= 10);
  if (dice() < 30) entries.push([`new${dice() % 3}`, fresh()]);
  return Object.fromEntries(entries.map(([name, inner]) => [name, disturb(inner, dice, fresh)]));
}

function disturbRecord(entry: Json, dice: () => number, fresh: () => Json): Json {
  if (typeof entry !== 'object' || entry === null || Array.isArray(entry)) return entry;
  const { id: name, ...rest } = entry;
  const after = disturb(rest, dice, fresh);
  return typeof after === 'object' && after !== null && !Array.isArray(after) ? { id: name ?? 'x', ...after } : entry;
}

const threeWay = document.chain((base) => fc.tuple(fc.constant(base), changed(base), changed(base)));

/** Lists of records in the order of their ids, everywhere. */
function ordered(value: Json): Json {
  if (Array.isArray(value))
    return value.map(ordered).toSorted((a, b) => (JSON.stringify(a) < JSON.stringify(b) ? -1 : 1));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .map(([name, inner]): [string, Json] => [name, ordered(inner)])
      .toSorted(([a], [b]) => (a < b ? -1 : 1)),
  );
}

describe('merging any documents', () => {
  test('a change on one side only is taken as it is, order and all', () => {
    fc.assert(
      fc.property(threeWay, ([base, a]) => {
        expect(merge(base, a, base)).toEqual({ kind: 'merged', document: a });
        expect(merge(base, base, a)).toEqual({ kind: 'merged', document: a });
      }),
    );
  });

  test('the same change on both sides is no conflict', () => {
    fc.assert(
      fc.property(threeWay, ([base, a]) => {
        expect(merge(base, a, a)).toEqual({ kind: 'merged', document: a });
      }),
    );
  });

  test('which side is which changes nothing but the order of lists', () => {
    fc.assert(
      fc.property(threeWay, ([base, a, b]) => {
        const one = merge(base, a, b);
        const other = merge(base, b, a);
        expect(one.kind).toBe(other.kind);
        if (one.kind === 'merged' && other.kind === 'merged')
          expect(ordered(one.document)).toEqual(ordered(other.document));
        if (one.kind === 'conflict' && other.kind === 'conflict') {
          const swapped = other.conflicts.map((c) => ({ ...c, ours: c.theirs, theirs: c.ours }));
          const byPath = (x: { path: string }, y: { path: string }) => (x.path < y.path ? -1 : 1);
          expect(one.conflicts.toSorted(byPath)).toEqual(swapped.toSorted(byPath));
        }
      }),
      { numRuns: 500 },
    );
  });

  test('merging what was merged again changes nothing', () => {
    fc.assert(
      fc.property(threeWay, ([base, a, b]) => {
        const once = merge(base, a, b);
        if (once.kind === 'merged') expect(merge(base, once.document, b)).toEqual(once);
      }),
      { numRuns: 500 },
    );
  });

  test('a conflict shows what stands at its path in all three documents', () => {
    fc.assert(
      fc.property(threeWay, ([base, a, b]) => {
        const merged = merge(base, a, b);
        if (merged.kind === 'merged') return;
        for (const { path, base: was, ours, theirs } of merged.conflicts) {
          expect(same(ours, theirs), path).toBe(false);
          expect(same(ours, was), path).toBe(false);
          expect(same(theirs, was), path).toBe(false);
        }
      }),
      { numRuns: 500 },
    );
  });

  test('two documents differ nowhere exactly when they are the same', () => {
    fc.assert(
      fc.property(threeWay, ([base, a]) => {
        expect(differingPaths(base, a).length === 0).toBe(same(base, a));
      }),
    );
  });
});

/** One change to the record `k`…`p` or the key it names: applied by hand, not by the code under test. */
type Step = { readonly at: string; readonly set: Json | undefined };

function apply(base: JsonObject, steps: readonly Step[]): JsonObject {
  return steps.reduce<JsonObject>((object, { at, set }) => {
    const [first = '', second] = at.split('/');
    const inner = second === undefined ? set : applied(object[first] ?? {}, second, set);
    const { [first]: _old, ...rest } = object;
    return inner === undefined ? rest : { ...rest, [first]: inner };
  }, base);
}

function applied(value: Json, name: string, set: Json | undefined): Json {
  if (Array.isArray(value)) {
    const others = value.filter((r) => typeof r !== 'object' || r === null || Array.isArray(r) || r.id !== name);
    return set === undefined ? others : [...others, { id: name, value: set }];
  }
  return typeof value === 'object' && value !== null ? apply(value, [{ at: name, set }]) : value;
}

describe('merging changes of different things', () => {
  const places = ['title', 'notes', 'machine/name', 'machine/decade', 'list/k', 'list/l', 'list/m', 'list/n'];
  const base: JsonObject = {
    title: 'Pin',
    machine: { name: 'Pump', decade: 1930 },
    list: [
      { id: 'k', value: 1 },
      { id: 'l', value: 2 },
    ],
  };
  const step = (at: string): fc.Arbitrary<Step> => fc.option(leaf, { nil: undefined }).map((set) => ({ at, set }));

  test('gives what both changes, one after the other, give', () => {
    const split = fc.subarray(places).chain((ours) => {
      const theirs = places.filter((place) => !ours.includes(place));
      return fc.tuple(fc.tuple(...ours.map(step)), fc.tuple(...theirs.map(step)));
    });
    fc.assert(
      fc.property(split, ([ours, theirs]) => {
        const merged = merge(base, apply(base, ours), apply(base, theirs));
        expect(merged.kind).toBe('merged');
        if (merged.kind === 'merged')
          expect(ordered(merged.document)).toEqual(ordered(apply(apply(base, ours), theirs)));
      }),
      { numRuns: 500 },
    );
  });
});

describe('merging a job', () => {
  const list = (...ids: string[]): Json => ids.map((name) => ({ id: name }));

  test('a reading added in the workshop and a title changed at the desk are both there', () => {
    const job: Json = JSON.parse(JSON.stringify(exampleDocument('plunger.job.json')));
    if (typeof job !== 'object' || job === null || Array.isArray(job)) throw new Error('the example is no document');
    const { evidence } = job;
    if (typeof evidence !== 'object' || evidence === null || Array.isArray(evidence)) throw new Error('no evidence');
    const readings = evidence.readings;
    if (!Array.isArray(readings)) throw new Error('no readings');
    const reading = { id: 'p11', of: 'body.diameter', value: '31.95' };
    const phone = { ...job, evidence: { ...evidence, readings: [...readings, reading] } };
    const merged = merge(job, phone, { ...job, title: 'Plunger' });
    expect(merged).toEqual({ kind: 'merged', document: { ...phone, title: 'Plunger' } });
    expect(differingPaths(job, { ...phone, title: 'Plunger' })).toEqual(['title', 'evidence.readings[p11]']);
  });

  test('first readings on both sides of a job without evidence are both kept', () => {
    expect(merge({}, { readings: list('a') }, { readings: list('b') })).toEqual({
      kind: 'merged',
      document: { readings: list('b', 'a') },
    });
  });

  test('sections keep their place along the part', () => {
    const merged = merge(list('left', 'right'), list('left', 'collar', 'right'), list('left', 'right', 'tip'));
    expect(merged).toEqual({ kind: 'merged', document: list('left', 'collar', 'right', 'tip') });
  });

  test('a part turned end for end takes the other side’s new section along', () => {
    const merged = merge(list('a', 'b', 'c'), list('c', 'b', 'a'), list('a', 'new', 'b', 'c'));
    expect(merged).toEqual({ kind: 'merged', document: list('c', 'b', 'a', 'new') });
  });

  test('two different orders of the same sections are a conflict', () => {
    expect(merge(list('a', 'b', 'c'), list('b', 'a', 'c'), list('a', 'c', 'b'))).toEqual({
      kind: 'conflict',
      conflicts: [{ path: ': order', base: ['a', 'b', 'c'], ours: ['b', 'a', 'c'], theirs: ['a', 'c', 'b'] }],
    });
  });

  test('one diameter, two new values: a conflict with its place and both values', () => {
    const part = (diameter: string): Json => ({ part: { outside: [{ id: 'shank', diameter }] } });
    expect(merge(part('12 f7'), part('12 h6'), part('11.9'))).toEqual({
      kind: 'conflict',
      conflicts: [{ path: 'part.outside[shank].diameter', base: '12 f7', ours: '12 h6', theirs: '11.9' }],
    });
  });

  test('removing a section that the other side changed is a conflict', () => {
    expect(merge([{ id: 'a', n: 1 }], [], [{ id: 'a', n: 2 }])).toMatchObject({
      kind: 'conflict',
      conflicts: [{ path: '[a]', ours: undefined }],
    });
  });

  test('a list without ids is taken whole', () => {
    expect(merge({ rpm: [1, 2] }, { rpm: [1, 2, 3] }, { rpm: [0, 1, 2] })).toMatchObject({
      kind: 'conflict',
      conflicts: [{ path: 'rpm', ours: [1, 2, 3], theirs: [0, 1, 2] }],
    });
  });
});
