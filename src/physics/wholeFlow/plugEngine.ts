/** The flow through the ring of an annular plug, along the plug and out into the air, without friction. */

import { cellAt, type Flow, newFlow, type SideKind } from '../euler/index.ts';
import { type Beginning, carriedFields } from './carried.ts';
import { type FarAir, stillAir } from './fieldGases.ts';
import { plugGuess } from './plugGuess.ts';
import type { PlugRoom, PlugSize } from './plugLayout.ts';
import { plugMesh, plugSize, RING, ROUND_PLUG, WAKE } from './plugMesh.ts';
import { plugRoom } from './plugRoom.ts';
import type { PreparedPlug } from './plugShape.ts';

export interface PlugFlow {
  readonly flow: Flow;
  readonly room: PlugRoom;
  readonly size: PlugSize;
  readonly prepared: PreparedPlug;
  readonly air: FarAir;
}

export function sizeOfPlug({ shape }: PreparedPlug, coarsest: number, across: number): PlugSize {
  return plugSize(shape, coarsest, across);
}

export function plugFlow(
  prepared: PreparedPlug,
  air: FarAir,
  size: PlugSize,
  from: readonly Beginning[] | null,
): PlugFlow {
  const { shape, gases, engine } = prepared;
  const room = plugRoom(engine, shape, air.pressure);
  const still = stillAir(air);
  const far: SideKind = { is: 'far', air: still };
  const blocks = plugMesh(shape, room, size, {
    chamber: gases.chamber,
    air: far,
    pressed: { is: 'pressed', pressure: air.pressure },
  });
  const start =
    from === null
      ? plugGuess(prepared, blocks, still, size)
      : carriedFields(from, still, size.ring / from[RING]!.mesh.ni, ROUND_PLUG);
  const flow = newFlow({ blocks, gases: gases.pair, start, kernel: engine.kernel ?? null });
  return { flow, room, size, prepared, air };
}

/** The axial push on the engine [N]: what leaves the ring, less what plug and base feel backwards, the air’s pressure taken off. */
export function thrustOfPlug({ flow, size, prepared, air }: PlugFlow): number {
  const leaving = flow.through(RING, { side: 'iHigh', from: 0, to: size.across }).x;
  const plug = flow.through(ROUND_PLUG, { side: 'jLow', from: 0, to: size.plug }).x;
  const base = flow.through(WAKE, { side: 'iLow', from: 0, to: size.wake }).x;
  const lip = prepared.shape.ring.at(-1)!.outer[1];
  return leaving - plug - base - air.pressure * Math.PI * lip * lip;
}

/** Mean pressure on the base [Pa]. */
export function basePressureOf({ flow, size }: PlugFlow): number {
  const { mesh, pressure } = flow.fields[WAKE]!;
  let [push, area] = [0, 0];
  for (let j = 0; j < size.wake; j++) {
    const a = mesh.iFaceX[j * (mesh.ni + 1)]!;
    push += a * pressure[cellAt(mesh, 0, j)]!;
    area += a;
  }
  return push / area;
}
