import { columnAt } from '../../flow/gasTable.ts';
import { NODE, setNodeInto } from '../../flow/points.ts';
import {
  carriedBy,
  frontAlong,
  lossyTable,
  marchTubes,
  nuOfSpeed,
  type TubeFront,
  type TubeGas,
  tubeGas,
  wallBoundary,
  wallLine,
} from '../../flow/streamtubes/index.ts';
import type { Expansion } from '../../gas/flow.ts';
import { CHAMBER_SURFACE, type FieldBalance, type ThrustPart, type WallStation } from '../model.ts';
import type { DualBellField } from './dualBellField.ts';

/** One way of filling the dual bell, in vacuum, over p0 A_t. */
export interface FullThrust {
  readonly parts: readonly ThrustPart[];
  /** Sum of the parts [–] */ readonly surfaces: number;
  /** Momentum and pressure across the last front [–]; null where the march of tubes ended early. */
  readonly boundary: number | null;
  /** Nodes from lip to axis, across the flow. */ readonly leaving: Float64Array;
}

export interface DualBellThrust {
  /** The base flows full and the gas leaves at the kink. */ readonly base: FullThrust;
  /** All of it flows full. */ readonly whole: FullThrust;
  /** Null where the march of tubes ended early. */ readonly balance: FieldBalance | null;
  /** Mass flow over the one-dimensional one [–] */ readonly dischargeCoefficient: number;
}

/** Tubes of the second computation: the thrust is then within 0.02 % of that of twice as many. */
const TUBES = 48;

/**
 * The thrust in vacuum, twice: by the pressure on every surface, from the net of characteristics, and by what passes the
 * last front of a march in streamtubes along the same wall, which takes the shocks inside with it.
 *
 *   surfaces:  [ṁu + pA]_throat + ∫ p dA_x over base and extension
 *   boundary:  Σ (ṁu + pA) over the tubes at the lip
 */
export function dualBellThrust(field: DualBellField, expansion: Expansion): DualBellThrust {
  const { stations, behindKink, throat, table } = field;
  const unit = Math.PI * expansion.chamber.pressure;
  const chamber: ThrustPart = { surface: CHAMBER_SURFACE, coefficient: throat.axialForce / unit };
  const baseWall: ThrustPart = {
    surface: 'nozzle wall',
    coefficient: pushOn(stations.slice(0, behindKink)) / unit,
  };
  const extension: ThrustPart = {
    surface: 'extension',
    coefficient: pushOn(stations.slice(behindKink)) / unit,
  };
  const lowest = Math.exp(columnAt(table.knots.lnPressure, table.step, table.cells, table.nuMax));
  const gas = tubeGas(table, lossyTable(expansion, lowest, table.cells));
  const front = frontAlong(gas, 'axisymmetric', upwards(field), TUBES);
  const along = (part: readonly WallStation[]): FullThrust['boundary'] => {
    const march = marchTubes({
      gas,
      front,
      lower: [{ kind: 'axis' }],
      upper: [wallBoundary(wallLine(part))],
    });
    return march.stopped === null ? carriedBy(front).axialForce / unit : null;
  };
  const baseBoundary = along(stations.slice(0, behindKink));
  const baseLeaving = leavingOf(front, gas);
  const wholeBoundary = along(stations.slice(behindKink));
  const base = { parts: [chamber, baseWall], boundary: baseBoundary, leaving: baseLeaving };
  const whole = {
    parts: [chamber, baseWall, extension],
    boundary: wholeBoundary,
    leaving: leavingOf(front, gas),
  };
  const surfaces = sum(whole.parts);
  const massFlow = carriedBy(front).massFlow;
  return {
    base: { ...base, surfaces: sum(base.parts) },
    whole: { ...whole, surfaces },
    balance:
      wholeBoundary === null
        ? null
        : {
            mass: massFlow / throat.massFlow - 1,
            momentum: surfaces / wholeBoundary - 1,
            energy: 0,
            nodes: field.net.nodeCount,
            note: null,
          },
    dischargeCoefficient: throat.massFlow / (Math.PI * expansion.throat.massFlux),
  };
}

function sum(parts: readonly ThrustPart[]): number {
  return parts.reduce((total, { coefficient }) => total + coefficient, 0);
}

/** ∫ p dA_x between the stations, p linear in r². */
function pushOn(stations: readonly WallStation[]): number {
  let push = 0;
  for (let i = 1; i < stations.length; i++) {
    const from = stations[i - 1]!;
    const to = stations[i]!;
    push += 0.5 * Math.PI * (from.pressure + to.pressure) * (to.radius ** 2 - from.radius ** 2);
  }
  return push;
}

/** The throat's first characteristic from the axis up. */
function upwards({ net }: DualBellField): Float64Array {
  const count = net.lineLength(0);
  const nodes = new Float64Array(count * NODE);
  for (let i = 0; i < count; i++) {
    const at = net.offset(0, count - 1 - i);
    nodes.set(net.nodes.subarray(at, at + NODE), i * NODE);
  }
  return nodes;
}

/** The last front as nodes from lip to axis: states of the tubes at their middles, the outermost at the ends. */
function leavingOf(front: TubeFront, gas: TubeGas): Float64Array {
  const { count, x, r, theta, speed } = front;
  const nodes = new Float64Array((count + 2) * NODE);
  const put = (i: number, atX: number, atR: number, angle: number, j: number): void =>
    setNodeInto(nodes, i * NODE, gas.table, atX, atR, angle, nuOfSpeed(gas, speed[j]!));
  put(0, x[count]!, r[count]!, front.faceTheta[count]!, count - 1);
  for (let j = count - 1; j >= 0; j--) {
    put(count - j, 0.5 * (x[j]! + x[j + 1]!), 0.5 * (r[j]! + r[j + 1]!), theta[j]!, j);
  }
  put(count + 1, x[0]!, 0, 0, 0);
  return nodes;
}
