/** The data of one user: jobs, workshop, bench log, attachments in one folder. */
import { mkdirSync } from 'node:fs';
import { type Attachments, attachmentsIn } from './attachments.ts';
import { type Backup, backUp } from './backup.ts';
import { type BenchLog, benchLogIn } from './bench-log.ts';
import { type CheckReport, check, type Depth } from './check.ts';
import { type Connection, connect } from './connection.ts';
import { databasePath } from './data-folder.ts';
import { defaultFolder } from './default-folder.ts';
import { onDisk } from './durable-file.ts';
import { lockShared } from './folder-lock.ts';
import { type Archives, archivesIn } from './job-archive.ts';
import { type Jobs, jobsIn } from './jobs.ts';
import { migrateSchema, refuseForeign } from './migrate-schema.ts';
import { StoreError } from './store-error.ts';
import { type WorkshopStore, workshopIn } from './workshop.ts';

export interface Store {
  readonly folder: string;
  /** What the check at the start found; `problems` is empty when all is well. */
  readonly report: CheckReport;
  readonly jobs: Jobs;
  readonly workshop: WorkshopStore;
  readonly benchLog: BenchLog;
  readonly attachments: Attachments;
  readonly archives: Archives;
  check(depth: Depth): CheckReport;
  /** Everything as one file; others may go on saving meanwhile. @throws StoreError when there is a file of that name */
  backup(path: string): Promise<Backup>;
  close(): void;
}

/**
 * Opens the data folder, making it if need be. Several programs may have it open at once.
 *
 * @throws StoreError when the database is damaged, of another program, or of a newer one: then nothing was written
 */
export function openStore({ folder = defaultFolder() }: { readonly folder?: string | undefined } = {}): Store {
  onDisk(folder, () => mkdirSync(folder, { recursive: true, mode: 0o700 }));
  const lock = lockShared(folder);
  let db: Connection | undefined;
  try {
    db = openDatabase(folder);
    const opened = db;
    const report = check(opened, folder, 'quick');
    const broken = report.problems.filter((problem) => problem.startsWith('The database is damaged'));
    if (broken.length > 0) throw new StoreError('damaged', `${broken.slice(0, 3).join(' ')} Restore a backup.`);
    return {
      folder,
      report,
      jobs: jobsIn(opened),
      workshop: workshopIn(opened),
      benchLog: benchLogIn(opened),
      attachments: attachmentsIn(opened, folder),
      archives: archivesIn(opened, folder),
      check: (depth) => check(opened, folder, depth),
      backup: (path) => backUp(opened, folder, path),
      close() {
        opened.close();
        lock.release();
      },
    };
  } catch (error) {
    db?.close();
    lock.release();
    throw error;
  }
}

function openDatabase(folder: string): Connection {
  const path = databasePath(folder);
  refuseForeign(path);
  const db = connect(path);
  try {
    db.column('PRAGMA journal_mode = WAL');
    // What was acknowledged is on the disk, even if the power fails right after.
    db.script('PRAGMA synchronous = FULL');
    db.script('PRAGMA foreign_keys = ON');
    migrateSchema(db);
    return db;
  } catch (error) {
    db.close();
    throw error;
  }
}
