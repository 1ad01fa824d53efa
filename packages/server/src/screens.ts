/** The built screens, held in memory: what is not among them does not exist, so no path can lead out of the folder. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { extname, join } from 'node:path';

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.ttf': 'font/ttf',
  '.txt': 'text/plain; charset=utf-8',
  '.json': 'application/json',
};

export interface ScreenFile {
  readonly type: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
  /** Its name changes with its content. */
  readonly lasting: boolean;
}

/** Files by path, `/index.html` also as `/`; empty when the screens are not built. */
export function readScreens(folder: string): ReadonlyMap<string, ScreenFile> {
  const files = new Map<string, ScreenFile>();
  if (!existsSync(join(folder, 'index.html'))) return files;
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    const type = types[extname(entry.name)];
    if (!entry.isFile() || type === undefined) continue;
    const place = join(entry.parentPath, entry.name);
    const path = place.slice(folder.length).replaceAll('\\', '/').replace(/^\/*/, '/');
    files.set(path, { type, bytes: new Uint8Array(readFileSync(place)), lasting: path.startsWith('/assets/') });
  }
  const index = files.get('/index.html');
  if (index) files.set('/', index);
  return files;
}
