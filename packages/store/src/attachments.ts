/**
 * Photographs and other files that belong to jobs. They lie beside the database, named by the SHA-256 of their content:
 * the same picture is kept once, and a file that was damaged on the disk is noticed.
 */
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { sql } from 'kysely';
import { attachmentTypes, isOfType } from './attachment-types.ts';
import type { Connection } from './connection.ts';
import { attachmentFolder, keptDatabases } from './data-folder.ts';
import { onDisk, writeDurably } from './durable-file.ts';
import { StoreError } from './store-error.ts';
import { query } from './tables.ts';

export interface Attachment {
  /** SHA-256 of the content, 64 hexadecimal digits. */
  readonly hash: string;
  readonly type: string;
  /** The name it came with. */
  readonly name: string;
  /** In bytes. */
  readonly size: number;
  readonly added: string;
}

export interface Attachments {
  /** Keeps a file; one that is there already is not kept twice. @throws StoreError when it is too large or of no kept type */
  put(bytes: Uint8Array, about: { readonly type: string; readonly name: string }): Attachment;
  /** Takes in a file that was laid into the folder beforehand. @throws StoreError when it is not there, or not whole */
  adopt(file: { readonly hash: string; readonly type: string; readonly name: string; readonly size: number }): void;
  /** @throws StoreError when the file is damaged or gone from the disk */
  get(hash: string): (Attachment & { readonly bytes: Buffer }) | undefined;
  /** Those that belong to a job. */
  of(job: string): readonly Attachment[];
  link(job: string, hash: string): void;
  /** Takes it out of the job's list; the file stays, for earlier revisions may show it. */
  unlink(job: string, hash: string): void;
  /** Removes files that no job, revision or bench entry ever referred to, uploaded before `before`. @returns their hashes */
  sweep(before: Date): readonly string[];
}

export const largestAttachment = 25_000_000;

export function attachmentsIn(db: Connection, folder: string): Attachments {
  const files = attachmentFolder(folder);
  onDisk(files, () => mkdirSync(files, { recursive: true, mode: 0o700 }));

  const find = (hash: string) => db.first(query.selectFrom('attachment').selectAll().where('hash', '=', hash));

  function documentOf(job: string): number {
    const key = db.first(
      query.selectFrom('document').select('key').where('kind', '=', 'job').where('id', '=', job),
    )?.key;
    if (key === undefined) throw new StoreError('missing', `There is no job ${job}.`);
    return key;
  }

  /** One that is there already keeps its name, and counts as sent anew. */
  function known(row: Attachment): Attachment {
    const { added, hash } = row;
    const insert = query.insertInto('attachment').values(row);
    db.run(insert.onConflict((of) => of.column('hash').doUpdateSet({ added })));
    return find(hash) ?? row;
  }

  return {
    put(bytes, { type, name }) {
      refuseUnkept(bytes, type);
      const hash = hashOf(bytes);
      const added = new Date().toISOString();
      return db.write(() => {
        // Inside, so that no sweep can come between the file and its row.
        keepFile(files, hash, bytes);
        return known({ hash, type, name: plainName(name), size: bytes.length, added });
      });
    },
    adopt({ hash, type, name, size }) {
      db.write(() => {
        const path = join(files, hash);
        if (!existsSync(path) || statSync(path).size !== size)
          throw new StoreError('missing', `The file ${plainName(name)} is not there any more; bring the job in anew.`);
        known({ hash, type, name: plainName(name), size, added: new Date().toISOString() });
      });
    },
    get(hash) {
      const known = find(hash);
      return known && { ...known, bytes: readAttachment(files, hash) };
    },
    of: (job) =>
      db.all(
        query
          .selectFrom('attachment_link')
          .innerJoin('attachment', 'attachment.hash', 'attachment_link.hash')
          .selectAll('attachment')
          .where('document', '=', documentOf(job))
          .where('hidden', 'is', null)
          .orderBy('since'),
      ),
    link: (job, hash) =>
      db.write(() => {
        if (!find(hash)) throw new StoreError('missing', 'The file is not here; send it first.');
        const row = { document: documentOf(job), hash, since: new Date().toISOString(), hidden: null };
        db.run(
          query
            .insertInto('attachment_link')
            .values(row)
            .onConflict((of) => of.columns(['document', 'hash']).doUpdateSet({ hidden: null })),
        );
      }),
    unlink(job, hash) {
      const hidden = new Date().toISOString();
      db.run(
        query
          .updateTable('attachment_link')
          .set({ hidden })
          .where('document', '=', documentOf(job))
          .where('hash', '=', hash),
      );
    },
    sweep: (before) => sweep(db, files, before),
  };
}

/** Writes the file of an attachment unless it is there. */
export function keepFile(files: string, hash: string, bytes: Uint8Array): void {
  const path = join(files, hash);
  if (existsSync(path) && statSync(path).size === bytes.length && hashOf(readFileSync(path)) === hash) return;
  writeDurably(path, bytes);
}

/** @throws StoreError when the file is gone or not what it was */
export function readAttachment(files: string, hash: string): Buffer {
  const path = join(files, hash);
  if (!existsSync(path))
    throw new StoreError('damaged', `The attachment ${hash} is gone from the disk; restore a backup.`);
  const bytes = readFileSync(path);
  if (hashOf(bytes) !== hash)
    throw new StoreError('damaged', `The attachment ${hash} is not what it was; restore a backup.`);
  return bytes;
}

/** Reads attachments of a data folder that need not be open; undefined for what is not there or damaged. */
export function attachmentReader(folder: string): (hash: string) => Buffer | undefined {
  return (hash) => {
    if (!/^[0-9a-f]{64}$/.test(hash)) return undefined;
    try {
      return readAttachment(attachmentFolder(folder), hash);
    } catch (error) {
      if (error instanceof StoreError) return undefined;
      throw error;
    }
  };
}

export function hashOf(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}

/** @throws StoreError when such a file is not kept */
export function refuseUnkept(bytes: Uint8Array, type: string): void {
  if (bytes.length > largestAttachment)
    throw new StoreError('not kept', `The file has ${bytes.length} bytes; at most ${largestAttachment} are kept.`);
  if (!attachmentTypes.includes(type))
    throw new StoreError(
      'not kept',
      `Files of type ${type.slice(0, 40)} are not kept; kept are ${attachmentTypes.join(', ')}.`,
    );
  if (!isOfType(bytes, type)) throw new StoreError('not kept', `The content of the file is not ${type}.`);
}

/** A name without folders and signs that would not stand in a file name. */
function plainName(name: string): string {
  return (
    name
      .replace(/^.*[\\/]/, '')
      .replace(/[\p{C}"<>|:*?]/gu, '')
      .slice(-120) || 'file'
  );
}

function sweep(db: Connection, files: string, before: Date): string[] {
  const time = before.toISOString();
  const unused = sql<boolean>`hash NOT IN (SELECT hash FROM attachment_link UNION SELECT hash FROM attachment_mention)`;
  db.write(() => db.run(query.deleteFrom('attachment').where('added', '<', time).where(unused)));
  // A database kept by a restore refers to files that the present one does not know.
  if (keptDatabases(dirname(files)).length > 0) return [];
  return db.write(() => {
    const known = new Set(db.all(query.selectFrom('attachment').select('hash')).map(({ hash }) => hash));
    const strays = readdirSync(files).filter((name) => !known.has(name) && statSync(join(files, name)).mtime < before);
    for (const name of strays) rmSync(join(files, name));
    return strays;
  });
}
