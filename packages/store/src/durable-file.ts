/** Files that are either whole or not there, whatever happens while they are written. */
import { closeSync, fsyncSync, openSync, renameSync, rmSync, writeSync } from 'node:fs';
import { dirname } from 'node:path';
import { threadId } from 'node:worker_threads';
import { StoreError } from './store-error.ts';

const hindrances: Readonly<Record<string, string>> = {
  ENOSPC: 'the disk is full',
  EDQUOT: 'the disk is full',
  EACCES: 'it may not be written',
  EPERM: 'it may not be written',
  EROFS: 'the disk is read-only',
  ENOTDIR: 'a part of its path is no folder',
  EEXIST: 'there is something else of that name',
  EIO: 'the disk does not answer',
};

/** What hinders the disk, in words; a mistake of this program stays what it is. */
export function onDisk<T>(path: string, action: () => T): T {
  try {
    return action();
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : '';
    const why = hindrances[code];
    throw why === undefined ? error : new StoreError('disk', `${path} cannot be written: ${why}.`);
  }
}

/** Writes a file through a temporary one beside it: written, on the disk, renamed, the name on the disk. */
export function writeDurably(path: string, bytes: Uint8Array): void {
  onDisk(path, () => writeWhole(path, bytes));
}

function writeWhole(path: string, bytes: Uint8Array): void {
  // Two threads of one process may write the same file.
  const temporary = `${path}.${process.pid}-${threadId}.unfinished`;
  try {
    const file = openSync(temporary, 'w', 0o600);
    try {
      for (let done = 0; done < bytes.length; ) done += writeSync(file, bytes, done);
      fsyncSync(file);
    } finally {
      closeSync(file);
    }
    renameSync(temporary, path);
  } catch (error) {
    rmSync(temporary, { force: true });
    throw error;
  }
  syncFolder(dirname(path));
}

/** Puts a file that was written already onto the disk. */
export function syncFile(path: string): void {
  const file = openSync(path, 'r+');
  try {
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}

/** Puts the names in a folder onto the disk. Windows does so by itself and refuses to be asked. */
export function syncFolder(path: string): void {
  if (process.platform === 'win32') return;
  const folder = openSync(path, 'r');
  try {
    fsyncSync(folder);
  } finally {
    closeSync(folder);
  }
}
