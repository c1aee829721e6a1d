/** An engine as a field that can be settled: which mesh its nozzle asks for, what is watched, what its walls are. */

import { ProblemError } from '../../numerics/problem.ts';
import type { Flow, FlowKernel } from '../../physics/euler/index.ts';
import type { Contour, ContourBody } from '../../physics/nozzle/index.ts';
import {
  axisPressure,
  BEHIND,
  BESIDE,
  BESIDE_COWL,
  type Beginning,
  deflectedFlow,
  type FieldGases,
  filledByJetOf,
  massLeavingDeflected,
  NOZZLE,
  plugFlow,
  prepareDeflected,
  preparePlug,
  prepareRound,
  pushesOfDeflected,
  pushesOfPlug,
  RING,
  ROUND_PLUG,
  type RoundCase,
  roundFlow,
  roundSize,
  sizeOfDeflected,
  sizeOfPlug,
  thrustOf,
  WAKE,
  WAKE_OF_PINTLE,
} from '../../physics/wholeFlow/index.ts';
import type { EngineSolution } from '../solution.ts';
import type { MeshSide } from './model.ts';

/** A line of the mesh that is a wall, one that the gas is made to leave, or one that no study states. */
export interface MeshWall extends MeshSide {
  readonly kind: 'wall' | 'left' | 'notional';
}

export interface Running {
  readonly flow: Flow;
  readonly gases: FieldGases;
  /** Thrust [N]; what tells whether jet or wake stand still; the gas that comes in [kg/s]; the push on a base [N], 0: none; what a jet fills that comes to stand late [m³/rad], 0: not watched. */ readonly watch: () => readonly [
    thrust: number,
    still: number,
    massFlow: number,
    base: number,
    filled: number,
  ];
  /** [kg/s] of gas and air that leaves the nozzle */ readonly massFlow: () => number;
  readonly lip: { readonly axial: number; readonly radius: number };
  /** [m] behind the lip as far as cells are fine */ readonly seen: number;
  /** The block that holds the axis behind the engine. */ readonly axisBlock: number;
  /** Steps that it asks for at most, over those of a round nozzle: waves die slowly in a ring. */ readonly slow: number;
  readonly walls: readonly MeshWall[];
}

/** Makes the field of one contour in one surrounding; `across` doubles `coarsest` once or more often. */
export type Run = (
  which: RoundCase,
  coarsest: number,
  across: number,
  from: readonly Beginning[] | null,
) => Running;

/** @throws ProblemError where no mesh follows the walls */
export function runOf(
  { expansion, contourIs, input, nozzle: { spec } }: EngineSolution,
  contour: Contour,
  kernel: FlowKernel | null,
): Run {
  const { plug } = contour;
  const pintle =
    spec.kind === 'expansionDeflection' ? contour.bodies?.find(({ name }) => name === 'pintle') : undefined;
  if (contourIs !== 'shape')
    throw new ProblemError({
      code: 'flow-no-mesh',
      what: `The whole flow of ${input.name} is not computed: no mesh follows its walls.`,
      why: 'A bound without a wall, such as an ideal nozzle, has nothing that a mesh could follow.',
      mend: 'Ask for an engine whose nozzle has a wall: a cone, a bell, a plug, an expansion–deflection nozzle.',
    });
  if (pintle !== undefined) return runDeflected(contour, pintle, expansion, kernel);
  return plug === undefined
    ? runRound(contour, expansion, kernel)
    : runPlug({ ...contour, plug }, expansion, kernel);
}

/** [kg/s] */
function massComingIn(flow: Flow): number {
  return -flow.through(0, { side: 'iLow', from: 0, to: flow.fields[0]!.mesh.nj }).mass;
}

function runRound(
  { wall, throatRadius }: Contour,
  expansion: EngineSolution['expansion'],
  kernel: FlowKernel | null,
): Run {
  const prepared = prepareRound({ expansion, wall, throatRadius, kernel });
  const { shape, lip, gases } = prepared;
  return (which, coarsest, across, from) => {
    const round = roundFlow(prepared, which, roundSize(prepared, coarsest, across), from);
    const { flow, room, size, opens } = round;
    return {
      flow,
      gases,
      watch: () => [thrustOf(round), axisPressure(round), massComingIn(flow), 0, 0],
      massFlow: () => flow.through(NOZZLE, { side: 'iHigh', from: 0, to: size.across }).mass,
      lip: { axial: shape.lip, radius: lip.radius },
      seen: room.fine,
      axisBlock: BEHIND,
      slow: 1,
      walls: [
        { kind: 'notional', block: BESIDE, row: 0, from: 0, to: size.ahead },
        { kind: 'notional', block: BEHIND, column: 0, from: size.across, to: size.across + size.base },
        { kind: 'left', block: NOZZLE, row: size.across, from: opens, to: size.nozzle },
        { kind: 'wall', block: NOZZLE, row: size.across, from: 0, to: opens },
      ],
    };
  };
}

