import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { jobDocument, picture, plunger, temporaryFolder, workshopDocument } from '../test/temporary.ts';
import { openStore, type Store } from './open-store.ts';
import { restoreBackup } from './restore.ts';

type Deed = { readonly kind: 'create' | 'save' | 'log' | 'photo' | 'bin' | 'workshop'; readonly n: number };
const deed: fc.Arbitrary<Deed> = fc.record({
  kind: fc.constantFrom('create', 'save', 'log', 'photo', 'bin', 'workshop'),
  n: fc.nat(5),
});

function act(store: Store, { kind, n }: Deed, step: number): void {
  const all = store.jobs.list({ limit: 100, offset: 0 }).jobs;
  const job = all[n % Math.max(1, all.length)]?.id;
  if (kind === 'workshop') {
    const base = store.workshop.get()?.number ?? 0;
    store.workshop.save(base, { ...workshopDocument, note: String(step) });
    store.workshop.name(base + 1, `state ${n}`);
  } else if (kind === 'create' || job === undefined) store.jobs.create(jobDocument({ title: `Job ${step}` }), {});
  else if (kind === 'save')
    store.jobs.save(job, store.jobs.get(job).number, { ...plunger, notes: `${step}` }, { stage: 'part' });
  else if (kind === 'log') store.benchLog.append([{ id: `e${step}`, job, at: '2026-03-01T09:30:00Z', content: step }]);
  else if (kind === 'bin') store.jobs.remove(job);
  else store.attachments.link(job, store.attachments.put(picture(step), { type: 'image/png', name: 'a.png' }).hash);
}

/** Everything that can be asked of a store. */
function everything(store: Store) {
  const jobs = [false, true].flatMap((bin) => store.jobs.list({ limit: 100, offset: 0, bin }).jobs);
  return {
    jobs,
    details: jobs.map(({ id }) => ({
      revisions: store.jobs.revisions(id).map(({ number }) => store.jobs.revision(id, number)),
      entries: store.benchLog.list(id),
      attachments: store.attachments.of(id).map(({ hash }) => store.attachments.get(hash)),
    })),
    found: store.jobs.list({ search: 'job', limit: 100, offset: 0 }),
    workshop: store.workshop.revisions().map(({ number }) => store.workshop.revision(number)),
    states: store.workshop.states(),
  };
}

test('a backup of anything, restored into an empty folder, gives back everything', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(deed, { maxLength: 15 }), async (deeds) => {
      const [folder, target, away] = [temporaryFolder(), join(temporaryFolder(), 'new'), temporaryFolder()];
      const store = openStore({ folder });
      for (const [step, one] of deeds.entries()) act(store, one, step);
      const path = join(away, 'all.backup');
      const { problems } = await store.backup(path);
      expect(problems).toEqual([]);
      expect(readdirSync(away)).toEqual(['all.backup']);
      const { report, kept } = restoreBackup({ from: path, folder: target });
      expect(report.problems).toEqual([]);
      expect(kept).toBeUndefined();
      const restored = openStore({ folder: target });
      expect(everything(restored)).toEqual(everything(store));
      restored.close();
      store.close();
    }),
    { numRuns: 30 },
  );
});
