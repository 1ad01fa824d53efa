/** The workshop: one document, every state of it kept, some of them under a name. */
import { InputError } from '@sparewright/core/errors';
import { readWorkshop } from '@sparewright/core/job/read-document';
import type { Connection } from './connection.ts';
import { type History, historyOf, type Revision, type Saved, type SaveNotes, type Stored } from './history.ts';
import { query } from './tables.ts';

export interface WorkshopStore {
  /** Undefined until one is saved. */
  get(): Stored | undefined;
  /** The first is saved upon 0. @throws InputError when the document is no workshop */
  save(base: number, document: unknown, notes?: Omit<SaveNotes, 'summary'>): Saved;
  revisions(): readonly Revision[];
  revision(number: number): Stored;
  restore(number: number, author?: string): Saved;
  /** Keeps a revision under a name, such as `before the new bearings`; a name that exists moves to it. */
  name(number: number, name: string): void;
  states(): readonly { name: string; revision: number }[];
}

export function workshopIn(db: Connection): WorkshopStore {
  const find = () =>
    db.first(query.selectFrom('document').select('key').where('kind', '=', 'workshop').where('id', '=', 'workshop'))
      ?.key;

  function history(): History {
    const key = find();
    return historyOf(db, { kind: 'workshop', key: key ?? 0, check: readWorkshop, saved: () => {} });
  }

  return {
    get() {
      const { head, revision } = history();
      return head() === 0 ? undefined : revision(head());
    },
    save: (base, document, notes = {}) =>
      db.write(() => {
        if (find() === undefined)
          db.run(query.insertInto('document').values({ kind: 'workshop', id: 'workshop', head: 0 }));
        return history().save(base, document, notes);
      }),
    revisions: () => history().revisions(),
    revision: (number) => history().revision(number),
    restore: (number, author) => history().restore(number, { author }),
    name(number, name) {
      if (name.trim() === '' || name.length > 80)
        throw new InputError([
          { path: 'name', value: name, expected: 'a name of 1 to 80 characters', example: 'spring' },
        ]);
      db.write(() => {
        const { key, revision } = history();
        const row = { document: key, name: name.trim(), number: revision(number).number };
        db.run(
          query
            .insertInto('revision_name')
            .values(row)
            .onConflict((of) => of.columns(['document', 'name']).doUpdateSet({ number: row.number })),
        );
      });
    },
    states: () =>
      db.all(
        query
          .selectFrom('revision_name')
          .select(['name', 'number as revision'])
          .where('document', '=', history().key)
          .orderBy('number'),
      ),
  };
}
