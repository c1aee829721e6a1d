/**
 * Times the step of a flow field on a graphics processor, in a Chromium of this machine, against what the device copies; writes
 * its section of bench/RESULTS.md. Where there is none, or only shaders run in software, it says that it was not run.
 *
 *   node bench/flow/gpu.mjs
 *
 * Options: --turns <n> (default 5), --steps <n> (default 100), --software (measure shaders in software, for a check of this
 * script), --no-write, --dist <folder of a build>.
 */
import { createServer } from 'node:http';
import { type } from 'node:os';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';
import { build } from 'vite';
import { writeSection } from '../results.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const { values: options } = parseArgs({
  options: {
    turns: { type: 'string', default: '5' },
    steps: { type: 'string', default: '100' },
    dist: { type: 'string', default: `${root}dist` },
    software: { type: 'boolean', default: false },
    'no-write': { type: 'boolean', default: false },
  },
});
const [turns, steps] = [Number(options.turns), Number(options.steps)];
const cells = 512 * 256;
/** Numbers that a step must move at least, of 4 bytes each: in both stages 9 values and 12 fluxes written and read, 8 of the mesh and 1 of time read, 9 kept. */
const moved = 4 * (2 * (2 * 9 + 2 * 12 + 9) + 2 * 9);
/** Sums may differ by this share: 32 bits round more. */
const agreement = 1e-4;

const { launchChromium } = await import(pathToFileURL(`${options.dist}/faces/film/chromium.js`).href);
const [{ output }] = await build({
  configFile: false,
  logLevel: 'error',
  build: {
    write: false,
    lib: { entry: `${root}bench/flow/gpuPage.ts`, formats: ['iife'], name: 'gpuPage' },
  },
});
const flags = ['--enable-unsafe-webgpu', '--ignore-gpu-blocklist', '--enable-features=Vulkan'];
const browser = await launchChromium(
  options.software ? ['--enable-unsafe-webgpu', '--use-webgpu-adapter=swiftshader'] : flags,
);
const server = createServer((_, answer) =>
  answer.setHeader('content-type', 'text/html').end('<!doctype html>'),
);
await new Promise((resolve) => server.listen(0, '127.0.0.1', resolve));
const page = await browser.newPage();
await page.goto(`http://127.0.0.1:${server.address().port}/`);
await page.addScriptTag({ content: output[0].code });
const ask = options.software
  ? `gpuPage.times(${turns}, ${steps})`
  : `gpuPage.hardwareTimes(${turns}, ${steps})`;
const told = await page.evaluate(ask);
const version = browser.version();
await browser.close();
server.close();
if (told !== null && !(Math.abs(told.sum / told.referenceSum - 1) < agreement))
  throw new Error(`the sum is ${told.sum}, that of the reference ${told.referenceSum}`);
const text = told === null ? notRun() : report(told);
console.log(text);
if (!options['no-write'] && !options.software)
  writeSection('Speed of a flow field on a graphics processor', text);

function notRun() {
  return `Tried by \`node bench/flow/gpu.mjs\` on ${new Date().toISOString().slice(0, 10)}, ${type()}, Chromium ${version}.

Not run: this machine has no graphics processor that a browser may compute on. What the shaders compute is checked in the tests, by
shaders run in software; how fast they are on a real one is not known.
`;
}

function report({ adapter, step, copied }) {
  const rate = cells / step;
  return `Written by \`node bench/flow/gpu.mjs\` on ${new Date().toISOString().slice(0, 10)}.

Device: ${adapter}; ${type()}, Chromium ${version}. One block of 512 × 256 cells between walls, one perfect gas, a blast; each cell by its own
steps, ${steps} steps between two looks, the look counted. The least of ${turns} turns; the sum of p ρ agrees with the reference.

| | |
| --- | --: |
| a step | ${(step * 1e3).toFixed(3)} ms |
| million cells a second | ${(rate / 1e6).toFixed(0)} |
| the device copies, read and written | ${(copied / 1e9).toFixed(0)} GB/s |
| what a step must move, ${moved} bytes a cell, of that | ${((100 * rate * moved) / copied).toFixed(0)} % |
`;
}
