import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { breaksRules } from '../../test/route-facts.ts';
import { inOrder } from './order.ts';
import { type Ordered, rules } from './precedence.ts';

type Kind = Ordered['kind'];

const kinds: readonly Kind[] = [
  'face',
  'centre',
  'drill',
  'bore',
  'rough turn',
  'finish turn',
  'turn cone',
  'turn curve',
  'groove',
  'chamfer',
  'thread',
  'knurl',
  'part off',
  'polish',
  'off the lathe',
];

function operation(kind: Kind, more: Partial<Ordered> = {}): Ordered {
  const features = more.features ?? ['a'];
  return {
    id: `${kind} ${features} ${more.diameter}`,
    kind,
    setup: 's',
    diameter: 10,
    atFreeEnd: false,
    working: false,
    ...more,
    features,
  };
}

const order = (...operations: Ordered[]) => inOrder(operations, ['s']).map((d) => d.operation.kind);

/** Work on a few features, as the drafts make it: what is done to a feature has the feature's diameter. */
const arbitraryWork = fc
  .array(
    fc.record({
      diameter: fc.integer({ min: 4, max: 9 }),
      round: fc.boolean(),
      free: fc.boolean(),
      kinds: fc.subarray([...kinds]),
    }),
    { minLength: 1, maxLength: 6 },
  )
  .chain((features) => {
    const each = features.flatMap((f, i) =>
      f.kinds.map((kind) => {
        const shapes = kind === 'turn cone' || kind === 'turn curve';
        return operation(kind, {
          id: `${kind} ${i}`,
          features: [`f${i}`],
          diameter: f.diameter,
          atFreeEnd: (shapes && f.free) || (kind === 'thread' && !f.round),
        });
      }),
    );
    // A finishing cut belongs to a cylinder, a cone or curve to what is none.
    const legal = each.filter((o) => {
      const f = features[Number(o.features[0]?.slice(1))];
      return f?.round
        ? o.kind !== 'turn cone' && o.kind !== 'turn curve'
        : o.kind !== 'finish turn' && o.kind !== 'knurl';
    });
    const edges = operation('chamfer', { id: 'edges', features: features.map((_, i) => `f${i}`), diameter: 9 });
    return fc.shuffledSubarray([...legal, ...(features.length > 1 ? [edges] : [])], { minLength: 0 });
  });

test('whatever work is asked for, in whatever order it is named, the rules never go round in a circle and none is broken', () => {
  fc.assert(
    fc.property(arbitraryWork, (work) => {
      const ordered = inOrder(work, ['s']).map((d) => d.operation);
      expect(ordered).toHaveLength(work.length);
      expect(new Set(ordered.map((o) => o.id)).size).toBe(work.length);
      expect(breaksRules([...ordered])).toBe(false);
    }),
    { numRuns: 700 },
  );
});

test('every pair of kinds on one feature has at most one way round', () => {
  for (const a of kinds) {
    for (const b of kinds) {
      if (a !== b) expect(() => inOrder([operation(a), operation(b)], ['s'])).not.toThrow();
    }
  }
});

test('rules that contradict each other are a fault, not an order', () => {
  const knotted = [
    operation('thread', { features: ['a', 'b'], diameter: 12, id: 'thread' }),
    operation('finish turn', { features: ['a'], diameter: 12, id: 'crest' }),
    operation('finish turn', { features: ['c'], diameter: 11, id: 'thin' }),
    operation('finish turn', { features: ['b'], diameter: 10, id: 'thinner' }),
  ];
  expect(() => inOrder(knotted, ['s'])).toThrow('circle');
});

describe('in the order of any turner', () => {
  test('the end is faced, centred and drilled, pilot first, before it is bored', () => {
    const small = operation('drill', { diameter: 4, id: 'pilot' });
    const large = operation('drill', { diameter: 12, id: 'large' });
    expect(
      inOrder([operation('bore'), large, small, operation('centre'), operation('face')], ['s']).map(
        (d) => d.operation.id,
      ),
    ).toEqual([operation('face').id, operation('centre').id, 'pilot', 'large', operation('bore').id]);
  });

  test('a bore is opened before its last cuts', () => {
    const open = operation('bore', { diameter: 18, id: 'open' });
    const finish = operation('bore', { diameter: 20, id: 'finish' });
    expect(inOrder([finish, open], ['s']).map((d) => d.operation.id)).toEqual(['open', 'finish']);
  });

  test('relief, crest, chamfer, thread', () => {
    expect(
      order(
        operation('thread'),
        operation('chamfer'),
        operation('finish turn'),
        operation('groove'),
        operation('rough turn'),
      ),
    ).toEqual(['rough turn', 'groove', 'finish turn', 'chamfer', 'thread']);
  });

  test('all roughing comes before any finishing, from thick to thin', () => {
    const thick = operation('rough turn', { diameter: 30, features: ['b'] });
    const thin = operation('rough turn', { diameter: 8, features: ['c'] });
    const finish = operation('finish turn', { diameter: 30, features: ['b'] });
    expect(inOrder([finish, thin, thick], ['s']).map((d) => d.operation)).toEqual([thick, thin, finish]);
  });

  test('nothing slender is finished before the heavy work elsewhere: its thread on the thick end comes first', () => {
    const slender = operation('finish turn', { diameter: 6, features: ['guide'] });
    const thread = operation('thread', { diameter: 20, features: ['thread', 'head'] });
    const groove = operation('groove', { diameter: 14, features: ['groove', 'land'] });
    expect(order(slender, thread, groove).at(-1)).toBe('finish turn');
  });

  test('a sealing surface is polished after everything that could mark it, and the crown is shaped before', () => {
    const crown = operation('turn curve', { features: ['crown'], atFreeEnd: true });
    const done = order(operation('polish'), crown, operation('thread', { features: ['t'] }), operation('finish turn'));
    expect(done.slice(2)).toEqual(['turn curve', 'polish']);
  });

  test('it is cut off last, and only then goes to the bench', () => {
    expect(order(operation('off the lathe'), operation('part off'), operation('polish'), operation('face'))).toEqual([
      'face',
      'polish',
      'part off',
      'off the lathe',
    ]);
  });

  test('a knurl is rolled on the finished diameter, and is not turned away after it', () => {
    expect(order(operation('knurl', { features: ['k', 'a'] }), operation('finish turn'))).toEqual([
      'finish turn',
      'knurl',
    ]);
  });

  test('setups keep their order, and rules do not reach from one into the other', () => {
    const first = operation('part off', { setup: 'one' });
    const second = operation('face', { setup: 'two' });
    expect(inOrder([second, first], ['one', 'two']).map((d) => d.operation)).toEqual([first, second]);
  });
});

test('an operation says only why it stands right here, not again why the first one was first', () => {
  const [, , , finish] = inOrder(
    [operation('face'), operation('centre'), operation('rough turn'), operation('finish turn')],
    ['s'],
  );
  expect(finish?.reasons).toEqual([rules.find((r) => r.id === 'rough-before-finish')?.why]);
});
