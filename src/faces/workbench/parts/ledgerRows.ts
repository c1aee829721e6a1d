/** The rows of the ledger: what each says of an engine at an altitude. */

import { differenceInWords } from '../../../answer/compare/quantities.ts';
import type { ConditionRow, EngineAnswer } from '../../../answer/model.ts';
import { formatLength, formatPressure, formatSpoken } from '../../../telling/numbers/formatNumber.ts';
import { altitude } from '../state/altitude.ts';
import type { ShownEngine } from '../state/pair.ts';
import { airPressure, rowOfLadder } from '../state/shown.ts';
import { ownSpanAt } from '../state/spans.ts';
import type { Span } from '../workshop/deskMessages.ts';

/** One row of the ledger: what it says of an engine at an altitude. */
export interface LedgerRow {
  readonly label: string;
  readonly quantity: string;
  /** Does the value move with altitude? */ readonly moves: boolean;
  readonly value: (row: ConditionRow, engine: EngineAnswer) => number | null;
  readonly text: (value: number) => string;
  /** An end of its span, to few digits. */ readonly end: (value: number) => string;
  readonly difference: (base: number, other: number) => string;
  /** A stroke on the axis for the air outside. */ readonly air?: true;
}

export const ledgerRows: readonly LedgerRow[] = [
  {
    label: 'Specific impulse',
    quantity: 'specificImpulse',
    moves: true,
    value: (row) => row.specificImpulse,
    text: (value) => `${value.toFixed(1)} s`,
    end: (value) => formatSpoken('specificImpulse', value),
    difference: (base, other) => differenceInWords('specificImpulse', base, other),
  },
  {
    label: 'Thrust',
    quantity: 'thrust',
    moves: true,
    value: (row) => row.thrust,
    text: forceText,
    end: (value) => formatSpoken('thrust', value),
    difference: (base, other) => differenceInWords('thrust', base, other),
  },
  {
    label: 'Gas leaves at',
    quantity: 'exitPressure',
    moves: true,
    value: (row) => row.exitPressure,
    text: (value) => formatPressure(value),
    end: (value) => formatPressure(value),
    difference: () =>
      airPressure.value === 0 ? 'no air here' : `air here ${formatPressure(airPressure.value)}`,
    air: true,
  },
];

export const widestRow: LedgerRow = {
  label: 'Across, at the lip',
  quantity: 'exit.diameter',
  moves: false,
  value: (_, engine) => engine.exit.diameter,
  text: (value) => formatLength(value),
  end: (value) => formatLength(value),
  difference: (base, other) => differenceInWords('exit.diameter', base, other),
};

/** Newtons with digits that stay in place while the value changes. */
function forceText(newtons: number): string {
  const kilonewtons = newtons * 1e-3;
  if (Math.abs(kilonewtons) < 1) return `${newtons.toFixed(0)} N`;
  return `${kilonewtons.toFixed(Math.abs(kilonewtons) < 100 ? 1 : 0)} kN`.replace('-', '−');
}

export function numberOf(row: LedgerRow, { result }: ShownEngine): number | null {
  if (!result.ok) return null;
  return row.value(rowOfLadder(result.ladder, altitude.value), result.answer);
}

export function spanOf({ quantity, moves }: LedgerRow, { side }: ShownEngine): Span | null {
  const span = ownSpanAt(side === 'first' ? 0 : 1, quantity, moves ? altitude.value : null);
  return span === null || span.low === span.high ? null : span;
}
