/** One engine cut open: metal, gas in bands of pressure, the air around it, the line it hangs from. */

import type { ContourBody } from '../../physics/nozzle/model.ts';
import { RAMPS } from '../look/flowRamps.ts';
import type { TypeSizes } from '../look/formats.ts';
import { pressureStep } from '../look/pressureRamp.ts';
import { type Box, boxOfPoints, grown } from '../scene/box.ts';
import { type Point, polyline, segment } from '../scene/pathData.ts';
import type { SceneNode } from '../scene/scene.ts';
import { type CutEngine, lipY, place, type UnplacedEngine } from './cutPlaces.ts';
import { jetBoundary, plugNodes } from './cutPlug.ts';
import { plumeNodes } from './cutPlume.ts';
import { adapts } from './drawnEngines.ts';
import { drawnOnce } from './drawnOnce.ts';
import { gasBands, type Station, stationAtAxial, stationAtPressure } from './gasBands.ts';
import { gasValue } from './gasValue.ts';
import { marker } from './marks.ts';
import { nearAmbient } from './nearAmbient.ts';
import type { PanelStyle } from './overAltitudeAxes.ts';

/** Wall and gas seen from outside: round a plug the air lies against the jet. */
function silhouette({ engine, row }: CutEngine): readonly Station[] {
  const { plug, wall } = engine.contour;
  return plug === undefined ? engine.wall : [...wall, ...jetBoundary(row.field)];
}

/** Outline of a stretch of the nozzle, down the left wall and up the right one. */
function outline(drawn: CutEngine, stations: readonly Station[]): Point[] {
  return [
    ...stations.map((station) => place(drawn, station, -1)),
    ...[...stations].reverse().map((station) => place(drawn, station, 1)),
  ];
}

/** [px] how far the air is drawn beyond the wall before it fades */
export const airReach = (width: number, { label }: TypeSizes): number => Math.min(0.11 * width, 3.4 * label);

/**
 * The air: it hugs the engine and what leaves it, and fades away, since a frame would only be a frame.
 * It begins below the mounting line, where the names stand. `width`: room of the engine without its words.
 */
export function wash(
  drawn: CutEngine,
  ambient: number,
  width: number,
  box: Box,
  { type }: PanelStyle,
): SceneNode[] {
  const step = pressureStep(ambient);
  // Air that stands still has no tint of its own by speed or Mach number, and next to the gas none by temperature.
  if (step === 0 || drawn.tint !== 'pressure') return [];
  const wall = silhouette(drawn);
  const length = drawn.engine.contour.totalLength;
  const reach = airReach(width, type);
  const deviation = 0.5 * reach;
  const spread = reach + 3 * deviation;
  const face = wall[0] as Station;
  const lip = wall[wall.length - 1] as Station;
  const top = face.axial + Math.min((1.6 * reach) / drawn.scale, 0.4 * length);
  // What is drawn reaches as far again below as it is grown and blurred; past the box there are other things.
  const { jetBox } = drawn;
  const foot = Math.min(box.y + box.height - 1.8 * reach, jetBox.y + jetBox.height - 0.9 * reach);
  const floor = face.axial + (foot - drawn.faceY) / drawn.scale;
  const bottom = Math.max(top, drawn.edge.length > 1 ? floor : Math.min(lip.axial + 0.12 * length, floor));
  const below = hugged(drawn, width / 2 - reach).filter((point) => point.axial > top && point.axial < bottom);
  const first = wall.findLast((point) => point.axial <= top) ?? face;
  const down = { axial: bottom, radius: below.at(-1)?.radius ?? first.radius };
  const shape = outline(drawn, [{ axial: top, radius: first.radius }, ...below, down]);
  const colour = `pressure-${step}` as const;
  return [
    {
      kind: 'group',
      name: `${drawn.style.colour} wash`,
      blur: {
        deviation,
        ...grown(boxOfPoints(shape), spread),
      },
      children: [
        {
          kind: 'path',
          d: polyline(shape, true),
          fill: colour,
          stroke: colour,
          strokeWidth: 2 * reach,
          join: 'round',
        },
      ],
    },
  ];
}

/** What the air hugs: the wall, and the edge of the jet as far as it goes on downwards, no wider than there is room. */
function hugged(drawn: CutEngine, widestPx: number): readonly Station[] {
  const { edge, scale } = drawn;
  const wall = silhouette(drawn);
  const stations: Station[] = [...wall];
  let last = (wall[wall.length - 1] as Station).axial;
  for (const { axial, radius } of edge) {
    if (axial <= last) continue;
    last = axial;
    stations.push({ axial, radius: Math.min(radius, widestPx / scale) });
  }
  return stations;
}

