/** What in a sentence makes it a claim: comparisons, superlatives, absolutes; places and who is meant. English. */

import type { EngineInput } from '../../study/model.ts';
import { nozzleForm } from '../compare/traits.ts';
import { type NumberInProse, numbersInProse } from '../sentences/numbersInWords.ts';

const UP =
  'more|higher|greater|larger|bigger|faster|hotter|stronger|longer|wider|heavier|denser|better|harder';
const DOWN = 'less|lower|smaller|slower|cooler|colder|weaker|shorter|narrower|lighter|worse|fewer';
const BETWEEN = String.raw`(?:\s+[\w’'-]+){0,8}?`;
const MORE = new RegExp(
  String.raw`\b(?:${UP})\b${BETWEEN}\s+than\b|\b(?:beats|exceeds|outperforms|outruns)\b`,
  'i',
);
const LESS = new RegExp(String.raw`\b(?:${DOWN})\b${BETWEEN}\s+than\b`, 'i');
const TIMES =
  /\b(?:twice|half|double|triple|(?:\S+ )?times) (?:as |the |that |of )|(?:per cent|%) of (?:that|what)\b/i;
const SAME = /\bas (?:\w+ ){1,2}as\b|\bthe same (?:\w+ ){1,3}as\b|\bequal to\b/i;
const MOST =
  /\b(?:the (?:most|least|best|worst|highest|lowest|greatest|largest|smallest|biggest|fastest|slowest|hottest|coolest|strongest|weakest|longest|shortest|widest|lightest|heaviest))\b/i;
