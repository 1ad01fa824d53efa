import { InputError } from '@sparewright/core/errors';
import type { JsonObject } from '@sparewright/core/job/merge';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { jobDocument, plunger, temporaryFolder, temporaryStore } from '../test/temporary.ts';
import { openStore } from './open-store.ts';
import { StoreError, type StoreReason } from './store-error.ts';

const everything = { limit: 100, offset: 0 };

function reasonOf(action: () => unknown): StoreReason | undefined {
  try {
    action();
  } catch (error) {
    if (error instanceof StoreError) return error.reason;
    throw error;
  }
  return undefined;
}

describe('a job', () => {
  test('is there after the program ended, as typed', () => {
    const folder = temporaryFolder();
    const first = openStore({ folder });
    const { id } = first.jobs.create(plunger, { stage: 'duty', worst: { level: 'stop', says: 'The wall is thin.' } });
    first.close();
    const { jobs } = temporaryStore(folder);
    expect(jobs.get(id).document).toEqual(plunger);
    expect(jobs.list(everything)).toMatchObject({
      total: 1,
      jobs: [
        {
          id,
          title: plunger.title,
          machine: 'Orchard sprayer, three-cylinder pump',
          hazard: 'pressure',
          revision: 1,
          stage: 'duty',
          worst: { level: 'stop', says: 'The wall is thin.' },
        },
      ],
    });
  });

  test('that is none is refused with its place, and nothing is stored', () => {
    const { jobs } = temporaryStore();
    expect(() => jobs.create(jobDocument({ units: 'ell' }), {})).toThrow(
      'units: got "ell", expected one of "mm", "in"',
    );
    expect(() => jobs.create(undefined, {})).toThrow(InputError);
    expect(() => jobs.create(JSON.parse(`${'['.repeat(99_999)}${']'.repeat(99_999)}`), {})).toThrow(
      'at most 100 levels',
    );
    const { id } = jobs.create(jobDocument(), {});
    expect(() => jobs.save(id, 1, jobDocument({ colour: 'red' }), {})).toThrow('no field named colour');
    expect(jobs.list(everything).total).toBe(1);
    expect(jobs.revisions(id)).toHaveLength(1);
  });

  test('created twice under one id is one job; another under that id is refused', () => {
    const { jobs } = temporaryStore();
    jobs.create(plunger, {}, { id: 'plunger' });
    expect(jobs.create(plunger, {}, { id: 'plunger' })).toEqual({ id: 'plunger', revision: 1 });
    jobs.save('plunger', 1, { ...plunger, title: 'Changed since' }, {});
    expect(jobs.create(plunger, {}, { id: 'plunger' })).toEqual({ id: 'plunger', revision: 2 });
    expect(jobs.get('plunger').document).toMatchObject({ title: 'Changed since' });
    expect(reasonOf(() => jobs.create(jobDocument(), {}, { id: 'plunger' }))).toBe('taken');
    expect(jobs.list(everything).total).toBe(1);
    expect(() => jobs.create(plunger, {}, { id: '../../etc' })).toThrow('expected small letters');
  });

  test('removed lies in the bin, is not found, cannot be changed, and can be put back', () => {
    const { jobs } = temporaryStore();
    const { id } = jobs.create(plunger, {});
    jobs.remove(id);
    expect(jobs.list(everything)).toEqual({ jobs: [], total: 0 });
    expect(jobs.list({ ...everything, search: 'plunger' }).total).toBe(0);
    expect(jobs.list({ ...everything, bin: true }).jobs.map((job) => job.id)).toEqual([id]);
    expect(jobs.get(id).document).toEqual(plunger);
    expect(reasonOf(() => jobs.save(id, 1, jobDocument(), {}))).toBe('in the bin');
    jobs.putBack(id);
    expect(jobs.list({ ...everything, search: 'plunger' }).total).toBe(1);
  });

  test('copied begins a history of its own', () => {
    const { jobs } = temporaryStore();
    const { id } = jobs.create(plunger, { stage: 'route' });
    const copy = jobs.copy(id, 'The twin');
    jobs.save(copy.id, 1, jobDocument(), {});
    expect(jobs.get(id).document).toEqual(plunger);
    expect(jobs.revision(copy.id, 1)).toMatchObject({ document: { title: 'The twin' }, summary: { stage: 'route' } });
  });

  test('that does not exist is said to be missing', () => {
    const { jobs } = temporaryStore();
    expect(() => jobs.get('nowhere')).toThrow('There is no job nowhere.');
    const { id } = jobs.create(jobDocument(), {});
    expect(() => jobs.revision(id, 7)).toThrow('There is no revision 7; the latest is 1.');
    expect(() => jobs.save(id, 7, jobDocument({ title: 'x' }), {})).toThrow('There is no revision 7');
  });
});

