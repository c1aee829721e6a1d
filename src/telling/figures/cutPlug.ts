/** A plug engine cut open: ring of chambers, cowl, plug, and the gas between plug and air. */

import type { ConditionRow, EngineAnswer } from '../../answer/model.ts';
import type { PlugContour } from '../../physics/nozzle/model.ts';
import { RAMPS } from '../look/flowRamps.ts';
import { type Point, polyline, segment } from '../scene/pathData.ts';
import { piecesNode } from '../scene/piecesPath.ts';
import type { SceneNode } from '../scene/scene.ts';
import { type CutEngine, lipY, place } from './cutPlaces.ts';
import { drawnOnce } from './drawnOnce.ts';
import { type FieldBands, type FieldNode, fieldBands } from './fieldBands.ts';
import type { Station } from './gasBands.ts';
import { gasValue } from './gasValue.ts';
import { nearAmbient } from './nearAmbient.ts';
import type { PanelStyle } from './overAltitudeAxes.ts';

type Field = NonNullable<ConditionRow['field']>;

/** Width of the stroke that closes the seams between two pieces of one band, in leader lines. */
const SEAM = 0.35;

/** Stroke of the walls over that of a bell's: a plug's throat is a narrow gap between two of them. */
const METAL = 0.6;

const sides = [-1, 1] as const;

const ringGas = drawnOnce();
const freeGas = drawnOnce();
const metal = drawnOnce();

export function plugNodes(
  drawn: CutEngine,
  plug: PlugContour,
  ambient: number,
  style: PanelStyle,
): SceneNode[] {
  const { engine, row } = drawn;
  const { line } = style;
  const nodes: SceneNode[] = [];
  for (const side of sides) nodes.push(paperUnder(drawn, plug, side));
  const { axisX, faceY, scale } = drawn;
  const way = [axisX, faceY, scale, line.leader, drawn.tint];
  const ring = chamberLines(engine, plug);
  // The air comes near the pressures in the ring only where it stops the engine.
  const nearRing = ring.some((across) => across.some(({ pressure }) => pressure < 3 * ambient)) ? ambient : 0;
  nodes.push(...ringGas.of(engine, [...way, nearRing], () => gasNodes(drawn, ring, nearRing, style)));
  const { field } = row;
  if (field !== undefined)
    nodes.push(...freeGas.of(field, [...way, ambient], () => gasNodes(drawn, field, ambient, style)));
  nodes.push(...metal.of(engine, [...way, line.metal], () => metalNodes(drawn, plug, style)));
  nodes.push({
    kind: 'path',
    d: segment(drawn.axisX, drawn.faceY, drawn.axisX, lipY(drawn)),
    stroke: 'ink',
    strokeWidth: line.axisOfSymmetry,
    strokeOpacity: 0.5,
    dash: [14, 4, 2, 4].map((length) => length * line.axisOfSymmetry),
  });
  return nodes;
}

/** Plug and outer walls. */
function metalNodes(drawn: CutEngine, plug: PlugContour, style: PanelStyle): SceneNode[] {
  return [
    bodyNode(drawn, plug, style),
    ...sides.map((side): SceneNode => {
      const outer = drawn.engine.contour.wall.map((point) => place(drawn, point, side));
      const face = place(drawn, plug.wall[0]!, side);
      return {
        kind: 'path',
        d: polyline([face, ...outer]),
        stroke: 'ink',
        strokeWidth: METAL * style.line.metal,
        join: 'miter',
      };
    }),
  ];
}

/** The free edge of the gas behind the lip: the last point of each line across it, from the lip on. */
export function jetBoundary(field: Field | undefined): readonly Station[] {
  if (field === undefined) return [];
  const outer = field.map((line) => line[line.length - 1]!);
  const lip = outer.findLastIndex(
    (point, i) => i === 0 || distance(point, outer[i - 1]!) < 1e-6 * Math.max(point.radius, 1e-9),
  );
  // Rays of the fan all begin at the lip; without them the boundary begins with the last line.
  return lip < 0 ? [] : outer.slice(lip);
}

const distance = (a: Station, b: Station): number => Math.hypot(a.axial - b.axial, a.radius - b.radius);

/** Lines across the ring of chambers, each at the mean pressure of its place. */
function chamberLines({ wall, contour }: EngineAnswer, plug: PlugContour): Field {
  const count = contour.wall.filter(({ part }) => part !== 'nozzle').length;
  return Array.from({ length: count }, (_, i) => {
    const { pressure } = wall[i]!;
    return [plug.wall[i]!, contour.wall[i]!].map(({ axial, radius }) => ({ axial, radius, pressure }));
  });
}

/**
 * Under the gas of one side, so that the air does not shine through where nothing is computed. It ends at the jet's
 * edge: what lies outside of that is air, even where a straight line from lip to tip would run through it.
 */
function paperUnder(drawn: CutEngine, plug: PlugContour, side: -1 | 1): SceneNode {
  const { engine, row } = drawn;
  const ring = [...engine.contour.wall, ...jetBoundary(row.field), ...[...plug.wall].reverse()];
  return {
    kind: 'path',
    d: polyline(
      ring.map((point) => place(drawn, point, side)),
      true,
    ),
    fill: 'paper',
  };
}

/** The gas of both sides, and its lines of equal value; worked out once and mirrored. */
function gasNodes(drawn: CutEngine, mesh: Field, ambient: number, { line }: PanelStyle): SceneNode[] {
  const { tint } = drawn;
  const valueAt = gasValue(drawn.engine, tint);
  const lines = mesh.map((across) =>
    across.map(
      (point): FieldNode => ({
        ...place({ ...drawn, axisX: 0 }, point, 1),
        value: Math.max(1e-3, valueAt(point.pressure)),
      }),
    ),
  );
  const { bands, isobars } = fieldBands(lines, RAMPS[tint]);
  return sides.flatMap((side) => [
    ...[...bands].map(([step, pieces]): SceneNode => {
      const colour = `${tint}-${step}` as const;
      const look = { fill: colour, stroke: colour, strokeWidth: SEAM * line.leader };
      return piecesNode(pieces, drawn.axisX, side, look);
    }),
    ...isobarNodes(isobars, ambient, drawn, side, line),
  ]);
}

function isobarNodes(
  isobars: FieldBands['isobars'],
  ambient: number,
  { tint, axisX }: CutEngine,
  side: -1 | 1,
  line: PanelStyle['line'],
): SceneNode[] {
  const { startOf, isStrong } = RAMPS[tint];
  const shown = [...isobars].filter(([step]) => !nearAmbient(startOf(step), ambient, tint));
  return [true, false].flatMap((powerOfTen): SceneNode[] => {
    const xy = shown.filter(([step]) => isStrong(step) === powerOfTen).flatMap(([, ends]) => ends);
    if (xy.length === 0) return [];
    const strokeWidth = powerOfTen ? line.isobarDecade : line.isobar;
    const strokeOpacity = powerOfTen ? 0.34 : 0.13;
    return [piecesNode({ xy, ends: null }, axisX, side, { stroke: 'ink', strokeWidth, strokeOpacity })];
  });
}

/** The plug as one closed body. */
function bodyNode(drawn: CutEngine, plug: PlugContour, { line }: PanelStyle): SceneNode {
  const half = (side: -1 | 1): Point[] => plug.wall.map((point) => place(drawn, point, side));
  return {
    kind: 'path',
    d: polyline([...half(-1), ...half(1).reverse()], true),
    fill: 'paper',
    stroke: 'ink',
    strokeWidth: METAL * line.metal,
    join: 'miter',
  };
}
