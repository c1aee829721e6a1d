/** Where the parts of an engine cut open stand on the drawing. */

import type { ConditionRow, EngineAnswer } from '../../answer/model.ts';
import type { BoundaryPoint } from '../../answer/plumeModel.ts';
import type { Tint } from '../look/flowRamps.ts';
import type { Box } from '../scene/box.ts';
import type { Point } from '../scene/pathData.ts';
import type { DrawnEngine } from './drawnEngines.ts';
import type { Station } from './gasBands.ts';

export interface CutEngine extends DrawnEngine {
  readonly row: ConditionRow;
  /** [px] */ readonly axisX: number;
  /** [px] the line it hangs from */ readonly mountY: number;
  /** [px] the injector face */ readonly faceY: number;
  /** [px/m] */ readonly scale: number;
  /** Edge of its jet from where the gas ends; empty where there is none. */ readonly edge: readonly BoundaryPoint[];
  /** What the gas is drawn by. */ readonly tint: Tint;
  /** [px] where its jet may be drawn */ readonly jetBox: Box;
}

/** What is known of a cut engine before it has its place. */
export type UnplacedEngine = Pick<CutEngine, 'engine' | 'style' | 'row'>;

/** [m] largest radius of an engine's walls */
export const widest = ({ wall, contour }: EngineAnswer): number =>
  Math.max(...(contour.plug === undefined ? wall : contour.wall).map((point) => point.radius));

/** [m] where an engine begins: its injector face, or the uppermost point of a plug's tilted ring of chambers. */
export function topOf({ wall, contour }: EngineAnswer): number {
  if (contour.plug === undefined) return wall[0]?.axial ?? 0;
  const known = topOfRing.get(contour);
  if (known !== undefined) return known;
  let top = Number.POSITIVE_INFINITY;
  for (const { axial } of contour.wall) top = Math.min(top, axial);
  for (const { axial } of contour.plug.wall) top = Math.min(top, axial);
  topOfRing.set(contour, top);
  return top;
}

/** Asked for at every point that is drawn. */
const topOfRing = new WeakMap<EngineAnswer['contour'], number>();

/** [px] the lip */
export function lipY({ engine, faceY, scale }: CutEngine): number {
  return faceY + engine.contour.totalLength * scale;
}

/** Drawing place of a station, left or right of the axis. */
export function place(drawn: CutEngine, station: Station, side: -1 | 1): Point {
  return {
    x: drawn.axisX + side * station.radius * drawn.scale,
    y: drawn.faceY + (station.axial - topOf(drawn.engine)) * drawn.scale,
  };
}
