import { enginesOnScreen, publishedShown, type ShownEngine } from '../state/pair.ts';
import { altitudeText } from '../state/shown.ts';
import { EngineMark } from './EngineMark.tsx';
import { LedgerAxis } from './LedgerAxis.tsx';
import { LedgerCell } from './LedgerCell.tsx';
import { LedgerDifference } from './LedgerDifference.tsx';
import { LedgerGas } from './LedgerGas.tsx';
import { type LedgerRow, ledgerRows, numberOf, widestRow } from './ledgerRows.ts';
import { PublishedCell } from './Published.tsx';

/** The numbers at the altitude on the scale, side by side, with the difference in words. */
export function Ledger() {
  const engines = enginesOnScreen.value;
  const [first, second] = engines;
  return (
    <table class="ledger">
      <caption class="unseen">The engines at {altitudeText}</caption>
      <colgroup>
        <col class="labels" />
        <col class="first" />
        <col class="axes" />
        <col class="second" />
        <col class="differences" />
      </colgroup>
      <thead>
        <tr>
          <th scope="col">
            <span class="unseen">Quantity</span>
          </th>
          {first !== undefined && <ColumnHead engine={first} />}
          <td class="shared-axis" />
          {second === undefined ? <td /> : <ColumnHead engine={second} />}
          <th scope="col">
            <span class="unseen">{second === undefined ? 'Remark' : 'Difference'}</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {ledgerRows.map((row) => (
          <Row key={row.label} row={row} engines={engines} />
        ))}
        <LedgerGas engines={engines} />
        <Row row={widestRow} engines={engines} />
        {publishedShown.value && <PublishedRow engines={engines} />}
      </tbody>
    </table>
  );
}

/** Seen only where the columns do not stand under their engines. */
function ColumnHead({ engine }: { readonly engine: ShownEngine }) {
  return (
    <th scope="col" class={`text-${engine.style.order}`}>
      <EngineMark style={engine.style} /> {engine.input.name}
    </th>
  );
}

interface RowProps {
  readonly row: LedgerRow;
  readonly engines: readonly ShownEngine[];
}

function Row({ row, engines }: RowProps) {
  const values = engines.map((engine) => numberOf(row, engine));
  const [base, other] = values;
  const [first, second] = engines;
  return (
    <tr>
      <th scope="row">{row.label}</th>
      {first !== undefined && <LedgerCell row={row} engine={first} value={base ?? null} />}
      <td class="shared-axis" aria-hidden="true">
        <LedgerAxis row={row} engines={engines} values={values} />
      </td>
      {second === undefined ? <td /> : <LedgerCell row={row} engine={second} value={other ?? null} />}
      <td class="difference">
        <LedgerDifference row={row} engines={engines} values={values} />
      </td>
    </tr>
  );
}

function PublishedRow({ engines }: { readonly engines: readonly ShownEngine[] }) {
  const [first, second] = engines;
  return (
    <tr>
      <th scope="row">Published figures</th>
      {first !== undefined && <PublishedCell engine={first} />}
      <td class="shared-axis" aria-hidden="true" />
      {second === undefined ? <td /> : <PublishedCell engine={second} />}
      <td class="difference" />
    </tr>
  );
}
