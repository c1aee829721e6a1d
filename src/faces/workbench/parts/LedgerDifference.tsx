import { altitude } from '../state/altitude.ts';
import type { ShownEngine } from '../state/pair.ts';
import { differenceAt } from '../state/spans.ts';
import type { LedgerRow } from './ledgerRows.ts';
import { aboutOf, conditionHere, placeHere } from './ledgerWords.ts';
import { BEFORE } from './standingWords.ts';
import { TracedNumber } from './TracedNumber.tsx';

interface LedgerDifferenceProps {
  readonly row: LedgerRow;
  readonly engines: readonly ShownEngine[];
  /** One an engine. */ readonly values: readonly (number | null)[];
}

/** What parts the two, or the air outside; pressed, what it is worked out from. */
export function LedgerDifference({ row, engines, values }: LedgerDifferenceProps) {
  const shown = differenceText(row, engines, values);
  const [first, second] = engines;
  const place = row.moves ? placeHere() : '';
  if (row.air) {
    return (
      <TracedNumber
        quantity="air.pressure"
        engine={null}
        shown={shown}
        condition={conditionHere()}
        label="Air outside"
        expression={`air.pressure${place}`}
      />
    );
  }
  if (first === undefined || second === undefined || values.some((value) => value === null))
    return <>{shown}</>;
  return (
    <TracedNumber
      quantity={row.quantity}
      engine={second.id}
      shown={shown}
      condition={row.moves ? conditionHere() : ''}
      label={`Difference, ${row.label.toLowerCase()}`}
      expression={`${second.id}.${row.quantity}${place} - ${first.id}.${row.quantity}${place}`}
    />
  );
}

function differenceText(
  row: LedgerRow,
  engines: readonly ShownEngine[],
  [base, other]: readonly (number | null)[],
): string {
  if (row.air) return row.difference(0, 0);
  if (engines.length < 2) return '';
  if (engines.some(({ result }) => !result.ok && result.isAwaited)) return '';
  const about = [...new Set(engines.map(aboutOf))].filter((one) => one !== '');
  // A first estimate and a number of before part nothing that there is.
  if (about.length > 1) return 'follows …';
  if (base === null || other === null || base === undefined || other === undefined) return 'no comparison';
  const words = row.difference(base, other);
  const [mark = ''] = about;
  if (isOpen(row, base, other)) return `${mark === BEFORE ? mark : ''}too close to call`;
  if (words === 'the same') return `${mark === BEFORE ? mark : ''}${words}`;
  return `${mark}${engines[1]?.input.name ?? ''} ${words}`;
}

/** Whether the difference may be of either sign, by all that is not known; equal numbers are equal. */
function isOpen({ quantity, moves }: LedgerRow, base: number, other: number): boolean {
  if (base === other) return false;
  const span = differenceAt(quantity, moves ? altitude.value : null);
  return span !== null && span.low < 0 && span.high > 0;
}
