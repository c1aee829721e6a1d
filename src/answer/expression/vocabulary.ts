/** The words that have a meaning of their own in a test. */

/** Functions of numbers, with how many they take. */
export const FUNCTIONS: ReadonlyMap<string, { readonly least: number; readonly most: number }> = new Map([
  ['abs', { least: 1, most: 1 }],
  ['sqrt', { least: 1, most: 1 }],
  ['ln', { least: 1, most: 1 }],
  ['exp', { least: 1, most: 1 }],
  ['sin', { least: 1, most: 1 }],
  ['cos', { least: 1, most: 1 }],
  ['tan', { least: 1, most: 1 }],
  ['min', { least: 2, most: 50 }],
  ['max', { least: 2, most: 50 }],
]);

/** Values taken over a range. */
export const RANGE_FUNCTIONS: ReadonlyMap<
  string,
  { readonly kind: 'highest' | 'lowest'; readonly gives: 'value' | 'place' }
> = new Map([
  ['highest', { kind: 'highest', gives: 'value' }],
  ['lowest', { kind: 'lowest', gives: 'value' }],
  ['placeOfHighest', { kind: 'highest', gives: 'place' }],
  ['placeOfLowest', { kind: 'lowest', gives: 'place' }],
] as const);

/** Functions that people know by other names, and what to write. */
export const OTHER_FUNCTIONS: ReadonlyMap<string, string> = new Map([
  ['log', 'Write ln for the natural logarithm, or ln(x) / ln(10) for the one to base 10.'],
  ['log10', 'Write ln(x) / ln(10).'],
  ['log2', 'Write ln(x) / ln(2).'],
  ['pow', 'Write a ^ b.'],
  ['root', 'Write sqrt(x), or x ^ (1/3) for the cube root.'],
  ['absolute', 'Write abs(x).'],
  ['minimum', 'Write min(a, b).'],
  ['maximum', 'Write max(a, b).'],
]);

const KEYWORDS: ReadonlySet<string> = new Set([
  ...['and', 'or', 'not', 'is', 'are', 'stays', 'remains', 'for', 'from', 'to', 'at', 'within', 'of'],
  ...['more', 'less', 'than', 'between', 'about', 'roughly', 'above', 'below', 'there', 'every', 'some'],
  ...['rises', 'falls', 'grows', 'drops', 'increases', 'decreases', 'does', 'never', 'differs', 'exceeds'],
  ...['times', 'twice', 'half', 'behind', 'ahead', 'by', 'vacuum', 'has', 'with', 'where', 'as'],
]);

/** Words that can name nothing. */
export const isKeyword = (word: string): boolean => KEYWORDS.has(word);

/** True where a variable may not be called so. */
export const isTaken = (word: string): boolean =>
  KEYWORDS.has(word) ||
  FUNCTIONS.has(word) ||
  RANGE_FUNCTIONS.has(word) ||
  OTHER_FUNCTIONS.has(word) ||
  ['pad', 'sea', 'lip', 'throat', 'injector', 'throttle', 'areaRatio'].includes(word);
