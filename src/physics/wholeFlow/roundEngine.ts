/**
 * The flow through a round nozzle and out into the air, without friction: from the chamber to behind the first shocks of the
 * jet, at one ambient pressure after the other, each field the beginning of the next.
 */

import {
  apartFlow,
  cellAt,
  type Flow,
  type FlowKernel,
  type FlowPoint,
  newFlow,
  type SideKind,
  type SidePart,
} from '../euler/index.ts';
import type { Expansion } from '../gas/index.ts';
import type { ContourPoint } from '../nozzle/index.ts';
import { type Beginning, carriedFields } from './carried.ts';
import { type ChamberLevel, fedChamber } from './chamberLevel.ts';
import { airGases, type FarAir, type FieldGases, stillAir } from './fieldGases.ts';
import { jetRoom, type LipState } from './jetRoom.ts';
import {
  BEHIND,
  type JetRoom,
  lineThrough,
  type MeshSize,
  meshSize,
  NOZZLE,
  type RoundShape,
  roundMesh,
} from './roundMesh.ts';
import { type WallCourse, wallCourse } from './wallCourse.ts';

export interface RoundEngine {
  readonly expansion: Expansion;
  /** From the injector face to the lip [m]. */ readonly wall: readonly ContourPoint[];
  /** [m] */ readonly throatRadius: number;
  /** By what the steps are taken; absent or null: by the reference. */ readonly kernel?: FlowKernel | null;
}

export interface RoundCase {
  readonly air: FarAir;
  /** [m] behind the throat where the flow is made to leave the wall; null: it keeps to it as it will */
  readonly leavesAt: number | null;
  /** Of an expansion–deflection nozzle: air fills the wake behind its pintle to begin with. */ readonly openWake?: boolean;
  /** In time: how much the chamber is fed; absent: from rest at full pressure. */ readonly level?: ChamberLevel;
  /** Air at rest everywhere to begin with. */ readonly unlit?: boolean;
  /** On a mesh for going through time, also where it is at rest to begin with. */ readonly timed?: boolean;
}

/** Longest of the cells' own steps over the shortest: by clocks that differ more a jet flaps, inside a nozzle and in still air, as it does not through time; own choice: with 16 it still does. */
export const SPREAD_ROUND_JET = 8;

/** What stays the same for every ambient pressure. */
export interface PreparedEngine {
  readonly engine: RoundEngine;
  readonly shape: RoundShape;
  readonly lip: LipState;
  readonly gases: FieldGases;
}

/** Thickness of the wall at the lip over the lip’s radius: not stated by a study. */
const THICKNESS = 0.05;
/** Chamber ahead of the throat that is in the field, in throat radii, at most. */
const CHAMBER = 3.5;

export function prepareRound(engine: RoundEngine): PreparedEngine {
  const { wall, expansion, throatRadius } = engine;
  const end = wall.at(-1)!;
  const course = wallCourse(wall);
  return {
    engine,
    shape: {
      wall: course,
      inlet: Math.max(wall[0]!.axial, -CHAMBER * throatRadius),
      lip: end.axial,
      thickness: THICKNESS * end.radius,
    },
    lip: { radius: end.radius, areaRatio: (end.radius / throatRadius) ** 2, angle: end.angle },
    gases: airGases(expansion),
  };
}

/** A case on a mesh, ready to be settled. */
export interface RoundFlow {
  readonly flow: Flow;
  readonly room: JetRoom;
  readonly size: MeshSize;
  readonly prepared: PreparedEngine;
  readonly case: RoundCase;
  /** First cell of the nozzle's wall that is left open; as many as it has: none */ readonly opens: number;
}

/** @param across cells from axis to wall @param from a field to begin from, on the same mesh or one half as fine */
export function roundFlow(
  prepared: PreparedEngine,
  which: RoundCase,
  size: MeshSize,
  from: readonly Beginning[] | null,
): RoundFlow {
  const { lip, gases, engine } = prepared;
  const { air, leavesAt } = which;
  const shape = { ...prepared.shape, through: leavesAt };
  const room = jetRoom(engine.expansion, lip, air.pressure);
  const still = stillAir(air);
  const far: SideKind = { is: 'far', air: still };
  const { blocks } = roundMesh(shape, room, size, {
    chamber: which.level === undefined ? gases.chamber : fedChamber(gases.chamber, which.level),
    air: far,
    pressed: { is: 'pressed', pressure: air.pressure },
  });
  const opens = lineThrough(shape, size);
  const opened = blocks.map(({ mesh, sides }, b) => ({
    mesh,
    sides: b === NOZZLE ? withOpenWall(sides, opens, { ...far, air: { ...still, u: 0 } }) : sides,
  }));
  const guess =
    from === null
      ? which.unlit
        ? unlit(still)
        : firstGuess(prepared, room, still)
      : carriedFields(from, still, size.nozzle / from[NOZZLE]!.mesh.ni, BEHIND);
  return {
    flow: (which.level === undefined ? newFlow : apartFlow)({
      blocks: opened,
      gases: gases.pair,
      start: guess,
      kernel: engine.kernel ?? null,
      spread: SPREAD_ROUND_JET,
    }),
    room,
    size,
    prepared,
    case: which,
    opens,
  };
}

