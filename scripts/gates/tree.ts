/** The files of the repository and their syntax, as the gates read them. */
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type ParseResult, parseSync } from 'oxc-parser';

/** One thing a gate objects to: where and what. */
export interface Violation {
  readonly at: string;
  readonly says: string;
}

/** A check of the whole repository. */
export interface Gate {
  readonly name: string;
  /** What is true of the repository when the gate passes. */
  readonly proves: string;
  check(root: string): Violation[] | Promise<Violation[]>;
}

/** Files below a folder, as paths from the root with forward slashes, sorted. */
export function filesBelow(root: string, folder: string, wanted: RegExp): string[] {
  const found: string[] = [];
  const walk = (at: string): void => {
    for (const entry of readdirSync(join(root, at), { withFileTypes: true })) {
      const path = `${at}/${entry.name}`;
      if (entry.isDirectory()) {
        if (entry.name !== 'node_modules' && entry.name !== 'dist') walk(path);
      } else if (wanted.test(path)) found.push(path);
    }
  };
  if (existsSync(join(root, folder))) walk(folder);
  return found.toSorted();
}

/** Files that are, or would be, committed: tracked ones and new ones that are not ignored. */
export function committedFiles(root: string): string[] {
  const listing = spawnSync('git', ['ls-files', '-z', '-co', '--exclude-standard'], { cwd: root, encoding: 'utf8' });
  if (listing.status !== 0) throw new Error(`git ls-files: ${listing.stderr}`);
  return [...new Set(listing.stdout.split('\0'))].filter((path) => path !== '' && existsSync(join(root, path)));
}

export function read(root: string, path: string): string {
  return readFileSync(join(root, path), 'utf8');
}

/** Parses a source file; a file that does not parse stops the gate. */
export function parse(path: string, text: string): ParseResult {
  const result = parseSync(path, text);
  const error = result.errors[0];
  if (error) throw new Error(`${path}: ${error.message}`);
  return result;
}

export function lineOf(text: string, offset: number): number {
  return text.slice(0, offset).split('\n').length;
}
