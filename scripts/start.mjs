/** `npm start`: installs and builds what is missing or older than its sources, then starts the server. Node built-ins only. */
import { spawn } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { ensurePackages } from './lib/install.mjs';
import { root, run } from './lib/run.mjs';

if (!(await ensurePackages())) process.exit(1);
if (isStale() && !(await run(process.execPath, ['scripts/build.mjs']))) process.exit(1);

const child = spawn(process.execPath, ['packages/cli/bin/sparewright.js', 'serve', ...process.argv.slice(2)], {
  cwd: root,
  stdio: 'inherit',
});
// The server closes its database when it is asked to stop, so it is asked, and waited for.
for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, () => child.kill(signal));
child.on('exit', (code, signal) => {
  process.exitCode = code ?? (signal ? 1 : 0);
});

/** Whether anything that goes into the builds is newer than the older of them. */
function isStale() {
  const built = ['packages/cli/dist/sparewright.js', 'packages/web/dist/index.html'].map((path) => join(root, path));
  if (built.some((path) => !existsSync(path))) return true;
  const oldest = Math.min(...built.map((path) => statSync(path).mtimeMs));
  return newest(join(root, 'packages')) > oldest || statSync(join(root, 'package-lock.json')).mtimeMs > oldest;
}

function newest(folder) {
  let latest = 0;
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    if (['dist', 'node_modules', 'reference', 'test'].includes(entry.name)) continue;
    const path = join(folder, entry.name);
    latest = Math.max(latest, entry.isDirectory() ? newest(path) : statSync(path).mtimeMs);
  }
  return latest;
}
