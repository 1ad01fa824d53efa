/**
 * What was acknowledged survives a killed process. This kills processes, not the power: what the disk itself would
 * forget in a power cut is asked for by `synchronous=FULL` and fsync, and cannot be tried here.
 */

import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { bundleWriter, start, type Told } from '../test/other-process.ts';
import { jobDocument, picture, plunger, temporaryFolder } from '../test/temporary.ts';
import type { Depth } from './check.ts';
import { openStore } from './open-store.ts';

let writer: Awaited<ReturnType<typeof bundleWriter>>;
beforeAll(async () => {
  writer = await bundleWriter();
});
afterAll(() => writer.remove());

/** Repeatable chance. */
function chance(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

/** Starts a writer and kills it: mostly while it writes, sometimes while it is still opening. @returns what it told */
async function killOnce(words: readonly string[], random: () => number, longest: number): Promise<Told[]> {
  const { child, opened, ended } = start(writer.path, ...words);
  if (random() < 0.15) await Promise.race([sleep(200 * random()), ended]);
  else {
    await opened;
    await Promise.race([sleep(longest * random()), ended]);
  }
  child.kill('SIGKILL');
  const { told, complaints } = await ended;
  expect(complaints).toBe('');
  return told;
}

/** Everything that was acknowledged, over all rounds in one folder, must be there and whole. */
function verify(folder: string, acknowledged: readonly Told[], depth: Depth): void {
  const store = openStore({ folder });
  try {
    expect(store.report.problems).toEqual([]);
    if (depth === 'thorough') expect(store.check('thorough').problems).toEqual([]);
    if (acknowledged.length === 0) return;
    const entries = new Map(store.benchLog.list('job').map(({ id, content }) => [id, content]));
    const photos = new Set(store.attachments.of('job').map(({ hash }) => hash));
    for (const { did, what = '', revision = 0 } of acknowledged) {
      if (did === 'save') expect(store.jobs.revision('job', revision).document).toMatchObject({ title: what });
      if (did === 'log') expect(entries.get(what)).toBe(what);
      if (did === 'photo') expect(photos.has(what), what).toBe(true);
    }
  } finally {
    store.close();
  }
}

const lanes = 2;
const foldersEach = 13;
const roundsEach = 8;

test(`in ${lanes * foldersEach * roundsEach} kills at random moments nothing acknowledged is lost`, async () => {
  let rounds = 0;
  let deeds = 0;
  async function lane(number: number): Promise<void> {
    const random = chance(20260301 + number);
    for (let f = 0; f < foldersEach; f++) {
      const folder = temporaryFolder();
      const acknowledged: Told[] = [];
      for (let r = 0; r < roundsEach; r++) {
        const told = await killOnce(['work', folder, `${f}-${r}`], random, 60);
        acknowledged.push(...told.filter(({ did }) => did !== 'open'));
        // The pages and files are looked through once for each folder: what was damaged stays so.
        verify(folder, acknowledged, r === roundsEach - 1 ? 'thorough' : 'quick');
        rounds++;
      }
      deeds += acknowledged.length;
    }
  }
  await Promise.all(Array.from({ length: lanes }, (_, number) => lane(number)));
  console.log(`${rounds} kills, ${deeds} acknowledged writes, none lost`);
  expect(rounds).toBe(lanes * foldersEach * roundsEach);
  // Otherwise the processes died before they did anything worth losing.
  expect(deeds).toBeGreaterThan(rounds);
});

test('a restore killed at any moment leaves the old data or the new, whole', async () => {
  const source = openStore({ folder: temporaryFolder() });
  source.jobs.create(plunger, {}, { id: 'new' });
  for (let n = 0; n < 6; n++)
    source.attachments.link('new', source.attachments.put(picture(n), { type: 'image/png', name: 'a.png' }).hash);
  const from = join(temporaryFolder(), 'all.backup');
  await source.backup(from);
  source.close();
  // How long one takes here and now, from the moment it says that it begins.
  const { opened, ended } = start(writer.path, 'restore', temporaryFolder(), from);
  await opened;
  const begun = performance.now();
  await ended;
  const longest = 1.3 * (performance.now() - begun);
  const random = chance(7);
  const outcomes = new Set<string>();
  for (let round = 0; round < 30; round++) {
    const folder = temporaryFolder();
    const old = openStore({ folder });
    old.jobs.create(jobDocument(), {}, { id: 'old' });
    old.close();
    await killOnce(['restore', folder, from], random, longest);
    const store = openStore({ folder });
    const found = store.jobs
      .list({ limit: 9, offset: 0 })
      .jobs.map(({ id }) => id)
      .join();
    expect(['old', 'new']).toContain(found);
    expect(store.check('thorough').problems).toEqual([]);
    outcomes.add(found);
    store.close();
  }
  expect([...outcomes].toSorted()).toEqual(['new', 'old']);
});
