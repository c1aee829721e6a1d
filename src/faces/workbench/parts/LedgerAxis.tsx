import type { ShownEngine } from '../state/pair.ts';
import { airPressure, curveOfLadder } from '../state/shown.ts';
import { Marker } from './EngineMark.tsx';
import { type LedgerRow, spanOf } from './ledgerRows.ts';

interface LedgerAxisProps {
  readonly row: LedgerRow;
  readonly engines: readonly ShownEngine[];
  /** One an engine. */ readonly values: readonly (number | null)[];
}

const axisWidth = 232;

/** Both values on one axis, each with its engine's sign; a stroke for the air. */
export function LedgerAxis({ row, engines, values }: LedgerAxisProps) {
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
