/** Writes a file whole or not at all. */
import { randomBytes } from 'node:crypto';
import {
  closeSync,
  fsyncSync,
  mkdirSync,
  openSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';

/** A file could not be written; nothing of it is left. */
export class CannotWrite extends Error {
  constructor(path: string, reason: string) {
    super(`cannot write ${path}: ${reason}`);
    this.name = 'CannotWrite';
  }
}

/** Beside the target under another name first, then put in its place at one stroke. */
export function writeWhole(path: string, content: string | Uint8Array): void {
  let beside: string | undefined;
  try {
    const target = targetOf(path);
    beside = join(dirname(target), `.${basename(target).slice(0, 100)}.${randomBytes(6).toString('hex')}.part`);
    const bytes = typeof content === 'string' ? Buffer.from(content) : content;
    const file = openSync(beside, 'wx');
    try {
      for (let at = 0; at < bytes.length; ) at += writeSync(file, bytes, at);
      fsyncSync(file);
    } finally {
      closeSync(file);
    }
    renameSync(beside, target);
  } catch (error) {
    if (beside !== undefined) rmSync(beside, { force: true });
    if (error instanceof CannotWrite) throw error;
    throw new CannotWrite(path, reasonOf(error));
  }
}

/** Makes a folder where there is none. */
export function makeFolder(path: string): void {
  try {
    mkdirSync(path, { recursive: true });
  } catch (error) {
    throw new CannotWrite(path, reasonOf(error));
  }
}

/** Where a link leads; refuses what is there but no file, such as a folder or a device. */
function targetOf(path: string): string {
  const there = statSync(path, { throwIfNoEntry: false });
  if (there && !there.isFile()) throw new CannotWrite(path, there.isDirectory() ? 'it is a folder' : 'it is no file');
  return there ? realpathSync(path) : path;
}

const reasons: Readonly<Record<string, string>> = {
  ENOENT: 'its folder does not exist',
  ENOTDIR: 'its folder is no folder',
  EACCES: 'permission denied',
  EPERM: 'permission denied',
  EROFS: 'the disk is read-only',
  ENOSPC: 'the disk is full',
  ENAMETOOLONG: 'the name is too long',
  EEXIST: 'a file of that name is in the way',
};

function reasonOf(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  return reasons[code] ?? (code === '' ? String(error) : code);
}
