/** Numbers as they are told to a script, without any engine. */

import type { ToldNumber, ToldNumbers } from '../../../src/answer/numbers/index.ts';
import type { NumberPiece } from '../../../src/study/script/model.ts';

export const FORCE = [1, 1, -2, 0, 0, 0] as const;
export const NUMBER = [0, 0, 0, 0, 0, 0] as const;
export const TIME = [0, 0, 1, 0, 0, 0] as const;
export const TEMPERATURE = [0, 0, 0, 1, 0, 0] as const;
export const PRESSURE = [1, -1, -2, 0, 0, 0] as const;

export const told = (
  expression: string,
  value: number,
  [low, high]: readonly [number, number] = [value, value],
  rest: Partial<ToldNumber> = {},
): ToldNumber => ({
  expression,
  value,
  low,
  high,
  quantity: null,
  madeOf: [],
  dimension: FORCE,
  isDifference: false,
  problem: null,
  ...rest,
});

export const numbers = (...all: readonly ToldNumber[]): ToldNumbers =>
  new Map(all.map((one) => [one.expression, one]));

export const piece = (expression: string, rest: Partial<NumberPiece> = {}): NumberPiece => ({
  kind: 'number',
  expression,
  about: false,
  spoken: false,
  from: 0,
  to: 1,
  ...rest,
});
