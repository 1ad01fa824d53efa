/** Whether the data on the disk is whole, in words. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { InputError } from '@sparewright/core/errors';
import { migrate } from '@sparewright/core/job/migrate';
import { readJob, readWorkshop } from '@sparewright/core/job/read-document';
import { readAttachment } from './attachments.ts';
import type { Connection } from './connection.ts';
import { attachmentFolder } from './data-folder.ts';
import { unpack } from './packed-json.ts';
import { StoreError } from './store-error.ts';
import { query } from './tables.ts';

export interface CheckReport {
  /** One sentence for each thing that is wrong; empty when all is well. */
  readonly problems: readonly string[];
  readonly documents: number;
  readonly revisions: number;
  readonly benchEntries: number;
  readonly attachments: number;
}

/**
 * `quick`: the database's own quick check, its references, and that the latest revision of every document can be read as JSON
 * and every attachment is there. `thorough`: the full check, every revision, the latest ones against the schema, every file against its hash.
 */
export type Depth = 'quick' | 'thorough';

export function check(db: Connection, folder: string, depth: Depth): CheckReport {
  const thorough = depth === 'thorough';
  const pages = db.column(thorough ? 'PRAGMA integrity_check' : 'PRAGMA quick_check').filter((line) => line !== 'ok');
  const references = new Set(db.column('PRAGMA foreign_key_check'));
  const count = (table: 'document' | 'revision' | 'bench_entry' | 'attachment') =>
    Number(db.column(`SELECT count(*) FROM ${table}`)[0]);
  return {
    problems: [
      ...pages.map((line) => `The database is damaged: ${line}.`),
      ...[...references].map((table) => `An entry of the table ${table} refers to something that is not there.`),
      ...documentProblems(db, thorough),
      ...attachmentProblems(db, attachmentFolder(folder), thorough),
    ],
    documents: count('document'),
    revisions: count('revision'),
    benchEntries: count('bench_entry'),
    attachments: count('attachment'),
  };
}

/** Read a piece at a time: all revisions of all jobs would not fit into memory at once. */
const atOnce = 500;

function documentProblems(db: Connection, thorough: boolean): string[] {
  const found: string[] = [];
  const rows = query
    .selectFrom('document')
    .leftJoin('revision', (join) => {
      const own = join.onRef('revision.document', '=', 'document.key');
      return thorough ? own : own.onRef('revision.number', '=', 'document.head');
    })
    .select(['key', 'kind', 'id', 'head', 'number', 'content'])
    .orderBy('key')
    .orderBy('number')
    .limit(atOnce);
  let from = { key: 0, number: 0 };
  for (;;) {
    const piece = db.all(
      rows.where((of) =>
        of.or([of('key', '>', from.key), of.and([of('key', '=', from.key), of('number', '>', from.number)])]),
      ),
    );
    for (const { kind, id, head, number, content } of piece) {
      const what = `${kind} ${id}, revision ${number ?? head}`;
      if (content === null) found.push(`${what}: is not there.`);
      else found.push(...trouble(what, () => readDocument(kind, content, thorough && number === head)));
    }
    const last = piece.at(-1);
    if (!last || piece.length < atOnce) return found;
    from = { key: last.key, number: last.number ?? 0 };
  }
}

function readDocument(kind: 'job' | 'workshop', content: Buffer, inFull: boolean): void {
  const document = migrate(kind, unpack(content));
  if (inFull) (kind === 'job' ? readJob : readWorkshop)(document);
}

function attachmentProblems(db: Connection, files: string, thorough: boolean): string[] {
  return db.all(query.selectFrom('attachment').select(['hash', 'name'])).flatMap(({ hash, name }) => {
    if (thorough) return trouble(`attachment ${name}`, () => readAttachment(files, hash));
    return existsSync(join(files, hash)) ? [] : [`attachment ${name}: The file ${hash} is gone from the disk.`];
  });
}

/** What a reader has to say against a document or a file; a mistake of this program is not caught. */
function trouble(what: string, read: () => unknown): string[] {
  try {
    read();
    return [];
  } catch (error) {
    if (error instanceof InputError || error instanceof StoreError) return [`${what}: ${error.message}`];
    throw error;
  }
}
