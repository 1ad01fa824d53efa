/**
 * Puts a backup in place of what is in a data folder. The backup is looked through to the last page first; the database is
 * then exchanged in one step, so that a process killed at any moment leaves the old one or the new one, whole.
 */
import { constants, copyFileSync, existsSync, mkdirSync, renameSync, rmSync } from 'node:fs';
import { hashOf, keepFile } from './attachments.ts';
import { type CheckReport, check } from './check.ts';
import { type Connection, connect } from './connection.ts';
import { attachmentFolder, databasePath, keptPath } from './data-folder.ts';
import { onDisk, syncFile, syncFolder } from './durable-file.ts';
import { lockAlone } from './folder-lock.ts';
import { migrateSchema, refuseForeign } from './migrate-schema.ts';
import { StoreError } from './store-error.ts';
import { query } from './tables.ts';

export interface Restored {
  readonly report: CheckReport;
  /** Where the database that was there before is kept; undefined when there was none. */
  readonly kept: string | undefined;
}

/** @throws StoreError when the file is no sound backup, or somebody has the folder open; then nothing was changed */
export function restoreBackup({ from, folder }: { readonly from: string; readonly folder: string }): Restored {
  // Whoever has the folder open is told before the work, not after it.
  makeFolder(from, folder);
  lockAlone(folder).release();
  try {
    const report = prepareRestore({ from, folder });
    return { report, kept: finishRestore(folder) };
  } finally {
    discardRestore(folder);
  }
}

/**
 * The first and longer part of a restore: looks a backup through and lays it beside the database, which may be in use meanwhile.
 *
 * @throws StoreError when the file is no sound backup; then nothing was changed
 */
export function prepareRestore({ from, folder }: { readonly from: string; readonly folder: string }): CheckReport {
  makeFolder(from, folder);
  const path = unfinished(folder);
  discardRestore(folder);
  onDisk(path, () => copyFileSync(from, path));
  const report = prepare(path, folder);
  syncFile(path);
  return report;
}

/**
 * The second part: puts what was prepared in place.
 *
 * @returns where the database that was there before is kept; undefined when there was none
 * @throws StoreError when somebody has the folder open; then nothing was changed
 */
export function finishRestore(folder: string): string | undefined {
  const lock = lockAlone(folder);
  try {
    const kept = existsSync(databasePath(folder)) ? onDisk(folder, () => keepOld(folder)) : undefined;
    renameSync(unfinished(folder), databasePath(folder));
    syncFolder(folder);
    return kept;
  } finally {
    lock.release();
  }
}

/** Removes what a restore left that was not finished. */
export function discardRestore(folder: string): void {
  removeDatabase(unfinished(folder));
}

const unfinished = (folder: string): string => `${databasePath(folder)}.unfinished`;

function makeFolder(from: string, folder: string): void {
  if (!existsSync(from)) throw new StoreError('missing', `There is no file ${from}.`);
  refuseForeign(from);
  onDisk(folder, () => mkdirSync(attachmentFolder(folder), { recursive: true, mode: 0o700 }));
}

/** Checks the copy of a backup, takes its files out into the folder, and leaves the plain database. */
function prepare(path: string, folder: string): CheckReport {
  const db = connect(path);
  try {
    if (!db.column("SELECT name FROM sqlite_schema WHERE type = 'table'").includes('attachment_content'))
      throw new StoreError(
        'damaged',
        'The file is a Sparewright database but no backup; its attachments are not in it.',
      );
    const broken = db.column('PRAGMA integrity_check').filter((line) => line !== 'ok');
    if (broken.length > 0) throw new StoreError('damaged', `The backup is damaged: ${broken[0]}. Nothing was changed.`);
    // Files are named by their content: those that are there already stay as they are, and none is in the way of another.
    takeOut(db, attachmentFolder(folder));
    db.script('DROP TABLE attachment_content');
    db.script('PRAGMA foreign_keys = ON');
    migrateSchema(db);
    db.script('VACUUM');
    const report = check(db, folder, 'thorough');
    const lost = report.problems.filter((problem) => !problem.startsWith('attachment '));
    if (lost.length > 0)
      throw new StoreError('damaged', `The backup is damaged: ${lost.slice(0, 3).join(' ')} Nothing was changed.`);
    return report;
  } finally {
    db.close();
  }
}

function takeOut(db: Connection, files: string): void {
  for (const { hash } of db.all(query.selectFrom('attachment_content').select('hash'))) {
    const row = db.first(query.selectFrom('attachment_content').select('content').where('hash', '=', hash));
    if (!row || hashOf(row.content) !== hash)
      throw new StoreError('damaged', `The attachment ${hash} in the backup is damaged. Nothing was changed.`);
    keepFile(files, hash, row.content);
  }
}

/** Copies the present database beside itself as it lies there, then makes sure that nothing of its log is applied to the new one. */
function keepOld(folder: string): string {
  const path = databasePath(folder);
  const kept = keptPath(folder, new Date());
  for (const ending of ['', '-wal'].filter((one) => existsSync(`${path}${one}`))) {
    copyFileSync(`${path}${ending}`, `${kept}${ending}`, constants.COPYFILE_EXCL);
    syncFile(`${kept}${ending}`);
  }
  settle(path);
  for (const ending of ['-wal', '-shm']) rmSync(`${path}${ending}`, { force: true });
  syncFolder(folder);
  return kept;
}

/** Brings what is still in the log into the database, unless it is too damaged for that. */
function settle(path: string): void {
  try {
    const db = connect(path);
    try {
      db.column('PRAGMA wal_checkpoint(TRUNCATE)');
    } finally {
      db.close();
    }
  } catch (error) {
    if (!(error instanceof StoreError)) throw error;
  }
}

function removeDatabase(path: string): void {
  for (const ending of ['', '-wal', '-shm', '-journal']) rmSync(`${path}${ending}`, { force: true });
}
