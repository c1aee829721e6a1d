/**
 * Times the step of a flow field on a graphics processor (WebGPU) beside the WebAssembly kernel on one core, on blocks of several
 * sizes, and the processor's own copying of memory; writes its section of bench/RESULTS.md.
 *
 *   node bench/flow/gpu.mjs --webgpu <folder of the npm package webgpu>
 *
 * Node brings no WebGPU: the package (0.6.2 was used) is put in a folder of its own, for this measurement alone. Where there is no
 * graphics processor, or only shaders run in software, it says so and measures nothing.
 * Options: --turns <n> (default 5), --software (measure shaders run in software too), --no-write, --dist <folder of a build>.
 */
import { existsSync } from 'node:fs';
import { cpus, type } from 'node:os';
import { join, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';
import { writeSection } from '../results.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const { values: options } = parseArgs({
  options: {
    turns: { type: 'string', default: '5' },
    webgpu: { type: 'string' },
    dist: { type: 'string', default: `${root}dist` },
    software: { type: 'boolean', default: false },
    'no-write': { type: 'boolean', default: false },
  },
});
const turns = Number(options.turns);
const sizes = [
  [512, 256],
  [1024, 512],
  [1792, 896],
];
/** Steps that are timed in one, without reading the field. */
const STEPS = 200;
/** Steps after which the sums are compared: later a shock may stand elsewhere by a share of a cell. */
const COMPARED = 40;
const AGREEMENT = 1e-4;
/** Bytes copied at a time. */
const COPIED = 2 ** 28;
const COPIES = 40;
/** Bytes of a cell that a step moves at least: in both stages 9 values and 12 fluxes written and read, 8 of the mesh and 1 of time read; 9 kept. */
const MOVED = 4 * (2 * (2 * 9 + 2 * 12 + 9) + 2 * 9);

/** Held: all that it gave ends with it. */
let gpu = null;
const { cellAt, flowKernel, gpuFlow, meshBlock, newFlow, perfectFieldGas } = await import(
  pathToFileURL(join(options.dist, 'physics/euler/index.js')).href
);
const adapter = await adapterFound();
if (adapter === null) {
  console.log('Not run: there is no graphics processor here, or no WebGPU (see --webgpu).');
  process.exit(0);
}
const device = await adapter.requestDevice({
  requiredLimits: {
    maxBufferSize: adapter.limits.maxBufferSize,
    maxStorageBufferBindingSize: adapter.limits.maxStorageBufferBindingSize,
  },
});

async function adapterFound() {
  if (options.webgpu === undefined) return null;
  const file = join(resolve(options.webgpu), 'index.js');
  if (!existsSync(file)) throw new Error(`there is no ${file}: give the folder of the package`);
  const { create, globals } = await import(pathToFileURL(file).href);
  Object.assign(globalThis, globals);
  gpu = create([]);
  const found = await gpu.requestAdapter({ powerPreference: 'high-performance' });
  if (found === null || options.software) return found;
  return /swiftshader|llvmpipe|software/i.test(`${found.info.architecture} ${found.info.description}`)
    ? null
    : found;
}

const air = perfectFieldGas(1.4);
const start = (x, y) => ({
  density: 1 + 0.3 * Math.sin(3 * x),
  u: Math.cos(2 * y),
  v: 0.5,
  pressure: (x - 1) ** 2 + (y - 0.5) ** 2 < 0.04 ? 10 : 1,
  share: 0,
});

function flowOf(ni, nj) {
  const mesh = meshBlock('flat', ni, nj, (i, j) => [
    (2 * i) / ni + 0.001 * Math.sin((51.2 * j) / ni),
    (2 * j) / ni + 0.001 * Math.sin((51.2 * i) / ni),
  ]);
  const sides = ['iLow', 'iHigh', 'jLow', 'jHigh'].map((side) => ({
    side,
    from: 0,
    to: side.startsWith('i') ? nj : ni,
    kind: { is: 'wall' },
  }));
  const gases = { inner: air, outer: air };
  return newFlow({ blocks: [{ mesh, sides }], gases, start, kernel: flowKernel(32) });
}

