/** The engine cut open as far as it has grown: each ring tinted by the pressure on it, an arrow for its push or pull. */

import type { EngineAnswer } from '../../answer/model.ts';
import { topOf, widest } from '../figures/cutPlaces.ts';
import type { PanelStyle } from '../figures/overAltitudeAxes.ts';
import type { EngineStyle } from '../look/engineStyles.ts';
import { pressureStep } from '../look/pressureRamp.ts';
import type { Box } from '../scene/box.ts';
import { type Point, polyline } from '../scene/pathData.ts';
import type { SceneNode } from '../scene/scene.ts';
import type { ThrustPiece } from './thrustRings.ts';

export interface SectionPlan {
  readonly axisX: number;
  /** y of an axial place [m] */ readonly y: (axial: number) => number;
  /** [px/m] */ readonly scale: number;
  readonly top: number;
  readonly lip: number;
  /** Height of a bar for what is no stretch of the wall. */ readonly row: number;
  /** Room for the running sum. */ readonly beside: Box;
}

/** Share of the width for the section. */
const SECTION = 0.36;
/** Rows above the section, and below it. */
const ROWS = { above: 1, below: 2.6 } as const;
/** Room beside the wall for arrows and for the column of air, in label sizes. */
const MARGIN = 1;

export function sectionPlan(engine: EngineAnswer, box: Box, { type }: PanelStyle): SectionPlan {
  const row = 1.15 * type.label;
  const above = topOf(engine);
  const length = engine.contour.totalLength;
  const width = SECTION * box.width;
  const room = box.height - (ROWS.above + ROWS.below) * row - 1.4 * type.small;
  const scale = Math.min(room / length, (width - 2 * MARGIN * type.label) / (2 * widest(engine)));
  const top = box.y + ROWS.above * row;
  const left = box.x + width + 0.6 * type.label;
  return {
    axisX: box.x + width / 2,
    scale,
    y: (axial) => top + (axial - above) * scale,
    top,
    lip: top + length * scale,
    row,
    beside: { x: left, y: box.y, width: box.x + box.width - left, height: box.height },
  };
}

/** The nodes for the first `count` pieces. */
export function growingSection(
  engine: EngineAnswer,
  pieces: readonly ThrustPiece[],
  plan: SectionPlan,
  style: EngineStyle,
  panel: PanelStyle,
): (count: number) => readonly SceneNode[] {
  const rings = pieces.filter(({ pressure }) => pressure !== null);
  const strongest = Math.max(...rings.map(({ force }) => Math.abs(force)), 0);
  /** [px/N] of an arrow */
  const arrow = strongest > 0 ? (1.5 * panel.type.label) / strongest : 0;
  return (count) => {
    const shown = pieces.slice(0, count);
    const end = shown.reduce((far, { to }) => (to !== null && to > far ? to : far), Number.NEGATIVE_INFINITY);
    if (!Number.isFinite(end) && count === 0) return [];
    const isWhole = count >= pieces.length;
    const upTo = isWhole ? Number.POSITIVE_INFINITY : Number.isFinite(end) ? end : topOf(engine);
    return [
      ...gasNodes(engine, shown, plan),
      ...wallNodes(engine, upTo, plan, panel),
      ...shown.flatMap((piece) =>
        piece.pressure === null ? [] : arrowNodes(engine, piece, arrow, plan, style, panel),
      ),
    ];
  };
}

const radiusAt = (engine: EngineAnswer, axial: number): number => radiusOn(outline(engine), axial);

/** The wall on which the rings lie. */
const outline = ({
  wall,
  contour,
}: EngineAnswer): readonly { readonly axial: number; readonly radius: number }[] =>
  contour.plug === undefined ? wall : contour.plug.wall;

function gasNodes(engine: EngineAnswer, pieces: readonly ThrustPiece[], plan: SectionPlan): SceneNode[] {
  if (engine.contour.plug !== undefined) return [];
  return pieces.flatMap(({ from, to, pressure }): SceneNode[] => {
    if (from === null || to === null || pressure === null) return [];
    const places = [
      from,
      ...outline(engine)
        .map(({ axial }) => axial)
        .filter((axial) => axial > from && axial < to),
      to,
    ];
    const side = (sign: -1 | 1): Point[] =>
      places.map((axial) => ({
        x: plan.axisX + sign * radiusAt(engine, axial) * plan.scale,
        y: plan.y(axial),
      }));
    const step = pressureStep(pressure);
    const colour = step === 0 ? 'paper' : (`pressure-${step}` as const);
    return [
      {
        kind: 'path',
        d: polyline([...side(-1), ...side(1).reverse()], true),
        fill: colour,
        stroke: colour,
        strokeWidth: 1.5,
      },
    ];
  });
}

