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
import { type FieldThrust, fieldThrust } from '../fieldThrust.ts';
import type { FieldBalance, ThrustPart, WallStation } from '../model.ts';
import type { DualBellField } from './dualBellField.ts';

/** Thrust of the whole dual bell flowing full, in vacuum, over p0 A_t. */
export interface DualBellThrust {
  readonly base: FieldThrust;
  readonly parts: readonly ThrustPart[];
  /** Sum of the parts [–] */ readonly surfaces: number;
  /** Momentum and pressure across the last front [–]; null where the march of tubes ended early. */
  readonly boundary: number | null;
  /** Nodes from lip to axis, across the flow; null likewise. */ readonly leaving: Float64Array | null;
  readonly balance: FieldBalance;
  /** λ, as `fieldThrust` has it [–] */ readonly divergenceFactor: number;
}

/** Tubes of the second computation: the thrust is then within 0.02 % of that of twice as many. */
const TUBES = 48;
/** Two roads to the thrust that differ by more than this [–] are told with a reason. */
const AGREEMENT = 0.003;

/**
 * The thrust in vacuum, twice: by the pressure on every surface, from the characteristics, and by what passes the last front
 * of a march in streamtubes from the exit plane of the base along the extension, which takes the shocks inside with it.
 *
 *   surfaces:  [ṁu + pA]_throat + ∫ p dA_x over base and extension
 *   boundary:  Σ (ṁu + pA) over the tubes at the lip
 */
export function dualBellThrust(
  field: DualBellField,
  expansion: Expansion,
  areaRatio: number,
  baseAreaRatio: number,
): DualBellThrust {
  const { stations, behindKink, base } = field;
  const { chamber, throat } = expansion;
  const unit = Math.PI * chamber.pressure;
  const ofBase = fieldThrust(base, expansion, baseAreaRatio);
  const extension = { surface: 'extension', coefficient: pushOn(stations.slice(behindKink)) / unit };
  const parts = [...ofBase.parts, extension];
  const surfaces = parts.reduce((total, { coefficient }) => total + coefficient, 0);
  const { table } = base;
  const lowest = Math.exp(columnAt(table.knots.lnPressure, table.step, table.cells, table.nuMax));
  const gas = tubeGas(table, lossyTable(expansion, lowest, table.cells));
  const front = frontAlong(gas, 'axisymmetric', upwards(field), TUBES);
  const march = marchTubes({
    gas,
    front,
    lower: [{ kind: 'axis' }],
    upper: [wallBoundary(wallLine(stations.slice(behindKink)))],
  });
  const there = march.stopped === null;
  const boundary = there ? carriedBy(front).axialForce / unit : null;
  const { dischargeCoefficient } = ofBase;
  const mean = expansion.atAreaRatio(areaRatio / dischargeCoefficient, 'supersonic');
  const momentum = (dischargeCoefficient * throat.massFlux * mean.velocity) / chamber.pressure;
  const miss = boundary === null ? 0 : surfaces / boundary - 1;
  return {
    base: ofBase,
    parts,
    surfaces,
    boundary,
    leaving: there ? leavingOf(front, gas) : null,
    balance: {
      ...ofBase.balance,
      mass: carriedBy(front).massFlow / base.entering.massFlow - 1,
      momentum: miss,
      nodes: ofBase.balance.nodes + field.net.nodeCount,
      note:
        march.stopped !== null
          ? `The second way to the thrust ended early: ${march.stopped.what}`
          : Math.abs(miss) <= AGREEMENT
            ? null
            : `The two ways to the thrust differ by ${(100 * miss).toFixed(2)} %: waves inside carry a loss of total pressure that the characteristics leave out.`,
    },
    divergenceFactor: (surfaces - (mean.pressure * areaRatio) / chamber.pressure) / momentum,
  };
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

/** The exit plane of the base from the axis up. */
function upwards({ base: { lines } }: DualBellField): Float64Array {
  const last = lines.lineCount - 1;
  const count = lines.lineLength(last);
  const nodes = new Float64Array(count * NODE);
  for (let i = 0; i < count; i++) {
    const at = lines.offset(last, count - 1 - i);
    nodes.set(lines.nodes.subarray(at, at + NODE), i * NODE);
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
