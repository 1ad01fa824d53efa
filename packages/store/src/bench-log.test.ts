import fc from 'fast-check';
import { expect, test } from 'vitest';
import { jobDocument, temporaryFolder, temporaryStore } from '../test/temporary.ts';
import { connect } from './connection.ts';
import { databasePath } from './data-folder.ts';

const at = '2026-03-01T09:30:00.000Z';

test('entries come back in the order they came in', () => {
  const { jobs, benchLog } = temporaryStore();
  const { id: job } = jobs.create(jobDocument(), {});
  const { id: other } = jobs.create(jobDocument(), {});
  benchLog.append([
    { id: 'a', job, at, content: { dial: 12 } },
    { id: 'b', job: other, at, content: 'x' },
    { id: 'c', job, at, content: null },
  ]);
  expect(benchLog.list(job)).toMatchObject([
    { id: 'a', job, at, content: { dial: 12 } },
    { id: 'c', job, at, content: null },
  ]);
  const [first] = benchLog.list(job);
  expect(benchLog.list(job, first?.sequence).map(({ id }) => id)).toEqual(['c']);
});

test('sending any of the entries again, in any order, changes nothing', () => {
  fc.assert(
    fc.property(fc.array(fc.subarray(['a', 'b', 'c', 'd', 'e']), { maxLength: 8 }), (sends) => {
      const { jobs, benchLog, close } = temporaryStore();
      const { id: job } = jobs.create(jobDocument(), {});
      const sent = new Set<string>();
      for (const send of sends) {
        const outcomes = benchLog.append(send.map((id) => ({ id, job, at, content: { says: id } })));
        expect(outcomes).toEqual(send.map((id) => ({ id, outcome: sent.has(id) ? 'known' : 'added' })));
        for (const id of send) sent.add(id);
      }
      expect(benchLog.list(job).map(({ id, content }) => ({ id, content }))).toEqual(
        [...sent].map((id) => ({ id, content: { says: id } })),
      );
      close();
    }),
    { numRuns: 8 },
  );
});

test('an id that comes with something else is reported, and what was there stays', () => {
  const { jobs, benchLog } = temporaryStore();
  const { id: job } = jobs.create(jobDocument(), {});
  benchLog.append([{ id: 'a', job, at, content: 1 }]);
  expect(benchLog.append([{ id: 'a', job, at, content: 2 }])).toMatchObject([
    { id: 'a', outcome: 'differs', held: { content: 1 } },
  ]);
  expect(benchLog.list(job)).toMatchObject([{ content: 1 }]);
});

test('one entry that cannot be kept does not hold up the others', () => {
  const { jobs, benchLog } = temporaryStore();
  const { id: job } = jobs.create(jobDocument(), {});
  const outcomes = benchLog.append([
    { id: 'a', job: 'nowhere', at, content: 1 },
    { id: '', job, at, content: 1 },
    { id: 'c', job, at: 'yesterday', content: 1 },
    { id: 'd', job, at, content: undefined },
    { id: 'e', job, at, content: 'x'.repeat(70_000) },
    { id: 'g', job, at, content: JSON.parse('['.repeat(30_000) + ']'.repeat(30_000)) },
    { id: 'f', job, at, content: 1 },
  ]);
  expect(outcomes.map(({ outcome }) => outcome)).toEqual([...Array(6).fill('refused'), 'added']);
  expect(outcomes[0]).toMatchObject({ why: 'There is no job nowhere.' });
});

test('a job in the bin still takes entries, for they happened', () => {
  const { jobs, benchLog } = temporaryStore();
  const { id: job } = jobs.create(jobDocument(), {});
  jobs.remove(job);
  expect(benchLog.append([{ id: 'a', job, at, content: 1 }])).toEqual([{ id: 'a', outcome: 'added' }]);
});

test('not even this program can change or remove an entry or a revision', () => {
  const folder = temporaryFolder();
  const { jobs, benchLog } = temporaryStore(folder);
  const { id: job } = jobs.create(jobDocument(), {});
  benchLog.append([{ id: 'a', job, at, content: 1 }]);
  const db = connect(databasePath(folder));
  for (const sql of [
    'DELETE FROM bench_entry',
    "UPDATE bench_entry SET content = '2'",
    'DELETE FROM revision',
    "UPDATE revision SET content = x'00'",
  ])
    expect(() => db.script(sql), sql).toThrow(/never|only added/);
  db.close();
});
