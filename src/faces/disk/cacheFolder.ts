/** The system’s place for what can be computed again. */

import { homedir } from 'node:os';
import { join } from 'node:path';

export function cacheFolder(
  name: string,
  env: NodeJS.ProcessEnv = process.env,
  platform: string = process.platform,
): string {
  const { XDG_CACHE_HOME, LOCALAPPDATA } = env;
  if (XDG_CACHE_HOME) return join(XDG_CACHE_HOME, 'plumeline', name);
  if (platform === 'win32' && LOCALAPPDATA) return join(LOCALAPPDATA, 'plumeline', name);
  if (platform === 'darwin') return join(homedir(), 'Library', 'Caches', 'plumeline', name);
  return join(homedir(), '.cache', 'plumeline', name);
}
