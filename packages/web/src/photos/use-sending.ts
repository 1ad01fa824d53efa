/** Photographs on their way to the server: kept in the browser, tried again until it answers, and shown meanwhile. */
import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { fetchJson, Refused } from '../ask-server.ts';
import type { OpenJob } from '../use-job.ts';
import { addPhotograph } from './records.ts';
import { shrunk } from './shrink.ts';
import { dropWaiting, putWaiting, type WaitingPhotograph, waitingOf } from './waiting.ts';

/** Between two tries at a server that does not answer [ms]. */
const retry = 2500;

export interface OnItsWay {
  readonly key: string;
  /** Of the picture, to look at. */
  readonly preview: string;
  /** The server does not answer. */
  readonly waits: boolean;
  /** It lies in this browser's store, and outlasts this page. */
  readonly stored: boolean;
}

export interface Sending {
  readonly underWay: readonly OnItsWay[];
  readonly trouble: string;
  send(files: readonly File[]): void;
}

/** @param id  of the job; begins anew only with a new component */
export function useSending(id: string, job: OpenJob): Sending {
  const [underWay, setUnderWay] = useState<readonly OnItsWay[]>([]);
  const [trouble, setTrouble] = useState('');
  /** Sent and put into the job, but the job is not known to be kept with them yet. */
  const [arrived, setArrived] = useState<readonly string[]>([]);
  const { edit } = job;
  const latest = useRef(edit);
  latest.current = edit;
  const gone = useRef(new AbortController());
  const taken = useRef(new Set<string>());

  const deliver = useCallback(async (photograph: WaitingPhotograph, stored: boolean): Promise<void> => {
    const { key, name, bytes } = photograph;
    if (taken.current.has(key)) return;
    taken.current.add(key);
    const { signal } = gone.current;
    const body = new Blob([bytes], { type: 'image/jpeg' });
    const preview = URL.createObjectURL(body);
    setUnderWay((all) => [...all, { key, preview, waits: false, stored }]);
    const waits = (): void => setUnderWay((all) => all.map((one) => (one.key === key ? { ...one, waits: true } : one)));
    try {
      const hash = await posted(body, name, waits, signal);
      latest.current((document) => addPhotograph(document, key, hash));
      setArrived((all) => [...all, key]);
    } catch (error) {
      if (signal.aborted) return;
      // The server will not have it, today or later.
      void dropWaiting(key);
      setTrouble(error instanceof Error ? error.message : 'The picture could not be sent.');
    } finally {
      setUnderWay((all) => all.filter((one) => one.key !== key));
      URL.revokeObjectURL(preview);
    }
  }, []);

  const isOpen = job.document !== undefined;
  useEffect(() => {
    if (!isOpen) return;
    const stop = new AbortController();
    gone.current = stop;
    void waitingOf(id).then((all) => {
      if (!stop.signal.aborted) for (const one of all) void deliver(one, true);
    });
    return () => stop.abort();
  }, [id, isOpen, deliver]);

  const isKept = job.standing === 'saved' || job.standing === 'merged';
  useEffect(() => {
    if (!isKept || arrived.length === 0) return;
    for (const key of arrived) void dropWaiting(key);
    setArrived([]);
  }, [isKept, arrived]);

  return useMemo(
    () => ({
      underWay,
      trouble,
      send(files: readonly File[]) {
        setTrouble('');
        for (const file of files)
          void madeReady(id, file).then(
            async (photograph) => deliver(photograph, await putWaiting(photograph)),
            (error: Error) => setTrouble(error.message),
          );
      },
    }),
    [id, underWay, trouble, deliver],
  );
}

async function madeReady(job: string, file: File): Promise<WaitingPhotograph> {
  const bytes = await (await shrunk(file)).arrayBuffer();
  const key = [...crypto.getRandomValues(new Uint16Array(3))].map((n) => n.toString(36)).join('');
  return { key: `photograph-${key}`, job, name: file.name.slice(0, 200), bytes };
}

/** Tries until the server answers. @returns the hash of the picture @throws Refused when the server refuses it */
async function posted(body: Blob, name: string, waits: () => void, signal: AbortSignal): Promise<string> {
  const query = new URLSearchParams({ name, type: 'image/jpeg' });
  for (;;) {
    try {
      const headers = { 'content-type': 'image/jpeg' };
      const request = { method: 'POST', body, headers, signal };
      return (await fetchJson<{ hash: string }>(`/api/attachments?${query}`, request)).hash;
    } catch (error) {
      if (signal.aborted || !(error instanceof Refused && error.status === 0)) throw error;
      waits();
      await new Promise((resolve) => setTimeout(resolve, retry));
    }
  }
}
