import { differenceInWords } from '../../../answer/compare/quantities.ts';
import { show } from '../../../answer/display.ts';
import type { ConditionRow, EngineAnswer } from '../../../answer/model.ts';
import { separationPlaceWords } from '../../../answer/separationWords.ts';
import { formatLength, formatPressure, formatSpoken } from '../../../telling/numbers/formatNumber.ts';
import { enginesOnScreen, publishedShown, type ShownEngine } from '../state/pair.ts';
import { airPressure, altitudeText, curveOfLadder, rowOfLadder } from '../state/shown.ts';
import { differenceAt, ownSpanAt } from '../state/spans.ts';
import { altitude } from '../state/view.ts';
import type { Span } from '../workshop/deskMessages.ts';
import { EngineMark, Marker } from './EngineMark.tsx';
import { PublishedCell } from './Published.tsx';
import { ABOUT, standingWords } from './standingWords.ts';
import { TracedNumber } from './TracedNumber.tsx';

/** One row of the ledger: what it says of an engine at an altitude. */
interface LedgerRow {
  readonly label: string;
  readonly quantity: string;
  /** Does the value move with altitude? */ readonly moves: boolean;
  readonly value: (row: ConditionRow, engine: EngineAnswer) => number | null;
  readonly text: (value: number) => string;
  /** An end of its span, to few digits. */ readonly end: (value: number) => string;
  readonly difference: (base: number, other: number) => string;
  /** A stroke on the axis for the air outside. */ readonly air?: true;
}

const rows: readonly LedgerRow[] = [
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

const widest: LedgerRow = {
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
        {rows.map((row) => (
          <Row key={row.label} row={row} engines={engines} />
        ))}
        <FlowRow engines={engines} />
        <Row row={widest} engines={engines} />
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
      {first !== undefined && <Cell row={row} engine={first} value={base ?? null} />}
      <td class="shared-axis" aria-hidden="true">
        <SharedAxis row={row} engines={engines} values={values} />
      </td>
      {second === undefined ? <td /> : <Cell row={row} engine={second} value={other ?? null} />}
      <td class="difference">
        <Difference row={row} engines={engines} values={values} />
      </td>
    </tr>
  );
}

/** What parts the two, or the air outside; pressed, what it is worked out from. */
function Difference({ row, engines, values }: RowProps & { readonly values: readonly (number | null)[] }) {
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
  if (base === null || other === null || base === undefined || other === undefined) return 'no comparison';
  const words = row.difference(base, other);
  if (isOpen(row, base, other)) return 'too close to call';
  if (words === 'the same') return words;
  return `${engines.map(aboutOf).find((about) => about !== '') ?? ''}${engines[1]?.input.name ?? ''} ${words}`;
}

/** `≈ ` before what is a first estimate. */
const aboutOf = ({ standing }: ShownEngine): string =>
  standing === undefined || standing === 'before' ? '' : ABOUT;

const classOf = ({ side, standing }: ShownEngine): string =>
  `value ${side}${standing === undefined ? '' : ' catching-up'}`;

/** Whether the difference may be of either sign, by all that is not known; equal numbers are equal. */
function isOpen({ quantity, moves }: LedgerRow, base: number, other: number): boolean {
  if (base === other) return false;
  const span = differenceAt(quantity, moves ? altitude.value : null);
  return span !== null && span.low < 0 && span.high > 0;
}

function numberOf(row: LedgerRow, { result }: ShownEngine): number | null {
  if (!result.ok) return null;
  return row.value(rowOfLadder(result.ladder, altitude.value), result.answer);
}

