/** Files that are either whole or not there, whatever happens while they are written. */
import { closeSync, fsyncSync, openSync, renameSync, rmSync, writeSync } from 'node:fs';
import { dirname } from 'node:path';

/** Writes a file through a temporary one beside it: written, on the disk, renamed, the name on the disk. */
export function writeDurably(path: string, bytes: Uint8Array): void {
  const temporary = `${path}.${process.pid}.unfinished`;
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
