/** Folders for tests. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export function temporaryFolder(): { readonly path: string; remove(): void } {
  const path = mkdtempSync(join(tmpdir(), 'sparewright-server-'));
  return { path, remove: () => rmSync(path, { recursive: true, force: true }) };
}
