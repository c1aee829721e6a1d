/** The inputs of the engines shown, line by line side by side: which differ, and which are the same. */

import { computed } from '@preact/signals';
import { type InputRow, inputRows, lineKeys } from './inputRows.ts';
import { type ShownEngine, shownInputs } from './pair.ts';

export interface InputCell {
  readonly engine: ShownEngine;
  /** Undefined where the engine has no such input. */ readonly row: InputRow | undefined;
}

export interface InputLine {
  readonly key: string;
  readonly label: string;
  /** Name in the catalogue, where it has one. */ readonly quantity: string | null;
  /** One an engine. */ readonly cells: readonly InputCell[];
  /** `one`: only one of two engines has it, or only one engine is shown. */
  readonly stands: 'differs' | 'same' | 'one';
}

export const inputLines = computed((): readonly InputLine[] => {
  const engines = shownInputs.value;
  const columns = engines.map(({ input }) => inputRows(input));
  return lineKeys(columns).flatMap((key): InputLine[] => {
    const cells = engines.map((engine, i) => ({ engine, row: columns[i]?.find((row) => row.key === key) }));
    const named = cells.find(({ row }) => row !== undefined)?.row;
    if (named === undefined) return [];
    return [{ key, label: named.label, quantity: named.quantity, cells, stands: standingOf(cells) }];
  });
});

function standingOf(cells: readonly InputCell[]): InputLine['stands'] {
  const [first, second] = cells.map(({ row }) => row);
  if (first === undefined || second === undefined) return 'one';
  return isSame(first, second) ? 'same' : 'differs';
}

/** Rounding of a unit on the way in is no difference. */
const EQUAL = 1e-9;

/** Of the same value and the same ±, in whatever unit; or the same word. */
export function isSame(one: InputRow, other: InputRow): boolean {
  const [a, b] = [one.stated, other.stated];
  if (a === undefined || b === undefined) return one.text === other.text;
  return isNear(a.value, b.value) && isNear(a.plusMinus ?? 0, b.plusMinus ?? 0);
}

const isNear = (a: number, b: number): boolean =>
  Math.abs(a - b) <= EQUAL * Math.max(Math.abs(a), Math.abs(b));
