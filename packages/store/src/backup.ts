/** Everything as one file: a copy of the database with the attachments inside it, itself a database. */
import { existsSync, renameSync, rmSync, statSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { readAttachment } from './attachments.ts';
import { check } from './check.ts';
import { type Connection, connect } from './connection.ts';
import { attachmentFolder, databasePath } from './data-folder.ts';
import { onDisk, syncFile, syncFolder } from './durable-file.ts';
import { StoreError } from './store-error.ts';
import { query } from './tables.ts';

export interface Backup {
  readonly path: string;
  readonly jobs: number;
  readonly attachments: number;
  readonly bytes: number;
  /** What could not be saved because it is damaged already, a sentence each. */
  readonly problems: readonly string[];
}

/** Of a data folder that is open elsewhere in this process, without standing in the way there. */
export async function backUpBeside(folder: string, target: string): Promise<Backup> {
  const db = connect(databasePath(folder), { readonly: true });
  try {
    return await backUp(db, folder, target);
  } finally {
    db.close();
  }
}

export async function backUp(db: Connection, folder: string, target: string): Promise<Backup> {
  const path = resolve(target);
  if (!existsSync(dirname(path))) throw new StoreError('missing', `There is no folder ${dirname(path)}.`);
  refuseExisting(path);
  const unfinished = `${path}.${process.pid}.unfinished`;
  try {
    rmSync(unfinished, { force: true });
    await db.backup(unfinished);
    const { jobs, attachments, problems } = complete(unfinished, folder);
    refuseExisting(path);
    onDisk(path, () => {
      syncFile(unfinished);
      renameSync(unfinished, path);
      syncFolder(dirname(path));
    });
    return { path, jobs, attachments, bytes: statSync(path).size, problems };
  } finally {
    rmSync(unfinished, { force: true });
  }
}

function refuseExisting(path: string): void {
  if (existsSync(path)) throw new StoreError('taken', `There is a file ${path} already; choose another name.`);
}

/** Adds the files to the copied database. */
function complete(path: string, folder: string): { jobs: number; attachments: number; problems: string[] } {
  const copy = connect(path);
  try {
    copy.column('PRAGMA journal_mode = DELETE');
    copy.script('CREATE TABLE attachment_content (hash TEXT PRIMARY KEY, content BLOB NOT NULL) STRICT');
    const problems: string[] = [];
    const files = copy.all(query.selectFrom('attachment').select(['hash', 'name']));
    for (const { hash, name } of files)
      try {
        const content = readAttachment(attachmentFolder(folder), hash);
        copy.run(query.insertInto('attachment_content').values({ hash, content }));
      } catch (error) {
        if (!(error instanceof StoreError)) throw error;
        problems.push(`attachment ${name}: ${error.message}`);
      }
    const found = check(copy, folder, 'quick').problems;
    const jobs = Number(copy.column('SELECT count(*) FROM job')[0]);
    return { jobs, attachments: files.length - problems.length, problems: [...new Set([...problems, ...found])] };
  } finally {
    copy.close();
  }
}
