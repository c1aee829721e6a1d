/** The flow through an expansion–deflection nozzle, with the wake behind its pintle, and out into the air, without friction. */

import { apartFlow, cellAt, type Flow, newFlow, type SideKind } from '../euler/index.ts';
import { type Beginning, carriedFields } from './carried.ts';
import { fedChamber } from './chamberLevel.ts';
import { deflectedGuess } from './deflectedGuess.ts';
import type { DeflectedLayout, DeflectedSize } from './deflectedLayout.ts';
import { deflectedMesh, deflectedSize, WAKE_OF_PINTLE } from './deflectedMesh.ts';
import { deflectedRoom } from './deflectedRoom.ts';
import type { PreparedDeflected } from './deflectedShape.ts';
import { stillAir } from './fieldGases.ts';
import { type RoundCase, SPREAD_ROUND_JET } from './roundEngine.ts';
import { BEHIND, NOZZLE } from './roundMesh.ts';

export interface DeflectedFlow {
  readonly flow: Flow;
  readonly layout: DeflectedLayout;
  readonly size: DeflectedSize;
  readonly prepared: PreparedDeflected;
  readonly case: RoundCase;
  /** First cell of the outer wall that is left open; as many as it has: none */ readonly opens: number;
}

export function sizeOfDeflected(
  { shape }: PreparedDeflected,
  coarsest: number,
  across: number,
): DeflectedSize {
  return deflectedSize(shape, coarsest, across);
}

/** @param from a field to begin from, on the same mesh or one half as fine */
export function deflectedFlow(
  prepared: PreparedDeflected,
  which: RoundCase,
  size: DeflectedSize,
  from: readonly Beginning[] | null,
): DeflectedFlow {
  const { shape, gases, engine } = prepared;
  const { air, level, leavesAt } = which;
  const layout = deflectedRoom(prepared, air.pressure, leavesAt);
  const still = stillAir(air);
  const far: SideKind = { is: 'far', air: still };
  const { blocks, opens } = deflectedMesh(shape, layout, size, {
    chamber: level === undefined ? gases.chamber : fedChamber(gases.chamber, level),
    air: far,
    still: { is: 'far', air: { ...still, u: 0 } },
    pressed: { is: 'pressed', pressure: air.pressure },
  });
  const start =
    from === null
      ? which.unlit
        ? () => ({ ...still, u: 0 })
        : deflectedGuess(prepared, blocks, still, size, which.openWake ?? false)
      : carriedFields(from, still, size.nozzle / from[NOZZLE]!.mesh.ni, BEHIND);
  const flow = (level === undefined ? newFlow : apartFlow)({
    blocks,
    gases: gases.pair,
    start,
    kernel: engine.kernel ?? null,
    ...((which.openWake || leavesAt !== null) && { spread: SPREAD_ROUND_JET }),
  });
  return { flow, layout, size, prepared, case: which, opens };
}

/** Axial pushes [N], the air’s pressure taken off, and the gas [kg/s]. */
export interface DeflectedPushes {
  /** Of what comes in, on the pintle ahead of its base and on the outer wall. */ readonly stream: number;
  readonly base: number;
  /** Mean on the base [Pa] */ readonly basePressure: number;
  /** That comes in. */ readonly massFlow: number;
}

export function pushesOfDeflected({
  flow,
  size,
  prepared,
  opens,
  case: which,
}: DeflectedFlow): DeflectedPushes {
  const { across, nozzle, duct, edge, wake } = size;
  const coming = flow.through(NOZZLE, { side: 'iLow', from: 0, to: across });
  const pintle = flow.through(NOZZLE, { side: 'jLow', from: 0, to: duct + edge }).x;
  const outer = flow.through(NOZZLE, { side: 'jHigh', from: 0, to: opens }).x;
  const base = flow.through(WAKE_OF_PINTLE, { side: 'iLow', from: 0, to: wake }).x;
  const cut = Math.PI * prepared.shape.base[1] ** 2;
  const { mesh } = flow.fields[NOZZLE]!;
  const end = mesh.y[across * (nozzle + 1) + opens]!;
  return {
    stream: -coming.x - pintle - outer - which.air.pressure * (Math.PI * end * end - cut),
    base: -base - which.air.pressure * cut,
    basePressure: -base / cut,
    massFlow: -coming.mass,
  };
}

/** The axial push on the engine [N]. */
export function thrustOfDeflected(deflected: DeflectedFlow): number {
  const { stream, base } = pushesOfDeflected(deflected);
  return stream + base;
}

/** What leaves through the lip [kg/s]. */
export function massLeavingDeflected({ flow, size, opens }: DeflectedFlow): number {
  const { across, nozzle, wake } = size;
  return (
    flow.through(NOZZLE, { side: 'iHigh', from: 0, to: across }).mass +
    flow.through(NOZZLE, { side: 'jHigh', from: opens, to: nozzle }).mass +
    flow.through(WAKE_OF_PINTLE, { side: 'iHigh', from: 0, to: wake }).mass
  );
}

/** What the jet fills behind the lip, as far as cells are fine [m³/rad]: tells whether it has come to stand. */
export function filledByJetOf({ flow, size }: DeflectedFlow): number {
  const { mesh, share } = flow.fields[BEHIND]!;
  let filled = 0;
  for (let j = 0; j < mesh.nj; j++)
    for (let i = 0; i < size.fine; i++) {
      const at = cellAt(mesh, i, j);
      filled += share[at]! * mesh.volume[at]!;
    }
  return filled;
}
