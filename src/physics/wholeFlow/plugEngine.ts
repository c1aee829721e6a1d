/** The flow through the ring of an annular plug, along the plug and out into the air, without friction. */

import { apartFlow, type Flow, newFlow, type SideKind } from '../euler/index.ts';
import { type Beginning, carriedFields } from './carried.ts';
import { fedChamber } from './chamberLevel.ts';
import { type FarAir, stillAir } from './fieldGases.ts';
import { plugGuess } from './plugGuess.ts';
import { AT_LIP, type PlugRoom, type PlugSize } from './plugLayout.ts';
import { plugMesh, plugSize, RING, ROUND_PLUG, WAKE } from './plugMesh.ts';
import { plugRoom } from './plugRoom.ts';
import type { PreparedPlug } from './plugShape.ts';
import type { RoundCase } from './roundEngine.ts';

/** Longest of the cells' own steps over the shortest: by clocks that differ more the jet flaps in still air as it does not through time. */
const SPREAD_PLUG_JET = 50;

export interface PlugFlow {
  readonly flow: Flow;
  readonly room: PlugRoom;
  readonly size: PlugSize;
  readonly prepared: PreparedPlug;
  readonly air: FarAir;
}

/** @param timed through time: the cells beside the lip are not as short, nor are the steps */
export function sizeOfPlug(
  { shape }: PreparedPlug,
  coarsest: number,
  across: number,
  timed = false,
): PlugSize {
  return plugSize(shape, coarsest, across, timed ? AT_LIP.inTime : AT_LIP.atRest);
}

export function plugFlow(
  prepared: PreparedPlug,
  { air, level, unlit }: Pick<RoundCase, 'air' | 'level' | 'unlit'>,
  size: PlugSize,
  from: readonly Beginning[] | null,
): PlugFlow {
  const { shape, gases, engine } = prepared;
  const room = plugRoom(engine, shape, air.pressure);
  const still = stillAir(air);
  const far: SideKind = { is: 'far', air: still };
  const blocks = plugMesh(shape, room, size, {
    chamber: level === undefined ? gases.chamber : fedChamber(gases.chamber, level),
    air: far,
    pressed: { is: 'pressed', pressure: air.pressure },
  });
  const start =
    from === null
      ? unlit
        ? () => ({ ...still, u: 0 })
        : plugGuess(prepared, blocks, still, size)
      : carriedFields(from, still, size.ring / from[RING]!.mesh.ni, ROUND_PLUG);
  const flow = (level === undefined ? newFlow : apartFlow)({
    blocks,
    gases: gases.pair,
    start,
    kernel: engine.kernel ?? null,
    spread: SPREAD_PLUG_JET,
    corners: size.throat < size.ring ? [{ block: RING, side: 'jLow', at: size.throat }] : [],
  });
  return { flow, room, size, prepared, air };
}

/** Axial pushes [N], the air’s pressure taken off, and the gas [kg/s] of the whole engine. */
export interface PlugPushes {
  /** Of what leaves the ring, and of the plug behind it. */ readonly stream: number;
  readonly base: number;
  /** Mean on the base [Pa] */ readonly basePressure: number;
  readonly massFlow: number;
}

export function pushesOfPlug({ flow, size, prepared, air }: PlugFlow): PlugPushes {
  const { shape, engine } = prepared;
  const leaving = flow.through(RING, { side: 'iHigh', from: 0, to: size.across });
  const plug = flow.through(ROUND_PLUG, { side: 'jLow', from: 0, to: size.plug }).x;
  const base = flow.through(WAKE, { side: 'iLow', from: 0, to: size.wake }).x;
  // Of a linear plug the field is the upper half, a metre wide.
  const whole = engine.width === null ? 1 : 2 * engine.width;
  const inside = (height: number): number => (engine.width === null ? Math.PI * height * height : height);
  const cut = inside(shape.plug.at(-1)![1]);
  return {
    stream: whole * (leaving.x - plug - air.pressure * (inside(shape.ring.at(-1)!.outer[1]) - cut)),
    base: whole * (-base - air.pressure * cut),
    basePressure: -base / cut,
    massFlow: whole * leaving.mass,
  };
}

/** The axial push on the engine [N]. */
export function thrustOfPlug(plug: PlugFlow): number {
  const { stream, base } = pushesOfPlug(plug);
  return stream + base;
}
