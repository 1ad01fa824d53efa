/** `npm run build`: the screens to packages/web/dist, the command line to packages/cli/dist/sparewright.js. */
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { root, runTool } from './lib/run.mjs';

const entry = join(root, 'packages/cli/src/main.ts');
// `npm ci` inside `npm test` and `npm start` builds afterwards, as a step of its own.
if (process.argv.includes('--prepare') && process.env.SPAREWRIGHT_SKIP_PREPARE === '1') process.exit(0);

if (!existsSync(join(root, 'packages/web/index.html'))) console.log('packages/web: no screens yet');
else if (!(await runTool('vite', ['build', '--logLevel', 'warn'], { cwd: join(root, 'packages/web') })))
  process.exit(1);
else console.log('packages/web/dist built');

if (!existsSync(entry)) console.log('packages/cli: no src/main.ts yet');
else {
  const { build } = await import('esbuild');
  const outfile = join(root, 'packages/cli/dist/sparewright.js');
  const options = {
    // The thread for long work has a bundle of its own; server/src/long-work.ts finds it here.
    entryPoints: [entry, join(root, 'packages/server/src/long-work-thread.ts')].map((file) => ({
      in: file,
      out: file === entry ? 'sparewright' : 'long-work-thread',
    })),
    outdir: dirname(outfile),
    bundle: true,
    define: { 'process.env.SPAREWRIGHT_BUNDLE': '"yes"' },
    platform: 'node',
    format: 'esm',
    target: 'node20',
    keepNames: true,
    sourcemap: true,
    logLevel: 'warning',
    // Native code and WebAssembly stay in node_modules, from where they are loaded.
    external: ['@myriaddreamin/*', 'better-sqlite3', 'libsql', 'replicad-opencascadejs'],
    plugins: [ownPlaces(dirname(outfile))],
    // Bundled CommonJS packages ask for `require`, which a module does not have by itself.
    banner: {
      js: "import { createRequire as __createRequire } from 'node:module';\nconst require = __createRequire(import.meta.url);",
    },
  };
  // What is wrong has been printed by then.
  if (await build(options).catch(() => undefined)) console.log('packages/cli/dist/sparewright.js built');
  else process.exit(1);
}

/** Sources that find their fonts and pages beside themselves still find them there when they are bundled elsewhere. */
function ownPlaces(outdir) {
  return {
    name: 'own-places',
    setup({ onLoad }) {
      onLoad({ filter: /\/packages\/[^/]+\/src\/.*\.tsx?$/ }, ({ path }) => {
        const place = `new URL(${JSON.stringify(relative(outdir, path).replaceAll('\\', '/'))}, import.meta.url).href`;
        const contents = readFileSync(path, 'utf8').replaceAll('import.meta.url', place);
        return { contents, loader: path.endsWith('x') ? 'tsx' : 'ts' };
      });
    },
  };
}