function sumOf({ fields: [{ mesh, pressure, density }] }) {
  let sum = 0;
  for (let j = 0; j < mesh.nj; j++)
    for (let i = 0; i < mesh.ni; i++) {
      const at = cellAt(mesh, i, j);
      sum += pressure[at] * density[at];
    }
  return sum;
}

const least = (times) => Math.min(...times);
const clock = async (work) => {
  const from = performance.now();
  await work();
  return (performance.now() - from) / 1e3;
};

/** Bytes read and written a second. */
async function copyRate() {
  // COPY_SRC | COPY_DST
  const [from, to] = [0, 1].map(() => device.createBuffer({ size: COPIED, usage: 0x4 | 0x8 }));
  const copies = () => {
    const encoder = device.createCommandEncoder();
    for (let n = 0; n < COPIES; n++) encoder.copyBufferToBuffer(from, 0, to, 0, COPIED);
    device.queue.submit([encoder.finish()]);
    return device.queue.onSubmittedWorkDone();
  };
  await copies();
  const times = [];
  for (let turn = 0; turn < turns; turn++) times.push(await clock(copies));
  from.destroy();
  to.destroy();
  return (2 * COPIED * COPIES) / least(times);
}

async function timesOf([ni, nj]) {
  const byKernel = flowOf(ni, nj);
  const onGpu = flowOf(ni, nj);
  const shaders = await gpuFlow(device, onGpu);
  const kernelTimes = [];
  for (let n = 0; n < COMPARED; n++) kernelTimes.push(await clock(() => byKernel.relax(0.5)));
  await shaders.relax(0.5, COMPARED);
  const sums = [byKernel, onGpu].map(sumOf);
  const apart = Math.abs(sums[1] / sums[0] - 1);
  if (!(apart < AGREEMENT)) throw new Error(`${ni} × ${nj}: the sums are ${sums.join(' and ')}`);
  // What reading the field and the calls cost is left over by the difference of many steps and few.
  const [few, many] = [[], []];
  for (let turn = 0; turn < turns; turn++) {
    few.push(await clock(() => shaders.relax(0.5, STEPS / 4)));
    many.push(await clock(() => shaders.relax(0.5, STEPS + STEPS / 4)));
  }
  shaders.destroy();
  return { ni, nj, apart, step: (least(many) - least(few)) / STEPS, kernel: least(kernelTimes) };
}

const copied = await copyRate();
const rows = [];
for (const size of sizes) {
  const { ni, nj, apart, step, kernel } = await timesOf(size);
  const rate = (ni * nj) / step;
  rows.push(
    `| ${ni} × ${nj} | ${(1e3 * kernel).toFixed(1)} ms | ${(1e3 * step).toPrecision(3)} ms | ${(rate / 1e6).toFixed(0)} | ${(kernel / step).toFixed(0)} | ${((100 * rate * MOVED) / copied).toPrecision(2)} % | ${apart.toExponential(0)} |`,
  );
  console.log(rows.at(-1));
}
const { info } = adapter;
const section = `Written by \`node bench/flow/gpu.mjs --webgpu <package>\` on ${new Date().toISOString().slice(0, 10)}.

Graphics processor: ${[info.vendor, info.architecture, info.device, info.description].filter((word) => word !== '').join(', ')}. Beside it one core of ${cpus()[0].model.trim()}, ${type()}; Node ${process.versions.node},
npm package webgpu (Dawn). The block between walls of the section above, each cell taking its own step; least times of ${turns} turns of ${STEPS} steps on the
graphics processor, reading the field left out, and of ${COMPARED} steps by WebAssembly on 32 bits, one thread. Sums of p ρ agree after
${COMPARED} steps as told. Copying: ${(copied / 1e9).toFixed(0)} GB/s, read and written bytes together, in pieces of ${COPIED / 2 ** 20} MiB. Last but one column: what a step moves at the least, ${MOVED} bytes a cell, against what could be copied in its time. It can be
more than all: passes find much in the processor’s cache, and the driver’s copy need not be the quickest.

| cells | WebAssembly, a step | WebGPU, a step | million cells / s | times as fast | of copying | sums differ by |
| --: | --: | --: | --: | --: | --: | --: |
${rows.join('\n')}
`;
console.log(section);
if (!options['no-write']) writeSection('Speed of a flow field on a graphics processor', section);
process.exit(0);
