/** `serve`: the workbench in a browser. */
import { fileURLToPath } from 'node:url';
import { InputError } from '@sparewright/core/errors';
import type { Started } from '@sparewright/server/start';
import { defaultFolder } from '@sparewright/store/default-folder';
import { StoreError } from '@sparewright/store/store-error';
import { type ExitCode, exitCodes } from '../exit-codes.ts';
import { clean, paragraph } from '../show/text.ts';
import type { Terminal } from '../terminal.ts';

export interface ServeOptions {
  readonly data?: string;
  readonly port?: string;
  readonly host?: string;
  readonly log?: boolean;
}

const examples = fileURLToPath(new URL('../../../../examples', import.meta.url));
const web = fileURLToPath(new URL('../../../web/dist', import.meta.url));

/** Runs until it is asked to stop. */
export async function serveCommand(options: ServeOptions, terminal: Terminal): Promise<ExitCode> {
  const { host, data, log } = options;
  const port = options.port === undefined ? undefined : portOf(options.port);
  const { startServer } = await import('@sparewright/server/start');
  const started = await listening(() => startServer({ host, port, data, examples, web, log }), options);
  const stop = askedToStop();
  await terminal.out(`${openLines(started, terminal).join('\n')}\n`);
  for (const problem of started.report.problems) terminal.err(`sparewright: ${clean(problem)}\n`);
  await stop;
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

function openLines(started: Started, { width, ink }: Terminal): string[] {
  const { address, folder, networkAddresses, pairingCode } = started;
  const said = (text: string) => paragraph(text, { width, ink: ink.dim });
  const lines = [`Open ${address} in a browser. Ctrl+C stops it.`, ...said(`Your data: ${folder}`)];
  if (pairingCode === undefined) return lines;
  return [
    ...lines,
    `Other devices: ${networkAddresses.join('  ')}`,
    `Pairing code:  ${pairingCode}`,
    ...paragraph(
      'A device is let in once it has sent this code. What it sees and sends crosses the network unencrypted: use this in your own network only.',
      { width, ink: ink.yellow },
    ),
  ];
}

async function listening(start: () => Promise<Started>, { host, port, data }: ServeOptions): Promise<Started> {
  try {
    return await start();
  } catch (error) {
    if (error instanceof StoreError)
      throw new InputError([
        {
          path: '--data',
          value: data ?? defaultFolder(),
          expected: `a data folder that can be used: ${error.message}`,
        },
      ]);
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
