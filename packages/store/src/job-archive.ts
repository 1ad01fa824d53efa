/**
 * One job as one file, to send or to keep: JSON with all revisions, the bench log, and the attachments in base64.
 * docs/users/your-data.md describes the format.
 */
import { randomUUID } from 'node:crypto';
import { attachmentsIn } from './attachments.ts';
import { benchLogIn } from './bench-log.ts';
import type { Connection } from './connection.ts';
import { historyOfJob, jobsIn, newJob } from './jobs.ts';
import { type Archive, format, type PreparedArchive } from './read-archive.ts';
import { StoreError } from './store-error.ts';
import { query } from './tables.ts';

export interface Archives {
  /** @throws StoreError when there is no such job, or its attachments are too large for one text */
  export(job: string): string;
  /**
   * Brings in a job from an archive that was looked through, under its old id if that is free: all of it or nothing.
   *
   * @throws StoreError when what it holds would not be stored
   */
  adopt(prepared: PreparedArchive): { id: string; revision: number };
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

  function adopt({ id: named, revisions, benchLog: entries, files }: PreparedArchive) {
    return db.write(() => {
      const id = isTaken(named) ? randomUUID() : named;
      historyOfJob(db, newJob(db, id)).adopt(revisions);
      for (const file of files) {
        attachments.adopt(file);
        attachments.link(id, file.hash);
      }
      for (const { hash } of files.filter(({ linked }) => !linked)) attachments.unlink(id, hash);
      const refused = benchLog
        .append(entries.map((entry) => ({ ...entry, job: id })))
        .find((e) => e.outcome !== 'added');
      if (refused) throw new StoreError('damaged', `The entry ${refused.id} of the bench log is not sound.`);
      return { id, revision: revisions.length };
    });
  }

  const isTaken = (id: string) =>
    db.first(query.selectFrom('document').select('key').where('kind', '=', 'job').where('id', '=', id)) !== undefined;

  return { export: export_, adopt };
}
