/** What is gathered of the brackets behind a quantity, and the fixed numbers that may stand in them. */

import type { AskedAmbient, AskedStation, ChangedInput } from '../asked/model.ts';
import type { Built } from './built.ts';
import { inWords, isNumber } from './dimensions.ts';
import type { Expression, Span } from './tree.ts';
import { refuse } from './trouble.ts';

export interface Draft {
  ambient: AskedAmbient | null;
  throttle: number | null;
  station: AskedStation | null;
  /** Since lift-off [s]. */ time: number | null;
  part: string | null;
  readonly inputs: ChangedInput[];
}

export type Inside = (of: Expression) => Built;

const WORDS = {
  ambient: 'outside',
  station: 'place on the wall',
  time: 'time',
  part: 'part',
  throttle: 'throttle',
} as const;

export function once<K extends 'ambient' | 'station' | 'time' | 'part' | 'throttle'>(
  draft: Draft,
  key: K,
  value: NonNullable<Draft[K]>,
  at: Span,
): void {
  if (draft[key] !== null) {
    const what = WORDS[key];
    refuse(
      at,
      'place-twice',
      `A second ${what} stands in the brackets.`,
      'Keep one. A point marks decimals: 0.5 bar, not 0,5 bar.',
    );
  }
  draft[key] = value;
}

export function stationAt(draft: Draft, value: Expression, at: Span, inside: Inside): void {
  const areaRatio = numberOf(value, inside, 'an area ratio', isNumber);
  once(draft, 'station', { kind: 'areaRatio', areaRatio }, at);
}

/** A fixed number of the right kind: what stands in the brackets may not be asked for itself. */
export function numberOf(
  node: Expression,
  inside: Inside,
  kind: string,
  fits: (dimension: Built['dimension']) => boolean,
): number {
  const built = fixed(node, inside);
  if (fits(built.dimension)) return built.constant;
  return refuse(
    node,
    'place-unlike',
    `Here ${kind} is expected, but this is ${inWords(built.dimension)}.`,
    `Give ${kind}.`,
  );
}

export type Fixed = Built & { readonly constant: number };

export function fixed(node: Expression, inside: Inside): Fixed {
  const built = inside(node);
  const { constant } = built;
  if (constant !== null) return { ...built, constant };
  return refuse(
    node,
    'place-not-fixed',
    'What stands in the brackets is itself computed; only fixed values can stand there.',
    'Write a value such as 10 km, or let a name move: for every z from 0 km to vacuum: ….',
  );
}
