import { quantity } from '../../../answer/catalogue.ts';
import { unitFor } from '../../../answer/display.ts';
import type { CurvePoint, Sweep, SweepCurve } from '../../../answer/sweeps/model.ts';
import { roundSteps } from '../../../numerics/roundSteps.ts';
import { dashOf } from '../../../telling/figures/marks.ts';
import type { EngineStyle } from '../../../telling/look/engineStyles.ts';
import { formatNumber } from '../../../telling/numbers/formatNumber.ts';
import { shownEngines } from '../state/pair.ts';
import { Marker } from './EngineMark.tsx';
import { ownerOf, sweepWords } from './sweepWords.ts';

const size = { width: 328, height: 236 };
const plot = { left: 46, right: 318, top: 22, bottom: 196 };

interface Axis {
  readonly at: (value: number) => number;
  readonly ticks: readonly { readonly at: number; readonly text: string }[];
  readonly unit: string;
}

/** The curves of a sweep, each in its engine's hue, dash and sign, with the band of what is not known. */
export function SweepChart({ sweep }: { readonly sweep: Sweep }) {
  const x = axisOf(
    sweep.range.quantity,
    [sweep.range.from, sweep.range.to],
    [plot.left, plot.right],
    5,
    sweep.range.spacing === 'in equal ratios',
  );
  const all = sweep.curves.flatMap(({ points }) =>
    points.flatMap(({ y, low, high }) => [y, low, high]).filter((value) => value !== null),
  );
  if (all.length === 0) return null;
  const [least, most] = [Math.min(...all), Math.max(...all)];
  const margin = least === most ? Math.abs(most) * 0.1 + 1e-9 : 0.06 * (most - least);
  const name = sweep.curves[0]?.quantity ?? null;
  const y = axisOf(name, [least - margin, most + margin], [plot.bottom, plot.top], 5);
  const label = sweep.curves[0]?.label ?? '';
  return (
    <svg
      class={sweep.provisional ? 'sweep-chart provisional' : 'sweep-chart'}
      viewBox={`0 0 ${size.width} ${size.height}`}
      role="img"
      aria-label={sweepWords(sweep).join(' ')}
    >
      <text x="0" y="12">
        {label}
        {y.unit === '' ? '' : `, ${y.unit}`}
      </text>
      {y.ticks.map(({ at, text }) => (
        <g key={text}>
          <path class="rule-line" d={`M${plot.left} ${at}H${plot.right}`} />
          <text x={plot.left - 6} y={at + 4} text-anchor="end">
            {text}
          </text>
        </g>
      ))}
      {x.ticks.map(({ at, text }) => (
        <g key={text}>
          <path class="rule-line" d={`M${at} ${plot.top}V${plot.bottom}`} />
          <text x={at} y={plot.bottom + 17} text-anchor="middle">
            {text}
          </text>
        </g>
      ))}
      <text x={plot.right} y={size.height - 4} text-anchor="end">
        {sweep.range.label}
        {x.unit === '' ? '' : `, ${x.unit}`}
      </text>
      <path class="frame" d={`M${plot.left} ${plot.top}V${plot.bottom}H${plot.right}`} />
      {sweep.curves.map((curve) => (
        <Curve key={curve.expression} sweep={sweep} curve={curve} x={x} y={y} />
      ))}
    </svg>
  );
}

interface CurveProps {
  readonly sweep: Sweep;
  readonly curve: SweepCurve;
  readonly x: Axis;
  readonly y: Axis;
}

function Curve({ sweep, curve, x, y }: CurveProps) {
  const style = shownEngines.value.find(({ id }) => id === curve.engines[0])?.style;
  if (style === undefined) return null;
  const runs = runsOf(curve.points);
  const now = sweep.range.now.find(({ engine }) => engine === curve.engines[0])?.value ?? null;
  const here = now === null ? null : valueAt(curve.points, now);
  const optimum = [curve.highest, curve.lowest].find((extreme) => extreme?.at === 'inside');
  return (
    <>
      {runs.map((run, i) => (
        <Run key={i} run={run} style={style} x={x} y={y} />
      ))}
      {here !== null && <Marker style={style} x={x.at(here.x)} y={y.at(here.y)} />}
      {optimum !== undefined && optimum !== null && (
        <g>
          <title>{`${ownerOf(curve)}, optimum`}</title>
          <circle class="ink-line" cx={x.at(optimum.x)} cy={y.at(optimum.y)} r="5" />
        </g>
      )}
    </>
  );
}

type Known = CurvePoint & { readonly y: number };

function Run({
  run,
  style,
  x,
  y,
}: {
  readonly run: readonly Known[];
  readonly style: EngineStyle;
  readonly x: Axis;
  readonly y: Axis;
}) {
  const line = (points: readonly (readonly [number, number])[]) =>
    points.map(([a, b]) => `${x.at(a).toFixed(1)} ${y.at(b).toFixed(1)}`).join('L');
  const upper = run.map((point) => [point.x, point.high ?? point.y] as const);
  const lower = run.map((point) => [point.x, point.low ?? point.y] as const).reverse();
  const dash = dashOf(style, 2.4).join(' ');
  return (
    <>
      <path class={`fill-${style.order} band`} d={`M${line([...upper, ...lower])}Z`} />
      <path
        class={`stroke-${style.order}`}
        fill="none"
        stroke-width="2.4"
        d={`M${line(run.map((point) => [point.x, point.y] as const))}`}
        {...(dash === '' ? {} : { 'stroke-dasharray': dash })}
      />
    </>
  );
}

/** Stretches without a hole. */
function runsOf(points: readonly CurvePoint[]): readonly (readonly Known[])[] {
  const runs: Known[][] = [[]];
  for (const point of points) {
    if (point.y !== null) runs.at(-1)?.push({ ...point, y: point.y });
    else if (runs.at(-1)?.length !== 0) runs.push([]);
  }
  return runs.filter((run) => run.length > 0);
}

/** The curve at the study's own value, between its neighbours; null beside the curve. */
function valueAt(points: readonly CurvePoint[], x: number): Known | null {
  const after = points.findIndex((point) => point.x >= x);
  const [left, right] = [points[Math.max(0, after - 1)], points[after]];
  if (left === undefined || right === undefined || left.y === null || right.y === null) return null;
  const share = right.x === left.x ? 0 : (x - left.x) / (right.x - left.x);
  if (share < 0) return null;
  return { x, y: left.y + share * (right.y - left.y), low: null, high: null };
}

/** 1, 2 and 5 times powers of ten. */
function ratioSteps(low: number, high: number): readonly number[] {
  const steps: number[] = [];
  for (let power = Math.floor(Math.log10(low)); power <= Math.log10(high); power++) {
    steps.push(...[1, 2, 5].map((digit) => Number(`${digit}e${power}`)));
  }
  return steps.filter((step) => step > low && step < high);
}

function axisOf(
  name: string | null,
  [from, to]: readonly [number, number],
  [start, end]: readonly [number, number],
  count: number,
  inRatios = false,
): Axis {
  const unit = name === null ? { symbol: '', perSI: 1 } : unitFor(quantity(name), [from, to]);
  const along = (value: number) =>
    inRatios ? Math.log(value / from) / Math.log(to / from) : (value - from) / (to - from);
  const at = (value: number) => start + (end - start) * along(value);
  const steps = inRatios
    ? ratioSteps(from * unit.perSI, to * unit.perSI)
    : roundSteps(from * unit.perSI, to * unit.perSI, count);
  return {
    at,
    unit: unit.symbol,
    ticks: steps.map((step) => ({ at: at(step / unit.perSI), text: formatNumber(step, 4, true) })),
  };
}
