/**
 * Times the start at the pad of the engines of examples/alder-booster, by one thread and by several. Writes its section of bench/RESULTS.md.
 *
 *   node bench/flow/inTime.mjs
 *
 * Options: --until <ms> (default 10), --threads <list> (default 1,2,4), --no-write, --dist <folder of a build>.
 */
import { availableParallelism, cpus, type } from 'node:os';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';
import { writeSection } from '../results.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const { values: options } = parseArgs({
  options: {
    until: { type: 'string', default: '10' },
    threads: { type: 'string', default: '1,2,4' },
    dist: { type: 'string', default: `${root}dist` },
    'no-write': { type: 'boolean', default: false },
  },
});
const load = (path) => import(pathToFileURL(`${options.dist}/${path}.js`).href);
const { openDataShelf } = await load('faces/disk/data');
const { solveStudyLive } = await load('answer/solve');
const { openStudy } = await load('faces/cli/openStudy');
const { timedFields, flowPlaceAt } = await load('answer/flow/index');
const { flowTeam } = await load('faces/crew/flowTeam');

const shelf = openDataShelf();
const quiet = { out() {}, err() {}, width: 100 };
const { study } = await openStudy(`${root}examples/alder-booster`, shelf, quiet);
const { solutions } = await solveStudyLive(study, shelf, {});
/** [s] */
const [RAMP, UNTIL, FINE] = [2e-3, Number(options.until) * 1e-3, 5e-4];

/** From the first moment on, when the engine at rest is known, to the last: seconds on the clock and of the processor. */
async function start(engine, fineness, until, threads) {
  const team = threads === 1 ? null : flowTeam({ threads });
  const choices = { event: { is: 'start' }, ramp: RAMP, until, frames: 4, fineness, bits: 32, team };
  let [began, last] = [null, null];
  try {
    for (const field of timedFields(solutions.get(engine), flowPlaceAt(0), choices)) {
      began ??= { clock: performance.now(), processor: process.cpuUsage() };
      last = field;
    }
  } finally {
    await team?.dismiss();
  }
  if (last.moment.ended !== undefined) throw new Error(last.moment.ended.what);
  const { user, system } = process.cpuUsage(began.processor);
  return {
    cells: last.cells,
    steps: last.steps,
    thrust: last.moment.thrust,
    clock: (performance.now() - began.clock) / 1e3,
    processor: (user + system) / 1e6,
  };
}

const kilonewtons = (thrust) => `${(thrust / 1e3).toFixed(1)} kN`;
const rows = [];
for (const engine of ['bell', 'plug'])
  for (const fineness of ['coarse', 'normal']) {
    const { cells, steps, processor, thrust } = await start(engine, fineness, UNTIL, 1);
    rows.push(
      `| ${engine} | ${fineness} | ${cells} | ${steps} | ${processor.toFixed(1)} s | ${kilonewtons(thrust)} |`,
    );
    console.log(rows.at(-1));
  }
const shared = [];
for (const threads of options.threads.split(',').map(Number)) {
  const { cells, clock, processor } = await start('plug', 'fine', FINE, threads);
  shared.push(`| ${threads} | ${cells} | ${clock.toFixed(1)} s | ${processor.toFixed(1)} s |`);
  console.log(shared.at(-1));
}

if (!options['no-write'])
  writeSection(
    'Speed of a flow through time',
    `Written by \`node bench/flow/inTime.mjs${options.threads === '1,2,4' ? '' : ` --threads ${options.threads}`}\` on ${new Date().toISOString().slice(0, 10)}.

Machine: ${cpus()[0].model.trim()}, ${type()}, ${availableParallelism()} cores, nothing else running; Node ${process.versions.node}. The engines of examples/alder-booster start at
the pad: from air at rest, the feed rises over ${RAMP * 1e3} ms; 32 bits. Processor time of the first ${options.until} ms, one thread, the engine at rest that it is held against left out. Steps: of
the strip that takes the shortest.

| engine | fineness | cells | steps | processor time | thrust then |
| --- | --- | --: | --: | --: | --: |
${rows.join('\n')}

The first ${FINE * 1e3} ms of the plug's start at \`fine\`, by so many threads.

| threads | cells | on the clock | processor time |
| --: | --: | --: | --: |
${shared.join('\n')}
`,
  );
