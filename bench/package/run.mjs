/**
 * Times `plumeline pack` of the example, without clips: everything worked out, drawn, written. Wall clock and the time that
 * the processor spent in all threads; the second hardly hangs on what else the machine does. Writes its section of
 * bench/RESULTS.md.
 *
 *   node bench/package/run.mjs
 *
 * Options: --runs <n> (default 1), --no-write, --dist <folder of a build>.
 */

import { existsSync, mkdtempSync, readdirSync, rmSync, statSync } from 'node:fs';
import { cpus, loadavg, tmpdir, type } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { writeSection } from '../results.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const { values: options } = parseArgs({
  options: {
    runs: { type: 'string', default: '1' },
    dist: { type: 'string', default: `${root}dist` },
    'no-write': { type: 'boolean', default: false },
  },
});
if (!existsSync(`${options.dist}/faces/cli/main.js`)) throw new Error('build first: npm run build');
const { main } = await import(`${options.dist}/faces/cli/main.js`);
const terminal = { out: () => undefined, err: () => undefined, width: 100, elapsed: () => 0 };
const place = mkdtempSync(join(tmpdir(), 'plumeline-bench-'));

const runs = [];
for (let i = 0; i < Number(options.runs); i++) {
  const [load] = loadavg();
  const [began, spent] = [performance.now(), process.cpuUsage()];
  const status = await main(
    [
      'pack',
      `${root}examples/alder-booster`,
      '--out',
      join(place, String(i)),
      '--date',
      '2026-11-26',
      '--no-clips',
    ],
    terminal,
  );
  if (status !== 0) throw new Error(`the package was not made: ${status}`);
  const { user, system } = process.cpuUsage(spent);
  runs.push({ wall: (performance.now() - began) / 1000, cpu: (user + system) / 1e6, load });
}
const folder = join(place, '0');
const files = readdirSync(folder, { recursive: true }).map((name) => join(folder, name));
const sizes = files.filter((name) => statSync(name).isFile()).map((name) => statSync(name).size);
rmSync(place, { recursive: true, force: true });

const least = (key) => Math.min(...runs.map((run) => run[key]));
const section = `The example without clips: ${sizes.length} files, ${(sizes.reduce((sum, size) => sum + size, 0) / 1e6).toFixed(1)} MB; two threads for what is worked out, one a core, at most four, for pictures.
Aimed at: 20 s on two free cores.

| measured | least of ${runs.length} |
| --- | --- |
| wall clock [s] | ${least('wall').toFixed(1)} |
| processor time, all threads [s] | ${least('cpu').toFixed(1)} |

${cpus()[0]?.model.split(' with ')[0] ?? 'processor unknown'}, ${cpus().length} cores, ${type()}, Node ${process.versions.node}; load on it at the beginning ${Math.min(...runs.map(({ load }) => load)).toFixed(1)}.
`;
console.log(section);
if (!options['no-write']) writeSection('Package', section);
