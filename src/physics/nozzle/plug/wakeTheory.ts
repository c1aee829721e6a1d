import { ProblemError } from '../../../numerics/problem.ts';

/** Flow at the end of a cut wall, as a perfect gas of the local exponent. */
export interface FlowAtCut {
  /** [–] ≥ 1 */ readonly mach: number;
  /** [rad] angle of the wall against the axis, negative towards it */ readonly angle: number;
  /** isentropic exponent [–] */ readonly gamma: number;
}

/** Lowest base pressure looked for, over that at the cut. */
const LOWEST = 1e-4;

/**
 * Base pressure over wall pressure at the cut [–] of a closed wake: turbulent, two-dimensional, no bleed, no boundary layer
 * at the cut.
 *
 *   1  at the corner the flow turns towards the axis (Prandtl–Meyer) until its pressure is p_b:  δ = −θ_cut + ν(M_2) − ν(M_1)
 *   2  between flow and dead gas a layer mixes, φ = u/u_2 = ½ (1 + erf η); its dividing streamline φ_d is where
 *        ∫_{−∞}^{η_d} φ (1 − C²)/(1 − C² φ²) dη = ∫_{−∞}^{∞} φ (1 − φ) (1 − C²)/(1 − C² φ²) dη,   C² = 1 − T_2/T_0
 *   3  an oblique shock turns the flow back to the axis: p_4(M_2, δ); the dividing streamline just comes to rest at
 *        p_b (1 − φ_d² C²)^{−γ/(γ−1)} = p_4
 *
 * Source: H. H. Korst, J. Appl. Mech. 23, 1956, 593 (from memory). J. F. Nash, R. & M. 3344, 1963 (read in its summary)
 * holds it wrong in its condition of reattachment, and its agreement with measurement to owe to the boundary layer left out.
 * Never above 1: where the wall points inward so steeply that even a base at the wall's own pressure would be fed, that
 * pressure is taken. Round plugs: applied at the corner as if planar.
 *
 * Check: incompressible φ_d = 0.616 (from memory).
 */
export function basePressureRatioKorst(cut: FlowAtCut): number {
  const excess = (ratio: number): number => stagnationExcess(cut, ratio);
  if (excess(1) <= 0) return 1;
  let low = Math.log(LOWEST);
  let high = 0;
  if (excess(LOWEST) > 0) return noBase(cut);
  for (let i = 0; i < 50; i++) {
    const middle = 0.5 * (low + high);
    if (excess(Math.exp(middle)) > 0) high = middle;
    else low = middle;
  }
  return Math.exp(0.5 * (low + high));
}

/** How far the dividing streamline's stagnation pressure exceeds what it must climb, over the base pressure [–]. */
function stagnationExcess({ mach, angle, gamma }: FlowAtCut, ratio: number): number {
  const outer = machAfterExpansion(mach, ratio, gamma);
  const turn = Math.max(-angle, 0) + prandtlMeyer(outer, gamma) - prandtlMeyer(mach, gamma);
  const rise = shockPressureRatio(outer, turn, gamma);
  const energy = ((gamma - 1) / 2) * outer * outer;
  const crocco = energy / (1 + energy);
  const divided = dividingVelocity(crocco);
  const stagnation = (1 - divided * divided * crocco) ** (-gamma / (gamma - 1));
  // A detached shock turns all that comes back: no base so low.
  if (rise === null) return -1;
  return stagnation - rise;
}

function machAfterExpansion(mach: number, ratio: number, gamma: number): number {
  const k = (gamma - 1) / 2;
  const stagnation = (1 + k * mach * mach) * ratio ** (-(gamma - 1) / gamma);
  return Math.sqrt((stagnation - 1) / k);
}

/** ν(M) [rad] of a perfect gas. */
function prandtlMeyer(mach: number, gamma: number): number {
  const beta = Math.sqrt(Math.max(mach * mach - 1, 0));
  const k = Math.sqrt((gamma + 1) / (gamma - 1));
  return k * Math.atan(beta / k) - Math.atan(beta);
}

/** Pressure ratio of the weak oblique shock that turns the flow by `turn` [rad]; null where it would detach. */
export function shockPressureRatio(mach: number, turn: number, gamma: number): number | null {
  if (turn <= 0) return 1;
  const turnAt = (beta: number): number => {
    const normal = (mach * Math.sin(beta)) ** 2;
    return Math.atan(
      (2 / Math.tan(beta)) * ((normal - 1) / (mach * mach * (gamma + Math.cos(2 * beta)) + 2)),
    );
  };
  let low = Math.asin(1 / mach);
  let high = steepestAttached(mach, gamma);
  if (turnAt(high) < turn) return null;
  for (let i = 0; i < 48; i++) {
    const middle = 0.5 * (low + high);
    if (turnAt(middle) < turn) low = middle;
    else high = middle;
  }
  return 1 + ((2 * gamma) / (gamma + 1)) * ((mach * Math.sin(high)) ** 2 - 1);
}

/** Wave angle of greatest turn [rad] (NACA Report 1135, eq. 168). */
function steepestAttached(mach: number, gamma: number): number {
  const m2 = mach * mach;
  const root = Math.sqrt((gamma + 1) * (1 + ((gamma - 1) / 2) * m2 + ((gamma + 1) / 16) * m2 * m2));
  return Math.asin(Math.sqrt((((gamma + 1) / 4) * m2 - 1 + root) / (gamma * m2)));
}

/** Mixing-layer grid: η from −3 to 3, beyond which φ is 0 or 1 to 1e-5. */
const ETA = 3;
const STEPS = 240;
const PROFILE = Float64Array.from(
  { length: STEPS + 1 },
  (_, i) => 0.5 * (1 + erf(-ETA + (2 * ETA * i) / STEPS)),
);

/** φ_d [–] at a Crocco number squared C². */
export function dividingVelocity(crocco: number): number {
  const h = (2 * ETA) / STEPS;
  const weight = (phi: number): number => (phi * (1 - crocco)) / (1 - crocco * phi * phi);
  let wanted = 0;
  for (const phi of PROFILE) wanted += weight(phi) * (1 - phi) * h;
  let sum = 0;
  for (let i = 1; i <= STEPS; i++) {
    const more = 0.5 * h * (weight(PROFILE[i - 1]!) + weight(PROFILE[i]!));
    if (sum + more >= wanted) {
      return PROFILE[i - 1]! + ((wanted - sum) / more) * (PROFILE[i]! - PROFILE[i - 1]!);
    }
    sum += more;
  }
  return 1;
}

/** erf(x) to 1.5e-7 (Abramowitz & Stegun, 7.1.26). */
function erf(x: number): number {
  const t = 1 / (1 + 0.3275911 * Math.abs(x));
  const poly =
    t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
  return Math.sign(x) * (1 - poly * Math.exp(-x * x));
}

function noBase(cut: FlowAtCut): never {
  throw new ProblemError({
    code: 'no-closed-wake',
    what: `At Mach ${cut.mach.toFixed(2)} no base pressure above ${LOWEST} of the wall's closes the wake.`,
    mend: 'Keep more or less of the plug.',
    where: 'nozzle.kept',
    facts: { ...cut },
  });
}
