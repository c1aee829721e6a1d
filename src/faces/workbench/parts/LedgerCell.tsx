import type { ShownEngine } from '../state/pair.ts';
import { type LedgerRow, spanOf } from './ledgerRows.ts';
import { aboutOf, classOf, conditionHere, noNumberWords, placeHere, standingOf } from './ledgerWords.ts';
import { TracedNumber } from './TracedNumber.tsx';

interface LedgerCellProps {
  readonly row: LedgerRow;
  readonly engine: ShownEngine;
  readonly value: number | null;
}

/** A number of one engine, with its span. */
export function LedgerCell({ row, engine, value }: LedgerCellProps) {
  if (value === null) {
    return <td class={`value ${engine.side} absent`}>{noNumberWords(engine)}</td>;
  }
  const shown = `${aboutOf(engine)}${row.text(value)}`;
  return (
    <td class={classOf(engine)}>
      <TracedNumber
        quantity={row.quantity}
        engine={engine.id}
        shown={shown}
        condition={`${row.moves ? conditionHere() : ''}${standingOf(engine)}`.replace(/^, /, '')}
        label={`${engine.input.name}, ${row.label.toLowerCase()}`}
        expression={`${engine.id}.${row.quantity}${row.moves ? placeHere() : ''}`}
      />
      {engine.standing === undefined && <SpanWords row={row} engine={engine} />}
    </td>
  );
}

/** `291 to 300 s`: between these lie 95 % of what is not known. */
function SpanWords({ row, engine }: { readonly row: LedgerRow; readonly engine: ShownEngine }) {
  const span = spanOf(row, engine);
  if (span === null) return null;
  const [low, high] = [row.end(span.low), row.end(span.high)];
  if (low === high) return null;
  const unit = high.slice(high.lastIndexOf('\u00a0'));
  const plain = low.endsWith(unit) ? low.slice(0, -unit.length) : low;
  return (
    <span class="span-words" title="95 % of what is not known lies between these">
      {plain} to {high}
    </span>
  );
}