/** The line all engines hang from, and the two struts that hold this one. */
export function mounting(drawn: CutEngine, halfWidth: number, { line }: PanelStyle): SceneNode[] {
  const { axisX, mountY, faceY } = drawn;
  const { contour, wall } = drawn.engine;
  const face = ((contour.plug === undefined ? wall : contour.wall)[0] as Station).radius * drawn.scale;
  return [
    {
      kind: 'path',
      d: segment(axisX - halfWidth, mountY, axisX + halfWidth, mountY),
      stroke: 'rule-2',
      strokeWidth: line.leader,
    },
    {
      kind: 'path',
      d: polyline([
        { x: axisX - 0.6 * face, y: faceY },
        { x: axisX, y: mountY },
        { x: axisX + 0.6 * face, y: faceY },
      ]),
      stroke: 'ink',
      strokeWidth: line.leader,
    },
  ];
}

export function engineNodes(drawn: CutEngine, ambient: number, style: PanelStyle): SceneNode[] {
  const { engine } = drawn;
  const jet = plumeNodes(
    drawn.style,
    drawn.edge,
    (station, side) => place(drawn, station, side),
    drawn.jetBox,
    style,
  );
  if (engine.contour.plug !== undefined)
    return [...jet, ...plugNodes(drawn, engine.contour.plug, ambient, style)];
  const { line } = style;
  const end = gasEnd(drawn);
  const { axisX, faceY, scale } = drawn;
  const way = [axisX, faceY, scale, end.axial, line.metal, line.leader, drawn.tint];
  const isobarHalf = (station: Station): Point[] => [place(drawn, station, -1), place(drawn, station, 1)];
  const nodes: SceneNode[] = [
    ...jet,
    ...metalAndGas.of(engine, way, () => metalAndGasNodes(drawn, end, style)),
  ];
  const { isobars } = gasBands(engine.wall, end.axial, RAMPS[drawn.tint], gasValue(engine, drawn.tint));
  for (const isobar of isobars) {
    if (nearAmbient(isobar.value, ambient, drawn.tint)) continue;
    nodes.push({
      kind: 'path',
      d: polyline(isobarHalf(isobar)),
      stroke: 'ink',
      strokeWidth: isobar.powerOfTen ? line.isobarDecade : line.isobar,
      strokeOpacity: isobar.powerOfTen ? 0.34 : 0.13,
    });
  }
  if (engine.contourIs === 'notional') nodes.push(...notionalWall(drawn, end, style));
  for (const body of engine.contour.bodies ?? []) nodes.push(...bodyNodes(drawn, body, ambient, style));
  nodes.push({
    kind: 'path',
    d: segment(drawn.axisX, drawn.faceY, drawn.axisX, lipY(drawn)),
    stroke: 'ink',
    strokeWidth: line.axisOfSymmetry,
    strokeOpacity: 0.5,
    dash: [14, 4, 2, 4].map((length) => length * line.axisOfSymmetry),
  });
  if (drawn.row.flow.state === 'separated')
    for (const side of [-1, 1] as const) {
      const at = place(drawn, end, side);
      nodes.push(marker(drawn.style, at.x, at.y, 0.8 * line.marker));
    }
  return nodes;
}

/** What a climb leaves as it is: the wall, and the gas down to where it is known. */
const metalAndGas = drawnOnce();

function metalAndGasNodes(drawn: CutEngine, end: Station, { line }: PanelStyle): readonly SceneNode[] {
  const { engine } = drawn;
  const lip = engine.wall[engine.wall.length - 1] as Station;
  const whole = outline(drawn, engine.wall);
  const { bands } = gasBands(engine.wall, end.axial, RAMPS[drawn.tint], gasValue(engine, drawn.tint));
  const adapting = adapts(engine);
  const beyond = [end, ...engine.wall.filter((point) => point.axial > end.axial)];
  const nodes: SceneNode[] = [];
  if (engine.contourIs === 'shape')
    nodes.push({
      kind: 'path',
      d: polyline(openOutline(drawn, engine.wall)),
      stroke: 'ink',
      strokeWidth: 2 * line.metal,
      join: 'miter',
    });
  // Paper first: beyond the end of the computed gas nothing of the metal's inner half may show.
  if (engine.contourIs === 'shape' || !adapting)
    nodes.push({ kind: 'path', d: polyline(whole, true), fill: 'paper' });
  if (!adapting && end.axial < lip.axial)
    nodes.push({
      kind: 'path',
      d: polyline(outline(drawn, beyond), true),
      fill: {
        pattern: 'hatch',
        colour: 'rule-2',
        angle: 45,
        gap: 5 * line.leader,
        width: 0.5 * line.leader,
        opacity: 0.7,
      },
    });
  // Each band reaches down under all later ones: side by side, the paper would shine through the seams.
  bands.forEach((band, i) => {
    const downward = bands
      .slice(i)
      .flatMap(({ stations }, later) => (later === 0 ? stations : stations.slice(1)));
    nodes.push({
      kind: 'path',
      d: polyline(outline(drawn, downward), true),
      fill: `${drawn.tint}-${band.step}`,
    });
  });
  return nodes;
}

