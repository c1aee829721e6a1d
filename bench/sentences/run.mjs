/**
 * Times the check of ten sentences over two bells: 1 024 draws, without flip points, on one thread and on two, in turn in one
 * run; writes its section of bench/RESULTS.md. The reference is the same work on one thread. On Linux it also tells the processor
 * time of each thread, which other work on the machine changes little: what the hands do, and what is left for the main thread once
 * they have done.
 *
 *   node bench/sentences/run.mjs
 *
 * Options: --turns <n> (default 7), --no-write, --dist <folder of a build>.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { cpus, loadavg, type } from 'node:os';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { writeSection } from '../results.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const { values: options } = parseArgs({
  options: {
    turns: { type: 'string', default: '7' },
    dist: { type: 'string', default: `${root}dist` },
    'no-write': { type: 'boolean', default: false },
  },
});
const turns = Number(options.turns);
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

const TASKS = '/proc/self/task';
const canTell = existsSync(`${TASKS}/${process.pid}/schedstat`);
const tasks = () => (canTell ? readdirSync(TASKS) : []);
/** Processor time of a thread of this program [ms]. */
const used = (task) => Number(readFileSync(`${TASKS}/${task}/schedstat`, 'utf8').split(' ')[0]) / 1e6;
const main = String(process.pid);

let ratio = 3.4;
async function oneTurn({ threads, hands }) {
  ratio += 0.0007;
  const study = studyAt(ratio);
  const crew = threads.crewFor(study);
  const before = new Map(hands.map((task) => [task, used(task)]));
  let lastTold = 0;
  const watched = {
    ...crew,
    async tell(...order) {
      const told = await crew.tell(...order);
      if (canTell) lastTold = used(main);
      return told;
    },
  };
  const begun = canTell ? used(main) : 0;
  const start = performance.now();
  let first = null;
  const sentences = await checkSentences(study, watched, {
    flips: false,
    onProvisional: () => {
      first ??= performance.now() - start;
    },
  });
  const whole = performance.now() - start;
  if (sentences.length !== 10 || sentences.some(({ problem }) => problem !== null)) {
    throw new Error('a sentence failed');
  }
  if (!canTell) return { first, whole };
  const serial = used(main) - lastTold;
  const byHands = hands.reduce((sum, task) => sum + used(task) - before.get(task), 0);
  return { first, whole, serial, byHands, ahead: lastTold - begun };
}

/** A crew, with the threads that came with it: its hands and their helpers. */
function startCrew(size) {
  const there = new Set(tasks());
  const threads = startThreads(size);
  return { size, threads, there, hands: [], turns: [] };
}

const crews = [];
for (const size of [1, 2]) {
  const crew = startCrew(size);
  for (let warm = 0; warm < 3; warm++) await oneTurn(crew);
  crew.hands = tasks().filter((task) => !crew.there.has(task));
  crews.push(crew);
}
for (let turn = 0; turn < turns; turn++) for (const crew of crews) crew.turns.push(await oneTurn(crew));
for (const { threads } of crews) await threads.dismiss();

const least = (times) => Math.min(...times);
const median = (times) => [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)];
const ms = (time) => `${time.toFixed(0)} ms`;
const of = ({ turns: all }, name) => all.map((turn) => turn[name]);
const rows = crews.map((crew) => {
  const [first, whole] = [of(crew, 'first'), of(crew, 'whole')];
  return `| ${crew.size} | ${ms(least(first))} | ${ms(median(first))} | ${ms(least(whole))} | ${ms(median(whole))} |`;
});
const [one, two] = crews;
const times = (by) => (by(of(one, 'whole')) / by(of(two, 'whole'))).toFixed(2);

/** What the times come to where nothing else runs on two cores, and no thread waits for another but at the end. */
function processorTimes() {
  const [hands, ahead] = ['byHands', 'ahead'].map((name) => crews.map((crew) => median(of(crew, name))));
  const serial = median(crews.flatMap((crew) => of(crew, 'serial')));
  // With one hand the other core does what the main thread does meanwhile; with two it takes turns with them.
  const alone = (hands[0] + serial) / ((hands[1] + ahead[1]) / 2 + serial);
  return `

By processor time, medians: the hands work ${ms(hands[0])} on one thread and ${ms(hands[1])} together on two, the main thread beside
them ${ms(ahead[1])}, and after them ${ms(serial)}. From these alone, on two cores without other work, two threads against one would
be ${alone.toFixed(2)}: an estimate, not a measurement. Load of the machine at the end of the run: ${loadavg()[0].toFixed(1)}.`;
}

const section = `Written by \`node bench/sentences/run.mjs\` on ${new Date().toISOString().slice(0, 10)}.

Machine: ${cpus()[0]?.model ?? 'unknown'}, ${type()}, ${cpus().length} cores; Node ${process.versions.node}. ${turns} turns a crew, in
turn, after three to warm up; every turn another mixture ratio, so that no engine is solved already. Ten sentences over two bells
(bench/sentences/study.yaml), two uncertain inputs, 1 024 draws, without flip points. Wall-clock time from the call to the first,
provisional verdicts and to the final ones; the reference of the ratio is the same work on one thread. Targets: 150 ms, 1.5 s, 1.7.

| threads | first, least | first, median | whole, least | whole, median |
| --: | --: | --: | --: | --: |
${rows.join('\n')}

Two threads against one: ${times(least)} by the least times, ${times(median)} by the medians.${canTell ? processorTimes() : ''}`;
console.log(section);
if (!options['no-write']) writeSection('Speed of the check of sentences', section);
