/** A line on the error stream while a person waits; gone when the work is done. */
import { Worker } from 'node:worker_threads';
import type { Terminal } from './terminal.ts';

/** Shorter work is not worth a line. */
const patience = 1000;

// The work may keep this thread busy throughout, so another one keeps the time.
const timekeeper = `
const { workerData } = require('node:worker_threads');
setTimeout(() => require('node:fs').writeSync(2, workerData.words), workerData.patience);
`;

export async function withProgress<T>(terminal: Terminal, words: string, work: () => T | Promise<T>): Promise<T> {
  if (!terminal.watched) return work();
  const worker = new Worker(timekeeper, { eval: true, workerData: { words: `${words} …`, patience } });
  const began = performance.now();
  try {
    return await work();
  } finally {
    await worker.terminate();
    if (performance.now() - began > patience) terminal.err('\r\u001b[K');
  }
}
