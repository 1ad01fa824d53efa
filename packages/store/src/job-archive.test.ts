import { InputError } from '@sparewright/core/errors';
import { describe, expect, test } from 'vitest';
import { jobDocument, picture, plunger, temporaryStore } from '../test/temporary.ts';
import type { Store } from './open-store.ts';
import { prepareArchive } from './read-archive.ts';

const bringIn = (store: Store, text: string) => store.archives.adopt(prepareArchive(text, store.folder));

/** A job with a past, entries, and photographs: one linked, one taken out again, one of another job. */
function filled(store: Store): string {
  const { id } = store.jobs.create(plunger, {}, { id: 'plunger', author: 'desk' });
  store.jobs.save(id, 1, { ...plunger, notes: 'second thoughts' }, {});
  store.jobs.takeBack(id, 2, 'desk');
  store.benchLog.append([{ id: 'a', job: id, at: '2026-03-01T09:30:00Z', content: { dial: 3 } }]);
  const [one, two, other] = [1, 2, 3].map((n) =>
    store.attachments.put(picture(n), { type: 'image/png', name: `${n}.png` }),
  );
  store.attachments.link(id, one?.hash ?? '');
  store.attachments.link(id, two?.hash ?? '');
  store.attachments.unlink(id, two?.hash ?? '');
  store.attachments.link(store.jobs.create(jobDocument(), {}).id, other?.hash ?? '');
  return id;
}

const portable = (store: Store, id: string) => ({
  document: store.jobs.get(id).document,
  revisions: store.jobs.revisions(id),
  documents: store.jobs.revisions(id).map(({ number }) => store.jobs.revision(id, number).document),
  steps: store.jobs.steps(id),
  entries: store.benchLog.list(id).map(({ at, content, id: entry }) => ({ at, content, entry })),
  attachments: store.attachments.of(id).map(({ hash, type, name, size }) => ({ hash, type, name, size })),
});

describe('an archive of a job', () => {
  test('brings everything of it to another computer', () => {
    const here = temporaryStore();
    const there = temporaryStore();
    const id = filled(here);
    expect(bringIn(there, here.archives.export(id))).toEqual({ id, revision: 3 });
    expect(portable(there, id)).toEqual(portable(here, id));
    expect(there.check('thorough')).toMatchObject({ problems: [], attachments: 2 });
    expect(there.jobs.list({ search: 'orchard', limit: 5, offset: 0 }).total).toBe(1);
  });

  test('brought in where the job is already becomes another job', () => {
    const store = temporaryStore();
    const id = filled(store);
    const copy = bringIn(store, store.archives.export(id));
    expect(copy.id).not.toBe(id);
    expect(portable(store, copy.id)).toEqual(portable(store, id));
  });

  test('brings along an earlier state that today’s rules would refuse, but not such a latest one', () => {
    const here = temporaryStore();
    const there = temporaryStore();
    const { id } = here.jobs.create(plunger, {});
    here.jobs.save(id, 1, { ...plunger, hazard: 'lifting' }, {});
    const text = here.archives.export(id);
    const early = text.replace('"hazard":"pressure"', '"hazard":"steam"');
    expect(bringIn(there, early).revision).toBe(2);
    expect(there.jobs.revision(id, 1).document).toMatchObject({ hazard: 'steam' });
    expect(() => there.jobs.restore(id, 1)).toThrow('hazard: got "steam"');
    expect(() => bringIn(there, text.replace('"hazard":"lifting"', '"hazard":"steam"'))).toThrow('hazard');
  });

  test.each([
    ['{', 'expected JSON text'],
    ['{}', 'sparewright: got nothing'],
    ['{"sparewright":"job archive","version":2}', 'it was written by a newer program'],
  ])('that is none is refused: %s', (text, says) => {
    const store = temporaryStore();
    expect(() => bringIn(store, text)).toThrow(InputError);
    expect(() => bringIn(store, text)).toThrow(says);
  });

  test.each([
    [
      'a document that is no job',
      (text: string) => text.replaceAll('"hazard":"pressure"', '"hazard":"none"'),
      'hazard',
    ],
    ['a changed photograph', (text: string) => text.replace('ZSAx', 'ZSAy'), 'is damaged'],
    [
      'an entry twice',
      (text: string) => text.replace(/"benchLog":\[(.*?)\],"att/, '"benchLog":[$1,$1],"att'),
      'not sound',
    ],
  ])('with %s is refused, and nothing of it stays', (_, damage, says) => {
    const here = temporaryStore();
    const there = temporaryStore();
    const text = here.archives.export(filled(here));
    expect(damage(text)).not.toBe(text);
    expect(() => bringIn(there, damage(text))).toThrow(says);
    expect(there.check('thorough')).toMatchObject({ problems: [], documents: 0, attachments: 0, benchEntries: 0 });
  });
});
