/**
 * Engines cut open, hanging from one mounting line at one scale, the gas in them coloured by its
 * one-dimensional mean pressure, the air around them by its own.
 */

import type { ConditionRow, StudyAnswer } from '../../answer/model.ts';
import { shorten, textWidth, wrapText } from '../look/measureText.ts';
import { pressureStep } from '../look/pressureRamp.ts';
import { formatAltitude, formatPressure } from '../numbers/formatNumber.ts';
import { type Box, boxOfPoints, grown } from '../scene/box.ts';
import { type Point, polyline, segment } from '../scene/pathData.ts';
import { plainText } from '../scene/safeText.ts';
import { group, type SceneNode } from '../scene/scene.ts';
import { ambientAt, conditionAt, rowsOf } from './conditions.ts';
import { adapts, type DrawnEngine, drawnEngines } from './drawnEngines.ts';
import { gasBands, type Station, stationAtPressure } from './gasBands.ts';
import { lineSample, marker, type Words, wordsAt, wordsSize } from './marks.ts';
import type { Altitude, FigureOptions } from './options.ts';
import type { PanelStyle } from './overAltitudeAxes.ts';
import { pressureKey, pressureKeyHeight } from './pressureKey.ts';

export interface CutPanelOptions extends FigureOptions {
  /** Rows at this altitude by engine id, where the caller has computed them exactly. */
  readonly rows?: Readonly<Record<string, ConditionRow>>;
  /** Names and facts above the mounting line; true unless the page has its own. */ readonly legend?: boolean;
  /** Key to the pressure ramp at the foot; true unless the page has its own. */ readonly key?: boolean;
  /** [px] left free between two engines, for what a page puts there; none unless said. */
  readonly middle?: number;
  /** Draw this engine alone, in the style that it has beside the others. */ readonly only?: string;
}

export interface CutPanel {
  readonly nodes: readonly SceneNode[];
  /** [px/m] the one scale */ readonly scale: number;
  /** By engine id: axis and mounting line on the drawing, for pages that add to it. */
  readonly places: Readonly<Record<string, { readonly axisX: number; readonly faceY: number }>>;
}

interface CutEngine extends DrawnEngine {
  readonly row: ConditionRow;
  /** [px] */ readonly axisX: number;
  /** [px] the injector face */ readonly faceY: number;
  readonly scale: number;
}

/** Distance in the log of pressure within which an isobar would run into the ambient's own edge: 0.09 decades. */
const NEAR_AMBIENT = 0.09;

export function cutPanel(
  answer: StudyAnswer,
  altitude: Altitude,
  box: Box,
  style: PanelStyle,
  options: CutPanelOptions,
): CutPanel {
  const { type } = style;
  const ambient = ambientAt(altitude);
  const drawnHere = drawnEngines(answer, 2, options.styles).engines.filter(
    ({ engine }) => options.only === undefined || engine.id === options.only,
  );
  const engines = drawnHere.map((drawn) => ({
    ...drawn,
    row: options.rows?.[drawn.engine.id] ?? conditionAt(rowsOf(drawn.engine, options), ambient),
  }));
  const legend = options.legend !== false;
  const key = options.key !== false;
  const middle = engines.length > 1 ? (options.middle ?? 0) : 0;
  const cell = (box.width - middle * (engines.length - 1)) / engines.length;
  const labels = engines.map((drawn) => lipWords(drawn, ambient, 0.94 * cell, style));
  const labelHeight = Math.max(...labels.map((lines) => wordsSize(lines).height));
  const legendHeight = legend ? 2.5 * type.label : 0;
  const strut = 0.7 * type.label;
  const footHeight = (key ? pressureKeyHeight(type.small) : 1.6 * type.small) + 0.4 * type.label;
  const mountY = box.y + legendHeight;
  const faceY = mountY + strut;
  const room = box.y + box.height - footHeight - labelHeight - 0.6 * type.label - faceY;
  const scale = Math.min(
    room / Math.max(...engines.map(({ engine }) => engine.contour.totalLength)),
    (0.82 * cell) / Math.max(...engines.map(({ engine }) => 2 * widest(engine.wall))),
  );
  const cut = engines.map(
    (drawn, i): CutEngine => ({
      ...drawn,
      scale,
      faceY,
      axisX: box.x + i * (cell + middle) + 0.5 * cell,
    }),
  );
  return {
    scale,
    places: Object.fromEntries(cut.map(({ engine, axisX }) => [engine.id, { axisX, faceY }])),
    nodes: [
      group(
        'air',
        cut.flatMap((drawn) => wash(drawn, ambient, cell, box, style)),
      ),
      ...cut.map((drawn, i) =>
        group(`${drawn.style.colour} cut`, [
          ...mounting(drawn, mountY, cell, style),
          ...engineNodes(drawn, ambient, style),
          ...(legend ? legendNodes(drawn, box.y, cell, style) : []),
          ...wordsAt(labels[i] ?? [], drawn.axisX, lipY(drawn) + 0.4 * type.label, 'middle', true),
        ]),
      ),
      group('scale', scaleBar(box, scale, engines.length, style)),
      ...(key ? [group('key', keyNodes(box, ambient, style))] : []),
    ],
  };
}

