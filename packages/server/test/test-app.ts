/** The routes without a network, over a real store in a folder of its own. */
import type { Store } from '@sparewright/store/open-store';
import { createApp } from '../src/app.ts';
import { assessmentsOf } from '../src/assessments.ts';
import { openData } from '../src/data.ts';
import { eventHub } from '../src/event-hub.ts';
import { putExamplesIn } from '../src/first-start.ts';
import type { Pairing } from '../src/pairing.ts';
import { readScreens } from '../src/screens.ts';
import { places } from './places.ts';
import { temporaryFolder } from './temporary.ts';

export const own = '127.0.0.1:4180';

type Headers = Readonly<Record<string, string>>;

export interface TestApp {
  readonly folder: string;
  readonly store: () => Store;
  get(path: string, headers?: Headers): Promise<Response>;
  post(path: string, body: string | Uint8Array<ArrayBuffer>, headers?: Headers): Promise<Response>;
  put(path: string, body: unknown, headers?: Headers): Promise<Response>;
  send(method: string, path: string): Promise<Response>;
  ask(path: string, request: RequestInit): Promise<Response>;
  /** Errors that were the program's own, since the last call. */
  ownFaults(): unknown[];
  /** Ends the streams of events, as a stop of the server does. */
  endEvents(): void;
  close(): Promise<void>;
}

export interface TestAppOptions {
  /** A folder to use and to leave; one of its own, removed at the end, when left out. */
  readonly folder?: string;
  readonly pairing?: Pairing;
  /** Address that requests come from. */
  readonly from?: string;
  readonly heartbeat?: number;
  readonly bare?: boolean;
}

export function openApp(options: TestAppOptions = {}): TestApp {
  const temporary = options.folder === undefined ? temporaryFolder() : undefined;
  const folder = options.folder ?? temporary?.path ?? '';
  const faults: unknown[] = [];
  const fault = (error: unknown) => void faults.push(error);
  const data = openData(folder);
  const assessments = assessmentsOf({ store: () => data.store, fault });
  if (!options.bare) putExamplesIn(data.store, places.examples, assessments);
  const events = eventHub();
  const app = createApp({
    data,
    assessments,
    events,
    pairing: options.pairing,
    addressOf: (c) => c.req.header('test-from') ?? options.from ?? '127.0.0.1',
    screens: readScreens(places.web),
    isOwnHost: (host) => host === own || host === 'localhost:4180',
    heartbeat: options.heartbeat,
    fault,
  });
  const json = { host: own, 'content-type': 'application/json' };
  return {
    folder,
    store: () => data.store,
    get: async (path, headers = {}) => app.request(path, { headers: { host: own, ...headers } }),
    post: async (path, body, headers = {}) =>
      app.request(path, { method: 'POST', body, headers: { ...json, ...headers } }),
    put: async (path, body, headers = {}) =>
      app.request(path, { method: 'PUT', body: JSON.stringify(body), headers: { ...json, ...headers } }),
    send: async (method, path) => app.request(path, { method, headers: { host: own } }),
    ask: async (path, request) => app.request(path, request),
    ownFaults: () => faults.splice(0),
    endEvents: () => events.close(),
    async close() {
      events.close();
      await data.close();
      temporary?.remove();
    },
  };
}
