/**
 * Shocks in a calorically perfect gas, closed forms.
 *
 * M₁ Mach number ahead, β angle of the shock to the flow ahead, θ turn of the flow, M_n = M₁ sin β:
 *
 *   p₂/p₁  = 1 + 2γ (M_n² − 1)/(γ+1)
 *   ρ₂/ρ₁  = (γ+1) M_n² / [(γ−1) M_n² + 2]
 *   p₀₂/p₀₁ = (ρ₂/ρ₁)^{γ/(γ−1)} (p₂/p₁)^{−1/(γ−1)}
 *   tan θ  = 2 cot β (M₁² sin²β − 1) / [M₁² (γ + cos 2β) + 2]
 *   M₂² sin²(β−θ) = [1 + (γ−1)/2 M_n²] / [γ M_n² − (γ−1)/2]
 *
 * Source: Ames Research Staff, NACA Report 1135 (1953), normal and oblique shock waves.
 * Assumes: constant γ. Check: γ = 1.4, M₁ = 2, normal → p₂/p₁ = 4.5, M₂ = 0.5774.
 */

import { ProblemError } from '../../../numerics/problem.ts';

export interface PerfectShock {
  /** β [rad] */ readonly waveAngle: number;
  /** θ [rad] */ readonly turn: number;
  /** p₂/p₁ [–] */ readonly pressureRatio: number;
  /** ρ₂/ρ₁ [–] */ readonly densityRatio: number;
  /** T₂/T₁ [–] */ readonly temperatureRatio: number;
  /** M₂ [–] */ readonly machBehind: number;
  /** p₀₂/p₀₁ [–] */ readonly stagnationPressureRatio: number;
}

/** Of the two shocks that turn a flow by one angle. */
export type ShockBranch = 'weak' | 'strong';

/** Normal shock. @throws ProblemError for M₁ < 1 or γ outside 1…5/3 */
export function normalShockPerfect(mach: number, gamma: number): PerfectShock {
  return perfectShockAt(mach, gamma, Math.PI / 2);
}

/**
 * Shock at a wave angle β [rad] between the Mach angle and 90°.
 * @throws ProblemError where there is no shock of that angle
 */
export function perfectShockAt(mach: number, gamma: number, waveAngle: number): PerfectShock {
  requirePerfectFlow(mach, gamma);
  const normal = (mach * Math.sin(waveAngle)) ** 2;
  if (!(normal >= 1 - 1e-12 && waveAngle <= Math.PI / 2)) {
    throw new ProblemError({
      code: 'no-shock-at-angle',
      what: `At Mach ${mach.toPrecision(4)} no shock stands at ${degrees(waveAngle)} to the flow.`,
      why: 'the flow across it would be slower than sound, or run backwards',
      mend: `Give an angle from ${degrees(Math.asin(1 / mach))}, the Mach angle, to 90°.`,
      facts: { mach, waveAngle },
    });
  }
  const pressureRatio = 1 + (2 * gamma * (normal - 1)) / (gamma + 1);
  const densityRatio = ((gamma + 1) * normal) / ((gamma - 1) * normal + 2);
  const turn = Math.atan2(
    (2 * (normal - 1)) / Math.tan(waveAngle),
    mach * mach * (gamma + Math.cos(2 * waveAngle)) + 2,
  );
  const normalBehind = Math.sqrt((1 + ((gamma - 1) / 2) * normal) / (gamma * normal - (gamma - 1) / 2));
  return {
    waveAngle,
    turn,
    pressureRatio,
    densityRatio,
    temperatureRatio: pressureRatio / densityRatio,
    machBehind: normalBehind / Math.sin(waveAngle - turn),
    stagnationPressureRatio: densityRatio ** (gamma / (gamma - 1)) * pressureRatio ** (-1 / (gamma - 1)),
  };
}

/**
 * The shock that turns a flow by θ [rad]. The angle relation is a cubic in tan β; its roots in closed form are
 *
 *   tan β = [M² − 1 + 2λ cos((4πδ + arccos χ)/3)] / [3 (1 + (γ−1)/2 M²) tan θ],   δ = 1 weak, 0 strong
 *   λ² = (M²−1)² − 3 (1 + (γ−1)/2 M²)(1 + (γ+1)/2 M²) tan²θ
 *   χ λ³ = (M²−1)³ − 9 (1 + (γ−1)/2 M²)(1 + (γ−1)/2 M² + (γ+1)/4 M⁴) tan²θ
 *
 * Source: G. Emanuel, Gasdynamics: Theory and Applications, AIAA 1986 (from memory; closed by the relation itself).
 * @throws ProblemError `shock-detached` for a turn above the greatest one
 */
