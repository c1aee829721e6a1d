/**
 * Engines cut open, hanging from one mounting line at one scale, the gas in them coloured by its
 * one-dimensional mean pressure, the air around them by its own.
 */

import type { ConditionRow, StudyAnswer } from '../../answer/model.ts';
import type { BoundaryPoint } from '../../answer/plumeModel.ts';
import type { Tint } from '../look/flowRamps.ts';
import { textWidth, wrapAtMost, wrapBalanced, wrapText } from '../look/measureText.ts';
import { formatAltitude, formatNumber, formatPressure } from '../numbers/formatNumber.ts';
import type { Box } from '../scene/box.ts';
import { segment } from '../scene/pathData.ts';
import { plainText } from '../scene/safeText.ts';
import { group, type SceneNode } from '../scene/scene.ts';
import { ambientAt, conditionAt, rowsOf } from './conditions.ts';
import { airReach, engineNodes, gasEnd, mounting, wash } from './cutEngine.ts';
import { type CutEngine, lipY, topOf, type UnplacedEngine, widest } from './cutPlaces.ts';
import { jetBoundary } from './cutPlug.ts';
import { edgeByField, edgeFrom, JET_ROOM } from './cutPlume.ts';
import { adapts, type DrawnEngine, drawnEngines, inMode } from './drawnEngines.ts';
import { LEADING, lineSample, type Words, wordsAt, wordsSize } from './marks.ts';
import type { Altitude, FigureOptions } from './options.ts';
import type { PanelStyle } from './overAltitudeAxes.ts';
import { jetEdge } from './plumeHere.ts';
import {
  pressureKey,
  pressureKeyHeight,
  pressureKeyUpright,
  pressureKeyUprightWidth,
} from './pressureKey.ts';

export interface CutPanelOptions extends FigureOptions {
  /** Ids of engines over which a computed field is laid: air and jet are its own. */
  readonly underField?: readonly string[];
  /** Room below the longest engine for its jet, as a share of its length; absent: the usual. */
  readonly jetRoom?: number;
  /** Rows at this altitude by engine id, where the caller has computed them exactly. */
  readonly rows?: Readonly<Record<string, ConditionRow>>;
  /** Names and facts above the mounting line; true unless the page has its own. */ readonly legend?: boolean;
  /** Key to the pressure ramp at the foot; true unless the page has its own. */ readonly key?: boolean;
  /** [px] left free between two engines, for what a page puts there; none unless said. */
  readonly middle?: number;
  /** What the gas is drawn by; its pressure unless said. */ readonly tint?: Tint;
  /** Draw this engine alone, in the style that it has beside the others. */ readonly only?: string;
  /** Places that the same drawing shows as well: room is kept for the words of all, so that nothing moves between them. */
  readonly alsoAt?: readonly CutPlace[];
}

/** A place, and the rows of the engines there by their id. */
export interface CutPlace {
  readonly altitude: Altitude;
  readonly rows: Readonly<Record<string, ConditionRow>>;
}

export interface CutPanel {
  readonly nodes: readonly SceneNode[];
  /** [px/m] the one scale */ readonly scale: number;
  /** By engine id: axis and mounting line on the drawing, for pages that add to it. */
  readonly places: Readonly<Record<string, CutPlaced>>;
}

export interface CutPlaced {
  /** [px] */ readonly axisX: number;
  readonly faceY: number;
  /** [m] from the throat plane, of what lies at `faceY` */ readonly top: number;
  /** [px] where its jet may be drawn */ readonly jetBox: Box;
}

/** What stands where. */
interface Plan {
  /** Words beside the engines, so that these may be tall; else above and below them. */ readonly beside: boolean;
  /** The key upright after the first engine; else along the foot. */ readonly keyUpright: boolean;
  readonly count: number;
  /** Width of an engine with its words. */ readonly cell: number;
  /** Width of the words beside an engine; 0 when they stand above and below. */ readonly column: number;
  /** Width left out after the first cell. */ readonly between: number;
}

