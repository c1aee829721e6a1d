/**
 * Times the cycle of a solved engine: the balance with its turbine gas, and the highest chamber pressure, for each kind; writes its
 * section of bench/RESULTS.md. The reference is the solving of the engine's chamber itself.
 *
 *   node bench/cycle/run.mjs
 *
 * Options: --seconds <n> for each (default 1), --no-write, --dist <folder of a build>.
 */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { cpus, type } from 'node:os';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { writeSection } from '../results.mjs';
import { measure } from '../timing.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const { values: options } = parseArgs({
  options: {
    seconds: { type: 'string', default: '1' },
    dist: { type: 'string', default: `${root}dist` },
    'no-write': { type: 'boolean', default: false },
  },
});
if (!existsSync(`${options.dist}/answer/index.js`)) {
  console.log('building first …');
  const { status } = spawnSync(process.execPath, [`${root}scripts/build.mjs`], { stdio: 'inherit' });
  if (status !== 0) throw new Error('the build failed; see above');
}
const load = (path) => import(`${options.dist}/${path}`);
const { solveStudyLive } = await load('answer/solve.js');
const { engineCycle } = await load('answer/cycle/engineCycle.js');
const { chamberNeeds } = await load('answer/cycle/otherCycle.js');
const { gatherMaterials } = await load('answer/materials.js');
const { solveEngine } = await load('answer/solveEngine.js');
const { openDataShelf } = await load('faces/disk/data.js');
const { knownNames } = await load('study/names.js');
const { readStudy } = await load('study/index.js');
const { cycleKinds } = await load('study/cycleForm.js');

const shelf = openDataShelf();
const engine = (kind) =>
  `  ${kind}: { propellants: { oxidiser: oxygen, fuel: methane, ratio: 3.4 }, chamber: { pressure: 60 bar, efficiency: 98 % }, size: { throat: 150 mm }, nozzle: { kind: bell, areaRatio: 40 }, cycle: { kind: ${kind} } }`;
const text = `plumeline: 1\nquestion: How fast?\nengines:\n${cycleKinds.map(engine).join('\n')}\n`;
const read = readStudy(text, { file: 'bench', ...knownNames(await shelf.propellants()) });
if (!read.ok) throw new Error(read.problems.map(({ what }) => what).join(' '));
const { solutions } = await solveStudyLive(read.study, shelf, {});
const materials = await gatherMaterials(read.study.engines, shelf);

const seconds = Number(options.seconds);
const milliseconds = (value) => `${(value * 1000).toPrecision(3)} ms`;
const timed = (work) => measure(work, 1, 0.3, seconds);
const reached = (work) => {
  try {
    return work();
  } catch (error) {
    if (error.problem === undefined) throw error;
    return error.problem.code;
  }
};
const chamber = timed(() => solveEngine(read.study.engines[0], materials));
const rows = cycleKinds.map((kind) => {
  const needs = chamberNeeds(solutions.get(kind));
  const balance = timed(() => reached(() => engineCycle(needs).balance()));
  const reach = timed(() => reached(() => engineCycle(needs).reach()));
  return `| ${kind} | ${milliseconds(balance.least)} | ${milliseconds(balance.median)} | ${milliseconds(reach.least)} | ${milliseconds(reach.median)} |`;
});
const table = `Written by \`node bench/cycle/run.mjs\` on ${new Date().toISOString().slice(0, 10)}.

Machine: ${cpus()[0].model}, ${type()}, ${cpus().length} cores; Node ${process.versions.node}. One engine of oxygen and methane at 60 bar, turbine gas
included; other work may run beside, so the least times count. The solving of its chamber takes ${milliseconds(chamber.least)} at least and ${milliseconds(chamber.median)} in the middle.

| cycle | balance, least | balance, median | reach, least | reach, median |
| --- | --: | --: | --: | --: |
${rows.join('\n')}`;
console.log(table);
if (!options['no-write']) writeSection('Speed of the cycle', table);
