/**
 * A written text word by word as it is said. Figures, units and formulas count by the words they are spoken with;
 * parts joined by a hyphen count one each; letters that nobody reads as a word are spelled.
 */

import { isDecade } from '../../answer/sentences/numbersInWords.ts';
import { decadeSaid, digitsSaid, mayBeYear } from './digitsSaid.ts';
import { unitSaid } from './unitSaid.ts';

/** What stays together on a caption: a word, or a number with its unit. */
export interface WrittenToken {
  readonly written: string;
  /** Spoken words; none for a dash that stands alone. */ readonly said: readonly string[];
  /** Signs of the text, first and behind the last. */ readonly from: number;
  readonly to: number;
}

export function saidWords(text: string): readonly string[] {
  return writtenTokens(text).flatMap(({ said }) => said);
}

const HEAD = /^([^\p{L}\p{N}]*)(\d+(?:,\d{3})*(?:\.\d+)?)(.*)$/su;
const GROUP = /^(\d{3})(?!\d)(\.\d+)?(.*)$/s;
/** Closing punctuation behind a word or a unit. */
const TAIL = /[.,;:!?…)\]}”’"']*$/;
/** Words that are units only by accident. */
const NO_UNITS: ReadonlySet<string> = new Set(['in', 'a']);

export function writtenTokens(text: string): readonly WrittenToken[] {
  const found = [...text.matchAll(/\S+/g)];
  const chunks = found.map(([chunk]) => chunk);
  const placed = (first: number, count: number, said: readonly string[]): WrittenToken => {
    const last = found[first + count - 1]!;
    const [from, to] = [found[first]!.index, last.index + last[0].length];
    return { written: chunks.slice(first, first + count).join('\u00a0'), said, from, to };
  };
  const tokens: WrittenToken[] = [];
  for (let i = 0; i < chunks.length; i++) {
    const number = numberAt(chunks, i);
    if (number === null) tokens.push(placed(i, 1, chunkSaid(chunks[i]!)));
    else {
      tokens.push(placed(i, number.chunks, number.said));
      i += number.chunks - 1;
    }
  }
  return tokens;
}

/** A number in figures that begins here, with its groups of digits and its unit. */
function numberAt(
  chunks: readonly string[],
  at: number,
): { readonly chunks: number; readonly said: readonly string[] } | null {
  const head = HEAD.exec(chunks[at]!);
  if (head === null) return null;
  const before = head[1]!;
  let digits = head[2]!;
  let rest = head[3]!;
  let taken = 1;
  while (rest === '' && !digits.includes('.') && !digits.includes(',') && digits.length <= 3 * taken) {
    const group = GROUP.exec(chunks[at + taken] ?? '');
    if (group === null) break;
    digits += group[1]! + (group[2] ?? '');
    rest = group[3]!;
    taken += 1;
  }
  const glued = withoutTail(rest);
  if (taken === 1 && glued === 's' && isDecade(digits, rest))
    return { chunks: 1, said: [...signsSaid(before, true), ...plainWords(decadeSaid(digits))] };
  let unit = glued === '' ? null : unitSaid(glued);
  if (unit === null && rest === '') {
    const next = withoutTail(chunks[at + taken] ?? '');
    unit = NO_UNITS.has(next) ? null : unitSaid(next);
    if (unit !== null) taken += 1;
  } else if (unit === null && glued !== '') return null;
  const isYear = taken === 1 && unit === null && mayBeYear(digits);
  const number = digitsSaid(digits, isYear);
  const unitWords = unit === null ? '' : Number(digits) === 1 ? unit.one : unit.many;
  return { chunks: taken, said: [...signsSaid(before, true), ...plainWords(`${number} ${unitWords}`)] };
}

const withoutTail = (chunk: string): string => chunk.replace(TAIL, '');
const plainWords = (words: string): readonly string[] => words.split(/[\s-]+/).filter((word) => word !== '');

