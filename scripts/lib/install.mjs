/** Brings a fresh clone to the point where it can be built and tested. Node built-ins only. */
import { existsSync, realpathSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { onPath, root, run } from './run.mjs';

/** Installs the packages of the lock file when they are missing or older than it. */
export async function ensurePackages() {
  const lock = join(root, 'package-lock.json');
  // npm writes this copy of the lock last, so its age tells whether the folder belongs to the lock file.
  const installed = join(root, 'node_modules/.package-lock.json');
  if (existsSync(installed) && statSync(installed).mtimeMs >= statSync(lock).mtimeMs) return true;
  console.log(
    existsSync(installed) ? 'package-lock.json is newer than node_modules: npm ci' : 'no node_modules: npm ci',
  );
  // The build that `prepare` would make comes later as a step of its own.
  return run('npm', ['ci', '--no-fund', '--no-audit'], { env: { SPAREWRIGHT_SKIP_PREPARE: '1', ...ownHeaders() } });
}

const wanted = [
  { program: 'chromium', debian: 'chromium', with: ['fonts-liberation'], why: 'the screens are tested in it' },
  { program: 'pdftoppm', debian: 'poppler-utils', with: [], why: 'printed sheets are looked at through it' },
];

/** Sees to the programs that npm does not bring: by apt-get when that is possible, else says what is missing. */
export async function ensurePrograms() {
  const missing = wanted.filter(({ program }) => !onPath(program));
  if (missing.length === 0) return true;
  const names = missing.flatMap((program) => [program.debian, ...program.with]);
  if (process.getuid?.() === 0 && onPath('apt-get')) {
    const env = { DEBIAN_FRONTEND: 'noninteractive' };
    console.log(`apt-get install ${names.join(' ')}`);
    const quiet = { env, stdio: ['ignore', 'ignore', 'inherit'] };
    await run('apt-get', ['-q', 'update'], quiet);
    await run('apt-get', ['-q', 'install', '-y', '--no-install-recommends', ...names], quiet);
  }
  const still = wanted.filter(({ program }) => !onPath(program));
  for (const { program, debian, why } of still) {
    console.error(`${program} is missing (Debian package ${debian}): ${why}. Install it and run again.`);
  }
  return still.length === 0;
}

/**
 * Where the database's binary cannot be fetched it is compiled; node's own headers, where they lie beside it, serve for that
 * without fetching them either.
 */
function ownHeaders() {
  const prefix = dirname(dirname(realpathSync(process.execPath)));
  return existsSync(join(prefix, 'include/node/node.h')) ? { npm_config_nodedir: prefix } : {};
}
