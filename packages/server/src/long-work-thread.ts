/** Runs on a thread of its own: see long-work.ts. What one task needs is not read for another. */
import { readFileSync } from 'node:fs';
import { parentPort } from 'node:worker_threads';
import { gzipSync } from 'node:zlib';
import { InputError } from '@sparewright/core/errors';
import type { PacketInput } from '@sparewright/output/packet/packet';
import { StoreError } from '@sparewright/store/store-error';
import { refuseDeep } from './deep-json.ts';
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
    const reason = error instanceof StoreError ? { reason: error.reason } : {};
    const issues = error instanceof InputError ? { issues: error.issues } : {};
    say({ number, failed, ...reason, ...issues });
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
  if (kind === 'backup') {
    const { backUpBeside } = await import('@sparewright/store/backup');
    return backUpBeside(put.folder, put.target);
  }
  if (kind === 'prepareImport') {
    const { prepareArchive } = await import('@sparewright/store/read-archive');
    const text = readFileSync(put.from, 'utf8');
    refuseDeep(text);
    return prepareArchive(text, put.folder);
  }
  const { makePacket, packetPages } = await import('@sparewright/output/packet/packet');
  const input = await packetInput(put.of, put.paper);
  if (kind === 'packet') return new Uint8Array(makePacket(input));
  return packetPages(input).map((page) => new Uint8Array(gzipSync(page)));
}

async function packetInput({ job, workshop, assessment, folder }: ToPrint, paper: Paper): Promise<PacketInput> {
  const { recoverJob } = await import('@sparewright/core/job/recover-job');
  const { attachmentReader } = await import('@sparewright/store/attachments');
  const recovered = recoverJob(job, workshop, assessment.part);
  const picture = attachmentReader(folder);
  return { job: { ...job, sheet: { ...job.sheet, paper } }, workshop, assessment, recovered, picture };
}