describe('saving', () => {
  test('upon the latest revision makes the next, and every one can be read again', () => {
    const { jobs } = temporaryStore();
    const { id } = jobs.create(jobDocument(), {}, { author: 'desk' });
    expect(jobs.save(id, 1, jobDocument({ title: 'Two' }), {}, { author: 'phone' })).toMatchObject({
      kind: 'saved',
      revision: 2,
    });
    expect(jobs.revision(id, 1).document).toEqual(jobDocument());
    expect(jobs.revisions(id)).toMatchObject([
      { number: 1, author: 'desk' },
      { number: 2, author: 'phone' },
    ]);
  });

  test('the same thing twice, or nothing new, makes no revision', () => {
    const { jobs } = temporaryStore();
    const { id } = jobs.create(jobDocument(), {});
    const two = jobDocument({ title: 'Two' });
    expect(jobs.save(id, 1, two, {})).toEqual(jobs.save(id, 1, two, {}));
    expect(jobs.revisions(id)).toHaveLength(2);
  });

  test('a change of something else since is merged, and what differs from what was sent is named', () => {
    const { jobs } = temporaryStore();
    const { id } = jobs.create(jobDocument(), {});
    jobs.save(id, 1, jobDocument({ title: 'From the desk' }), {});
    expect(jobs.save(id, 1, jobDocument({ notes: 'from the phone' }), {})).toEqual({
      kind: 'merged',
      revision: 3,
      document: jobDocument({ title: 'From the desk', notes: 'from the phone' }),
      changed: ['title'],
    });
    jobs.summarise(id, 3, { stage: 'part' });
    expect(jobs.get(id).summary.stage).toBe('part');
    expect(() => jobs.summarise(id, 9, {})).toThrow('There is no revision 9');
  });

  test('a change of the same thing is a conflict that stores nothing', () => {
    const { jobs } = temporaryStore();
    const { id } = jobs.create(jobDocument(), {});
    const desk = jobDocument({ title: 'From the desk' });
    jobs.save(id, 1, desk, {});
    expect(jobs.save(id, 1, jobDocument({ title: 'From the phone' }), {})).toEqual({
      kind: 'conflict',
      theirs: desk,
      revision: 2,
      paths: ['title'],
      conflicts: [{ path: 'title', base: 'A pin', ours: 'From the phone', theirs: 'From the desk' }],
    });
    expect(jobs.revisions(id)).toHaveLength(2);
  });

  test('two sound changes that together are no job are a conflict of the whole', () => {
    const { jobs } = temporaryStore();
    const list = (from: number) =>
      Array.from({ length: 6 }, (_, i) => ({ id: `s${from + i}`, name: `Specimen ${from + i}` }));
    const many = (lists: JsonObject[]) => jobDocument({ evidence: { specimens: lists } });
    const { id } = jobs.create(many(list(0)), {});
    jobs.save(id, 1, many([...list(0), ...list(10), ...list(20)]), {});
    expect(jobs.save(id, 1, many([...list(0), ...list(30)]), {})).toMatchObject({ kind: 'conflict', paths: [''] });
  });

  test('going back is a revision more', () => {
    const { jobs } = temporaryStore();
    const { id } = jobs.create(jobDocument(), { stage: 'evidence' });
    jobs.save(id, 1, jobDocument({ title: 'Two' }), { stage: 'part' });
    expect(jobs.restore(id, 1)).toMatchObject({ kind: 'saved', revision: 3, document: jobDocument() });
    expect(jobs.list(everything).jobs[0]).toMatchObject({ title: 'A pin', stage: 'evidence', revision: 3 });
  });
});

