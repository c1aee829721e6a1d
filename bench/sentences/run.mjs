/**
 * Times the check of ten sentences over two bells: 1 024 draws, without flip points, by one hand and by two, in turn in one run, both
 * with the main thread that draws and judges; writes its section of bench/RESULTS.md. Each hand has solved as much before: the
 * program gets quicker over the first hundred engines. On Linux it also tells the processor time of each thread, which other work
 * on the machine changes little, how long hands wait, what other programs took meanwhile, and the same work with all threads on
 * one core.
 *
 *   node bench/sentences/run.mjs
 *
 * Options: --turns <n> (default 21), --warm <n> turns a hand before (default 10), --no-write, --dist <folder of a build>;
 * --ahead: where other programs run, this one goes before them while a turn lasts (Linux, with the right to do so), and lets them
 * run between two turns.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { cpus, loadavg, type } from 'node:os';
import { setTimeout as pause } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { writeSection } from '../results.mjs';
import {
  bindTo,
  canTell,
  coresAllowed,
  goAhead,
  goInTurn,
  mainThread,
  spentBy,
  spentByOthers,
  threadsNow,
} from './threads.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const { values: options } = parseArgs({
  options: {
    turns: { type: 'string', default: '21' },
    warm: { type: 'string', default: '10' },
    dist: { type: 'string', default: `${root}dist` },
    ahead: { type: 'boolean', default: false },
    'no-write': { type: 'boolean', default: false },
  },
});
const [turns, warm] = [Number(options.turns), Number(options.warm)];
if (!existsSync(`${options.dist}/answer/index.js`)) {
  console.log('building first …');
  const { status } = spawnSync(process.execPath, [`${root}scripts/build.mjs`], { stdio: 'inherit' });
  if (status !== 0) throw new Error('the build failed; see above');
}
const load = (path) => import(`${options.dist}/${path}`);
const { checkSentences } = await load('answer/sentences/index.js');
const { startThreads } = await load('faces/crew/threadCrew.js');
const { openDataShelf } = await load('faces/disk/data.js');
const { knownNames } = await load('study/names.js');
const { readStudy } = await load('study/index.js');

const text = readFileSync(new URL('./study.yaml', import.meta.url), 'utf8');
const names = knownNames(await openDataShelf().propellants());

/** The same study with another mixture ratio, so that no turn finds its engines solved already. */
function studyAt(ratio) {
  const outcome = readStudy(text.replace('3.4 ± 0.05', `${ratio.toFixed(4)} ± 0.05`), {
    file: 'study.yaml',
    ...names,
  });
  if (!outcome.ok) throw new Error(outcome.problems[0].what);
  return outcome.study;
}

let ratio = 3.4;
async function oneTurn({ threads, hands }) {
  ratio += 0.0007;
  const study = studyAt(ratio);
  const crew = threads.crewFor(study);
  const before = hands.map(spentBy);
  const others = canTell ? spentByOthers() : 0;
  const begun = canTell ? spentBy(mainThread).work : 0;
  let told = { at: 0, byMain: 0, byHands: [] };
  const watched = {
    ...crew,
    async tell(...order) {
      const rows = await crew.tell(...order);
      told = {
        at: performance.now(),
        byMain: canTell ? spentBy(mainThread).work : 0,
        byHands: hands.map(spentBy),
      };
      return rows;
    },
  };
  const start = performance.now();
  let first = null;
  const sentences = await checkSentences(study, watched, {
    flips: false,
    onProvisional: () => {
      first ??= performance.now() - start;
    },
  });
  const end = performance.now();
  if (sentences.length !== 10 || sentences.some(({ problem }) => problem !== null)) {
    throw new Error('a sentence failed');
  }
  const times = { first, whole: end - start, solving: told.at - start, judging: end - told.at };
  if (!canTell) return times;
  const spent = (what) => told.byHands.map((hand, i) => hand[what] - before[i][what]);
  return {
    ...times,
    byHands: sum(spent('work')),
    // Neither at work nor ready to work: waiting to be told what to do.
    idle:
      sum(told.byHands.map((_, i) => told.at - start - spent('work')[i] - spent('queue')[i])) / hands.length,
    ahead: told.byMain - begun,
    behind: spentBy(mainThread).work - told.byMain,
    others: spentByOthers() - others,
  };
}

const sum = (numbers) => numbers.reduce((all, one) => all + one, 0);
const cores = canTell ? coresAllowed() : null;
const oneCore = cores === null ? null : (cores.match(/^\d+/)?.[0] ?? null);

