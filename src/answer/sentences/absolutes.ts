/** Absolute words in a sentence, and whether its test is as wide as they claim. */

import { remembered } from '../../numerics/remembered.ts';
import type { CompiledTest, RangeKind, RangePlace, TestedRange } from '../expression/model.ts';
import type { AbsoluteWord } from './model.ts';

type Claim = 'range' | 'exact' | 'beyond';

/** Longest first; `but` is what follows or stands before where the word claims nothing. */
const WORDS: readonly { readonly word: RegExp; readonly claim: Claim }[] = [
  { word: /\bin (?:every|each|any|all) cases?\b/gi, claim: 'range' },
  { word: /\b(?:the whole way|all the way|the whole (?:time|climb|flight|ascent))\b/gi, claim: 'range' },
  { word: /\bat (?:every|each|any|all) (?:altitudes?|heights?|pressures?|throttles?)\b/gi, claim: 'range' },
  { word: /\bno matter (?:what|where|how)\b/gi, claim: 'range' },
  {
    word: /\b(?:always|never|ever|everywhere|nowhere|anywhere|invariably|without exception)\b/gi,
    claim: 'range',
  },
  { word: /\b(?:impossible|impossibly|cannot|can[’']t|can not|can never)\b/gi, claim: 'range' },
  { word: /\b(?:exactly|precisely|identical(?:ly)?)\b/gi, claim: 'exact' },
  { word: /\b(?:zero|nothing at all)\b/gi, claim: 'exact' },
  { word: /\b(?:perfect(?:ly)?|the only|guaranteed|absolutely|completely|entirely)\b/gi, claim: 'beyond' },
  { word: /\b(?<!\bat )(?<!\bafter )(?:all|any|every|none)\b(?! (?:in all|but)\b)/gi, claim: 'range' },
  { word: /\bno [a-z]+ (?:[a-z]+ ){0,3}?(?:ever|can|could|reaches|beats|gets)\b/gi, claim: 'range' },
];

/** How many sentences' words are kept: the same are looked at with every change of an input. */
const KEPT = 64;

/** Words of a sentence that claim more than one place, each once, in the order of the text. */
export const absoluteWordsIn = remembered(claimsOfWords, KEPT);

function claimsOfWords(say: string): readonly { readonly word: string; readonly claim: Claim }[] {
  const found: { readonly at: number; readonly end: number; readonly word: string; readonly claim: Claim }[] =
    [];
  for (const { word, claim } of WORDS) {
    for (const match of say.matchAll(word)) {
      const end = match.index + match[0].length;
      if (found.some((one) => match.index < one.end && one.at < end)) continue;
      found.push({ at: match.index, end, word: match[0], claim });
    }
  }
  return found.sort((a, b) => a.at - b.at).map(({ word, claim }) => ({ word, claim }));
}

export function heldAgainst(say: string, test: CompiledTest | null): readonly AbsoluteWord[] {
  return absoluteWordsIn(say).map(({ word, claim }) => {
    if (claim === 'range') return rangeWord(word, test);
    if (claim === 'exact') return exactWord(word, test);
    return {
      word,
      covered: false,
      words: `“${word}” claims more than a computation can hold. Leave it out, or say what it is held against.`,
    };
  });
}

function rangeWord(word: string, test: CompiledTest | null): AbsoluteWord {
  const whole = test?.ranges.find(isWhole);
  if (whole !== undefined) return { word, covered: true, words: `“${word}”: ${whole.words}.` };
  const part = test?.ranges.find(({ kind }) => CLAIMS_ALL.has(kind));
  const now = part === undefined ? 'the test looks at single places' : `it is only ${part.words}`;
  return {
    word,
    covered: false,
    words: `“${word}” claims the whole range, but ${now}. Test it with “for every z from pad to vacuum: …”, or say where it is so.`,
  };
}

const CLAIMS_ALL: ReadonlySet<RangeKind> = new Set([
  'every',
  'none',
  'rises',
  'falls',
  'does not rise',
  'does not fall',
  'constant',
]);

/** Ground level and above what any engine is fired in [m]; [Pa]. */
const PAD = 0;
const PAD_PRESSURE = 101_325;

/** From the pad to vacuum, or an input from end to end of what was asked for. */
function isWhole({ kind, of, from, to }: TestedRange): boolean {
  if (!CLAIMS_ALL.has(kind)) return false;
  if (of === 'altitude') return (below(from) && to === 'vacuum') || (below(to) && from === 'vacuum');
  if (of === 'pressure') {
    const [a, b] = [from, to].map((place) => (place === 'vacuum' ? 0 : place));
    return Math.min(a!, b!) === 0 && Math.max(a!, b!) >= 0.99 * PAD_PRESSURE;
  }
  if (of === 'throttle')
    return Math.max(Number(from), Number(to)) >= 1 && Math.min(Number(from), Number(to)) <= 0.4;
  // Along the wall, or over an input: the range that the test names, which is told.
  return true;
}

const below = (place: RangePlace): boolean => place !== 'vacuum' && place <= PAD;

/** Up to this share a tolerance is one that `exactly` may stand for. Common practice, no source. */
const EXACT = 0.005;

function exactWord(word: string, test: CompiledTest | null): AbsoluteWord {
  const tolerance = test === null ? null : tightestEquality(test);
  if (tolerance !== null) {
    const covered = tolerance <= EXACT;
    const percent = `${Number((tolerance * 100).toPrecision(2))} %`;
    return covered
      ? { word, covered, words: `“${word}”: tested as an equality within ${percent}.` }
      : {
          word,
          covered,
          words: `“${word}” is tested as an equality within ${percent}; that is “about”. Test it within 0.5 % or better.`,
        };
  }
  return {
    word,
    covered: false,
    words: `“${word}” claims an equality, but the test holds none. Write “is … within 0.5 %”, or leave the word out.`,
  };
}

/** Share of the right side within which the test wants its sides equal, from the text alone; null: no equality. */
function tightestEquality({ text }: CompiledTest): number | null {
  const within = [...text.matchAll(/\bwithin\s+([\d.]+)\s*(?:%|per cent)/gi)].map((m) => Number(m[1]) / 100);
  if (within.length > 0) return Math.min(...within);
  if (/\bis (?:about|around)\b|≈|~/.test(text)) return 0.05;
  return /\broughly\b/.test(text) ? 0.2 : null;
}
