/**
 * Times the step of a flow field: the TypeScript reference, the WebAssembly kernel on 64 and 32 bits, and the same scheme in
 * plain C (field.c), in turn on one core, on the same block of 512 × 256 cells; the kernel by one thread and by two; then an
 * engine from nothing to a field at rest. Writes its section of bench/RESULTS.md.
 *
 *   node bench/flow/field.mjs
 *
 * Options: --turns <n> (default 5), --no-write, --no-engine, --dist <folder of a build>. Needs a C compiler called `cc`.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, tmpdir, type } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';
import { writeSection } from '../results.mjs';
import { preparedEngine, throatRadius } from './fieldEngine.mjs';
import { neighbourTimes } from './fieldNeighbour.mjs';
import { teamTimes } from './fieldTeam.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const { values: options } = parseArgs({
  options: {
    turns: { type: 'string', default: '5' },
    dist: { type: 'string', default: `${root}dist` },
    'no-write': { type: 'boolean', default: false },
    'no-engine': { type: 'boolean', default: false },
  },
});
const turns = Number(options.turns);
const [ni, nj, steps] = [512, 256, 40];
const compilerFlags = ['-O3', '-march=native', '-ffast-math', '-std=gnu99'];
/** Sums may differ by this share: C may reorder its own, and 32 bits round more. */
const agreement = { 64: 1e-9, 32: 1e-4 };

if (!existsSync(`${options.dist}/physics/euler/index.js`)) {
  const { status } = spawnSync(process.execPath, [`${root}scripts/build.mjs`], { stdio: 'inherit' });
  if (status !== 0) throw new Error('the build failed; see above');
}
const load = (path) => import(pathToFileURL(`${options.dist}/physics/${path}.js`).href);
const { cellAt, flowKernel, meshBlock, newFlow, perfectFieldGas } = await load('euler/index');
spawnSync('taskset', ['-a', '-c', '-p', '0', String(process.pid)], { stdio: 'ignore' });
const folder = mkdtempSync(join(tmpdir(), 'flow-field-'));

const air = perfectFieldGas(1.4);
const mesh = meshBlock('flat', ni, nj, (i, j) => [
  i / 256 + 0.001 * Math.sin(0.1 * j),
  j / 256 + 0.001 * Math.sin(0.1 * i),
]);
const start = (x, y) => ({
  density: 1 + 0.3 * Math.sin(3 * x),
  u: Math.cos(2 * y),
  v: 0.5,
  pressure: (x - 1) ** 2 + (y - 0.5) ** 2 < 0.04 ? 10 : 1,
  share: 0,
});
const sides = ['iLow', 'iHigh', 'jLow', 'jHigh'].map((side) => ({
  side,
  from: 0,
  to: side.startsWith('i') ? nj : ni,
  kind: { is: 'wall' },
}));
const flowBy = (kernel) =>
  newFlow({ blocks: [{ mesh, sides }], gases: { inner: air, outer: air }, start, kernel });
const seconds = flowBy(null).stableStep(0.3);

/** Least processor time of a step, and a sum over the field. */
function ours(kernel) {
  const flow = flowBy(kernel);
  let least = Number.POSITIVE_INFINITY;
  for (let n = 0; n < steps; n++) {
    const from = process.cpuUsage();
    flow.step(seconds);
    const { user, system } = process.cpuUsage(from);
    least = Math.min(least, (user + system) / 1e6);
  }
  return { least, sum: sumOf(flow) };
}

function sumOf(flow) {
  let sum = 0;
  for (const { mesh: of, pressure, density } of flow.fields)
    for (let j = 0; j < of.nj; j++)
      for (let i = 0; i < of.ni; i++) sum += pressure[cellAt(of, i, j)] * density[cellAt(of, i, j)];
  return sum;
}

const input = join(folder, 'input');
function writeInput() {
  const cells = [[], [], [], []];
  for (let j = 0; j < nj; j++)
    for (let i = 0; i < ni; i++) {
      const a = j * (ni + 1) + i;
      const d = a + ni + 1;
      const middle = (of) => (of[a] + of[a + 1] + of[d] + of[d + 1]) / 4;
      const { density, u, v, pressure } = start(middle(mesh.x), middle(mesh.y));
      for (const [k, value] of [density, u, v, pressure].entries()) cells[k].push(value);
    }
  writeFileSync(input, Buffer.from(Float64Array.from([...mesh.x, ...mesh.y, ...cells.flat()]).buffer));
}

function compiled(bits) {
  const program = join(folder, `field-${bits}`);
  const flags = [...compilerFlags, ...(bits === 32 ? ['-DSINGLE'] : [])];
  const { status } = spawnSync('cc', [...flags, '-o', program, `${root}bench/flow/field.c`, '-lm'], {
    stdio: 'inherit',
  });
  if (status !== 0) throw new Error('the C version could not be compiled; see above');
  return () => {
    const { stdout } = spawnSync(program, [ni, nj, seconds, steps, input].map(String), { encoding: 'utf8' });
    return JSON.parse(stdout);
  };
}

writeInput();
const runs = [
  { name: 'TypeScript reference, 64 bits', bits: 64, run: () => ours(null) },
  { name: 'WebAssembly, 64 bits', bits: 64, run: () => ours(flowKernel(64)) },
  { name: 'WebAssembly, 32 bits', bits: 32, run: () => ours(flowKernel(32)) },
  { name: 'C, 64 bits', bits: 64, run: compiled(64) },
  { name: 'C, 32 bits', bits: 32, run: compiled(32) },
].map((each) => ({ ...each, least: Number.POSITIVE_INFINITY, sum: 0 }));
for (let turn = 0; turn < turns; turn++)
  for (const each of runs) {
    const { least, sum } = each.run();
    each.least = Math.min(each.least, least);
    each.sum = sum;
  }
