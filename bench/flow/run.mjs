/**
 * Times the flow kernels beside a plain C version of the same (characteristics.c, streamtubes.c), compiled in this run, in
 * turn on one core, on the same arrays; writes its section of bench/RESULTS.md.
 *
 *   node bench/flow/run.mjs
 *
 * Options: --seconds <n> a turn (default 1), --turns <n> (default 6), --no-write, --dist <folder of a build>.
 * Needs a C compiler called `cc`.
 */
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, tmpdir, type } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { writeSection } from '../results.mjs';
import { ambients, bellInput, loadKernels, packed, plugInput } from './inputs.mjs';
import { bellKernel, plugKernel } from './kernels.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const { values: options } = parseArgs({
  options: {
    seconds: { type: 'string', default: '1' },
    turns: { type: 'string', default: '6' },
    dist: { type: 'string', default: `${root}dist` },
    'no-write': { type: 'boolean', default: false },
  },
});
const seconds = Number(options.seconds);
const turns = Number(options.turns);
const warmUp = 0.2;
/** Sums of the two sides may differ by this share: they round sines, logarithms and their kin differently in the last place. */
const agreement = 1e-9;
const compilerFlags = ['-O3', '-std=c99'];

if (!existsSync(`${options.dist}/physics/index.js`)) {
  console.log('building first …');
  const { status } = spawnSync(process.execPath, [`${root}scripts/build.mjs`], { stdio: 'inherit' });
  if (status !== 0) throw new Error('the build failed; see above');
}
pinToOneCore(process.pid);
const kernels = await loadKernels(options.dist);
const bell = bellInput(kernels);
const plug = plugInput(kernels);
const compiler = version('cc');
const folder = mkdtempSync(join(tmpdir(), 'flow-kernels-'));
const theirs = startC();
const results = [
  await compare('bell', 'bell field', bellKernel(kernels, bell), 'nodes', 15e-3),
  await compare(
    'plug',
    `plug at ${ambients} ambient pressures`,
    plugKernel(kernels, plug),
    'steps of 32 tubes',
    0.4,
  ),
];
theirs.end();
rmSync(folder, { recursive: true });
const whole = [
  wholeOf('bell field as the program computes it, gas table included', bell.whole, 15e-3),
  wholeOf(
    `plug at ${ambients} ambient pressures as the program computes it, states along wall and boundary included`,
    () => plug.pressures.map((pressure) => kernels.plugFlowAt(plug.geometry, plug.tubeGas, pressure)),
    0.4,
  ),
];
if (!options['no-write']) {
  writeSection('Speed of the flow kernels', report());
  console.log('written to bench/RESULTS.md');
}

/** Turn and turn about, a few times. */
async function compare(kernel, name, ours, unit, target) {
  const first = ours(true);
  const samples = { ours: [], theirs: [] };
  let reference;
  for (let turn = 0; turn < turns; turn++) {
    samples.ours.push(...timed(() => ours(false)));
    reference = await theirs.ask(kernel);
    samples.theirs.push(...reference.seconds);
  }
  const difference = first.checksum / reference.checksum - 1;
  if (first.count !== reference.count)
    throw new Error(`${name}: ${first.count} ${unit}, the C version has ${reference.count}`);
  if (!(Math.abs(difference) < agreement)) throw new Error(`${name}: the sums differ by ${difference}`);
  const [us, them] = [summary(samples.ours), summary(samples.theirs)];
  const ratio = us.least / them.least;
  const result = { name, unit, target, us, them, ratio, difference, ...first };
  result.ratioOfMedians = us.median / them.median;
  console.log(
    `${name}, ${first.count} ${unit}: ${milli(us.least)} (median ${milli(us.median)}); ` +
      `C ${milli(them.least)} (median ${milli(them.median)}); ${ratio.toFixed(2)} times C; sums differ by ${difference.toExponential(1)}`,
  );
  return result;
}

function wholeOf(name, work, target) {
  const us = summary(timed(work));
  console.log(`${name}: ${milli(us.least)} (median ${milli(us.median)})`);
  return { name, us, target };
}