describe('undoing', () => {
  const titles = (text: string) => jobDocument({ title: text });

  test('twice over from two devices takes one change back', () => {
    const { jobs } = temporaryStore();
    const { id } = jobs.create(titles('one'), {});
    jobs.save(id, 1, titles('two'), {});
    jobs.save(id, 2, titles('three'), {});
    jobs.takeBack(id, 3, 'desk');
    jobs.takeBack(id, 3, 'phone');
    expect(jobs.get(id)).toMatchObject({ number: 4, undoes: 3, document: titles('two') });
  });

  test('a change leaves what others changed since', () => {
    const { jobs } = temporaryStore();
    const { id } = jobs.create(titles('one'), {});
    jobs.save(id, 1, titles('two'), {});
    jobs.save(id, 2, { ...titles('two'), notes: 'mine' }, {});
    expect(jobs.takeBack(id, 2)).toMatchObject({ kind: 'merged', document: { title: 'one', notes: 'mine' } });
  });
});

describe('searching', () => {
  test.each([
    ['plung', 'the beginning of a word of the title'],
    ['ORCHARD sprayer', 'several words in any case'],
    ['seal-groove', 'a feature by its id'],
    ['303', 'the material'],
    ['pitted', 'the name of a specimen'],
    ['büchse', 'letters with or without their marks'],
  ])('finds a job by %s: %s', (search) => {
    const { jobs } = temporaryStore();
    const { id } = jobs.create({ ...plunger, notes: 'läuft in der Buchse' }, {});
    jobs.create(jobDocument(), {});
    expect(jobs.list({ ...everything, search }).jobs.map((job) => job.id)).toEqual([id]);
  });

  test('finds no more what is not in the latest revision', () => {
    const { jobs } = temporaryStore();
    const { id } = jobs.create(jobDocument({ title: 'Spindle' }), {});
    jobs.save(id, 1, jobDocument({ title: 'Piston' }), {});
    expect(jobs.list({ ...everything, search: 'spindle' }).total).toBe(0);
    expect(jobs.list({ ...everything, search: 'piston' }).total).toBe(1);
  });

  test('a word in the title comes before one in the notes', () => {
    const { jobs } = temporaryStore();
    jobs.create(jobDocument({ notes: 'next to the valve' }), {});
    const { id } = jobs.create(jobDocument({ title: 'Valve' }), {});
    jobs.create(jobDocument({ notes: 'under the valve' }), {});
    const found = jobs.list({ search: 'valve', limit: 2, offset: 0 });
    expect(found.jobs[0]?.id).toBe(id);
    expect(found).toMatchObject({ total: 3, jobs: { length: 2 } });
    expect(jobs.list({ search: 'valve', limit: 2, offset: 2 }).jobs).toHaveLength(1);
  });

  test('takes anything that can be typed', () => {
    const { jobs } = temporaryStore();
    jobs.create(plunger, {});
    fc.assert(
      fc.property(
        fc.oneof(fc.string({ unit: 'binary' }), fc.constantFrom('"', 'a" OR "b', 'NEAR(', '-', '*', 'title:x')),
        (search) => {
          expect(jobs.list({ ...everything, search }).total).toBeLessThanOrEqual(1);
        },
      ),
      { numRuns: 40 },
    );
  });
});
