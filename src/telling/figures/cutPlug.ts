/** A plug engine cut open: ring of chambers, cowl, plug, and the gas between plug and air. */

import type { ConditionRow, EngineAnswer } from '../../answer/model.ts';
import type { PlugContour } from '../../physics/nozzle/model.ts';
import { RAMPS, type Tint } from '../look/flowRamps.ts';
import { type Point, polyline, segment } from '../scene/pathData.ts';
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
  const way = [axisX, faceY, scale, ambient, line.leader, drawn.tint];
  nodes.push(...ringGas.of(engine, way, () => gasNodes(drawn, chamberLines(engine, plug), ambient, style)));
  const { field } = row;
  if (field !== undefined)
    nodes.push(...freeGas.of(field, way, () => gasNodes(drawn, field, ambient, style)));
  nodes.push(bodyNode(drawn, plug, style));
  for (const side of sides) {
    const outer = engine.contour.wall.map((point) => place(drawn, point, side));
    const face = place(drawn, plug.wall[0]!, side);
    nodes.push({
      kind: 'path',
      d: polyline([face, ...outer]),
      stroke: 'ink',
      strokeWidth: METAL * line.metal,
      join: 'miter',
    });
  }
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

function gasNodes(drawn: CutEngine, mesh: Field, ambient: number, { line }: PanelStyle): SceneNode[] {
  const { tint } = drawn;
  const valueAt = gasValue(drawn.engine, tint);
  const nodes: SceneNode[] = [];
  for (const side of sides) {
    const lines = mesh.map((across) =>
      across.map(
        (point): FieldNode => ({
          ...place(drawn, point, side),
          value: Math.max(1e-3, valueAt(point.pressure)),
        }),
      ),
    );
    const { bands, isobars } = fieldBands(lines, RAMPS[tint]);
    for (const [step, polygons] of bands) {
      const colour = `${tint}-${step}` as const;
      nodes.push({
        kind: 'path',
        d: polygons.map((polygon) => polyline(polygon, true)).join(''),
        fill: colour,
        stroke: colour,
        strokeWidth: SEAM * line.leader,
      });
    }
    nodes.push(...isobarNodes(isobars, ambient, tint, line));
  }
  return nodes;
}

function isobarNodes(
  isobars: FieldBands['isobars'],
  ambient: number,
  tint: Tint,
  line: PanelStyle['line'],
): SceneNode[] {
  const drawnOnes = isobars.filter(({ value }) => !nearAmbient(value, ambient, tint));
  return [true, false].flatMap((powerOfTen): SceneNode[] => {
    const d = drawnOnes
      .filter((one) => one.powerOfTen === powerOfTen)
      .map(({ from, to }) => segment(from.x, from.y, to.x, to.y))
      .join('');
    if (d === '') return [];
    return [
      {
        kind: 'path',
        d,
        stroke: 'ink',
        strokeWidth: powerOfTen ? line.isobarDecade : line.isobar,
        strokeOpacity: powerOfTen ? 0.34 : 0.13,
      },
    ];
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
