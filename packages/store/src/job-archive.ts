/**
 * One job as one file, to send or to keep: JSON with all revisions, the bench log, and the attachments in base64.
 * docs/users/your-data.md describes the format.
 */
import { randomUUID } from 'node:crypto';
import { InputError } from '@sparewright/core/errors';
import { migrate } from '@sparewright/core/job/migrate';
import { parseJson, parseWith, readJob } from '@sparewright/core/job/read-document';
import { z } from 'zod';
import { attachmentsIn, hashOf, refuseUnkept } from './attachments.ts';
import { benchLogIn } from './bench-log.ts';
import type { Connection } from './connection.ts';
import { historyOfJob, jobsIn, newJob } from './jobs.ts';
import { plainJson } from './packed-json.ts';
import { StoreError } from './store-error.ts';
import { query } from './tables.ts';

const format = 'job archive';
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

type Archive = z.output<typeof archiveSchema>;

export interface Archives {
  /** @throws StoreError when there is no such job, or its attachments are too large for one text */
  export(job: string): string;
  /**
   * A job from an archive, under its old id if that is free. Everything is looked at before anything is stored.
   *
   * @throws InputError, StoreError when the text is no archive or holds what would not be stored
   */
  import(text: string): { id: string; revision: number };
}

/** Of attachments together, so that the text stays below what a program can hold in one piece. */
const mostBytes = 300_000_000;

export function archivesIn(db: Connection, folder: string): Archives {
  const jobs = jobsIn(db);
  const benchLog = benchLogIn(db);
  const attachments = attachmentsIn(db, folder);

  function export_(job: string): string {
    const revisions = jobs.revisions(job).map(({ number, saved, author, undoes }) => {
      const { document } = jobs.revision(job, number);
      return { saved, author, undoes, document };
    });
    const linked = new Set(attachments.of(job).map(({ hash }) => hash));
    const all = referredTo(job);
    const bytes = all.reduce((sum, { size }) => sum + size, 0);
    if (bytes > mostBytes)
      throw new StoreError('not kept', 'The photographs are too large for one archive; make a backup of everything.');
    const archive: Archive = {
      sparewright: format,
      version: 1,
      id: job,
      exported: new Date().toISOString(),
      revisions,
      benchLog: benchLog.list(job).map(({ id, at, content }) => ({ id, at, content })),
      attachments: all.map(({ hash, type, name }) => {
        const content = attachments.get(hash)?.bytes.toString('base64') ?? '';
        return { hash, type, name, linked: linked.has(hash), content };
      }),
    };
    return JSON.stringify(archive);
  }

  /** Attachments that the job or any of its revisions and entries speak of, hidden ones too. */
  function referredTo(job: string) {
    const of = query.selectFrom('document').where('kind', '=', 'job').where('document.id', '=', job);
    const hashes = of
      .innerJoin('attachment_link as named', 'named.document', 'document.key')
      .select('named.hash')
      .union(of.innerJoin('attachment_mention as named', 'named.document', 'document.key').select('named.hash'));
    return db.all(query.selectFrom('attachment').selectAll().where('hash', 'in', hashes).orderBy('hash'));
  }

  function import_(text: string) {
    const archive = parseWith(archiveSchema, presentVersion(parseJson(text, format)));
    const revisions = archive.revisions.map(({ document, ...rest }) => ({
      author: undefined,
      undoes: undefined,
      ...rest,
      document: plainJson(migrate('job', document)),
    }));
    readJob(revisions.at(-1)?.document);
    const files = archive.attachments.map((file) => ({ ...file, bytes: contentOf(file) }));
    return db.write(() => {
      const id = isTaken(archive.id) ? randomUUID() : archive.id;
      historyOfJob(db, newJob(db, id)).adopt(revisions);
      for (const { bytes, type, name, hash } of files) {
        attachments.put(bytes, { type, name });
        attachments.link(id, hash);
      }
      for (const { hash } of files.filter(({ linked }) => !linked)) attachments.unlink(id, hash);
      const entries = archive.benchLog.map((entry) => ({ ...entry, job: id }));
      const refused = benchLog.append(entries).find(({ outcome }) => outcome !== 'added');
      if (refused) throw new StoreError('damaged', `The entry ${refused.id} of the bench log is not sound.`);
      return { id, revision: revisions.length };
    });
  }

  const isTaken = (id: string) =>
    db.first(query.selectFrom('document').select('key').where('kind', '=', 'job').where('id', '=', id)) !== undefined;

  return { export: export_, import: import_ };
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