/** Processor time of the whole process, all its threads: other work on the machine does not count. */
function timed(work) {
  const samples = [];
  let end = performance.now() + warmUp * 1000;
  while (performance.now() < end) work();
  end = performance.now() + seconds * 1000;
  while (performance.now() < end || samples.length < 3) {
    const from = process.cpuUsage();
    work();
    const { user, system } = process.cpuUsage(from);
    samples.push((user + system) / 1e6);
  }
  return samples;
}

function summary(samples) {
  samples.sort((a, b) => a - b);
  return { least: samples[0], median: samples[Math.floor(samples.length / 2)] };
}

function startC() {
  const program = join(folder, 'flow');
  const sources = ['characteristics.c', 'streamtubes.c', 'worker.c'].map(
    (name) => `${root}bench/flow/${name}`,
  );
  const { status } = spawnSync('cc', [...compilerFlags, '-o', program, ...sources, '-lm'], {
    stdio: 'inherit',
  });
  if (status !== 0) throw new Error('the C version could not be compiled; see above');
  const input = join(folder, 'input');
  writeFileSync(input, packed(bell, plug));
  const child = spawn(program, [input], { stdio: ['pipe', 'pipe', 'inherit'] });
  pinToOneCore(child.pid);
  const lines = createInterface({ input: child.stdout })[Symbol.asyncIterator]();
  return {
    async ask(kernel) {
      child.stdin.write(`${kernel} ${warmUp} ${seconds}\n`);
      const { value, done } = await lines.next();
      if (done) throw new Error('the C version stopped; see its message above');
      return JSON.parse(value);
    },
    end: () => child.stdin.end(),
  };
}

function version(program) {
  const { stdout, error } = spawnSync(program, ['--version'], { encoding: 'utf8' });
  if (error) throw new Error(`no C compiler called ${program}`);
  return stdout.split('\n')[0];
}

/** Both sides on the same core where the system lets us say so (Linux). */
function pinToOneCore(pid) {
  spawnSync('taskset', ['-a', '-c', '-p', '0', String(pid)], { stdio: 'ignore' });
}

function milli(time) {
  return `${(time * 1e3).toPrecision(3)} ms`;
}

function report() {
  const rows = results.map(
    ({ name, count, unit, us, them, ratio, ratioOfMedians, target, checksum, difference }) =>
      `| ${name} | ${count} ${unit} | ${milli(us.least)} | ${milli(us.median)} | ${milli(them.least)} | ${milli(them.median)} | ${ratio.toFixed(2)} | ${ratioOfMedians.toFixed(2)} | ${milli(target)} | ${checksum.toPrecision(10)} | ${difference.toExponential(1)} |`,
  );
  const wholes = whole.map(
    ({ name, us, target }) => `| ${name} | ${milli(us.least)} | ${milli(us.median)} | ${milli(target)} |`,
  );
  return `Written by \`node bench/flow/run.mjs\` on ${new Date().toISOString().slice(0, 10)}.

Machine: ${cpus()[0].model.trim()}, ${type()}; both sides in turn on one core. Node ${process.versions.node};
${compiler}, \`cc ${compilerFlags.join(' ')}\`. ${turns} turns of ${seconds} s a side, each after ${warmUp} s of warm-up.

Both sides get the same arrays (gas table, start line or fronts, wall) and take the same steps: node and step counts must be
equal, sums equal to ${agreement} of their size; what is left is the rounding of sines, logarithms and their kin, which the two run-time
libraries round differently in the last place. Memory for the answer is part of the time on both sides. Times are
processor time of the whole process, all its threads (collection of garbage included), so that other work on the machine counts
little; the least times are the steadier ones. Gas: perfect, γ 1.2, 100 bar. Bell: area ratio 40, 80 %
long, by characteristics from the throat. Plug: area ratio 60, whole, pressure ratios from 20 to twice the design's; above the
design's nothing is marched, so ${plug.marches.length} of the ${ambients} are.

| kernel | size | least | median | C least | C median | times C, least | times C, median | target | sum | differs by |
| --- | --: | --: | --: | --: | --: | --: | --: | --: | --: | --: |
${rows.join('\n')}

Sums: of all numbers of all nodes; of the forces on wall and boundary and the momentum of the last fronts. Target for the
ratio: at most 1.5.

| this program alone | least | median | target |
| --- | --: | --: | --: |
${wholes.join('\n')}
`;
}
