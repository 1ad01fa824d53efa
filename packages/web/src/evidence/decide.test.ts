/** What becomes of a job when a size is settled, overridden or left open. */
import { describe, expect, test } from 'vitest';
import { heldOpen, overridden, taken, typedInto } from './decide.ts';

const at = ['part', 'outside', 0, 'diameter'] as const;
const guide = { of: 'guide.diameter', openAs: 'guide.diameter', ownAt: at };
const take = {
  name: 'As it was designed',
  write: '6 f7',
  means: '',
  why: 'nominal 6 is sure',
  puts: [{ at, value: '6 f7' }],
};
const job = {
  part: { leftOpen: ['guide.diameter', 'guide.length'], outside: [{ id: 'guide', diameter: '6.1', length: '20' }] },
  decisions: [
    { id: 'size-1', about: 'guide.diameter', decided: 'left open', why: 'too few readings' },
    { id: 'seal', about: 'seal-groove', decided: 'one ring', why: 'the cup is no longer made' },
  ],
};

describe('a recovered size', () => {
  test('taken: the value, the decision in place of the earlier one, and ink', () => {
    expect(taken(job, guide, take)).toEqual({
      part: { leftOpen: ['guide.length'], outside: [{ id: 'guide', diameter: '6 f7', length: '20' }] },
      decisions: [
        { id: 'seal', about: 'seal-groove', decided: 'one ring', why: 'the cup is no longer made' },
        { id: 'size-2', about: 'guide.diameter', decided: '6 f7, as it was designed', why: 'nominal 6 is sure' },
      ],
    });
  });

  test('overridden: the own value with its reason', () => {
    expect(overridden(job, guide, '6 e8', 'the bore was honed')).toMatchObject({
      part: { outside: [{ diameter: '6 e8' }] },
      decisions: [{ id: 'seal' }, { decided: '6 e8, chosen by hand', why: 'the bore was honed' }],
    });
  });

  test('left open: the value stays, in pencil, and once only', () => {
    const once = heldOpen({ part: { outside: [{ id: 'guide', diameter: '6' }] } }, guide, 'worn all over');
    expect(once).toMatchObject({ part: { leftOpen: ['guide.diameter'], outside: [{ diameter: '6' }] } });
    expect(heldOpen(once, guide, 'worn all over')).toEqual({
      ...Object(once),
      decisions: [{ id: 'size-2', about: 'guide.diameter', decided: 'left open', why: 'worn all over' }],
    });
  });

  test('typed into the part it is settled, and the list of open sizes goes with its last one', () => {
    const one = typedInto(job, at, '6');
    expect(one).toMatchObject({ part: { leftOpen: ['guide.length'] } });
    const two = typedInto(one, ['part', 'outside', 0, 'length'], '21');
    expect(two).toMatchObject({ part: { outside: [{ diameter: '6', length: '21' }] } });
    expect(Object(two).part).not.toHaveProperty('leftOpen');
  });

  test('a decision is cut to what a document takes', () => {
    const long = overridden(job, guide, '6', 'x'.repeat(3000));
    expect(Object(long).decisions.at(-1).why).toHaveLength(1000);
  });
});
