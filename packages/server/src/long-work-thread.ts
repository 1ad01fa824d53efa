/** Runs on a thread of its own: see long-work.ts. What one task needs is not read for another. */
import { parentPort } from 'node:worker_threads';
import { gzipSync } from 'node:zlib';
import type { PacketInput } from '@sparewright/output/packet/packet';
import { StoreError } from '@sparewright/store/store-error';
import type { Answer, Asked, Paper, Task, ToPrint } from './long-work.ts';

/** One after another, also while something is still being read for the one before. */
let before: Promise<void> = Promise.resolve();

parentPort?.on('message', (asked: Asked) => {
  before = before.then(() => doTask(asked));
});

async function doTask({ number, task }: Asked): Promise<void> {
  try {
    say({ number, gives: await answerTo(task) });
  } catch (error) {
    const failed = error instanceof Error ? error.message : String(error);
    say({ number, failed, ...(error instanceof StoreError ? { reason: error.reason } : {}) });
  }
}

function say(answer: Answer): void {
  parentPort?.postMessage(answer);
}

async function answerTo({ kind, put }: Task): Promise<unknown> {
  if (kind === 'prepareRestore') {
    const { prepareRestore } = await import('@sparewright/store/restore');
    return prepareRestore(put);
  }
  const { makePacket, packetPages } = await import('@sparewright/output/packet/packet');
  const input = await packetInput(put.of, put.paper);
  if (kind === 'packet') return new Uint8Array(makePacket(input));
  return packetPages(input).map((page) => new Uint8Array(gzipSync(page)));
}

async function packetInput({ job, workshop, assessment }: ToPrint, paper: Paper): Promise<PacketInput> {
  const { recoverJob } = await import('@sparewright/core/job/recover-job');
  const recovered = recoverJob(job, workshop, assessment.part);
  return { job: { ...job, sheet: { ...job.sheet, paper } }, workshop, assessment, recovered };
}
