/**
 * Who has a data folder open. Any number of programs may work in one folder at once: the database keeps their writes apart.
 * What replaces the database itself must be alone. The lock is one the operating system holds for the process, so it is
 * gone when the process is, however it ended.
 */
import { type Connection, connect } from './connection.ts';
import { lockPath } from './data-folder.ts';
import { StoreError } from './store-error.ts';

export interface FolderLock {
  release(): void;
}

/** Holds off a restore. @throws StoreError while one is under way */
export function lockShared(folder: string): FolderLock {
  return lock(folder, 5000, 'The data folder is just being restored; try again when that is done.', (db) => {
    db.script('BEGIN');
    db.column('SELECT count(*) FROM sqlite_schema');
  });
}

/** @throws StoreError while anybody has the folder open */
export function lockAlone(folder: string): FolderLock {
  const says = 'Another Sparewright has the data folder open; close it first. Nothing was changed.';
  return lock(folder, 0, says, (db) => db.script('BEGIN EXCLUSIVE'));
}

function lock(folder: string, patience: number, busy: string, take: (db: Connection) => void): FolderLock {
  const db = connect(lockPath(folder), { patience });
  try {
    take(db);
  } catch (error) {
    db.close();
    throw error instanceof StoreError && error.reason === 'busy' ? new StoreError('busy', busy) : error;
  }
  return { release: () => db.close() };
}
