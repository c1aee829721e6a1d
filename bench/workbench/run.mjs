/**
 * Times the workbench in headless Chromium with software painting, on a copy of the example: from a key on the altitude scale
 * and from an input of an engine to the painted frame, from an edit to its full answer, tasks that hold the page's thread, and the first load;
 * beside them the same step of an empty page, which no page undercuts. Writes its section of bench/RESULTS.md.
 *
 *   node bench/workbench/run.mjs          after a build
 */
import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { cpus, loadavg, tmpdir, type } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { chromium } from 'playwright-core';
import { serveStudy } from '../../dist/faces/server/serveStudy.js';
import { findOrInstallBrowser } from '../../scripts/browser.mjs';
import { writeSection } from '../results.mjs';
import { traced, tracedSteps } from './processorTime.mjs';

const root = fileURLToPath(new URL('../../', import.meta.url));
const shelf = mkdtempSync(join(tmpdir(), 'plumeline-bench-'));
const folder = join(shelf, 'alder-booster');
cpSync(join(root, 'examples', 'alder-booster'), folder, { recursive: true });
const browser = await chromium.launch({
  executablePath: findOrInstallBrowser(),
  args: ['--headless', '--no-sandbox', '--disable-gpu'],
});

/** From the address to a page that can be used, the server just started; and when what stood there [ms]. */
async function firstLoadOf() {
  const server = await serveStudy({ folder, port: 0 });
  const page = await (await browser.newContext({ viewport: { width: 1440, height: 900 } })).newPage();
  await page.addInitScript(() => {
    const there = {
      question: () => ![undefined, 'Plumeline'].includes(document.querySelector('h1')?.textContent),
      first: () => document.querySelector('table.ledger td.value:not(.absent)') !== null,
      answer: () => /^(?!.*follows …$).+/.test(document.querySelector('.answer')?.textContent ?? ''),
      all: () => there.answer() && /^saved/.test(document.querySelector('header [role=status]').textContent),
    };
    globalThis.stood = {};
    const look = () => {
      for (const [what, stands] of Object.entries(there)) if (stands()) stood[what] ??= performance.now();
    };
    new MutationObserver(look).observe(document, { subtree: true, childList: true, characterData: true });
  });
  const start = performance.now();
  await page.goto(server.url);
  await page.waitForFunction(() => document.documentElement.dataset.ready === 'true');
  const usable = performance.now() - start;
  await page.waitForFunction(() => 'all' in stood);
  const took = { usable, ...(await page.evaluate(() => stood)) };
  await page.context().close();
  // Kept once its flights are flown.
  const kept = join(process.env.XDG_CACHE_HOME, 'plumeline', 'answers');
  while (!existsSync(kept) || !readdirSync(kept).some((name) => name.endsWith('.solved')))
    await new Promise((resolve) => setTimeout(resolve, 20));
  await server.close();
  return took;
}
/** Of a study never opened before, and opened again. */
const firstLoads = [];
const laterLoads = [];
for (let i = 0; i < 5; i++) {
  process.env.XDG_CACHE_HOME = join(shelf, `cache-${i}`);
  firstLoads.push(await firstLoadOf());
  laterLoads.push(await firstLoadOf());
}

const server = await serveStudy({ folder, port: 0 });
const page = await (await browser.newContext({ viewport: { width: 1440, height: 900 } })).newPage();
const debug = await page.context().newCDPSession(page);
await debug.send('Performance.enable', { timeDomain: 'threadTicks' });

/** Processor time of the page's thread so far [ms], by kind of work. */
async function threadTime() {
  const { metrics } = await debug.send('Performance.getMetrics');
  const of = (name) => 1000 * (metrics.find((one) => one.name === name)?.value ?? 0);
  return {
    script: of('ScriptDuration'),
    layout: of('LayoutDuration') + of('RecalcStyleDuration'),
    task: of('TaskDuration'),
  };
}

await page.goto(server.url);
await page.waitForFunction(() => document.documentElement.dataset.ready === 'true');
await page.waitForFunction(
  () => document.querySelectorAll('.verdict-strip .checking, .span-words').length > 0,
  null,
  { timeout: 240_000 },
);

await page.evaluate(() => {
  globalThis.longTasks = [];
  new PerformanceObserver((list) =>
    longTasks.push(...list.getEntries().map(({ duration }) => duration)),
  ).observe({
    entryTypes: ['longtask'],
  });
});
/** `painted`: when the next frame is painted, and how long the page's thread was at work on it since it began [ms]. */
const knowFrames = (of) =>
  of.evaluate(() => {
    globalThis.framePainted = () =>
      new Promise((resolve) => {
        requestAnimationFrame(() => {
          const began = performance.now();
          const channel = new MessageChannel();
          channel.port1.onmessage = () => resolve({ at: performance.now(), began });
          channel.port2.postMessage(0);
        });
      });
    globalThis.painted = async () => (await framePainted()).at;
  });
