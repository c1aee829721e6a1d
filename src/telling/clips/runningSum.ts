/** Pushes and pulls one after the other as a running sum, each beside the ring that makes it. */

import { scaleLinear } from 'd3-scale';
import type { PanelStyle } from '../figures/overAltitudeAxes.ts';
import { tickCount } from '../figures/overAltitudeAxes.ts';
import type { EngineStyle } from '../look/engineStyles.ts';
import { textWidth } from '../look/measureText.ts';
import { segment } from '../scene/pathData.ts';
import { group, type SceneNode } from '../scene/scene.ts';
import { type ForceUnit, forceText } from './forceText.ts';
import type { SectionPlan } from './growingSection.ts';
import { textOfSigned } from './signedText.ts';
import type { ThrustPiece } from './thrustRings.ts';

export interface RunningSum {
  /** Grid and words that stand. */ readonly axis: readonly SceneNode[];
  /** The bars and words of the first `count` pieces. */ readonly bars: (
    count: number,
  ) => readonly SceneNode[];
}

export function runningSum(
  pieces: readonly ThrustPiece[],
  plan: SectionPlan,
  style: EngineStyle,
  unit: ForceUnit,
  panel: PanelStyle,
): RunningSum {
  const { type, line } = panel;
  const { beside, row } = plan;
  const sums = pieces.map(({ sum }) => sum);
  const x = scaleLinear(
    [Math.min(0, ...sums), Math.max(0, ...sums)],
    [beside.x + 0.6 * type.small, beside.x + beside.width - 0.8 * type.small],
  ).nice(5);
  const top = plan.top - 0.9 * row;
  const bottom = plan.lip + 2.5 * row;
  const ticks = x.ticks(tickCount(beside.width, type.small));
  const rows = rowsOf(pieces, plan);
  const axis: readonly SceneNode[] = [
    group('grid', [
      {
        kind: 'path',
        d: ticks.map((tick) => segment(x(tick), top, x(tick), bottom)).join(''),
        stroke: 'rule',
        strokeWidth: line.grid,
      },
      { kind: 'path', d: segment(x(0), top, x(0), bottom), stroke: 'rule-2', strokeWidth: line.grid },
    ]),
    group('axis', [
      ...ticks.map(
        (tick, i): SceneNode => ({
          kind: 'text',
          x: x(tick),
          y: bottom + 1.1 * type.small,
          text: `${textOfSigned(tick * unit.perNewton, 0, false)}${i === ticks.length - 1 ? `\u00a0${unit.symbol}` : ''}`,
          size: type.small,
          weight: 400,
          anchor: 'middle',
          fill: 'ink',
        }),
      ),
    ]),
  ];
  return {
    axis,
    bars(count) {
      const nodes: SceneNode[] = [];
      pieces.slice(0, count).forEach((piece, i) => {
        const [from, to] = [piece.sum - piece.force, piece.sum];
        const { y, height } = rows[i] as Row;
        nodes.push({
          kind: 'rect',
          x: Math.min(x(from), x(to)),
          y,
          width: Math.abs(x(to) - x(from)),
          height,
          fill: piece.force >= 0 ? style.colour : 'paper',
          stroke: style.colour,
          strokeWidth: 0.6 * line.leader,
        });
      });
      return [...nodes, ...surfaceWords(pieces, count, rows, x, plan, unit, panel)];
    },
  };
}

interface Row {
  readonly y: number;
  readonly height: number;
}

/** Rings beside their stretch of the wall; the face above them, what is no stretch below the lip. */
function rowsOf(pieces: readonly ThrustPiece[], plan: SectionPlan): readonly Row[] {
  let below = 0;
  let above = 0;
  return pieces.map(({ from, to, surface }): Row => {
    const thick = 0.62 * plan.row;
    if (from !== null && to !== null && to > from)
      return { y: plan.y(from), height: Math.max(plan.y(to) - plan.y(from), 1) };
    if (surface === 'injector face') return { y: plan.top - 0.85 * plan.row, height: thick };
    // Chamber and cowl of a plug lie ahead of its rings, all else behind them.
    const isAhead = pieces
      .slice(pieces.findIndex((piece) => piece.surface === surface))
      .some((piece) => piece.pressure !== null);
    if (isAhead) {
      above += 1;
      return { y: plan.top + (above - 1) * 0.75 * plan.row, height: thick };
    }
    below += 1;
    return { y: plan.lip + (below - 0.8) * plan.row, height: thick };
  });
}

/** Name and whole force of each surface that is done, beside its last bar on the side where there is room. */
function surfaceWords(
  pieces: readonly ThrustPiece[],
  count: number,
  rows: readonly Row[],
  x: (value: number) => number,
  { beside }: SectionPlan,
  unit: ForceUnit,
  { type }: PanelStyle,
): SceneNode[] {
  const nodes: SceneNode[] = [];
  pieces.slice(0, count).forEach((piece, i) => {
    const next = pieces[i + 1];
    if (next !== undefined && next.surface === piece.surface) return;
    const own = pieces.filter(({ surface }) => surface === piece.surface);
    const force = own.reduce((sum, one) => sum + one.force, 0);
    const isRing = own.length > 1;
    const spans = pieces
      .map((one, k) => ({ one, row: rows[k] as Row }))
      .filter(({ one }) => one.surface === piece.surface);
    const middle = spans[isRing ? Math.floor(spans.length / 2) : 0];
    if (middle === undefined) return;
    const text = `${piece.surface} ${forceText(force, unit, true)}`;
    const width = textWidth(text, type.small, 600);
    const ends = spans.flatMap(({ one }) => [x(one.sum), x(one.sum - one.force)]);
    const [left, right] = [Math.min(...ends), Math.max(...ends)];
    const gap = 0.5 * type.small;
    const toRight = right + gap + width <= beside.x + beside.width;
    const toLeft = left - gap - width >= beside.x;
    const onBar = !toRight && !toLeft;
    nodes.push({
      kind: 'text',
      x: toRight ? right + gap : toLeft ? left - gap : right - gap,
      y: middle.row.y + middle.row.height / 2 + 0.34 * type.small,
      text,
      size: type.small,
      weight: 600,
      anchor: toRight ? 'start' : 'end',
      fill: onBar && force > 0 ? 'paper' : 'ink',
      halo: !(onBar && force > 0),
    });
  });
  const last = pieces[count - 1];
  if (count < pieces.length || last === undefined) return nodes;
  const row = rows[count - 1] as Row;
  nodes.push(
    {
      kind: 'path',
      d: segment(x(last.sum), row.y - 0.2 * type.small, x(last.sum), row.y + row.height + 0.9 * type.small),
      stroke: 'ink',
      strokeWidth: 3,
    },
    {
      kind: 'text',
      x: x(last.sum) + 0.4 * type.small,
      y: row.y + row.height + 0.95 * type.small,
      text: `thrust ${forceText(last.sum, unit)}`,
      size: type.small,
      weight: 700,
      anchor: 'start',
      fill: 'ink',
      halo: true,
    },
  );
  return nodes;
}