/** @param coarsest cells from axis to wall of the coarsest mesh @param across of the mesh wanted, a multiple */
export function roundSize(prepared: PreparedEngine, coarsest: number, across: number): MeshSize {
  return meshSize(prepared.shape, coarsest, across);
}

/** From a cell of the wall on still air instead of metal. */
function withOpenWall(sides: readonly SidePart[], from: number, air: SideKind): readonly SidePart[] {
  return sides.flatMap((part) => {
    if (part.side !== 'jHigh' || from >= part.to) return [part];
    return [
      { ...part, to: from },
      { ...part, from, kind: air },
    ].filter((each) => each.to > each.from);
  });
}

type Start = (x: number, y: number, block: number, i: number, j: number) => FlowPoint;

/** The air outside as it comes, inside at rest. */
function unlit(air: FlowPoint): Start {
  return (_x, _y, block) => (block === NOZZLE ? { ...air, u: 0 } : air);
}

/** One-dimensional flow in the nozzle and as far as the jet is expected; air everywhere else. */
function firstGuess({ engine, shape }: PreparedEngine, room: JetRoom, air: FlowPoint): Start {
  const { expansion, throatRadius } = engine;
  const at = along(expansion, throatRadius, shape.wall, shape.inlet, shape.lip);
  const jet = along(expansion, throatRadius, room.edge, 0, room.fine);
  const floor = Math.max(air.pressure, 0);
  return (x, y, block) => {
    const behind = x - shape.lip;
    if (block === NOZZLE) return at(x);
    if (block !== BEHIND || y > room.edge(behind)) return air;
    const point = jet(behind);
    return point.pressure > floor
      ? point
      : { ...point, density: point.density * (floor / point.pressure) ** 0.8, pressure: floor };
  };
}

/** States of one-dimensional flow, found once at places along. */
function along(
  expansion: Expansion,
  throatRadius: number,
  radius: WallCourse,
  from: number,
  to: number,
): (x: number) => FlowPoint {
  const COUNT = 60;
  const states = Array.from({ length: COUNT + 1 }, (_, k): FlowPoint => {
    const x = from + ((to - from) * k) / COUNT;
    const area = Math.max(1.0001, (radius(x) / throatRadius) ** 2);
    const { density, velocity, pressure } = expansion.atAreaRatio(
      area,
      from < 0 && x < 0 ? 'subsonic' : 'supersonic',
    );
    return { density, u: velocity, v: 0, pressure, share: 1 };
  });
  return (x) => states[Math.min(COUNT, Math.max(0, Math.round(((x - from) / (to - from)) * COUNT)))]!;
}

/**
 * The axial push on the engine [N]: what leaves the nozzle, the air's pressure on all the rest taken off. Where the gas is made to leave the
 * wall, what comes in and the wall up to there: of the free jet behind it that flaps the engine feels nothing.
 */
export function thrustOf(round: RoundFlow): number {
  const { flow, size, opens, prepared, case: which } = round;
  if (opens < size.nozzle && which.level === undefined) return pushToWhereItLeaves(round);
  const leaving = flow.through(NOZZLE, { side: 'iHigh', from: 0, to: size.across }).x;
  const beside =
    opens < size.nozzle ? flow.through(NOZZLE, { side: 'jHigh', from: opens, to: size.nozzle }).x : 0;
  const radius = opens < size.nozzle ? radiusAt(round, opens) : prepared.lip.radius;
  return leaving + beside - which.air.pressure * Math.PI * radius * radius;
}

function pushToWhereItLeaves(round: RoundFlow): number {
  const { flow, size, opens, case: which } = round;
  const coming = flow.through(NOZZLE, { side: 'iLow', from: 0, to: size.across }).x;
  const wall = flow.through(NOZZLE, { side: 'jHigh', from: 0, to: opens }).x;
  return -coming - wall - which.air.pressure * Math.PI * radiusAt(round, opens) ** 2;
}

/** Of the wall where a line of the mesh meets it [m]. */
function radiusAt({ flow }: RoundFlow, line: number): number {
  const { y, ni, nj } = flow.fields[NOZZLE]!.mesh;
  return y[nj * (ni + 1) + line]!;
}

/** Mean of p over the axis in the fine part behind the lip [Pa]: tells whether the jet stands still. */
export function axisPressure({ flow, size }: RoundFlow): number {
  const { mesh, pressure } = flow.fields[BEHIND]!;
  let sum = 0;
  for (let i = 0; i < size.fine; i++) sum += Math.log(pressure[cellAt(mesh, i, 0)]!);
  return Math.exp(sum / size.fine);
}
