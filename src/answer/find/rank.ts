/** What fits the words typed, best first. */

import { fitOf, isFiller, wordsOf, wordsWanted } from './words.ts';

export interface Findable {
  /** What it is called. */ readonly label: string;
  /** Other words for it: aliases, its name, whose it is. */ readonly also?: string;
  /** What is said of it at length; a word there counts little. */ readonly about?: string;
  /** Of things that fit alike the one that weighs more comes first; 0 unless said. */ readonly weight?: number;
}

export interface Ranked<Item> {
  readonly item: Item;
  /** Above 1 for a perfect fit of the label alone. */ readonly score: number;
}

/** What a word is worth by where it stands. */
const IN_LABEL = 1;
const IN_ALSO = 0.95;
const IN_ABOUT = 0.3;
/** Less of the words typed than this share, by weight, and it is not told. */
const LEAST_COVERED = 0.6;
/** Off for each word of the label that was not typed. */
const TOO_MANY = 0.03;
const WHOLE_LABEL = 0.2;

interface Read<Item> {
  readonly item: Item;
  readonly label: readonly string[];
  readonly also: readonly string[];
  readonly about: readonly string[];
}

/** Reading them takes longer than looking: once for many looks. */
export function indexOf<Item extends Findable>(items: readonly Item[]): readonly Read<Item>[] {
  return items.map((item) => ({
    item,
    label: wordsOf(item.label),
    also: wordsOf(item.also ?? ''),
    about: wordsOf(item.about ?? ''),
  }));
}

/** @returns nothing where nothing was typed */
export function rank<Item extends Findable>(
  typed: string,
  index: readonly Read<Item>[],
): readonly Ranked<Item>[] {
  const wanted = wordsWanted(typed);
  if (wanted.length === 0) return [];
  const weights = wanted.map((word) => rarity(word, index));
  const whole = weights.reduce((sum, weight) => sum + weight, 0);
  return index
    .flatMap((read): readonly Ranked<Item>[] => {
      let covered = 0;
      let sum = 0;
      wanted.forEach((word, i) => {
        const fit = bestOf(word, read);
        if (fit > 0) covered += weights[i] ?? 0;
        sum += fit * (weights[i] ?? 0);
      });
      if (covered / whole < LEAST_COVERED) return [];
      return [{ item: read.item, score: (sum / whole) * (covered / whole) + closeness(wanted, read) }];
    })
    .sort((a, b) => b.score - a.score);
}

function bestOf(word: string, { label, also, about }: Read<unknown>): number {
  const best = (words: readonly string[]): number => Math.max(0, ...words.map((one) => fitOf(word, one)));
  return Math.max(IN_LABEL * best(label), IN_ALSO * best(also), IN_ABOUT * best(about));
}

/** For a label that says no more than was typed. */
function closeness<Item extends Findable>(wanted: readonly string[], { item, label }: Read<Item>): number {
  const own = label.filter((word) => !isFiller(word) && !wanted.some((one) => fitOf(one, word) > 0)).length;
  return (own === 0 ? WHOLE_LABEL : -TOO_MANY * Math.min(own, 8)) + (item.weight ?? 0);
}

/** A word that many share says little. */
function rarity(word: string, index: readonly Read<unknown>[]): number {
  const having = index.filter(({ label, also }) => label.includes(word) || also.includes(word)).length;
  return 1 / (1 + Math.log1p(having));
}
