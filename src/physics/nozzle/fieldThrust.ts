import { tableStateAt } from '../flow/gasTable.ts';
import { NODE } from '../flow/points.ts';
import type { Expansion } from '../gas/flow.ts';
import { CHAMBER_SURFACE, type FieldBalance, type ThrustPart } from './model.ts';
import type { RoundField } from './roundField.ts';

/** Thrust in vacuum from a flow field, over p0 A_t. */
export interface FieldThrust {
  /** Mass flow over one-dimensional mass flow [–]. */ readonly dischargeCoefficient: number;
  /** λ [–], see fieldThrust. */ readonly divergenceFactor: number;
  /** What goes through the start line, and the wall behind it. */ readonly parts: readonly ThrustPart[];
  /** Momentum and pressure across the exit plane. */ readonly boundary: number;
  readonly balance: FieldBalance;
}

/** Two roads to the thrust that differ by more than this [–] are told with a reason. */
const AGREEMENT = 0.003;

/**
 * Thrust from the field, found twice.
 *
 *   by surfaces   F = ∫_start [p dA_x + ρu (q·dA)] + ∫_wall p dA_x
 *   by the exit   F = ∫_exit [p dA_x + ρu (q·dA)]
 *   C_D = ṁ / [(ρu)* A_t]
 *   λ: F = λ ṁ u_1 + p_1 A_e, with u_1, p_1 of one-dimensional flow of the same mass flow through the same exit (A/A* = ε/C_D)
 *
 * @param areaRatio ε [–]
 * Source: momentum theorem; λ as defined by G. P. Sutton, O. Biblarz, Rocket Propulsion Elements, 7th ed., 2001, ch. 3.
 */
export function fieldThrust(field: RoundField, expansion: Expansion, areaRatio: number): FieldThrust {
  const { entering, leaving, wallForce } = field;
  const unit = Math.PI * expansion.chamber.pressure;
  const [chamber, nozzleWall, boundary] = [entering.axialForce, wallForce, leaving.axialForce].map(
    (force) => force / unit,
  ) as [number, number, number];
  const dischargeCoefficient = entering.massFlow / (Math.PI * expansion.throat.massFlux);
  return thrustFrom(
    { dischargeCoefficient, chamber, nozzleWall, boundary },
    expansion,
    areaRatio,
    balanceOf(field, expansion, (chamber + nozzleWall) / boundary - 1),
  );
}

/** What a field gives, forces over p0 A_t. */
interface FieldForces {
  readonly dischargeCoefficient: number;
  /** Through the start line. */ readonly chamber: number;
  readonly nozzleWall: number;
  /** Across the exit. */ readonly boundary: number;
}

/** Thrust and divergence of a field whose forces are known. */
export function thrustFrom(
  { dischargeCoefficient, chamber, nozzleWall, boundary }: FieldForces,
  expansion: Expansion,
  areaRatio: number,
  balance: FieldBalance,
): FieldThrust {
  const p0 = expansion.chamber.pressure;
  const mean = expansion.atAreaRatio(areaRatio / dischargeCoefficient, 'supersonic');
  const momentum = (dischargeCoefficient * expansion.throat.massFlux * mean.velocity) / p0;
  return {
    dischargeCoefficient,
    divergenceFactor: (chamber + nozzleWall - (mean.pressure * areaRatio) / p0) / momentum,
    parts: [
      { surface: CHAMBER_SURFACE, coefficient: chamber },
      { surface: 'nozzle wall', coefficient: nozzleWall },
    ],
    boundary,
    balance,
  };
}

function balanceOf(field: RoundField, expansion: Expansion, momentum: number): FieldBalance {
  const { entering, leaving, lines, arc, drift, shock } = field;
  const turn = shock === null ? 0 : (shock.strongestTurn * 180) / Math.PI;
  return {
    mass: leaving.massFlow / entering.massFlow - 1,
    massPutRight: drift,
    momentum,
    energy: energyMiss(field, expansion),
    nodes: lines.nodeCount + arc.nodeCount,
    note:
      Math.abs(momentum) <= AGREEMENT
        ? null
        : `The two ways to the thrust differ by ${(100 * momentum).toFixed(2)} %: ${
            turn > 0
              ? `an internal shock turns the flow by up to ${turn.toFixed(1)}°, and its loss of total pressure is left out`
              : 'the net is coarse for so sharp a turn behind the throat'
          }.`,
  };
}

/** Largest |h + q²/2 − h0| over q²/2 at some nodes of the exit line [–]: h from the gas itself, q from the flow table. */
function energyMiss({ table, lines }: RoundField, expansion: Expansion): number {
  const last = lines.lineCount - 1;
  const count = lines.lineLength(last);
  const total = expansion.chamber.enthalpy + 0.5 * expansion.chamber.velocity ** 2;
  let worst = 0;
  for (const share of [0, 0.25, 0.5, 0.75, 1]) {
    const at = lines.offset(last, 0) + Math.round(share * (count - 1)) * NODE;
    const { pressure, speed } = tableStateAt(table, lines.nodes[at + 3]!);
    const kinetic = 0.5 * speed * speed;
    worst = Math.max(worst, Math.abs(expansion.atPressure(pressure).enthalpy + kinetic - total) / kinetic);
  }
  return worst;
}
