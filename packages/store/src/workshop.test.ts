import { expect, test } from 'vitest';
import { temporaryStore, workshopDocument } from '../test/temporary.ts';

test('there is no workshop until one is saved, and then there is one', () => {
  const { workshop } = temporaryStore();
  expect(workshop.get()).toBeUndefined();
  expect(workshop.states()).toEqual([]);
  expect(workshop.save(0, workshopDocument)).toMatchObject({ kind: 'saved', revision: 1 });
  expect(workshop.get()).toMatchObject({ number: 1, document: workshopDocument });
});

test('what is no workshop is refused', () => {
  const { workshop } = temporaryStore();
  expect(() => workshop.save(0, { ...workshopDocument, name: 3 })).toThrow('name: got 3');
  expect(workshop.get()).toBeUndefined();
});

test('a state can be kept under a name, and gone back to', () => {
  const { workshop } = temporaryStore();
  workshop.save(0, workshopDocument);
  workshop.name(1, 'before the new bearings');
  workshop.save(1, { ...workshopDocument, note: 'new bearings' });
  expect(workshop.states()).toEqual([{ name: 'before the new bearings', revision: 1 }]);
  expect(workshop.restore(1)).toMatchObject({ kind: 'saved', revision: 3, document: workshopDocument });
  workshop.name(2, 'before the new bearings');
  expect(workshop.states()).toEqual([{ name: 'before the new bearings', revision: 2 }]);
  expect(() => workshop.name(9, 'x')).toThrow('There is no revision 9');
  expect(() => workshop.name(1, ' ')).toThrow('a name of 1 to 80 characters');
});

test('two devices that each enter the first workshop are told', () => {
  const { workshop } = temporaryStore();
  workshop.save(0, workshopDocument);
  expect(workshop.save(0, { ...workshopDocument, name: 'Mine' })).toMatchObject({ kind: 'conflict', paths: ['name'] });
});
