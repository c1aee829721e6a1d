/** The words that compare two numbers, and how far “about” and “roughly” reach. */

/** `about` allows this share, `roughly` this one. */
export const ABOUT = 0.05;
export const ROUGHLY = 0.2;

export type Order = '<' | '<=' | '>' | '>=';

export const MORE = [
  'more',
  'greater',
  'higher',
  'larger',
  'bigger',
  'longer',
  'wider',
  'hotter',
  'faster',
  'heavier',
];
export const LESS = [
  'less',
  'lower',
  'smaller',
  'shorter',
  'narrower',
  'cooler',
  'colder',
  'slower',
  'lighter',
  'fewer',
];

export const ORDERS: readonly (readonly [string, Order])[] = [
  ...MORE.map((word) => [`${word} than`, '>'] as const),
  ...LESS.map((word) => [`${word} than`, '<'] as const),
  ['above', '>'],
  ['over', '>'],
  ['below', '<'],
  ['under', '<'],
  ['at least', '>='],
  ['at most', '<='],
  ['no more than', '<='],
  ['no less than', '>='],
];