const [reference] = runs;
for (const { name, bits, sum } of runs)
  if (!(Math.abs(sum / reference.sum - 1) < agreement[bits]))
    throw new Error(`${name}: the sum is ${sum}, that of the reference ${reference.sum}`);
const c = { 64: runs[3].least, 32: runs[4].least };
const rate = (least) => (ni * nj) / least / 1e6;
const rows = runs.map(
  ({ name, bits, least, sum }) =>
    `| ${name} | ${(least * 1e3).toFixed(1)} ms | ${rate(least).toFixed(1)} | ${(reference.least / least).toFixed(1)} | ${((100 * c[bits]) / least).toFixed(0)} % | ${sum.toPrecision(9)} |`,
);
console.log(rows.join('\n'));
const engineOf = await preparedEngine(load);
const finest = 64;
const pairs = (
  await teamTimes(
    [
      ...[64, 32].map((bits) => ({
        name: `the block, ${bits} bits`,
        bits,
        newFlow: flowBy,
        step: (flow) => flow.step(seconds),
        sumOf,
      })),
      {
        name: `an engine as below, ${finest} cells across, each cell by its own steps, 32 bits`,
        bits: 32,
        newFlow: (kernel) => engineOf(kernel)(finest, null).flow,
        step: (flow) => flow.relax(0.5),
        sumOf,
      },
    ],
    // Two cores must be free at once, which takes more luck than one.
    { dist: options.dist, turns: 4 * turns, steps },
  )
).map(
  ({ name, least: [one, two] }) =>
    `| ${name} | ${(one * 1e3).toFixed(1)} ms | ${(two * 1e3).toFixed(1)} ms | ${(one / two).toFixed(2)} |`,
);
console.log(pairs.join('\n'));
const engine = options['no-engine'] ? '' : await engineTimes();
const neighbour = options['no-engine'] ? [] : await neighbourTimes(engineOf, { dist: options.dist });
console.log(neighbour.join('\n'));
rmSync(folder, { recursive: true });
if (!options['no-write']) writeSection('Speed of a flow field', report(engine));

/** From nothing, each mesh from the one before: processor time to rest, or to the last step. */
async function engineTimes() {
  const { settle, thrustOf, axisPressure } = await load('wholeFlow/index');
  const roundAt = engineOf(flowKernel(32));
  let from = null;
  const lines = [];
  let whole = 0;
  for (const across of [8, 16, 32, 64]) {
    const began = process.cpuUsage();
    const round = roundAt(across, from);
    const settled = settle(round.flow, {
      least: from === null ? 600 : 300,
      most: from === null ? 1600 : 1000,
      watch: () => [thrustOf(round), axisPressure(round)],
      still: [1e-3, 2e-2],
    });
    from = settled.averages.blocks();
    const { user, system } = process.cpuUsage(began);
    const took = (user + system) / 1e6;
    whole += took;
    const cells = round.flow.fields.reduce((sum, { mesh: m }) => sum + m.ni * m.nj, 0);
    const [thrust] = settled.watched;
    const coefficient = thrust.mean / (100e5 * Math.PI * throatRadius ** 2);
    lines.push(
      `| ${across} | ${cells} | ${settled.steps} | ${took.toFixed(1)} s | ${whole.toFixed(1)} s | ${coefficient.toFixed(4)} ± ${(100 * thrust.swing).toFixed(2)} % |`,
    );
    console.log(lines.at(-1));
  }
  return lines.join('\n');
}

function report(engine) {
  const { stdout } = spawnSync('cc', ['--version'], { encoding: 'utf8' });
  return `Written by \`node bench/flow/field.mjs\` on ${new Date().toISOString().slice(0, 10)}.

Machine: ${cpus()[0].model.trim()}, ${type()}; all in turn on one core. Node ${process.versions.node}; ${stdout.split('\n')[0]},
\`cc ${compilerFlags.join(' ')}\`. Processor time, the least of ${turns} turns of ${steps} steps each.

One block of ${ni} × ${nj} cells between walls, one perfect gas, a blast; a step is two stages with all that belongs to it: what lies beyond
the sides, marks of shocks, slopes, fluxes with shares of two gases, new state. The C version does the same sums (field.c), the gas
table left out. Million cells a second, a whole step each:

| | a step | million cells / s | times the reference | of C on as many bits | sum of p ρ |
| --- | --: | --: | --: | --: | --: |
${rows.join('\n')}

Goal for 32 bits: at least 40 % of C.

A step by one thread and by two that share its memory, each on a core of its own: least time on the clock, the same sums to the last bit. Goal
for the second thread: 1.6.

| | one thread | two threads | times as fast |
| --- | --: | --: | --: |
${pairs.join('\n')}

An engine as \`plumeline flow\` computes it, on 32 bits and one core: a bell of area ratio 15 in air
of 0.6 bar, from nothing, each mesh from the one before; the thrust is a mean over the last looks, with how far it swings in them.

| cells across | cells | steps | processor time | all so far | C_F |
| --: | --: | --: | --: | --: | --- |
${engine}

A field of at least 512 × 256 cells from its neighbour, in a quarter less air: from the neighbour's coarse field by four meshes. The
thrust as above. Goal: 20 s on two cores.

| threads | cells | steps of the finest | on the clock | processor time | C_F |
| --: | --: | --: | --: | --: | --- |
${neighbour.join('\n')}
`;
}