const PART = /\d+(?:,\d{3})*(?:\.\d+)?|\p{L}[\p{L}\p{M}'’]*|[²³¹⁰⁴-⁹⁻]+|[^\p{L}\p{N}\s]/gu;
const SUPERSCRIPTS = '⁰¹²³⁴⁵⁶⁷⁸⁹';

/** Anything else: words, words with hyphens, formulas. */
function chunkSaid(chunk: string): readonly string[] {
  const bare = withoutTail(chunk);
  const unit = bare.includes('/') ? unitSaid(bare) : null;
  if (unit !== null) return plainWords(unit.many);
  const parts = chunk.match(PART) ?? [];
  const hasDigits = /\d/.test(chunk);
  return parts.flatMap((part, i): readonly string[] => {
    const [before, after] = [parts[i - 1], parts[i + 1]];
    if (/^\d/.test(part)) return plainWords(digitsSaid(part, false));
    if (/^\p{L}/u.test(part)) return lettersSaid(part, hasDigits && before !== '-');
    if (/^[⁰-⁹²³¹⁻]/u.test(part)) return powerSaid(part);
    return between(part, before, after);
  });
}

const GREEK: ReadonlyMap<string, string> = new Map(
  (
    'α alpha β beta γ gamma δ delta ε epsilon η eta θ theta κ kappa λ lambda μ mu ν nu π pi ρ rho σ sigma τ tau φ phi ψ psi ω omega ' +
    'Γ gamma Δ delta Θ theta Λ lambda Π pi Σ sigma Φ phi Ψ psi Ω omega'
  )
    .split(' ')
    .flatMap((sign, i, all) => (i % 2 === 0 ? [[sign, all[i + 1]!] as const] : [])),
);

function lettersSaid(letters: string, beside: boolean): readonly string[] {
  const first = GREEK.get(letters[0]!);
  if (first !== undefined && letters.length <= 2) return [first, ...letters.slice(1)];
  const isSpelled =
    /^\p{Lu}{2,5}$/u.test(letters) && (!/[AEIOUY]/.test(letters) || (beside && letters.length < 3));
  return isSpelled ? [...letters] : [letters];
}

function powerSaid(signs: string): readonly string[] {
  if (signs === '²') return ['squared'];
  if (signs === '³') return ['cubed'];
  const digits = [...signs].map((sign) => (sign === '⁻' ? '-' : String(SUPERSCRIPTS.indexOf(sign)))).join('');
  const number = digits.replace(/-/g, '');
  return [
    ...['to', 'the'],
    ...(digits.startsWith('-') ? ['minus'] : []),
    ...(number === '' ? [] : plainWords(digitsSaid(number, false))),
  ];
}

const SIGNS: Readonly<Record<string, string>> = {
  '+': 'plus',
  '−': 'minus',
  '±': 'plus or minus',
  '=': 'equals',
  '≠': 'is not',
  '×': 'times',
  '·': 'times',
  '*': 'times',
  '÷': 'over',
  '√': 'root of',
  '≈': 'about',
  '~': 'about',
  '<': 'less than',
  '>': 'more than',
  '≤': 'at most',
  '≥': 'at least',
  '^': 'to the',
  '%': 'per cent',
  '‰': 'per thousand',
  '°': 'degrees',
  '&': 'and',
};

const signsSaid = (signs: string, atNumber: boolean): readonly string[] =>
  [...signs].flatMap((sign) => (sign === '-' ? (atNumber ? ['minus'] : []) : plainWords(SIGNS[sign] ?? '')));

const isValue = (part: string | undefined): boolean =>
  part !== undefined && (/^\d/.test(part) || /^\p{L}'?$/u.test(part));

/** A sign by what stands beside it: `3:1` is three to one, `p/q` p over q. */
function between(sign: string, before: string | undefined, after: string | undefined): readonly string[] {
  const inside = isValue(before) && isValue(after);
  if (sign === ':' || sign === '–') return inside && /^\d/.test(before!) ? ['to'] : [];
  if (sign === '/') return inside ? ['over'] : [];
  if (sign === '-') return before === undefined && /^\d/.test(after ?? '') ? ['minus'] : [];
  if ('*~<>^·'.includes(sign) && before === undefined && after === undefined && sign !== '<' && sign !== '>')
    return [];
  return plainWords(SIGNS[sign] ?? '');
}
