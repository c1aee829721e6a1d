import { dividingVelocity, shockPressureRatio } from '../plug/wakeTheory.ts';
import { type DeflectedFlow, type DeflectedGas, deflectedFlow } from './deflectedFlow.ts';
import type { DeflectionShape } from './shape.ts';

/** The closed wake of one nozzle, and where it closes. */
export interface ClosedWakeFlow {
  /** The flow with the base pressure taken. */ readonly flow: DeflectedFlow;
  /** [Pa] ambient pressure at which the boundary of the open wake just comes down to the neck */
  readonly closesAt: number;
  /** [Pa] base pressure by each model */ readonly estimates: readonly {
    readonly model: string;
    readonly pressure: number;
  }[];
}

/** Share of the pressure rise that the dividing streamline climbs in Nash's condition [–]. */
const NASH_SHARE = 0.35;
/** Wake pressures looked through: from the throat line's down by this factor. */
const LOWEST_SHARE = 2e-4;
const BISECTIONS = 9;
/** Streamtubes while pressures are sought, and of the flow that is kept. */
const TUBES_SOUGHT = 24;
const TUBES_KEPT = 96;

/**
 * The closed wake: its base pressure does not feel the surroundings.
 *
 * Between the base and the neck the boundary of the flow runs at the base pressure p_b. At the neck an oblique shock turns
 * the flow axial, p_4(M_2, δ); of the mixing layer the dividing streamline just comes to rest where
 *
 *   Korst   p_b (1 − φ_d² C²)^{−γ/(γ−1)} = p_4
 *   Nash    p_b (1 − φ_d² C²)^{−γ/(γ−1)} = p_b + 0.35 (p_4 − p_b)
 *
 * φ_d, C²: see `basePressureRatioKorst`. δ and M_2 come from the computed flow. The smaller p_b, the more steeply the flow
 * runs to the neck; where the shock would detach no smaller p_b is looked for.
 *
 * Source: H. H. Korst, J. Appl. Mech. 23, 1956, 593; J. F. Nash, R. & M. 3344, 1963 (both from memory; planar theory used
 * at a round neck).
 *
 * @param gammaAt isentropic exponent at a pressure [Pa]
 * A model with no base pressure in that range gives none; where Korst's gives none the lowest is taken, next to nothing.
 *
 * @returns null where the wake stays open at every pressure looked through
 */
export function closedWakeFlow(
  shape: DeflectionShape,
  gas: DeflectedGas,
  gammaAt: (pressure: number) => number,
): ClosedWakeFlow | null {
  const at = (pressure: number): DeflectedFlow =>
    deflectedFlow(shape, gas, pressure, { until: 'neck', tubes: TUBES_SOUGHT });
  const lowest = LOWEST_SHARE * gas.linePressure;
  if (at(lowest).neck === null) return null;
  // Open at `high`, closed at `low`.
  let [low, high] = [lowest, HIGHEST_SHARE * gas.linePressure];
  for (let i = 0; i < BISECTIONS; i++) {
    const middle = Math.sqrt(low * high);
    if (at(middle).neck === null) high = middle;
    else low = middle;
  }
  const closesAt = high;
  const found = [
    { model: 'Korst 1956', share: 1 },
    { model: 'Nash 1963', share: NASH_SHARE },
  ].flatMap(({ model, share }) => {
    const pressure = basePressure(at, gammaAt, share, lowest, closesAt);
    return pressure === null ? [] : [{ model, pressure }];
  });
  return {
    flow: keptFlow(shape, gas, found[0]?.pressure ?? lowest),
    closesAt,
    estimates: [...found, { model: 'bound: the wake just closing', pressure: closesAt }],
  };
}
/** Above this share of the throat line's pressure the wake of no such nozzle closes. */
const HIGHEST_SHARE = 0.3;

/** Tried in turn: a wider neck turns the flow axial more gently where a narrow one would leave it subsonic. */
const NECK_SHARES = [0.3, 0.6, 0.8];

function keptFlow(shape: DeflectionShape, gas: DeflectedGas, pressure: number): DeflectedFlow {
  let flow = deflectedFlow(shape, gas, pressure, { tubes: TUBES_KEPT });
  for (const neckShare of NECK_SHARES.slice(1)) {
    if (flow.stopped === null) break;
    flow = deflectedFlow(shape, gas, pressure, { tubes: TUBES_KEPT, neckShare });
  }
  return flow;
}

/** Bisection on ln p_b between the pressure at which the wake just closes and the lowest one; null where it has no value. */
function basePressure(
  at: (pressure: number) => DeflectedFlow,
  gammaAt: (pressure: number) => number,
  share: number,
  lowest: number,
  closesAt: number,
): number | null {
  if (!comesBack(at(lowest), gammaAt(lowest), share)) return null;
  let [low, high] = [lowest, closesAt];
  for (let i = 0; i < BISECTIONS; i++) {
    const middle = Math.sqrt(low * high);
    if (comesBack(at(middle), gammaAt(middle), share)) low = middle;
    else high = middle;
  }
  return Math.sqrt(low * high);
}

/** Whether more comes back to the base than the mixing layer takes with it: then the base pressure rises. */
function comesBack({ neck }: DeflectedFlow, gamma: number, share: number): boolean {
  if (neck === null) return false;
  const rise = shockPressureRatio(neck.mach, neck.turn, gamma);
  if (rise === null) return true;
  const energy = ((gamma - 1) / 2) * neck.mach * neck.mach;
  const crocco = energy / (1 + energy);
  const divided = dividingVelocity(crocco);
  const stagnation = (1 - divided * divided * crocco) ** (-gamma / (gamma - 1));
  return stagnation < 1 + share * (rise - 1);
}
