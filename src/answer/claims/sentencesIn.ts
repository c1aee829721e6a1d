/** Sentences out of passages: captions break them anywhere. English punctuation. */

import type { Passage } from './model.ts';

/** Where there is no punctuation, as in captions written by a machine, a passage that ends behind so many signs ends a sentence. */
const LONGEST = 320;
/** Abbreviations and initials; a single letter behind a number or in a unit (`340 s.`, `4.3 km/s.`) is none. */
const NO_END = /(?:\b(?:approx|e\.g|i\.e|vs|cf|no|dr|mr|mrs|ms|fig|st)|(?<!\d\s?|[/·⋅])\b[A-Z])\.$/i;

export function sentencesIn(passages: readonly Passage[]): readonly Passage[] {
  const found: Passage[] = [];
  let open: Passage | null = null;
  const close = (): void => {
    if (open !== null && open.text !== '') found.push(open);
    open = null;
  };
  for (const { text, ...place } of passages) {
    if (text === '') {
      close();
      continue;
    }
    for (const part of partsOf(text)) {
      const before: Passage | null = open;
      open = before === null ? { text: part, ...place } : joined(before, part);
      if (isEnd(part) || open.text.length > LONGEST) close();
    }
  }
  close();
  return found;
}

const joined = (one: Passage, part: string): Passage => ({ ...one, text: `${one.text} ${part}` });

const partsOf = (text: string): readonly string[] => {
  const parts: string[] = [];
  for (const word of text.split(/\s+/)) {
    const last = parts.at(-1);
    if (last === undefined || isEnd(last)) parts.push(word);
    else parts[parts.length - 1] = `${last} ${word}`;
  }
  return parts.filter((part) => part !== '');
};

const isEnd = (part: string): boolean => /[.!?…]["”’')\]]*$/.test(part) && !NO_END.test(part);
