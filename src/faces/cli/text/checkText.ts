/** Checked sentences as a reader at a terminal meets them. */

import type { CheckedAnalogy } from '../../../answer/analogies/index.ts';
import { type SignOffStanding, standingWords } from '../../../answer/review/index.ts';
import {
  type ChangedVerdict,
  type CheckedComparison,
  type CheckedSentence,
  countWords,
  failsAsSaid,
  flipWords,
  shareText,
  untestedReasons,
  verdictLabel,
} from '../../../answer/sentences/index.ts';
import type { Study } from '../../../study/model.ts';
import { placeInTest } from '../../../study/placeInTest.ts';
import { analogiesText, factsText } from './analogyText.ts';
import { testPlaceLines } from './testPlace.ts';
import { padEnd, wrapped } from './wrap.ts';

export interface CheckParts {
  readonly study: Study;
  /** Of the study's file, for the places in it. */ readonly text: string;
  readonly sentences: readonly CheckedSentence[];
  readonly facts: readonly CheckedSentence[];
  readonly analogies: readonly CheckedAnalogy[];
  readonly comparison: CheckedComparison | null;
  /** Null where nothing earlier was given. */ readonly changed: readonly ChangedVerdict[] | null;
  /** Sign-offs of `review.yaml`. */ readonly standings?: readonly SignOffStanding[];
  /** Lines of the script that say what fails. */ readonly inScript?: readonly string[];
  readonly caution: string;
  /** With numbers, conditions and sources. */ readonly whole: boolean;
}

export function checkText(
  {
    study,
    text,
    sentences,
    facts,
    analogies,
    comparison,
    changed,
    standings = [],
    inScript = [],
    caution,
    whole,
  }: CheckParts,
  width: number,
): string {
  const parts = [
    wrapped(study.question, width),
    sentences.length === 0
      ? 'The study has no sentences. Write them under “sentences” in study.yaml.'
      : [HEADING, ...sentences.map((sentence) => sentenceText(sentence, text, whole, width))].join('\n\n'),
    factsText(facts, width),
    analogiesText(analogies, text, whole, width),
    comparison === null ? '' : comparisonText(comparison, study, width),
    changed === null ? '' : changedText(changed, width),
    standings.length === 0 ? '' : reviewedText(standings, width),
    inScript.length === 0 ? '' : scriptLinesText(inScript, width),
    summary([...sentences, ...facts, ...analogies], width),
    wrapped(caution, width),
  ];
  return parts.filter((part) => part !== '').join('\n\n');
}

function scriptLinesText(lines: readonly string[], width: number): string {
  return [
    'Not to be said so in script.md',
    ...lines.map((words) => wrapped(words, width, '    ', '  - ')),
  ].join('\n');
}

const VERDICT_WIDTH = 'say with care'.length;
const SHARE_WIDTH = 'Holds in'.length;
const INDENT = '  ';

/** The share is that of all that is not known. */
const HEADING = `${padEnd('Verdict', VERDICT_WIDTH)}  ${padEnd('Holds in', SHARE_WIDTH)} Sentence`;

function sentenceText(sentence: CheckedSentence, file: string, whole: boolean, width: number): string {
  const { id, say, said, verdict, share, wording, instead } = sentence;
  const holds = share === null ? '' : shareText(share);
  const label = verdictLabel(sentence);
  const standing =
    label === verdict
      ? `${padEnd(label, VERDICT_WIDTH)}  ${padEnd(holds, SHARE_WIDTH)}`
      : padEnd(label, VERDICT_WIDTH + 2 + SHARE_WIDTH);
  const head = `${standing} ${id}${said ? '' : '  (kept, not said)'}`;
  const line = (label: string, text: string): string =>
    wrapped(text, width, INDENT + ' '.repeat(10), `${INDENT}${padEnd(label, 9)} `);
  const lines = [
    wrapped(`“${say}”`, width, INDENT),
    ...(instead === null ? [] : [line('Instead', instead)]),
    ...(wording === null ? [] : [line('Numbers', wording)]),
    ...whyLines(sentence).map((text) => line('Why', text)),
    ...untestedReasons(sentence).map((text) => line('Reason', text)),
    ...placeLines(sentence, file).map((text) => line('Where', text)),
    ...flipWords(sentence.flips)
      .slice(0, whole ? undefined : 2)
      .map((words) => line('Turns', words)),
    ...(whole ? detailLines(sentence, line) : []),
  ];
  return [head.trimEnd(), ...lines].join('\n');
}

function whyLines({ why, problem, verdict }: CheckedSentence): readonly string[] {
  if (problem !== null) return [`${why} ${problem.mend}`.trim()];
  return verdict === 'safe to say' ? [] : [why];
}

/** Where in the file a test cannot be read, and the sign or word that stands there. */
function placeLines({ id, holds, problem }: CheckedSentence, file: string): readonly string[] {
  if (holds === null) return [];
  return testPlaceLines(problem, holds, (start) => placeInTest(file, id, start));
}

function detailLines(
  { numbers, matters, conditions, absolutes, saidNumbers, alternatives, sources }: CheckedSentence,
  line: (label: string, text: string) => string,
): readonly string[] {
  return [
    ...numbers.map(({ expression, words }) => line('Decides', `${expression}: ${words}`)),
    ...matters.map(({ words }) => line('Matters', words)),
    ...alternatives.map(({ of, by, share }) =>
      line('By', `${by} (${of}): ${share === null ? 'no number here' : `holds in ${shareText(share)}`}`),
    ),
    ...absolutes.map(({ words }) => line('Absolute', words)),
    ...saidNumbers.map(({ words }) => line('Number', words)),
    ...conditions.map((text) => line('Tested', text)),
    ...sources.map((text) => line('Source', text)),
  ];
}

/** Specific impulse alone, told so: what a comparison is usually about. */
function comparisonText(
  { base, other, differences }: CheckedComparison,
  study: Study,
  width: number,
): string {
  if (differences.length === 0) return '';
  const nameOf = (id: string): string => study.engines.find((engine) => engine.id === id)?.name ?? id;
  return [
    `Specific impulse of ${nameOf(other)} against ${nameOf(base)}, over all that is not known`,
    ...differences.map(({ words }) => wrapped(words, width, '    ', '  - ')),
  ].join('\n');
}

function changedText(changed: readonly ChangedVerdict[], width: number): string {
  if (changed.length === 0) return 'No verdict has changed.';
  return [
    'Changed since the earlier check',
    ...changed.map(({ words }) => wrapped(words, width, '    ', '  - ')),
  ].join('\n');
}

/** What stands in a line; what is void, and why, one by one. */
function reviewedText(standings: readonly SignOffStanding[], width: number): string {
  const standing = standings
    .filter(({ stands }) => stands)
    .map(({ id, by, date }) => `${id} (${by}, ${date})`);
  const voided = standings.filter(({ stands }) => !stands);
  return [
    wrapped(`Reviewed, and unchanged since: ${standing.join(', ') || 'nothing'}.`, width),
    ...voided.map((one) => wrapped(`${one.id}: ${standingWords(one)}`, width, '    ', '  - ')),
  ].join('\n');
}

function summary(sentences: readonly (CheckedSentence | CheckedAnalogy)[], width: number): string {
  if (sentences.length === 0) return '';
  const failing = sentences.filter(failsAsSaid).map(({ id }) => id);
  const last =
    failing.length === 0 ? 'Nothing that is said fails.' : `Said, but fails: ${failing.join(', ')}.`;
  return wrapped(`${countWords(sentences)}. ${last}`, width);
}
