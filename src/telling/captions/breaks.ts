/**
 * Where words may part: behind punctuation best, then before conjunctions and prepositions; never between an article, an
 * auxiliary, a negation or a preposition and what follows it (University of Tennessee Libraries, Timed Text Style Guide, 5.3).
 */

const words = (text: string): ReadonlySet<string> => new Set(text.split(' '));

const CONJUNCTIONS = words(
  'and but or nor so yet because since although though while when where if unless until whereas that which who than as whether',
);
const PREPOSITIONS = words(
  'in on at by for from to with without into onto of over under above below between through during before after against across along around behind near within',
);
const HOLDS_ON = words(
  'a an the this that these those my your his her its our their is are was were be been am has have had do does did will would can could shall should may might must not no very too so more most less least about nearly every each any some i you he she we they it to of',
);

/** What it costs to part two words, 0 (a sentence ends) to 10. */
export function breakCost(before: string, after: string): number {
  if (/[.!?…][”’"')\]]*$/.test(before)) return 0;
  if (/[;:][”’"')\]]*$/.test(before) || /^[–—]/.test(after) || /[–—]$/.test(before)) return 1;
  if (/,[”’"')\]]*$/.test(before)) return 1.5;
  // A bracket belongs to what it stands behind.
  if (/^[([]/.test(after)) return 7;
  const [left, right] = [bare(before), bare(after)];
  // A number and its unit in words.
  if (HOLDS_ON.has(left) || /\d$/.test(before)) return 10;
  if (PREPOSITIONS.has(left)) return 9;
  if (CONJUNCTIONS.has(left)) return 8;
  if (CONJUNCTIONS.has(right)) return 2.5;
  if (PREPOSITIONS.has(right)) return 3.5;
  return 6;
}

/** Parting so is against the rules where another place is free. */
export const BAD_BREAK = 8;

const bare = (word: string): string => word.toLowerCase().replace(/[^\p{L}’'-]/gu, '');
