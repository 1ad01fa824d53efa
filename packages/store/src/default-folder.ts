/** Where the data lies when nobody says otherwise. */
import { homedir } from 'node:os';
import { posix, win32 } from 'node:path';

interface Surroundings {
  readonly env?: Readonly<Record<string, string | undefined>>;
  readonly platform?: string;
  readonly home?: string;
}

/**
 * The user's data folder: `SPAREWRIGHT_DATA` if it is set, else the place that the system keeps for programs' data.
 * A relative `XDG_DATA_HOME` is ignored, as its specification demands.
 */
export function defaultFolder({ env = process.env, platform = process.platform, home = homedir() }: Surroundings = {}) {
  const { join, resolve, isAbsolute } = platform === 'win32' ? win32 : posix;
  const chosen = env.SPAREWRIGHT_DATA;
  if (chosen) return resolve(chosen);
  if (platform === 'win32') return join(env.LOCALAPPDATA || join(home, 'AppData', 'Local'), 'Sparewright');
  if (platform === 'darwin') return join(home, 'Library', 'Application Support', 'Sparewright');
  const share = env.XDG_DATA_HOME;
  return join(share && isAbsolute(share) ? share : join(home, '.local', 'share'), 'sparewright');
}
