/** Running other programs from the scripts. Node built-ins only: these scripts work before anything is installed. */
import { spawn, spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

/** Folder of the repository. */
export const root = fileURLToPath(new URL('../../', import.meta.url));

/** Runs a program with its output on ours; true when it ended well. */
export function run(command, args, options = {}) {
  const { env, ...rest } = options;
  return new Promise((resolve) => {
    const child = spawn(command, args, { cwd: root, stdio: 'inherit', env: { ...process.env, ...env }, ...rest });
    child.on('error', (error) => {
      console.error(`${command}: ${error.message}`);
      resolve(false);
    });
    child.on('exit', (code) => resolve(code === 0));
  });
}

/** Runs a program from node_modules/.bin. */
export function runTool(name, args, options) {
  return run(process.execPath, [tool(name), ...args], options);
}

const entries = {
  biome: '@biomejs/biome/bin/biome',
  knip: 'knip/bin/knip.js',
  tsc: 'typescript/bin/tsc',
  tsx: 'tsx/dist/cli.mjs',
  vitest: 'vitest/vitest.mjs',
  vite: 'vite/bin/vite.js',
};

function tool(name) {
  return fileURLToPath(new URL(`../../node_modules/${entries[name]}`, import.meta.url));
}

/** Whether a program can be found on the path. */
export function onPath(name) {
  return spawnSync('sh', ['-c', `command -v "$1"`, 'sh', name], { stdio: 'ignore' }).status === 0;
}
