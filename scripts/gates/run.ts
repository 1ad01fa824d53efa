/** `npm run gates [-- name …]`: runs the gates over the repository in the current folder. */
import { deadCode } from './dead-code.ts';
import { docs } from './docs.ts';
import { formulaBlocks } from './formula-blocks.ts';
import { hygiene } from './hygiene.ts';
import { layers } from './layers.ts';
import { links } from './links.ts';
import { purity } from './purity.ts';
import type { Gate, Violation } from './tree.ts';

const gates = [layers, purity, formulaBlocks, docs, links, hygiene, deadCode];

const wanted = process.argv.slice(2);
const unknown = wanted.filter((name) => !gates.some((gate) => gate.name === name));
if (unknown.length > 0)
  throw new Error(`no gate ${unknown.join(', ')}; there are ${gates.map((g) => g.name).join(', ')}`);

for (const gate of gates.filter(({ name }) => wanted.length === 0 || wanted.includes(name))) {
  const before = performance.now();
  const violations = await checked(gate);
  for (const { at, says } of violations) console.log(`${at}  ${says}`);
  const time = `${((performance.now() - before) / 1000).toFixed(1)} s`;
  if (violations.length === 0) console.log(`${gate.name} (${time}): ${gate.proves}`);
  else {
    console.log(`${gate.name} (${time}): ${violations.length} violations`);
    process.exitCode = 1;
  }
}

/** A gate that breaks down has not passed. */
async function checked(gate: Gate): Promise<Violation[]> {
  try {
    return await gate.check(process.cwd());
  } catch (error) {
    return [{ at: gate.name, says: `broke down: ${error instanceof Error ? error.message : error}` }];
  }
}