/** Words beside the engines and the key below them: there is room for the shortest only. */
const isTight = (plan: Plan): boolean => plan.beside && !plan.keyUpright;

/** Widths of the words beside an engine, in label sizes: the least that reads well, and the most. */
const COLUMN = { least: 5, most: 9 } as const;

function planOf(
  box: Box,
  count: number,
  {
    legend,
    key,
    middle,
    tint,
  }: {
    readonly legend: boolean;
    readonly key: boolean;
    readonly middle: number;
    readonly tint: Tint;
  },
  { type }: PanelStyle,
): Plan {
  const keyUpright = key && box.width > 33 * type.label;
  const between = keyUpright ? pressureKeyUprightWidth(type.small, tint) + 1.4 * type.label : middle;
  const cell = (box.width - (keyUpright ? between : between * (count - 1))) / count;
  const column = Math.min(0.46 * cell, COLUMN.most * type.label);
  const beside = legend && cell > 0.85 * box.height && column >= COLUMN.least * type.label;
  return { count, beside, keyUpright, cell, between, column: beside ? column : 0 };
}

/** An engine with all the words said of it. */
interface Spoken {
  readonly drawn: CutEngine;
  readonly names: readonly Words[];
  readonly state: readonly Words[];
  /** Left edge of its cell. */ readonly left: number;
  /** Left edge of the words beside it. */ readonly wordsLeft: number;
}

export function cutPanel(
  answer: StudyAnswer,
  altitude: Altitude,
  box: Box,
  style: PanelStyle,
  options: CutPanelOptions,
): CutPanel {
  const { type } = style;
  const ambient = ambientAt(altitude);
  const engines = drawnEngines(answer, 2, options.styles)
    .engines.filter(({ engine }) => options.only === undefined || engine.id === options.only)
    .map((drawn) => ({
      ...drawn,
      row: options.rows?.[drawn.engine.id] ?? conditionAt(rowsOf(drawn.engine, options), ambient),
    }));
  const legend = options.legend !== false;
  const key = options.key !== false;
  const plan = planOf(
    box,
    engines.length,
    { legend, key, middle: options.middle ?? 0, tint: options.tint ?? 'pressure' },
    style,
  );
  const wordsWidth = plan.beside ? plan.column - 0.5 * type.label : 0.94 * plan.cell;
  const states = engines.map((drawn) => stateWords(drawn, ambient, wordsWidth, { plan, legend }, style));
  const roomFor = engines.map((drawn, i) =>
    tallest([
      states[i] ?? [],
      ...(options.alsoAt ?? []).map((place) => {
        const row = place.rows[drawn.engine.id] ?? drawn.row;
        return stateWords({ ...drawn, row }, ambientAt(place.altitude), wordsWidth, { plan, legend }, style);
      }),
    ]),
  );
  const names = engines.map((drawn, i) => {
    if (!legend) return [];
    const lines = plan.beside ? factLinesBeside(box, i === 0, roomFor[i] ?? 0, style) : 3;
    return legendWords(drawn, wordsWidth, lines, isTight(plan) ? type.foot : type.small, style);
  });
  const engineWidth = plan.cell - plan.column;
  const { mountY, faceY, scale, floor } = hang(
    engines,
    box,
    plan,
    {
      ...{ legend, key, names: tallest(names), states: Math.max(...roomFor) },
      jetRoom: options.jetRoom ?? JET_ROOM,
    },
    style,
  );
  const spoken = engines.map((drawn, i): Spoken => {
    const left = box.x + i * (plan.cell + plan.between);
    const axisX = left + (i === 0 ? plan.column : 0) + engineWidth / 2;
    const inUse = { ...drawn, engine: inMode(drawn.engine, drawn.row.mode) };
    const jetWidth = 0.98 * engineWidth;
    return {
      drawn: {
        ...inUse,
        scale,
        mountY,
        faceY,
        axisX,
        tint: options.tint ?? 'pressure',
        edge: options.underField?.includes(drawn.engine.id) === true ? [] : edgeOf(inUse, ambient),
        jetBox: { x: axisX - jetWidth / 2, y: faceY, width: jetWidth, height: floor - faceY },
      },
      names: names[i] ?? [],
      state: states[i] ?? [],
      left,
      wordsLeft: i === 0 ? left : left + engineWidth + 0.5 * type.label,
    };
  });
  const half = (plan.beside ? 0.46 : 0.42) * engineWidth;
  const isBare = ({ drawn: { engine } }: Spoken): boolean => options.underField?.includes(engine.id) !== true;
  return {
    scale,
    places: Object.fromEntries(
      spoken.map(({ drawn: { engine, axisX, jetBox } }) => [
        engine.id,
        { axisX, faceY, top: topOf(engine), jetBox },
      ]),
    ),
    nodes: [
      group(
        'air',
        spoken.filter(isBare).flatMap(({ drawn }) => wash(drawn, ambient, airWidth(plan, box), box, style)),
      ),
      ...spoken.map((one) =>
        group(`${one.drawn.style.colour} cut`, [
          ...mounting(one.drawn, half, style),
          ...engineNodes(one.drawn, ambient, style),
          ...(plan.beside ? wordsBeside(one, style) : wordsAboveAndBelow(one, box.y, half, style)),
        ]),
      ),
      group('scale', scaleBar(box, scale, plan, style)),
      ...(key ? [group('key', keyNodes(box, plan, ambient, scale, style, options.tint))] : []),
    ],
  };
}

