/** An expression ready to be worked out: closures over what was told, with what its dimension check found. */

import type { Absent, AskedValues, Exponents, NamedNumber, RangePlace } from './model.ts';
import type { Span } from './tree.ts';

/** NaN stands for “has no value” inside this folder only; {@link told} turns it into null at the door. */
export type Work = (values: AskedValues) => number;

export interface Built extends Span {
  readonly dimension: Exponents;
  /** A plain 0 fits every dimension. */ readonly anyDimension: boolean;
  /** Of temperatures: written on a scale of degrees, or the difference of two; else plain. */
  readonly scale: 'plain' | 'degrees' | 'difference';
  /** SI value where nothing is asked; null where something is. */ readonly constant: number | null;
  readonly value: Work;
  /** Size of the terms it is made of: what a difference is to be held against. */ readonly size: Work;
  readonly quantity: string | null;
  readonly ask: number | null;
  readonly parts: readonly Built[];
  /** What to say where the arithmetic has no value though all parts have one. */ readonly fails: string;
}

export const told = (value: number): number | null => (Number.isFinite(value) ? value : null);

/** The value of a part, for what runs often: a number by itself is read without a detour. */
export function readerOf({ ask, constant, value }: Pick<Built, 'ask' | 'constant' | 'value'>): Work {
  return (values) => (ask === null ? (constant ?? value(values)) : (values[ask] ?? Number.NaN));
}

/** @param value of it, known already: a number by itself is of its own size */
export const sizeOf = (built: Built, values: AskedValues, value: number): number =>
  built.ask === null ? built.size(values) : Math.abs(value);

/** The innermost part that has no value; null where the whole has one. */
export function absentIn(built: Built, values: AskedValues, text: string): Absent | null {
  if (Number.isFinite(built.value(values))) return null;
  for (const part of built.parts) {
    const inside = absentIn(part, values, text);
    if (inside !== null) return inside;
  }
  const expression = text.slice(built.start, built.end);
  const why = built.ask === null ? built.fails : 'This number has no value there.';
  return { ask: built.ask, expression, why };
}

/** A built expression as a number of the text. */
export function namedNumber(built: Built, text: string): NamedNumber {
  const read = readerOf(built);
  return {
    expression: text.slice(built.start, built.end),
    quantity: built.quantity,
    ask: built.ask,
    dimension: built.dimension,
    evaluate: (values) => told(read(values)),
  };
}

/** What the variables of the ranges around stand for. */
export type Bound = ReadonlyMap<string, { readonly place: RangePlace; readonly dimension: Exponents }>;

const nothing: readonly Built[] = [];

export function constantOf(value: number, rest: Pick<Built, 'dimension'> & Span): Built {
  return {
    anyDimension: false,
    scale: 'plain',
    ...rest,
    constant: value,
    value: () => value,
    size: () => Math.abs(value),
    quantity: null,
    ask: null,
    parts: nothing,
    fails: '',
  };
}

/** The ask of a quantity, ready to be read. */
export function askedOf(index: number, rest: Pick<Built, 'dimension' | 'quantity'> & Span): Built {
  const value: Work = (values) => values[index] ?? Number.NaN;
  return {
    anyDimension: false,
    scale: 'plain',
    ...rest,
    constant: null,
    value,
    size: (values) => Math.abs(value(values)),
    ask: index,
    parts: nothing,
    fails: '',
  };
}