function wallNodes(engine: EngineAnswer, upTo: number, plan: SectionPlan, { line }: PanelStyle): SceneNode[] {
  const drawn = (
    wall: readonly { readonly axial: number; readonly radius: number }[],
    limit: number,
  ): SceneNode[] => {
    const known = wall.filter(({ axial }) => axial < limit);
    const last = wall.at(-1);
    if (last !== undefined && last.axial > limit) known.push({ axial: limit, radius: radiusOn(wall, limit) });
    if (known.length < 2) return [];
    return ([-1, 1] as const).map((sign) => ({
      kind: 'path',
      d: polyline(
        known.map(({ axial, radius }) => ({ x: plan.axisX + sign * radius * plan.scale, y: plan.y(axial) })),
      ),
      stroke: 'ink',
      strokeWidth: line.metal,
    }));
  };
  const face = outline(engine)[0];
  const { plug, wall } = engine.contour;
  const inner = plug === undefined ? 0 : (plug.wall[0]?.radius ?? 0);
  const outer = (plug === undefined ? face : wall[0])?.radius ?? 0;
  const faceY = plan.y(face?.axial ?? 0);
  const faces: SceneNode[] = ([-1, 1] as const).map((sign) => ({
    kind: 'path',
    d: polyline([
      { x: plan.axisX + sign * inner * plan.scale, y: faceY },
      {
        x: plan.axisX + sign * outer * plan.scale,
        y: plug === undefined ? faceY : plan.y(wall[0]?.axial ?? 0),
      },
    ]),
    stroke: 'ink',
    strokeWidth: line.metal,
  }));
  return [
    ...faces,
    ...drawn(outline(engine), upTo),
    ...(plug === undefined ? [] : drawn(wall, Number.POSITIVE_INFINITY)),
  ];
}

function radiusOn(
  wall: readonly { readonly axial: number; readonly radius: number }[],
  axial: number,
): number {
  const next = wall.findIndex((place) => place.axial >= axial);
  const [a, b] = [wall[Math.max(next - 1, 0)], wall[next < 0 ? wall.length - 1 : next]];
  if (a === undefined || b === undefined || a.axial === b.axial || next < 0) return b?.radius ?? 0;
  return a.radius + ((axial - a.axial) / (b.axial - a.axial)) * (b.radius - a.radius);
}

/** Below this an arrow has no shape [px]. */
const SHORTEST = 4;

/** On either side of the wall: filled upwards where it pushes, hollow downwards where it pulls; length true to force. */
function arrowNodes(
  engine: EngineAnswer,
  { from, to, force }: ThrustPiece,
  scale: number,
  plan: SectionPlan,
  style: EngineStyle,
  { type, line }: PanelStyle,
): SceneNode[] {
  const long = Math.abs(force) * scale;
  if (from === null || to === null || long < SHORTEST) return [];
  const middle = (from + to) / 2;
  const apart =
    radiusAt(engine, middle) * plan.scale + (engine.contour.plug === undefined ? 1 : -1) * 0.45 * type.label;
  const pushes = force > 0;
  const up = pushes ? -1 : 1;
  const head = Math.min(0.3 * type.label, long);
  const half = 0.13 * type.label;
  const y = plan.y(middle);
  return ([-1, 1] as const).map((sign) => {
    const x = plan.axisX + sign * apart;
    const tip = y + up * long;
    const neck = tip - up * head;
    return {
      kind: 'path',
      d: polyline(
        [
          { x: x - 0.4 * half, y },
          { x: x - 0.4 * half, y: neck },
          { x: x - half, y: neck },
          { x, y: tip },
          { x: x + half, y: neck },
          { x: x + 0.4 * half, y: neck },
          { x: x + 0.4 * half, y },
        ],
        true,
      ),
      fill: pushes ? style.colour : 'paper',
      stroke: style.colour,
      strokeWidth: 0.5 * line.leader,
    };
  });
}
