import type { NozzleLosses, ThrustAt } from '../model.ts';
import type { SeparationAt } from '../separation/model.ts';

/** Share of the thrust that a wall round a free jet costs, from the one published figure. */
export const ASPIRATION_SHARE = 0.03;

/**
 * Thrust that the jet of a smaller nozzle loses to the larger wall round it, over p0 A_t [–].
 *
 *   ΔC_F = min( 0.03 C_F,  (ε − ε_jet) p_a / p0 )
 *
 * The jet sucks gas out of the space between itself and the wall, so that this wall feels a little less than ambient on
 * its inside. It cannot feel less than nothing: the second term.
 *
 * @param coefficient C_F of the smaller nozzle alone [–]
 * @param wallArea ε − ε_jet, of the wall round the jet, seen along the axis, over A_t [–]
 * @param ambientShare p_a/p0 [–]
 * Source: about 3 % in the sea-level mode of dual bells, G. Hagemann et al. (as cited in later papers; from memory).
 * Limits: one figure for all shapes; for inserts it is taken over from dual bells.
 */
export function aspirationLoss(coefficient: number, wallArea: number, ambientShare: number): number {
  return Math.max(0, Math.min(ASPIRATION_SHARE * coefficient, wallArea * ambientShare));
}

/** The thrust of the smaller nozzle with what the wall round its jet costs taken off. */
export function withAspiration(
  at: ThrustAt,
  surface: string,
  wallArea: number,
  chamberPressure: number,
  losses: NozzleLosses,
): ThrustAt {
  if (losses === 'none' || at.thrustCoefficient === null) return at;
  const loss = aspirationLoss(at.thrustCoefficient, wallArea, at.ambientPressure / chamberPressure);
  return {
    ...at,
    thrustCoefficient: at.thrustCoefficient - loss,
    thrustCoefficientIfFull: at.thrustCoefficientIfFull - loss,
    parts: at.parts.length === 0 ? at.parts : [...at.parts, { surface, coefficient: -loss }],
    boundary: at.boundary === null ? null : at.boundary - loss,
    ...(at.separation && { separation: lessBy(at.separation, loss) }),
  };
}

/** The span of the thrust moves with it. */
function lessBy(separation: SeparationAt, loss: number): SeparationAt {
  const span = separation.thrustCoefficient;
  return {
    ...separation,
    thrustCoefficient: span === null ? null : { low: span.low - loss, high: span.high - loss },
  };
}
