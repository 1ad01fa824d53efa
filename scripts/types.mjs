/** Checks the types of every package that has sources, and of the scripts. */
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { root, runTool } from './lib/run.mjs';

const configs = ['scripts/tsconfig.json'];
for (const name of readdirSync(join(root, 'packages')).toSorted()) {
  const folder = `packages/${name}`;
  if (!existsSync(join(root, folder, 'package.json'))) continue;
  if (!hasSources(join(root, folder, 'src'))) {
    console.log(`${folder}: no sources yet`);
    continue;
  }
  const own = readdirSync(join(root, folder)).filter((file) => /^tsconfig.*\.json$/.test(file));
  if (own.length === 0) {
    console.error(`${folder} has sources but no tsconfig.json`);
    process.exitCode = 1;
  }
  configs.push(...own.map((file) => `${folder}/${file}`));
}

for (const config of configs) {
  if (!(await runTool('tsc', ['--pretty', 'false', '-p', config]))) {
    console.error(`types are wrong in ${config}`);
    process.exitCode = 1;
  }
}
if (process.exitCode !== 1) console.log(`${configs.length} projects: types are right`);

function hasSources(folder) {
  return existsSync(folder) && readdirSync(folder, { recursive: true }).some((file) => /\.tsx?$/.test(String(file)));
}
