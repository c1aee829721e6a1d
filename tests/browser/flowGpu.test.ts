import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterAll, afterEach, beforeAll, expect, type TestContext, test } from 'vitest';
import { flowKernel } from '../../src/physics/euler/index.ts';
import { agreesWith, BOUNDS } from '../physics/euler/kernel/kernelBounds.ts';
import { box, burst, differences, told } from '../physics/euler/kernel/kernelCases.ts';
import { launchChromium } from './chromium.ts';
import type * as gpuCases from './gpuCases.ts';
import { bell, leftBell, plug } from './gpuEngines.ts';
import { pageScript } from './pageScript.ts';

type Case = Awaited<ReturnType<typeof gpuCases.burst>>;

let browser: Awaited<ReturnType<typeof launchChromium>>;
let server: Server;
let page: Awaited<ReturnType<typeof browser.newPage>>;
let adapter: string | null;
let script: string;
beforeAll(async () => {
  browser = await launchChromium(['--enable-unsafe-webgpu', '--use-webgpu-adapter=swiftshader']);
  // Only a page with an origin of its own has a graphics processor.
  server = createServer((_, answer) => {
    answer.writeHead(200, { 'content-type': 'text/html' });
    answer.end('<!doctype html><title>a field by the graphics processor</title>');
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  script = await pageScript('./gpuCases.ts', 'gpuCases');
  await openPage();
}, 120_000);
afterEach(async ({ task }) => {
  // The processor of its page may be gone: a second try gets one of its own.
  if (task.result?.state !== 'fail') return;
  await page.close();
  await openPage();
});
afterAll(async () => {
  await browser?.close();
  server?.close();
});

async function openPage(): Promise<void> {
  page = await browser.newPage();
  await page.goto(`http://127.0.0.1:${(server.address() as AddressInfo).port}/`);
  await page.addScriptTag({ content: script });
  adapter = (await page.evaluate('gpuCases.adapterIs()')) as string | null;
}

const run = (call: string): Promise<Case> => page.evaluate(`gpuCases.${call}`) as Promise<Case>;

/** Without an adapter there is nothing to hold against anything. */
function needsAdapter({ skip }: TestContext): void {
  if (adapter === null) skip('this Chromium has no WebGPU adapter, not even one in software');
}

test('through time: two gases, one of a table, round crooked blocks, walls, a far side, shocks', async (context) => {
  needsAdapter(context);
  const reference = burst('reference', 60, false);
  const there = await run('burst(60, false)');
  expect([there.problem, there.steps]).toEqual([null, 60]);
  agreesWith(differences(there, reference), BOUNDS[32].time);
  expect(Math.abs(there.mass / reference.mass - 1)).toBeLessThan(BOUNDS[32].mass);
});

test('towards rest, each cell by its own steps', async (context) => {
  needsAdapter(context);
  const there = await run('burst(60, true)');
  expect([there.problem, there.steps]).toEqual([null, 60]);
  agreesWith(differences(there, burst('reference', 60, true)), BOUNDS[32].rest);
});

test('a blast, its strong shocks without the contact', async (context) => {
  needsAdapter(context);
  const reference = box('reference', 'blast', 0.5, 40);
  agreesWith(differences(await run("box('blast', 0.5, 40)"), reference), BOUNDS[32].time);
});

test('where a step breaks it is taken again without slopes, in the same cells', async (context) => {
  needsAdapter(context);
  const reference = box('reference', 'tossed', 0.6, 8);
  const there = await run("box('tossed', 0.6, 8)");
  expect(reference.rescued).toBeGreaterThan(0);
  expect(there.rescued).toBe(reference.rescued);
  agreesWith(differences(there, reference), BOUNDS[32].time);
});

test('where first order breaks too the place is told and the field stays as it was', async (context) => {
  needsAdapter(context);
  const reference = box('reference', 'blast', 2.5, 4);
  const there = await run("box('blast', 2.5, 4)");
  expect(there.problem).toContain('has no state any more at x');
  expect(there.problem).toBe(reference.problem);
  agreesWith(differences(there, reference), BOUNDS[32].time);
});

test('a processor that goes away is told', async (context) => {
  needsAdapter(context);
  expect(await page.evaluate('gpuCases.lost()')).toBe('flow-gpu-lost');
});

// Some 3e-8 in the mean: sums of 32 bits, as the kernel’s.
test.for([
  ['bell', bell],
  ['left bell', leftBell],
  ['plug', plug],
] as const)(
  'an engine (%s): chamber, far air, a side pressed on, joined blocks; own steps held together; a sharp corner',
  async ([name, make], context) => {
    needsAdapter(context);
    const { flow } = make(flowKernel(64));
    for (let n = 0; n < 60; n++) flow.relax(0.5);
    const there = await run(`engine('${name}', 60)`);
    expect([there.problem, there.steps]).toEqual([null, 60]);
    agreesWith(differences(there, told(flow)), 1e-6);
  },
);
