/** The jet behind a cut engine: its edge as a line where it is computed, as dashes where it is a sketch. */

import type { BoundaryPoint } from '../../answer/plumeModel.ts';
import type { EngineStyle } from '../look/engineStyles.ts';
import type { Box } from '../scene/box.ts';
import { type Point, polyline, rectangle } from '../scene/pathData.ts';
import type { SceneNode } from '../scene/scene.ts';
import type { Station } from './gasBands.ts';
import type { PanelStyle } from './overAltitudeAxes.ts';

/** Room below the longest engine for its jet, as a share of its length. */
export const JET_ROOM = 0.24;

/** The edge from where the gas ends: an adapting nozzle, which has no wall of its own, may end before its notional lip. */
export function edgeFrom(edge: readonly BoundaryPoint[], end: Station): readonly BoundaryPoint[] {
  const [lip] = edge;
  if (lip === undefined) return [];
  const shift = end.axial - lip.axial;
  return edge.map((point) => ({ ...point, axial: point.axial + shift }));
}

/** The edge by the field of the row itself, where it has one, and from its end on the sketch. */
export function edgeByField(
  field: readonly Station[],
  edge: readonly BoundaryPoint[],
): readonly BoundaryPoint[] {
  const last = field[field.length - 1];
  if (last === undefined || field.length < 3) return edge;
  return [
    ...field.map(({ axial, radius }) => ({ axial, radius, sketch: false })),
    ...edge.filter(({ sketch, axial }) => sketch && axial > last.axial),
  ];
}

/**
 * The jet, cut off at the box.
 * @param place where a station lies on the drawing, left or right of the axis
 */
export function plumeNodes(
  engine: EngineStyle,
  edge: readonly BoundaryPoint[],
  place: (station: Station, side: -1 | 1) => Point,
  box: Box,
  { type, line }: PanelStyle,
): SceneNode[] {
  if (edge.length < 2) return [];
  const first = edge.findIndex(({ sketch }) => sketch);
  const from = first < 0 ? edge.length : first;
  const side = (points: readonly BoundaryPoint[], which: -1 | 1): Point[] =>
    points.map((point) => place(point, which));
  const computed = edge.slice(0, from);
  const sketched = edge.slice(Math.max(from - 1, 0));
  const both = (points: readonly BoundaryPoint[]): string =>
    points.length < 2 ? '' : polyline(side(points, -1)) + polyline(side(points, 1));
  const nodes: SceneNode[] = [
    {
      kind: 'path',
      d: polyline([...side(edge, -1), ...side(edge, 1).reverse()], true),
      fill: 'paper',
      fillOpacity: 0.5,
    },
  ];
  if (sketched.length > 1)
    nodes.push({
      kind: 'path',
      d: both(sketched),
      stroke: 'ink-2',
      strokeWidth: 1.2 * line.leftAway,
      dash: [4, 4].map((length) => length * line.leader),
    });
  if (computed.length > 1)
    nodes.push({
      kind: 'path',
      d: both(computed),
      stroke: 'ink',
      strokeWidth: 1.4 * line.leader,
    });
  return [
    {
      kind: 'group',
      name: `${engine.colour} jet`,
      clip: rectangle(box.x, box.y, box.width, box.height),
      children: nodes,
    },
    ...sketchWord(side(sketched, 1), box.x + box.width / 2, box, type.small),
  ];
}

/** `sketch` inside the dashes, near the foot, where the jet is wide enough for the word. */
function sketchWord(points: readonly Point[], axisX: number, box: Box, size: number): SceneNode[] {
  const foot = box.y + box.height - 0.6 * size;
  const inside = points.filter(({ x, y }) => x < box.x + box.width && y < foot);
  const at = inside[inside.length - 1];
  const first = points[0];
  if (at === undefined || first === undefined || at.y - first.y < 2 * size || at.x - axisX < 4 * size)
    return [];
  return [
    {
      kind: 'text',
      x: at.x - 0.8 * size,
      y: at.y,
      text: 'sketch',
      size,
      weight: 400,
      anchor: 'end',
      fill: 'ink',
      halo: true,
    },
  ];
}