function Cell({ row, engine, value }: { row: LedgerRow; engine: ShownEngine; value: number | null }) {
  if (value === null) {
    return <td class={`value ${engine.side} absent`}>{engine.result.ok ? 'no number' : 'failed'}</td>;
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

function spanOf({ quantity, moves }: LedgerRow, { side }: ShownEngine): Span | null {
  const span = ownSpanAt(side === 'first' ? 0 : 1, quantity, moves ? altitude.value : null);
  return span === null || span.low === span.high ? null : span;
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

/** Of a number on its way, what there is of it. */
const standingOf = ({ standing }: ShownEngine): string =>
  standing === undefined ? '' : `, ${standingWords[standing]}`;

function conditionHere(): string {
  if (!Number.isFinite(altitude.value)) return 'in vacuum';
  return altitude.value === 0 ? 'at the pad' : `at ${altitudeText.value}`;
}

/** As a test writes the altitude on the scale: `(12 km)`. */
function placeHere(): string {
  return Number.isFinite(altitude.value) ? `(${altitude.value} km)` : '(vacuum)';
}

/** A plug is not filled: the gas runs along it. A dual bell in thick air is filled up to its bend alone. */
function wordsOf({ flow, plug, mode }: ConditionRow, input: ShownEngine['input']): string {
  if (flow.state !== 'full') return flowWords[flow.state];
  if (plug !== undefined) return 'stays on the plug';
  const inBase = input.nozzle.kind === 'dualBell' && mode === 'sea-level mode';
  return inBase ? 'fills the base bell' : flowWords.full;
}

const flowWords: Readonly<Record<ConditionRow['flow']['state'], string>> = {
  full: 'fills the nozzle',
  'near the limit': 'near letting go',
  separated: 'leaves the wall',
  unchoked: 'not choked',
};

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

function FlowRow({ engines }: { readonly engines: readonly ShownEngine[] }) {
  const [first, second] = engines;
  const criteria = new Set(
    engines.flatMap(({ result }) =>
      result.ok ? [rowOfLadder(result.ladder, altitude.value).flow.criterion] : [],
    ),
  );
  // A bound that never lets go has no criterion to name.
  const named = [...criteria].filter((criterion) => !criterion.startsWith('none'));
  return (
    <tr>
      <th scope="row">The gas</th>
      {first !== undefined && <FlowCell engine={first} />}
      <td class="shared-axis" aria-hidden="true" />
      {second === undefined ? <td /> : <FlowCell engine={second} />}
      <td class="difference">{named.join('; ')}</td>
    </tr>
  );
}

/** `leaves the wall at ε 21` */
function whereWords({ place }: NonNullable<ConditionRow['separation']>): string {
  return `leaves the wall at area ratio ${show('separation.place.areaRatio', place.areaRatio).text}`;
}

function FlowCell({ engine }: { readonly engine: ShownEngine }) {
  const { result } = engine;
  if (!result.ok) return <td class={`value ${engine.side} absent`}>failed</td>;
  const row = rowOfLadder(result.ladder, altitude.value);
  const { flow, separation } = row;
  const where = separation === undefined ? null : separationPlaceWords(separation);
  const words =
    flow.state === 'separated' && separation !== undefined
      ? whereWords(separation)
      : wordsOf(row, engine.input);
  const warned = separation?.sideLoads === undefined ? '' : ` ${separation.sideLoads}`;
  return (
    <td class={`words ${classOf(engine)}`}>
      <TracedNumber
        quantity="flow.separationPressure"
        engine={engine.id}
        shown={`${aboutOf(engine)}${words}`}
        condition={`lets go below ${formatPressure(flow.separationPressure)} at the lip; there are ${formatPressure(flow.lipPressure)}${where === null ? '' : `; ${where}.${warned}`}`}
        label={`${engine.input.name}, the gas`}
        expression={`${engine.id}.flow.separationPressure${placeHere()}`}
      />
    </td>
  );
}

const axisWidth = 232;

/** Both values on one axis, each with its engine's sign; a stroke for the air. */
function SharedAxis({ row, engines, values }: RowProps & { readonly values: readonly (number | null)[] }) {
  const range = rangeOf(row, engines);
  if (range === null) return null;
  const x = (value: number) => 8 + ((axisWidth - 16) * (value - range.low)) / (range.high - range.low);
  const air = row.air ? airPressure.value : null;
  return (
    <svg width="100%" height="22" viewBox={`0 0 ${axisWidth} 22`} aria-hidden="true">
      <path d={`M0 11H${axisWidth}`} class="rule-line" />
      {air !== null && air >= range.low && air <= range.high && (
        <path d={`M${x(air).toFixed(1)} 2V20`} class="ink-line" />
      )}
      {values.map((value, index) => {
        const engine = engines[index];
        if (value === null || engine === undefined) return null;
        const { style } = engine;
        const y = index === 0 ? 7.5 : 14.5;
        const span = spanOf(row, engine);
        return (
          <g key={style.order}>
            {span !== null && (
              <path
                class={`stroke-${style.order}`}
                stroke-width="2.4"
                d={`M${x(Math.max(span.low, range.low)).toFixed(1)} ${y}H${x(Math.min(span.high, range.high)).toFixed(1)}`}
              />
            )}
            <Marker style={style} x={x(value)} y={y} />
          </g>
        );
      })}
    </svg>
  );
}

/** The span of a row from pad to vacuum, both engines together, so that the axis stands still while climbing. */
function rangeOf(row: LedgerRow, engines: readonly ShownEngine[]): Range | null {
  const known = ranges.get(engines) ?? new Map<LedgerRow, Range | null>();
  ranges.set(engines, known);
  const before = known.get(row);
  if (before !== undefined) return before;
  const range = widestOf(row, engines);
  known.set(row, range);
  return range;
}

interface Range {
  readonly low: number;
  readonly high: number;
}
/** Found once for the engines shown: the rows of the altitudes are many. */
const ranges = new WeakMap<readonly ShownEngine[], Map<LedgerRow, Range | null>>();

function widestOf(row: LedgerRow, engines: readonly ShownEngine[]): Range | null {
  const all = engines.flatMap(({ result }) => {
    if (!result.ok) return [];
    const { answer, ladder } = result;
    const places = row.moves ? curveOfLadder(ladder) : [ladder.vacuum];
    return places.map((place) => row.value(place, answer)).filter((value) => value !== null);
  });
  if (all.length === 0) return null;
  let low = Math.min(...all);
  let high = Math.max(...all);
  if (row.air || !row.moves) low = 0;
  if (row.air) high = Math.max(high, 1.05e5);
  const margin = low === high ? Math.abs(high) * 0.1 + 1e-9 : (high - low) * 0.05;
  return { low: low === 0 ? 0 : low - margin, high: high + margin };
}