await knowFrames(page);

/** Of the screen's clock [ms]. */
const TICK = 1000 / 60;
const steps = 160;
const moves = 80;
const edits = 8;
/** Keys on the altitude scale, up and down again, each until its frame is painted: how long that took, and how long without the wait for the frame to begin. */
const climbOf = () =>
  page.evaluate(async (count) => {
    const slider = document.querySelector('[role=slider]');
    const [whole, atWork] = [[], []];
    for (let i = 0; i < count; i++) {
      const key = i < count / 2 ? 'ArrowUp' : 'ArrowDown';
      performance.mark('step');
      const from = performance.now();
      slider.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));
      const frame = framePainted();
      // What the event has changed is written into the page before the next task.
      await new Promise((resolve) => queueMicrotask(() => queueMicrotask(resolve)));
      const written = performance.now();
      const { at, began } = await frame;
      whole.push(at - from);
      atWork.push(written - from + at - began);
    }
    return { whole, atWork };
  }, steps);
/** The same of a page with one word, which is another at each step. */
async function emptyOf() {
  const empty = await browser.newPage();
  await empty.setContent('<p>0</p>');
  await knowFrames(empty);
  const times = await empty.evaluate(async (count) => {
    const word = document.querySelector('p');
    const whole = [];
    for (let i = 1; i <= count; i++) {
      const from = performance.now();
      word.textContent = String(i);
      whole.push((await painted()) - from);
    }
    return whole;
  }, steps);
  await empty.close();
  return times;
}
const emptySteps = await emptyOf();
const before = await threadTime();
const { whole: altitudes, atWork: altitudesAtWork } = await climbOf();
const after = await threadTime();
const longOfAltitude = await page.evaluate(() => longTasks.splice(0));
const { steps: altitudeWork } = await tracedSteps(browser, page, climbOf);
await page.evaluate(() => longTasks.splice(0));

const field = page.locator('input[id="field-engines.bell.chamber.pressure"]');
await field.focus();
/** An event in the field until the ledger has another number and it is painted: both engines hang on this pressure. */
const movesOf = () =>
  page.evaluate(async (count) => {
    const field = document.activeElement;
    const ledger = document.querySelector('table.ledger');
    const times = [];
    for (let i = 0; i < count; i++) {
      const was = ledger.textContent;
      const from = performance.now();
      // Every other event is a key of the arrows, the rest is typed.
      if (i % 2 === 0) {
        field.value = `${101 + i} bar`;
        field.dispatchEvent(new InputEvent('input', { bubbles: true }));
      } else {
        field.dispatchEvent(
          new KeyboardEvent('keydown', { key: 'ArrowUp', bubbles: true, cancelable: true }),
        );
      }
      while (ledger.textContent === was) await new Promise((resolve) => setTimeout(resolve, 1));
      times.push((await painted()) - from);
    }
    return times;
  }, moves);
const { result: inputs, tasks: inputTasks } = await traced(browser, page, movesOf);
const longOfInput = await page.evaluate(() => longTasks.splice(0));

/** Enter until the full answer has taken the place of the estimate. */
async function editsOf() {
  const answers = [];
  for (let i = 1; i <= edits; i++) {
    await field.fill(`${80 + i} bar`);
    answers.push(
      await page.evaluate(async () => {
        const ledger = document.querySelector('table.ledger');
        const status = document.querySelector('header [role=status]');
        while (!ledger.textContent.includes('≈')) await new Promise((resolve) => setTimeout(resolve, 5));
        const from = performance.now();
        document.activeElement.dispatchEvent(
          new KeyboardEvent('keydown', { key: 'Enter', bubbles: true, cancelable: true }),
        );
        while (status.textContent !== 'saved in study.yaml' || ledger.textContent.includes('≈'))
          await new Promise((resolve) => setTimeout(resolve, 5));
        return (await painted()) - from;
      }),
    );
  }
  return answers;
}
const { result: answers, tasks: answerTasks } = await traced(browser, page, editsOf);
const longOfAnswers = await page.evaluate(() => longTasks.splice(0));

/** How much of the plug is kept, typed until the ledger has another number. */
async function cutsOf() {
  const kept = page.locator('input[id="field-engines.plug.nozzle.kept"]');
  await kept.focus();
  return page.evaluate(async (count) => {
    const field = document.activeElement;
    const ledger = document.querySelector('table.ledger');
    const times = [];
    for (let i = 0; i < count; i++) {
      const was = ledger.textContent;
      const from = performance.now();
      // Now longer, now shorter: never the same number twice in a row.
      field.value = `${(i % 2 === 0 ? 24 : 34) + 0.05 * i} %`;
      field.dispatchEvent(new InputEvent('input', { bubbles: true }));
      while (ledger.textContent === was) await new Promise((resolve) => setTimeout(resolve, 1));
      times.push((await painted()) - from);
    }
    return times;
  }, moves);
}
const cuts = await cutsOf();
await browser.close();
await server.close();
rmSync(shelf, { recursive: true });

