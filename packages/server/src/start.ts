/** Starts the server and stops it without cutting anybody off. */
import type { Server } from 'node:http';
import { isIPv6 } from 'node:net';
import { networkInterfaces } from 'node:os';
import { createAdaptorServer } from '@hono/node-server';
import type { CheckReport } from '@sparewright/store/check';
import { pino } from 'pino';
import { createApp } from './app.ts';
import { assessmentsOf } from './assessments.ts';
import { type Data, openData } from './data.ts';
import { eventHub } from './event-hub.ts';
import { putExamplesIn } from './first-start.ts';
import { peerAddress } from './network.ts';
import { createPairing } from './pairing.ts';
import { readScreens } from './screens.ts';

export interface StartOptions {
  /** Address to listen on; this computer only when left out. */
  readonly host?: string | undefined;
  /** 4180 or the next free one when left out; 0 for any free one. */
  readonly port?: number | undefined;
  /** Folder of the store; the user's data folder when left out. */
  readonly data?: string | undefined;
  /** Folder with the demonstration jobs (`*.job.json`) and workshop (`*.workshop.json`) that an empty store begins with. */
  readonly examples: string;
  /** Folder of the built screens. */
  readonly web: string;
  /** Writes a line of JSON for every request to standard output. */
  readonly log?: boolean | undefined;
}

export interface Started {
  /** `http://127.0.0.1:4180` */
  readonly address: string;
  /** Where other devices find it; empty when only this computer is served. */
  readonly networkAddresses: readonly string[];
  /** What other devices must send once; undefined when only this computer is served. */
  readonly pairingCode: string | undefined;
  /** The data folder. */
  readonly folder: string;
  /** What the check of the data at the start found. */
  readonly report: CheckReport;
  /** Takes no new requests, finishes those under way, closes the store, then resolves. */
  close(): Promise<void>;
}

const usualPort = 4180;
const triesForPort = 20;
/** A request still running after this is cut off. */
const patience = 8000;
/** A photograph that belongs to no job is removed at a start after this [ms]. */
const unlinkedFor = 24 * 3600 * 1000;

/**
 * @throws StoreError when the data cannot be used; Error when the port that was asked for is taken, or none near the usual
 * one is free
 */
export async function startServer(options: StartOptions): Promise<Started> {
  const data = openData(options.data);
  try {
    return await serve(options, data);
  } catch (error) {
    await data.close();
    throw error;
  }
}

async function serve(options: StartOptions, data: Data): Promise<Started> {
  const host = options.host ?? '127.0.0.1';
  const logger = pino({ base: null, level: options.log ? 'info' : 'silent' });
  const complain = pino({ base: null }, process.stderr);
  const fault = (error: unknown) => complain.error(error);
  const { folder, report } = data.store;
  const assessments = assessmentsOf({ store: () => data.store, fault });
  putExamplesIn(data.store, options.examples, assessments);
  sweep(data, fault);

  let port = options.port ?? usualPort;
  const events = eventHub();
  const pairing = isLoopback(host) ? undefined : createPairing();
  const app = createApp({
    data,
    assessments,
    events,
    pairing,
    networkAddresses: () => reachedAt(),
    addressOf: peerAddress,
    screens: readScreens(options.web),
    isOwnHost: (name) => ownNames(host).some((own) => name === `${own}:${port}` || (port === 80 && name === own)),
    log: options.log ? (line) => logger.info(line) : undefined,
    fault,
  });
  const reachedAt = () => (pairing ? networkNames(host).map((name) => `http://${name}:${port}`) : []);
  const server = createAdaptorServer({ fetch: app.fetch, hostname: host });
  if (!('closeIdleConnections' in server)) throw new Error('expected a server of plain HTTP');
  port = await listen(server, host, port, options.port === undefined ? triesForPort : 1);
  logger.info({ folder, ...report }, 'data opened');
  return {
    address: `http://${isEverywhere(host) ? '127.0.0.1' : written(host)}:${port}`,
    networkAddresses: reachedAt(),
    pairingCode: pairing?.code,
    folder,
    report,
    async close() {
      events.close();
      await stop(server);
      await data.close();
    },
  };
}

/** Photographs that were sent and never put into a job are not kept for ever. What cannot be removed now can be at the next start. */
function sweep({ store }: Data, fault: (error: unknown) => void): void {
  try {
    store.attachments.sweep(new Date(Date.now() - unlinkedFor));
  } catch (error) {
    fault(error);
  }
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

/** Connections that are kept for further requests are closed as soon as nothing is under way on them. */
function stop(server: Server): Promise<void> {
  return new Promise((resolve) => {
    const idle = setInterval(() => server.closeIdleConnections(), 20);
    const late = setTimeout(() => server.closeAllConnections(), patience);
    server.close(() => {
      clearInterval(idle);
      clearTimeout(late);
      resolve();
    });
    server.closeIdleConnections();
  });
}

const written = (address: string): string => (isIPv6(address) ? `[${address}]` : address);
const isEverywhere = (host: string): boolean => host === '0.0.0.0' || host === '::';

function isLoopback(host: string): boolean {
  return host === 'localhost' || host === '::1' || /^127\.\d+\.\d+\.\d+$/.test(host);
}

/** The names under which other devices may ask for this server. */
function networkNames(host: string): string[] {
  if (!isEverywhere(host)) return [written(host).toLowerCase()];
  const here = Object.values(networkInterfaces()).flatMap((known) => known ?? []);
  // A link-local address is of no use without the name of the interface.
  return here
    .filter(({ internal, address }) => !internal && !/^fe80:/i.test(address))
    .map((one) => written(one.address));
}

/** The names under which a browser may ask for this server. */
function ownNames(host: string): string[] {
  return [...new Set(['127.0.0.1', 'localhost', '[::1]', ...networkNames(host)])];
}
