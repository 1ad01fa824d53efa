/** The server's answers, and its refusals as errors with their reasons. */
import type { Json } from '@sparewright/core/job/merge';
import type { JobEntry, Refusal } from '@sparewright/output/present/job-view';
import type { RevisionEntry } from './save/steps.ts';

export class Refused extends Error {
  readonly issues: Refusal['issues'];
  /** 0 when the server did not answer at all. */
  readonly status: number;

  constructor({ message, issues }: Refusal, status: number) {
    super(message);
    this.name = 'Refused';
    this.issues = issues;
    this.status = status;
  }
}

export interface Stored {
  readonly revision: number;
  readonly document: Json;
}

export type SaveAnswer =
  | { readonly kind: 'saved'; readonly revision: number; readonly document: Json }
  | {
      readonly kind: 'merged';
      readonly revision: number;
      readonly document: Json;
      readonly changed?: readonly string[];
    }
  | { readonly kind: 'conflict'; readonly revision: number; readonly theirs: Json; readonly paths: readonly string[] };

export interface SaveRequest {
  readonly baseRevision: number;
  readonly document: Json;
  readonly client: string;
  readonly undoes?: number | undefined;
}

export const jobAddress = (id: string): string => `/api/jobs/${encodeURIComponent(id)}`;
export const workshopAddress = '/api/workshop';

export interface JobList {
  readonly total: number;
  readonly jobs: readonly JobEntry[];
}

/** The most the server lists at a time. */
const listed = 200;

/** The first so many jobs that are found, the latest first. */
export async function listJobs(search: string, most: number, signal: AbortSignal): Promise<JobList> {
  const jobs: JobEntry[] = [];
  for (;;) {
    const query = new URLSearchParams({
      search,
      limit: String(Math.min(listed, most - jobs.length)),
      offset: String(jobs.length),
    });
    const page: JobList = await fetchJson(`/api/jobs?${query}`, { signal });
    jobs.push(...page.jobs);
    if (page.jobs.length === 0 || jobs.length >= Math.min(most, page.total)) return { total: page.total, jobs };
  }
}

/** Jobs that were removed; the bin is not searched. */
export function listBin(signal: AbortSignal): Promise<JobList> {
  return fetchJson('/api/jobs?bin=yes&limit=200', { signal });
}

/** The document alone: what is to be shown of it the page makes itself. */
export function readStored(address: string, signal: AbortSignal): Promise<Stored> {
  return fetchJson(`${address}?only=document`, { signal });
}

export function listRevisions(address: string): Promise<readonly RevisionEntry[]> {
  return fetchJson(`${address}/revisions`, {});
}

export function readRevision(address: string, revision: number): Promise<Stored> {
  return fetchJson(`${address}/revisions/${revision}`, {});
}

export async function saveDocument(address: string, request: SaveRequest): Promise<SaveAnswer> {
  const response = await ask(address, json('PUT', request));
  if (response.ok || response.status === 409) {
    const answer: SaveAnswer = await response.json();
    if (response.ok || answer.kind === 'conflict') return answer;
  }
  throw await refusalOf(response);
}

export function createJob(document: Json): Promise<{ readonly id: string }> {
  return fetchJson('/api/jobs', json('POST', { document }));
}

export function copyJob(id: string): Promise<{ readonly id: string }> {
  return fetchJson('/api/jobs', json('POST', { copyOf: id }));
}

export async function removeJob(id: string): Promise<void> {
  await answered(jobAddress(id), { method: 'DELETE' });
}

export async function unbinJob(id: string): Promise<void> {
  await answered(`${jobAddress(id)}/unbin`, json('POST', {}));
}

export async function restoreRevision(address: string, revision: number): Promise<void> {
  await answered(`${address}/restore`, json('POST', { revision }));
}

export function importJob(file: Blob): Promise<{ readonly id: string }> {
  return fetchJson('/api/import', { method: 'POST', body: file, headers: { 'content-type': 'application/json' } });
}

/** A body of JSON. */
export function json(method: string, body: unknown): RequestInit {
  return { method, headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) };
}

/** @throws Refused with the reasons, or when the server does not answer */
export async function fetchJson<T>(path: string, init: RequestInit): Promise<T> {
  return (await answered(path, init)).json();
}

async function answered(path: string, init: RequestInit): Promise<Response> {
  const response = await ask(path, init);
  if (response.ok) return response;
  throw await refusalOf(response);
}

function ask(path: string, init: RequestInit): Promise<Response> {
  return fetch(path, init).catch((error: unknown) => {
    if (init.signal?.aborted) throw error;
    throw new Refused({ message: 'The server does not answer. Is it still running?', issues: [] }, 0);
  });
}

async function refusalOf(response: Response): Promise<Refused> {
  const refusal: unknown = await response.json().catch(() => undefined);
  const plain = { message: `The server refused (${response.status}).`, issues: [] };
  return new Refused(isRefusal(refusal) ? refusal : plain, response.status);
}

function isRefusal(value: unknown): value is Refusal {
  return typeof value === 'object' && value !== null && 'message' in value;
}
