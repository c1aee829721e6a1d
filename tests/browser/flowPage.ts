/** What pages with whole flows share: a cache of their own for each try, an engine whose field takes a second, what stands below the picture. */

import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeEach, vi } from 'vitest';
import { page, textOf } from './studyPage.ts';

/** To be called after {@link useWorkbench}: each try of each test keeps its computed flows in a folder of its own. */
export function useFlowCache(): void {
  beforeEach(() => {
    const cache = mkdtempSync(join(tmpdir(), 'plumeline-flow-cache-'));
    vi.stubEnv('XDG_CACHE_HOME', cache);
    // Comes after the server is closed: what it still computes goes there.
    return () => {
      vi.unstubAllEnvs();
      rmSync(cache, { recursive: true, force: true });
    };
  });
}

/** Perfect gas through a short cone. */
export const coldCone = `plumeline: 1
question: Where does its shock stand?
engines:
  cold: { name: Cold, propellants: { gamma: 1.4, molarMass: 28 g/mol, temperature: 600 K }, chamber: { pressure: 20 bar, efficiency: 100 % }, size: { throat: 100 mm }, nozzle: { kind: cone, areaRatio: 4, halfAngle: 15 deg } }
`;

export async function saidOfFlow(): Promise<string> {
  const place = page.locator('.flow-said');
  return (await place.count()) === 0 ? '' : textOf(place.first());
}