/** The edge of an engine's jet, as the drawing has it. */
function edgeOf(drawn: UnplacedEngine, ambient: number): readonly BoundaryPoint[] {
  const edge = jetEdge(drawn.engine, ambient);
  if (drawn.engine.contourIs === 'notional') return edgeFrom(edge, gasEnd(drawn));
  return edgeByField(jetBoundary(drawn.row.field), edge);
}

/** Room over which the air may fade around an engine; beside the words no more than its height asks for. */
function airWidth(plan: Plan, box: Box): number {
  const width = plan.cell - plan.column;
  return plan.beside ? Math.min(width, 0.9 * box.height) : width;
}

const tallest = (all: readonly (readonly Words[])[]): number =>
  Math.max(...all.map((lines) => wordsSize(lines).height));

/** Where the engines hang, and at which scale: as large as the room left by all words allows. */
function hang(
  engines: readonly DrawnEngine[],
  box: Box,
  plan: Plan,
  words: {
    readonly legend: boolean;
    readonly key: boolean;
    readonly names: number;
    readonly states: number;
    readonly jetRoom: number;
  },
  { type }: PanelStyle,
): {
  readonly mountY: number;
  readonly faceY: number;
  readonly scale: number;
  /** [px] below it stand the key and the scale */ readonly floor: number;
} {
  const above = plan.beside || !words.legend ? 0 : (LEADING + 0.4) * type.label + words.names;
  const air = plan.keyUpright ? 1.8 * airReach(airWidth(plan, box), type) : 0;
  const below = plan.beside ? air : words.states + 0.6 * type.label;
  const keyHeight = words.key && !plan.keyUpright ? pressureKeyHeight(type.small) : 0;
  const barHeight = plan.beside ? 0 : 1.6 * type.small;
  const foot = Math.max(keyHeight, barHeight);
  const mountY = box.y + above;
  const faceY = mountY + 0.7 * type.label;
  const floor = box.y + box.height - foot - (foot > 0 ? 0.4 * type.label : 0);
  const room = floor - faceY;
  // Beside the engines the air must fade before it reaches the words.
  const width = (plan.beside ? 0.64 : 0.82) * (plan.cell - plan.column);
  const longest = Math.max(...engines.map(({ engine }) => engine.contour.totalLength));
  const scale = Math.min(
    (room - below) / longest,
    room / ((1 + words.jetRoom) * longest),
    width / Math.max(...engines.map(({ engine }) => 2 * widest(engine))),
  );
  return { mountY, faceY, scale, floor };
}