/** A turn with every thread on one core, or on all of them. */
async function turnOn(crew) {
  if (crew.onOneCore) bindTo(oneCore);
  if (options.ahead) {
    await pause(LET_OTHERS_RUN);
    goAhead();
  }
  try {
    return await oneTurn(crew);
  } finally {
    if (options.ahead) goInTurn();
    if (crew.onOneCore) bindTo(cores);
  }
}

const LET_OTHERS_RUN = 700;

const crews = [];
const kinds = [{ size: 1 }, { size: 2 }, ...(oneCore === null ? [] : [{ size: 1, onOneCore: true }])];
for (const kind of kinds) {
  const there = new Set(threadsNow());
  const crew = { ...kind, threads: startThreads(kind.size), hands: [], turns: [] };
  await oneTurn(crew);
  crew.hands = threadsNow().filter((thread) => !there.has(thread));
  for (let turn = 1; turn < warm * kind.size; turn++) await oneTurn(crew);
  crews.push(crew);
}
for (let turn = 0; turn < turns; turn++) for (const crew of crews) crew.turns.push(await turnOn(crew));
for (const { threads } of crews) await threads.dismiss();

const least = (times) => Math.min(...times);
const median = (times) => [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)];
const ms = (time) => `${time.toFixed(0)} ms`;
const of = ({ turns: all }, name) => all.map((turn) => turn[name]);
const both = (crew, name) => [least, median].map((by) => ms(by(of(crew, name)))).join(' | ');
const [one, two, bound] = crews;
const rows = [one, two].map(
  (crew) =>
    `| ${crew.size} | ${['first', 'solving', 'judging', 'whole'].map((name) => both(crew, name)).join(' | ')} |`,
);
const ratioOf = (crew, by) => (by(of(crew, 'whole')) / by(of(two, 'whole'))).toFixed(2);
const against = (crew) =>
  `${ratioOf(crew, least)} by the least times, ${ratioOf(crew, median)} by the medians`;

/** What the times come to where nothing else runs on two cores, and no thread waits for another but at the end. */
function processorTimes() {
  const [hands, ahead, behind] = ['byHands', 'ahead', 'behind'].map((name) =>
    [one, two].map((crew) => median(of(crew, name))),
  );
  // With one hand the other core does what the main thread does meanwhile; with two it takes turns with them.
  const alone = (hands[0] + behind[0]) / ((hands[1] + ahead[1]) / 2 + behind[1]);
  const precedes = options.ahead ? ', before which this one went' : '';
  const onOneCore =
    bound === undefined
      ? ''
      : `\n\nWith one hand the second core is not idle: the main thread judges the first look there, and the run-time library collects
garbage and compiles. With one hand and every thread bound to one core the whole takes ${ms(least(of(bound, 'whole')))} at the least, ${ms(median(of(bound, 'whole')))} in
the median: two threads on two cores against that are ${against(bound)}.`;
  return `${onOneCore}

By processor time, medians: the hands work ${ms(hands[0])} on one thread and ${ms(hands[1])} together on two, the main thread beside
them ${ms(ahead[1])}, and after them ${ms(behind[1])}. From these alone, on two cores without other work, two threads against one would
be ${alone.toFixed(2)}: an estimate, not a measurement. While engines are solved, a hand waits for work ${ms(median(of(one, 'idle')))} where it is alone,
and ${ms(median(of(two, 'idle')))} where there are two (at the beginning, between two pieces, and at the end for the other hand). Other
programs had ${ms(median(of(two, 'others')))} of the two cores in a turn of two threads${precedes}; load of the machine at the end of the run: ${loadavg()[0].toFixed(1)}.`;
}

const section = `Written by \`node bench/sentences/run.mjs${options.ahead ? ' --ahead' : ''}\` on ${new Date().toISOString().slice(0, 10)}.

Machine: ${cpus()[0]?.model ?? 'unknown'}, ${type()}, ${cpus().length} cores; Node ${process.versions.node}. ${turns} turns a crew, in
turn, after ${warm} a hand to warm up; every turn another mixture ratio, so that no engine is solved already. Ten sentences over two
bells (bench/sentences/study.yaml), two uncertain inputs, 1 024 draws, without flip points. Wall-clock time from the call to the
first, provisional verdicts, until all engines are solved, from there to the final verdicts, and of the whole. A thread is a hand that
solves; the main thread beside them draws and judges. The reference of the ratio is the same work with one. Targets: 150 ms for the
first verdicts, 1.5 s for the whole, a ratio of 1.7.

| threads | first, least | first, median | solving, least | solving, median | judging, least | judging, median | whole, least | whole, median |
| --: | --: | --: | --: | --: | --: | --: | --: | --: |
${rows.join('\n')}

Two threads against one: ${against(one)}.${canTell ? processorTimes() : ''}`;
console.log(section);
if (!options['no-write']) writeSection('Speed of the check of sentences', section);
