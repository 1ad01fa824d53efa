import { expect, test } from 'vitest';
import { changeForm, withChange } from './change-form.ts';

test('a first word makes the change, the last one taken back takes it out, and what held nothing else goes with it', () => {
  const one = withChange({ title: 'pin' }, 'face-left', ['skip'], true);
  expect(one).toEqual({ title: 'pin', route: { changes: [{ operation: 'face-left', skip: true }] } });
  const two = withChange(one, 'face-left', ['why'], 'sawn clean');
  expect(two).toEqual({
    title: 'pin',
    route: { changes: [{ operation: 'face-left', skip: true, why: 'sawn clean' }] },
  });
  expect(withChange(withChange(two, 'face-left', ['why'], undefined), 'face-left', ['skip'], undefined)).toEqual({
    title: 'pin',
  });
});

test('changes of other operations are left alone', () => {
  const route = { changes: [{ operation: 'drill', minutes: 4 }], count: 2 };
  expect(withChange({ route }, 'face', ['instead'], 'filed')).toEqual({
    route: { ...route, changes: [...route.changes, { operation: 'face', instead: 'filed' }] },
  });
});

test('a refusal of the document stands at the field of the operation it belongs to', () => {
  const form = changeForm(
    {
      document: { route: { changes: [{ operation: 'a' }, { operation: 'b', minutes: 'x' }] } },
      refusals: { 'route.changes[1].minutes': 'no number', 'route.changes[0].why': 'other' },
      put: () => undefined,
      edit: () => undefined,
    },
    'b',
  );
  expect(form.refusals).toEqual({ minutes: 'no number' });
  expect(form.document).toEqual({ operation: 'b', minutes: 'x' });
});
