/**
 * Times the check of ten sentences over two bells: 1 024 draws, without flip points, on one thread and on two, in turn in one
 * run; writes its section of bench/RESULTS.md. The reference is the same work on one thread.
 *
 *   node bench/sentences/run.mjs
 *
 * Options: --turns <n> (default 7), --no-write, --dist <folder of a build>.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { cpus, type } from 'node:os';
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

let ratio = 3.4;
async function oneTurn(threads) {
  ratio += 0.0007;
  const study = studyAt(ratio);
  const crew = threads.crewFor(study);
  const start = performance.now();
  let first = null;
  const sentences = await checkSentences(study, crew, {
    flips: false,
    onProvisional: () => {
      first ??= performance.now() - start;
    },
  });
  const whole = performance.now() - start;
  if (sentences.length !== 10 || sentences.some(({ problem }) => problem !== null)) {
    throw new Error('a sentence failed');
  }
  return { first, whole };
}

const crews = [1, 2].map((size) => ({ size, threads: startThreads(size), first: [], whole: [] }));
for (const { threads } of crews) for (let warm = 0; warm < 3; warm++) await oneTurn(threads);
for (let turn = 0; turn < turns; turn++) {
  for (const crew of crews) {
    const { first, whole } = await oneTurn(crew.threads);
    crew.first.push(first);
    crew.whole.push(whole);
  }
}
for (const { threads } of crews) await threads.dismiss();

const least = (times) => Math.min(...times);
const median = (times) => [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)];
const ms = (time) => `${time.toFixed(0)} ms`;
const rows = crews.map(
  ({ size, first, whole }) =>
    `| ${size} | ${ms(least(first))} | ${ms(median(first))} | ${ms(least(whole))} | ${ms(median(whole))} |`,
);
const [one, two] = crews;
const section = `Written by \`node bench/sentences/run.mjs\` on ${new Date().toISOString().slice(0, 10)}.

Machine: ${cpus()[0]?.model ?? 'unknown'}, ${type()}, ${cpus().length} cores; Node ${process.versions.node}. ${turns} turns a crew, in
turn, after three to warm up; every turn another mixture ratio, so that no engine is solved already. Ten sentences over two bells
(bench/sentences/study.yaml), two uncertain inputs, 1 024 draws, without flip points. Wall-clock time from the call to the first,
provisional verdicts and to the final ones; the reference of the ratio is the same work on one thread. Targets: 150 ms, 1.5 s, 1.7.

| threads | first, least | first, median | whole, least | whole, median |
| --: | --: | --: | --: | --: |
${rows.join('\n')}

Two threads against one: ${(least(one.whole) / least(two.whole)).toFixed(2)} by the least times, ${(median(one.whole) / median(two.whole)).toFixed(2)} by the medians.`;
console.log(section);
if (!options['no-write']) writeSection('Speed of the check of sentences', section);
