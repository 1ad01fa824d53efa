/** Photographs on their way to the server: tried again until it answers, and shown meanwhile. */
import { useEffect, useRef, useState } from 'react';
import { fetchJson, Refused } from '../ask-server.ts';
import { shrunk } from './shrink.ts';

/** Between two tries at a server that does not answer [ms]. */
const retry = 2500;

export interface OnItsWay {
  readonly key: string;
  /** Of the picture as it was chosen, to look at. */
  readonly preview: string;
  readonly waits: boolean;
}

export interface Sending {
  readonly underWay: readonly OnItsWay[];
  readonly trouble: string;
  send(files: readonly File[]): void;
}

export function useSending(arrived: (hash: string) => void): Sending {
  const [underWay, setUnderWay] = useState<readonly OnItsWay[]>([]);
  const [trouble, setTrouble] = useState('');
  const told = useRef(arrived);
  told.current = arrived;
  const gone = useRef(new AbortController());
  useEffect(() => {
    const stop = new AbortController();
    gone.current = stop;
    return () => stop.abort();
  }, []);

  async function deliver(file: File): Promise<void> {
    const key = [...crypto.getRandomValues(new Uint32Array(2))].join('-');
    const preview = URL.createObjectURL(file);
    const { signal } = gone.current;
    setUnderWay((all) => [...all, { key, preview, waits: false }]);
    try {
      const body = await shrunk(file);
      const query = new URLSearchParams({ name: file.name.slice(0, 200), type: 'image/jpeg' });
      for (;;) {
        try {
          const { hash } = await fetchJson<{ hash: string }>(`/api/attachments?${query}`, {
            method: 'POST',
            body,
            headers: { 'content-type': 'image/jpeg' },
            signal,
          });
          told.current(hash);
          return;
        } catch (error) {
          if (signal.aborted || !(error instanceof Refused && error.status === 0)) throw error;
          setUnderWay((all) => all.map((one) => (one.key === key ? { ...one, waits: true } : one)));
          await new Promise((resolve) => setTimeout(resolve, retry));
        }
      }
    } catch (error) {
      if (!signal.aborted) setTrouble(error instanceof Error ? error.message : 'The picture could not be sent.');
    } finally {
      setUnderWay((all) => all.filter((one) => one.key !== key));
      URL.revokeObjectURL(preview);
    }
  }

  return {
    underWay,
    trouble,
    send(files) {
      setTrouble('');
      for (const file of files) void deliver(file);
    },
  };
}
