/** The server's answers, and its refusals as errors with their reasons. */
import type { JobEntry, JobPage, Refusal } from './answer.ts';

export class Refused extends Error {
  readonly issues: Refusal['issues'];

  constructor({ message, issues }: Refusal) {
    super(message);
    this.name = 'Refused';
    this.issues = issues;
  }
}

export function listJobs(signal: AbortSignal): Promise<readonly JobEntry[]> {
  return fetchJson<readonly JobEntry[]>('/api/jobs', { signal });
}

export function openJob(id: string, signal: AbortSignal): Promise<JobPage> {
  return fetchJson<JobPage>(`/api/jobs/${encodeURIComponent(id)}`, { signal });
}

export function assessJob(document: unknown, signal: AbortSignal): Promise<JobPage> {
  const headers = { 'content-type': 'application/json' };
  return fetchJson<JobPage>('/api/assess', { method: 'POST', headers, body: JSON.stringify(document), signal });
}

/** @throws Refused with the reasons, or when the server does not answer */
async function fetchJson<T>(path: string, init: RequestInit): Promise<T> {
  const response = await fetch(path, init).catch((error: unknown) => {
    if (init.signal?.aborted) throw error;
    throw new Refused({ message: 'The server does not answer. Is it still running?', issues: [] });
  });
  if (response.ok) return response.json();
  const refusal = await response.json().catch(() => undefined);
  throw new Refused(isRefusal(refusal) ? refusal : { message: `The server refused (${response.status}).`, issues: [] });
}

function isRefusal(value: unknown): value is Refusal {
  return typeof value === 'object' && value !== null && 'message' in value && 'issues' in value;
}
