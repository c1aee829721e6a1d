/** Measured pressures on a wall, held against a computed field along the same wall. */

import { type AlongPoint, type FlowField, fieldAlong } from '../../answer/flow/index.ts';
import type { MeasuredPoint, MeasuredSeries } from '../../answer/measured/model.ts';
import { residualsOf } from '../../answer/measured/residualsOf.ts';
import type { EngineStyle } from '../look/engineStyles.ts';
import type { MarkedSeries } from './measuredMarks.ts';

/** Of a moment none: what was measured was measured at rest. */
export function measuredOnWall(
  field: FlowField,
  measured: readonly MeasuredSeries[],
  style: EngineStyle,
): readonly MarkedSeries[] {
  const wall = fieldAlong(field).find(({ line }) => line === 'wall' || line === 'plug')?.points ?? [];
  if (wall.length < 2 || field.moment !== undefined) return [];
  return measured
    .filter(
      ({ engine, quantity, place }) =>
        engine === field.engine && quantity === 'wall.pressure' && place === 'wall.axial',
    )
    .map((series) => ({ ...heldAgainst(series, wall), drawn: { style } }));
}

function heldAgainst(series: MeasuredSeries, wall: readonly AlongPoint[]): MeasuredSeries {
  const points = series.points.map((point): MeasuredPoint => {
    const computed = pressureAt(wall, point.at);
    const residual = computed === null ? null : point.value - computed;
    const share = computed === null || residual === null ? null : residual / computed;
    return { ...point, computed, low: computed, high: computed, residual, share, agrees: null };
  });
  return { ...series, points, ...residualsOf(points) };
}

/** Straight between the cells beside it [Pa]; null: outside. */
function pressureAt(wall: readonly AlongPoint[], axial: number): number | null {
  const next = wall.findIndex((point) => point.axial >= axial);
  const [a, b] = [wall[next - 1], wall[next]];
  if (a === undefined || b === undefined) return null;
  return a.pressure + ((axial - a.axial) / (b.axial - a.axial)) * (b.pressure - a.pressure);
}
