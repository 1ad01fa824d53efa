/** Starts the server and stops it without cutting anybody off. */
import type { Server } from 'node:http';
import { isIPv6 } from 'node:net';
import { networkInterfaces } from 'node:os';
import { createAdaptorServer } from '@hono/node-server';
import { pino } from 'pino';
import { createApp } from './app.ts';
import { readJobs } from './jobs.ts';
import { readScreens } from './screens.ts';

export interface StartOptions {
  /** Address to listen on; this computer only when left out. */
  readonly host?: string | undefined;
  /** 4180 or the next free one when left out; 0 for any free one. */
  readonly port?: number | undefined;
  /** Folder with jobs (`*.job.json`) and a workshop (`*.workshop.json`). */
  readonly examples: string;
  /** Folder of the built screens. */
  readonly web: string;
  /** Writes a line of JSON for every request to standard output. */
  readonly log?: boolean | undefined;
}

export interface Started {
  /** `http://127.0.0.1:4180` */
  readonly address: string;
  /** Takes no new requests, finishes those under way, then resolves. */
  close(): Promise<void>;
}

const usualPort = 4180;
const triesForPort = 20;
/** A request still running after this is cut off. */
const patience = 3000;

/** @throws Error when the port that was asked for is taken, or none near the usual one is free */
export async function startServer(options: StartOptions): Promise<Started> {
  const host = options.host ?? '127.0.0.1';
  const logger = pino({ base: null, level: options.log ? 'info' : 'silent' });
  const complain = pino({ base: null }, process.stderr);
  let port = options.port ?? usualPort;
  const app = createApp({
    jobs: readJobs(options.examples),
    screens: readScreens(options.web),
    isOwnHost: (name) => ownNames(host).some((own) => name === `${own}:${port}` || (port === 80 && name === own)),
    log: options.log ? (line) => logger.info(line) : undefined,
    fault: (error) => complain.error(error),
  });
  const server = createAdaptorServer({ fetch: app.fetch, hostname: host });
  if (!('closeIdleConnections' in server)) throw new Error('expected a server of plain HTTP');
  port = await listen(server, host, port, options.port === undefined ? triesForPort : 1);
  return { address: `http://${isIPv6(host) ? `[${host}]` : host}:${port}`, close: () => stop(server) };
}

async function listen(server: Server, host: string, port: number, tries: number): Promise<number> {
  try {
    return await new Promise<number>((resolve, reject) => {
      server.once('error', reject);
      server.listen(port, host, () => {
        server.off('error', reject);
        const address = server.address();
        resolve(typeof address === 'object' && address !== null ? address.port : port);
      });
    });
  } catch (error) {
    const taken = error instanceof Error && 'code' in error && error.code === 'EADDRINUSE';
    if (taken && tries > 1) return listen(server, host, port + 1, tries - 1);
    if (!taken) throw error;
    throw new Error(`Port ${port} of ${host} is taken by another program; choose another with --port.`);
  }
}

function stop(server: Server): Promise<void> {
  return new Promise((resolve) => {
    const late = setTimeout(() => server.closeAllConnections(), patience);
    server.close(() => {
      clearTimeout(late);
      resolve();
    });
    server.closeIdleConnections();
  });
}

/** The names under which a browser may ask for this server. */
function ownNames(host: string): string[] {
  const loopback = ['127.0.0.1', 'localhost', '[::1]'];
  const written = (address: string) => (isIPv6(address) ? `[${address}]` : address);
  if (host !== '0.0.0.0' && host !== '::') return [...new Set([...loopback, written(host).toLowerCase()])];
  const here = Object.values(networkInterfaces()).flatMap((known) => known ?? []);
  return [...loopback, ...here.map(({ address }) => written(address))];
}
