/** The whole flow of an engine at one place, without friction: what `plumeline flow` computes. SI units. */

import type { Problem } from '../../numerics/problem.ts';
import type { AxisShock, PictureBlock } from '../../physics/wholeFlow/index.ts';
import type { RowSeparation } from '../separation/model.ts';

/** How fine the mesh is. */
export type Fineness = 'coarse' | 'normal' | 'fine' | 'finest';
export const FINENESSES: readonly Fineness[] = ['coarse', 'normal', 'fine', 'finest'];

/** What a picture shows of the gas. */
export type Shown = 'pressure' | 'mach' | 'temperature' | 'density' | 'speed' | 'density gradient';
export const SHOWN: readonly Shown[] = [
  'pressure',
  'mach',
  'temperature',
  'density',
  'speed',
  'density gradient',
];

/** A part of a line of the mesh. */
export interface MeshSide {
  readonly block: number;
  /** Along the first index at this second one, or along the second at this first one. */ readonly row?: number;
  readonly column?: number;
  readonly from: number;
  readonly to: number;
}

/** By what the steps are taken: WebAssembly on floats of so many bits, or the plain reference. */
export type FlowBits = 32 | 64 | 'reference';
export const FLOW_BITS: readonly FlowBits[] = [32, 64, 'reference'];

/** An instant of a flow through time. */
export interface FlowMoment {
  readonly event: 'start' | 'stop' | 'throttle' | 'switch';
  /** [s] since it began */ readonly time: number;
  /** What is to be fed over the full feed, put in [–] */ readonly asked: number;
  /** What comes in over it: less while the chamber is nearly empty [–] */ readonly fed: number;
  /** Pressure where the gas comes in, over the full one [–] */ readonly chamber: number;
  /** [kg/s] of all that passes the lip: gas, and at a start the air ahead of it */ readonly massFlow: number;
  /** [N] of what leaves it; beside the air’s pressure on all the rest */ readonly thrust: number;
  /** Why the field broke behind it, at first order and in the shortest steps too: it is the last that held. */
  readonly ended?: Problem;
}

/** What took the steps of a field. */
export type FlowKernelName = FlowBits | 'graphics processor';

/** Where the thrust of a field differs from that of the nozzle’s model. */
export interface AgainstModel {
  /** Gas that comes in over that of one-dimensional flow through the throat [–], and by the model. */ readonly passes: number;
  readonly passesByModel: number;
  /** The one over the other, less 1; and thrust for each kilogram, base, wake and suction aside, likewise. */ readonly gas: number;
  readonly perMass: number;
  /** C_F of the base, here and by the model; 0: none. */ readonly base: number;
  readonly baseByModel: number;
  /** Mean pressure on the base [Pa]; null: there is none. */ readonly basePressure: number | null;
  /** C_F that the model takes off for still air round the jet, sucked at by it; the field has it at the air’s pressure. 0 or less. */ readonly suction: number;
  /** C_F by which the model changes, its base aside, with an open wake at the mean pressure that the field has along its edge; 0: none. */ readonly wake: number;
}

export interface FlowField {
  /** Id and name of the engine. */ readonly engine: string;
  readonly name: string;
  /** Behind a round nozzle, round a plug, or round the pintle of an expansion–deflection nozzle. */ readonly form:
    | 'round'
    | 'plug'
    | 'pintle';
  /** [m] geometric; null: given by its pressure */ readonly altitude: number | null;
  /** [Pa] */ readonly ambientPressure: number;
  /** [m/s] at which the air comes from ahead; 0: at rest */ readonly flightSpeed: number;
  /** In vacuum the thinnest air that is computed stands for it. */ readonly thinnest: boolean;
  /** Of a nozzle that has two ways of working; null: one. */ readonly mode: string | null;
  /** Of a shorter nozzle that works inside a bell: this is not in the field. */ readonly insideBell: boolean;
  readonly fineness: Fineness;
  /** Of a flow through time; absent: at rest, or a mean. */ readonly moment?: FlowMoment;
  /** Why it broke on its way, at first order and in ever shorter steps too: it is the last that held, not at rest. Absent: it came to its end. */
  readonly ended?: Problem;
  /** What took the steps; the reference also where this machine runs no WebAssembly with vectors. */ readonly kernel: FlowKernelName;
  readonly cells: number;
  readonly steps: number;
  /** How often the field broke and went on with shorter steps, at first order for a while. */ readonly broke: number;
  /** Steps that some of its cells took at first order, because the second broke there. */ readonly rescued: number;
  /** Whether thrust and jet came to rest; else the field is the mean over the last half of the steps. */ readonly steady: boolean;
  /** C_F of the field, its mean, how far it swings, relative; and by the model of the nozzle, which has none of a moment. */
  readonly thrustCoefficient: {
    readonly mean: number;
    readonly swing: number;
    readonly byModel: number | null;
  };
  /** From what that differs; null: of a moment, or where the model has no thrust. */ readonly against: AgainstModel | null;
  /** Where it was made to leave the wall; null: nowhere. */ readonly leaves: {
    /** [m] from the throat plane */ readonly axial: number;
    readonly by: string;
  } | null;
  /** Where gas with friction would let go, by all criteria; null: no wall to leave, or a moment. */ readonly separation: RowSeparation | null;
  readonly lip: { readonly axial: number; readonly radius: number };
  /** [m] axial: behind it there is gas alone. A bell’s lip, a plug’s cut. */ readonly end: number;
  /** On the axis behind the lip, within the fine part of the mesh. */ readonly shocks: readonly AxisShock[];
  /** The first strong one of them, where it is that of the jet and not of the nozzle alone. */ readonly mainShock: AxisShock | null;
  /** [m] from the lip to the end of the first shock cell, where a law of cells holds; null: not seen, or none does */ readonly firstCell:
    | number
    | null;
  /** By the published laws, [m] from the lip; null: none here, or a moment. */ readonly byLaw: {
    readonly machDisk: number | null;
    readonly cellLength: number | null;
  };
  /** [m] behind the lip as far as the cells are fine */ readonly seen: number;
  /** Lines [m] of axial distance and radius: walls, those that the gas is made to leave, those that no study states. */
  readonly walls: readonly {
    readonly kind: 'wall' | 'left' | 'notional';
    readonly line: readonly (readonly [number, number])[];
    /** Where its cells are. */ readonly side: MeshSide;
  }[];
  /** Which of the blocks holds the axis behind the engine. */ readonly axisBlock: number;
  /** Of the mesh, the first that through which the gas comes. */ readonly blocks: readonly PictureBlock[];
}