function wordsBeside({ drawn, names, state, wordsLeft }: Spoken, style: PanelStyle): SceneNode[] {
  const { type } = style;
  const top = drawn.mountY - 0.2 * type.label;
  const below = top + (LEADING + 0.5) * type.label + wordsSize(names).height;
  return [...nameNodes(drawn, names, wordsLeft, top, style), ...wordsAt(state, wordsLeft, below)];
}

function wordsAboveAndBelow(
  { drawn, names, state }: Spoken,
  top: number,
  half: number,
  style: PanelStyle,
): SceneNode[] {
  const below = lipY(drawn) + 0.4 * style.type.label;
  return [
    ...nameNodes(drawn, names, drawn.axisX - half, top, style),
    ...wordsAt(state, drawn.axisX, below, 'middle', true),
  ];
}

/** Line sample, and below it name and plain facts: the legend. */
function nameNodes(
  drawn: CutEngine,
  names: readonly Words[],
  x: number,
  y: number,
  { type, line }: PanelStyle,
): SceneNode[] {
  if (names.length === 0) return [];
  return [
    ...lineSample(
      drawn.style,
      x,
      y + 0.55 * type.label,
      2.6 * type.label,
      0.8 * line.curve,
      0.75 * line.marker,
    ),
    ...wordsAt(names, x, y + LEADING * type.label),
  ];
}

/** How many lines of facts the column beside an engine has room for, the scale bar below the first one. */
function factLinesBeside(box: Box, overScale: boolean, states: number, { type }: PanelStyle): number {
  const rest = box.height - (overScale ? 2 * type.small : 0) - states - (2 * LEADING + 0.5) * type.label;
  return Math.max(1, Math.min(4, Math.floor(rest / (LEADING * type.foot))));
}

/** Name and plain facts. */
function legendWords(
  drawn: DrawnEngine,
  width: number,
  factLines: number,
  factSize: number,
  { type }: PanelStyle,
): Words[] {
  const name = wrapAtMost(plainText(drawn.engine.name), width, type.label, 700, 2);
  const facts = wrapBalanced(plainText(drawn.engine.description), width, factSize, 400, factLines);
  return [
    ...name.map((text): Words => ({ text, size: type.label, weight: 700, fill: drawn.style.colour })),
    ...facts.map((text): Words => ({ text, size: factSize, weight: 400, fill: 'ink-2' })),
  ];
}

/** Said of each engine: mean pressure of what leaves it, and whether it fills the nozzle. */
function stateWords(
  { engine, row }: DrawnEngine & { readonly row: ConditionRow },
  ambient: number,
  width: number,
  { plan, legend }: { readonly plan: Plan; readonly legend: boolean },
  { type }: PanelStyle,
): Words[] {
  const size = 0.92 * type.label;
  const strong = (text: string): Words[] =>
    wrapText(text, width, size, 600).map((line) => ({ text: line, size, weight: 600, fill: 'ink' }));
  const plain = (text: string): Words[] =>
    wrapText(plainText(text), width, size, 400).map((line) => ({
      text: line,
      size,
      weight: 400,
      fill: 'ink',
    }));
  const telling = (tells: string, lines: readonly Words[]): Words[] =>
    lines.map((line) => ({ ...line, tells }));
  const { state, criterion } = row.flow;
  if (state === 'unchoked') return [...strong('the flow does not choke'), ...plain('not drawn here')];
  if (state === 'separated') {
    const where =
      row.separation === undefined ? 'estimated' : `ε ≈ ${formatNumber(row.separation.place.areaRatio, 2)}`;
    return [
      ...strong('flow leaves the wall'),
      ...plain(isTight(plan) ? criterion : `${where}, ${criterion}`),
    ];
  }
  const plug = plugState(row);
  if (plug !== null) {
    const inJet = telling('exitPressure', strong(`${formatPressure(row.exitPressure)} in the jet`));
    return [
      ...inJet,
      ...(row.plug?.base === undefined ? plain(plug) : telling('plug.base.pressure', plain(plug))),
    ];
  }
  const fills = adapts(engine)
    ? row.exitPressure > ambient * 1.001
      ? 'fully open'
      : 'matches the air'
    : state === 'near the limit'
      ? 'about to leave the wall'
      : 'flows full';
  // Where there are no names there is no foot either that says so.
  const notional = engine.contourIs === 'notional' && !legend ? ', notional outline' : '';
  const mode = row.mode === undefined ? '' : `, ${row.mode}`;
  return [
    ...telling('exitPressure', strong(`${formatPressure(row.exitPressure)} at the exit`)),
    ...plain(`${fills}${mode}${notional}`),
  ];
}

