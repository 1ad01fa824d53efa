/** Where a command reads and writes; the one place that knows the process. */
import { once } from 'node:events';
import picocolors from 'picocolors';

export type Colors = ReturnType<typeof picocolors.createColors>;

export interface Terminal {
  /** Waits while the reader is slower than the writer. */
  out(text: string): Promise<void>;
  err(text: string): void;
  readonly input: AsyncIterable<Uint8Array>;
  readonly ink: Colors;
  /** Columns that a line may take. */
  readonly width: number;
  /** A person is looking at the error stream, so progress may be shown there. */
  readonly watched: boolean;
  readonly debug: boolean;
}

/** No line is longer: wider ones are hard to read. */
export const widest = 100;
/** Below this, tables fall apart. */
const narrowest = 60;

export function processTerminal(): Terminal {
  const { stdout, stderr, stdin, env } = process;
  const coloured = stdout.isTTY === true && (env.NO_COLOR ?? '') === '' && env.TERM !== 'dumb';
  return {
    async out(text) {
      if (!stdout.write(text)) await once(stdout, 'drain');
    },
    err(text) {
      stderr.write(text);
    },
    input: stdin,
    ink: picocolors.createColors(coloured),
    width: Math.max(narrowest, Math.min(widest, stdout.columns ?? widest)),
    watched: stderr.isTTY === true && env.TERM !== 'dumb',
    debug: (env.SPAREWRIGHT_DEBUG ?? '') !== '',
  };
}
