/** `serve`: the workbench in a browser. */
import { statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { InputError } from '@sparewright/core/errors';
import type { Started } from '@sparewright/server/start';
import { type ExitCode, exitCodes } from '../exit-codes.ts';
import { paragraph } from '../show/text.ts';
import type { Terminal } from '../terminal.ts';

export interface ServeOptions {
  readonly port?: string;
  readonly host?: string;
  readonly jobs?: string;
}

const examples = fileURLToPath(new URL('../../../../examples', import.meta.url));
const web = fileURLToPath(new URL('../../../web/dist', import.meta.url));

/** Runs until it is asked to stop. */
export async function serveCommand(options: ServeOptions, terminal: Terminal): Promise<ExitCode> {
  const port = options.port === undefined ? undefined : portOf(options.port);
  const jobs = options.jobs ?? examples;
  if (!statSync(jobs, { throwIfNoEntry: false })?.isDirectory()) {
    throw new InputError([
      { path: '--jobs', value: jobs, expected: 'a folder with *.job.json files', example: 'examples' },
    ]);
  }
  const { startServer } = await import('@sparewright/server/start');
  const started = await listening(() => startServer({ host: options.host, port, examples: jobs, web }), options);
  await terminal.out(`${openLines(started.address, options, terminal).join('\n')}\n`);
  await askedToStop();
  await started.close();
  return exitCodes.fine;
}

/** A whole number that a port can have. */
export function portOf(typed: string): number {
  const port = /^\d{1,5}$/.test(typed) ? Number(typed) : Number.NaN;
  if (port <= 65535) return port;
  throw new InputError([
    { path: '--port', value: typed, expected: 'a whole number from 0 to 65535; 0 takes any free one', example: '4180' },
  ]);
}

function openLines(address: string, { host, jobs }: ServeOptions, { width, ink }: Terminal): string[] {
  const alone = host === undefined || ['127.0.0.1', 'localhost', '::1'].includes(host);
  return [
    `Open ${address} in a browser. Ctrl+C stops it.`,
    ...paragraph(jobs === undefined ? 'Jobs: the examples.' : `Jobs: those in ${jobs}.`, { width, ink: ink.dim }),
    ...(alone
      ? []
      : paragraph('Whoever reaches this address over the network can read the jobs.', { width, ink: ink.yellow })),
  ];
}

async function listening(start: () => Promise<Started>, { host, port }: ServeOptions): Promise<Started> {
  try {
    return await start();
  } catch (error) {
    if (error instanceof Error && /^Port \d+ .*taken/.test(error.message)) {
      throw new InputError([
        { path: '--port', value: port, expected: 'a port that no other program holds', example: '0' },
      ]);
    }
    const code = error instanceof Error && 'code' in error ? String(error.code) : '';
    if (/^(EADDRNOTAVAIL|ENOTFOUND|EAI_\w+)$/.test(code)) {
      throw new InputError([
        { path: '--host', value: host, expected: 'an address of this computer', example: '127.0.0.1' },
      ]);
    }
    if (code === 'EACCES') {
      throw new InputError([{ path: '--port', value: port, expected: 'a port you may listen on', example: '4180' }]);
    }
    throw error;
  }
}

function askedToStop(): Promise<void> {
  return new Promise((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.once(signal, () => resolve());
  });
}
