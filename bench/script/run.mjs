/**
 * Times a script of 8 000 words rendered again after an input has changed and its numbers are told:
 * numbers in place, flags, verdicts, record. Beside it a first look, from the text on, and the text read alone by a plain
 * parser of the same Markdown, the reference. Writes its section of bench/RESULTS.md.
 *
 *   node bench/script/run.mjs
 *
 * Options: --seconds <s> (default 3), --no-write, --dist <folder of a build>.
 */

import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { cpus, loadavg, type } from 'node:os';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { parser } from '@lezer/markdown';
import { writeSection } from '../results.mjs';
import { measure } from '../timing.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const { values: options } = parseArgs({
  options: {
    seconds: { type: 'string', default: '3' },
    dist: { type: 'string', default: `${root}dist` },
    'no-write': { type: 'boolean', default: false },
  },
});
const seconds = Number(options.seconds);
if (!existsSync(`${options.dist}/telling/index.js`)) {
  console.log('building first …');
  const { status } = spawnSync(process.execPath, [`${root}scripts/build.mjs`], { stdio: 'inherit' });
  if (status !== 0) throw new Error('the build failed; see above');
}
const load = (path) => import(`${options.dist}/${path}`);
const { handNumbers, readScriptOf, recordOf, resolveScript, scriptFound } =
  await load('telling/script/index.js');
const { asksOfNumbers } = await load('answer/numbers/index.js');
const { readStudy } = await load('study/index.js');

const example = (file) => readFileSync(`${root}examples/alder-booster/${file}`, 'utf8');
const outcome = readStudy(example('study.yaml'), { file: 'study.yaml' });
if (!outcome.ok) throw new Error(outcome.problems[0].what);
const { study } = outcome;

/** The scenes of the example again and again, each time with ids of their own. */
const WORDS = 8000;
const [, head = '', body = ''] = /^([\s\S]*?# Is[^\n]*\n)([\s\S]*)$/.exec(
  example('script.md').replace(/^---[\s\S]*?\n---\n/, ''),
);
const parts = [head];
const wordsIn = (script) => script.replace(/\{\{[\s\S]*?\}\}/g, ' x ').split(/\s+/).length;
for (let i = 0; wordsIn(parts.join('\n')) < WORDS; i++) {
  parts.push(body.replace(/\{#([\w-]+)/g, `{#$1-${i}`).replace(/relies=([\w-]+)/g, `relies=$1-${i}`));
}
const text = parts.join('\n');
const read = readScriptOf(text, study);
if (read.problems.length > 0) throw new Error(read.problems[0].what);
const lines = read.script.scenes.flatMap((scene) => scene.lines);
const live = lines.flatMap(({ pieces }) => pieces.filter(({ kind }) => kind === 'number'));

const expressions = [...new Set(live.map(({ expression }) => expression))];
const compiled = new Map(
  asksOfNumbers(study, expressions).numbers.map((one) => [one.expression, one.compiled]),
);
/** As if told again: every value another one. */
const toldAt = (turn) =>
  new Map(
    expressions.map((expression, i) => {
      const value = (300 + 40 * i) * (1 + 0.003 * (turn % 97));
      const { dimension, quantity, isDifference } = compiled.get(expression);
      const span = { low: 0.98 * value, high: 1.02 * value };
      return [
        expression,
        { expression, value, ...span, quantity, madeOf: [], dimension, isDifference, problem: null },
      ];
    }),
  );
const judged = study.sentences.map(({ id, say, holds, said }) => ({
  id,
  say,
  holds,
  said,
  verdict: 'say with care',
  share: 0.8,
  shareError: 0.01,
  numbers: [],
  wording: 'With care.',
  instead: null,
  wordingHolds: null,
  conditions: [],
  flips: [],
  matters: [],
  alternatives: [],
  absolutes: [],
  saidNumbers: [],
  saidReasons: [],
  why: 'It is open.',
  provisional: false,
  problem: null,
  sources: [],
}));
const record = recordOf(resolveScript(read.script, toldAt(0)));
const byHand = handNumbers(read.script, study);

let turn = 0;
function renderAgain() {
  const told = toldAt(++turn);
  return scriptFound({ text, read, study, told, judged, byHand, record }, null).answer;
}
function firstLook() {
  const again = readScriptOf(text, study);
  return handNumbers(again.script, study).length + resolveScript(again.script, toldAt(++turn)).scenes.length;
}
const answer = renderAgain();
if (answer.flags.length < 10) throw new Error('the flags are missing');

const rows = [
  ['rendered again after an input changed', measure(renderAgain, 1, 1, seconds)],
  ['first look, from the text on', measure(firstLook, 1, 1, seconds)],
  [
    'reference: the same text through the Markdown parser alone',
    measure(() => parser.parse(text), 1, 1, seconds),
  ],
];
const words = wordsIn(text);
const ms = (value) => (1000 * value).toFixed(1);
const lead = `${words} words, ${lines.length} lines, ${live.length} live numbers, ${answer.flags.length} to look at; the numbers are told already. Limit: 50 ms a rendering.`;
const table = [
  '| work | least [ms] | median [ms] |',
  '| --- | --- | --- |',
  ...rows.map(([name, { least, median }]) => `| ${name} | ${ms(least)} | ${ms(median)} |`),
];
console.log([lead, '', ...table].join('\n'));
const again = rows[0][1];
if (again.median > 0.05) console.log(`Above the limit: ${ms(again.median)} ms.`);
if (!options['no-write']) {
  const [cpu] = cpus();
  writeSection(
    'Script of 8 000 words',
    [
      lead,
      '',
      ...table,
      '',
      `${cpu.model}, ${cpus().length} cores under a load of ${loadavg()[0].toFixed(0)}, ${type()}, Node ${process.versions.node}.`,
    ].join('\n'),
  );
}
