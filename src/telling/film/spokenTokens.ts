/** A text as a row of spoken tokens: words, and numbers with their units, whether they stand there in figures or in words. */

import { saidWords, writtenTokens } from '../time/saidWords.ts';
import { type NumberSaid, numberSaid } from './numberSaid.ts';

export interface SpokenToken {
  /** As written. */ readonly text: string;
  /** Lower case, spelled one way; `#` for a number. */ readonly key: string;
  readonly number: NumberSaid | null;
  /** Spoken words. */ readonly words: number;
  /** Signs of the text, first and behind the last. */ readonly from: number;
  readonly to: number;
}

export function spokenTokens(text: string): readonly SpokenToken[] {
  const written = writtenTokens(text);
  const words = written.flatMap(({ said }, at) =>
    said.flatMap((word) => plainWord(word).map((key) => ({ key, at }))),
  );
  const keys = words.map(({ key }) => key);
  const tokens: SpokenToken[] = [];
  for (let i = 0; i < words.length; ) {
    const number = numberSaid(keys, i);
    const length = number?.length ?? 1;
    const [first, last] = [written[words[i]!.at]!, written[words[i + length - 1]!.at]!];
    const { from } = first;
    const { to } = last;
    tokens.push({
      text: text.slice(from, to),
      key: number === null ? keys[i]! : '#',
      number,
      words: length,
      from,
      to,
    });
    i += length;
  }
  return tokens;
}

/** One spelling a word. A ton is none of a tonne: in America it has 907 kg, so saying it is a slip. */
const SPELLINGS: ReadonlyMap<string, string> = new Map(
  (
    'meter metre meters metres kilometer kilometre kilometers kilometres centimeter centimetre centimeters centimetres ' +
    'millimeter millimetre millimeters millimetres liter litre liters litres ' +
    'center centre color colour vapor vapour fiber fibre aluminum aluminium'
  )
    .split(' ')
    .flatMap((word, i, all) => (i % 2 === 0 ? [[word, all[i + 1]!] as const] : [])),
);

function plainWord(word: string): readonly string[] {
  const low = word.toLowerCase().replace(/’/g, "'");
  if (low === 'percent') return ['per', 'cent'];
  // A unit's symbol that stands behind a number in words.
  if (low.includes('/')) return saidWords(low);
  return [SPELLINGS.get(low) ?? low];
}
