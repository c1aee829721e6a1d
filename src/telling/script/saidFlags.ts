/** A line that says a checked sentence carries its verdict, and its words are held against those of the sentence. English. */

import type { CheckedAnalogy } from '../../answer/analogies/model.ts';
import { enginesSaid, placesSaid, type Signs, signsOf } from '../../answer/claims/signs.ts';
import { absoluteWordsIn } from '../../answer/sentences/absolutes.ts';
import {
  besideWords,
  type CheckedSentence,
  failsAsSaid,
  verdictLabel,
} from '../../answer/sentences/index.ts';
import type { Study } from '../../study/model.ts';
import type { Script, ScriptLine } from '../../study/script/index.ts';
import { wordsAlone } from './handNumbers.ts';
import type { ScriptFlag } from './model.ts';

/** A sentence, a fact or an analogy with its verdict. */
export type Judged = CheckedSentence | CheckedAnalogy;

export function saidFlags(
  line: ScriptLine,
  judged: ReadonlyMap<string, Judged>,
  study: Study,
): readonly ScriptFlag[] {
  const { says, id, from, to } = line;
  const found = says === undefined ? undefined : judged.get(says);
  if (found === undefined) return [];
  const flag = (kind: ScriptFlag['kind'], fails: boolean, words: string): ScriptFlag => ({
    kind,
    fails,
    line: id,
    words,
    from,
    to,
  });
  // Said here, whatever the study says of it.
  const fails = failsAsSaid({ ...found, said: true });
  const verdict = verdictWords(found, fails).map((words) => flag('verdict', fails, words));
  return [...verdict, ...wordsAgainst(line, found, study).map((words) => flag('words', false, words))];
}

/** Lines of a script that say what must not be said so. */
export function failingLines(
  { scenes }: Script,
  judged: readonly Judged[],
  study: Study,
): readonly ScriptFlag[] {
  const verdicts = new Map(judged.map((one) => [one.id, one]));
  const lines = scenes.flatMap((scene) => scene.lines);
  return lines.flatMap((line) => saidFlags(line, verdicts, study).filter(({ fails }) => fails));
}

function verdictWords(found: Judged, fails: boolean): readonly string[] {
  const label = verdictLabel(found);
  if (label === 'safe to say' || label === 'reported') return [];
  const kept = fails && !found.said ? ' The study keeps it to be discussed, not to be said.' : '';
  return [`It says ${found.id}: ${label}. ${beside(found)}${kept}`.trim()];
}

const beside = (found: Judged): string => ('numbers' in found ? besideWords(found) : found.why);

interface Held {
  readonly say: string;
  readonly study: Study;
  readonly found: readonly string[];
}

/** Numbers move and words do not: a line is held against its sentence once. */
const heldLines = new WeakMap<ScriptLine, Held>();

function wordsAgainst(line: ScriptLine, judged: Judged, study: Study): readonly string[] {
  const known = heldLines.get(line);
  if (known?.say === judged.say && known.study === study) return known.found;
  const found = differencesOf(wordsAlone(line), judged, study);
  heldLines.set(line, { say: judged.say, study, found });
  return found;
}

/** Where the words claim more than the sentence that is checked, or something else. */
function differencesOf(text: string, { id, say }: Judged, study: Study): readonly string[] {
  const [own, checked] = [signsOf(text), signsOf(say)];
  const found: string[] = [];
  const known = new Set(absoluteWordsIn(say).map(({ word }) => word.toLowerCase()));
  for (const { word } of absoluteWordsIn(text)) {
    if (!known.has(word.toLowerCase()))
      found.push(`“${word}” is not in the sentence ${id}: it claims more than is checked.`);
  }
  const denies = [own, checked].map((signs) => signs.denies === 'it');
  if (denies[0] !== denies[1] && compares(own) && compares(checked)) {
    found.push(
      `${denies[0] ? 'The line' : `The sentence ${id}`} denies what ${denies[0] ? `the sentence ${id}` : 'the line'} says: look whether both mean the same.`,
    );
  }
  const opposed = [own.direction, checked.direction];
  if (opposed.includes('>') && opposed.includes('<') && sameOrder(text, say, study)) {
    found.push(
      `The line says ${own.direction === '>' ? 'more' : 'less'}, the sentence ${id} ${own.direction === '>' ? 'less' : 'more'}.`,
    );
  }
  const places = new Set(placesSaid(say).map(({ written }) => written));
  for (const { written } of placesSaid(text)) {
    if (places.size > 0 && !places.has(written)) {
      found.push(
        `The line speaks of ${written === '0 km' ? 'the pad' : written}, the sentence ${id} is checked elsewhere.`,
      );
    }
  }
  return [...new Set(found)];
}

const compares = ({ direction, superlative }: Signs): boolean => direction !== null || superlative !== null;

/** “The bell gives less” and “the plug gives more” are the same. */
function sameOrder(text: string, say: string, { engines }: Study): boolean {
  const [one, other] = [text, say].map((words) => enginesSaid(words, engines)[0]);
  return one === other;
}
