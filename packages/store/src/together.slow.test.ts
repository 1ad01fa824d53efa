import { afterAll, beforeAll, expect, test } from 'vitest';
import { bundleWriter, start } from '../test/other-process.ts';
import { jobDocument, temporaryFolder, temporaryStore } from '../test/temporary.ts';
import { restoreBackup } from './restore.ts';

let writer: Awaited<ReturnType<typeof bundleWriter>>;
beforeAll(async () => {
  writer = await bundleWriter();
});
afterAll(() => writer.remove());

test('three programs that change one job at once lose nothing of each other', async () => {
  const folder = temporaryFolder();
  const each = 60;
  // The data folder is new: they also make the tables at the same time.
  const names = ['a', 'b', 'c'];
  const others = names.map((name) => start(writer.path, 'together', folder, name, String(each)));
  await Promise.all(others.map(({ opened }) => opened));
  for (const { child } of others) child.stdin.end();
  const ends = await Promise.all(others.map(({ ended }) => ended));
  for (const { complaints, code } of ends) expect({ complaints, code }).toEqual({ complaints: '', code: 0 });
  const wanted = names.flatMap((name) => Array.from({ length: each }, (_, i) => `${name}-${i}`)).toSorted();
  const { jobs, benchLog, check } = temporaryStore(folder);
  const document: { evidence: { readings: { id: string }[] } } = JSON.parse(
    JSON.stringify(jobs.get('shared').document),
  );
  expect(document.evidence.readings.map(({ id }) => id).toSorted()).toEqual(wanted);
  expect(
    benchLog
      .list('shared')
      .map(({ id }) => id)
      .toSorted(),
  ).toEqual(wanted);
  expect(jobs.revisions('shared')).toHaveLength(1 + names.length * each);
  expect(check('thorough').problems).toEqual([]);
  // Otherwise they worked one after the other.
  const authors = jobs.revisions('shared').map(({ author }) => author);
  expect(authors.filter((author, i) => author !== authors[i - 1]).length).toBeGreaterThan(each / 6);
});

test('a restore waits for nobody: while another program has the folder open it is refused', async () => {
  const folder = temporaryFolder();
  const store = temporaryStore();
  store.jobs.create(jobDocument(), {});
  const from = `${temporaryFolder()}/all.backup`;
  await store.backup(from);
  const { child, opened, ended } = start(writer.path, 'work', folder, 'x');
  await opened;
  expect(() => restoreBackup({ from, folder })).toThrow('Another Sparewright has the data folder open');
  child.kill('SIGKILL');
  await ended;
  // Its lock went with it.
  expect(restoreBackup({ from, folder }).report.problems).toEqual([]);
});