/** What a plug's base feels; null where there is no plug. */
function plugState({ plug }: ConditionRow): string | null {
  if (plug === undefined) return null;
  if (plug.base === undefined) return 'whole plug';
  return `wake ${plug.base.wake}, ${formatPressure(plug.base.pressure)} at the base`;
}

/** A bar of a round length, and what it is worth; as long as the words beside the engines, or a part of a cell. */
function scaleBar(box: Box, scale: number, plan: Plan, style: PanelStyle): SceneNode[] {
  const { type, line } = style;
  const width = scaleLength(plan, scale, style) * scale;
  const tick = 0.3 * type.small;
  const y = box.y + box.height - 1.2 * tick;
  const text = scaleWords(plan, scale, style);
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

/** [m] */
function scaleLength(plan: Plan, scale: number, { type }: PanelStyle): number {
  const most = plan.beside ? plan.column - 0.5 * type.label : 0.3 * plan.cell;
  return roundLength(most / scale);
}

function scaleWords(plan: Plan, scale: number, style: PanelStyle): string {
  return `${lengthWords(scaleLength(plan, scale, style))}${plan.count > 1 ? ', both engines' : ''}`;
}

/** The largest of 1, 2, 5 times a power of ten that is not above a length. */
function roundLength(length: number): number {
  const power = 10 ** Math.floor(Math.log10(length) + 1e-12);
  const lead = length / power;
  return (lead >= 5 ? 5 : lead >= 2 ? 2 : 1) * power;
}

function lengthWords(length: number): string {
  const inMetres = length >= 1;
  const value = Number((inMetres ? length : length < 0.01 ? length * 1000 : length * 100).toPrecision(6));
  return `${value}\u00a0${inMetres ? 'm' : length < 0.01 ? 'mm' : 'cm'}`;
}

function keyNodes(
  box: Box,
  plan: Plan,
  ambient: number,
  scale: number,
  style: PanelStyle,
  tint: Tint = 'pressure',
): SceneNode[] {
  const { type } = style;
  if (plan.keyUpright) {
    const width = pressureKeyUprightWidth(type.small, tint);
    const x = box.x + plan.cell + (plan.between - width) / 2;
    return pressureKeyUpright({ x, y: box.y, width, height: box.height }, ambient, style, tint);
  }
  const height = pressureKeyHeight(type.small);
  const y = box.y + box.height - height;
  const scaleEnd = textWidth(scaleWords(plan, scale, style), type.small, 400) + 0.7 * type.small;
  if (plan.beside) {
    // Between the columns of words, which go on down beside it, and clear of the words of the scale.
    const x = box.x + Math.max(plan.column + 0.6 * type.label, scaleEnd);
    const end = box.x + box.width - (plan.count > 1 ? plan.column + 0.4 * type.label : 0);
    return pressureKey({ x, y, width: end - x, height }, ambient, style, tint);
  }
  const width = Math.min(Math.max(14.5 * type.small, 0.42 * box.width), box.width - scaleEnd);
  const place = { x: box.x + box.width - width, y, width, height };
  return pressureKey(place, ambient, style, tint);
}

/** `At 12 km, air 0.19 bar` for a line above or below the panel. */
export function airWords(altitude: Altitude): string {
  if (altitude === 'vacuum') return 'In vacuum, no air outside';
  const where = altitude === 0 ? 'At sea level' : `At ${formatAltitude(altitude)}`;
  return `${where}, air ${formatPressure(ambientAt(altitude))}`;
}