const share = (times, part) =>
  [...times].sort((a, b) => a - b)[Math.min(times.length - 1, Math.floor(part * times.length))];
const row = (name, times, may) =>
  `| ${name} | ${share(times, 0.5).toFixed(1)} | ${share(times, 0.95).toFixed(1)} | ${Math.max(...times).toFixed(1)} | ${may} |`;
const least = (loads, what) => Math.min(...loads.map((load) => load[what])).toFixed(0);
const per = (kind) => ((after[kind] - before[kind]) / steps).toFixed(1);
const sum = (tasks) => tasks.reduce((all, task) => all + task, 0);
const longest = (tasks) => Math.max(0, ...tasks).toFixed(0);
const longWords = (tasks) =>
  tasks.length === 0 ? 'none' : `${tasks.length}, the longest ${Math.max(...tasks).toFixed(0)} ms`;
const assets = join(root, 'dist', 'faces', 'workbench', 'assets');
const scripts = readdirSync(assets).filter((name) => /^index-.*\.js$/.test(name));
const bytes = scripts.reduce((sum, name) => sum + gzipSync(readFileSync(join(assets, name))).length, 0);
const workers = (
  readdirSync(assets)
    .filter((name) => /Worker-.*\.js$|^worker-.*\.js$/.test(name))
    .reduce((sum, name) => sum + gzipSync(readFileSync(join(assets, name))).length, 0) / 1000
).toFixed(0);
const text = `Headless Chromium, software painting, 1440 × 900, the example study with two engines in sight; ${cpus()[0]?.model ?? 'unknown processor'}, ${cpus().length} cores, ${type()}, Node ${process.versions.node}. Other work ran beside: load ${loadavg()[0].toFixed(1)} on ${cpus().length} cores.

| from … to the painted frame | median ms | p95 ms | most ms | aimed at |
| --- | --- | --- | --- | --- |
${row('a key on the altitude scale', altitudes, 'p95 16.7')}
${row('the same on an empty page, where one word is another: what the clock alone takes', emptySteps, '–')}
${row('a key on the altitude scale, without the wait for the frame to begin', altitudesAtWork, 'p95 16.7')}
${row('the same, processor time of all threads on the way', altitudeWork, 'p95 16.7')}
${row('an engine’s input, typed or stepped, to the first estimate', inputs, 'p95 50')}
${row('how much of a plug is kept, typed, to the first estimate', cuts, '–')}
${row('Enter to the full answer of the engines in its place, before the flights', answers, '–')}

The screen's clock ticks every 16.7 ms: a step that is painted in the very next frame shows as 16.7 ms, however short its work is; ${altitudes.filter((time) => time > 1.5 * TICK).length} of ${steps} steps were painted a frame later (${emptySteps.filter((time) => time > 1.5 * TICK).length} of ${steps} of the empty page). A step of altitude takes the page's thread ${per('task')} ms: ${per('script')} ms script, ${per('layout')} ms style and layout, the rest painting.
A move of an input takes it ${(sum(inputTasks.page) / moves).toFixed(1)} ms of processor time, and the workers ${(sum(inputTasks.workers) / moves).toFixed(1)} ms; least of ${moves} to the painted frame: ${Math.min(...inputs).toFixed(1)} ms.
Longest task of the page's thread, in processor time: ${longest(inputTasks.page)} ms while inputs move, ${longest(answerTasks.page)} ms while answers come.
Tasks over 50 ms on that thread: ${longWords(longOfAltitude)} in ${steps} steps of altitude; ${longWords(longOfInput)} in ${moves} moves of an input; ${longWords(longOfAnswers)} in ${edits} edits with their full answers.
First load to a usable page, both engines on it, the server just started: ${least(firstLoads, 'usable')} ms, least of ${firstLoads.length}, most ${Math.max(...firstLoads.map(({ usable }) => usable)).toFixed(0)} ms (aimed at 1500); of a study that was opened before, ${least(laterLoads, 'usable')} ms. On the way to it its question and inputs stand after ${least(firstLoads, 'question')} ms, its first engine after ${least(firstLoads, 'first')} ms, the short answer after ${least(firstLoads, 'answer')} ms, the last jets and rows after ${least(firstLoads, 'all')} ms. Its script is ${(bytes / 1000).toFixed(0)} kB compressed (aimed at 300); the workers, ${workers} kB in all, come after it: the first answer is the server's.
`;
writeSection('Workbench', text);
console.log(text);
