/** A throw-away copy of the repository in which violations are planted. */
import { execFile } from 'node:child_process';
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { committedFiles } from './tree.ts';

export interface Copy {
  readonly root: string;
  /** Runs a program of node with the copy as current folder; answers its exit code and all it printed. */
  run(
    program: string,
    args: readonly string[],
    env?: Readonly<Record<string, string>>,
  ): Promise<{ code: number; stdout: string; output: string }>;
  /** Writes files, runs the work, and puts everything back. An edit is made of the text that was there. */
  planted<T>(edits: Readonly<Record<string, string | ((text: string) => string)>>, work: () => Promise<T>): Promise<T>;
  remove(): void;
}

export function copyOf(original: string): Copy {
  const root = mkdtempSync(join(tmpdir(), 'sparewright-planted-'));
  for (const path of committedFiles(original)) {
    mkdirSync(dirname(join(root, path)), { recursive: true });
    cpSync(join(original, path), join(root, path), { preserveTimestamps: true });
  }
  linkPackages(original, root);
  mkdirSync(join(root, '.git/objects'), { recursive: true });
  mkdirSync(join(root, '.git/refs'));
  writeFileSync(join(root, '.git/HEAD'), 'ref: refs/heads/main\n');

  const run: Copy['run'] = (program, args, env) =>
    new Promise((resolve) => {
      const options = { cwd: root, env: { ...process.env, NO_COLOR: '1', ...env }, maxBuffer: 2 ** 26 };
      execFile(process.execPath, [join(root, program), ...args], options, (error, stdout, stderr) => {
        const code = typeof error?.code === 'number' ? error.code : error ? 1 : 0;
        resolve({ code, stdout, output: `${stdout}\n${stderr}` });
      });
    });

  const planted: Copy['planted'] = async (edits, work) => {
    const before = Object.keys(edits).map((path) => {
      const file = join(root, path);
      return {
        file,
        old: existsSync(file) ? { text: readFileSync(file, 'utf8'), mtime: statSync(file).mtime } : undefined,
      };
    });
    try {
      for (const [path, edit] of Object.entries(edits)) {
        const file = join(root, path);
        mkdirSync(dirname(file), { recursive: true });
        const there = existsSync(file) ? readFileSync(file, 'utf8') : '';
        writeFileSync(file, typeof edit === 'string' ? edit : edit(there));
      }
      return await work();
    } finally {
      for (const { file, old } of before) {
        if (old) {
          writeFileSync(file, old.text);
          // A lock file that looks newer than what is installed would have everything installed again.
          utimesSync(file, old.mtime, old.mtime);
        } else rmSync(file, { force: true });
      }
    }
  };

  return { root, run, planted, remove: () => rmSync(root, { recursive: true, force: true }) };
}

/** Installed packages are shared with the original; the workspaces' own names lead to the copy. */
function linkPackages(original: string, root: string): void {
  mkdirSync(join(root, 'node_modules/@sparewright'), { recursive: true });
  for (const name of readdirSync(join(original, 'node_modules'))) {
    if (name !== '@sparewright' && name !== '.cache' && name !== '.vite') {
      symlinkSync(join(original, 'node_modules', name), join(root, 'node_modules', name));
    }
  }
  for (const name of readdirSync(join(root, 'packages'))) {
    symlinkSync(join(root, 'packages', name), join(root, 'node_modules/@sparewright', name));
    const own = join(original, 'packages', name, 'node_modules');
    if (existsSync(own)) symlinkSync(own, join(root, 'packages', name, 'node_modules'));
  }
}