const LEAST = /\bthe (?:least|worst|lowest|smallest|slowest|coolest|weakest|shortest|narrowest|lightest)\b/i;
const DENIED = /\b(?:not|n[o’']t|never|no|nor|neither|cannot|hardly)\b|n[’']t\b/i;

export type Direction = '>' | '<' | 'times' | 'same';

export interface Signs {
  readonly direction: Direction | null;
  readonly superlative: '>' | '<' | null;
  readonly denied: boolean;
  /** What is denied: the comparison, or only that it is so everywhere; `unclear`: something else, or it twice. */
  readonly denies: 'it' | 'always' | 'unclear' | null;
}

export function signsOf(say: string): Signs {
  const counted = withoutBounds(say);
  const plain = counted.replace(/\bno matter\b/gi, '');
  return { ...comparedIn(counted), denied: DENIED.test(plain), denies: deniedIn(plain) };
}

const NOT_ALWAYS = /(?:\bnot|n[’']t)\s+(?:\w+\s+)?(?:always|everywhere|(?:in|at) (?:every|all)|every|all)\b/i;
const SOFT = /\b(?:hardly|neither|nor)\b/i;

/** A denial counts where it stands before the comparison, in the same clause. */
function deniedIn(say: string): Signs['denies'] {
  const all = [...say.matchAll(new RegExp(DENIED.source, 'gi'))];
  const [first] = all;
  if (first === undefined) return null;
  if (all.length > 1 || SOFT.test(say)) return 'unclear';
  if (NOT_ALWAYS.test(say)) return 'always';
  const compared = [MORE, LESS, TIMES, SAME, MOST, REACHES].flatMap((sign) => sign.exec(say)?.index ?? []);
  const behind = compared.filter((at) => at >= first.index + first[0].length);
  if (behind.length === 0) return 'unclear';
  const between = say.slice(first.index, Math.min(...behind));
  return /[,;:]|\b(?:but|and|because|since|though)\b/i.test(between) ? 'unclear' : 'it';
}

const REACHES = /\breach(?:es)?\b/i;

/** “more than 700 kN” compares with a number, “never below 700 kN” bounds it: neither is against another engine. */
function withoutBounds(say: string): string {
  return numbersInProse(say).reduce((rest, { text }) => {
    const at = rest.indexOf(text);
    const bound = at < 0 ? null : BOUND.exec(rest.slice(0, at));
    return bound === null ? rest : rest.slice(0, bound.index) + rest.slice(at);
  }, say);
}

const BOUND = new RegExp(
  String.raw`(?:\b(?:never|not|no)\s+)?\b(?:(?:${UP}|${DOWN})\s+than|above|below|over|under)\s+$`,
  'i',
);

function comparedIn(say: string): Pick<Signs, 'direction' | 'superlative'> {
  const times = TIMES.test(say);
  const direction = times
    ? 'times'
    : SAME.test(say)
      ? 'same'
      : MORE.test(say)
        ? '>'
        : LESS.test(say)
          ? '<'
          : null;
  const superlative = MOST.test(say) ? (LEAST.test(say) ? '<' : '>') : null;
  return { direction, superlative };
}

export interface PlaceSaid {
  /** As in a test: `vacuum`, `0 km`, `12 km`. */ readonly written: string;
  readonly at: number;
}

const VACUUM =
  /\b(?:in|to|into) (?:a |the )?(?:vacuum|space|orbit)\b|\bout in space\b|\bvacuum (?:thrust|specific impulse)\b/gi;
const GROUND =
  /\b(?:at|from|on) (?:the )?(?:sea level|pad|launch pad|ground|lift-?off|launch|take-?off)\b|\bsea-level\b/gi;
const HEIGHT =
  /\b(?:at|above|by|up at) (?:about |around |an altitude of )?([\w.,-]+(?: [a-z]+)?) ?(?:km|kilomet(?:re|er)s?)\b(?! ?(?:\/|per\b))/gi;

/** Surroundings that the sentence names, in its order. */
export function placesSaid(say: string): readonly PlaceSaid[] {
  const plain = (pattern: RegExp, written: string): readonly PlaceSaid[] =>
    [...say.matchAll(pattern)].map(({ index }) => ({ written, at: index }));
  const heights = [...say.matchAll(HEIGHT)].flatMap((match): readonly PlaceSaid[] => {
    const height = numbersInProse(match[0])[0]?.value;
    return height === undefined ? [] : [{ written: `${height / 1000} km`, at: match.index }];
  });
  const all = [...plain(VACUUM, 'vacuum'), ...plain(GROUND, '0 km'), ...heights];
  return all.sort((a, b) => a.at - b.at);
}

/** Numbers of the sentence that name no place. */
export function valuesSaid(say: string): readonly NumberInProse[] {
  const rest = say.replace(HEIGHT, (whole) => '_'.repeat(whole.length));
  return numbersInProse(rest);
}

/** Engines that the sentence names, by id, by name or by the form of their nozzle, in its order. */
export function enginesSaid(say: string, engines: readonly EngineInput[]): readonly string[] {
  const low = say.toLowerCase();
  const places = engines.flatMap((engine) => {
    const at = firstOf(low, [engine.id.replace(/[-_]/g, ' '), engine.name, ...formsOf(engine, engines)]);
    return at < 0 ? [] : [{ id: engine.id, at }];
  });
  return places.sort((a, b) => a.at - b.at).map(({ id }) => id);
}

const KIND_WORDS: Readonly<Record<string, readonly string[]>> = {
  plug: ['plug', 'aerospike', 'spike'],
  bell: ['bell'],
  idealBell: ['bell'],
  cone: ['cone'],
  dualBell: ['dual bell'],
  adapting: ['adapting nozzle'],
};

/** Words for the form of its nozzle where no other engine has that form. */
function formsOf({ nozzle }: EngineInput, engines: readonly EngineInput[]): readonly string[] {
  const alone = engines.filter((one) => one.nozzle.kind === nozzle.kind).length === 1;
  return alone ? [...(KIND_WORDS[nozzle.kind] ?? []), nozzleForm(nozzle)] : [];
}

function firstOf(text: string, names: readonly string[]): number {
  const found = names.flatMap((name) => {
    const at = text.search(
      new RegExp(String.raw`(?<![\p{L}\p{N}])${escaped(name.toLowerCase())}(?![\p{L}\p{N}])`, 'u'),
    );
    return at < 0 ? [] : [at];
  });
  return found.length === 0 ? -1 : Math.min(...found);
}

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\/]/g, String.raw`\$&`);