const widest = (wall: readonly Station[]): number => Math.max(...wall.map((point) => point.radius));

function lipY({ engine, faceY, scale }: CutEngine): number {
  return faceY + engine.contour.totalLength * scale;
}

/** Drawing place of a station, left or right of the axis. */
function place(drawn: CutEngine, station: Station, side: -1 | 1): Point {
  const face = drawn.engine.wall[0] as Station;
  return {
    x: drawn.axisX + side * station.radius * drawn.scale,
    y: drawn.faceY + (station.axial - face.axial) * drawn.scale,
  };
}

/** Outline of a stretch of the nozzle, down the left wall and up the right one. */
function outline(drawn: CutEngine, stations: readonly Station[]): Point[] {
  return [
    ...stations.map((station) => place(drawn, station, -1)),
    ...[...stations].reverse().map((station) => place(drawn, station, 1)),
  ];
}

/**
 * The air: it hugs the engine and what leaves it, and fades away, since a frame would only be a frame.
 * It begins below the mounting line, where the names stand.
 */
function wash(drawn: CutEngine, ambient: number, cell: number, box: Box, { type }: PanelStyle): SceneNode[] {
  const step = pressureStep(ambient);
  if (step === 0) return [];
  const { wall } = drawn.engine;
  const length = drawn.engine.contour.totalLength;
  const reach = Math.min(0.11 * cell, 3.4 * type.label);
  const deviation = 0.5 * reach;
  const spread = reach + 3 * deviation;
  const face = wall[0] as Station;
  const lip = wall[wall.length - 1] as Station;
  const top = face.axial + Math.min((1.6 * reach) / drawn.scale, 0.4 * length);
  // What is drawn reaches as far again below as it is grown and blurred; past the box there are other things.
  const floor = face.axial + (box.y + box.height - 2 * reach - drawn.faceY) / drawn.scale;
  const bottom = Math.max(top, Math.min(lip.axial + 0.12 * length, floor));
  const below = wall.filter((point) => point.axial > top && point.axial < bottom);
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

function mounting(drawn: CutEngine, mountY: number, cell: number, { line }: PanelStyle): SceneNode[] {
  const half = 0.42 * cell;
  const face = (drawn.engine.wall[0] as Station).radius * drawn.scale;
  const spread = Math.max(face, drawn.faceY - mountY);
  return [
    {
      kind: 'path',
      d: segment(drawn.axisX - half, mountY, drawn.axisX + half, mountY),
      stroke: 'rule-2',
      strokeWidth: line.leader,
    },
    {
      kind: 'path',
      d: polyline([
        { x: drawn.axisX - spread, y: mountY },
        { x: drawn.axisX - 0.4 * face, y: drawn.faceY },
        { x: drawn.axisX, y: mountY },
        { x: drawn.axisX + 0.4 * face, y: drawn.faceY },
        { x: drawn.axisX + spread, y: mountY },
      ]),
      stroke: 'ink',
      strokeWidth: line.leader,
    },
  ];
}

function engineNodes(drawn: CutEngine, ambient: number, style: PanelStyle): SceneNode[] {
  const { engine } = drawn;
  const { line } = style;
  const lip = engine.wall[engine.wall.length - 1] as Station;
  const end = gasEnd(drawn);
  const whole = outline(drawn, engine.wall);
  const isobarHalf = (station: Station): Point[] => [place(drawn, station, -1), place(drawn, station, 1)];
  const { bands, isobars } = gasBands(engine.wall, end.axial);
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
    nodes.push({ kind: 'path', d: polyline(outline(drawn, downward), true), fill: `pressure-${band.step}` });
  });
  for (const isobar of isobars) {
    if (ambient > 0 && Math.abs(Math.log10(isobar.pressure / ambient)) < NEAR_AMBIENT) continue;
    nodes.push({
      kind: 'path',
      d: polyline(isobarHalf(isobar)),
      stroke: 'ink',
      strokeWidth: isobar.powerOfTen ? line.isobarDecade : line.isobar,
      strokeOpacity: isobar.powerOfTen ? 0.34 : 0.13,
    });
  }
  if (engine.contourIs === 'notional') nodes.push(...notionalWall(drawn, end, style));
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