function runDeflected(
  { wall, throatRadius }: Contour,
  pintle: ContourBody,
  expansion: EngineSolution['expansion'],
  kernel: FlowKernel | null,
): Run {
  const prepared = prepareDeflected({ expansion, wall, pintle, throatRadius, kernel });
  const { shape, lip, gases } = prepared;
  return (which, coarsest, across, from) => {
    const deflected = deflectedFlow(prepared, which, sizeOfDeflected(prepared, coarsest, across), from);
    const { flow, layout, size, opens } = deflected;
    const first = size.wake + size.across;
    return {
      flow,
      gases,
      watch: () => {
        const { stream, base, basePressure, massFlow } = pushesOfDeflected(deflected);
        return [stream + base, basePressure, massFlow, base, filledByJetOf(deflected)];
      },
      massFlow: () => massLeavingDeflected(deflected),
      lip: { axial: shape.lip, radius: lip.radius },
      seen: layout.room.fine,
      axisBlock: BEHIND,
      slow: which.openWake ? (from === null ? FROM_STILL_AIR : OPEN_WAKE) : 1.6,
      walls: [
        { kind: 'notional', block: BESIDE, row: 0, from: 0, to: size.ahead },
        { kind: 'notional', block: BEHIND, column: 0, from: first, to: first + size.base },
        { kind: 'left', block: NOZZLE, row: size.across, from: opens, to: size.nozzle },
        { kind: 'wall', block: NOZZLE, row: size.across, from: 0, to: opens },
        { kind: 'wall', block: NOZZLE, row: 0, from: 0, to: size.duct + size.edge },
        { kind: 'wall', block: WAKE_OF_PINTLE, column: 0, from: 0, to: size.wake },
      ],
    };
  };
}

/** An open wake breathes, some 3000 steps long; begun as air at rest it is first filled, over some 3000 steps, to twice the air's pressure. */
const OPEN_WAKE = 2;
const FROM_STILL_AIR = 4;

function runPlug(
  contour: Contour & { readonly plug: NonNullable<Contour['plug']> },
  expansion: EngineSolution['expansion'],
  kernel: FlowKernel | null,
): Run {
  const prepared = preparePlug({
    kernel,
    expansion,
    cowl: contour.wall,
    plug: contour.plug.wall,
    width: contour.plug.width ?? null,
    throatRadius: contour.throatRadius,
  });
  return (which, coarsest, across, from) => {
    const size = sizeOfPlug(prepared, coarsest, across, which.timed);
    const plug = plugFlow(prepared, which, size, from);
    const { flow, room } = plug;
    const [axial, radius] = prepared.shape.ring.at(-1)!.outer;
    const [cut] = prepared.shape.plug.at(-1)!;
    return {
      flow,
      gases: prepared.gases,
      watch: () => {
        const { stream, base, basePressure, massFlow } = pushesOfPlug(plug);
        return [stream + base, basePressure, massFlow, base, 0];
      },
      massFlow: () => pushesOfPlug(plug).massFlow,
      lip: { axial, radius },
      seen: cut - axial + room.fine,
      axisBlock: WAKE,
      slow: 1.6,
      walls: [
        { kind: 'notional', block: BESIDE_COWL, row: 0, from: 0, to: size.ahead },
        { kind: 'notional', block: ROUND_PLUG, column: 0, from: size.across, to: size.across + size.base },
        { kind: 'wall', block: RING, row: size.across, from: 0, to: size.ring },
        { kind: 'wall', block: RING, row: 0, from: 0, to: size.ring },
        { kind: 'wall', block: ROUND_PLUG, row: 0, from: 0, to: size.plug },
        { kind: 'wall', block: WAKE, column: 0, from: 0, to: size.wake },
      ],
    };
  };
}
