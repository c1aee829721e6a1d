/**
 * Times heat and cooling on one thread: gas side of a bell, one march of the coolant, channels sized and marched; writes its section of
 * bench/RESULTS.md. The limit of one march is 20 ms.
 *
 *   node bench/heat/run.mjs [--no-write]
 */
import { cpus, type } from 'node:os';
import { fileURLToPath } from 'node:url';
import { writeSection } from '../results.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const load = (path) => import(`${root}dist/${path}`);
const { solveStudyLive } = await load('answer/solve.js');
const { openDataShelf } = await load('faces/disk/data.js');
const { knownNames } = await load('study/names.js');
const { readStudy } = await load('study/index.js');
const { coolantMarch, heatOf } = await load('physics/heat/index.js');
const { engineCooling } = await load('answer/heat/engineCooling.js');

const shelf = openDataShelf();
const text = `plumeline: 1
question: How fast?
engines:
  bell:
    propellants: { oxidiser: oxygen, fuel: methane, ratio: 3.5 }
    chamber: { pressure: 100 bar, efficiency: 97.5 % }
    size: { throat: 234 mm }
    nozzle: { kind: bell, areaRatio: 25, length: 80 % }
    cooling: { coolant: fuel }
`;
const read = readStudy(text, { file: 'study.yaml', ...knownNames(await shelf.propellants()) });
const { solutions } = await solveStudyLive(read.study, shelf);
const { cooling } = solutions.get('bell').cooling();
const { setup } = cooling;
const [side] = cooling.sides;
const jacket = {
  metal: { material: setup.material, thickness: setup.thickness },
  channels: { width: setup.width, land: setup.land, depth: side.depth },
  throatGirth: setup.sides[0].points[setup.sides[0].throat].girth,
  correlation: setup.correlation,
  limits: setup.supply.row,
  roughness: 5e-6,
};
const flow = {
  fluid: setup.supply.fluid,
  massFlow: setup.supply.massFlow,
  pressure: setup.inletPressure,
  temperature: setup.supply.temperature,
};

function median(work, turns = 25) {
  for (let i = 0; i < 5; i++) work();
  const times = Array.from({ length: turns }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  }).sort((a, b) => a - b);
  return times[(turns - 1) / 2];
}

const rows = [
  ['heat of a wall at one temperature, radiation included', median(() => heatOf(setup.sides[0], 800))],
  [`one march, ${side.points.length} places`, median(() => coolantMarch(side.points, jacket, flow))],
  ['channels sized for their pressure drop, and marched', median(() => engineCooling(setup))],
];
const table = `Median of 25 on one thread of ${cpus()[0].model.trim()}, ${type()}, Node ${process.versions.node}.

| work | ms |
| --- | --- |
${rows.map(([work, ms]) => `| ${work} | ${ms.toFixed(2)} |`).join('\n')}

One march may take 20 ms.`;
console.log(table);
if (!process.argv.includes('--no-write')) writeSection('Heat and cooling', table);
