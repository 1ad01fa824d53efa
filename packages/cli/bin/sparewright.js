#!/usr/bin/env node
import { existsSync } from 'node:fs';

const built = new URL('../dist/sparewright.js', import.meta.url);
if (existsSync(built)) await import(built.href);
else {
  console.error('sparewright is not built yet: run `npm run build` in its folder, then try again.');
  process.exitCode = 1;
}
