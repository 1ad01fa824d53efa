/** The routes without a network: the same handlers, asked directly. */
import { createApp } from '../src/app.ts';
import { readJobs } from '../src/jobs.ts';
import { readScreens } from '../src/screens.ts';
import { places } from './places.ts';

export const own = '127.0.0.1:4180';

const faults: unknown[] = [];
const app = createApp({
  jobs: readJobs(places.examples),
  screens: readScreens(places.web),
  isOwnHost: (host) => host === own || host === 'localhost:4180',
  fault: (error) => faults.push(error),
});

/** Errors that were the program's own, since the last call. */
export function ownFaults(): unknown[] {
  return faults.splice(0);
}

export async function get(path: string, headers: Record<string, string> = {}): Promise<Response> {
  return app.request(path, { headers: { host: own, ...headers } });
}

export async function post(path: string, body: string, headers: Record<string, string> = {}): Promise<Response> {
  const all = { host: own, 'content-type': 'application/json', ...headers };
  return app.request(path, { method: 'POST', body, headers: all });
}

export async function send(method: string, path: string): Promise<Response> {
  return app.request(path, { method, headers: { host: own } });
}
