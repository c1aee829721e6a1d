/** What is told of engines that have no whole flow at any place, or at some only. */

import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test, vi } from 'vitest';
import type { EngineSolution } from '../../../src/answer/solution.ts';
import { computeFlows, type FlowReport } from '../../../src/faces/flows/computeFlows.ts';
import { ProblemError } from '../../../src/numerics/problem.ts';

/** Of `never` no field holds, of `once` that of one place alone. */
vi.mock('../../../src/faces/disk/keptFlows.ts', () => ({
  keptFlows: ({ input }: EngineSolution) => ({
    keyOf: (place: number, fineness: string) => `${input.id} ${place} ${fineness}`,
    async at(place: number, fineness: string) {
      if (input.id === 'once' && place === 3 && fineness === 'coarse')
        return { engine: input.id, ambientPressure: 1, fineness };
      throw new ProblemError({ code: 'flow-outside-table', what: `Place ${place}.`, mend: 'None.' });
    },
  }),
}));

const cache = mkdtempSync(join(tmpdir(), 'plumeline-compute-'));
vi.stubEnv('XDG_CACHE_HOME', cache);
afterAll(() => {
  vi.unstubAllEnvs();
  rmSync(cache, { recursive: true, force: true });
});

test('an engine that has none anywhere is told of, with what was wrong first', async () => {
  const reports: FlowReport[] = [];
  await computeFlows(
    'plumeline: 1\nquestion: And so?\nengines:\n  never: { name: Never, propellants: { gamma: 1.4, molarMass: 28 g/mol, temperature: 600 K }, chamber: { pressure: 20 bar }, size: { throat: 100 mm }, nozzle: { kind: cone, areaRatio: 4, halfAngle: 15 deg } }\n  once: { like: never, name: Once }\n',
    { engines: ['never', 'once'], altitude: 0 },
    { report: (report) => reports.push(report), looksAt: () => 0, isStopped: () => false },
  );
  expect(reports.at(-1)).toEqual({ is: 'ended', work: { is: 'none' } });
  const without = reports.flatMap((report) => (report.is === 'without' ? [report] : []));
  expect(without.map(({ engine, problem }) => [engine, problem.what])).toEqual([['never', 'Place 0.']]);
  expect(reports.filter(({ is }) => is === 'field').length).toBe(1);
});
