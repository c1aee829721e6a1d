/**
 * Times chemical equilibrium and expansion beside the reference library Cantera, in turn on one core, on the same
 * species and conditions; writes its section of bench/RESULTS.md.
 *
 *   PLUMELINE_PYTHON=<python with scripts/reference/requirements.txt installed> node bench/run.mjs
 *
 * Options: --seconds <n> a measurement (default 2), --no-write. Without Python only this program is timed and
 * nothing is written.
 */
import { spawn, spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { cpus, type } from 'node:os';
import { createInterface } from 'node:readline';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';
import { burnCases, expansionCases, lastPressureShare, stationCount } from './cases.mjs';
import { writeSection } from './results.mjs';
import { measure } from './timing.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));
const { values: options } = parseArgs({
  options: {
    seconds: { type: 'string', default: '2' },
    dist: { type: 'string', default: `${root}dist` },
    'no-write': { type: 'boolean', default: false },
  },
});
const seconds = Number(options.seconds);
const warmUp = Math.min(0.5, seconds / 2);

if (!existsSync(`${options.dist}/physics/index.js`)) {
  console.log('building first …');
  const { status } = spawnSync(process.execPath, [`${root}scripts/build.mjs`], { stdio: 'inherit' });
  if (status !== 0) throw new Error('the build failed; see above');
}
pinToOneCore(process.pid);
const physics = await import(pathToFileURL(`${options.dist}/physics/index.js`).href);
const { openDataShelf } = await import(pathToFileURL(`${options.dist}/faces/disk/data.js`).href);
const shelf = openDataShelf();
const propellants = new Map((await shelf.propellants()).map((row) => [row.id, row]));

const reference = await startReference();
const results = [];
for (const [kind, cases] of [
  ['burn', burnCases],
  ['expand', expansionCases],
]) {
  for (const item of cases) {
    const setup = await prepare(item);
    const ours = kind === 'burn' ? timeBurning(setup) : timeExpansion(setup);
    const theirs = reference && (await reference.ask(question(kind, setup)));
    const result = { kind, item, ours, theirs };
    if (theirs) {
      result.ratio = theirs.least / ours.least;
      result.ratioOfMedians = theirs.median / ours.median;
      result.difference = ours.checksum / theirs.checksum - 1;
      if (!(Math.abs(result.difference) < 1e-6))
        throw new Error(`${item.name}: the answers differ by ${result.difference}`);
    }
    results.push(result);
    console.log(line(result));
  }
}
reference?.end();
if (!reference) {
  console.log(
    'Only this program was timed. For the comparison make a virtual environment, install scripts/reference/requirements.txt\n' +
      'with its pip, and name its Python in the environment variable PLUMELINE_PYTHON.',
  );
} else if (!options['no-write']) {
  writeSection('Speed of the gas model', report());
  console.log('written to bench/RESULTS.md');
}

async function prepare(item) {
  const oxidiser = propellants.get(item.oxidiser);
  const fuel = propellants.get(item.fuel);
  const elements = [...new Set([...Object.keys(oxidiser.elements), ...Object.keys(fuel.elements)])];
  const records = (await shelf.species(elements)).filter(
    (row) => row.phase === 'gas' && (item.list === 'all' || row.core),
  );
  if (records.length !== item.species)
    throw new Error(`${item.name}: ${records.length} species, not ${item.species}`);
  const pure = (row) => physics.blendReactants([{ ...row, share: 1 }]);
  const states = item.ratios.flatMap((ratio) => {
    const reactants = physics.burntReactants(pure(oxidiser), pure(fuel), ratio);
    return item.pressures.map((pressure) => ({
      reactants,
      pressure,
      stations: Array.from(
        { length: stationCount },
        (_, k) => pressure * lastPressureShare ** ((k + 1) / stationCount),
      ),
    }));
  });
  return { records, elements, states };
}

/** Enthalpy and pressure held, from the cold start each time. */
function timeBurning({ records, states }) {
  const jobs = states.map(({ reactants, pressure }) => ({
    work: physics.workFor(reactants, records),
    pressure,
    held: { kind: 'enthalpy', enthalpy: reactants.enthalpy },
  }));
  const round = () => {
    let sum = 0;
    for (const { work, pressure, held } of jobs) {
      physics.startCold(work);
      physics.equilibrate(work, pressure, held);
      sum += work.temperature;
    }
    return sum;
  };
  const checksum = round();
  return { ...measure(round, jobs.length, warmUp, seconds), checksum };
}

/** Chamber, throat and the stations through the public functions. */
function timeExpansion({ records, states }) {
  const round = () => {
    let sum = 0;
    for (const { reactants, pressure, stations } of states) {
      const expansion = physics.expandBurnt(reactants, records, {
        pressure,
        chemistry: { kind: 'shifting' },
      });
      for (const station of stations) sum += expansion.atPressure(station).velocity;
    }
    return sum;
  };
  const checksum = round();
  return { ...measure(round, states.length, warmUp, seconds), checksum };
}

function question(kind, { records, elements, states }) {
  return {
    kind,
    elements,
    species: records.map((row) => row.name),
    states: states.map(({ reactants, pressure, stations }) => ({
      elements: reactants.elements,
      enthalpy: reactants.enthalpy,
      pressure,
      stations,
    })),
    warmUp,
    seconds,
  };
}

async function startReference() {
  const python = process.env.PLUMELINE_PYTHON;
  if (!python) return null;
  const child = spawn(python, [`${root}bench/cantera_worker.py`], {
    stdio: ['pipe', 'pipe', 'inherit'],
    env: { ...process.env, OPENBLAS_NUM_THREADS: '1', OMP_NUM_THREADS: '1' },
  });
  pinToOneCore(child.pid);
  const lines = createInterface({ input: child.stdout })[Symbol.asyncIterator]();
  const next = async () => {
    const { value, done } = await lines.next();
    if (done) throw new Error('the reference library stopped; see its message above');
    return JSON.parse(value);
  };
  return {
    versions: await next(),
    ask(asked) {
      child.stdin.write(`${JSON.stringify(asked)}\n`);
      return next();
    },
    end: () => child.stdin.end(),
  };
}

/** Both sides on the same core where the system lets us say so (Linux). */
function pinToOneCore(pid) {
  spawnSync('taskset', ['-a', '-c', '-p', '0', String(pid)], { stdio: 'ignore' });
}

function micro(time) {
  return time < 1e-3 ? `${(time * 1e6).toFixed(1)} µs` : `${(time * 1e3).toFixed(2)} ms`;
}

function line({ kind, item, ours, theirs, ratio }) {
  const what = kind === 'burn' ? 'enthalpy and pressure held' : `chamber and ${stationCount} stations`;
  const us = `${micro(ours.least)} (median ${micro(ours.median)})`;
  if (!theirs) return `${item.name}, ${item.species} species, ${what}: ${us}`;
  return `${item.name}, ${item.species} species, ${what}: ${us}; Cantera ${micro(theirs.least)} (median ${micro(theirs.median)}); ${ratio.toFixed(1)} times`;
}

function report() {
  const { versions } = reference;
  const table = (kind) =>
    results
      .filter((result) => result.kind === kind)
      .map(
        ({ item, ours, theirs, ratio, ratioOfMedians, difference }) =>
          `| ${item.name} | ${item.species} | ${micro(ours.least)} | ${micro(ours.median)} | ${micro(theirs.least)} | ${micro(theirs.median)} | ${ratio.toFixed(1)} | ${ratioOfMedians.toFixed(1)} | ${ours.checksum.toPrecision(10)} | ${difference.toExponential(1)} |`,
      )
      .join('\n');
  const head =
    '| elements | species | least | median | Cantera least | Cantera median | ratio of least | ratio of medians | checksum | differs from Cantera by |\n| --- | --: | --: | --: | --: | --: | --: | --: | --: | --: |';
  return `Written by \`PLUMELINE_PYTHON=<python> node bench/run.mjs\` on ${new Date().toISOString().slice(0, 10)}.

Machine: ${cpus()[0].model.trim()}, ${type()}; both sides in turn on one core. Node ${process.versions.node},
Cantera ${versions.cantera} on Python ${versions.python}. ${seconds} s a measurement after ${warmUp} s of warm-up.

Same species, coefficients, propellants and conditions on both sides, gases only. Cantera solves by its element-potential
method with its default relative tolerance ${versions.tolerance}, from whichever of two starts is quicker (the elements' molecules
brought to the enthalpy sought, or an equilibrium at 3000 K). This program iterates until the square of a step, which is
what Newton leaves undone, is below 1e-18 of the gas. Setting the start state is part of the time on both sides; the Python
call around Cantera (a few microseconds each) is part of its time. Other work on the machine disturbs the medians; the least
times are the steadier ones.

## One state at given enthalpy and pressure, from a cold start

Time per state, over 4 mixture ratios by 4 pressures; checksum: sum of the 16 temperatures [K].

${head}
${table('burn')}

## A chamber and ${stationCount} stations of its shifting expansion

Time of the whole; stations from the chamber pressure down to a thousandth of it, each starting from the one before.
This program also finds the throat and the derivatives at every station. Checksum: sum of the velocities [m/s].

${head}
${table('expand')}
`;
}
