/**
 * The first and longer part of bringing in a job: an archive is looked through, and its files are laid into the data folder, which
 * may be in use meanwhile. Nothing refers to them before the second part, see job-archive.ts.
 */
import { InputError } from '@sparewright/core/errors';
import type { Json } from '@sparewright/core/job/merge';
import { migrate } from '@sparewright/core/job/migrate';
import { parseJson, parseWith, readJob } from '@sparewright/core/job/read-document';
import { z } from 'zod';
import { hashOf, keepFile, refuseUnkept } from './attachments.ts';
import { attachmentFolder } from './data-folder.ts';
import { plainJson } from './packed-json.ts';
import { StoreError } from './store-error.ts';

export const format = 'job archive';
const time = z.iso.datetime();

const archiveSchema = z.strictObject({
  sparewright: z.literal(format),
  version: z.literal(1),
  id: z.string().regex(/^[a-z0-9][a-z0-9-]{0,79}$/, { error: 'small letters, digits and hyphens' }),
  exported: time,
  revisions: z
    .array(
      z.strictObject({
        saved: time,
        author: z.string().max(120).optional(),
        undoes: z.int().min(1).optional(),
        document: z.unknown(),
      }),
    )
    .min(1),
  benchLog: z.array(z.strictObject({ id: z.string(), at: z.string(), content: z.unknown() })),
  attachments: z.array(
    z.strictObject({ hash: z.string(), type: z.string(), name: z.string(), linked: z.boolean(), content: z.base64() }),
  ),
});

export type Archive = z.output<typeof archiveSchema>;

/** What an archive holds, found sound; its files lie in the data folder. Plain data, so that it can be made on another thread. */
export interface PreparedArchive extends Pick<Archive, 'id' | 'benchLog'> {
  readonly revisions: readonly {
    readonly saved: string;
    readonly author: string | undefined;
    readonly undoes: number | undefined;
    readonly document: Json;
  }[];
  readonly files: readonly {
    readonly hash: string;
    readonly type: string;
    readonly name: string;
    readonly size: number;
    readonly linked: boolean;
  }[];
}

/** @throws InputError, StoreError when the text is no archive or holds what would not be stored; then nothing was written */
export function prepareArchive(text: string, folder: string): PreparedArchive {
  const { id, benchLog, ...archive } = parseWith(archiveSchema, presentVersion(parseJson(text, format)));
  const revisions = archive.revisions.map(({ document, ...rest }) => ({
    author: undefined,
    undoes: undefined,
    ...rest,
    document: plainJson(migrate('job', document)),
  }));
  readJob(revisions.at(-1)?.document);
  const files = archive.attachments.map((file) => ({ ...file, bytes: contentOf(file) }));
  for (const { hash, bytes } of files) keepFile(attachmentFolder(folder), hash, bytes);
  return {
    id,
    benchLog,
    revisions,
    files: files.map(({ hash, type, name, bytes, linked }) => ({ hash, type, name, size: bytes.length, linked })),
  };
}

function presentVersion(archive: unknown): unknown {
  const version = typeof archive === 'object' && archive !== null && 'version' in archive ? archive.version : undefined;
  if (typeof version === 'number' && version > 1)
    throw new InputError([
      {
        path: 'version',
        value: version,
        expected: 'at most 1: it was written by a newer program, which is needed to read it',
      },
    ]);
  return archive;
}

function contentOf({ content, hash, type, name }: Archive['attachments'][number]): Buffer {
  const bytes = Buffer.from(content, 'base64');
  refuseUnkept(bytes, type);
  if (hashOf(bytes) !== hash) throw new StoreError('damaged', `The attachment ${name} in the archive is damaged.`);
  return bytes;
}