/** How far down the gas is known: to the lip, to where it leaves the wall, or to where it matches the air. */
function gasEnd({ engine, row }: CutEngine): Station {
  const lip = engine.wall[engine.wall.length - 1] as Station;
  if (row.flow.state === 'separated')
    return stationAtPressure(engine.wall, row.flow.separationPressure, 'wallPressure');
  if (row.flow.state === 'unchoked') return engine.wall[0] as Station;
  return row.exitPressure > engine.exit.pressure * (1 + 1e-9)
    ? stationAtPressure(engine.wall, row.exitPressure, 'pressure')
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

/** Said below each lip: what leaves there, and whether it fills the nozzle. */
function lipWords(
  { engine, row }: DrawnEngine & { readonly row: ConditionRow },
  ambient: number,
  width: number,
  { type }: PanelStyle,
): Words[] {
  const size = 0.92 * type.label;
  const strong = (text: string): Words => ({ text, size, weight: 600, fill: 'ink' });
  const plain = (text: string): Words[] =>
    wrapText(plainText(text), width, size, 400).map((line) => ({
      text: line,
      size,
      weight: 400,
      fill: 'ink',
    }));
  const { state, criterion } = row.flow;
  if (state === 'unchoked') return [strong('the flow does not choke'), ...plain('not computed here')];
  if (state === 'separated') return [strong('flow leaves the wall'), ...plain(`estimated, ${criterion}`)];
  const notional = engine.contourIs === 'notional' ? ', notional outline' : '';
  if (adapts(engine))
    return [
      strong(`${formatPressure(row.exitPressure)} where it leaves`),
      ...plain(`${row.exitPressure > ambient * 1.001 ? 'fully open' : 'matches the air'}${notional}`),
    ];
  return [
    strong(`${formatPressure(row.exitPressure)} at the lip`),
    ...plain(`${state === 'near the limit' ? 'about to leave the wall' : 'flows full'}${notional}`),
  ];
}

function legendNodes(drawn: CutEngine, top: number, cell: number, style: PanelStyle): SceneNode[] {
  const { type, line } = style;
  const sample = 1.7 * type.label;
  const left = drawn.axisX - 0.42 * cell;
  const width = 0.84 * cell;
  const name = shorten(plainText(drawn.engine.name), width - sample - 0.4 * type.label, type.label, 700);
  const facts = shorten(plainText(drawn.engine.description), width, type.small, 400);
  return [
    ...lineSample(drawn.style, left, top + 0.55 * type.label, sample, line.curve, 0.8 * line.marker),
    {
      kind: 'text',
      x: left + sample + 0.4 * type.label,
      y: top + 0.88 * type.label,
      text: name,
      size: type.label,
      weight: 700,
      anchor: 'start',
      fill: drawn.style.colour,
    },
    {
      kind: 'text',
      x: left,
      y: top + 2 * type.label,
      text: facts,
      size: type.small,
      weight: 400,
      anchor: 'start',
      fill: 'ink-2',
    },
  ];
}

/** A bar of a round length, about a fifth of a cell, and what it is worth. */
function scaleBar(box: Box, scale: number, count: number, { type, line }: PanelStyle): SceneNode[] {
  const cell = box.width / count;
  const length = roundLength((0.3 * cell) / scale);
  const width = length * scale;
  const y = box.y + box.height - 1.2 * type.small;
  const tick = 0.3 * type.small;
  const text = `${lengthWords(length)}${count > 1 ? ', both engines' : ''}`;
  return [
    {
      kind: 'path',
      d:
        segment(box.x, y - tick, box.x, y + tick) +
        segment(box.x, y, box.x + width, y) +
        segment(box.x + width, y - tick, box.x + width, y + tick),
      stroke: 'ink',
      strokeWidth: line.leader,
    },
    {
      kind: 'text',
      x: box.x,
      y: y - 0.65 * type.small,
      text,
      size: type.small,
      weight: 400,
      anchor: 'start',
      fill: 'ink',
      halo: true,
    },
  ];
}

/** The largest of 1, 2, 5 times a power of ten that is not above a length. */
export function roundLength(length: number): number {
  const power = 10 ** Math.floor(Math.log10(length) + 1e-12);
  const lead = length / power;
  return (lead >= 5 ? 5 : lead >= 2 ? 2 : 1) * power;
}

function lengthWords(length: number): string {
  const inMetres = length >= 1;
  const value = Number((inMetres ? length : length < 0.01 ? length * 1000 : length * 100).toPrecision(6));
  return `${value}\u00a0${inMetres ? 'm' : length < 0.01 ? 'mm' : 'cm'}`;
}

function keyNodes(box: Box, ambient: number, style: PanelStyle): SceneNode[] {
  const height = pressureKeyHeight(style.type.small);
  const least = textWidth('air here gas and air, bar', style.type.small, 600) + style.type.small;
  const width = Math.max(least, 0.4 * box.width);
  return pressureKey(
    { x: box.x + box.width - width, y: box.y + box.height - height, width, height },
    ambient,
    style,
  );
}

/** `At 12 km, air 0.19 bar` for a line above or below the panel. */
export function airWords(altitude: Altitude): string {
  if (altitude === 'vacuum') return 'In vacuum, no air outside';
  const where = altitude === 0 ? 'At sea level' : `At ${formatAltitude(altitude)}`;
  return `${where}, air ${formatPressure(ambientAt(altitude))}`;
}
