/** A terminal that remembers what was written to it. */
import picocolors from 'picocolors';
import { run } from '../src/run.ts';
import type { Terminal } from '../src/terminal.ts';

export interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** Runs one command line within this process. */
export async function runHere(args: readonly string[], input: readonly Uint8Array[] = []): Promise<Ran> {
  let out = '';
  let err = '';
  const terminal: Terminal = {
    out(text) {
      out += text;
      return Promise.resolve();
    },
    err(text) {
      err += text;
    },
    input: (async function* () {
      yield* input;
    })(),
    ...quiet,
  };
  const code = await run(args, terminal);
  return { code, out, err };
}

const quiet = { ink: picocolors.createColors(false), width: 100, watched: false, debug: false } as const;

/** For functions that only look at width and colours. */
export const silentTerminal: Terminal = {
  out: () => Promise.resolve(),
  err: () => undefined,
  input: (async function* () {})(),
  ...quiet,
};
