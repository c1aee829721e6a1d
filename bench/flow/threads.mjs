/**
 * Times steps of flow fields, and a picture of 512 × 256 cells from its neighbour, by one thread and by several that share the memory, on
 * a machine that has so many cores free. Writes its section of bench/RESULTS.md.
 *
 *   node bench/flow/threads.mjs
 *
 * Options: --threads <list> (default 1,2,4,8), --turns <n> (default 10), --no-write, --dist <folder of a build>.
 */
import { availableParallelism, cpus, type } from 'node:os';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';
import { writeSection } from '../results.mjs';
import { preparedEngine } from './fieldEngine.mjs';
import { neighbourTimes } from './fieldNeighbour.mjs';
import { teamTimes } from './fieldTeam.mjs';

const { values: options } = parseArgs({
  options: {
    threads: { type: 'string', default: '1,2,4,8' },
    turns: { type: 'string', default: '10' },
    dist: { type: 'string', default: fileURLToPath(new URL('../../dist', import.meta.url)) },
    'no-write': { type: 'boolean', default: false },
  },
});
const { dist } = options;
const counts = options.threads.split(',').map(Number);
const turns = Number(options.turns);
const STEPS = 20;
const load = (path) => import(pathToFileURL(`${dist}/physics/${path}.js`).href);
const { cellAt } = await load('euler/mesh');
const engineOf = await preparedEngine(load);

function sumOf({ fields }) {
  let sum = 0;
  for (const { mesh, pressure, density } of fields)
    for (let j = 0; j < mesh.nj; j++)
      for (let i = 0; i < mesh.ni; i++) sum += pressure[cellAt(mesh, i, j)] * density[cellAt(mesh, i, j)];
  return sum;
}

const cases = [16, 32, 72].map((across) => {
  const newFlow = (kernel) => engineOf(kernel)(across, null).flow;
  const cells = newFlow(null).fields.reduce((sum, { mesh }) => sum + mesh.ni * mesh.nj, 0);
  return { name: `${cells}`, bits: 32, newFlow, step: (flow) => flow.relax(0.5), sumOf };
});
const steps = await teamTimes(cases, { dist, turns, steps: STEPS, threads: counts, pinned: false });
const stepRows = steps.map(
  ({ name, least }) =>
    `| ${name} | ${least.map((own) => `${(own * 1e3).toFixed(2)} ms`).join(' | ')} | ${least
      .slice(1)
      .map((own) => (least[0] / own).toFixed(2))
      .join(', ')} |`,
);
console.log(stepRows.join('\n'));
const rows = await neighbourTimes(engineOf, { dist, counts, pinned: false });
console.log(rows.join('\n'));

if (!options['no-write'])
  writeSection(
    'Several threads of a flow field',
    `Written by \`node bench/flow/threads.mjs${options.threads === '1,2,4,8' ? '' : ` --threads ${options.threads}`}\` on ${new Date().toISOString().slice(0, 10)}.

Machine: ${cpus()[0].model.trim()}, ${type()}, ${availableParallelism()} cores, nothing else running; Node ${process.versions.node}. The engine of
*Speed of a flow field*, 32 bits, each cell by its own steps: a step, the least of ${turns} turns of ${STEPS}, by so many threads that share its memory; the same sums to the last bit.

| cells | ${counts.map((count) => `${count} thread${count === 1 ? '' : 's'}`).join(' | ')} | times as fast as one |
| --: | ${counts.map(() => '--:').join(' | ')} | --- |
${stepRows.join('\n')}

A field of at least 512 × 256 cells from its neighbour, as there.

| threads | cells | steps of the finest | on the clock | processor time | C_F |
| --: | --: | --: | --: | --: | --- |
${rows.join('\n')}
`,
  );
