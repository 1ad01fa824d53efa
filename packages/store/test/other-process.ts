/** Runs `writer.ts` as a process of its own. */
import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import { mkdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

export interface Told {
  readonly did: string;
  readonly what?: string;
  readonly revision?: number;
}

export interface OtherProcess {
  readonly child: ChildProcessWithoutNullStreams;
  /** Resolves when it has opened the store, or ended before. */
  readonly opened: Promise<void>;
  /** All that it told, once it has ended. */
  readonly ended: Promise<{ told: Told[]; complaints: string; code: number | null }>;
}

/** The writer in plain JavaScript, so that it starts in a tenth of a second; below node_modules, where it finds SQLite. */
export async function bundleWriter(): Promise<{ path: string; remove: () => void }> {
  const folder = fileURLToPath(new URL(`../../../node_modules/.cache/store-writer-${process.pid}/`, import.meta.url));
  mkdirSync(folder, { recursive: true });
  const path = join(folder, 'writer.mjs');
  await build({
    entryPoints: [fileURLToPath(new URL('writer.ts', import.meta.url))],
    outfile: path,
    bundle: true,
    platform: 'node',
    format: 'esm',
    external: ['better-sqlite3'],
    logLevel: 'warning',
  });
  return { path, remove: () => rmSync(folder, { recursive: true }) };
}

export function start(script: string, ...words: readonly string[]): OtherProcess {
  const child = spawn(process.execPath, [script, ...words], { stdio: 'pipe' });
  let text = '';
  let complaints = '';
  const opened = new Promise<void>((resolve) => {
    child.stdout.on('data', (piece) => {
      text += piece;
      resolve();
    });
    child.on('close', () => resolve());
  });
  child.stderr.on('data', (piece) => {
    complaints += piece;
  });
  const ended = new Promise<{ told: Told[]; complaints: string; code: number | null }>((resolve) => {
    child.on('close', (code) => {
      // What stands after the last end of line was cut off by the kill.
      const lines = text.split('\n').slice(0, -1);
      resolve({ told: lines.map((line): Told => JSON.parse(line)), complaints, code });
    });
  });
  return { child, opened, ended };
}