/** A body beside the outer wall: a sheet of metal as a line on either side, a solid one as one closed shape. */
function bodyNodes(drawn: CutEngine, body: ContourBody, ambient: number, { line }: PanelStyle): SceneNode[] {
  const side = (sign: -1 | 1): Point[] => body.outline.map((station) => place(drawn, station, sign));
  if (!body.solid)
    return ([-1, 1] as const).map((sign) => ({
      kind: 'path',
      d: polyline(side(sign)),
      stroke: 'ink',
      strokeWidth: line.metal,
    }));
  if (body.isStillGas) {
    const isOpen = drawn.row.mode === drawn.engine.change?.thick;
    return [
      {
        kind: 'path',
        d: polyline([...side(-1), ...side(1).reverse()], true),
        fill:
          isOpen && drawn.tint === 'pressure' && pressureStep(ambient) > 0
            ? `pressure-${pressureStep(ambient)}`
            : 'paper',
        stroke: 'ink',
        strokeWidth: 0.5 * line.leader,
        dash: [3, 3].map((length) => length * line.leader),
      },
    ];
  }
  return [
    {
      kind: 'path',
      d: polyline([...side(-1), ...side(1).reverse()], true),
      fill: 'paper',
      stroke: 'ink',
      strokeWidth: line.metal,
      join: 'miter',
    },
  ];
}

/** How far down the gas is known: to the lip, to where it leaves the wall, or to where it matches the air. */
export function gasEnd({ engine, row }: UnplacedEngine): Station {
  const lip = engine.wall[engine.wall.length - 1] as Station;
  if (row.flow.state === 'separated')
    return row.separation === undefined
      ? stationAtPressure(engine.wall, row.flow.separationPressure, 'pressure')
      : stationAtAxial(engine.wall, row.separation.place.axial);
  if (row.flow.state === 'unchoked') return engine.wall[0] as Station;
  return adapts(engine) && row.exitPressure > engine.exit.pressure * (1 + 1e-9)
    ? stationAtPressure(engine.wall, row.exitPressure, 'meanPressure')
    : lip;
}

/** Wall and injector face, open at the lip. */
function openOutline(drawn: CutEngine, stations: readonly Station[]): Point[] {
  return [
    ...[...stations].reverse().map((station) => place(drawn, station, -1)),
    ...stations.map((station) => place(drawn, station, 1)),
  ];
}

/** A wall that the model does not have: dashed; thinner still where the adapting nozzle is not used. */
function notionalWall(drawn: CutEngine, end: Station, { line }: PanelStyle): SceneNode[] {
  const used = [...drawn.engine.wall.filter((point) => point.axial < end.axial), end];
  const unused = [end, ...drawn.engine.wall.filter((point) => point.axial > end.axial)];
  const wall = (stations: readonly Station[], width: number, dash: readonly number[]): SceneNode => ({
    kind: 'path',
    d: polyline(stations.map((s) => place(drawn, s, -1))) + polyline(stations.map((s) => place(drawn, s, 1))),
    stroke: 'ink',
    strokeWidth: width,
    dash: dash.map((length) => length * width),
  });
  const face = drawn.engine.wall[0] as Station;
  return [
    {
      kind: 'path',
      d: polyline([place(drawn, face, -1), place(drawn, face, 1)]),
      stroke: 'ink',
      strokeWidth: 0.6 * line.metal,
    },
    wall(used, 0.6 * line.metal, [3, 2]),
    ...(unused.length > 1 ? [wall(unused, line.leftAway, [3, 3])] : []),
  ];
}