export function obliqueShockPerfect(
  mach: number,
  gamma: number,
  turn: number,
  branch: ShockBranch = 'weak',
): PerfectShock {
  requirePerfectFlow(mach, gamma);
  if (turn === 0) return perfectShockAt(mach, gamma, branch === 'weak' ? Math.asin(1 / mach) : Math.PI / 2);
  const m2 = mach * mach;
  const a = 1 + ((gamma - 1) / 2) * m2;
  const t2 = Math.tan(turn) ** 2;
  const lambda2 = (m2 - 1) ** 2 - 3 * a * (1 + ((gamma + 1) / 2) * m2) * t2;
  const lambda = Math.sqrt(Math.max(lambda2, 0));
  const chi = ((m2 - 1) ** 3 - 9 * a * (a + ((gamma + 1) / 4) * m2 * m2) * t2) / lambda ** 3;
  if (!(turn > 0 && turn < Math.PI / 2 && lambda2 > 0 && chi >= -1)) detached(mach, gamma, turn);
  const angle = (4 * Math.PI * (branch === 'weak' ? 1 : 0) + Math.acos(Math.min(chi, 1))) / 3;
  return perfectShockAt(
    mach,
    gamma,
    Math.atan((m2 - 1 + 2 * lambda * Math.cos(angle)) / (3 * a * Math.tan(turn))),
  );
}

/**
 * The shock of a given pressure rise ξ = p₂/p₁:  M₁² sin²β = [(γ+1) ξ + γ − 1]/(2γ).
 * @throws ProblemError where even a normal shock rises less
 */
export function perfectShockOfRise(mach: number, gamma: number, pressureRatio: number): PerfectShock {
  requirePerfectFlow(mach, gamma);
  const sine2 = ((gamma + 1) * pressureRatio + gamma - 1) / (2 * gamma * mach * mach);
  if (pressureRatio >= 1 && sine2 <= 1) return perfectShockAt(mach, gamma, Math.asin(Math.sqrt(sine2)));
  throw new ProblemError({
    code: 'shock-rise-out-of-range',
    what: `At Mach ${mach.toPrecision(4)} no shock raises the pressure ${pressureRatio.toPrecision(4)} times.`,
    mend: `Give a rise from 1 to ${normalShockPerfect(mach, gamma).pressureRatio.toPrecision(4)}, that of a normal shock.`,
    facts: { mach, pressureRatio },
  });
}

/**
 * Wave angle of the greatest turn [rad]:
 *
 *   sin²β = 1/(4γM²) { (γ+1)M² − 4 + √[(γ+1)((γ+1)M⁴ + 8(γ−1)M² + 16)] }
 *
 * Source: NACA Report 1135 (1953), eq. 168 (number from memory).
 */
export function detachmentAnglePerfect(mach: number, gamma: number): number {
  requirePerfectFlow(mach, gamma);
  const m2 = mach * mach;
  const g1 = gamma + 1;
  const root = Math.sqrt(g1 * (g1 * m2 * m2 + 8 * (gamma - 1) * m2 + 16));
  return Math.asin(Math.sqrt(Math.min((g1 * m2 - 4 + root) / (4 * gamma * m2), 1)));
}

/** The greatest turn of an attached shock [rad]. */
export function greatestTurnPerfect(mach: number, gamma: number): number {
  return perfectShockAt(mach, gamma, detachmentAnglePerfect(mach, gamma)).turn;
}

function requirePerfectFlow(mach: number, gamma: number): void {
  if (mach >= 1 && Number.isFinite(mach) && gamma > 1 && gamma <= 5 / 3 + 1e-12) return;
  throw new ProblemError({
    code: 'no-shock-in-flow',
    what: `No shock stands in a flow of Mach ${mach} of a gas of γ = ${gamma}.`,
    mend: 'Give a Mach number of at least 1, and γ above 1 and at most 5/3.',
    facts: { mach, gamma },
  });
}

function detached(mach: number, gamma: number, turn: number): never {
  throw new ProblemError({
    code: 'shock-detached',
    what: `At Mach ${mach.toPrecision(4)} no attached shock turns the flow by ${degrees(turn)}.`,
    mend: `Ask for a turn above 0 and at most ${degrees(greatestTurnPerfect(mach, gamma))}.`,
    facts: { mach, gamma, turn },
  });
}

function degrees(angle: number): string {
  return `${((angle * 180) / Math.PI).toFixed(2)}°`;
}
