/** What lies where in the data folder. */
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';

export function databasePath(folder: string): string {
  return join(folder, 'sparewright.db');
}

export function lockPath(folder: string): string {
  return join(folder, 'sparewright.lock');
}

export function attachmentFolder(folder: string): string {
  return join(folder, 'attachments');
}

/** Where a restore keeps the database that it replaces. */
export function keptPath(folder: string, at: Date): string {
  return join(folder, `sparewright.before-restore-${at.toISOString().replace(/\D/g, '').slice(0, 17)}.db`);
}

export function keptDatabases(folder: string): string[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder).filter((name) => name.startsWith('sparewright.before-restore-'));
}
