/** Reads what the user names: of bearable size, text, JSON, and a job or a workshop; anything else is refused before it costs anything. */
import { closeSync, constants, fstatSync, openSync, readdirSync, readFileSync, type Stats } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { InputError } from '@sparewright/core/errors';
import { parseJson, readJob, readWorkshop } from '@sparewright/core/job/read-document';
import type { Job } from '@sparewright/core/job/schema';
import type { Workshop } from '@sparewright/core/lathe/schema';

const megabyte = 1024 * 1024;
/** A job with every field full is smaller by far. */
export const largestFile = 8 * megabyte;

export interface ReadJob {
  readonly file: string;
  readonly job: Job;
}

export interface ReadWorkshop {
  /** Undefined when there is none. */
  readonly file: string | undefined;
  readonly workshop: Workshop | undefined;
  /** Which one was taken and why, in a sentence. */
  readonly told: string;
}

export function readJobFile(file: string): ReadJob {
  return { file, job: naming(file, () => readJob(parseJson(readText(file, 'a job file'), file))) };
}

/** The workshop named, else the only one beside the job, else none. */
export function readWorkshopFor(jobFile: string, named: string | undefined): ReadWorkshop {
  if (named !== undefined) return { file: named, workshop: workshopIn(named), told: `Workshop: ${named}.` };
  const beside = workshopsBeside(jobFile);
  const [only] = beside;
  if (only !== undefined && beside.length === 1) {
    const file = join(dirname(jobFile), only);
    return { file, workshop: workshopIn(file), told: `Workshop: ${only}, the only one beside the job.` };
  }
  const found =
    beside.length === 0
      ? 'there is none beside the job'
      : `there are ${beside.length} beside the job (${beside.slice(0, 4).join(', ')})`;
  return {
    file: undefined,
    workshop: undefined,
    told: `No workshop: ${found}; --workshop FILE names one. Without it there is no route.`,
  };
}

function workshopIn(file: string): Workshop {
  return readWorkshopFile(file).workshop;
}

/** A workshop by itself, and as written, which is what questions take. */
export function readWorkshopFile(file: string): { readonly document: unknown; readonly workshop: Workshop } {
  return naming(file, () => {
    const document = parseJson(readText(file, 'a workshop file'), file);
    return { document, workshop: readWorkshop(document) };
  });
}

function workshopsBeside(jobFile: string): string[] {
  const folder = dirname(jobFile);
  try {
    return readdirSync(folder)
      .filter((name) => name.endsWith('.workshop.json'))
      .toSorted();
  } catch {
    throw new InputError([
      { path: folder, value: undefined, expected: 'a folder that may be listed, or --workshop FILE' },
    ]);
  }
}

/** Says in which file the refused place lies. */
function naming<T>(file: string, read: () => T): T {
  try {
    return read();
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    throw new InputError(
      error.issues.map((issue) => ({
        ...issue,
        path: issue.path === '' || issue.path === file ? file : `${basename(file)}: ${issue.path}`,
      })),
    );
  }
}

function readText(file: string, wanted: string): string {
  const refuse = (value: string | undefined, expected: string) => new InputError([{ path: file, value, expected }]);
  const bytes = reading(file, wanted, (descriptor, { size }) => {
    if (size > largestFile) {
      throw refuse(`a file of ${Math.round(size / megabyte)} MB`, `${wanted} of at most ${largestFile / megabyte} MB`);
    }
    return readFileSync(descriptor);
  });
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw refuse('bytes that are no UTF-8 text', `${wanted}, saved as UTF-8`);
  }
}

function reading<T>(file: string, wanted: string, read: (descriptor: number, stats: Stats) => T): T {
  let descriptor: number | undefined;
  try {
    // Without waiting: a pipe that nobody writes to would never open.
    descriptor = openSync(file, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
    const stats = fstatSync(descriptor);
    if (!stats.isFile()) {
      const value = stats.isDirectory() ? 'a folder' : 'something that is no file';
      throw new InputError([{ path: file, value, expected: wanted, example: 'examples/plunger.job.json' }]);
    }
    return read(descriptor, stats);
  } catch (error) {
    if (error instanceof InputError) throw error;
    const code = error instanceof Error && 'code' in error ? error.code : undefined;
    const expected =
      code === 'ENOENT' || code === 'ENOTDIR'
        ? `${wanted}; there is no file of that name`
        : `${wanted} that may be read (${String(code ?? error)})`;
    throw new InputError([{ path: file, value: undefined, expected }]);
  } finally {
    if (descriptor !== undefined) closeSync(descriptor);
  }
}
